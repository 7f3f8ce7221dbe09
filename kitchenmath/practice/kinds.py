"""Kinds of answer in a cook's words, and an answer brought to the kind that is asked for."""

import difflib
import math
import re

import numpy as np

from kitchenmath.errors import KitchenError, Unreadable, WrongKind
from kitchenmath.practice.meant import point_slipped, weight_of_water
from kitchenmath.units.door import one_of
from kitchenmath.units.reading import plain_line, read
from kitchenmath.units.registry import KINDS, Q_, Quantity, kind_of, same_kind
from kitchenmath.units.saying import as_came, say
from kitchenmath.units.typed_words import MEASURES, NOT_MEASURES, WORDS

COUNTED = re.compile(r"(\d+(?:[.,]\d+)?) ([^\W\d_]{3,}(?: [^\W\d_]{2,}){0,2})")
MONEY_KINDS = ("money", "money per weight")
CLOCK = re.compile(r"(\d{1,2}):(\d\d)")
NUMBER_ALONE = re.compile(r"[\d.,]+")


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
            return as_kind(read_as(answer, self.kind), self.kind)
        except KitchenError as error:
            raise type(error)(with_example(str(error), self.kind)) from None

    def seen(self, value, plausible):
        """Whether an amount is hard to believe, and what can be said about it."""
        sentence = f"read as {as_cooks_say(value)}. It is {self.asked}, as it should be."
        if plausible:
            low, high = (as_kind(read(bound), self.kind) for bound in plausible)
            if not low <= value <= high:
                return True, (
                    f"{sentence} Look again: {say(value)} is hard to believe in a kitchen. "
                    f"Something from {say(low)} to {say(high)} is.{point_slipped(value, low, high)}"
                )
        return False, sentence

    def untouched(self, answer, plausible):
        """No amount is handed out with a form in its cell."""
        return False


def read_as(answer, kind, system="us"):
    """What was typed, read with what is asked for in mind; whatever was computed as it is.

    Of a count the words are the question's own: "46 cubes" is 46. A bare number is a percentage or
    money where one is asked for; one up to 1 is none, because 0.36 may be 36 %.

    Parameters
    ----------
    answer : object
    kind : str
    system : str
        Whose cups and spoons, as for `read`.

    Returns
    -------
    Quantity or object

    Raises
    ------
    Unreadable

    Examples
    --------
    >>> print(say(read_as("46 cubes", "count")), say(read_as("16.67", "money")))
    46 $16.67
    """
    if isinstance(answer, int | float) and not isinstance(answer, bool):
        return _with_the_only_unit(answer, kind)
    if not isinstance(answer, str):
        return answer
    line = plain_line(answer).rpartition("=")[2].strip()
    if kind == "weight" and (water := weight_of_water(line, system)) is not None:
        return water
    counted = COUNTED.fullmatch(line) if kind == "count" else None
    if counted and not _like_a_unit(counted[2]):
        return read(counted[1], system)
    if kind == "time" and (clock := CLOCK.fullmatch(line)):
        raise Unreadable(
            f"“{clock[0]}” may be a clock time or a span: type {clock[1]} h {clock[2]} min, or "
            f"{clock[1]} min {clock[2]} s."
        )
    value = read(answer, system)
    return _with_the_only_unit(value.magnitude, kind) if NUMBER_ALONE.fullmatch(line) else value


def _with_the_only_unit(number, kind):
    """A bare number with the unit that only one thing can have here; else as a count."""
    if kind == "money":
        return Q_(_finite(number, KINDS[kind][1], ""), "dollar")
    if kind == "percent" and number > 1:
        return Q_(_finite(number, KINDS[kind][1], ""), "percent")
    return Q_(_finite(number, KINDS[kind][1], ""), "count")


def as_cooks_say(value):
    """An amount in a cook's own form: 97 min typed in hours are 1 h 37 min, and not 1.617 h.

    Parameters
    ----------
    value : Quantity

    Returns
    -------
    str

    Examples
    --------
    >>> as_cooks_say(Q_(1.25, "h")), as_cooks_say(Q_(8.75, "min"))
    ('1 h 15 min', '8 min 45 s')
    """
    larger, smaller = str(value.units), {"hour": "min", "minute": "s"}.get(str(value.units))
    if smaller is None or value.magnitude < 1:
        return say(value)
    whole, rest = divmod(value.magnitude, 1)
    parts = round(60 * rest, 6)
    if parts == 0 or parts % 1:
        return say(value)
    return f"{say(Q_(whole, larger))} {say(Q_(parts, smaller))}"


def _like_a_unit(word):
    """Whether a word is a measure, or near enough to be one that is misspelt."""
    names = [*WORDS, *MEASURES, *NOT_MEASURES]
    return bool(difflib.get_close_matches(word.casefold().rstrip("s"), names, n=1, cutoff=0.8))


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
            raise WrongKind(
                f'{start}{as_came(value)} is no amount: type it in quotes, "{example}".'
            )
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
    if kind in MONEY_KINDS and kind_of(value) == kind and not same_kind(value, unit):
        raise WrongKind(
            f'{start}{say(value)} is other money: this set counts in dollars, such as "{example}".'
        )
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
