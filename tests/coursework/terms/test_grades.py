"""What a total comes to by a class's own scale. The class and its scale are invented."""

import pytest
from coursework.classes.policy import Policy
from coursework.reports.term_page import in_words, rows, shown
from coursework.terms.grades import NO_GRADE, Graded, graded, low_of
from coursework.terms.term_book import term_book

from tests.helpers.records import ROSTER
from tests.helpers.term import BUY, leave, points, stated

SCALE = {"A": 80.0, "B": 65.0, "C": 40.0}


@pytest.mark.parametrize(("percent", "grade", "passed"), [
    (100, "A", True), (80, "A", True), (79.94, "B", True), (79.95, "A", True),
    (40, "C", True), (39.94, "", False), (39.96, "C", True), (0, "", False),
])  # fmt: skip
def test_a_total_is_graded_as_it_is_printed(percent, grade, passed):
    """Printed with one decimal: 79.95 is printed as 80, 39.94 as 39.9."""
    assert Graded(grade, passed) == graded(percent, Policy(grades=SCALE, pass_line=40))


def test_without_a_scale_or_without_a_total_nothing_is_said():
    assert Graded() == NO_GRADE == graded(None, Policy(grades=SCALE, pass_line=40))
    assert NO_GRADE == graded(90, Policy())


def test_a_low_mark_is_one_below_the_classs_own_line():
    assert (0.4, 0.6) == (low_of(Policy()), low_of(Policy(pass_line=60)))


def test_grades_stand_in_sheet_page_and_policy(course, human):
    """By hand: 16 of 20 is 80 %, an A; 7 of 20 is 35 %, which does not pass; Chidi has no total."""
    course = stated(course, "\n[mark_book]\npass_line = 40\n[grades]\nA = 80\nB = 65\n")
    leave(course, BUY, points("BH-1", 16), points("BH-2", 7))
    book = term_book(course)
    head, *lines = rows(book)
    at = head.index("grade so far"), head.index("passes so far")

    assert [["A", "yes"], ["", "no"], ["", ""]] == [[line[one] for one in at] for line in lines]
    assert ["grade A, passes", "does not pass", ""] == [
        one["graded"] for one in shown(course, book)["students"]
    ]
    assert len(ROSTER) == len(lines)

    words = " ".join(in_words(course.policy))

    assert "A total of 40 % or more passes. Grades: A from 80 %, B from 65 %." in words
    assert "rounded to one decimal first" in words
