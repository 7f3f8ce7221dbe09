"""What a verdict is made of: a tolerance, the usual slips, and the verdict itself."""

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from kitchenmath.conventions.in_words import filled
from kitchenmath.errors import KitchenError
from kitchenmath.practice.plan_chart import PlanChart
from kitchenmath.practice.words import same_name
from kitchenmath.units.currency import in_currency
from kitchenmath.units.registry import Quantity, kind_of
from kitchenmath.units.saying import say

# Two values this much closer than the tolerance are the same: floating point, not cooking.
ROUNDING = 1 + 1e-9
# To the wrong side an answer may be off by this share of its tolerance: what a fair rounding hides.
WRONG_SIDE_SHARE = 0.1
# An answer may be rounded by this share of the right one to count as close.
CLOSE = 0.03
# What a close answer earns of the points, and one that was rounded to the wrong side.
WORTH = {"close": 0.75, "wrong side": 0.5}
# A tolerance forgives a right answer; to be told of a slip, an answer must meet its number: within
# this share of it, or as near as the figures go that were typed.
NEAR_A_SLIP = 0.003
THREE_FIGURES = 0.005  # what rounding to three figures moves at most, as a share


@dataclass(frozen=True)
class Within:
    """A tolerance in kitchen words: what the scale, the spoon or the purse can show.

    Parameters
    ----------
    step : Quantity
        An amount ("50 g") or a percent of the right answer ("2 %").
    because : str
        Why, as the question says it to the student: "the scale shows 10 g".
    safe : str
        "up" or "down" where rounding to one side does no harm and to the other it does: an order
        is rounded up, a time to begin down. "" where both sides are alike.
    to : Quantity, optional
        How far to the safe side: the next step of the scale, the pack or the card.
    """

    step: Quantity
    because: str = ""
    safe: str = ""
    to: Quantity | None = None

    def __str__(self):
        of_it = " of the answer" if kind_of(self.step) == "percent" else ""
        side = f", rounded {self.safe}" if self.safe else ""
        why = f", {self.because}" if self.because else ""
        return f"within {say(self.step)}{of_it}{side}{why}"

    def in_college(self, college):
        """The same in a class's money and words."""
        step, to = (in_currency(each, college.currency) for each in (self.step, self.to))
        return replace(self, step=step, to=to, because=filled(self.because, college))

    def around(self, value, of_percent=False):
        """How far from `value` an answer may lie, as a plain number in the unit of `value`."""
        return _span(self.step, value, of_percent)

    def takes(self, number, target, of_percent=False):
        """Whether a plain number in the unit of `target` is right."""
        allowed = self.around(target, of_percent)
        off = self._to_safe_side(number, target)
        if not self.safe:
            return abs(off) <= allowed
        return -WRONG_SIDE_SHARE * allowed <= off <= self._farthest(target, of_percent)

    def on_the_wrong_side(self, number, target, of_percent=False):
        """Whether it would be right, had it been rounded to the other side."""
        off, farthest = self._to_safe_side(number, target), self._farthest(target, of_percent)
        return (
            bool(self.safe) and -farthest <= off < 0 and not self.takes(number, target, of_percent)
        )

    def _to_safe_side(self, number, target):
        return (number - target.magnitude) * (-1 if self.safe == "down" else 1)

    def _farthest(self, target, of_percent):
        """The next step on the safe side, or the one after it where a fair rounding led there."""
        step = _span(self.step, target, of_percent)
        if self.to is None:
            return step
        return max(step, _span(self.to, target, of_percent) + step / 2)


def _span(step, value, of_percent):
    """A step as a plain number in the unit of a value."""
    if kind_of(step) == "percent" and not of_percent:
        return abs(value.magnitude) * step.magnitude / 100 * ROUNDING
    difference = value.units
    if value.check("[temperature]") and "delta_" not in str(difference):
        difference = f"delta_{difference}"
    return abs(step.to(difference).magnitude) * ROUNDING


