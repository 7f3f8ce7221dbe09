"""A student's points: what marking found, with the points that a person gave poured in."""

import math
import re
from dataclasses import dataclass

from coursework.records.record import HumanMark

__all__ = ["Earned", "Total", "earned", "heading_of", "in_order", "slips_in_words", "total"]

NOTHING = HumanMark()


@dataclass(frozen=True)
class Earned:
    """The points of one question.

    Attributes
    ----------
    question : str
    points : float or None
        None while a written answer waits for its marker: open, which is not 0.
    out_of : float
    comment : str
        What the marker wrote.
    """

    question: str
    points: float | None
    out_of: float
    comment: str = ""


@dataclass(frozen=True)
class Total:
    """A student's points so far.

    Attributes
    ----------
    points : float
        Sum of what is marked.
    marked : float
        Points that those questions could give.
    out_of : float
        Points that the whole set could give.
    open : tuple of str
        Questions that are not marked yet.
    """

    points: float
    marked: float
    out_of: float
    open: tuple

    @property
    def share(self):
        """Points so far as a share of what is marked, or None where nothing is.

        Rounded, so that 1.2 of 3 points is 0.4 and not 0.39999999999999997.
        """
        return round(self.points / self.marked, 9) if self.marked > 0 else None


def earned(record, human):
    """Each question's points, in the order of the questions.

    Parameters
    ----------
    record : Record
    human : dict of (str, str) to HumanMark
        By student and question. Where a person marked a question, that counts.

    Returns
    -------
    dict of str to Earned
    """
    found = {}
    for asked in sorted(record.questions, key=lambda each: in_order(each.question)):
        points, remark = human.get((record.student, asked.question), NOTHING)
        points = asked.points if points is None else points
        found[asked.question] = Earned(asked.question, points, asked.out_of, remark.strip())
    return found


def total(cells):
    """The sum of a student's questions.

    Parameters
    ----------
    cells : dict of str to Earned

    Returns
    -------
    Total
    """
    marked = [cell for cell in cells.values() if cell.points is not None]
    return Total(
        points=math.fsum(cell.points for cell in marked),
        marked=math.fsum(cell.out_of for cell in marked),
        out_of=math.fsum(cell.out_of for cell in cells.values()),
        open=tuple(cell.question for cell in cells.values() if cell.points is None),
    )


def in_order(question):
    """A sort key that puts q2 before q10."""
    parts = re.split(r"([0-9]+)", question)
    return [int(part) if part.isdecimal() else part for part in parts]


def heading_of(asked, question):
    """A question's heading, without its marks, and the text below it.

    Parameters
    ----------
    asked : str
        Markdown; its first line is the heading: "## 1. Celeriac to buy (3 points)".
    question : str
        Named instead where there is no heading.

    Returns
    -------
    (str, str)
    """
    first = re.match(r"\s*#{1,6}[ \t]+([^\n]+)", asked)
    if not first:
        return f"Question {question}", asked
    words = re.sub(r"\s*\([^()]*\bpoints?\b[^()]*\)\s*$", "", first[1])
    return re.sub(r"[*`#]", "", words).strip(), asked[first.end() :]


def slips_in_words(slips, alternatives):
    """The names of an answer's slips: one or another where a number cannot tell, else all.

    A single number may be explained by two slips; a plan or a row of pieces can show two at once.

    Parameters
    ----------
    slips : sequence of str
    alternatives : bool
        The verdict's, which says which of both it is.

    Returns
    -------
    str
        "" where there is none.
    """
    joined = " or " if alternatives else " and "
    return joined.join(filter(None, [", ".join(slips[:-1]), *slips[-1:]]))
