"""Skills over all sets: who has got what, and the page that says so. All people are invented.

The small class is counted by hand in each docstring.
"""

import ast
import csv
import io
import json
import re
from pathlib import Path

import pytest
from coursework.classes.course import new_course
from coursework.errors import CourseError
from coursework.records.record import HumanMark
from coursework.records.record_file import as_text
from coursework.reports.skills_page import next_session, skills_page, skills_report
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import source
from coursework.skills import go_back
from coursework.skills.go_back import lesson_name, places
from coursework.skills.skill_table import skill_table

from tests.helpers.pages import HOSTILE, Page, assert_fits, assert_sound
from tests.helpers.records import ROSTER, record, slips, verdict

ONE, TWO = "01-measure-and-scale", "04-buy-enough"
LESSONS = Path(__file__).parents[3] / "lessons"


@pytest.fixture
def course(tmp_path):
    return new_course(tmp_path / "class", "Brackwater House (invented)", "demo", ROSTER)


def asked(question, skill, outcome="right", points=None, out_of=4.0, **other):
    """One verdict on a skill; a slip earns 1 of 4 points, anything else but right nothing."""
    usual = {"right": out_of, "follow-through": out_of, "slip": 1.0}.get(outcome, 0.0)
    points = usual if points is None else points
    return verdict(question, outcome, points, out_of, skill=skill, **other)


def leave(course, set_id, **records):
    """Leave the records of one set: BH_1=[verdicts]."""
    for name, verdicts in records.items():
        file = course.marks(set_id, name.replace("_", "-"))
        file.parent.mkdir(parents=True, exist_ok=True)
        titles = {"set_id": set_id, "title": set_id[3:].capitalize()}
        file.write_text(as_text(record(file.stem, *verdicts, **titles)), encoding="utf-8")


def table_of(course, marks=()):
    """The table, with points that a person gave: (set, student, question) to points."""
    given = {place: HumanMark(points) for place, points in dict(marks).items()}

    def human_marks(_, set_id):
        return {place[1:]: value for place, value in given.items() if place[0] == set_id}

    return skill_table(course, human_marks)


def test_a_small_class_by_hand(course):
    """Two sets, three students.

    Packs: BH-1 right (4 of 4), then slipped (1 of 4): the latest slipped, so not got.
    BH-2 slipped (1), then right (4): 5 of 8 points, more than half, so got.
    BH-3 handed in the first set only, and right: got. Not got by 1 of 3, which is not more than a
    third: the class has got it. Points 4 + 1 + 1 + 4 + 4 = 14 of 20, seven tenths.
    Loss: BH-1 nothing, BH-2 right; 1 of 2 is more than a third: the class has not got it.
    """
    leave(course, ONE, BH_1=[asked("q1", "packs")], BH_2=[asked("q1", "packs", "slip")],
          BH_3=[asked("q1", "packs")])  # fmt: skip
    leave(course, TWO, BH_1=[asked("q2", "packs", "slip"), asked("q3", "loss", "missing")],
          BH_2=[asked("q2", "packs"), asked("q3", "loss")])  # fmt: skip

    table = table_of(course)
    packs, loss = table.skills["packs"], table.skills["loss"]

    assert ["BH-1"] == packs.not_got == loss.not_got
    assert {"got": 3, "slipped": 2} == packs.found
    assert {"got": 1, "missing": 1} == loss.found
    assert 14 / 20 == pytest.approx(packs.share, abs=1e-12)
    assert [("multiplied by the yield", 2, "You multiplied by the yield. Divide.")] == packs.slips
    assert (packs.has_got_it, loss.has_got_it) == (True, False)
    assert ["loss"] == table.not_got()
    assert ["loss", "packs"] == table.not_got("BH-1")  # what most lack comes first
    assert [] == table.not_got("BH-2") == table.not_got("BH-3")
    assert ["BH-1", "BH-2", "BH-3"] == list(table.students)
    assert {ONE: "Measure-and-scale", TWO: "Buy-enough"} == table.sets
    assert table.standing("BH-3", "loss") is None


@pytest.mark.parametrize(
    ("outcomes", "got"),
    [
        (["right"], True),
        (["follow-through"], True),
        (["slip"], False),
        (["wrong"], False),
        (["missing"], False),
        (["unreadable"], False),
        (["missing", "right"], True),  # 4 of 8 points: half is enough
        (["missing", "missing", "right"], False),  # 4 of 12
        (["slip", "missing", "right"], False),  # 5 of 12
        (["right", "right", "slip"], False),  # 9 of 12, and the latest slipped
    ],
)
def test_the_rule_of_having_got_it(course, outcomes, got):
    """The latest question came right, and at least half of the points of all of them are there."""
    for number, outcome in enumerate(outcomes, start=1):
        leave(course, f"{number:02d}-set", BH_1=[asked("q1", "packs", outcome)])

    assert got is table_of(course).standing("BH-1", "packs").has_got_it


