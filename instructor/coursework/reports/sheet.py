"""The mark sheet: a row for each student, for the office's spreadsheet and for the terminal."""

import contextlib

from coursework.arriving.arrivals import hand_ins
from coursework.arriving.states import COUNTS
from coursework.decisions.holding import Holding
from coursework.errors import CourseError
from coursework.records.points import earned, in_order, slips_in_words, total
from coursework.records.reading import not_marked
from coursework.reports import words
from coursework.reports.copied_words import copied_in_words
from coursework.reports.picture import shortened
from coursework.terms.attempts import said_to_count
from coursework.terms.lateness import days_late
from coursework.words import APART, number

__all__ = ["arrived_for", "mark_sheet", "slips_named"]


def mark_sheet(course, set_id, records, human, holds=None):
    """The marks of a class, a row for each student.

    Parameters
    ----------
    course : Course
    set_id : str
    records : list of Record
    human : dict of (str, str) to HumanMark
        Points and comments of a person, by student and question.
    holds : Holding, optional
        Decisions about times: extensions, and when work was handed in.

    Returns
    -------
    list of list of str
        The first row holds the heads. A mark that is still open is blank and not 0, and so is
        everything of a student who handed in nothing.
    """
    holds = holds or Holding()
    found = {record.student: record for record in records}
    cells = {student: earned(record, human) for student, record in found.items()}
    out_of = {each.question: each.out_of for mine in cells.values() for each in mine.values()}
    questions = sorted(out_of, key=in_order)
    apart = holds.apart(set_id)
    waiting = set(not_marked(course, set_id, records))
    arrived = arrived_for(course, set_id)
    rows = [
        ["student number", "name"]
        + [f"{question} of {number(out_of[question])}" for question in questions]
        + ["total so far", "out of", "open", "slips", "notes"]
    ]
    for student in [*course.roster, *(other for other in found if other not in course.roster)]:
        points = [""] * len(questions)
        if student in apart:
            behind = _apart(apart[student])
        elif student in found:
            points = [_points(cells[student].get(question)) for question in questions]
            mine = holds.timed(arrived.get(student, []))
            behind = _marked(course, found[student], cells[student], mine, holds)
        else:
            behind = ["", "", "", "", words.NOT_MARKED if student in waiting else words.NOTHING]
        rows.append([student, course.roster.get(student, ""), *points, *behind])
    return rows


def _marked(course, record, cells, arrived, holds):
    """Total, out of, open, slips and notes of a marked hand-in."""
    sum_ = total(cells)
    return [
        *(number(sum_.points), number(sum_.out_of), str(len(sum_.open))),
        "; ".join(slips_named(record)),
        " ".join(_notes(course, record, arrived, holds)),
    ]


def _apart(decision):
    """Total, out of, open, slips and notes where the mark does not come from a file."""
    given = decision.points is not None
    points = [number(decision.points), number(decision.out_of), "0"] if given else ["", "", ""]
    return [*points, "", APART[decision.kind]]


def arrived_for(course, set_id):
    """The hand-ins of each student for a set; none where the list of arrivals was damaged.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    dict of str to list of Arrival
    """
    # A damaged list is told on the class's page; elsewhere it only means that less is said.
    with contextlib.suppress(CourseError):
        return hand_ins(course, set_id)
    return {}


def _points(cell):
    """Points for the mark sheet: blank where the question was not asked or is not marked."""
    return "" if cell is None or cell.points is None else number(cell.points)


def slips_named(record):
    """Question and slip: "q1 one cover only"; two names where they cannot be told apart."""
    return [
        f"{one.question} {slips_in_words(one.slips, one.alternatives)}"
        for one in sorted(record.answered, key=lambda each: in_order(each.question))
        if one.slips
    ]


def _notes(course, record, arrived, holds):
    """What the office or the instructor should know about one hand-in, a sentence each."""
    notes = [f"Compare with {one.student}: {copied_in_words(one)}." for one in record.copied]
    notes += [shortened(each, 200) for each in (*record.findings, *record.to_do)]
    set_id = record.set_id
    rule = holds.due(course.policy.rule(set_id), set_id, record.student)
    days, named = days_late(record, arrived, rule), said_to_count(arrived, holds)
    notes += [words.late(days)] if days else []
    if len(arrived) > 1:
        notes.append(words.many_times(len(arrived), named))
    if any(one.became == COUNTS and one.sha256 != record.sha256 for one in arrived):
        notes.append(words.not_yet(named))
    if record.student not in course.roster:
        notes.append(words.NOT_ON_ROSTER)
    return notes
