"""Saying whose a hand-in is, where the file does not say it or cannot be read at all."""

from dataclasses import replace

from coursework.arriving.arrivals import NOT_PLACED, read_list, write_list
from coursework.arriving.placing import place_all
from coursework.arriving.settling import settle
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.errors import CourseError
from kitchenmath.practice import student_number


def without_place(course):
    """What arrived, is kept, and has no place: each file once.

    Parameters
    ----------
    course : Course

    Returns
    -------
    list of Arrival
    """
    return [one for one in read_list(course) if one.became == NOT_PLACED and one.kept]


def place_by_hand(course, name, student, set_id):
    """Say whose a file is. It then counts like any other hand-in, the latest of several.

    A file that the kit cannot read is marked by a person: its points stay open until they are
    entered.

    Parameters
    ----------
    course : Course
    name : str
        The file's name as it arrived, or the first figures of its SHA-256.
    student, set_id : str

    Returns
    -------
    Arrival

    Raises
    ------
    CourseError
        When no file of that name has no place, several have, the student is not on the roster, or
        the set was not handed out.
    """
    student = student_number(student)
    if student not in course.roster:
        raise CourseError(f"student: {student} is not on the roster.")
    if set_id not in course.sets_handed_out():
        raise CourseError(f"set: “{set_id}” is not handed out in this class.")
    with one_at_a_time(course, "placing"):
        found = _named(without_place(course), name)
        listed = [
            replace(one, told_student=student, told_set=set_id) if one.line == found.line else one
            for one in read_list(course)
        ]
        settled = settle(course, listed)
        write_list(course, settled)
        place_all(course, settled)
    return next(one for one in settled if one.line == found.line)


def _named(arrivals, name):
    """The one arrival that is meant."""
    found = [one for one in arrivals if one.name == name]
    found = found or [one for one in arrivals if len(name) >= 6 and one.sha256.startswith(name)]
    found = found or [one for one in arrivals if one.name.rpartition("/")[2] == name]
    if not found:
        names = ", ".join(f"“{one.name}”" for one in arrivals) or "none"
        raise CourseError(f"“{name}” is not among the files without a place. There are: {names}.")
    if len(found) > 1:
        listed = ", ".join(f"{one.name} ({one.sha256[:8]})" for one in found)
        raise CourseError(f"several files fit “{name}”: {listed}. Say the figures in brackets.")
    return found[0]
