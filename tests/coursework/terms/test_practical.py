"""Practical marks from a spreadsheet of any country, and what is odd about them."""

import pytest
from coursework.classes.course import new_course
from coursework.errors import CourseError
from coursework.reports.term_page import rows
from coursework.terms.practical import give_practical, practical_marks, take_practical
from coursework.terms.term_book import term_book
from openpyxl import Workbook

from tests.helpers.records import ROSTER
from tests.helpers.term import PRACTICAL, practical, stated


@pytest.mark.parametrize("between", [",", ";", "\t"])
@pytest.mark.parametrize("code", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_practical_marks_of_all_spreadsheets_are_read(course, tmp_path, between, code):
    """A decimal point, and where the columns allow it a decimal comma; heads as they are typed."""
    lines = ("Student_Number|name| KNIFE  skills|service", "bh-1|Zoë|12.5|8", 'BH-2||"12,5"|0',
             "||", "BH-3|Søren|20|10.0")  # fmt: skip
    course = stated(course, PRACTICAL)
    file = practical(tmp_path, *(line.replace("|", between) for line in lines), code=code)
    found = take_practical(course, file)

    assert {"BH-1": 12.5, "BH-2": 12.5, "BH-3": 20} == {
        who: mark for (who, name), mark in found.marks.items() if name == "knife skills"
    }
    assert [8, 0, 10] == [found.marks[who, "service"] for who in ROSTER]
    assert ("Practical marks, knife skills, line 3: the comma is read as a decimal point.",) == (
        found.odd
    )
    assert found == practical_marks(course)


def test_every_odd_practical_mark_is_named_with_its_line_and_left_open(course, tmp_path):
    course = stated(course, PRACTICAL + '[practical."knife care"]\nout_of = 5\n')
    file = practical(
        tmp_path,
        "student_number;name;knife skills;service;hat size",
        "BH-1;Ada;21;-1;57",
        "BH-2;Bram;absent;;58",
        "BH-9;Eve Stray;3;4;5",
        ";Nobody;3;4;",
        "a b;Nobody;3;4;",
    )
    found = take_practical(course, file)

    assert {} == found.marks
    assert [
        "“knife care”: there is no such column, so all of its marks are open.",
        "column “hat size”: the course file does not name it, so it does not count.",
        "line 4: BH-9 (Eve Stray) is not on the roster, so it is not used.",
        "line 5: the student number is missing.",
        "knife skills, line 2: “21” is above its 20 points, so the mark is open.",
        "service, line 2: “-1” is below 0, so the mark is open.",
        "knife skills, line 3: “absent” is no number, so the mark is open.",
        "service, line 3: blank, so open.",
        "without a line that counts, so open: Chidi Morrow (BH-3).",
    ] == [
        each.removeprefix("Practical marks, ")
        for each in found.odd
        if "“a b” is no student number" not in each
    ]
    assert len(found.odd) == 9 + 1


@pytest.mark.parametrize(
    ("typed", "mark"),
    [("7", 7), ("7.25", 7.25), ("7,25", 7.25), ("0,125", 0.125), ("1,250", None), ("1.250", 1.25),
     ("nan", None), ("1e1", None), ("80 %", None), ("٣", None), ("+3", 3), ("-0", 0),
     ("20", 20), ("20.01", None), ("0", 0)],
)  # fmt: skip
def test_a_mark_is_a_plain_number_and_is_never_guessed(course, tmp_path, typed, mark):
    """1,250 is more than a thousand in one country and less than two in the next."""
    course = stated(course, PRACTICAL)
    file = practical(tmp_path, "student_number;knife skills;service", f"BH-1;{typed};1")

    assert mark == take_practical(course, file).marks.get(("BH-1", "knife skills"))


def test_a_student_who_stands_twice_gets_neither_mark(course, tmp_path):
    course = stated(course, PRACTICAL)
    lines = ("student_number,knife skills,service", "BH-1,3,4", "BH-2,5,6", "bh-1,7,8", "BH-1,1,1")
    found = take_practical(course, practical(tmp_path, *lines))

    assert {("BH-2", "knife skills"): 5, ("BH-2", "service"): 6} == found.marks
    assert "line 4: BH-1 stands twice" in " ".join(found.odd)
    assert "open: Ada Quill (BH-1), Chidi Morrow" in found.odd[-1]


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        (b"PK\x03\x04", "practical.csv is a spreadsheet: save it as CSV there"),
        (
            b"BH-1,3,4",
            'practical.csv needs a line of heads such as "student_number,knife skills,service"',
        ),
        (b"student_number,service,Service\nBH-1,3,4", "the column “service” stands twice"),
        (None, "practical.csv” cannot be read: No such file"),
    ],
)
def test_what_is_no_table_of_practical_marks_is_refused(course, tmp_path, raw, words):
    """And the one that was there stays."""
    course = stated(course, PRACTICAL)
    take_practical(course, practical(tmp_path, "student_number,service", "BH-1,3"))
    before, file = practical_marks(course), tmp_path / "practical.csv"
    file.unlink() if raw is None else file.write_bytes(raw)

    with pytest.raises(CourseError, match=words):
        take_practical(course, file)
    assert before == practical_marks(course)


