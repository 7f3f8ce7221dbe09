"""A hand-in's record with what a person decided poured in: the one truth for every page and sheet.

Nothing is read or written here, and the record of marking is left as it is.
"""

from dataclasses import dataclass

from coursework.records.points import earned
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
    record : dict
        As marking leaves it.
    human : dict of (str, str) to (float or None, str)
        Points and remarks in nbgrader's gradebook, by student and question.
    holds : Holding

    Returns
    -------
    dict
        The record, without dropped questions. Where a decision or a person changed an outcome,
        `outcome`, `slips` and `sentences` say what holds, and `decided` says why: "points by
        hand", "full marks" or "accept this too".
    dict of (str, str) to (float or None, str)
        The points of a person that hold for this record's student.
    """
    set_id, student = record.get("set", ""), record["student"]
    kept = {"verdicts": [], "human": []}
    mine = {}
    for part, found in kept.items():
        for asked in record[part]:
            question = asked["question"]
            if (set_id, question) in holds.dropped:
                continue
            given = _given(asked, human.get((student, question)), holds, (set_id, student))
            if given is not None and (given[0] is not None or given[1]):
                mine[student, question] = given
            found.append(_with_outcome(asked, given, holds, set_id))
    return record | kept, mine


def poured_in(records, human, holds):
    """All records of a set, and all points of a person, as they stand after all decisions.

    Parameters
    ----------
    records : list of dict
    human : dict of (str, str) to (float or None, str)
    holds : Holding

    Returns
    -------
    list of dict
    dict of (str, str) to (float or None, str)
    """
    found, given = [], {}
    for record in records:
        decided, mine = as_decided(record, human, holds)
        found.append(decided)
        given |= mine
    return found, given


def _given(asked, stood, holds, whose):
    """A person's points and remark for one question, or None where there are none that hold."""
    set_id, student = whose
    question = asked["question"]
    if (set_id, question) in holds.full:
        return float(asked["out_of"]), holds.full[set_id, question].why
    by_hand = holds.points.get((set_id, student, question))
    if by_hand is None:
        return stood
    same = by_hand.answer in ("", answer_mark(asked["answer"]))
    if by_hand.kind == "points by hand" and same:
        return by_hand.points, by_hand.why
    # Another answer reopens it; so does going back to the machine, for what only a person reads.
    return (0.0 if "outcome" not in asked and not asked["answer"] else None), ""


def _with_outcome(asked, given, holds, set_id):
    """A verdict as it holds; a written answer has no outcome and stays as it is."""
    if "outcome" not in asked:
        return asked
    question, out_of = asked["question"], float(asked["out_of"])
    if (set_id, question) in holds.full:
        return _right(asked, "full marks", asked["points"])
    if given is not None and given[0] is not None:
        if given[0] >= out_of - SAME:
            return _right(asked, "points by hand", asked["points"])
        if given[0] >= HALF * out_of - SAME:
            return _right(asked, "points by hand", asked["points"]) | {"outcome": "marked"}
        outcome = "wrong" if asked["outcome"] in (*RIGHT, "unreadable") else asked["outcome"]
        return asked | {"outcome": outcome, "decided": "points by hand"}
    if any(_accepts(one, asked) for one in holds.accepted.get((set_id, question), ())):
        return _right(asked, "accept this too", out_of)
    return asked


def _right(asked, decided, points):
    return asked | {"outcome": "right", "slips": [], "sentences": [], "alternatives": False,
                    "points": points, "decided": decided}  # fmt: skip


def _accepts(decision, asked):
    """Whether an accepted answer, or a wider step, takes this answer in."""
    typed = asked["answer"]
    if not typed.strip():
        return False
    if decision.accepted and typed.split() == decision.accepted.split():
        return True
    try:
        value = read(typed)
        if decision.accepted:
            return _near(value, read(decision.accepted), NEAR)
        target = read(asked["right"])
        around = Within(read(decision.step)).around(target)
        return abs(value.to(target.units).magnitude - target.magnitude) <= around
    except (KitchenError, ValueError, TypeError, ArithmeticError):
        return False  # no amount, or one of another kind


def _near(value, target, share):
    number = value.to(target.units).magnitude
    return abs(number - target.magnitude) <= share * abs(target.magnitude)


@dataclass(frozen=True)
class Change:
    """A question whose points are others; None is open, or not asked any more."""

    student: str
    question: str
    before: float | None
    after: float | None


def changed_by(records, human, before, after):
    """Whose points are others when one set of decisions holds in place of another.

    This is the preview of a decision: `before` without it, `after` with it.

    Parameters
    ----------
    records : list of dict
    human : dict of (str, str) to (float or None, str)
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
                found.append(Change(record["student"], question, *points))
    return found
