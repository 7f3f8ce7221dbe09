"""What a student typed, read with what is asked for in mind."""

import difflib
import re

from kitchenmath.conventions.college import OURS
from kitchenmath.errors import Unreadable
from kitchenmath.practice.kinds import example_of, finite
from kitchenmath.practice.meant import weight_of_water
from kitchenmath.practice.typed_money import read_money
from kitchenmath.units.reading import plain_line, read
from kitchenmath.units.registry import Q_
from kitchenmath.units.typed_words import MEASURES, NOT_MEASURES, WORDS

COUNTED = re.compile(r"(\d+(?:[.,]\d+)?) ([^\W\d_]{3,}(?: [^\W\d_]{2,}){0,2})")
CLOCK = re.compile(r"(\d{1,2}):(\d\d)")
SMALL_C = re.compile(r"(?<=\d) ?c$")
NUMBER_ALONE = re.compile(r"[\d.,]+")


def read_as(answer, kind, college=OURS):
    """What was typed, read with what is asked for in mind; whatever was computed as it is.

    Of a count the words are the question's own: "46 cubes" is 46. Where a temperature is asked for,
    "63 c" is no cup. A bare number is a percentage or money where one is asked for; one up to 1 is
    none, because 0.36 may be 36 %.

    Parameters
    ----------
    answer : object
    kind : str
    college : Conventions
        Whose cups and spoons a word means, and whose money a bare number.

    Returns
    -------
    Quantity or object

    Raises
    ------
    Unreadable

    Examples
    --------
    >>> from kitchenmath.units import say
    >>> print(say(read_as("46 cubes", "count")), say(read_as("16.67", "money")))
    46 $16.67
    """
    system = college.cups
    if isinstance(answer, int | float) and not isinstance(answer, bool):
        return _with_the_only_unit(answer, kind, college.currency)
    if not isinstance(answer, str):
        return answer
    line = plain_line(answer).rpartition("=")[2].strip()
    if kind == "weight" and (water := weight_of_water(line, system)) is not None:
        return water
    if (money := read_money(line, kind, college.currency, system)) is not None:
        return money
    counted = COUNTED.fullmatch(line) if kind == "count" else None
    if counted and not _like_a_unit(counted[2]):
        return read(counted[1], system)
    if kind == "time" and (clock := CLOCK.fullmatch(line)):
        raise Unreadable(
            f"“{clock[0]}” may be a clock time or a span: type {clock[1]} h {clock[2]} min, or "
            f"{clock[1]} min {clock[2]} s."
        )
    if kind.startswith("temperature") and SMALL_C.search(line):
        answer = SMALL_C.sub(" °C", line)
    value = read(answer, system)
    alone = NUMBER_ALONE.fullmatch(line)
    return _with_the_only_unit(value.magnitude, kind, college.currency) if alone else value


def _with_the_only_unit(number, kind, currency):
    """A bare number with the unit that only one thing can have here; else as a count."""
    if kind == "money":
        return Q_(finite(number, example_of(kind, currency)), currency)
    if kind == "percent" and number > 1:
        return Q_(finite(number, example_of(kind, currency)), "percent")
    return Q_(finite(number, example_of(kind, currency)), "count")


def _like_a_unit(word):
    """Whether a word is a measure, or near enough to be one that is misspelt."""
    names = [*WORDS, *MEASURES, *NOT_MEASURES]
    return bool(difflib.get_close_matches(word.casefold().rstrip("s"), names, n=1, cutoff=0.8))
