"""What goes wrong most often in kitchens is met in the lessons: as a slip, a drill or a line.

The list is of common practice. Where a number stands in the line, it is worked out here by hand.
"""

import json
import re
from pathlib import Path

import pytest

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
    "one probe for raw and ready": "boards and probe between raw and ready",
    "clean-down left out": "Clean-down is a task",
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


def test_the_numbers_of_these_lines_by_hand():
    """70 g less 12 % are 61.6 g; half of 200 g of starter is 100 g; 12.00 / 1.20 = 10.00; a
    difference of 20 °C is 20 x 1.8 = 36 °F."""
    text = said()

    assert 62 == round(70 * (1 - 0.12)) and "70 g of dough makes a roll of about 62 g" in text
    assert 100 == 200 / 2 and "200 g of one made half and half brings 100 g of each" in text
    assert 10 == round(12 / 1.2, 2) and "12.00 with 20 % in it leaves 10.00" in text
    assert 36 == 20 * 1.8 and "20 °C (36 °F) lower" in text
