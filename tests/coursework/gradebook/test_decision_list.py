"""The list of decisions in a gradebook of its own. Everything here is invented."""

import sqlite3
from contextlib import closing

import pytest
from coursework.classes.course import new_course
from coursework.errors import CourseError
from coursework.gradebook.decision_list import add_decision, decisions_of
from coursework.gradebook.points import connected
from coursework.gradebook.tables import TABLES

SET = "04-buy-enough"


@pytest.fixture
def course(tmp_path):
    made = new_course(tmp_path / "class", "Brackwater House (invented)", "demo", {"BH-1": "Ada"})
    sqlite3.connect(made.gradebook_file).close()
    return made


def test_lines_come_back_in_order_with_what_was_said(course):
    by_hand = {"set_id": SET, "student": "BH-1", "question": "q1", "points": 2.5}
    first = add_decision(course, "points by hand", "chef", why="Well reasoned; “=1+1”.", **by_hand)
    second = add_decision(course, "take back", "chef", line=1)

    assert (1, 2) == (first.number, second.number)
    assert [first, second] == decisions_of(course)
    assert "Well reasoned; “=1+1”." == decisions_of(course)[0].why


def test_a_class_without_a_gradebook_has_no_decisions(tmp_path):
    course = new_course(tmp_path / "class", "Brackwater House", "demo", {"BH-1": "Ada"})

    assert [] == decisions_of(course)
    with pytest.raises(CourseError, match="Hand a set out first"):
        add_decision(course, "excused", "chef", set_id=SET, student="BH-1")


def test_looking_at_the_list_makes_no_table(course):
    decisions_of(course)

    with closing(sqlite3.connect(course.gradebook_file)) as book, book:
        assert [] == book.execute("SELECT name FROM sqlite_master").fetchall()


def test_a_line_of_a_newer_kit_is_refused_as_came(course):
    add_decision(course, "excused", "chef", set_id=SET, student="BH-1")
    with closing(sqlite3.connect(course.gradebook_file)) as book, book:
        book.execute("UPDATE kit_decision SET kind = 'forgiven'")

    with pytest.raises(CourseError, match="“forgiven” is none of"):
        decisions_of(course)


def test_an_erased_student_leaves_no_line_and_the_others_keep_their_numbers(course):
    for student in ("BH-1", "BH-2"):
        add_decision(course, "excused", "chef", set_id=SET, student=student)
    with connected(course) as book:
        for name in ("submitted_assignment", "submitted_notebook", "student", "grade", "comment"):
            TABLES.tables[name].create(book.connection)
        book.forget("BH-1")

    assert [(2, "BH-2")] == [(one.number, one.student) for one in decisions_of(course)]
