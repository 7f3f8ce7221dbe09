"""Keys, and the students' copies that are made from them."""

import json
import re

import pytest
from coursework.classes.course import new_course
from coursework.errors import CourseError
from coursework.sets.hand_out import ASSIGNMENTS, hand_out, released, write_assignments
from coursework.sets.key_text import key_file, key_notebook, notebook_of, set_ids
from coursework.sets.keys import load_key, source
from coursework.sets.notebooks import PRINTED, printed

from kitchenmath.practice import Measured, Question
from kitchenmath.units.saying import say

SETS = set_ids()


@pytest.fixture(scope="module")
def keys():
    return {set_id: load_key(key_notebook(set_id)) for set_id in SETS}


@pytest.mark.parametrize("set_id", SETS)
def test_a_key_loads_its_model_answers_earn_everything(set_id, keys):
    """Loading runs the key and refuses one whose model answers do not earn all points."""
    key = keys[set_id]

    assert key.set_id == set_id
    assert 12 <= sum(key.points.values()) <= 20
    assert 5 <= len(key.points) <= 7
    assert len(key.human) == 1


@pytest.mark.parametrize("set_id", SETS)
def test_a_key_prints_what_it_printed(set_id):
    """Run in a fresh kernel, and compared with what `python3 instructor refresh` stored."""
    assert (PRINTED / f"{set_id}.txt").read_text(encoding="utf-8") == printed(set_id)


def test_what_nbgrader_wants_follows_from_the_name_of_a_cell():
    """By hand: who fills it in, who marks it, for how many points, and what lies folded."""
    cells = {cell["id"]: cell for cell in json.loads(key_notebook("04-buy-enough"))["cells"]}

    def flags(name):
        of = cells[name]["metadata"]["nbgrader"]
        return of["grade"], of["solution"], of["locked"], of.get("points")

    assert (False, False, True, None) == flags("q1-text") == flags("q1-given") == flags("open-set")
    assert (False, True, False, None) == flags("q1-answer") == flags("me")
    assert (True, False, True, 3) == flags("q1-check")
    assert (True, True, False, 4) == flags("q6-answer")
    assert {"source_hidden": True} == cells["q1-given"]["metadata"]["jupyter"]
    assert {"source_hidden": True} == cells["q1-check"]["metadata"]["jupyter"]
    assert "jupyter" not in cells["q1-answer"]["metadata"]


@pytest.mark.parametrize("set_id", SETS)
def test_every_numeric_question_names_three_slips_and_its_lesson(set_id, keys):
    """Each slip has a sentence; each question says what it trains and where to read again."""
    for question in keys[set_id].sheet.questions.values():
        assert len(question.slips) >= 3
        assert all(len(slip.sentence) > 20 for slip in question.slips)
        assert question.skill and question.lesson and question.working


@pytest.mark.parametrize("set_id", SETS)
def test_the_question_states_its_tolerance(set_id, keys):
    """The step of the hidden tolerance stands in the text that students read."""
    key = keys[set_id]
    for question in key.sheet.questions.values():
        if not isinstance(question, Question):
            continue  # a measurement or a plan is judged by rules, and has no tolerance
        step, text = question.tolerance.step, key.asked[question.id]
        if question.kind == "count":
            assert "whole" in text
        elif "dollar" in str(step.units):
            assert f"{round(step.magnitude * 100)} cents" in text
        else:
            assert f"within {say(step)}" in text


@pytest.mark.parametrize("set_id", SETS)
def test_a_measured_question_asks_for_what_it_judges(set_id, keys):
    """What each slip misses stands in the text, none costs more than the question has to give,
    and the text says that a missing measurement costs its own points only."""
    key = keys[set_id]
    measured = [each for each in key.sheet.questions.values() if isinstance(each, Measured)]
    for question in measured:
        assert all(slip.asks in key.asked[question.id] for slip in question.slips)
        assert all(0 < slip.costs <= question.points for slip in question.slips)
        assert "the points of this question only" in key.asked[question.id]
        assert list(key.sheet.choices[question.id]) == ["sample"]

    assert bool(measured) == (set_id in ("03-cut-to-size", "08-heat-gently"))


@pytest.mark.parametrize("set_id", SETS)
def test_students_copies_are_what_the_key_generates(set_id):
    """Generated twice, byte for byte, and equal to what lies in assignments/."""
    raw = key_notebook(set_id)
    term = json.loads(raw)["metadata"]["kitchen"]["term"]
    copy = released(raw, term)

    assert copy == released(raw, term)
    assert copy == (ASSIGNMENTS / set_id / f"{set_id}.ipynb").read_bytes()


