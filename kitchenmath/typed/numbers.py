"""A number that a person typed, with a decimal point or a decimal comma: points, a mark."""

import re

from kitchenmath.errors import Unreadable

__all__ = ["typed_number"]

NUMBER = re.compile(r"[+-]?(?:[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)")
# 1,250 is a thousand and more in one country and less than two in the next.
EITHER = re.compile(r"[+-]?[1-9][0-9]{0,2},[0-9]{3}")
SHOWN = 40  # characters in a sentence about it


def typed_number(text, decimal_comma=False):
    """The number in a cell or a box, and never a guess.

    Parameters
    ----------
    text : str
    decimal_comma : bool
        Whether a comma is known to be the decimal sign, as in a table whose columns it does not
        part: then 1,250 is one and a quarter.

    Returns
    -------
    float

    Raises
    ------
    Unreadable
        A sentence without an end, for who asks to go on: what came, and why it will not do.

    Examples
    --------
    >>> typed_number("2,5"), typed_number(" -0.25 "), typed_number("1,250", decimal_comma=True)
    (2.5, -0.25, 1.25)
    >>> typed_number("1,250")
    Traceback (most recent call last):
    kitchenmath.errors.Unreadable: “1,250” can be read in two ways: write it with a point
    """
    plain = text.strip()
    if not NUMBER.fullmatch(plain):
        raise Unreadable(f"“{plain[:SHOWN]}” is no number")
    if EITHER.fullmatch(plain) and not decimal_comma:
        raise Unreadable(f"“{plain}” can be read in two ways: write it with a point")
    return float(plain.replace(",", "."))