def test_the_latest_goes_by_the_number_of_set_and_question(course):
    """Set 10 comes after set 9, and q10 after q9."""
    leave(course, "10-set", BH_1=[asked("q10", "packs"), asked("q9", "packs", "slip")])
    leave(course, "9-set", BH_1=[asked("q1", "packs", "slip", points=4.0)])

    assert ("10-set", "q10") == (
        (latest := table_of(course).standing("BH-1", "packs").latest).set_id,
        latest.question,
    )
    assert table_of(course).standing("BH-1", "packs").has_got_it


@pytest.mark.parametrize(
    ("outcome", "points", "got", "slips"),
    [
        ("slip", 2.0, True, []),  # half of the four points
        ("slip", 1.5, False, ["multiplied by the yield"]),
        ("wrong", 4.0, True, []),
        ("right", 1.0, False, []),
        ("right", 3.0, True, []),
    ],
)
def test_points_of_a_person_count_before_the_machines(course, outcome, points, got, slips):
    """Half of them or more is right; a slip that a person let pass is none."""
    leave(course, TWO, BH_1=[asked("q1", "packs", outcome)])

    mine = table_of(course, {(TWO, "BH-1", "q1"): points}).standing("BH-1", "packs")

    assert (got, points, slips) == (mine.has_got_it, mine.points, mine.slips)


@pytest.mark.parametrize(
    ("missed", "asked_of", "got"), [(1, 3, True), (2, 5, False), (8, 24, True)]
)
def test_the_class_has_not_got_what_more_than_a_third_have_not(course, missed, asked_of, got):
    """1 of 3 and 8 of 24 are a third; 2 of 5 is more."""
    outcomes = ["slip"] * missed + ["right"] * (asked_of - missed)
    leave(
        course, TWO, **{f"BH_{n}": [asked("q1", "packs", each)] for n, each in enumerate(outcomes)}
    )

    assert got is table_of(course).skills["packs"].has_got_it


def test_who_handed_in_nothing_counts_nowhere(course):
    """Of BH-2 and BH-3 nothing is known; BH-9 is not on the roster and is shown by number."""
    leave(course, TWO, BH_1=[asked("q1", "packs")], BH_9=[asked("q1", "packs", "slip")])

    table = table_of(course)

    assert ["BH-1", "BH-9"] == list(table.skills["packs"].students)
    assert ["BH-9", "BH-1", "BH-2", "BH-3"] == list(table.students)
    assert "BH-9" == table.students["BH-9"]
    assert not table.was_asked("BH-2")
    assert table.was_asked("BH-1", TWO) and not table.was_asked("BH-1", ONE)
    told = Page(skills_page(course, table)).text
    assert "Bram Oakes (BH-2), Chidi Morrow (BH-3)" in told


def test_nothing_marked_says_so(course):
    with pytest.raises(CourseError, match="is marked yet"):
        table_of(course)


WHOLE = as_text(record("BH-2", asked("q1", "packs")))
ODD = [
    "{ broken",
    "[]",
    WHOLE.replace('"points": 4.0', '"points": "many"'),
    WHOLE.replace('"found": []', '"found": null'),
    WHOLE.replace('"found": []', '"found": ["a slip"]'),
    WHOLE.replace('"question": "q1"', '"question": 1'),
    WHOLE.replace('"alternatives": false', '"alternatives": 0'),
    WHOLE.replace('"skill"', '"skyll"'),
]


@pytest.mark.parametrize("odd", ODD)
def test_an_odd_record_is_named_and_holds_up_nothing(course, odd):
    """BH-1 and BH-3 are counted, the file is named on the page, and a damaged set too."""
    leave(course, TWO, BH_1=[asked("q1", "packs")], BH_3=[asked("q1", "packs", "slip")])
    course.marks(TWO, "BH-2").write_text(odd, encoding="utf-8")

    table = table_of(course)
    told = Page(skills_page(course, table)).text

    assert ["BH-1", "BH-3"] == list(table.skills["packs"].students)
    assert f"marks/{TWO}/BH-2.json" in told
    assert "delete it and mark BH-2 again" in told


