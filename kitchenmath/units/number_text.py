"""One number as people write it: 1 1/2, 4,2, 1 250, 1,250.5; read in one way or refused."""

import math
import re
from fractions import Fraction

from kitchenmath.errors import Unreadable

FRACTION = r"\d{1,6} ?/ ?\d{1,6}"
PLAIN = r"(?:\d[\d.,']*\d|\d|[.,]\d+)(?:e[+-]?\d{1,3})?"
GROUPED = r"\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?![\d/])"
NUMBER = re.compile(rf"\d{{1,6}} {FRACTION}|{FRACTION}|{GROUPED}|{PLAIN}", re.IGNORECASE)


def number_in(text):
    """The value of one number: 1 1/2, 3/4, 4.2, 4,2, 1 250, 1,250.5, 1e3.

    Parameters
    ----------
    text : str
        What `NUMBER` matches, with or without a minus before it.

    Returns
    -------
    float

    Raises
    ------
    Unreadable
        Where it divides by zero, is no number that is known, or can be read in two ways.
    """
    sign, body = (-1, text[1:]) if text.startswith("-") else (1, text)
    if "/" in body:
        parts = body.replace(" /", "/").replace("/ ", "/").split(" ")
        if re.search(r"/0+$", parts[-1]):
            raise Unreadable(f"“{text}” divides by zero.")
        return float(sign * sum(Fraction(part) for part in parts))
    value = sign * float(_decimal(body.replace(" ", "").replace("'", ""), body))
    if not math.isfinite(value):
        raise Unreadable(f"“{text}” is too large to be an amount.")
    return value


def _decimal(digits, text):
    """One spelling with a decimal point, or a refusal where the signs can be read in two ways."""
    points, commas = digits.count("."), digits.count(",")
    if points and commas:  # the one that comes last is the decimal sign, the other groups by three
        decimal, group = (".", ",") if digits.rfind(".") > digits.rfind(",") else (",", ".")
        whole, _, part = digits.rpartition(decimal)
        if decimal in whole or not re.fullmatch(rf"\d{{1,3}}(\{group}\d{{3}})+", whole):
            raise Unreadable(
                f"“{text}” is no number I know: type it with one point, such as 1250.5."
            )
        return f"{whole.replace(group, '')}.{part}"
    if points > 1 or commas > 1:
        if not re.fullmatch(r"\d{1,3}([.,]\d{3})+", digits):
            raise Unreadable(
                f"“{text}” is no number I know: type it with one point, such as 1250.5."
            )
        return digits.replace(".", "").replace(",", "")
    if commas and re.fullmatch(r"[1-9]\d{0,2},\d{3}", digits):
        thousands, decimal = digits.replace(",", ""), digits.replace(",", ".")
        raise Unreadable(f"“{text}” can be read in two ways: type {thousands}, or {decimal}.")
    return digits.replace(",", ".")
