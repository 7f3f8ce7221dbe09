"""The term's mark book: every set and practical mark of every student, and what they come to.

What counts, and how, is the class's stated policy (`policy`). An open mark is blank and never 0.
"""

import difflib
import time
from dataclasses import dataclass, replace

from coursework.arriving.arrivals import hand_ins
from coursework.decisions.applied import poured_in
from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import human_marks, refused_points
from coursework.records.reading import not_marked, usable_records
from coursework.sets.key_text import set_ids
from coursework.terms.attempts import attempts_of, said_to_count
from coursework.terms.counting import Counted, Weighed, counted, weighed
from coursework.terms.grades import NO_GRADE, Graded, graded
from coursework.terms.mark_words import NO_WEIGHT, stranger, to_mark
from coursework.terms.practical import practical_marks
from coursework.terms.practical_given import practical_given

__all__ = ["Column", "Student", "TermBook", "term_book"]


@dataclass(frozen=True)
class Column:
    """A set or a practical mark.

    Attributes
    ----------
    name, title : str
    weight : float
    out_of : float or None
        None as long as nobody's is marked.
    """

    name: str
    title: str
    weight: float
    out_of: float | None


@dataclass(frozen=True)
class Student:
    """One student's line of the book.

    Attributes
    ----------
    number, name : str
    marks : tuple of Counted
        One for each column.
    total : Weighed
        Of what is marked so far.
    open : tuple of str
        Marks that count and are open, by name.
    graded : Graded
        What the total comes to.
    """

    number: str
    name: str
    marks: tuple
    total: Weighed
    open: tuple
    graded: Graded = NO_GRADE


@dataclass(frozen=True)
class TermBook:
    """The mark book of a class.

    Attributes
    ----------
    columns : tuple of Column
        Sets in order, then practical marks as the course file has them.
    students : tuple of Student
        In the order of the roster, then those who are not on it.
    to_look_at : tuple of str
        What the instructor should know or mend, a sentence each.
    """

    columns: tuple
    students: tuple
    to_look_at: tuple


def term_book(course, progress=None, now=None):
    """The mark book in plain numbers.

    Parameters
    ----------
    course : Course
    progress : callable, optional
        Called with (done, total, text).
    now : float, optional
        Seconds since 1970, in place of the clock.

    Returns
    -------
    TermBook

    Raises
    ------
    CourseError
    """
    now = time.time() if now is None else now
    sets = _sets(course)
    if not sets and not course.policy.practical:
        raise CourseError("there is nothing for a mark book yet: hand out a set first.")
    columns, marks, odd = _set_columns(course, sets, progress, now)
    strangers = sorted({who for found in marks for who in found} - set(course.roster))
    given = practical_given(
        practical_marks(course), holding(decisions_of(course)).practical, course.policy
    )
    for each in course.policy.practical.values():
        columns.append(Column(each.name, each.name, each.weight, each.out_of))
        marks.append({who: one for (who, name), one in given.marks.items() if name == each.name})
    everybody = course.roster | {who: "" for who in strangers}
    students = [
        _by_policy(course.policy, _student(who, name, columns, marks))
        for who, name in everybody.items()
    ]
    odd += map(stranger, strangers)
    if not any(column.weight for column in columns):
        odd.append(NO_WEIGHT)
    to_look_at = dict.fromkeys([*odd, *given.odd])  # a damaged list is met at every set
    return TermBook(tuple(columns), tuple(students), tuple(to_look_at))


def _set_columns(course, sets, progress, now):
    """A column for each set, the marks in each, and what to look at."""
    columns, marks, odd = [], [], []
    for done, set_id in enumerate(sets):
        if progress:
            progress(done, len(sets), set_id)
        column, found, sentences = _set_column(course, set_id, now)
        columns.append(column)
        marks.append(found)
        odd += sentences
    if progress:
        progress(len(sets), len(sets), "")
    return columns, marks, odd


def _by_policy(policy, student):
    """A student's line with the grade; without a total where that waits for what is open."""
    if policy.wait_for_open_marks and student.open:
        student = replace(student, total=replace(student.total, percent=None))
    return replace(student, graded=graded(student.total.percent, policy))


