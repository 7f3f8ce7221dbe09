"""The list of decisions in the gradebook's database: lines are added, never changed.

It stands in a table of the kit's own beside nbgrader's, so that one copy of the gradebook holds
marks and decisions, and a college's PostgreSQL has both.
"""

from coursework.decisions.kinds import Decision, refuse_odd
from coursework.decisions.stamp import now, who_is_here
from coursework.gradebook.points import connected

__all__ = ["add_decision", "decisions_of"]


def add_decision(course, kind, who="", when="", **about):
    """Add one line.

    Parameters
    ----------
    course : Course
    kind : str
    who, when : str, optional
        Whoever uses this machine, now.
    **about
        The other fields of a `Decision`.

    Returns
    -------
    Decision
        With its number.

    Raises
    ------
    CourseError
        When the line is odd, or there is no gradebook.
    """
    decision = Decision(kind, who or who_is_here(), when or now(), **about)
    refuse_odd(decision)
    with connected(course) as book:
        return book.add_decision(decision)


def decisions_of(course):
    """All lines, in order; none where the class has no gradebook yet.

    Parameters
    ----------
    course : Course

    Returns
    -------
    list of Decision

    Raises
    ------
    CourseError
        When the database does not answer, or a newer kit wrote a kind that this one does not know.
    """
    if course.gradebook_file and not course.gradebook_file.is_file():
        return []
    with connected(course) as book:
        found = book.decisions()
    for one in found:
        refuse_odd(one)
    return found
