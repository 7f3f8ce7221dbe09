"""One student over the whole term: every set, attempt and mark, who gave it and why, skills, notes.

Nothing is worked out here that another page works out too: the marks are the mark book's.
"""

from dataclasses import dataclass

from coursework.arriving.arrivals import read_list
from coursework.decisions.applied import as_decided
from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import human_marks
from coursework.records.points import earned, heading_of
from coursework.records.record_file import read_record
from coursework.reports import student_words as words
from coursework.sets.key_text import set_titles
from coursework.skills.skill_table import skill_table
from coursework.terms.counting import Counted, Weighed
from coursework.terms.grades import Graded
from coursework.terms.term_book import term_book
from kitchenmath.practice import sentences

__all__ = ["MarkOf", "SetOf", "StudentView", "student_view"]


@dataclass(frozen=True)
class MarkOf:
    """One question's mark.

    Attributes
    ----------
    question, title, answer : str
    points : float or None
        None while it waits.
    out_of : float
    who, why : str
        Who gave it, and the remark or what was found.
    """

    question: str
    title: str
    answer: str
    points: float | None
    out_of: float
    who: str
    why: str


@dataclass(frozen=True)
class SetOf:
    """A set as it stands for the student.

    Attributes
    ----------
    set_id, title : str
    counted : Counted
        As the mark book counts it, with how it came about.
    attempts : tuple of Arrival
        Every file, earliest first.
    marks : tuple of MarkOf
    """

    set_id: str
    title: str
    counted: Counted
    attempts: tuple
    marks: tuple


@dataclass(frozen=True)
class StudentView:
    """All of a student.

    Attributes
    ----------
    number, name : str
    total : Weighed
    graded : Graded
    sets : tuple of SetOf
    practical : tuple of (str, Counted)
    got, not_got : tuple of str
        Skills.
    decided : tuple of Decision
        What was decided about the student; nothing that concerns the whole class.
    """

    number: str
    name: str
    total: Weighed
    graded: Graded
    sets: tuple
    practical: tuple
    got: tuple
    not_got: tuple
    decided: tuple


def student_view(course, student):
    """A student over all sets.

    Parameters
    ----------
    course : Course
    student : str

    Returns
    -------
    StudentView

    Raises
    ------
    CourseError
        When nobody of that number is in the class, or nothing was handed out yet.
    """
    book, decisions = term_book(course), decisions_of(course)
    line = next((one for one in book.students if one.number == student), None)
    if line is None:
        raise CourseError(f"student: {student} is not on the roster.")
    arrived = [one for one in read_list(course) if one.student == student]
    pairs, holds = list(zip(book.columns, line.marks, strict=True)), holding(decisions)
    sets = tuple(
        SetOf(
            column.name, set_titles().get(column.name, column.title), mark,
            tuple(sorted((one for one in arrived if one.set_id == column.name),
                         key=lambda one: one.order)),
            _marks(course, column.name, student, holds),
        )
        for column, mark in pairs
        if column.name not in course.policy.practical
    )  # fmt: skip
    practical = tuple(
        (one.name, mark) for one, mark in pairs if one.name in course.policy.practical
    )
    decided = tuple(one for one in decisions if _is_about(one, student, decisions))
    return StudentView(student, line.name, line.total, line.graded, sets, practical,
                       *_skills(course, student), decided)  # fmt: skip


def _is_about(one, student, decisions):
    """Whether a line is about the student; taking back is about what it takes back."""
    taken = next((each for each in decisions if each.number == one.line), one)
    return student in (one.student, taken.student)


def _skills(course, student):
    """Skills got and not got; none where nothing is marked yet."""
    try:
        table = skill_table(course)
    except CourseError:
        return (), ()
    lacking = tuple(table.not_got(student))
    asked = [name for name, skill in table.skills.items() if student in skill.students]
    return tuple(one for one in asked if one not in lacking), lacking


def _marks(course, set_id, student, holds):
    """Each question's mark of the hand-in that was marked last, and who gave it."""
    try:
        record = read_record(course.marks(set_id, student))
    except CourseError:  # it cannot be read: the report says so
        return ()
    if record is None or not record.questions:
        return ()
    record, human = as_decided(record, human_marks(course, set_id), holds)
    asked = {each.question: each for each in record.questions}
    found = []
    for question, cell in earned(record, human).items():
        one = asked[question]
        title = heading_of(one.asked, question)[0]
        who, why = _giver(one, cell, holds, (set_id, student, question))
        found.append(MarkOf(question, title, one.answer, cell.points, cell.out_of, who, why))
    return tuple(found)


def _giver(asked, cell, holds, key):
    """Who gave the points, and why."""
    set_id, _, question = key
    full, given = holds.full.get((set_id, question)), holds.points.get(key)
    if full is not None:
        return words.full_marks(full.who), full.why
    if cell.points is None:
        return words.NOBODY, ""
    if given is not None and given.kind == "points by hand" and given.points == cell.points:
        return f"{given.who}, {given.when[:10]}", given.why
    if not asked.read_by_a_person and asked.decided == "accept this too":
        accepted = holds.accepted[set_id, question][-1]
        return words.accepted(accepted.who), accepted.why
    if not asked.read_by_a_person:
        return words.MACHINE, " ".join(sentences(asked))
    return (words.A_PERSON if asked.answer.strip() else words.MACHINE), cell.comment
