"""A question, its right answer, and the usual slips: how an answer is looked at.

A question's formulas name what they use. `lambda need, yield_: need / yield_` takes two of the
student's given numbers; `lambda q1, pack: q1 / pack` builds on the answer to q1, so the same
formula judges a right method that started from a wrong q1 (follow-through).
"""

import contextlib
import math
from collections.abc import Callable
from dataclasses import dataclass, field, replace

from kitchenmath.conventions.college import OURS, Conventions, as_text
from kitchenmath.conventions.system_order import in_its_words
from kitchenmath.practice.amount_played import played
from kitchenmath.practice.formulas import names_in, value_of
from kitchenmath.practice.kinds import a_kind, as_kind, example_of, in_unit_of, with_example
from kitchenmath.practice.question_kinds import AskedQuestion
from kitchenmath.practice.typed_amount import read_as
from kitchenmath.practice.verdicts import (
    NEAR_A_SLIP,
    THREE_FIGURES,
    Found,
    Slip,
    Verdict,
    Within,
    is_close,
    last_figure,
    refuse_doubled,
    worth,
)
from kitchenmath.practice.words import WRONG_SIDE, step_asked, wrong_side_says
from kitchenmath.units.door import one_of
from kitchenmath.units.registry import KINDS
from kitchenmath.units.saying import as_came, say

__all__ = ["Question", "Slip", "Verdict", "Within", "a_kind", "as_kind", "value_of"]

# What a formula may end in with a student's own earlier answer of nought, or of 300 figures.
# Of a count and of a point on a scale the figures say nothing of how far it was rounded.
NEVER_CLOSE = ("count", "temperature")
NO_NUMBER = (ArithmeticError, ValueError)


