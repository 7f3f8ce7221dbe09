"""The records of a set, as marking left them on disk. This module only reads."""

from coursework.errors import CourseError
from coursework.records.record_file import read_record
from coursework.records.words import UNUSABLE

__all__ = ["answer_to", "handed_in", "marked_bytes", "marked_students", "not_marked",
           "usable_records"]  # fmt: skip


def usable_records(course, set_id):
    """What marking left behind for a set.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    list of Record
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
            record = read_record(file)
        except CourseError as error:
            odd.append(str(error))
            continue
        if record and record.student == file.stem and record.questions:
            records.append(record)
        else:
            odd.append(UNUSABLE.format(set_id=set_id, name=file.name, student=file.stem))
    if not records and not odd:
        raise CourseError(f"nothing of “{set_id}” is marked yet: mark it first.")
    return records, odd


def not_marked(course, set_id, records):
    """Students on the roster whose hand-in lies there but was not marked yet.

    Parameters
    ----------
    course : Course
    set_id : str
    records : list of Record

    Returns
    -------
    list of str
    """
    marked = {record.student for record in records}
    return [
        student
        for student in course.roster
        if student not in marked and course.submitted(set_id, student).is_file()
    ]


def marked_students(course, set_id):
    """Students of whom a record of this set lies there, on the roster or not.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    set of str
    """
    return {file.stem for file in course.marks(set_id, "any").parent.glob("*.json")}


def handed_in(course, set_id):
    """Students who handed a set in; also where the copy is past its time, and only the mark stays.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    set of str
    """
    there = (course.folder / "submitted").glob(f"*/{set_id}/{set_id}.ipynb")
    return {file.parents[1].name for file in there} | marked_students(course, set_id)


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
    record = read_record(course.marks(set_id, student))
    return record.sha256 if record else ""


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
    record = read_record(course.marks(set_id, student))
    asked = record.questions if record else ()
    return next((each.answer for each in asked if each.question == question), None)
