"""A question, its right answer, and the usual slips: how an answer is looked at.

A question's formulas name what they use. `lambda need, yield_: need / yield_` takes two of the
student's given numbers; `lambda q1, pack: q1 / pack` builds on the answer to q1, so the same
formula judges a right method that started from a wrong q1 (follow-through).
"""

import inspect
from collections.abc import Callable
from dataclasses import dataclass, field

from kitchenmath.errors import KitchenError, WrongKind
from kitchenmath.units.reading import read
from kitchenmath.units.registry import KINDS, Q_, Quantity, kind_of, same_kind
from kitchenmath.units.saying import say

# Two values this much closer than the tolerance are the same: floating point, not cooking.
ROUNDING = 1 + 1e-9


@dataclass(frozen=True)
class Within:
    """A tolerance in kitchen words: what the scale, the spoon or the purse can show.

    Parameters
    ----------
    step : Quantity
        An amount ("50 g") or a percent of the right answer ("2 %").
    because : str
        Why: "the scale shows 10 g". It is said to the student.
    """

    step: Quantity
    because: str = ""

    def __str__(self):
        of_it = " of the answer" if kind_of(self.step) == "percent" else ""
        return f"within {say(self.step)}{of_it}" + (f", {self.because}" if self.because else "")

    def around(self, value, of_percent=False):
        """How far from `value` an answer may lie, as a plain number in the unit of `value`."""
        if kind_of(self.step) == "percent" and not of_percent:
            return abs(value.magnitude) * self.step.magnitude / 100 * ROUNDING
        difference = value.units
        if value.check("[temperature]") and "delta_" not in str(difference):
            difference = f"delta_{difference}"
        return abs(self.step.to(difference).magnitude) * ROUNDING


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
    """

    name: str
    formula: Callable
    sentence: str
    worth: float = 0.0


@dataclass(frozen=True)
class Verdict:
    """What was found about one answer.

    outcome: "right", "follow-through", "slip", "wrong", "missing" or "unreadable".
    slips: names of all slips that give the number; more than one where they cannot be told apart.
    """

    question: str
    outcome: str
    points: float
    out_of: float
    sentence: str
    answer: str = ""
    right: str = ""
    slips: tuple = ()
    working: tuple = ()


@dataclass(frozen=True)
class Question:
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
    skill, lesson : str
        What it trains and where to read it again.
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
    system: str = field(default="us", repr=False)

    def __post_init__(self):
        if self.kind not in KINDS:
            raise KitchenError(f"kind: {self.kind!r} is not one of {', '.join(KINDS)}.")
        names = [slip.name for slip in self.slips]
        if len(set(names)) != len(names):
            raise KitchenError(f"{self.id}: two slips share the name {names}.")

    def right(self, known):
        """The right answer, brought to the question's kind. `known` maps names to quantities."""
        return as_kind(_value(self.formula, known), self.kind, self.id)

    def look(self, answer):
        """What the student typed or computed, as a quantity of the right kind.

        Raises
        ------
        KitchenError
            With the sentence that the student sees.
        """
        return as_kind(read(answer, self.system) if isinstance(answer, str) else answer, self.kind)

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
        if answer is None or (isinstance(answer, str) and not answer.strip()):
            return self._verdict("missing", 0, "There is no answer here.", "", right, known)
        shown = answer if isinstance(answer, str) else _said(answer)
        try:
            value = self.look(answer)
        except KitchenError as error:
            return self._verdict("unreadable", 0, str(error), shown, right, known)
        shown = say(value)
        if self._same(value, right):
            return self._verdict("right", self.points, "Right.", shown, right, known)
        used = self._earlier(own or {})
        followed = {**known, **used} if used else None
        if followed and self._worked_out(self.right, followed) is None:
            followed = None
        if followed and self._same(value, self.right(followed)):
            if used.keys() <= set(sound):
                return self._verdict("right", self.points, "Right.", shown, right, known)
            points = self.points if self.method is None else self.method
            words = "The method is right; the number carries on from an earlier slip."
            return self._verdict("follow-through", points, words, shown, right, known)
        found = self._slips_at(value, [known, followed] if followed else [known])
        if found:
            words = " Or: ".join(slip.sentence for slip in found)
            worth = min(slip.worth for slip in found)
            return self._verdict("slip", worth, words, shown, right, known, found)
        words = "This number is not right, and none of the usual slips gives it."
        return self._verdict("wrong", 0, words, shown, right, known)

    def collisions(self, known):
        """Names of the slips whose number passes for the right answer with these numbers."""
        right = self.right(known)
        return [slip.name for slip in self.slips if self._leads_to(slip, right, known)]

    def _earlier(self, own):
        """The student's own answers that this question's formulas build on."""
        named = {*_names(self.formula), *(n for slip in self.slips for n in _names(slip.formula))}
        return {name: value for name, value in own.items() if name in named}

    def slip_value(self, slip, known):
        """The number that a slip leads to, or None where it makes no difference."""
        number = _value(slip.formula, known)
        return None if number is None else as_kind(number, self.kind, f"{self.id}, {slip.name}")

    def _leads_to(self, slip, value, known):
        number = self._worked_out(lambda numbers: self.slip_value(slip, numbers), known)
        return number is not None and self._same(value, number)

    def _worked_out(self, formula, known):
        """What a formula gives, or None: a student's own answer may be 0, or past all numbers."""
        try:
            return formula(known)
        except (ArithmeticError, ValueError):
            return None

    def _slips_at(self, value, starts):
        found = []
        for known in starts:
            for slip in self.slips:
                if slip not in found and self._leads_to(slip, value, known):
                    found.append(slip)
        return found

    def _same(self, value, target):
        allowed = self.tolerance.around(target, of_percent=self.kind == "percent")
        return abs(value.to(target.units).magnitude - target.magnitude) <= allowed

    def _verdict(self, outcome, points, sentence, answer, right, known, slips=()):
        shown = {name: say(value) for name, value in known.items()} | {"answer": say(right)}
        return Verdict(
            question=self.id,
            outcome=outcome,
            points=float(points),
            out_of=float(self.points),
            sentence=sentence,
            answer=answer,
            right=say(right),
            slips=tuple(slip.name for slip in slips),
            working=tuple(line.format(**shown) for line in self.working),
        )


