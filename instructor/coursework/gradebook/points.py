"""Points in nbgrader's gradebook: who may read and write them, and how.

Only this module and `writer.py` open it. The address is the class's own SQLite file, or
whatever SQLAlchemy knows: a college may name PostgreSQL in the course file.
"""

import os
import sys
import warnings
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import create_engine, select
from sqlalchemy.exc import ArgumentError, DatabaseError, OperationalError

from coursework.classes.course import CourseError
from coursework.gradebook.tables import (
    ASSIGNMENT,
    CELL,
    COMMENT,
    GRADE,
    GRADE_CELL,
    SUBMITTED,
    SUBMITTED_NOTEBOOK,
    make_indexes,
)


@contextmanager
def connected(course):
    """A transaction on the gradebook: all of what is done inside is entered, or none.

    Raises
    ------
    CourseError
        When there is no gradebook yet, or the database does not answer.
    """
    if course.gradebook_file and not course.gradebook_file.is_file():
        raise CourseError("gradebook.db: this class has none yet. Hand a set out first.")
    engine = _engine(course.gradebook)
    try:
        with engine.begin() as connection:
            yield connection
    except (OperationalError, DatabaseError) as error:
        words = str(error.orig).strip().splitlines()[0] if error.orig else str(error)
        raise CourseError(f"the gradebook does not answer: {words}.") from error
    finally:
        engine.dispose()


def _engine(address):
    try:
        return create_engine(address)
    except ArgumentError:
        raise CourseError("course.toml: gradebook is no address of a database.") from None
    except ImportError as error:
        raise CourseError(
            f"the gradebook in course.toml needs {error.name}: type python3 instructor college."
        ) from None


def prepare_set(course, set_id):
    """Enter the class and the set with nbgrader itself, before its cells are saved.

    A new gradebook asks `alembic` for its version, by name: the interpreter's own folder must be
    on the PATH for that. The course id is left to nbgrader's default, here and in its own pages:
    opening with another would add a second course.
    """
    own = str(Path(sys.executable).parent)
    if own not in os.environ["PATH"].split(os.pathsep):
        os.environ["PATH"] = own + os.pathsep + os.environ["PATH"]
    from nbgrader.api import Gradebook

    course.folder.mkdir(parents=True, exist_ok=True)
    with warnings.catch_warnings():
        # nbgrader 0.9.6 makes a submission's parts before it adds them; SQLAlchemy remarks it.
        warnings.filterwarnings("ignore", "Object of type .* not in session")
        with Gradebook(course.gradebook) as gradebook:
            gradebook.update_or_create_assignment(set_id)
            for student, name in course.roster.items():
                gradebook.update_or_create_student(student, **names(name))
    with connected(course) as connection:
        make_indexes(connection)


def names(name):
    """A name in two parts, as nbgrader shows none that lacks a first one."""
    first, _, last = name.partition(" ")
    return {"first_name": first, "last_name": last}


def all_marks(course, set_id=None):
    """Every mark as it stands, by one query.

    Parameters
    ----------
    course : Course
    set_id : str, optional
        One set; all sets by default.

    Returns
    -------
    list of tuple
        Set, student, cell ("q1-check", "q6-answer"), the machine's points, a person's points,
        extra points; None where there are none.
    """
    columns = (GRADE.c.auto_score, GRADE.c.manual_score, GRADE.c.extra_credit)
    with connected(course) as connection:
        return [tuple(row) for row in connection.execute(_of_students(GRADE, columns, set_id))]


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
    with connected(course) as connection:
        said = connection.execute(_of_students(COMMENT, (COMMENT.c.manual_comment,), set_id)).all()
    words = {(student, _question(cell)): text for _, student, cell, text in said if text}
    marks = {}
    for _, student, cell, auto, manual, extra in all_marks(course, set_id):
        if cell.endswith("-check") and manual is None and auto is not None:
            continue  # the machine's own mark stands in the record
        points = manual if manual is not None else auto
        points = points if points is None else points + (extra or 0)
        key = student, _question(cell)
        marks[key] = points, words.get(key, "")
    return marks


def enter_human(course, set_id, student, question, points, comment=""):
    """Enter the points that a human gave: for a written answer, or in place of the machine's.

    Raises
    ------
    CourseError
        When there is nothing to mark there, or the points are not between 0 and all of them.
    """
    one = SUBMITTED.c.student_id == student
    columns = (GRADE.c.id, GRADE_CELL.c.max_score)
    grades = _of_students(GRADE, columns, set_id).join(GRADE_CELL, GRADE_CELL.c.id == CELL.c.id)
    cells = CELL.c.name.in_([f"{question}-answer", f"{question}-check"])
    remarks = _of_students(COMMENT, (COMMENT.c.id,), set_id)
    with connected(course) as connection:
        found = connection.execute(grades.where(one, cells)).first()
        if found is None:
            raise CourseError(f"{student} has no answer to {question} of {set_id}.")
        if not 0 <= points <= found.max_score:
            raise CourseError(f"points: 0 to {found.max_score:g} are possible, and {points} came.")
        connection.execute(
            GRADE.update()
            .where(GRADE.c.id == found.id)
            .values(manual_score=float(points), needs_manual_grade=False)
        )
        remark = connection.execute(remarks.where(one, CELL.c.name == f"{question}-answer")).first()
        connection.execute(
            COMMENT.update().where(COMMENT.c.id == remark.id).values(manual_comment=comment or None)
        )


def _of_students(table, columns, set_id):
    """Set, student, cell and these columns of grades or comments."""
    query = (
        select(ASSIGNMENT.c.name, SUBMITTED.c.student_id, CELL.c.name.label("cell"), *columns)
        .select_from(table)
        .join(SUBMITTED_NOTEBOOK, SUBMITTED_NOTEBOOK.c.id == table.c.notebook_id)
        .join(SUBMITTED, SUBMITTED.c.id == SUBMITTED_NOTEBOOK.c.assignment_id)
        .join(ASSIGNMENT, ASSIGNMENT.c.id == SUBMITTED.c.assignment_id)
        .join(CELL, CELL.c.id == table.c.cell_id)
    )
    return query if set_id is None else query.where(ASSIGNMENT.c.name == set_id)


def _question(cell):
    return cell.rpartition("-")[0]
