"""Kinds of answer in a cook's words, and an answer brought to the kind that is asked for."""

import math

import numpy as np

from kitchenmath.errors import KitchenError, WrongKind
from kitchenmath.units.door import one_of
from kitchenmath.units.reading import read
from kitchenmath.units.registry import KINDS, Q_, Quantity, kind_of, same_kind
from kitchenmath.units.saying import say


class AmountKind:
    """How one amount is read and said: an `AnswerKind` (see `question_kinds`).

    Parameters
    ----------
    kind : str
        A key of `KINDS`.

    Raises
    ------
    UnknownName
    """

    def __init__(self, kind):
        self.kind = one_of(kind, KINDS, "kind")
        self.asked, self.example = a_kind(kind), KINDS[kind][1]

    def read(self, answer):
        """The amount that was typed or computed.

        Raises
        ------
        KitchenError
            With what to type.
        """
        try:
            return as_kind(read(answer) if isinstance(answer, str) else answer, self.kind)
        except KitchenError as error:
            raise type(error)(with_example(str(error), self.kind)) from None

    def seen(self, value, plausible):
        """Whether an amount is hard to believe, and what can be said about it."""
        sentence = f"read as {say(value)}. It is {self.asked}, as it should be."
        if plausible:
            low, high = (as_kind(read(bound), self.kind) for bound in plausible)
            if not low <= value <= high:
                return True, (
                    f"{sentence} Look again: {say(value)} is hard to believe in a kitchen. "
                    f"Something from {say(low)} to {say(high)} is."
                )
        return False, sentence

    def untouched(self, answer, plausible):
        """No amount is handed out with a form in its cell."""
        return False


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
            raise WrongKind(f'{start}{said(value)} is no amount: type it in quotes, "{example}".')
        value = Q_(_finite(value, example, start), "count")
    _finite(value.magnitude, example, start)
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


def _finite(number, example, start):
    """One number that a scale could show, as a float or a whole number."""
    if np.ndim(number):
        raise WrongKind(f'{start}several amounts came at once: type one, such as "{example}".')
    try:
        if math.isfinite(number):
            return number
    except OverflowError:  # a whole number of hundreds of figures
        pass
    raise WrongKind(f'{start}this is too large to be an amount: type one such as "{example}".')


def with_example(sentence, kind):
    """A sentence about an unreadable answer, with what is asked for where it does not say so.

    Parameters
    ----------
    sentence : str
    kind : str
        A key of `KINDS`.

    Returns
    -------
    str

    Examples
    --------
    >>> with_example("“lots” does not start with a number.", "money")
    '“lots” does not start with a number. Money is asked for, such as "$3.48".'
    """
    example = KINDS[kind][1]
    if f'"{example}"' in sentence:
        return sentence
    asked = a_kind(kind)
    return f'{sentence} {asked[0].upper()}{asked[1:]} is asked for, such as "{example}".'


def in_unit_of(answer, right):
    """The right answer in the unit of a student's answer, with our own beside it.

    Parameters
    ----------
    answer, right : Quantity
        Of one kind.

    Returns
    -------
    str

    Examples
    --------
    A pound is 453.6 g, so 2 kg are 2000 / 453.6 = 4.409 lb.

    >>> in_unit_of(Q_(4, "lb"), Q_(2, "kg"))
    '4.409 lb (2 kg)'
    """
    if answer.units == right.units:
        return say(right)
    return f"{say(right.to(answer.units))} ({say(right)})"


def said(value):
    """An answer as it can be shown in a sentence: at most 60 characters, and never an error.

    Parameters
    ----------
    value : object
        Whatever a student's cell made.

    Returns
    -------
    str
    """
    try:
        text = say(value) if isinstance(value, Quantity) else repr(value)
    except Exception:  # a number of five thousand figures has no repr, and others fail on purpose
        text = f"a “{type(value).__name__}”"
    return text if len(text) <= 60 else f"{text[:57]}…"
