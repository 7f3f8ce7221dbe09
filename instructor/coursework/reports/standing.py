"""Where a student stands: what marking found, with the points that a person gave poured in.

Records are the JSON files that marking leaves, one for each hand-in. This module only reads.
"""

import json
import math
import re
from dataclasses import dataclass

from coursework.classes.course import CourseError
from coursework.marking.copies import name_copies
from kitchenmath.units.saying import figures

__all__ = [
    "Earned",
    "Total",
    "earned",
    "heading_of",
    "in_order",
    "not_marked",
    "number",
    "slips_in_words",
    "total",
    "usable_records",
]

# What pages and sheets take from a record.
IN_HUMAN = {"question", "asked", "answer", "out_of"}
IN_VERDICT = IN_HUMAN | {"outcome", "points", "sentence", "right", "slips", "working", "given"}


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


def earned(record, human):
    """Each question's points, in the order of the questions.

    Parameters
    ----------
    record : dict
    human : dict of (str, str) to (float or None, str)
        By student and question. Where a person marked a question, that counts.

    Returns
    -------
    dict of str to Earned
    """
    student, found = record["student"], {}
    for asked in [*record["verdicts"], *record["human"]]:
        question = asked["question"]
        points, comment = human.get((student, question), (None, ""))
        if points is None:
            points = asked.get("points")
        out_of = float(asked["out_of"])
        found[question] = Earned(question, points, out_of, str(comment or "").strip())
    return {question: found[question] for question in sorted(found, key=in_order)}


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


def number(value):
    """Points as a cook writes them: 3, 2.5."""
    return figures(round(value, 4), 8)


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


def _is_whole(record, student):
    """Whether a record is that student's and holds all that a page needs."""
    if not isinstance(record, dict) or record.get("student") != student or "title" not in record:
        return False
    verdicts, human = record.get("verdicts"), record.get("human")
    if not isinstance(verdicts, list) or not isinstance(human, list) or not verdicts + human:
        return False
    wanted = [(verdict, IN_VERDICT) for verdict in verdicts] + [(cell, IN_HUMAN) for cell in human]
    return all(isinstance(each, dict) and names <= each.keys() for each, names in wanted)


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
