"""Kinds of answer in a cook's words, and an answer brought to the kind that is asked for."""

import math

import numpy as np

from kitchenmath.errors import WrongKind
from kitchenmath.practice import look_words
from kitchenmath.units.currency import MONEY_KINDS, money_unit
from kitchenmath.units.reading import without_example
from kitchenmath.units.registry import KINDS, Q_, Quantity, kind_of, same_kind, unit_name
from kitchenmath.units.saying import MONEY, as_came, say

MONEY_NAMES = {"dollar": "dollars", "sterling": "pounds", "euro": "euros"}


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
    larger = unit_name(value.units)
    smaller = {"hour": "min", "minute": "s"}.get(larger)
    if smaller is None or value.magnitude < 1:
        return say(value)
    whole, rest = divmod(value.magnitude, 1)
    parts = round(60 * rest, 6)
    if parts == 0 or parts % 1:
        return say(value)
    return f"{say(Q_(whole, larger))} {say(Q_(parts, smaller))}"


def as_kind(value, kind, whose="", currency="dollar"):
    """A quantity of the wanted kind, or a sentence that says what came instead.

    Parameters
    ----------
    value : Quantity or number
    kind : str
        A key of `KINDS`.
    whose : str
        Put in front of the sentence.
    currency : str
        In which money is counted.

    Returns
    -------
    Quantity
        In its own unit; percents in percent, differences as differences.

    Raises
    ------
    WrongKind
    """
    unit, example = money_unit(KINDS[kind][0], currency), example_of(kind, currency)
    start = f"{whose}: " if whose else ""
    if not isinstance(value, Quantity):
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise WrongKind(
                f'{start}{as_came(value)} is no amount: type it in quotes, "{example}".'
            )
        value = Q_(finite(value, example, start), "count")
    finite(value.magnitude, example, start)
    if kind == "temperature difference" and same_kind(value, "degC"):
        scale = "degree_Celsius" if unit_name(value.units) == "kelvin" else value.units
        value = Q_(value.magnitude, f"delta_{scale}")  # "10 °C" typed for a difference is one
    bare = unit_name(value.units) in ("count", "dimensionless")
    if kind == "count" and bare:
        return Q_(value.magnitude, "count")
    if kind == "percent" and unit_name(value.units) != "count" and value.dimensionless:
        return value.to("percent")
    if bare:
        raise WrongKind(f'{start}{say(value)} has no unit: type the unit too, such as "{example}".')
    if kind in MONEY_KINDS and kind_of(value) == kind and not same_kind(value, unit):
        raise WrongKind(
            f"{start}{say(value)} is other money: this set counts in {MONEY_NAMES[currency]}, "
            f'such as "{example}".'
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
    if "percent" in unit_name(value.units) or "*" in unit_name(value.units):
        # Weights in pounds and ounces stay so; a fluid ounce times a density is no such weight.
        pounds = unit == "g" and {"pound", "ounce"} & set(unit_name(value.units).split())
        unit = "oz" if pounds else unit
        value = value.to(unit)
        large = {"g": "kg", "oz": "lb", "mL": "L", "min": "h"}.get(unit)
        value = (
            value.to(large)
            if large and value.magnitude >= Q_(1, large).to(unit).magnitude
            else value
        )
    return value


def finite(number, example, start=""):
    """One number that a scale could show, as a float or a whole number.

    Raises
    ------
    WrongKind
    """
    if np.ndim(number):
        raise WrongKind(f'{start}several amounts came at once: type one, such as "{example}".')
    try:
        if math.isfinite(number):
            return number
    except OverflowError:  # a whole number of hundreds of figures
        pass
    raise WrongKind(f'{start}this is too large to be an amount: type one such as "{example}".')


def example_of(kind, currency="dollar"):
    """An amount of a kind as it is typed, money in the currency that is asked for."""
    return KINDS[kind][1].replace("$", MONEY[currency])


def with_example(sentence, kind, example=""):
    """A sentence about an unreadable answer, with what is asked for where it does not say so.

    Parameters
    ----------
    sentence : str
    kind : str
        A key of `KINDS`.
    example : str
        As it is typed; the kind's own where it is left out.

    Returns
    -------
    str

    Examples
    --------
    >>> with_example("“lots” does not start with a number.", "money")
    '“lots” does not start with a number. Money is asked for, such as "$3.48".'
    """
    example = example or example_of(kind)
    if f'"{example}"' in sentence:
        return sentence
    asked = a_kind(kind)
    refused = without_example(sentence)
    asked = f"{asked[0].upper()}{asked[1:]}"
    return f"{refused} {look_words.IS_ASKED_FOR.format(asked=asked, example=example)}"


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
