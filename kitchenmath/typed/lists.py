"""Several amounts in one typed text: "3.5, 3.0, 2.5 mm", or a line "10 min 18.5 °C"."""

import contextlib
import math
import numbers
import re
import unicodedata

from kitchenmath.errors import KitchenError, Unreadable, WrongKind
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_, Quantity, kind_of
from kitchenmath.units.saying import as_came
from kitchenmath.units.typed_words import POWER, UNSEEN

LONGEST = 4000  # characters; ten readings are short, and a page of text is no list

NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|-?\d+(?:\.\d*)?|-?\.\d+)(?!\.?\d)"
DEGREES = r"deg(?:rees?)?\.? ?(?:celsius|fahrenheit|[cf])\b|° ?[a-z]?\b|°"
UNIT = rf"{DEGREES}|(?!(?:and|at|to)\b)[a-zµ]+\.?|[\"'″′]+"
BETWEEN = r"(?:\s|[,;:|=→]|-(?!\d)|\b(?:and|at|to)\b)*"
AMOUNT = re.compile(rf"({NUMBER}) ?({UNIT})?{BETWEEN}", re.IGNORECASE)


def amounts_in(text):
    """The amounts in a text, in order, each as its number and its unit as typed.

    Parameters
    ----------
    text : str
        Amounts parted by commas, semicolons, blanks or lines. A comma between two figures is the
        decimal sign, unless the text holds decimal points, or a whole row of figures and commas.

    Returns
    -------
    list of (str, str)
        The unit is "" where none stands.

    Raises
    ------
    Unreadable
        With how far the text could be read.

    Examples
    --------
    >>> amounts_in("3,5; 3,0; 2,5 mm")
    [('3.5', ''), ('3.0', ''), ('2.5', 'mm')]
    >>> amounts_in("3.5,3.0,2.5 mm") == amounts_in("3.5 3.0 2.5 mm")
    True
    """
    if len(text) > LONGEST:
        raise Unreadable(f"{len(text)} characters came, which is too much for a list of readings.")
    text = UNSEEN.sub("", text)
    if power := POWER.search(text):
        raise Unreadable(f"“{power[0]}” has a power in it: type the number in full.")
    line = _plain_commas(_tidy(text))
    start, found = re.match(BETWEEN, line).end(), []
    while start < len(line):
        amount = AMOUNT.match(line, start)
        if not amount:
            here = line[start : start + 20]
            raise Unreadable(f"I could read {len(found)} amounts, as far as “{here}”.")
        found.append((amount[1], (amount[2] or "").strip()))
        start = amount.end()
    return found


def _tidy(text):
    """Plain characters: ½ as " 1/2 ", one dash, no brackets, lines as semicolons, single blanks."""
    spread = "".join(f" {c} " if _is_fraction(c) else c for c in text)
    line = unicodedata.normalize("NFKC", spread).replace("⁄", "/").replace("º", "°")
    line = re.sub(r"[\[\](){}]", " ", re.sub("[−–—]", "-", line))
    return re.sub(r"\s+", " ", re.sub(r"[\r\n]+", " ; ", line)).strip()


def _is_fraction(character):
    return unicodedata.name(character, "").startswith("VULGAR FRACTION")


def _plain_commas(line):
    """Decimal commas as points, and commas that part amounts followed by a blank."""
    points = re.search(r"\d\.\d", line)

    def plain(row):
        alone = row[0].count(",") == 1 and not points
        return row[0].replace(",", "." if alone else ", ")

    return re.sub(r"(?:\d+(?:\.\d+)?,)+(?:\d+(?:\.\d+)?)", plain, line)


def quantity_of(number, unit, whose):
    """One amount of a list as a quantity; a count where no unit stands.

    Parameters
    ----------
    number, unit : str
    whose : str
        Put in front of an error: "reading 3".

    Returns
    -------
    Quantity

    Raises
    ------
    Unreadable
    """
    try:
        return read(f"{number} {unit}".strip())
    except Unreadable as error:
        raise Unreadable(f"{whose}: {error}") from None


def plain_quantity(thing, whose):
    """A number or a quantity that code computed, as one quantity; a bare number as a count.

    Parameters
    ----------
    thing : object
    whose : str

    Returns
    -------
    Quantity

    Raises
    ------
    WrongKind
    """
    try:
        if isinstance(thing, Quantity) and math.isfinite(thing.magnitude):
            return thing
        if isinstance(thing, numbers.Real) and not isinstance(thing, bool) and math.isfinite(thing):
            return Q_(float(thing), "count")
    except (TypeError, OverflowError):  # a list with a unit, or a number of hundreds of figures
        pass
    raise WrongKind(f"{whose}: {as_came(thing)} is no amount.")


def with_units(quantities, unit):
    """A list in which bare numbers take the unit that follows them, or else the one before.

    Parameters
    ----------
    quantities : list of Quantity
        Bare numbers are counts.
    unit : str
        For all of them, where none says its unit.

    Returns
    -------
    list of Quantity
    bool
        Whether a unit was said at all.
    """
    own = [None if kind_of(each) == "number" else str(each.units) for each in quantities]
    for place in reversed(range(len(own) - 1)):
        own[place] = own[place] or own[place + 1]
    for place in range(1, len(own)):
        own[place] = own[place] or own[place - 1]
    units = [each or unit for each in own]
    return [Q_(q.magnitude, u) for q, u in zip(quantities, units, strict=True)], any(own)


@contextlib.contextmanager
def saying_what_to_type(asked, example):
    """Let every sentence about an answer that cannot be read end with what to type.

    Parameters
    ----------
    asked : str
        With its article: "a list of lengths".
    example : str

    Raises
    ------
    KitchenError
        Whatever came, with an example in it.
    """
    try:
        yield
    except KitchenError as error:
        words = str(error)
        if f'"{example}"' not in words:
            words += f' Type {asked}, such as "{example}".'
        raise type(error)(words) from None
