"""What a page wrote into the gradebook, read back with the question's own bounds."""

import pytest
from coursework.decisions.applied import answer_mark
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import connected, human_marks, refused_points
from coursework.gradebook.tables import CELL, GRADE, SUBMITTED_NOTEBOOK
from coursework.records.reading import usable_records
from coursework.reports.in_lines import marks_in_lines
from coursework.reports.report import report
from sqlalchemy import select

from tests.helpers.filled_in import SET, class_copy
from tests.helpers.small_class import SMALL


def written(course, cell, **values):
    """The class after something wrote these values into every grade of a cell."""
    here = select(CELL.c.id).where(CELL.c.name == cell)
    with connected(course) as connection:
        connection.execute(GRADE.update().where(GRADE.c.cell_id.in_(here)).values(**values))
    return course


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"manual_score": 400.0}, "400 points of 4"),
        ({"manual_score": -1.0}, "-1 points of 4"),
        ({"manual_score": float("inf")}, "inf points of 4"),
        ({"manual_score": 1.0, "extra_credit": 0.5}, "1.5 points of 4"),
        ({"manual_score": 4.0, "extra_credit": -1.0}, "3 points of 4"),
    ],
)
def test_points_that_no_question_gives_are_not_counted_and_said(
    small_class, tmp_path, values, said
):
    """q6 gives 0 to 4; extra points are in no set of the kit, not even when the sum would fit."""
    course = written(class_copy(small_class, tmp_path / "class"), "q6-answer", **values)
    told = refused_points(course, SET)

    assert (None, "Well reasoned.") == human_marks(course, SET)[SMALL[0], "q6"]
    assert 3 == len(told)
    assert f"({SMALL[0]}), q6: the gradebook says {said}. They are not counted." in told[0]
    assert told[0] in marks_in_lines(course, SET)
    assert f"({SMALL[0]}), q6: the gradebook says {said}" in report(course, SET)[1].read_text()


def test_the_machines_own_mark_stands_where_a_page_wrote_too_much(small_class, tmp_path):
    """q1 gives 3: 30 written over it by hand is no mark, and what was computed is not lost."""
    course = written(class_copy(small_class, tmp_path / "class"), "q1-check", manual_score=30.0)

    assert (SMALL[2], "q1") not in human_marks(course, SET)
    assert 3 == len([said for said in refused_points(course, SET) if ", q1: " in said])


def test_an_honest_class_has_nothing_refused(small_class):
    """Its two marks by hand: 2.5 of 4 for q6, and 0.5 of 3 over the machine's for q1."""
    marks = human_marks(small_class, SET)

    assert [] == refused_points(small_class, SET)
    assert 2.5 == marks[SMALL[0], "q6"][0]
    assert 0.5 == marks[SMALL[1], "q1"][0]


def test_points_by_hand_are_bound_to_the_answer_that_they_are_for(small_class):
    """Two were given, for q6 and for q1; the answers as the records of today have them."""
    records = {one.student: one for one in usable_records(small_class, SET)[0]}
    typed = {
        (student, one.question): one.answer
        for student, record in records.items()
        for one in record.questions
    }
    given = [one for one in decisions_of(small_class) if one.kind == "points by hand"]

    assert [(SMALL[0], "q6"), (SMALL[1], "q1")] == [(one.student, one.question) for one in given]
    for one in given:
        assert answer_mark(typed[one.student, one.question]) == one.answer


def test_nbgraders_own_page_asks_for_no_answer_that_has_points(small_class):
    """The two marks by hand; and no hand-in is flagged there."""
    by_hand = select(GRADE.c.manual_score, GRADE.c.needs_manual_grade)
    with connected(small_class) as connection:
        given = connection.execute(by_hand.where(GRADE.c.manual_score.is_not(None)))
        found = {tuple(row) for row in given}
        flags = {row[0] for row in connection.execute(select(SUBMITTED_NOTEBOOK.c.flagged))}

    assert {(2.5, False), (0.5, False)} == found
    assert {False} == flags
