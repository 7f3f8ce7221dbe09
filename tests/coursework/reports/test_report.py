"""Mark sheet and class picture. All students, answers and marks here are invented.

Facility and discrimination are checked by hand, against numpy's corrcoef and against scipy's
pointbiserialr; figures against the numbers that went in.
"""

import csv
import io
import json
import random
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import matplotlib
import numpy
import pytest
from coursework.csv_sheets import sheet_as_csv
from coursework.records.record import Copied, HumanMark, InCommon
from coursework.reports import class_figures
from coursework.reports.class_figures import draw_agreement, draw_bars, draw_marks
from coursework.reports.picture import DOTS, STEP_PERCENT
from coursework.reports.report import class_page, class_picture, mark_sheet, report
from hypothesis import given
from hypothesis import strategies as st
from matplotlib.figure import Figure
from scipy.stats import pointbiserialr

from tests.helpers.pages import HOSTILE, Page, assert_fits, assert_sound
from tests.helpers.records import ROSTER, SET, leave, record, slips, verdict, whole_class, written

KIT = Path(__file__).resolve().parents[3]


def class_of(*rows, out_of=4.0):
    """Records of a class from each student's points, question by question; None is open."""
    records = []
    for place, row in enumerate(rows, start=1):
        questions = [(f"q{number}", points) for number, points in enumerate(row, start=1)]
        records.append(
            record(
                f"BH-{place:05d}",
                *(
                    verdict(question, "right", points, out_of)
                    for question, points in questions
                    if points is not None
                ),
                human=[
                    written(question, out_of=out_of)
                    for question, points in questions
                    if points is None
                ],
            )
        )
    return records


def picture_of(*rows, out_of=4.0):
    return class_picture(class_of(*rows, out_of=out_of), {}, {})


def test_facility_is_the_mean_share_of_the_points():
    """By hand: (4 + 2 + 0) / 3 = 2 of 4 points, a half; (4 + 4 + 1) / 3 = 3, three quarters."""
    picture = picture_of((4, 4), (2, 4), (0, 1))

    assert {"q1": 0.5, "q2": 0.75} == picture.facility


def test_discrimination_leaves_the_question_itself_out():
    """By hand, q1 against q2 + q3 of five students.

    q1 is 0 0 2 4 4, mean 2; the others' sums are 1 3 2 4 5, mean 3.
    Products of the differences: 4 + 0 + 0 + 2 + 4 = 10; squares 16 and 10: 10 / sqrt(160) = 0.7906.
    With q1 in the total, 1 3 4 8 9, it would be 0.9733.
    """
    picture = picture_of((0, 1, 0), (0, 2, 1), (2, 1, 1), (4, 2, 2), (4, 3, 2))

    assert picture.discrimination["q1"] == pytest.approx(10 / 160**0.5, abs=1e-12)


def test_two_questions_that_pull_apart_have_minus_one():
    """By hand: q2 is 4 less q1. With itself in the total, which is always 4, there is no number."""
    picture = picture_of((0, 4), (1, 3), (2, 2), (3, 1), (4, 0))

    assert picture.discrimination["q1"] == pytest.approx(-1, abs=1e-12)


points = st.integers(0, 8).map(lambda halves: halves / 2)


@given(st.integers(2, 6).flatmap(lambda n: st.lists(st.tuples(*[points] * n), min_size=5)))
def test_discrimination_agrees_with_numpy(rows):
    """Referee: numpy.corrcoef of each column with the sum of the others."""
    table, picture = numpy.array(rows), picture_of(*rows)
    for number, (question, value) in enumerate(picture.discrimination.items()):
        rest = numpy.delete(table, number, axis=1).sum(axis=1)
        if numpy.ptp(table[:, number]) == 0 or numpy.ptp(rest) == 0:
            assert value is None
            assert "everybody has the same points" in picture.blank[question]
        else:
            expected = numpy.corrcoef(table[:, number], rest)[0, 1]

            assert expected == pytest.approx(value, abs=1e-9)