@dataclass(frozen=True)
class Question(AskedQuestion):
    """A question with one right number.

    Parameters
    ----------
    id : str
        Also the name of the student's variable, and of the argument in later formulas: "q3".
    kind : str
        A key of `KINDS`: "weight", "money", "percent", …
    points : float
    tolerance : Within
    formula : callable
        The right answer from given numbers and earlier answers, taken by name.
    slips : tuple of Slip
    method : float, optional
        Points for a right method on a wrong earlier answer; all of them by default.
    working : tuple of str
        Lines of working; {name} is a given number or an earlier answer, {answer} the result.
    on_the_way : dict of str to callable
        Formulas of what lies between, by the name that a line of working has for it: {litre}.
    skill, lesson : str
        What it trains and where to read it again.
    college : Conventions
        Whose money and whose cups an answer is typed in.
    """

    id: str
    kind: str
    points: float
    tolerance: Within
    formula: Callable
    slips: tuple = ()
    method: float | None = None
    working: tuple = ()
    skill: str = ""
    lesson: str = ""
    college: Conventions = field(default=OURS, repr=False)
    on_the_way: dict = field(default_factory=dict, repr=False, hash=False)

    told_in_numbers = True

    @property
    def example(self):
        """An answer of its kind, as it is typed in this class."""
        return example_of(self.kind, self.college.currency)

    def __post_init__(self):
        one_of(self.kind, KINDS, "kind")
        refuse_doubled(self)

    def right(self, known):
        """The right answer, brought to the question's kind. `known` maps names to quantities."""
        return self._as_kind(value_of(self.formula, known), self.id)

    def look(self, answer):
        """What the student typed or computed, as a quantity of the right kind.

        Raises
        ------
        KitchenError
            With the sentence that the student sees.
        """
        return self._as_kind(read_as(answer, self.kind, self.college))

    def in_college(self, college):
        """The same question in a class's money and cups."""
        tolerance = self.tolerance.in_college(college)
        return replace(self, college=college, tolerance=tolerance, **in_its_words(self, college))

    def _what_to_type(self, error):
        return with_example(str(error), self.kind, self.example)

    def _as_kind(self, value, whose=""):
        return as_kind(value, self.kind, whose, self.college.currency)

    def judge(self, answer, known, own=None, sound=()):
        """The verdict on an answer.

        Parameters
        ----------
        answer : str or Quantity or None
        known : dict of str to Quantity
            Given numbers, and the right answers to earlier questions.
        own : dict of str to Quantity, optional
            The student's own earlier answers, for follow-through.
        sound : collection of str
            Those of them that were right: building on a rounded right answer is simply right.

        Returns
        -------
        Verdict
        """
        right = self.right(known)
        value, verdict = self.looked(answer, right, known)
        if verdict:
            return verdict
        if self._takes(value, right):
            return self._verdict("right", self.points, value, right, known)
        used = self._earlier(own or {})
        followed = {**known, **used} if used else None
        figure = last_figure(answer) if isinstance(answer, str) else 0.0
        if followed and self._follows(value, figure, followed):
            if used.keys() <= set(sound):
                return self._verdict("right", self.points, value, right, known)
            points = self.points if self.method is None else self.method
            return self._verdict("follow-through", points, value, right, known)
        starts = [known, followed] if followed else [known]
        slips = self._slips_at(value, figure, starts)
        if slips:
            least = min(slip.worth for slip in slips)
            return self._verdict("slip", least, value, right, known, slips)
        number, of_percent = value.to(right.units).magnitude, self.kind == "percent"
        if self.tolerance.on_the_wrong_side(number, right, of_percent):
            slip = wrong_side(self.tolerance.safe, worth("wrong side", self.points))
            return self._verdict("slip", slip.worth, value, right, known, (slip,))
        if self.kind not in NEVER_CLOSE and is_close(number, right.magnitude, figure):
            points, notes = worth("close", self.points), (step_asked(self.tolerance),)
            return self._verdict("close", points, value, right, known, notes=notes)
        return self._verdict("wrong", 0, value, right, known)

    def collisions(self, known):
        """Names of the slips whose number passes for the right answer with these numbers."""
        right = self.right(known)
        numbers = {slip.name: self.slip_value(slip, known) for slip in self.slips}
        return [
            name
            for name, number in numbers.items()
            if number is not None and self._takes(number, right)
        ]

    @property
    def builds_on(self):
        """The given numbers and earlier answers that the formulas name."""
        slips = (slip.formula for slip in self.slips)
        formulas = (self.formula, *slips, *self.on_the_way.values())
        return {name for formula in formulas for name in names_in(formula)}

    def played(self, known):
        """Answers as students give them, and what is to be found about each."""
        return played(self, known)

    def own_value(self, answer):
        """The student's own amount, from which a later answer may carry on."""
        return self.look(answer)

    def in_numbers(self, known):
        """What is right and where the slips lead, as plain numbers with their units."""
        led = [(slip, self.slip_value(slip, known)) for slip in self.slips]
        return {
            "kind": self.kind,
            "college": as_text(self.college),
            "right": _plain(self.right(known)),
            "within": _plain(self.tolerance.step),
            "safe": self.tolerance.safe,
            "to": self.tolerance.to and _plain(self.tolerance.to),
            "slips": [
                {
                    "name": slip.name,
                    "at": _plain(value),
                    "near": slip.near,
                    "sentence": slip.sentence,
                }
                for slip, value in led
                if value is not None
            ],
            "working": list(self.judge(None, known).working),
        }

    def _earlier(self, own):
        """The student's own answers that this question's formulas build on."""
        return {name: value for name, value in own.items() if name in self.builds_on}

    def _follows(self, value, figure, followed):
        """Whether a right method leads from the student's own earlier answers to this number.

        An earlier slip may lead to a number so large that its last typed figure is more than the
        tolerance: then it is met as near as the figures go.
        """
        try:
            target = self.right(followed)
        except NO_NUMBER:
            return False
        off = abs(value.to(target.units).magnitude - target.magnitude)
        rounding = abs(value.to(target.units).magnitude) * min(figure, NEAR_A_SLIP)
        return self._takes(value, target) or off <= rounding

    def slip_value(self, slip, known):
        """The number that a slip leads to, or None where it makes no difference."""
        number = value_of(slip.formula, known)
        return None if number is None else self._as_kind(number, f"{self.id}, {slip.name}")

    def _leads_to(self, slip, value, figure, known):
        """A slip far off (ten times the dose) is typed in no more figures than the right one."""
        number = self.slip_value(slip, known)
        if number is None or self._same(value, number, max(figure, slip.near)):
            return number is not None
        at, right = number.magnitude, self.right(known).to(number.units).magnitude
        off = abs(value.to(number.units).magnitude - at)
        return abs(at) > 2 * abs(right) and off <= abs(at) * min(figure, THREE_FIGURES)

    def _slips_at(self, value, figure, starts):
        found = []
        for known in starts:
            for slip in self.slips:
                with contextlib.suppress(NO_NUMBER):
                    if slip not in found and self._leads_to(slip, value, figure, known):
                        found.append(slip)
        return found

    def _takes(self, value, target):
        """Whether a value is right where `target` is, on the side that the tolerance has."""
        number = value.to(target.units).magnitude
        return self.tolerance.takes(number, target, of_percent=self.kind == "percent")

    def _same(self, value, target, share=math.inf):
        """Whether two amounts are one within the tolerance, and within a share of the first."""
        number = value.to(target.units).magnitude
        allowed = self.tolerance.around(target, of_percent=self.kind == "percent")
        allowed = min(allowed, abs(number) * share + 1e-9)
        return abs(number - target.magnitude) <= allowed

    def _verdict(self, outcome, points, answer, right, known, slips=(), notes=()):
        between = {name: value_of(each, known) for name, each in self.on_the_way.items()}
        shown = {name: _shown(value) for name, value in (known | between).items()}
        return Verdict(
            question=self.id,
            outcome=outcome,
            points=float(points),
            out_of=float(self.points),
            found=tuple(
                Found(slip.name, slip.sentence, float(self.points - slip.worth)) for slip in slips
            ),
            alternatives=len(slips) > 1,  # one number cannot show two things at once
            notes=notes,
            answer=answer if isinstance(answer, str) else say(answer),
            right=say(right) if isinstance(answer, str) else in_unit_of(answer, right),
            working=tuple(line.format(answer=say(right), **shown) for line in self.working),
        )


def wrong_side(safe, points):
    """The slip of an answer that was rounded to the side where it does harm."""
    return Slip(WRONG_SIDE, lambda: None, wrong_side_says(safe), worth=points)


def _shown(value):
    """A number or a word as a line of working has it."""
    return value if isinstance(value, str) else as_came(value)


def _plain(quantity):
    """A number and its unit, as a notebook can hold them."""
    return [float(quantity.magnitude), str(quantity.units)]