def test_no_question_and_no_set_is_left_out_in_silence(course):
    """A question that names no skill, a set with no mark yet, and one that is damaged through."""
    leave(course, TWO, BH_1=[asked("q1", "packs"), asked("q2", ""), asked("q3", " ")])
    course.marks(ONE, "BH-1").parent.mkdir(parents=True)
    course.marks(ONE, "BH-1").write_bytes(b"{")
    out = course.release("06-foam")
    out.parent.mkdir(parents=True)
    out.write_text("{}")

    told = Page(skills_page(course, table_of(course))).text

    assert f"{TWO}, q2: its mark names no skill" in told
    assert f"{TWO}, q3: its mark names no skill" in told
    assert f"marks/{ONE}/BH-1.json cannot be used" in told
    assert "Nothing is marked of 06-foam yet." in told


def named_in(set_id):
    """What a key's questions name as skill and as lesson, read and not run."""
    cells = json.loads(key_notebook(set_id))["cells"]
    code = "\n".join(source(cell) for cell in cells if cell["cell_type"] == "code")
    words = [
        node
        for node in ast.walk(ast.parse(code))
        if isinstance(node, ast.keyword) and node.arg in ("skill", "lesson")
    ]
    skills = [word.value.value for word in words if word.arg == "skill"]
    return skills, [word.value.value for word in words if word.arg == "lesson"]


@pytest.mark.parametrize("set_id", set_ids())
def test_each_skill_of_each_key_has_a_lesson_and_a_drill_in_it(set_id):
    """The lesson that the key names is there, and the one of the drill shows that very drill."""
    skills, lessons = named_in(set_id)

    assert len(skills) == len(lessons) >= 5
    assert all((LESSONS / lesson).is_file() for lesson in lessons)
    for skill in skills:
        assert places(skill), go_back.no_place(skill)
        for place in places(skill):
            code = [
                "".join(cell["source"])
                for cell in json.loads((LESSONS / place.lesson).read_bytes())["cells"]
                if cell["cell_type"] == "code"
            ]
            shows = re.compile(rf'drill_panel\([\w.]+\["{re.escape(place.name)}"\]\)')

            assert place.drill.text and place.drill.hint
            assert any(map(shows.search, code))
            assert any(place.drills in text for text in code)
            assert lesson_name(place.lesson).startswith("lesson ")


def test_a_skill_without_a_drill_is_a_sentence_on_the_page(course):
    """It says which file takes the line; the skill's own lesson is still named."""
    leave(course, TWO, BH_1=[asked("q1", "peeling thin", "slip")])

    told = Page(skills_page(course, table_of(course))).text

    assert "No drill is named for “peeling thin” yet: add a line to " in told
    assert "instructor/coursework/skills/go_back.csv" in told
    assert "Go back to lesson 4, “Buy enough”." in told


def test_next_session_is_said_in_a_few_sentences(course):
    """Whole packs: 2 of 3 have not got it, one slipped. Cooking loss: 2 of 3, worse in points."""
    leave(
        course, TWO,
        BH_1=[asked("q1", "whole packs", "slip"), asked("q2", "cooking loss", "missing")],
        BH_2=[asked("q1", "whole packs", "wrong"), asked("q2", "cooking loss", "missing")],
        BH_3=[asked("q1", "whole packs"), asked("q2", "cooking loss")],
    )  # fmt: skip

    assert [
        "Teach “cooking loss” again first: 2 of 3 have not got it.",
        "Start from lesson 4, “Buy enough”, drill “raw for cooked”.",
        "Then comes “whole packs” (2 of 3).",
    ] == next_session(table_of(course))

    leave(course, TWO, BH_2=[asked("q1", "whole packs"), asked("q2", "cooking loss")])
    leave(course, TWO, BH_1=[asked("q1", "whole packs", "slip"), asked("q2", "cooking loss")])
    assert [
        "The class knows every skill that was asked so far: go on with the plan.",
        "1 student has gaps: make a re-teach sheet for each.",
    ] == next_session(table_of(course))

    leave(course, TWO, BH_1=[asked("q1", "whole packs")])
    assert "Nobody has a gap." == next_session(table_of(course))[-1]


def test_the_commonest_slip_is_named_in_it(course):
    leave(course, TWO, BH_1=[asked("q1", "whole packs", "slip")])

    first, *_, last = next_session(table_of(course))

    assert "“multiplied by the yield” (1 answer)" in first
    assert "All else lies with single students" in last


