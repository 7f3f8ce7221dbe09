"""How long a class keeps copies of its students' work: the lines below [copies] of its file."""

from calendar import monthrange
from dataclasses import dataclass
from datetime import date

from coursework.classes.course_file import Day, Months

__all__ = ["COPY_LINES", "CopyLines", "months_after"]


@dataclass(frozen=True)
class CopyLines:
    """The lines below [copies].

    Attributes
    ----------
    months : int
        After the class's last due time.
    until : date or None
        The last day, whatever is due when; it goes before `months`.
    """

    months: Months = 12
    until: Day | None = None


COPY_LINES = """
# How long copies of students' work are kept: so many months after the last due time of all sets,
# or until a day that you name. Then the desk says so, and discards them when you tell it to, never
# by itself. Marks, mark sheets, the roster and the journal stay.
# [copies]
# months = 12
# until = "2027-08-31"
"""


def months_after(day, months):
    """The same day of a later month; the month's last one where it has no such day.

    Parameters
    ----------
    day : date
    months : int

    Returns
    -------
    date

    Examples
    --------
    >>> months_after(date(2026, 1, 31), 13)
    datetime.date(2027, 2, 28)
    """
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))
