"""The door: quantities come in here and leave as plain floats, after a look at kind and range.

`amount(salt, "g", "salt", above=0)` is the usual way in; the rest are its common cases. What has no
unit comes in by `plain_number`, what is a list, a table or a thing of the kit by `instance`.
"""

import math
import numbers

import numpy as np

from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.units.registry import Quantity, kind_of, registry, same_kind
from kitchenmath.units.saying import figures, say, spoken

_BEYOND = 1e15  # a double counts no further one by one


def amount(quantity, unit, name, *, least=None, above=None, most=None, below=None, many=False):
    """The plain number of `unit` in `quantity`, after a look at kind and range.

    Parameters
    ----------
    quantity : Quantity
        A number with a unit.
    unit : str
        The unit to count in. "degC" means a temperature point, "delta_degC" a difference.
    name : str
        The parameter's name, for the error.
    least, above, most, below : float, optional
        Bounds in `unit`; `least` and `most` are allowed values, `above` and `below` are not.
    many : bool
        Whether an array is allowed too.

    Returns
    -------
    float or numpy.ndarray

    Raises
    ------
    WrongKind
        For a bare number, or a unit of another kind. A percent is asked for as
        `Q_(5, "percent")`: 5 and 0.05 are too easily taken for each other.
    OutOfRange
        Outside the bounds, or not a finite number.
    """
    if not isinstance(quantity, Quantity):
        number = quantity if isinstance(quantity, numbers.Real) else 1
        raise WrongKind(
            f"{name}: needs a quantity with a unit, and {quantity!r} came; "
            f'type it as Q_({number}, "{unit}").'
        )
    if not same_kind(quantity, unit):
        raise WrongKind(
            f'{name}: needs a {kind_of(Quantity(1, unit))} such as Q_(1, "{unit}"), '
            f"and a {kind_of(quantity)} came ({say(quantity)})."
        )
    number = quantity.to(unit).magnitude
    if np.ndim(number) and not many:
        raise WrongKind(f"{name}: needs one amount, and {_came(quantity)} came.")
    _check_range(number, unit, name, least, above, most, below)
    return number


def _check_range(number, unit, name, least, above, most, below):
    """Refuse what lies outside the bounds, and what is no finite number."""
    lowest, highest = np.min(number), np.max(number)
    written = spoken(str(registry.Unit(unit)))
    for allowed, words in (
        (least is None or lowest >= least, f"at least {least} {written}"),
        (above is None or lowest > above, f"more than {above} {written}"),
        (most is None or highest <= most, f"at most {most} {written}"),
        (below is None or highest < below, f"less than {below} {written}"),
        (np.isfinite(lowest) and np.isfinite(highest), "a finite number"),
    ):
        if not allowed:
            raise OutOfRange(f"{name}: needs {words}, and {figures(number)} {written} came.")


def share(percent, name, *, above=0, most=100):
    """A percent as a plain share of one: 35 % is 0.35. By default above 0 and at most 100 %.

    Raises
    ------
    WrongKind
    OutOfRange
    """
    return amount(percent, "percent", name, above=above, most=most) / 100


def positive(quantity, name):
    """The plain number of a quantity in its own unit, refused unless above nought.

    Raises
    ------
    WrongKind
        For a bare number, or a percent where an amount is meant.
    OutOfRange
    """
    unit = str(quantity.units) if isinstance(quantity, Quantity) else "kg"
    if unit == "percent":
        raise WrongKind(f"{name}: needs an amount such as 4.2 kg, and {say(quantity)} came.")
    return amount(quantity, unit, name, above=0)


def alike(first, first_name, second, second_name):
    """Two amounts of one kind as plain numbers, both in the first one's unit.

    Raises
    ------
    WrongKind
    OutOfRange
    """
    positive(first, first_name)
    positive(second, second_name)
    if not same_kind(second, str(first.units)):
        raise WrongKind(
            f"{second_name}: {say(second)} is a {kind_of(second)}, "
            f"and {first_name} is a {kind_of(first)} ({say(first)})."
        )
    return first.magnitude, second.to(first.units).magnitude


def plain_number(number, name, *, least=-math.inf, above=-math.inf, most=math.inf, whole=False):
    """A number without a unit, such as a count of pieces or a factor, as it came.

    Raises
    ------
    WrongKind
        For text, a truth value, a list, or an amount other than a count.
    OutOfRange
        Outside the bounds, not finite, or no whole number where one is needed.
    """
    if isinstance(number, Quantity) and number.check("[]") and np.ndim(number.magnitude) == 0:
        number = number.to("count").magnitude
    if isinstance(number, bool | np.bool_) or not isinstance(number, numbers.Real):
        raise WrongKind(f"{name}: needs a plain number such as 12, and {_came(number)} came.")
    kind = "whole number" if whole else "number"
    if abs(number) >= _BEYOND or not math.isfinite(number) or (whole and number != int(number)):
        raise OutOfRange(f"{name}: needs a {kind} below {_BEYOND:g}, and {_came(number)} came.")
    if number < least or number <= above or number > most:
        bounds = [f"of at least {least:g}"] * (least > -math.inf)
        bounds += [f"above {above:g}"] * (above > -math.inf)
        bounds += [f"up to {most:g}"] * (most < math.inf)
        raise OutOfRange(f"{name}: needs a {kind} {' and '.join(bounds)}, and {number} came.")
    return int(number) if whole else number


def instance(thing, kinds, name, example):
    """The thing as it came, refused unless it is of one of these classes.

    Raises
    ------
    WrongKind
    """
    if not isinstance(thing, kinds):
        raise WrongKind(f"{name}: needs {example}, and {_came(thing)} came.")
    return thing


def _came(thing):
    """What came, in a few words: the whole of a long list helps nobody."""
    one = isinstance(thing, Quantity) and not np.ndim(thing.magnitude)
    words = say(thing) if one else repr(thing)
    return words if len(words) <= 60 else f"{words[:57]}…"


def money(cost, name, *, least=0):
    """Money in its own currency, brought to one unit: dollar/kg x lb is dollars.

    Raises
    ------
    WrongKind
    OutOfRange
        Below nought, or not a finite sum.
    """
    cost = cost.to_base_units() if isinstance(cost, Quantity) else cost
    if not isinstance(cost, Quantity) or kind_of(cost) != "money":
        came = say(cost) if isinstance(cost, Quantity) else repr(cost)
        raise WrongKind(f'{name}: needs money such as Q_(3.48, "dollar"), and {came} came.')
    amount(cost, str(cost.units), name, least=least)
    return cost


def one_of(choice, choices, name):
    """`choice` if it is among `choices`, else an error that lists them.

    Raises
    ------
    UnknownName
    """
    try:
        known = choice in choices
    except (TypeError, ValueError):  # a list, a table or an amount: none of them is a name
        known = False
    if not known:
        listed = ", ".join(repr(each) for each in choices)
        raise UnknownName(f"{name}: {choice!r} is not one of {listed}.")
    return choice