def test_discrimination_of_right_or_wrong_agrees_with_scipy():
    """Referee: scipy's point-biserial correlation, for a question with all or no points."""
    chance = random.Random(7)
    able = [chance.random() for _ in range(24)]
    rows = [[4 * (chance.random() < share) for _ in range(6)] for share in able]
    picture = picture_of(*rows)
    for number, value in enumerate(picture.discrimination.values()):
        item = [row[number] > 0 for row in rows]
        rest = [sum(row) - row[number] for row in rows]

        assert pointbiserialr(item, rest).statistic == pytest.approx(value, abs=1e-9)


def test_numbers_that_no_float_holds_make_no_spread():
    """0.1 + 0.2 and 0.3 are equal points: no correlation is made of their last digit."""
    rows = [(1, 0.1, 0.2), (2, 0.3, 0.0), (3, 0.2, 0.1), (4, 0.1, 0.2), (0, 0.3, 0.0)]

    assert "everybody has the same points elsewhere" == picture_of(*rows).blank["q1"]


@pytest.mark.parametrize(
    ("rows", "facility", "why"),
    [
        ([(1, 2)] * 4, 0.25, "fewer than 5 hand-ins are marked"),
        ([(1, 2), (1, 3), (1, 4), (1, 0), (1, 1)], 0.25, "everybody has the same points here"),
        ([(0, 2), (1, 2), (2, 2), (3, 2), (4, 2)], 0.5, "everybody has the same points elsewhere"),
        ([(0,), (1,), (2,), (3,), (4,)], 0.5, "no other question is marked for everybody"),
        ([(None, 1)] * 5, None, "nothing is marked yet"),
    ],
)
def test_a_number_that_cannot_be_is_blank_and_says_why(rows, facility, why):
    picture = picture_of(*rows)

    assert facility == picture.facility["q1"]
    assert picture.discrimination["q1"] is None
    assert picture.blank["q1"].startswith(why)


def test_an_open_mark_counts_nowhere():
    """By hand: q2 is marked for five of six, 0 2 2 4 4, mean 2.4 of 4.

    q1's others are q3 alone: with q2 in the sum, the student whose q2 is open would look weak.
    """
    rows = [(0, 0, 0), (1, 2, 1), (2, 2, 2), (3, 4, 3), (4, 4, 4), (4, None, 4)]
    picture = picture_of(*rows)

    assert picture.facility["q2"] == pytest.approx(0.6, abs=1e-12)
    assert 5 == picture.counted["q2"]
    assert picture.discrimination["q1"] == pytest.approx(1, abs=1e-12)
    assert picture.shares == [0, pytest.approx(1 / 3), 0.5, pytest.approx(5 / 6), 1, 1]


def test_a_persons_marks_are_part_of_the_picture():
    """By hand: 4 and 2 of 4 points are three quarters."""
    records = class_of((1, None), (1, None))
    human = {("BH-00001", "q2"): HumanMark(4.0, ""), ("BH-00002", "q2"): HumanMark(2.0, "")}

    assert 0.75 == class_picture(records, human, {}).facility["q2"]


def test_a_question_without_points_has_no_facility():
    """A practice question is out of 0."""
    assert picture_of((0, 1), (0, 2), out_of=0.0).facility["q1"] is None


def test_slips_are_counted_commonest_first():
    """Two that give the same number are counted as one, under both names."""
    found = (*slips("one way", sentence="First."), *slips("other way", sentence="Second."))
    either = verdict("q1", "slip", found=found, alternatives=True)
    records = [
        record("BH-1", either, verdict("q2", "slip")),
        record("BH-2", verdict("q1", "slip"), verdict("q2", "wrong")),
    ]

    common, rare = class_picture(records, {}, ROSTER).slips

    assert (("multiplied by the yield",), 2, {"q1": 1, "q2": 1}) == (
        common.names,
        common.count,
        common.questions,
    )
    assert "You multiplied by the yield. Divide." == common.sentence
    assert (("one way", "other way"), 1) == (rare.names, rare.count)


def words_about(student, *records, roster=None, **other):
    found = class_picture(records, {}, ROSTER if roster is None else roster, **other).needs_word
    return next((each.reasons for each in found if each.student == student), [])


