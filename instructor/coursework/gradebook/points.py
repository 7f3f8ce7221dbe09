"""Points in nbgrader's gradebook: who may read and write them, and how.

Whoever reads or writes it comes through `connected`. The address is the class's own SQLite file, or
whatever SQLAlchemy knows: a college may name PostgreSQL in the course file.
"""

import os
import sys
import warnings
from contextlib import contextmanager
from pathlib import Path

from coursework.decisions.applied import answer_mark
from coursework.decisions.kinds import Decision
from coursework.decisions.stamp import now, who_is_here
from coursework.errors import CourseError
from coursework.gradebook.words import not_counted
from coursework.records.reading import answer_to
from coursework.records.record import HumanMark

__all__ = [
    "all_marks",
    "connected",
    "enter_human",
    "human_marks",
    "names",
    "prepare_set",
    "refused_points",
]


@contextmanager
def connected(course):
    """A transaction on the gradebook: all of what is done inside is entered, or none.

    Yields
    ------
    Book

    Raises
    ------
    CourseError
        When there is no gradebook yet, or the database does not answer.
    """
    # The database's library takes a while to load: only where a gradebook is opened.
    from sqlalchemy.exc import DatabaseError

    from coursework.gradebook.book import Book

    if course.gradebook_file and not course.gradebook_file.is_file():
        raise CourseError("gradebook.db: this class has none yet. Hand a set out first.")
    engine = _engine(course.gradebook)
    try:
        with engine.begin() as connection:
            yield Book(connection)
    except DatabaseError as error:  # an OperationalError is one too
        words = str(error.orig).strip().splitlines()[0] if error.orig else str(error)
        raise CourseError(f"the gradebook does not answer: {words}.") from error
    finally:
        engine.dispose()


def _engine(address):
    from sqlalchemy import create_engine
    from sqlalchemy.exc import ArgumentError

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
    with connected(course) as book:
        book.make_indexes()


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
    with connected(course) as book:
        return book.marks(set_id)


def human_marks(course, set_id):
    """Points and comments that a human gave, for written answers or in place of the machine's.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    dict of (str, str) to HumanMark
        By student and question; None where the cell still waits, also for points that no question
        gives (see `refused_points`).
    """
    return _read_by_hand(course, set_id)[0]


def refused_points(course, set_id):
    """Points in the gradebook that are not counted, a sentence each; none in an honest class.

    The database holds whatever a page wrote there. A mark below nought, above what the question
    gives, or extra points, which no set of the kit has, are nobody's mark until a person gives
    them again.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    list of str
    """
    return [
        not_counted(f"{course.roster.get(student, student)} ({student})", question, points, most)
        for student, question, points, most in sorted(_read_by_hand(course, set_id)[1])
    ]


def _read_by_hand(course, set_id):
    """What `human_marks` gives, and (student, question, points, most) of each refused mark."""
    with connected(course) as book:
        words = {(who, _question(cell)): text for who, cell, text in book.remarks(set_id)}
        rows = book.marks_and_most(set_id)
    marks, refused = {}, []
    for _, student, cell, auto, manual, extra, most in rows:
        key = student, _question(cell)
        points = manual if manual is not None else auto
        given = (points or 0.0) + (extra or 0.0)
        allowed = not extra and 0 <= given <= most
        if not allowed:
            refused.append((*key, given, most))
        if cell.endswith("-check") and auto is not None and (manual is None or not allowed):
            continue  # the machine's own mark stands in the record
        marks[key] = HumanMark(points if allowed else None, words.get(key, ""))
    return marks, refused


def enter_human(course, set_id, student, question, points, comment=""):
    """Enter the points that a human gave: for a written answer, or in place of the machine's.

    They stand in nbgrader's gradebook, and as a decision that is bound to the answer as it is now.

    Returns
    -------
    Decision
        With its number.

    Raises
    ------
    CourseError
        When there is nothing to mark there, or the points are not between 0 and all of them.
    """
    answer = answer_to(course, set_id, student, question)
    about = {"set_id": set_id, "student": student, "question": question, "points": float(points)}
    mark = "" if answer is None else answer_mark(answer)
    with connected(course) as book:
        book.give(set_id, student, question, points, comment)
        return book.add_decision(
            Decision("points by hand", who_is_here(), now(), comment, answer=mark, **about)
        )


def _question(cell):
    return cell.rpartition("-")[0]