@pytest.mark.parametrize("set_id", SETS)
def test_nothing_of_the_key_reaches_the_students(set_id, keys):
    """No slip, sentence, formula, hidden mark, solution or mark scheme occurs in the copy."""
    copy = (ASSIGNMENTS / set_id / f"{set_id}.ipynb").read_text(encoding="utf-8")
    key = keys[set_id]
    for mark in ("HIDDEN", "SOLUTION", "Slip(", "award", "Mark scheme", "lambda"):
        assert mark not in copy
    for question in key.sheet.questions.values():
        for slip in question.slips:
            assert slip.name not in copy
            assert json.dumps(slip.sentence, ensure_ascii=False)[1:-1] not in copy
        for line in question.working:
            assert line not in copy
    hidden = [
        line.strip()
        for cell in key.cells
        for part in re.findall(r"### BEGIN \w+.*?\n(.*?)### END", source(cell), re.DOTALL)
        for line in part.splitlines()
        if len(line.strip()) > 12
    ]
    text = "\n".join(source(cell) for cell in json.loads(copy)["cells"])
    shown = re.sub(r"### BEGIN .*?### END", "", "\n".join(map(source, key.cells)), flags=re.DOTALL)

    assert hidden
    assert [line for line in hidden if line in text and line not in shown] == []


def test_nothing_else_that_students_get_holds_a_key_text(keys):
    """Lessons and the library hold none of the keys' sentences."""
    students = [ASSIGNMENTS.parent / name for name in ("lessons", "kitchenmath")]
    files = [f for place in students for f in ([place] if place.is_file() else place.rglob("*.*"))]
    text = "\n".join(
        file.read_text(encoding="utf-8")
        for file in files
        if file.suffix in (".py", ".ipynb", ".md")
    )
    sentences = [
        slip.sentence
        for key in keys.values()
        for question in key.sheet.questions.values()
        for slip in question.slips
    ]

    assert [sentence for sentence in sentences if sentence in text] == []


def changed(set_id, old, new):
    """A key with one text replaced, as an author might break it."""
    text = key_file(set_id).read_text(encoding="utf-8")
    assert old in text
    return notebook_of(set_id, text.replace(old, new, 1))


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("# %% q2-given", "# %% q1-given", "share the id"),
        ("# %% q2-answer", "# %% q1-answer", "share the id q1-answer"),
        ("# %% q2-answer", "# %%", "has no name"),
        ("## 2. Nets to order (2 points)", "## 2. Nets to order", "must say"),
        ("# Set 4: Buy enough", "# Buy enough", "must say"),
        ("one.portion / one.yield_", "one.portion * one.yield_", "model answer .* earns"),
        ('Within(Q_(5, "g"))', 'Within(Q_(9000, "g"))', "gives the right answer"),
        ("sheet = open_set(", "other = open_set(", "NameError|no cell makes"),
        ("formula=lambda cooked, loss:", "formula=lambda cooked, lost:", "asks for lost"),
    ],
    ids=[
        "doubled cell",
        "doubled question",
        "no name",
        "no points",
        "no title",
        "bad answer",
        "collision",
        "no sheet",
        "unknown",
    ],
)
def test_a_broken_key_is_refused_when_it_is_loaded(old, new, words):
    """Each with a sentence that says where."""
    with pytest.raises(CourseError, match=words):
        load_key(changed("04-buy-enough", old, new))


def test_a_key_that_is_no_notebook_is_refused():
    """A text file in the keys' folder."""
    with pytest.raises(CourseError, match="no notebook of the kit"):
        load_key(b"celeriac")


def test_another_term_means_other_numbers_in_the_same_notebook(tmp_path):
    """Only the term differs between the copies of two terms."""
    raw = key_notebook("04-buy-enough")
    one, other = released(raw, "demo"), released(raw, "autumn-26")

    assert one != other
    assert one.replace(b"demo", b"autumn-26").count(b"autumn-26") == other.count(b"autumn-26")


def test_handing_out_twice_changes_nothing(tmp_path):
    """Byte for byte, in release, source and settings."""
    course = new_course(tmp_path / "kit à la crème", "Class", "demo", {"BH-1": "Ann"})
    first = hand_out(course, "04-buy-enough").read_bytes()

    assert first == hand_out(course, "04-buy-enough").read_bytes()
    assert not (course.folder / "kept").exists()


def test_a_set_that_does_not_exist_is_named(tmp_path):
    """The message lists the sets there are."""
    course = new_course(tmp_path / "c", "Class", "demo", {"BH-1": "Ann"})
    with pytest.raises(CourseError, match=r"no set “4”.*04-buy-enough"):
        hand_out(course, "4")


def test_all_copies_are_written_at_once_and_leftovers_go(tmp_path):
    """A set without a key any more leaves no copy behind."""
    (tmp_path / "99-gone").mkdir()
    (tmp_path / "99-gone" / "99-gone.ipynb").write_text("{}")
    written = write_assignments(tmp_path)

    assert [path.stem for path in written] == SETS
    assert not (tmp_path / "99-gone").exists()