def test_who_needs_a_word():
    """Each reason alone, and nobody without a reason."""
    copied = (Copied("BH-2", (InCommon("text", many=5),)),)
    long = verdict("q1", "unreadable", answer="ten\nkilo " + "x" * 90)

    assert [] == words_about("BH-1", record("BH-1", verdict("q1")))
    assert ["1.17 of 3 points so far, which is under 40\N{NO-BREAK SPACE}%"] == words_about(
        "BH-1", record("BH-1", verdict("q1", "wrong", 1.17))
    )
    assert ["the same slip 2 times: multiplied by the yield"] == words_about(
        "BH-1", record("BH-1", verdict("q1", "slip"), verdict("q2", "slip"))
    )
    assert [
        "“1. Celeriac, part q1” could not be read: the answer is “ten kilo " + "x" * 50 + "…”"
    ] == words_about("BH-1", record("BH-1", long))
    assert [
        "compare BH-1 with BH-2 (Bram Oakes): the same text in all 5 answers that were filled in"
    ] == words_about("BH-1", record("BH-1", verdict("q1"), copied=copied))
    assert ["The run was stopped after 60 seconds."] == words_about(
        "BH-1",
        record("BH-1", verdict("q1"), findings=["The run was stopped after 60 seconds."]),
    )
    assert ["is not on the roster"] == words_about("BH-9", record("BH-9", verdict("q1")))
    assert ["handed in nothing"] == words_about("BH-3", record("BH-1", verdict("q1")))
    assert ["handed in, but is not marked yet: mark again"] == words_about(
        "BH-3", record("BH-1", verdict("q1")), waiting=["BH-3"]
    )


def test_those_with_most_reasons_come_first():
    many = record("BH-3", verdict("q1", "wrong", 0.0), findings=["Odd."])

    found = class_picture([many, record("BH-2", verdict("q1"))], {}, ROSTER).needs_word

    assert ["BH-3", "BH-1"] == [each.student for each in found]


def test_forty_percent_is_not_under_forty_percent():
    """By hand: 1.2 of 3 points; in floating point 1.2 / 3 is 0.39999999999999997."""
    assert 1.2 / 3 < 0.4
    assert [] == words_about("BH-1", record("BH-1", verdict("q1", points=1.2)))


def test_a_row_for_each_student(course):
    """By hand: 3 + 1 = 4 of 10 with q9 open; BH-2 has 3 + 2.5; BH-3 handed in nothing."""
    records = [
        record("BH-1", verdict("q1"), verdict("q2", "slip", 1.0), human=[written()]),
        record(
            "BH-2",
            verdict("q1"),
            verdict("q2", "missing", 0.0),
            human=[written()],
            copied=(Copied("BH-1", (InCommon("text", many=5),)),),
            findings=["The run was stopped."],
        ),
        record("BH-9", verdict("q1")),
    ]
    human = {("BH-1", "q9"): HumanMark(None, ""), ("BH-2", "q9"): HumanMark(2.5, "")}

    rows = mark_sheet(course, SET, records, human)

    assert [
        ["student number", "name", "q1 of 3", "q2 of 3", "q9 of 4", "total so far", "out of",
         "open", "slips", "notes"],
        ["BH-1", "Ada Quill", "3", "1", "", "4", "10", "1", "q2 multiplied by the yield", ""],
        ["BH-2", "Bram Oakes", "3", "0", "2.5", "5.5", "10", "0", "",
         "Compare with BH-1: the same text in all 5 answers that were filled in. "
         "The run was stopped."],
        ["BH-3", "Chidi Morrow", "", "", "", "", "", "", "", "Nothing handed in."],
        ["BH-9", "", "3", "", "", "3", "3", "0", "", "Not on the roster."],
    ] == rows  # fmt: skip


def arrival(sha256, became):
    """One line of the list of what arrived."""
    return {"place": "post", "name": "a.ipynb", "sha256": sha256, "student": "BH-1",
            "set_id": SET, "became": became, "reason": "It does not say whose it is."}  # fmt: skip


def arrive(course, *lines):
    course.arrived.mkdir(exist_ok=True)
    (course.arrived / "list.json").write_text(json.dumps(lines), encoding="utf-8")


