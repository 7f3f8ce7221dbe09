"""A record as a file: written in one version, read in every one that the kit ever wrote."""

import json

import pytest
from coursework.classes.course import new_course
from coursework.errors import CourseError
from coursework.records.copies import with_copies
from coursework.records.reading import usable_records
from coursework.records.record import Alike, Answered, Found, InCommon
from coursework.records.record_file import VERSION, as_text, read_record, record_from

from kitchenmath.practice import in_words
from kitchenmath.practice.plan_chart import Broken, Move, PlanBar, PlanChart, Waits
from tests.helpers.records import ROSTER, SET, leave, record, slips, verdict, written

# As the kit wrote records before they had a version: the oldest, which knew slips by name and had
# one sentence for all of them, and the last, which had fields and their sentences beside them.
OLDEST = {
    "set": SET,
    "title": "Buy enough",
    "student": "BH-1",
    "verdicts": [
        {"question": "q1", "asked": "## 1. Celeriac (3 points)", "outcome": "slip", "points": 1.0,
         "out_of": 3, "sentence": "You multiplied by the yield. Divide.", "answer": "2.9 kg",
         "right": "4.23 kg", "slips": ["multiplied by the yield"], "working": [], "given": []},
        {"question": "q2", "asked": "## 2. Nets (2 points)", "outcome": "right", "points": 2.0,
         "out_of": 2, "sentence": "Right.", "answer": "5", "right": "5", "slips": [],
         "working": [], "given": []},
    ],
    "human": [{"question": "q6", "asked": "## 6. Why?", "answer": "", "out_of": 4.0}],
}  # fmt: skip
LAST = OLDEST | {
    "task": "t", "handed_in": "2026-10-02 18:31:07", "sha256": "0", "findings": ["Odd."],
    "alike": {"sha256": "1", "filled": 5},
    "verdicts": [
        {"question": "q1", "asked": "## 1. Celeriac (3 points)", "outcome": "slip", "points": 1.0,
         "out_of": 3, "answer": "2.9 kg", "right": "4.23 kg", "working": [],
         "given": ["covers: 36"],
         "found": [{"name": "a", "sentence": "First.", "costs": 0.0},
                   {"name": "b", "sentence": "Second.", "costs": 0.0}],
         "alternatives": True, "notes": [], "slips": ["a", "b"], "sentence": "First. Or: Second.",
         "sentences": ["First.", "Second."], "skill": "yield", "lesson": "04-buy-enough.ipynb"},
    ],
}  # fmt: skip


@pytest.fixture
def course(tmp_path):
    return new_course(tmp_path / "class", "Brackwater House (invented)", "demo", ROSTER)


def test_what_is_written_is_read_again():
    mine = record("BH-1", verdict("q1", "slip", 1.0), verdict("q2", points=None), human=[written()],
                  findings=("Odd.",), to_do=("Read it.",), alike=Alike("0", 5))  # fmt: skip
    text = as_text(mine)

    assert mine == record_from(json.loads(text))
    assert text == as_text(record_from(json.loads(text)))
    assert VERSION == json.loads(text)["version"]


def test_the_chart_of_a_plan_is_read_again():
    """With all that may be in it, and with nothing in it."""
    bar, broken = PlanBar("foam", 1140.0, 5.0, 0.0, 15.0), Broken("hold", ("foam",), 1150.0, 1160.0)
    move, waits = Move("foam", 1150.0, alone=True), Waits("foam", "", 15.0, None, False)
    for chart in (PlanChart((bar,), 1160.0, 930.0, (broken,), move, waits), PlanChart((), 1160.0)):
        mine = record("BH-1", verdict("q1", "slip", 1.0, chart=chart))

        assert mine == record_from(json.loads(as_text(mine)))


def test_the_oldest_record_keeps_its_slip_and_its_one_sentence():
    mine = record_from(OLDEST)
    slipped, right = mine.answered

    assert ((Found("multiplied by the yield", "You multiplied by the yield. Divide."),), ()) == (
        slipped.found,
        right.found,
    )
    assert [each["sentence"] for each in OLDEST["verdicts"]] == [
        in_words(each) for each in mine.answered
    ]
    assert (9.0, "q6", None) == (mine.out_of, mine.written[0].question, mine.written[0].points)


def test_the_last_record_without_a_version_keeps_every_field():
    mine = record_from(LAST)

    assert [
        Answered("q1", "## 1. Celeriac (3 points)", "2.9 kg", 3.0, "slip", 1.0, "4.23 kg",
                 ("covers: 36",), (Found("a", "First."), Found("b", "Second.")), True,
                 skill="yield", lesson="04-buy-enough.ipynb")
    ] == list(mine.answered)  # fmt: skip
    assert LAST["verdicts"][0]["sentence"] == in_words(mine.answered[0])
    assert (SET, Alike("1", 5), ("Odd.",)) == (mine.set_id, mine.alike, mine.findings)


@pytest.mark.parametrize("version", [3, 0, "2", None, [2], 2.0])
def test_an_unknown_version_is_refused_as_came_and_holds_up_nobody(course, version):
    leave(course, record("BH-1", verdict("q1")))
    fields = json.loads(as_text(record("BH-2", verdict("q1")))) | {"version": version}
    file = course.marks(SET, "BH-2")
    file.write_text(json.dumps(fields), encoding="utf-8")

    records, odd = usable_records(course, SET)

    assert ["BH-1"] == [each.student for each in records]
    [sentence] = odd
    assert sentence.startswith(f"marks/{SET}/BH-2.json: version {version} of a record is not known")
    assert "up to 2" in sentence
    with pytest.raises(CourseError, match="Open the class with the kit that marked it"):
        read_record(file)


def test_copies_are_worked_out_and_kept_in_no_file(course):
    """BH-2 and BH-3 are each named with the first of the three, and the first with both."""
    same = [record(student, verdict("q1"), alike=Alike("0", 4)) for student in ROSTER]
    leave(course, *same)
    records = with_copies(usable_records(course, SET)[0])

    assert [["BH-2", "BH-3"], ["BH-1"], ["BH-1"]] == [
        [one.student for one in each.copied] for each in records
    ]
    assert (InCommon("text", many=4),) == records[0].copied[0].common
    assert [as_text(each) for each in same] == [as_text(each) for each in records]


@pytest.mark.parametrize(
    "broken",
    [lambda one: one.pop("title"), lambda one: one.update(extra=1),
     lambda one: one["answered"][0].update(points="3"),
     lambda one: one["answered"][0].update(points=float("nan")),
     lambda one: one["answered"][0].update(out_of=True),
     lambda one: one["answered"][0].update(given="covers: 36"),
     lambda one: one["answered"][0]["found"][0].pop("name")],
)  # fmt: skip
def test_a_field_that_is_missing_or_of_another_kind_makes_no_record(broken):
    fields = json.loads(as_text(record("BH-1", verdict("q1", found=slips("too much")))))
    broken(fields)

    with pytest.raises(ValueError, match="record"):
        record_from(fields)
