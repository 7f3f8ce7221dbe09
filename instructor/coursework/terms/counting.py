"""How a mark counts in the mark book: late work, several attempts, weights. Numbers only.

A share is of the points that are marked so far, so that an open mark is never a 0.
"""

import math
from dataclasses import dataclass, replace

from coursework.records.points import Total

__all__ = ["Attempt", "Counted", "Weighed", "counted", "late_days", "weighed"]

DAY = 24 * 60 * 60
WAITING = ("latest waits", "named waits", "waits")
STATES = (*WAITING, "earlier lost", "nothing", "nothing, so 0", "not out", "excused", "on paper",
          "at the desk", "with a tray")  # fmt: skip


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

    def counts(self, last_day):
        """Whether it may count: a person said so, or it did not come after the last day."""
        return self.by_word or self.late <= last_day

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
    state : str
        What it is where it comes from no attempts: one of `STATES`; else "".
    evidence : str
        The folder of what it rests on; "" for none.
    attempts : tuple of Attempt
        What the mark was made of, or what came too late.
    several : int
        How many attempts there were.
    how : str
        Which of several counts: "by word", "latest", "best", "mean", "first" or "lifted".
    place : int
        The place of the attempt that counts, where it is one.
    last_day, most : float
        Of the policy: after how many days work does not count, and how far a later attempt lifts
        a mark, as a share.
    excused : bool
        Whether it counts nowhere: neither open nor 0, and its weight is not waited for.
    """

    share: float | None = None
    points: float | None = None
    out_of: float = 0.0
    open: tuple = ()
    state: str = ""
    evidence: str = ""
    attempts: tuple = ()
    several: int = 1
    how: str = ""
    place: int = 0
    last_day: float = math.inf
    most: float = 1.0
    excused: bool = False

    @property
    def waits_for_marking(self):
        """Whether there is a hand-in that marking has not seen."""
        return self.state in WAITING

    @property
    def unread(self):
        """Questions whose written answer is not the one that a person gave points for."""
        usable = (one for one in self.attempts if one.counts(self.last_day))
        return tuple(dict.fromkeys(question for one in usable for question in one.unread))


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
    usable = [one for one in attempts if one.counts(policy.late_days)]
    most = policy.second_attempt_up_to / 100
    mark = Counted(attempts=tuple(attempts), several=several, last_day=policy.late_days, most=most)
    if not usable:
        return mark
    how = "by word" if usable[0].by_word else policy.second_attempt
    how, share, chosen = _HOW[how](usable, most)
    marked = math.fsum(one.total.marked for one in chosen) / len(chosen)
    open_ = dict.fromkeys(question for one in usable for question in one.total.open)
    if how in ("by word", "latest"):
        open_ = chosen[0].total.open
    return replace(
        mark,
        share=share,
        points=None if share is None else round(share * marked, 9),
        out_of=marked,
        open=tuple(open_),
        how=how,
        place=chosen[0].place if len(chosen) == 1 else 0,
    )


def _by_word(usable, most):
    return "by word", usable[0].share, usable[:1]


def _latest(usable, most):
    return "latest", usable[-1].share, usable[-1:]


def _best(usable, most):
    best = max(usable, key=lambda one: -1.0 if one.share is None else one.share)
    return "best", best.share, [best]


def _mean(usable, most):
    marked = [one for one in usable if one.share is not None]
    if not marked:
        return "mean", None, usable
    return "mean", round(math.fsum(one.share for one in marked) / len(marked), 9), marked


def _first(usable, most):
    first, *later = usable
    lifted = min(max((one.share or 0.0 for one in later), default=0.0), most)
    if first.share is None or lifted <= first.share:
        return "first", first.share, [first]
    return "lifted", round(lifted, 9), [first]


_HOW = {"by word": _by_word, "latest": _latest, "best": _best, "mean": _mean, "first": _first}