def notes_of(course, *records):
    return {row[0]: row[-1] for row in mark_sheet(course, SET, records, {})[1:]}


def test_a_hand_in_that_lies_there_unmarked_is_not_called_nothing(course):
    file = course.submitted(SET, "BH-3")
    file.parent.mkdir(parents=True)
    file.write_text("{}", encoding="utf-8")
    records = [record("BH-1", verdict("q1"))]

    assert "Not marked yet." == notes_of(course, *records)["BH-3"]
    assert "Nothing handed in." == notes_of(course, *records)["BH-2"]
    told = Page(class_page(course, SET, records, {})).text
    assert "1 handed in nothing. 1 handed in and is not marked yet: mark again." in told


def test_a_second_hand_in_is_noted(course):
    """The record is of a file of 64 noughts; another one that counts is not marked yet."""
    marked = record("BH-1", verdict("q1"))
    arrive(course, arrival("1" * 64, "replaced by a later one"), arrival("0" * 64, "counts"))
    assert "Handed in 2 times: the latest counts." == notes_of(course, marked)["BH-1"]

    arrive(course, arrival("1" * 64, "counts"))
    assert "The latest hand-in is not marked yet: mark again." == notes_of(course, marked)["BH-1"]


def test_what_could_not_be_placed_stands_on_the_page(course, entered):
    leave(course, record("BH-1", verdict("q1")))
    course.marks(SET, "BH-2").write_text("{", encoding="utf-8")
    arrive(course, arrival("2" * 64, "not placed"))

    told = Page(report(course, SET)[1].read_text(encoding="utf-8")).text

    assert "not placed. It does not say whose it is." in told
    assert "BH-2.json cannot be used: delete it and mark BH-2 again." in told


def test_a_damaged_list_does_not_hold_up_the_report(course, entered):
    leave(course, record("BH-1", verdict("q1")))
    arrive(course)
    (course.arrived / "list.json").write_text("{", encoding="utf-8")

    sheet, page = report(course, SET)

    assert "BH-1" in sheet.read_text(encoding="utf-8-sig")
    assert "arrived/list.json is damaged" in Page(page.read_text(encoding="utf-8")).text


@pytest.mark.parametrize(
    ("cell", "kept"),
    [
        ("=1+1", "'=1+1"),
        ("+44 1234", "'+44 1234"),
        ("-BH-1", "'-BH-1"),
        ("@sum", "'@sum"),
        ("  =1+1", "'  =1+1"),
        ("\t=1+1", "'\t'=1+1"),
        ("＝1+1", "'＝1+1"),
        ("a;=1+1", "a;'=1+1"),
        ("a\n=1+1", "a\n'=1+1"),
        ("-1.5", "-1.5"),
        ("2.5", "2.5"),
        ("", ""),
        ("Ada; Quill - cook", "Ada; Quill - cook"),
        ("Zoë, “Ferny”", "Zoë, “Ferny”"),
        ('say "yes"', 'say "yes"'),
    ],
)
def test_no_cell_is_a_formula(cell, kept):
    """Read back with the standard library; what a spreadsheet would run has an apostrophe."""
    rows = list(csv.reader(io.StringIO(sheet_as_csv([[cell, "end"]]), newline="")))

    assert [[kept, "end"]] == rows


def test_both_files_are_written(course, entered):
    """The sheet begins with the mark by which spreadsheets know UTF-8, so that ë stays ë."""
    course.roster["BH-1"] = "Zoë Ferny"
    leave(course, record("BH-1", verdict("q1"), human=[written()]))
    entered["BH-1", "q9"] = HumanMark(3.0, "")
    seen = []

    sheet, page = report(course, SET, lambda *step: seen.append(step))

    assert (course.reports / f"{SET}-marks.csv", course.reports / f"{SET}.html") == (sheet, page)
    assert b"\xef\xbb\xbfstudent number," == sheet.read_bytes()[:18]
    assert "BH-1,Zoë Ferny,3,3,6,7,0,," in sheet.read_text(encoding="utf-8-sig")
    assert_sound(page.read_text(encoding="utf-8"))
    assert [(1, 2, "mark sheet"), (2, 2, "class's page")] == seen


