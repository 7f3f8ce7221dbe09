"""Plain values: the only thing that crosses the wall between student code and marking.

A number, a text, a quantity, a list of them or a table of them; bounded in depth, length and size.
Whatever else an answer may be crosses as the name of its type, and earns nothing.
"""

import math
import numbers

from pint.errors import PintError
from pint.facets.plain import PlainQuantity

from kitchenmath.units.registry import Quantity, registry

MOST_TEXT, MOST_ITEMS, MOST_DEPTH = 20_000, 200, 3


class Odd:
    """An answer that is no plain value; it shows as the name of its type."""

    def __init__(self, name):
        self.name = name

    def __repr__(self):
        return f"a “{self.name}”"


def to_plain(value, depth=MOST_DEPTH):
    """In the student's room: an answer as data that JSON can hold.

    Parameters
    ----------
    value : object
        Whatever stands under the question's name.
    depth : int
        How far lists may lie in lists.

    Returns
    -------
    dict or None
        `{"text": …}`, `{"number": …}`, `{"number": …, "units": …}`, `{"list": […]}`,
        `{"table": [[name, …], …]}`, `{"type": …}`; None for None.
    """
    if value is None:
        return None
    if isinstance(value, str):
        return {"text": str(value)[:MOST_TEXT]}
    many = isinstance(value, list | tuple) or getattr(value, "ndim", 0)
    if isinstance(value, dict | list | tuple) or many:
        if depth == 0 or len(value) > MOST_ITEMS:
            return {"type": f"{type(value).__name__} of {len(value)}"[:60]}
        if isinstance(value, dict):
            rows = [[str(name)[:200], to_plain(each, depth - 1)] for name, each in value.items()]
            return {"table": rows}
        return {"list": [to_plain(each, depth - 1) for each in value]}
    if isinstance(value, PlainQuantity):  # of the kit's registry, or of a student's own
        units = {str(name): float(power) for name, power in value._units.items()}
        return {"number": float(value.magnitude), "units": units}
    number = isinstance(value, numbers.Number) or hasattr(value, "item")  # Decimal and Fraction too
    if number and not isinstance(value, bool):
        return {"number": float(value)}
    return {"type": type(value).__name__[:60]}


def from_plain(value, depth=MOST_DEPTH):
    """In the marking room: a plain value read as hostile.

    Parameters
    ----------
    value : object
        What JSON gave.
    depth : int

    Returns
    -------
    str, float, Quantity, list, dict, Odd or None
        None where there was no value, or none of the shapes above.
    """
    if not isinstance(value, dict):
        return None
    text, number, units = value.get("text"), value.get("number"), value.get("units")
    if isinstance(text, str):
        return whole(text[:MOST_TEXT])
    if isinstance(number, int | float) and not isinstance(number, bool) and _finite(number):
        number = float(number)  # a whole number of hundreds of figures is no number to units
        return number if "units" not in value else _quantity(number, units)
    items, table = value.get("list"), value.get("table")
    if depth and isinstance(items, list) and len(items) <= MOST_ITEMS:
        return [from_plain(each, depth - 1) for each in items]
    if depth and isinstance(table, list) and len(table) <= MOST_ITEMS and all(map(_row, table)):
        return {whole(name[:200]): from_plain(each, depth - 1) for name, each in table}
    return Odd(whole(str(value.get("type", "thing"))[:60]))


def whole(text):
    """Text without half characters (lone surrogates), which no file could be written with."""
    return text.encode("utf-8", "replace").decode()


def _finite(number):
    try:
        return math.isfinite(number)
    except OverflowError:  # a whole number too large for a float
        return False


def _row(row):
    return isinstance(row, list) and len(row) == 2 and isinstance(row[0], str)


def _quantity(number, units):
    """A quantity from unit names and powers, each of which must be a unit of the kit."""
    known = isinstance(units, dict) and len(units) <= 8
    if not known or not all(
        name in registry._units
        and isinstance(power, int | float)
        and not isinstance(power, bool)
        and abs(power) <= 6
        for name, power in units.items()
    ):
        return Odd("quantity in unknown units")
    try:
        # A unit to the power of nought is none, and not all that reads it knows that.
        powers = {name: power for name, power in units.items() if power}
        value = Quantity(number, registry.UnitsContainer(powers))
        # Degrees squared, or kilos times degrees Celsius: units that are known, and no amount.
        return value if math.isfinite(value.to_root_units().magnitude) else Odd("number too large")
    except (PintError, ArithmeticError, TypeError):
        return Odd("quantity in odd units")
