"""What goes wrong most often in kitchens is met in the lessons: as a slip, a drill or a line.

The list is of common practice. Where a number stands in the line, it is worked out here by hand.
"""

import json
import re
from pathlib import Path

import pytest

from kitchenmath.drills import Round
from kitchenmath.panels.drilling import LESSONS as LESSONS_OF
from tests.helpers.typed_answers import as_typed

KIT = Path(__file__).parents[2]
LESSONS = sorted(KIT.glob("lessons/*.ipynb"))
DRILLS = sorted(KIT.glob("kitchenmath/drills/*.py"))
KEYS = sorted(KIT.glob("instructor/keys/*.py"))
# The error, and the words that a student meets.
ERRORS = {
    "drained weight for the tin's": "A tin is not its drained weight",
    "a frozen weight with its ice": "Frozen fish brings a coat of ice",
    "dough for the baked weight": "A baked roll is lighter than its dough",
    "fresh for dried yeast": "Of fresh yeast a baker takes about three times the weight",
    "a starter's flour and water": "A starter is flour and water too",
    "the edge for the length": "You used the side, 3 mm. End to end the length counts.",
    "one side measured only": "One side is not the piece",
    "trim and cooking loss added": "multiply the two yields, never add the two losses",
    "margin with the tax in it": "Tax is not yours",
    "a brine by cups of flakes": "a cup of light flakes can be half a cup's salt",
    "the probe on the bone": "A probe on the bone",
    "colour as doneness": "Colour is no proof",
    "fan for a still oven": "A fan is not a still oven",
    "gelatin boiled": "Never boil gelatin",
    "one probe for raw and ready": "boards and probe between raw and ready",
    "clean-down left out": "Clean-down is a task",
}

# Those that can be counted: the drill that practises them, and the slip that names them there.
COUNTED = {
    "drained weight for the tin's": ("tins by drained weight", "the tin's weight"),
    "a frozen weight with its ice": ("frozen fish to order", "the ice as fish"),
    "dough for the baked weight": ("dough for baked rolls", "dough as baked"),
    "fresh for dried yeast": ("fresh yeast for dried", "weight for weight"),
    "a starter's flour and water": ("water beside a starter", "starter forgotten"),
    "the edge for the length": ("sticks in a line", "side by side"),
    "one side measured only": ("the worst side of a cube", "the first side only"),
    "trim and cooking loss added": ("trim, then cooking loss", "losses added"),
    "margin with the tax in it": ("gross profit of a plate", "with the tax in it"),
    "a brine by cups of flakes": ("cups of flakes", "cup for cup"),
    "fan for a still oven": ("fan oven for a still one", "fan forgotten"),
    "one probe for raw and ready": ("what can be put right", "washed what raw food has touched"),
    "clean-down left out": ("last start before clean-down", "clean-down left out"),
}
BY_NAME = {
    name: drill
    for modules in LESSONS_OF.values()
    for module in modules
    for name, drill in module.DRILLS.items()
}


def said():
    """All that lessons, drills and keys say, with the pieces of a Python text joined."""
    cells = [cell for file in LESSONS for cell in json.loads(file.read_bytes())["cells"]]
    texts = ["".join(cell["source"]) for cell in cells]
    texts += [file.read_text(encoding="utf-8") for file in (*DRILLS, *KEYS)]
    return " ".join(re.sub(r'"\s*\n\s*"', "", "\n".join(texts)).split())


@pytest.mark.parametrize("words", ERRORS.values(), ids=ERRORS)
def test_each_of_the_commonest_errors_is_met(words):
    assert words in said()


@pytest.mark.parametrize(("drill", "slip"), COUNTED.values(), ids=COUNTED)
def test_what_can_be_counted_is_practised_and_its_slip_is_named(drill, slip):
    """For some of the first draws the slip's own number is told by name, and never as right."""
    question, named = BY_NAME[drill].question, 0
    [wrong] = [each for each in question.slips if each.name == slip]
    for number in range(1, 40):
        turn = Round(BY_NAME[drill])
        turn.number = number
        value = question.slip_value(wrong, turn.numbers)
        if value is None:
            continue
        verdict = question.judge(as_typed(value), turn.numbers)
        assert verdict.outcome != "right"
        named += slip in verdict.slips

    assert named >= 5


def test_only_what_no_number_shows_is_a_line_alone():
    """A bone, a colour: the probe decides, and no sum does."""
    assert {"the probe on the bone", "colour as doneness", "gelatin boiled"} == (
        ERRORS.keys() - COUNTED.keys()
    )


def test_the_numbers_of_these_lines_by_hand():
    """70 g less 12 % are 61.6 g; half of 200 g of starter is 100 g; 12.00 / 1.20 = 10.00; a
    difference of 20 °C is 20 x 1.8 = 36 °F."""
    text = said()

    assert 62 == round(70 * (1 - 0.12)) and "70 g of dough makes a roll of about 62 g" in text
    assert 100 == 200 / 2 and "200 g of one made half and half brings 100 g of each" in text
    assert 10 == round(12 / 1.2, 2) and "12.00 with 20 % in it leaves 10.00" in text
    assert 36 == 20 * 1.8 and "20 °C (36 °F) lower" in text
