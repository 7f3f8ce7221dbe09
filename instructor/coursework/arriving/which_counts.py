"""Which of a student's hand-ins for a set counts, and which wait until a person says so.

A number in a notebook is typed by whoever has the file. So a hand-in never takes the place of a
marked one on its own word: the platform's name of the sender, a student's code or a person must
agree.
"""

from dataclasses import replace

from coursework.arriving import words
from coursework.arriving.states import COUNTS, NOT_CHOSEN, REPLACED, WAITS

__all__ = ["settled_for_one", "vouched"]


def settled_for_one(mine, holds, marked):
    """What becomes of one student's hand-ins for one set.

    Parameters
    ----------
    mine : list of Arrival
        In the order of arrival.
    holds : Holding
    marked : str
        The SHA-256 of the hand-in that is marked; empty where none is.

    Returns
    -------
    list of Arrival
        The same, with `became` and `reason`.
    """
    chosen = holds.counts.get((mine[0].student, mine[0].set_id))
    named = [one for one in mine if chosen and one.sha256 == chosen.file]
    if named:
        return [_by_a_person(one, named[0]) for one in mine]
    order = {one.line: (*_timed(one, holds), place) for place, one in enumerate(mine)}
    stands = next((one for one in mine if one.sha256 == marked), None)
    waits = [
        one for one in mine if stands and order[one.line] > order[stands.line] and not vouched(one)
    ]
    latest = max((one for one in mine if one not in waits), key=lambda one: order[one.line])
    found = []
    for one in mine:
        if one in waits:
            became, reason = WAITS, _why_it_waits(one, stands)
        elif one is latest:
            became, reason = COUNTS, _why_it_counts(len(mine), waits and one is stands)
        else:
            became, reason = REPLACED, words.LATER_ONE.format(file=_called(latest))
        found.append(replace(one, became=became, reason=reason))
    return found


def vouched(one):
    """Whether something besides the file itself says that an arrival is its student's.

    Parameters
    ----------
    one : Arrival

    Returns
    -------
    bool
    """
    return bool(one.told_student) or one.sender == one.student or one.code == "right"


def _by_a_person(one, named):
    became = COUNTS if one is named else NOT_CHOSEN
    return replace(one, became=became, reason=words.YOU_SAID.format(file=_called(named)))


def _called(one):
    said = words.NAMED_AND_WHEN if one.came else words.NAMED
    return said.format(name=one.name, came=one.came)


def _timed(one, holds):
    """What puts a hand-in in order, with the time that a person said before any other."""
    said = holds.handed_in.get((one.student, one.set_id, one.sha256))
    seconds, own_word = one.order
    return said.seconds if said else seconds, own_word


def _why_it_counts(many, marked_and_doubted):
    if marked_and_doubted:
        return words.LATER_ONE_WAITS
    return words.LATEST.format(many=many) if many > 1 else words.ONLY_ONE


def _why_it_waits(one, stands):
    return words.ONLY_ITS_WORD.format(student=one.student, marked=stands.name)