def test_the_page_says_in_words_what_it_draws(course):
    """By hand: 3, 2.4, 1.8, 1.2 and 0.9 of 3 points are 100 to 30 %, 60 % in the middle."""
    marks = (3.0, 2.4, 1.8, 1.2, 0.9)
    records = [
        record(f"BH-{place}", verdict("q1", points=points), verdict("q2", points=points))
        for place, points in enumerate(marks, start=1)
    ]

    page = assert_sound(class_page(course, SET, records, {}))
    told = page.text.replace("\N{NO-BREAK SPACE}", " ")

    assert "Marks go from 30 % to 100 %. The middle one is 60 %" in told
    assert "under 40 %: 1 student 40 % to under 60 %: 1 student" in told
    assert "60 % to under 80 %: 1 student 80 % and more: 2 students" in told
    assert "1. Celeriac, part q1 3 points, 5 marked 62 %: most of it came right" in told
    assert "1.00: who did well elsewhere did well here too" in told
    assert "With 5 hand-ins chance alone moves it by about 0.5 either way" in told
    assert "No answer shows one of the usual slips." in told
    assert "Everything that arrived found its place." in told
    assert 3 == [tag for tag, _ in page.elements].count("svg")


def test_an_empty_answer_is_no_verdict_on_the_question(course):
    """Empty written answers are 0 before a person has read the others."""
    records = [record(student, human=[written()]) for student in ROSTER]

    told = Page(class_page(course, SET, records, {("BH-1", "q9"): HumanMark(0.0, "")})).text

    assert "2 more to mark" in told
    assert "2 written answers wait" in told
    assert "teach it again" not in told


@pytest.mark.parametrize("students", [1, 4])
def test_a_small_class_has_a_page_too(course, students):
    page = assert_sound(class_page(course, SET, whole_class()[:students], {}))

    assert "fewer than 5 hand-ins" in page.text
    assert "It takes 5 hand-ins at least." in page.text


def test_a_class_with_nothing_marked_has_a_page_too(course):
    page = assert_sound(class_page(course, SET, [record("BH-1", human=[written()])], {}))

    assert "No points are marked yet." in page.text


@pytest.mark.parametrize("place", ["name", "answer", "finding", "copied", "slip", "heading"])
def test_nothing_that_anybody_wrote_runs(course, place):
    """Whoever wrote it: student, roster, or key; in the page and inside its drawings."""
    records = whole_class()
    first, student = {}, {}
    if place == "name":
        course.roster["BH-1"] = HOSTILE
        student = {"findings": ("Odd.",)}
    if place == "answer":
        first = {"outcome": "unreadable", "answer": HOSTILE}
    if place == "finding":
        student = {"findings": (HOSTILE,)}
    if place == "copied":
        student = {"copied": (Copied(HOSTILE, (InCommon("text", many=5),)),)}
    if place == "slip":
        found = slips(HOSTILE + "$\\frac", sentence=HOSTILE)
        first = {"outcome": "slip", "found": found}
    if place == "heading":
        first = {"asked": f"## {HOSTILE}"}
    changed = replace(records[0].answered[0], **first)
    answered = (changed, *records[0].answered[1:])
    records[0] = replace(records[0], answered=answered, **student)

    text = class_page(course, SET, records, {}, [HOSTILE])

    assert_sound(text)
    assert "alert(1)" in Page(text).text


def test_the_same_class_gives_the_same_page_in_another_process(course):
    """With another hash seed, and after someone changed matplotlib's settings."""
    code = """
import sys
sys.path[:0] = [{kit!r}, {instructor!r}]
import matplotlib
matplotlib.rcParams["lines.linewidth"] = 20
matplotlib.rcParams["axes.linewidth"] = 20
matplotlib.rcParams["svg.fonttype"] = "path"
from coursework.classes.course import open_course
from coursework.reports.report import class_page
from tests.helpers.records import SET, whole_class
sys.stdout.buffer.write(class_page(open_course({folder!r}), SET, whole_class(), {{}}).encode())
""".format(kit=str(KIT), instructor=str(KIT / "instructor"), folder=str(course.folder))
    here = class_page(course, SET, whole_class(), {})

    other = subprocess.run(
        [sys.executable, "-c", code], env={"PYTHONHASHSEED": "42"}, capture_output=True, check=True
    )

    assert here.encode() == other.stdout
    assert "This page was written" not in here
    assert "written on 5 October" in class_page(course, SET, whole_class(), {}, when="on 5 October")


