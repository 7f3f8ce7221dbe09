"""Amounts as students type them: right ones, those of the usual slips, and plain noise."""

import hashlib
import itertools

from kitchenmath.practice.question_kinds import Played
from kitchenmath.units.saying import say

NOISES = 10  # for each question of each student
WIDEST = 4  # noise goes from a quarter of the right answer to four times it
OTHER = {"kg": "lb", "g": "oz", "lb": "kg", "oz": "g", "L": "us_quart", "mL": "us_fluid_ounce",
         "°C": "degF", "°F": "degC", "mm": "inch", "min": "h", "h": "min"}  # fmt: skip


def played(question, known):
    """The answers to one question, and what is to be found about each.

    Parameters
    ----------
    question : Question
    known : dict of str to Quantity

    Yields
    ------
    Played
    """
    right = question.right(known)
    yield from (Played(typed, "right") for typed in right_ways(question, right))
    values = {slip.name: question.slip_value(slip, known) for slip in question.slips}
    values = {name: value for name, value in values.items() if value is not None}
    for name, value in values.items():
        yield from (Played(say(value, digits), "slip", (name,)) for digits in (6, 3))
    for (one, first), (other, second) in itertools.combinations(values.items(), 2):
        both = right * (first / right).to("").magnitude * (second / right).to("").magnitude
        yield Played(say(both, 4), "two slips", (one, other))
    yield from (Played(noise(question, right, place), "noise") for place in range(NOISES))


def right_ways(question, value):
    """The right answer in every way that people write it: figures, kitchen steps, other unit."""
    typed = (say(value, digits) for digits in (6, 4, 3))
    # Where one side only is safe, nobody who is right rounds to the other.
    one_sided = bool(question.tolerance.safe)
    yield from (each for each in typed if not one_sided or _is_right(question, each, value))
    if one_sided:
        return
    step = question.tolerance.around(value, of_percent=question.kind == "percent")
    yield say(type(value)(step * round(value.magnitude / step), value.units), 6)
    other = OTHER.get(f"{value.units:~}".replace("Δ", ""))
    if other:
        difference = "delta_" if "delta_" in str(value.units) and "deg" in other else ""
        yield say(value.to(f"{difference}{other}"), 4)


def _is_right(question, typed, value):
    number = question.look(typed).to(value.units).magnitude
    return question.tolerance.takes(number, value, question.kind == "percent")


def noise(question, right, place):
    """A number without a reason: a half of the right one is as likely as its double."""
    factor = WIDEST ** (2 * dice("noise", question.id, say(right, 9), place) - 1)
    return say(right * factor, 4)


def dice(*parts):
    """A number from 0 up to 1, the same in every run."""
    text = "|".join(map(str, parts))
    return int.from_bytes(hashlib.sha256(text.encode()).digest()[:8], "big") / 2**64
