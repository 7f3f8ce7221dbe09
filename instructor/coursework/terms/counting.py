"""How a mark counts in the mark book: late work, several attempts, weights. Numbers only.

A share is of the points that are marked so far, so that an open mark is never a 0.
"""

import math
from dataclasses import dataclass

from coursework.records.points import Total
from coursework.words import number

__all__ = ["Attempt", "Counted", "Weighed", "counted", "late_days", "weighed"]

DAY = 24 * 60 * 60


@dataclass(frozen=True)
class Attempt:
    """One attempt of a student at a set.

    Attributes
    ----------
    place : int
        1 for the first.
    total : Total
    late : int
        Days started after the due time; 0 in time.
    off : float
        Percent of the set's points that being late costs.
    unread : tuple of str
        Questions whose written answer is another than the one that a person gave points for.
    by_word : bool
        Whether a person said that it is the one that counts, whatever the policy says.
    """

    place: int
    total: Total
    late: int = 0
    off: float = 0.0
    unread: tuple = ()
    by_word: bool = False

    @property
    def share(self):
        """Share of the points marked so far, after the cost and never below 0; None without."""
        before = self.total.share
        return None if before is None else round(max(0.0, before - self.off / 100), 9)

    @property
    def points(self):
        """Points after the cost, or None where nothing is marked."""
        return None if self.share is None else round(self.share * self.total.marked, 9)


@dataclass(frozen=True)
class Counted:
    """What counts of a student's attempts at a set, or of a practical mark.

    Attributes
    ----------
    share, points : float or None
        None where there is nothing to count yet: open, which is not 0.
    out_of : float
        Points that are marked so far.
    open : tuple of str
        What is not marked yet.
    words : tuple of str
        How it came about, a sentence each; empty where there is nothing to say.
    excused : bool
        Whether it counts nowhere: neither open nor 0, and its weight is not waited for.
    """

    share: float | None = None
    points: float | None = None
    out_of: float = 0.0
    open: tuple = ()
    words: tuple = ()
    excused: bool = False


@dataclass(frozen=True)
class Weighed:
    """A student's total.

    Attributes
    ----------
    percent : float or None
    weight, all_weights : float
        The weights that the total is made of, and those that it will be made of.
    """

    percent: float | None
    weight: float
    all_weights: float


def late_days(seconds, due):
    """Days started after the due time.

    Parameters
    ----------
    seconds, due : float or None
        Since 1970. What is not known counts as in time.

    Returns
    -------
    int
    """
    if seconds is None or due is None or seconds <= due:
        return 0
    return math.ceil((seconds - due) / DAY)


def weighed(parts):
    """The weighted mean of what is marked.

    Parameters
    ----------
    parts : list of (float, float or None)
        Weight and share; None where a mark is open.

    Returns
    -------
    Weighed
    """
    marked = [(weight, share) for weight, share in parts if share is not None]
    weight = math.fsum(weight for weight, _ in marked)
    all_weights = math.fsum(weight for weight, _ in parts)
    if weight == 0:
        return Weighed(None, 0.0, all_weights)
    sum_ = math.fsum(weight * share for weight, share in marked)
    return Weighed(round(100 * sum_ / weight, 7), weight, all_weights)


def counted(policy, attempts, several=None):
    """What a policy makes of a student's attempts at a set.

    Parameters
    ----------
    policy : Policy
    attempts : list of Attempt
        In the order of handing in; with "latest" from the one that counts.
    several : int, optional
        How many attempts there were, where not all are given.

    Returns
    -------
    Counted
        Without a share where every attempt came too late to count.
    """
    several = several or len(attempts)
    usable = [one for one in attempts if one.by_word or one.late <= policy.late_days]
    words = [_said(one, several, policy.late_days) for one in attempts]
    if not usable:
        return Counted(words=tuple(words))
    unread = ", ".join(dict.fromkeys(question for one in usable for question in one.unread))
    if unread:
        words.append(
            f"The written answer to {unread} is not the same in every attempt; "
            "its points are for the latest one."
        )
    how = _by_word if usable[0].by_word else _HOW[policy.second_attempt]
    share, chosen, why = how(policy, usable)
    marked = math.fsum(one.total.marked for one in chosen) / len(chosen)
    open_ = dict.fromkeys(question for one in usable for question in one.total.open)
    if len(chosen) == 1 and how in (_by_word, _latest):
        open_ = chosen[0].total.open
    return Counted(
        share=share,
        points=None if share is None else round(share * marked, 9),
        out_of=marked,
        open=tuple(open_),
        words=tuple(each for each in [*words, why if several > 1 else ""] if each),
    )


def _by_word(policy, usable):
    return usable[0].share, usable[:1], f"Attempt {usable[0].place} counts: a person said so."


def _latest(policy, usable):
    return usable[-1].share, usable[-1:], f"Attempt {usable[-1].place}, the latest, counts."


def _best(policy, usable):
    best = max(usable, key=lambda one: -1.0 if one.share is None else one.share)
    return best.share, [best], f"Attempt {best.place}, the best, counts."


def _mean(policy, usable):
    marked = [one for one in usable if one.share is not None]
    if not marked:
        return None, usable, "The mean of all attempts counts."
    share = round(math.fsum(one.share for one in marked) / len(marked), 9)
    return share, marked, f"The mean of {len(marked)} counts: {_percent(share)}."


def _first(policy, usable):
    first, most = usable[0], policy.second_attempt_up_to / 100
    later = [one.share for one in usable[1:] if one.share is not None]
    lifted = min(max(later, default=0.0), most)
    if first.share is None or lifted <= first.share:
        return first.share, [first], f"Attempt {first.place}, the first, counts."
    words = f"Attempt {first.place}, the first, counts; a later one lifts it to {_percent(lifted)}"
    return round(lifted, 9), [first], f"{words}, and {_percent(most)} is the most."


_HOW = {"latest": _latest, "best": _best, "mean": _mean, "first": _first}


def _said(attempt, several, last_day):
    """One attempt in words: its place where there are several, its points, what being late cost."""
    total, named = attempt.total, f"Attempt {attempt.place}: " if several > 1 else ""
    got = f"{number(total.points)} of {number(total.marked)}"
    days = f"{attempt.late} {'day' if attempt.late == 1 else 'days'} late"
    if not attempt.late:
        return f"{named}{got}." if named else ""
    if attempt.late > last_day:
        return f"{named}{got}, {days}: after {number(last_day)} it does not count."
    if not attempt.off or total.share is None:
        return f"{named}{got}, {days}: nothing is taken off."
    floor = ", as no mark goes below 0" if total.share < attempt.off / 100 else ""
    return (
        f"{named}{got}, {days}: {number(attempt.off)} % is taken off, "
        f"which leaves {number(attempt.points)}{floor}."
    )


def _percent(share):
    return f"{number(round(100 * share, 2))} %"
