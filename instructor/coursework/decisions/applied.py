"""A hand-in's record with what a person decided poured in: the one truth for every page and sheet.

Nothing is read or written here, and the record of marking is left as it is.
"""

from dataclasses import dataclass, replace

from coursework.records.points import NOTHING, earned
from coursework.records.record import HumanMark
from coursework.safe_files import digest
from kitchenmath.errors import KitchenError
from kitchenmath.practice import Within
from kitchenmath.units.reading import read

__all__ = ["Change", "answer_mark", "as_decided", "changed_by", "poured_in"]

HALF = 0.5  # of a question's points given by hand: with less of them it did not come right
SAME = 1e-9  # points closer than this are equal: floating point, not marking
RIGHT = ("right", "close", "follow-through")
NEAR = 0.003  # two spellings of one amount: 2/3 kg and 0.667 kg


def answer_mark(answer):
    """What tells an answer from another one; spaces make no difference.

    Parameters
    ----------
    answer : str

    Returns
    -------
    str
    """
    return digest(" ".join(answer.split()).encode("utf-8", "surrogatepass"))


def as_decided(record, human, holds):
    """The record and the points of a person as they stand after all decisions.

    Parameters
    ----------
    record : Record
        As marking leaves it.
    human : dict of (str, str) to HumanMark
        Points and remarks in nbgrader's gradebook, by student and question.
    holds : Holding

    Returns
    -------
    Record
        Without dropped questions. Where a decision or a person changed an outcome, `outcome` and
        `found` say what holds, and `decided` says why: "points by hand", "full marks" or "accept
        this too".
    dict of (str, str) to HumanMark
        The points of a person that hold for this record's student.
    """
    set_id, student = record.set_id, record.student
    asked = [one for one in record.questions if (set_id, one.question) not in holds.dropped]
    given = {
        one.question: _given(one, human.get((student, one.question), NOTHING), holds, record)
        for one in asked
    }
    decided = replace(
        record,
        answered=tuple(
            _with_outcome(one, given[one.question], holds, set_id)
            for one in asked
            if not one.read_by_a_person
        ),
        written=tuple(one for one in asked if one.read_by_a_person),
    )
    mine = {(student, question): mark for question, mark in given.items() if mark != NOTHING}
    return decided, mine


def poured_in(records, human, holds):
    """All records of a set, and all points of a person, as they stand after all decisions.

    Parameters
    ----------
    records : list of Record
    human : dict of (str, str) to HumanMark
    holds : Holding

    Returns
    -------
    list of Record
    dict of (str, str) to HumanMark
    """
    found, given = [], {}
    for record in records:
        decided, mine = as_decided(record, human, holds)
        found.append(decided)
        given |= mine
    return found, given


def _given(asked, stood, holds, record):
    """A person's points and remark for one question, as they hold."""
    set_id, question = record.set_id, asked.question
    if (set_id, question) in holds.full:
        return HumanMark(asked.out_of, holds.full[set_id, question].why)
    by_hand = holds.points.get((set_id, record.student, question))
    if by_hand is None:
        return stood
    same = by_hand.answer in ("", answer_mark(asked.answer))
    if by_hand.kind == "points by hand" and same:
        return HumanMark(by_hand.points, by_hand.why)
    # Another answer reopens it; so does going back to the machine, for what only a person reads.
    return HumanMark(0.0) if asked.read_by_a_person and not asked.answer else NOTHING


def _with_outcome(asked, given, holds, set_id):
    """A judged answer as it holds."""
    if (set_id, asked.question) in holds.full:
        return _cleared(asked, decided="full marks")
    if given.points is not None:
        by_hand = "points by hand"
        if given.points >= asked.out_of - SAME:
            return _cleared(asked, decided=by_hand)
        if given.points >= HALF * asked.out_of - SAME:
            return _cleared(asked, outcome="marked", decided=by_hand)
        outcome = "wrong" if asked.outcome in (*RIGHT, "unreadable") else asked.outcome
        return replace(asked, outcome=outcome, decided=by_hand)
    if any(_accepts(one, asked) for one in holds.accepted.get((set_id, asked.question), ())):
        return _cleared(asked, points=asked.out_of, decided="accept this too")
    return asked


def _cleared(asked, outcome="right", **other):
    """A judged answer that came right after all, with nothing found in it."""
    return replace(asked, outcome=outcome, found=(), notes=(), alternatives=False, **other)


def _accepts(decision, asked):
    """Whether an accepted answer, or a wider step, takes this answer in."""
    typed = asked.answer
    if not typed.strip():
        return False
    if decision.accepted and typed.split() == decision.accepted.split():
        return True
    try:
        value = read(typed)
        if decision.accepted:
            return _near(value, read(decision.accepted), NEAR)
        target = read(asked.right)
        around = Within(read(decision.step)).around(target)
        return abs(value.to(target.units).magnitude - target.magnitude) <= around
    except (KitchenError, ValueError, TypeError, ArithmeticError):
        return False  # no amount, or one of another kind


def _near(value, target, share):
    number = value.to(target.units).magnitude
    return abs(number - target.magnitude) <= share * abs(target.magnitude)


@dataclass(frozen=True)
class Change:
    """A question whose points are others; None is open, or counts nowhere.

    Attributes
    ----------
    student, question : str
    before, after : float or None
    counted, counts : bool
        Whether the question counted before, and does then; a dropped one does not.
    """

    student: str
    question: str
    before: float | None
    after: float | None
    counted: bool = True
    counts: bool = True


def changed_by(records, human, before, after):
    """Whose points are others when one set of decisions holds in place of another.

    This is the preview of a decision: `before` without it, `after` with it.

    Parameters
    ----------
    records : list of Record
    human : dict of (str, str) to HumanMark
    before, after : Holding

    Returns
    -------
    list of Change
        In the order of the records.
    """
    found = []
    for record in records:
        old, new = (earned(*as_decided(record, human, holds)) for holds in (before, after))
        for question in [*old, *(one for one in new if one not in old)]:
            points = [each[question].points if question in each else None for each in (old, new)]
            if points[0] != points[1] or (question in old) != (question in new):
                there = question in old, question in new
                found.append(Change(record.student, question, *points, *there))
    return found
