"""Saying whose a hand-in is, where the file does not say it or cannot be read at all."""

from coursework.arriving.arrivals import read_list, write_list
from coursework.arriving.placing import place_all
from coursework.arriving.settling import settle
from coursework.arriving.states import NOT_PLACED
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.errors import CourseError
from coursework.gradebook.decision_list import add_decision
from kitchenmath.practice import student_number

SHOWN = 20  # names in a sentence


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
        found = named(without_place(course), name, "files without a place")
        add_decision(course, "place", file=found.sha256, student=student, set_id=set_id)
        settled = settle_again(course)
    return next(one for one in settled if one.line == found.line)


def settle_again(course):
    """Settle all that arrived by what is decided now, and place what counts.

    Whoever calls it holds the class, so that a decision and its files are written both or neither.

    Parameters
    ----------
    course : Course

    Returns
    -------
    list of Arrival
    """
    settled = settle(course, read_list(course))
    if settled:
        write_list(course, settled)
        place_all(course, settled)
    return settled


def named(arrivals, name, among="files that arrived"):
    """The one arrival that is meant; the same bytes that came twice are one.

    Parameters
    ----------
    arrivals : list of Arrival
    name : str
        As it arrived, with or without its folders, or the first figures of its SHA-256.
    among : str
        What the arrivals are, for the sentence where none fits.

    Returns
    -------
    Arrival

    Raises
    ------
    CourseError
        When none fits, or several do.
    """
    once = list({one.sha256: one for one in arrivals if one.sha256}.values())
    found = [one for one in once if one.name == name]
    found = found or [one for one in once if len(name) >= 6 and one.sha256.startswith(name)]
    found = found or [one for one in once if one.name.rpartition("/")[2] == name]
    if not found:
        names = ", ".join(f"“{one.name}”" for one in once[:SHOWN]) or "none"
        names += f", and {len(once) - SHOWN} more" if len(once) > SHOWN else ""
        raise CourseError(f"“{name}” is not among the {among}. There are: {names}.")
    if len(found) > 1:
        listed = ", ".join(f"{one.name} ({one.sha256[:8]})" for one in found)
        raise CourseError(f"several files fit “{name}”: {listed}. Say the figures in brackets.")
    return found[0]