def _sets(course):
    """The sets of the book: handed out, or named in the course file."""
    handed_out, known = course.sets_handed_out(), set_ids()
    for set_id in course.policy.sets:
        if set_id not in {*handed_out, *known}:
            near = difflib.get_close_matches(set_id, {*handed_out, *known}, n=1)
            hint = f" Did you mean {near[0]}?" if near else ""
            raise CourseError(f"course.toml, [sets.{set_id}]: there is no such set.{hint}")
    return sorted({*handed_out, *course.policy.sets})


def _set_column(course, set_id, now):
    """A set's column, each student's mark in it, and what to look at."""
    (records, odd), human = _records(course, set_id), {}
    holds = holding(decisions_of(course))
    if records:
        records, human = poured_in(records, human_marks(course, set_id), holds)
        odd += refused_points(course, set_id)
    marks = _of_records(course, set_id, records, human, holds, odd)
    waiting = not_marked(course, set_id, records)
    marks |= {student: Counted(state="waits") for student in waiting}
    if any(mark.waits_for_marking for mark in marks.values()):
        odd.append(to_mark(set_id))
    rule = course.policy.rule(set_id)
    marks |= {
        student: _nothing(course, set_id, now, holds.due(rule, set_id, student))
        for student in course.roster
        if student not in marks
    }
    marks |= _by_decision(holds, set_id)
    out_of = max((record.out_of for record in records), default=None)
    title = records[0].title if records else set_id
    return Column(set_id, title, rule.weight, out_of), marks, odd


def _of_records(course, set_id, records, human, holds, odd):
    """The mark of each student whose hand-in is marked; an attempt that is lost goes into `odd`."""
    arrived, marks = _arrived(course, set_id, odd), {}
    for record in records:
        mine = holds.timed(arrived.get(record.student, []))
        try:
            marks[record.student] = _marked(course, record, mine, human, holds)
        except CourseError as error:
            odd.append(f"{set_id}, {record.student}: {error}")
            marks[record.student] = Counted(state="earlier lost")
    return marks


def _marked(course, record, mine, human, holds):
    """The mark of a student whose hand-in is marked; it waits where another one counts."""
    named = said_to_count(mine, holds)
    wanted = named or (mine[-1] if mine else None)
    if wanted and wanted.sha256 != record.sha256:
        return Counted(state="named waits" if named else "latest waits")
    attempts, several = attempts_of(course, record.set_id, record, mine, human, holds)
    mark = counted(course.policy, attempts, several)
    return _or_zero(course.policy, mark, record.out_of)


def _records(course, set_id):
    """What marking left; nothing, where nothing is marked yet."""
    if not course.marks(set_id, "any").parent.is_dir():
        return [], []
    try:
        return usable_records(course, set_id)
    except CourseError:
        return [], []


def _arrived(course, set_id, odd):
    """Each student's hand-ins; without a list nobody handed in twice, and that is said."""
    try:
        return hand_ins(course, set_id)
    except CourseError as error:
        odd.append(str(error))
        return {}


def _or_zero(policy, mark, out_of):
    """A mark, or 0 by the policy where every attempt came too late to count."""
    too_late = mark.share is None and not mark.open
    if too_late and policy.nothing_handed_in == "zero":
        return replace(mark, share=0.0, points=0.0, out_of=out_of)
    return mark


def _by_decision(holds, set_id):
    """Marks that a person's word makes, whatever was handed in: on paper, and excused."""
    return {
        student: Counted(state=one.kind, excused=True)
        if one.kind == "excused"
        else Counted(round(one.points / one.out_of, 9), one.points, one.out_of, state=one.kind)
        for student, one in holds.apart(set_id).items()
    }


def _nothing(course, set_id, now, rule):
    """The mark of a student who handed in nothing."""
    due = rule.due
    if set_id not in course.sets_handed_out():
        return Counted(state="not out")
    if course.policy.nothing_handed_in == "zero" and due is not None and now > due:
        return Counted(0.0, 0.0, state="nothing, so 0")
    return Counted(state="nothing")


def _student(student, name, columns, marks):
    """A student's line: the marks, their total, and what is open."""
    mine = tuple(column.get(student, Counted()) for column in marks)
    pairs = list(zip(columns, mine, strict=True))
    open_ = []
    for column, mark in pairs:
        if column.weight and mark.open:
            open_ += [f"{column.name} {question}" for question in mark.open]
        elif column.weight and mark.share is None and not mark.excused:
            open_.append(column.name)
    total = weighed([(column.weight, mark.share) for column, mark in pairs if not mark.excused])
    return Student(student, name, mine, total, tuple(open_))