@dataclass(frozen=True)
class Slip:
    """One usual slip: the number it leads to, its short name, and what to say about it.

    Parameters
    ----------
    name : str
        For the report: "multiplied by the yield".
    formula : callable
        Of given numbers and earlier answers, by name, as in `Question.formula`. It returns None
        for numbers with which the slip makes no difference (rounding down what is whole already).
    sentence : str
        To the student: what happened, and why people do it.
    worth : float
        Points that the part of the method which was right still earns.
    near : float
        How near the answer must lie, as a share of it: more than by default where several habits
        lead to nearly one number (a spoon of 14.8 mL or of 15 mL).
    """

    name: str
    formula: Callable
    sentence: str
    worth: float = 0.0
    near: float = NEAR_A_SLIP


@dataclass(frozen=True)
class Found:
    """A slip that an answer shows.

    Attributes
    ----------
    name, sentence : str
        As the key has them.
    costs : float
        Points that it takes away.
    """

    name: str
    sentence: str
    costs: float = 0.0


@dataclass(frozen=True)
class Verdict:
    """What was found about one answer; `words` makes sentences of it, for a reader.

    Attributes
    ----------
    question : str
    outcome : str
        "right", "close" (the right way, rounded too far), "follow-through", "slip", "wrong",
        "missing" or "unreadable".
    points, out_of : float
    found : tuple of Found
    alternatives : bool
        Whether the answer cannot tell which of `found` it was; else it shows all of them.
    notes : tuple of str
        Further sentences for the student: why an answer cannot be read, what clashes in a plan.
    answer, right : str
        As the student wrote it, and as it should be.
    working : tuple of str
    chart : PlanChart or None
        Of a plan, what was typed as a chart.
    """

    question: str
    outcome: str
    points: float
    out_of: float
    found: tuple = ()
    alternatives: bool = False
    notes: tuple = ()
    answer: str = ""
    right: str = ""
    working: tuple = ()
    chart: PlanChart | None = None

    @property
    def slips(self):
        """Names of what was found."""
        return tuple(each.name for each in self.found)


def refuse_doubled(question):
    """Refuse a question with two slips of one name: a report could not tell them apart.

    Raises
    ------
    KitchenError
    """
    names = [slip.name for slip in question.slips]
    if len(set(names)) != len(names):
        raise KitchenError(same_name(question.id, names))


def is_close(number, target, figure):
    """Whether a number is the right one, rounded farther than its tolerance allows.

    Parameters
    ----------
    number, target : float
        In one unit.
    figure : float
        Half a step of the last figure that was typed, as a share of the number.

    Returns
    -------
    bool

    Examples
    --------
    12 for 12.28: 0.28 is less than half a step of 1, and 2.3 % of it. 13 is farther than that.

    >>> is_close(12, 12.28, 0.5 / 12), is_close(13, 12.28, 0.5 / 13)
    (True, False)
    """
    off = abs(number - target)
    return off <= CLOSE * abs(target) and off <= figure * abs(number)


def worth(outcome, points):
    """What an outcome of `WORTH` earns, in halves.

    Parameters
    ----------
    outcome : str
    points : float

    Returns
    -------
    float

    Examples
    --------
    Three quarters of 3 are 2.25: in halves 2.

    >>> worth("close", 3), worth("wrong side", 3)
    (2.0, 1.5)
    """
    return math.floor(2 * WORTH[outcome] * points) / 2


def last_figure(typed):
    """Half a step of the last figure of a typed amount, as a share of it.

    Parameters
    ----------
    typed : str

    Returns
    -------
    float
        Infinite where there is no one number to see it from: "9 lb 4 oz", "1 1/2 cup".

    Examples
    --------
    1.31 kg may be anything from 1.305 to 1.315: half a step is 0.005 of 1.31, or 0.38 %. The
    noughts of 1300 g may have been rounded to: half a step is 50 of 1300, or 3.8 %.

    >>> round(100 * last_figure("1.31 kg"), 2), round(100 * last_figure("1300 g"), 1)
    (0.38, 3.8)
    """
    numbers = re.findall(r"\d+(?:[.,]\d+)*", typed)
    if len(numbers) != 1 or not (digits := re.sub(r"[.,]", "", numbers[0])).strip("0"):
        return math.inf
    whole = not re.search(r"[.,]", numbers[0])
    return 0.5 / int(digits.rstrip("0") if whole else digits)
