"""The records of a set, as marking left them on disk. This module only reads."""

import json

from coursework.errors import CourseError
from coursework.records.copies import name_copies

__all__ = ["answer_to", "marked_bytes", "not_marked", "usable_records"]

# What pages and sheets take from a record.
IN_HUMAN = {"question", "asked", "answer", "out_of"}
IN_VERDICT = IN_HUMAN | {"outcome", "points", "sentence", "right", "slips", "working", "given"}


def usable_records(course, set_id):
    """What marking left behind for a set.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    list of dict
        In the order of student numbers.
    list of str
        A sentence for each file that cannot be read; the others are not held up by it.

    Raises
    ------
    CourseError
        When nothing of this set is marked.
    """
    records, odd = [], []
    for file in sorted(course.marks(set_id, "any").parent.glob("*.json")):
        try:
            record = json.loads(file.read_bytes())
        except (OSError, ValueError, RecursionError):
            record = None
        if _is_whole(record, file.stem):
            records.append(record)
        else:
            odd.append(
                f"marks/{set_id}/{file.name} cannot be used: delete it and mark {file.stem} again."
            )
    if not records and not odd:
        raise CourseError(f"nothing of “{set_id}” is marked yet: mark it first.")
    name_copies(records)
    return records, odd


def not_marked(course, set_id, records):
    """Students on the roster whose hand-in lies there but was not marked yet.

    Parameters
    ----------
    course : Course
    set_id : str
    records : list of dict

    Returns
    -------
    list of str
    """
    marked = {record["student"] for record in records}
    return [
        student
        for student in course.roster
        if student not in marked and course.submitted(set_id, student).is_file()
    ]


def marked_bytes(course, set_id, student):
    """The SHA-256 of the hand-in that is marked; empty where none is.

    Parameters
    ----------
    course : Course
    set_id, student : str

    Returns
    -------
    str
    """
    try:
        return str(json.loads(course.marks(set_id, student).read_bytes())["sha256"])
    except (OSError, ValueError, RecursionError, KeyError, TypeError):
        return ""


def answer_to(course, set_id, student, question):
    """What a student answered, as marking found it; None where nothing is marked.

    Parameters
    ----------
    course : Course
    set_id, student, question : str

    Returns
    -------
    str or None
    """
    try:
        record = json.loads(course.marks(set_id, student).read_bytes())
        asked = [*record["verdicts"], *record["human"]]
        return next(each["answer"] for each in asked if each["question"] == question)
    except (OSError, ValueError, RecursionError, KeyError, TypeError, StopIteration):
        return None


def _is_whole(record, student):
    """Whether a record is that student's and holds all that a page needs."""
    if not isinstance(record, dict) or record.get("student") != student or "title" not in record:
        return False
    verdicts, human = record.get("verdicts"), record.get("human")
    if not isinstance(verdicts, list) or not isinstance(human, list) or not verdicts + human:
        return False
    wanted = [(verdict, IN_VERDICT) for verdict in verdicts] + [(cell, IN_HUMAN) for cell in human]
    return all(isinstance(each, dict) and names <= each.keys() for each, names in wanted)
