"""A file that says nothing, or cannot be read, gets a place and its points from the instructor."""

import json

import pytest
from coursework.arriving.placing_by_hand import place_by_hand, without_place
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course, open_course
from coursework.errors import CourseError
from coursework.gradebook.points import enter_human, human_marks
from coursework.marking.mark_set import mark_set
from coursework.records.reading import usable_records
from coursework.reports.hand_back import hand_back
from coursework.reports.report import report
from coursework.sets.hand_out import hand_out

SET = "04-buy-enough"
ROSTER = {"BH-1001": "Ada Quill", "BH-1002": "Bram Oakes"}
BROKEN = b'{"cells": [{"cell_type": "code", "sou'


@pytest.fixture
def course(tmp_path):
    """Ada's number is missing, Bram's file is broken, and a shopping list came along."""
    course = new_course(tmp_path / "class", "Class", "demo", ROSTER)
    book = json.loads(hand_out(course, SET).read_bytes())
    for cell in book["cells"]:
        if cell["id"] == "q1-answer":
            cell["source"] = 'q1 = "3 kg"'
    post = tmp_path / "post"
    post.mkdir()
    (post / "nameless.ipynb").write_text(json.dumps(book))
    (post / "broken.ipynb").write_bytes(BROKEN)
    (post / "list.txt").write_text("celeriac")
    take_in(course, post)
    return course


def test_what_has_no_place_is_listed_and_can_be_named(course):
    """By its name; the rest stays where it is."""
    assert {"nameless.ipynb", "broken.ipynb", "list.txt"} == {
        one.name for one in without_place(course)
    }

    placed = place_by_hand(course, "nameless.ipynb", " bh-1001", SET)

    assert ("BH-1001", SET, "counts") == (placed.student, placed.set_id, placed.became)
    assert {"broken.ipynb", "list.txt"} == {one.name for one in without_place(course)}
    assert course.submitted(SET, "BH-1001").is_file()


def test_a_place_given_by_hand_outlives_taking_in_again(course, tmp_path):
    """The same folder once more, then another file of the same student."""
    place_by_hand(course, "broken.ipynb", "BH-1002", SET)
    take_in(course, tmp_path / "post")

    assert BROKEN == course.submitted(SET, "BH-1002").read_bytes()
    assert "broken.ipynb" not in {one.name for one in without_place(course)}


def test_an_unreadable_file_waits_for_a_person_and_is_marked_question_by_question(course):
    """Open is not 0. After five marks by hand the student has 5 + 4 = 9 of 20 points."""
    place_by_hand(course, "broken.ipynb", "BH-1002", SET)
    mark_set(course, SET)
    record = usable_records(course, SET)[0][0]

    assert [None] * 5 == [verdict.points for verdict in record.answered]
    assert "The file is damaged" in record.findings[0]
    assert [(None, "")] * 6 == list(human_marks(course, SET).values())

    for number in range(1, 6):
        enter_human(course, SET, "BH-1002", f"q{number}", 1, "read on paper")
    enter_human(course, SET, "BH-1002", "q6", 4)
    mark_set(course, SET)
    hand_back(course, SET)
    sheet, _ = report(course, SET)

    assert (1.0, "read on paper") == human_marks(course, SET)["BH-1002", "q1"]
    assert "BH-1002,Bram Oakes,1,1,1,1,1,4,9" in sheet.read_text(encoding="utf-8-sig")
    assert "could not be read" in course.feedback(SET, "BH-1002").read_text(encoding="utf-8")


def test_what_cannot_be_placed_by_hand_is_refused_as_came(course):
    """An unknown file, student or set; two files of one name want more figures."""
    for words, arguments in (
        (
            "not among the files without a place. There are: .*“list.txt”",
            ("x.ipynb", "BH-1001", SET),
        ),
        ("BH-7777 is not on the roster", ("list.txt", "BH-7777", SET)),
        ("“99” is not handed out", ("list.txt", "BH-1001", "99")),
    ):
        with pytest.raises(CourseError, match=words):
            place_by_hand(course, *arguments)


def test_two_files_of_one_name_are_told_apart_by_their_figures(course, tmp_path):
    """The message shows them."""
    for number in ("1", "2"):
        (tmp_path / "more" / number).mkdir(parents=True)
        (tmp_path / "more" / number / "hw.txt").write_text(number)
    take_in(course, tmp_path / "more")
    with pytest.raises(CourseError, match=r"several files fit “hw.txt”"):
        place_by_hand(course, "hw.txt", "BH-1001", SET)
    figures = next(one.sha256 for one in without_place(course) if one.name.endswith("2/hw.txt"))

    assert "counts" == place_by_hand(course, figures[:8], "BH-1001", SET).became


def test_a_student_who_left_the_roster_takes_the_place_along(course):
    """It is listed again, with the reason; nothing is lost."""
    place_by_hand(course, "broken.ipynb", "BH-1002", SET)
    roster = course.folder / "roster.csv"
    roster.write_text("student_number,name\nBH-1001,Ada Quill\n")
    take_in(open_course(course.folder), [])
    reasons = {one.name: one.reason for one in without_place(course)}

    assert "You said it is BH-1002's, who is not on the roster." == reasons["broken.ipynb"]
