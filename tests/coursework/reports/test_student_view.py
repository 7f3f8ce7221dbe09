"""A student over the term: each mark with who gave it and why. The class is invented."""

import pytest
from coursework.classes.course import new_course
from coursework.command import main
from coursework.gradebook.decision_list import add_decision
from coursework.reports.student_view import student_view
from coursework.sets.hand_out import hand_out

from tests.helpers.records import ROSTER, SET, leave, record, verdict, written
from tests.helpers.term import arrive


@pytest.fixture(scope="module")
def course(tmp_path_factory):
    """Ada: q1 right, q2 a slip overruled, q3 accepted too, q9 waits; two files."""
    made = new_course(tmp_path_factory.mktemp("view") / "class", "Brackwater", "demo", ROSTER)
    hand_out(made, SET)
    arrive(made, SET, "BH-1", first=1_790_000_000, second=1_790_000_060)
    sha = next(one for one in (made.arrived / "list.json").read_text().split('"')
               if one.startswith("16367aac"))  # fmt: skip
    marks = [verdict("q1"), verdict("q2", "slip", 1.0), verdict("q3", "wrong", 0.0)]
    leave(made, record("BH-1", *marks, human=[written()], sha256=sha))
    about = {"set_id": SET, "student": "BH-1", "question": "q2", "points": 2.5}
    add_decision(made, "points by hand", "chef", why="Nearly.", **about)
    add_decision(made, "accept this too", "chef", why="Both are sold.", set_id=SET, question="q3",
                 accepted="4.2 kg")  # fmt: skip
    add_decision(made, "excused", "chef", why="was ill", set_id=SET, student="BH-2")
    return made


def test_each_mark_says_who_gave_it_and_why(course):
    """The machine, a person, a rule for all, and nobody yet."""
    view = student_view(course, "BH-1")
    marks = {one.question: one for one in view.sets[0].marks}

    assert ("the machine", 3.0) == (marks["q1"].who, marks["q1"].points)
    assert marks["q2"].who.startswith("chef, ") and "Nearly." == marks["q2"].why
    assert ("chef, accepted too", "Both are sold.") == (marks["q3"].who, marks["q3"].why)
    assert ("nobody yet", None) == (marks["q9"].who, marks["q9"].points)


def test_every_file_is_an_attempt_in_the_order_of_time(course):
    names = [one.name for one in student_view(course, "BH-1").sets[0].attempts]

    assert ["first.ipynb", "second.ipynb"] == names


def test_what_was_decided_about_others_is_not_in_view(course):
    """The class's own decisions are in the journal."""
    assert ["points by hand"] == [one.kind for one in student_view(course, "BH-1").decided]
    assert ["excused"] == [one.kind for one in student_view(course, "BH-2").decided]


def test_the_mark_is_the_mark_books(course):
    """8.5 of the 9 points that are marked."""
    counted = student_view(course, "BH-1").sets[0].counted

    assert (9.0, ("q9",)) == (counted.out_of, counted.open)
    assert 8.5 == pytest.approx(counted.points, abs=1e-6)
    assert student_view(course, "BH-2").sets[0].counted.excused


def test_the_command_prints_it(course, capsys):
    assert 0 == main(["student", "BH-1", "--class", str(course.folder)])
    said = capsys.readouterr().out

    assert "Ada Quill (BH-1): 94.4 %" in said
    assert "q2 2.5 of 3, chef, " in said
    assert 1 == main(["student", "BH-77", "--class", str(course.folder)])
