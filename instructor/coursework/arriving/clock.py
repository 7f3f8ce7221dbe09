"""When a hand-in came: by what its student cannot write.

The archive that a platform made says when it was given each file. Where there is none, the time of
taking in counts. A zip that a student packed and a file's own time stamp are that student's word:
both are kept and shown, and of two attempts they decide nothing.
"""

from dataclasses import replace
from datetime import datetime

from kitchenmath.errors import KitchenError
from kitchenmath.practice import student_number

__all__ = ["by_the_clock", "doubted", "earliest_of_one_archive", "on_the_clock", "still_to_come"]

# A platform's archive holds the work of several; one of a single student may be the student's own.
SEVERAL = 2
# Clocks of two machines differ by so much without anybody's doing.
SLACK_SECONDS = 120


def on_the_clock(seconds):
    """A time as people read it, in this machine's time zone."""
    return datetime.fromtimestamp(seconds).strftime("%Y-%m-%d %H:%M:%S")


def by_the_clock(came, now):
    """Arrivals with the time that counts.

    Parameters
    ----------
    came : list of (Arrival, str or None)
        Of one taking-in; `seconds` is what the archive around each says, and beside it stands that
        archive's name: "" where the instructor named it, None where there is none.
    now : int
        The time of taking in, in seconds since 1970.

    Returns
    -------
    list of Arrival
        A zip that lay in a folder is taken for a platform's where it holds the work of several
        students. No time is later than `now`: what says so is kept as the file's own word.
    """
    students = {}
    for one, archive in came:
        students.setdefault((one.place, archive), set()).add(_number(one.says_student))
    found = []
    for one, archive in came:
        own = bool(archive) and len(students[one.place, archive] - {""}) < SEVERAL
        if one.seconds is not None and (own or one.seconds > now):
            one = replace(one, seconds=None, says_seconds=one.says_seconds or one.seconds)
        seconds = now if one.seconds is None else one.seconds
        outer = archive if own else one.outer
        found.append(
            replace(one, seconds=seconds, handed_in=on_the_clock(seconds), taken=now, outer=outer)
        )
    return found


def _number(said):
    """A student number in its one spelling; "" for none."""
    try:
        return student_number(said or "")
    except KitchenError:
        return ""


def earliest_of_one_archive(one, other):
    """The first of two arrivals of the same bytes, with the earlier time where one place says both.

    What comes in another taking-in never moves the time back: a file can be packed again with any
    date.

    Parameters
    ----------
    one, other : Arrival
        In the order of arrival.

    Returns
    -------
    Arrival
    """
    together = one.place == other.place and one.taken == other.taken
    if not together or other.seconds is None:
        return one
    if one.seconds is not None and one.seconds <= other.seconds:
        return one
    return replace(one, seconds=other.seconds, handed_in=other.handed_in)


def still_to_come(one):
    """Whether a file says a time that was still to come when it was taken in."""
    said, taken = one.says_seconds, one.taken
    return said is not None and taken is not None and said > taken + SLACK_SECONDS


def doubted(arrivals, due):
    """Hand-ins that are late by the time that counts, and in time by their own word.

    Parameters
    ----------
    arrivals : list of (Arrival, int)
        Each with the time that counts for its bytes, in seconds since 1970.
    due : callable
        The due time of an arrival, in seconds since 1970, or None.

    Returns
    -------
    list of (Arrival, int, int)
        With the time that counts and the one that it says.
    """
    found = []
    for one, counts in arrivals:
        said = [each for each in (one.says_seconds, one.seconds) if each is not None]
        limit = due(one)
        if said and None not in (limit, counts) and min(said) <= limit < counts:
            found.append((one, counts, min(said)))
    return found