def small_class(course):
    """Three students and two skills, with a slip, a gap and a box that was not asked."""
    leave(
        course, TWO,
        BH_1=[asked("q1", "whole packs", "slip"), asked("q2", "cooking loss", "missing")],
        BH_2=[asked("q1", "whole packs"), asked("q2", "cooking loss", "unreadable")],
        BH_3=[asked("q1", "whole packs")],
    )  # fmt: skip
    return course


def test_the_grid_says_each_box_in_a_sign_and_in_words(course):
    """Neither colour nor sign alone: loss – and ? and nothing, packs ! and ✓ and ✓."""
    text = skills_page(small_class(course), table_of(course))
    page = assert_sound(text)

    assert "cooking loss 2 of 2 lack it –no answer?could not be readnot asked" in page.text
    assert "whole packs 1 of 3 lack it !a usual slip✓got it✓got it" in page.text
    boxes = [attrs["class"] for tag, attrs in page.elements if attrs.get("class", "")[:4] == "cell"]
    assert ["cell again", "cell again", "cell unasked", "cell again", "cell", "cell"] == boxes[:6]
    assert (
        "A student still has to learn a skill when the latest question on it did not come right"
        in page.text
    )
    assert (
        "Ada Quill (BH-1) Lesson 4, “Buy enough”: cooking loss (no answer); whole packs"
        in page.text
    )
    assert "1 knows all that was asked: Chidi Morrow (BH-3)." in page.text


def test_a_large_class_is_shown_as_far_as_it_can_be_read(course):
    """By hand: 100 students, 24 beside each other in three grids are 72; 28 are left."""
    leave(course, TWO, **{f"BH_{n}": [asked("q1", "whole packs", "slip")] for n in range(100)})

    text = skills_page(course, table_of(course))

    assert 3 == text.count('<table class="grid"')
    assert "28 more students" in text


@pytest.mark.parametrize(
    "place", ["name", "skill", "slip", "sentence", "lesson", "title", "course"]
)
def test_nothing_that_anybody_wrote_runs(tmp_path, place):
    """Whoever wrote it: student, roster, or key."""
    roster = {"BH-1": HOSTILE} if place == "name" else ROSTER
    course = new_course(tmp_path / "class", "Brackwater House", "demo", roster)
    other = {
        "slip": {"found": slips(HOSTILE)},
        "sentence": {"found": slips("too much", sentence=HOSTILE)},
        "lesson": {"lesson": HOSTILE},
    }.get(place, {})
    skill = HOSTILE if place == "skill" else "whole pack"
    leave(course, TWO, BH_1=[asked("q1", skill, "slip", **other)])
    table = table_of(course)
    if place == "title":
        table.sets[TWO] = HOSTILE
    if place == "course":
        course = type("Course", (), {"name": HOSTILE, "roster": roster})

    text = skills_page(course, table)

    assert "alert(1)" in assert_sound(text).text


def test_all_three_files_are_written(course):
    """The sheets are read back with the standard library; a cell is never a formula."""
    small_class(course)
    course.roster["BH-1"] = "=Ada"
    seen = []

    page, by_skill, by_student = skills_report(
        course, lambda *step: seen.append(step), table_of(course)
    )

    rows = list(csv.DictReader(io.StringIO(by_skill.read_text("utf-8-sig"))))
    assert ["cooking loss", "whole packs"] == [row["skill"] for row in rows]
    assert ("2", "2", "0 %", "no") == tuple(
        rows[0][name]
        for name in (
            "students asked", "have not got it", "share of the points", "the class has got it",
        )
    )  # fmt: skip
    assert "multiplied by the yield (1)" == rows[1]["commonest slips"]
    lines = list(csv.DictReader(io.StringIO(by_student.read_text("utf-8-sig"))))
    assert 5 == len(lines)
    assert ("BH-1", "'=Ada", "whole packs", "1", "4", "no") == tuple(
        lines[1][name]
        for name in ("student number", "name", "skill", "points", "out of", "has got it")
    )
    assert_sound(page.read_text("utf-8"))
    assert [1, 2, 3] == [step[0] for step in seen]


def test_the_same_class_gives_the_same_page(course):
    small_class(course)

    assert skills_page(course, table_of(course)) == skills_page(course, table_of(course))


def test_the_page_fits_a_phone(course):
    """With 24 students beside each other."""
    leave(
        course, TWO, **{f"BH_{n}": [asked("q1", "whole packs", "slip")] for n in range(1001, 1025)}
    )
    page, *_ = skills_report(course, table=table_of(course))

    assert_fits(page)