def test_a_mark_sheet_needs_no_matplotlib_and_a_page_no_pyplot():
    code = """
import sys
import coursework.reports.report
assert "matplotlib" not in sys.modules and "nbgrader" not in sys.modules
import coursework.reports.class_figures
assert "matplotlib.pyplot" not in sys.modules
"""
    path = {"PYTHONPATH": f"{KIT}:{KIT / 'instructor'}"}

    subprocess.run([sys.executable, "-c", code], env=path, check=True)


def test_drawing_leaves_matplotlibs_settings_alone(course):
    with matplotlib.rc_context({"font.size": 17}):
        before = dict(matplotlib.rcParams)
        class_page(course, SET, whole_class(), {})

        assert before == dict(matplotlib.rcParams)


shares = st.lists(st.floats(0, 1), min_size=1, max_size=DOTS)


@given(shares)
def test_each_student_is_a_dot_at_their_mark(marks):
    """Each dot lies within half a step of a student's percent, and no two lie on one another."""
    _, dots = draw_marks(Figure().subplots(), marks, 0.4)
    places = dots.get_offsets()

    assert len(marks) == len({tuple(place) for place in places.tolist()})
    assert sorted(place for place, _ in places) == pytest.approx(
        sorted(100 * share for share in marks), abs=STEP_PERCENT / 2 + 1e-9
    )


def test_a_large_class_is_drawn_in_bars():
    """61 students: the heights of the bars add up to them."""
    marks = [place / 60 for place in range(61)]
    _, bars = draw_marks(Figure().subplots(), marks, 0.4)

    assert 61 == sum(bar.get_height() for bar in bars)


def test_bars_are_as_long_as_their_numbers():
    ax = Figure().subplots()
    bars = draw_bars(ax, ["one $x$", "two"], [0.25, 1], ["25 %", "100 %"], 1)

    assert [0.25, 1] == [bar.get_width() for bar in bars]
    assert ["one $x$", "25 %", "two", "100 %"] == [text.get_text() for text in ax.texts]


def test_agreement_is_drawn_where_there_is_a_number():
    """A stick and a knob for 0.5 and for -0.2; for no number a dash in words and no knob."""
    ax = Figure().subplots()
    drawn = draw_agreement(ax, ["one", "two", "three"], [0.5, None, -0.2])

    assert [0.5, -0.2] == [line.get_xdata()[-1] for line in drawn[1::2]]
    assert ["one", "0.50", "two", "–", "three", "−0.20"] == [text.get_text() for text in ax.texts]


def test_drawings_are_sound_svg_in_the_pages_own_colours():
    """Read by a strict XML parser; no colour of their own, so that a dark page stays dark."""
    drawings = [
        class_figures.marks_svg([0.1, 0.5, 0.5], 0.4),
        class_figures.marks_svg([0.5] * 100, 0.4),
        class_figures.facility_svg(["<b> & $x$"], [0.5], [0]),
        class_figures.discrimination_svg(["one"], [0.5]),
        class_figures.slips_svg(["one", "two"], [2, 1]),
    ]
    for drawing in drawings:
        svg = ElementTree.fromstring(drawing.replace("xlink:href", "href"))

        assert "img" == svg.get("role")
        assert svg.get("aria-label")
        assert not re.findall("#[0-9a-f]{6}", drawing)
        assert "<style" not in drawing
        assert drawing.count("<text ") == len(re.findall("<text [^>]*fill: var", drawing))
    assert ">&lt;b&gt; &amp; $x$</text>" in drawings[2]
    assert "not marked yet" in class_figures.facility_svg(["one"], [None], [3])


@pytest.mark.browser
def test_the_class_page_fits_a_phone(course, entered):
    records = whole_class()
    records[0] = replace(records[0], findings=("w" * 400,))
    leave(course, *records)

    assert_fits(report(course, SET)[1])
