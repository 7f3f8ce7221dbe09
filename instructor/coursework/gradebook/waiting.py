"""What a person reads: written answers, and those that the machine could not judge."""

from dataclasses import dataclass

from coursework.decisions.applied import poured_in
from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import human_marks
from coursework.records.points import NOTHING, heading_of, in_order
from coursework.records.reading import usable_records

__all__ = ["Answer", "answers_in", "answers_to_read", "by_question", "remarks_on", "waiting_count"]


@dataclass(frozen=True)
class Answer:
    """One answer that a person reads.

    Attributes
    ----------
    student, question, title : str
        The title is the question's heading.
    asked : str
        The question's text below its heading, as Markdown.
    answer : str
        As typed.
    out_of : float
    points : float or None
        None while it waits.
    remark : str
    right : str
        The right answer of a question that the machine marks elsewhere; "" for a written one.
    working : tuple of str
    """

    student: str
    question: str
    title: str
    asked: str
    answer: str
    out_of: float
    points: float | None = None
    remark: str = ""
    right: str = ""
    working: tuple = ()


def answers_to_read(course, set_id):
    """Every answer of a set that a person reads, question by question, students in order.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    list of Answer

    Raises
    ------
    CourseError
        When nothing of the set is marked yet.
    """
    records, _ = usable_records(course, set_id)
    return answers_in(records, set_id, human_marks(course, set_id), holding(decisions_of(course)))


def answers_in(records, set_id, human, holds):
    """Of records that were read already, every answer that a person reads.

    Parameters
    ----------
    records : list of Record
    set_id : str
    human : dict of (str, str) to HumanMark
    holds : Holding

    Returns
    -------
    list of Answer
        Question by question, students in order.
    """
    records, marks = poured_in(records, human, holds)
    found, apart = [], holds.apart(set_id)
    for record in records:
        if record.student in apart:  # the mark does not come from this file
            continue
        for asked in record.questions:
            if asked.points is None:
                given = marks.get((record.student, asked.question), NOTHING)
                found.append(_answer(record.student, asked, given))
    return sorted(found, key=lambda one: (in_order(one.question), one.student))


def _answer(student, asked, given):
    title, text = heading_of(asked.asked, asked.question)
    return Answer(
        student, asked.question, title, text.strip(), asked.answer, asked.out_of, given.points,
        given.remark, asked.right, asked.working,
    )  # fmt: skip


def by_question(answers):
    """The answers by question, in order.

    Parameters
    ----------
    answers : list of Answer

    Returns
    -------
    dict of str to list of Answer
    """
    found = {}
    for one in answers:
        found.setdefault(one.question, []).append(one)
    return found


def remarks_on(answers):
    """Remarks that were written on these answers, the most used first, each once.

    Parameters
    ----------
    answers : list of Answer

    Returns
    -------
    list of str
    """
    counts = {}
    for one in answers:
        if one.remark:
            counts[one.remark] = counts.get(one.remark, 0) + 1
    return sorted(counts, key=lambda one: -counts[one])


def still_open(answers):
    """How many of these answers nobody has given points for."""
    return sum(one.points is None for one in answers)


def waiting_count(course, set_id):
    """How many answers of a set wait; 0 where nothing is marked yet.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    int
    """
    try:
        return still_open(answers_to_read(course, set_id))
    except CourseError:
        return 0