def test_practical_marks_need_a_line_in_the_course_file(course, tmp_path):
    with pytest.raises(CourseError, match=r"states no practical marks"):
        take_practical(course, practical(tmp_path, "student_number,service", "BH-1,3"))


def test_practical_marks_that_never_came_are_said(course, human):
    book = term_book(stated(course, PRACTICAL))

    assert ("No practical marks came yet: all of them are open.",) == book.to_look_at
    assert ["", ""] == rows(book)[1][4:6]


def test_a_number_that_lost_its_zeros_is_found_by_the_name(tmp_path):
    """4238 with Ada's name is 004238; with another name it is nobody."""
    course = stated(new_course(tmp_path / "c", "C", "demo", {"004238": "Ada Quill"}), PRACTICAL)
    lines = ("student_number,name,service", "4238,Quill Ada,7")
    found = take_practical(course, practical(tmp_path, *lines))

    assert 7 == found.marks["004238", "service"]
    assert any("line 2: 4238 lost its zeros" in one for one in found.odd)

    other = stated(new_course(tmp_path / "d", "D", "demo", {"004238": "Ada Quill"}), PRACTICAL)
    found = take_practical(other, practical(tmp_path, lines[0], "4238,Bram Oakes,7"))

    assert {} == found.marks


def test_marks_typed_in_the_grid_stand_beside_those_of_the_table(tmp_path):
    """With a decimal comma; an odd one is named, and then nothing is entered."""
    roster = {"BH-1": "Ada Quill", "BH-2": "Bram Oakes"}
    course = stated(new_course(tmp_path / "c", "C", "demo", roster), PRACTICAL)
    take_practical(course, practical(tmp_path, "student_number,service", "BH-1,7"))

    assert 1 == give_practical(course, "knife skills", {"BH-1": "17,5", "BH-2": ""})
    marks = practical_marks(course).marks
    assert {("BH-1", "service"): 7, ("BH-1", "knife skills"): 17.5} == marks

    with pytest.raises(CourseError, match=r"BH-2.: “21” .* 20 points"):
        give_practical(course, "knife skills", {"BH-1": "3", "BH-2": "21"})

    assert marks == practical_marks(course).marks


def test_practical_marks_in_an_office_file_are_kept_as_a_table(course, tmp_path):
    """With a title above the heads; what is kept can be read again."""
    course = stated(course, PRACTICAL)
    book = Workbook()
    for row in (["Week 3"], ["Student ID", "Knife skills", "Service"], ["BH-1", 12.5, 8]):
        book.active.append(row)
    book.save(tmp_path / "marks.xlsx")
    found = take_practical(course, tmp_path / "marks.xlsx")

    assert {("BH-1", "knife skills"): 12.5, ("BH-1", "service"): 8} == found.marks
    assert found == practical_marks(course)


def test_a_table_of_one_group_takes_no_mark_from_another(tmp_path):
    """Ada's 12,5 was typed in the grid; a table with Bram alone leaves it, and says so."""
    roster = {"004201": "Ada Quill", "004202": "Bram Oakes", "004203": "Chidi Morrow"}
    course = stated(new_course(tmp_path / "c", "C", "demo", roster), PRACTICAL)
    give_practical(course, "knife skills", {"004201": "12,5"})
    file = tmp_path / "group.csv"
    file.write_text("Student ID;Name;knife skills\n4202;Bram Oakes;15,5\n", encoding="utf-8")
    taken = take_practical(course, file)
    expected = {("004201", "knife skills"): 12.5, ("004202", "knife skills"): 15.5}

    assert expected == taken.marks == practical_marks(course).marks
    said = " ".join(taken.odd)
    assert "so as they were: Ada Quill (004201)." in said
    assert "so open: Chidi Morrow (004203)." in said
