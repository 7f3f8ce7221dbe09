"""The one writer of points, in nbgrader's gradebook.

Only this module opens it. nbgrader's words (assignment, submission, grade) stay inside.
"""

import os
import sys
import warnings
from contextlib import contextmanager
from pathlib import Path

from coursework.course import CourseError


@contextmanager
def _open(course):
    """nbgrader's gradebook, with what a new one needs.

    A new gradebook asks `alembic` for its version, by name: the interpreter's own folder must be
    on the PATH for that. The course id is left to nbgrader's default, here and in its own pages:
    opening with another would add a second course.
    """
    own = str(Path(sys.executable).parent)
    if own not in os.environ["PATH"].split(os.pathsep):
        os.environ["PATH"] = own + os.pathsep + os.environ["PATH"]
    from nbgrader.api import Gradebook

    course.folder.mkdir(parents=True, exist_ok=True)
    gradebook = Gradebook(course.gradebook)
    try:
        with warnings.catch_warnings():
            # nbgrader 0.9.6 makes a submission's parts before it adds them; SQLAlchemy remarks it.
            warnings.filterwarnings("ignore", "Object of type .* not in session")
            yield gradebook
    finally:
        gradebook.close()
        gradebook.engine.dispose()


def prepare_set(course, set_id):
    """Enter the class and the set, before its cells are saved."""
    with _open(course) as gradebook:
        gradebook.update_or_create_assignment(set_id)
        for student, name in course.roster.items():
            gradebook.update_or_create_student(student, **_names(name))


def record(course, set_id, records):
    """Enter what marking found; points that a human gave are left as they are.

    Parameters
    ----------
    course : Course
    set_id : str
    records : list of dict
        As marking leaves them.
    """
    with _open(course) as gradebook:
        for found in records:
            student = found["student"]
            if student in course.roster:
                gradebook.update_or_create_student(student, **_names(course.roster[student]))
            gradebook.update_or_create_submission(
                set_id, student, timestamp=f"{found['handed_in']} UTC"
            )
            for verdict in found["verdicts"]:
                grade = gradebook.find_grade(
                    f"{verdict['question']}-check", set_id, set_id, student
                )
                grade.auto_score = verdict["points"]
                grade.needs_manual_grade = False
            for cell in found["human"]:
                _open_for_a_human(gradebook, set_id, student, cell)
            gradebook.db.commit()


def _names(name):
    """A name in two parts, as nbgrader shows none that lacks a first one."""
    first, _, last = name.partition(" ")
    return {"first_name": first, "last_name": last}


def _open_for_a_human(gradebook, set_id, student, cell):
    """A written answer waits for a human; an empty one is 0, as nothing is there to read."""
    name = f"{cell['question']}-answer"
    grade = gradebook.find_grade(name, set_id, set_id, student)
    comment = gradebook.find_comment(name, set_id, set_id, student)
    grade.auto_score = None if cell["answer"] else 0.0
    comment.auto_comment = None if cell["answer"] else "No response."
    grade.needs_manual_grade = grade.auto_score is None and grade.manual_score is None


def human_marks(course, set_id):
    """Points and comments that a human gave, for written answers or in place of the machine's.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    dict of (str, str) to (float or None, str)
        By student and question; None where the cell still waits.
    """
    from nbgrader.api import (
        Assignment,
        BaseCell,
        Comment,
        Grade,
        SubmittedAssignment,
        SubmittedNotebook,
    )

    with _open(course) as gradebook:

        def rows(table, *columns):
            return (
                gradebook.db.query(SubmittedAssignment.student_id, BaseCell.name, *columns)
                .select_from(table)
                .join(SubmittedNotebook, SubmittedNotebook.id == table.notebook_id)
                .join(
                    SubmittedAssignment, SubmittedAssignment.id == SubmittedNotebook.assignment_id
                )
                .join(Assignment, Assignment.id == SubmittedAssignment.assignment_id)
                .join(BaseCell, BaseCell.id == table.cell_id)
                .filter(Assignment.name == set_id)
                .all()
            )

        grades = rows(Grade, Grade.manual_score, Grade.auto_score, Grade.extra_credit)
        words = {(who, cell): text for who, cell, text in rows(Comment, Comment.manual_comment)}
    marks = {}
    for student, cell, manual, auto, extra in grades:
        question, _, part = cell.rpartition("-")
        if part == "check" and manual is None:
            continue  # the machine's own mark stands in the record
        points = manual if manual is not None else auto
        points = points if points is None else points + (extra or 0)
        marks[student, question] = points, words.get((student, cell)) or ""
    return marks


def enter_human(course, set_id, student, question, points, comment=""):
    """Enter the points that a human gave for a written answer.

    Raises
    ------
    CourseError
        When there is nothing to mark there, or the points are not between 0 and all of them.
    """
    from nbgrader.api import MissingEntry

    with _open(course) as gradebook:
        try:
            name = f"{question}-answer"
            grade = gradebook.find_grade(name, set_id, set_id, student)
            remark = gradebook.find_comment(name, set_id, set_id, student)
        except MissingEntry:
            raise CourseError(f"{student} has no answer to {question} of {set_id}.") from None
        if not 0 <= points <= grade.max_score:
            raise CourseError(f"points: 0 to {grade.max_score:g} are possible, and {points} came.")
        grade.manual_score, grade.needs_manual_grade = float(points), False
        remark.manual_comment = comment or None
        gradebook.db.commit()