def as_kind(value, kind, whose=""):
    """A quantity of the wanted kind, or a sentence that says what came instead.

    Parameters
    ----------
    value : Quantity or number
    kind : str
        A key of `KINDS`.
    whose : str
        Put in front of the sentence.

    Returns
    -------
    Quantity
        In its own unit; percents in percent, differences as differences.

    Raises
    ------
    WrongKind
    """
    unit, example = KINDS[kind]
    start = f"{whose}: " if whose else ""
    if not isinstance(value, Quantity):
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise WrongKind(f'{start}{_said(value)} is no amount: type it in quotes, "{example}".')
        value = Q_(value, "count")
    if kind == "temperature difference" and same_kind(value, "degC"):
        scale = "degree_Celsius" if str(value.units) == "kelvin" else value.units
        value = Q_(value.magnitude, f"delta_{scale}")  # "10 °C" typed for a difference is one
    bare = str(value.units) in ("count", "dimensionless")
    if kind == "count" and bare:
        return Q_(value.magnitude, "count")
    if kind == "percent" and str(value.units) != "count" and value.dimensionless:
        return value.to("percent")
    if bare:
        raise WrongKind(f'{start}{say(value)} has no unit: type the unit too, such as "{example}".')
    if kind in ("percent", "count") or not same_kind(value, unit):
        came = f"{say(value)} is {a_kind(kind_of(value))}"
        raise WrongKind(f'{start}{came}: {a_kind(kind)} is asked for, such as "{example}".')
    return _plain(value, unit)


def a_kind(kind):
    """A kind with its article, for a sentence: "a weight", "money", "a price by weight"."""
    special = {"money": "money", "money per weight": "a price by weight", "area": "an area",
               "percent": "a percentage", "energy": "an amount of energy"}  # fmt: skip
    return special.get(kind, f"a {kind}")


def _plain(value, unit):
    """kg/% (from dividing by a yield) as grams, and thousands of grams as kilos."""
    if "percent" in str(value.units) or "*" in str(value.units):
        value = value.to(unit)
        large = {"g": "kg", "mL": "L", "min": "h"}.get(unit)
        value = (
            value.to(large)
            if large and value.magnitude >= Q_(1, large).to(unit).magnitude
            else value
        )
    return value


def _names(formula):
    return tuple(inspect.signature(formula).parameters)


def _value(formula, known):
    """A formula's value, given what its arguments name."""
    missing = [name for name in _names(formula) if name not in known]
    if missing:
        raise KitchenError(f"a formula asks for {', '.join(missing)}, which is not given.")
    return formula(**{name: known[name] for name in _names(formula)})


def _said(value):
    text = say(value) if isinstance(value, Quantity) else repr(value)
    return text if len(text) <= 60 else f"{text[:57]}…"
