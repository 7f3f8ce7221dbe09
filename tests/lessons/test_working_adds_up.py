"""Each line of a drill's working is true as it is printed: "12 × 70 g = 840 g", worked out anew.

The line is read as a student reads it, with the calculator's rules and nothing of the kit.
"""

import math
import re

import pytest

from kitchenmath.drills import Round
from tests.helpers.asked_drills import DRILLS

IN = {"kg": 1000, "g": 1, "mg": 0.001, "L": 1000, "mL": 1, "cm": 10, "mm": 1, "%": 0.01, "h": 60}
UNIT = r"g/mL|g/L|kg|g|mL|L|cm|mm|min|h|%|°C|°F|JP cup|AU tbsp|US fl oz|per kg"
AMOUNT = re.compile(rf"\$?(\d+(?:\.\d+)?)(?: ({UNIT})(?![a-z]))?")
SIGNS = {"×": "*", "÷": "/", "−": "-", "²": "**2", "√": "root"}
EXPRESSION = re.compile(r"(?:[\d.()e+*/ -]|root)+")
ROUNDED = {", rounded up": math.ceil, ", rounded down": math.floor}
DIGITS = 2e-3  # four figures are shown, of each number in the line
READ_AT_LEAST = 184  # of the lines of one round of all drills; the others say words


def worked(text, litre):
    """The number that one side of a line gives; None where words stand in it."""
    last = float
    for words, function in ROUNDED.items():
        if text.endswith(words):
            text, last = text.removesuffix(words), function
    text = AMOUNT.sub(lambda found: _plain(*found.groups(), litre), text.replace(" ÷ 1.8, and "
                      "nothing taken off", " ÷ 1.8"))  # fmt: skip
    for sign, python in SIGNS.items():
        text = text.replace(sign, python)
    text = re.sub(r"root([\d.e-]+)", r"root(\1)", text)
    if not EXPRESSION.fullmatch(text):
        return None
    return last(
        eval(text, {"root": math.sqrt, "__builtins__": {}}) + (-1e-9 if last is math.ceil else 0)
    )


def _plain(number, unit, litre):
    if unit in ("g/L", "per kg"):
        return f"{float(number) / (litre if unit == 'g/L' else 1000)!r}"
    return f"{float(number) * (litre if unit == 'L' else IN.get(unit, 1))!r}"


def holds(line):
    """Whether a line is true; None where it cannot be worked out from what it shows.

    "15 L × 1056 g" means the weight of one litre, "4 L × 76 g/L" does not: a litre may count as
    one or as 1000 mL.
    """
    left, _, right = line.rpartition(" = ")
    left = left.rpartition(": ")[2]
    sides = [(worked(left, litre), worked(right, litre)) for litre in (1000, 1)]
    if not left or sides[0][0] is None:
        return None
    if sides[0][1] is None:  # "11.39 1/g" is no answer
        return False
    cent = 0.006 if "$" in right else 0
    return any(math.isclose(*both, rel_tol=DIGITS, abs_tol=cent) for both in sides)


@pytest.mark.parametrize("drill", DRILLS, ids=lambda drill: drill.question.id)
def test_every_line_of_a_drills_working_is_true(drill):
    asked = Round(drill)
    for _ in range(3):
        assert [] == [line for line in asked.working if holds(line) is False]
        asked.next()


def test_most_lines_can_be_worked_out_from_what_they_show():
    lines = [line for drill in DRILLS for line in Round(drill).working]

    assert READ_AT_LEAST <= sum(holds(line) is not None for line in lines)


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("what is left: 100 % − 14 % = 86 %", True),
        ("what is left: 101 % − 14 % = 86 %", False),
        ("36 × 70 g = 2.52 kg", True),
        ("36 × 70 g = 2.62 kg", False),
        ("15 L × 1056 g = 15839 g", True),
        ("4 L × 76 g/L = 304 g", True),
        ("its root: √0.5263 = 0.7255", True),
        ("5.75, rounded up = 6", True),
        ("5.75, rounded up = 5", False),
        ("grams of yours: 25.5 g × 1.291 = 11.39 1/g", False),
        ("where all of it ends: at its mean = 65 °C", None),
    ],
)
def test_the_check_itself_is_seen_to_fail(line, expected):
    assert expected is holds(line)
