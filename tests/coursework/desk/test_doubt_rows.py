"""A later file that only itself says to be a student's, at the desk. The class is invented."""

import pytest
from coursework.arriving.arrivals import read_list
from coursework.arriving.doubts import doubts
from coursework.arriving.states import COUNTS, NOT_CHOSEN, WAITS
from coursework.arriving.take_in import take_in
from coursework.desk import desk as desk_module
from coursework.desk.desk import Desk
from coursework.gradebook.points import prepare_set
from coursework.records.record_file import as_text

from tests.helpers.desk import press, words
from tests.helpers.folders import EVENING, put
from tests.helpers.hand_ins import SET, became, hand_in, make_course, submitted
from tests.helpers.records import record, verdict

ADA = "BH-1001"
HERS, OTHER = hand_in(ADA, q1='q1 = "3 kg"'), hand_in(ADA, q1='q1 = "1 g"')
SHOW, COUNT = "Show the inbox", "Let those chosen count"


@pytest.fixture
def desk(tmp_path, monkeypatch):
    """Ada's hand-in is marked; then a file comes that says it is hers."""
    monkeypatch.setattr(desk_module, "CLASSES", tmp_path)
    course = make_course(tmp_path / "class", {ADA: "Ada Quill"})
    prepare_set(course, SET)
    take_in(course, put(tmp_path / "first", {"w.ipynb": HERS}), now=EVENING)
    file = course.marks(SET, ADA)
    file.parent.mkdir(parents=True)
    marked = record(ADA, verdict("q1"), sha256=read_list(course)[0].sha256)
    file.write_text(as_text(marked), encoding="utf-8")
    take_in(course, put(tmp_path / "post", {"x.ipynb": OTHER}), now=EVENING + 3600)
    return Desk()


def test_what_is_next_names_both_files_and_the_inbox_asks_which_counts(desk):
    """Nothing is chosen by itself, and both files can be seen."""
    panel = desk.unplaced()

    assert "Ada Quill, Buy enough: " in words(desk.next)
    assert "1 hand-in waits for your word" in press(panel, SHOW)

    [row] = panel.waiting.children
    told = " ".join(words(one) for one in row.children if hasattr(one, "placeholder"))

    assert "“w.ipynb”" in told and "it is marked" in told
    assert "“x.ipynb”" in told and "no sender is known: it waits" in told
    assert "" == row.counts.value
    assert "Choose at “This one counts” first." in press(panel, COUNT)
    assert {"w.ipynb": COUNTS, "x.ipynb": WAITS} == became(desk.course)

    look = row.children[2]
    look.see.value = True

    assert "3 kg" in words(look.shown)


@pytest.mark.parametrize(("place", "raw"), [(0, HERS), (1, OTHER)])
def test_the_chosen_file_counts_and_nothing_waits_any_more(desk, place, raw):
    panel = desk.unplaced()
    press(panel, SHOW)
    [row] = panel.waiting.children
    row.counts.value = row.doubt.files[place].sha256

    assert "1 decision is in the journal" in press(panel, COUNT)
    assert raw == submitted(desk.course, ADA)
    assert [] == doubts(desk.course)
    assert {COUNTS, NOT_CHOSEN} == set(became(desk.course).values())
    assert () == panel.waiting.children
    assert "which file counts" not in words(desk.next)
