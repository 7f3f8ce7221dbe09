"""Lessons, session plans, order lists and keys name the allergens that their items hold."""

import json
import re
from pathlib import Path

import pytest
from coursework.classes.course import INSTRUCTOR
from coursework.sets.order_lists import GUIDE, items_of

from kitchenmath.panels.landing import MENU
from kitchenmath.safety import plate_allergens

LESSONS = Path(__file__).parents[2] / "lessons"
NAMES = sorted(file.stem for file in LESSONS.glob("*.ipynb"))
# What a set's dishes are made of; sets 4, 5 and 8 talk of foods and handle what is named here.
IN_THE_SETS = {
    "01-measure-and-scale": ["flour"],
    "02-mix-by-ratio": ["bread flour", "butter"],
    "03-cut-to-size": ["celeriac"],
    "04-buy-enough": ["celeriac"],
    "06-foam": ["lecithin", "egg white powder"],
    "07-thicken-and-set": ["butter", "flour", "mustard"],
    "08-heat-gently": ["celeriac"],
    "09-keep-it-safe": ["flour", "butter"],
    "10-land-the-plate": [item for item, *_ in MENU],
}


def _lesson(name):
    cells = json.loads((LESSONS / f"{name}.ipynb").read_text(encoding="utf-8"))["cells"]
    printed = [line for cell in cells for output in cell.get("outputs", ())
               for line in output.get("text", ())]  # fmt: skip
    return "\n".join(["".join(cell["source"]) for cell in cells]) + "\n" + "".join(printed)


def _missing(text, items):
    """The allergens of these items that no line on allergens names."""
    lines = [line for line in text.splitlines() if re.search(r"allergen|^Holds ", line, re.I)]
    said = " ".join(lines).casefold()
    return [name for name in plate_allergens(items).holds if name not in said]


@pytest.mark.parametrize("lesson", NAMES)
def test_a_session_plan_names_each_allergen_of_its_order_list(lesson):
    """Its line under Cautions; the table itself is worked out and does not count."""
    page = (GUIDE / f"{lesson}.md").read_text(encoding="utf-8")
    cautions = "\n".join(line for line in page.splitlines() if not line.startswith("|"))

    assert [] == _missing(cautions, items_of(lesson))


@pytest.mark.parametrize("lesson", NAMES)
def test_a_lesson_names_each_allergen_of_its_order_list(lesson):
    """In a line on allergens, or in what the kit prints there."""
    assert [] == _missing(_lesson(lesson), items_of(lesson))


@pytest.mark.parametrize("name", sorted(IN_THE_SETS))
def test_a_set_names_each_allergen_that_its_dishes_hold(name):
    """The key is the one source of what students read."""
    text = (INSTRUCTOR / "keys" / f"{name}.py").read_text(encoding="utf-8")

    assert [] == _missing(text, IN_THE_SETS[name])


def test_the_plate_that_is_costed_is_the_plate_that_is_ordered():
    """Lesson 10's menu and the order list of its session plan hold the same eleven items."""
    ordered = [item.partition(" (")[0] for item in items_of("10-land-the-plate")]

    assert sorted(ordered) == sorted(item for item, *_ in MENU)


def test_a_line_that_leaves_soya_out_is_found():
    """The check can fail: the plate as it was told before its lecithin was counted."""
    told = "**Allergens**: celery, milk, mustard and gluten are on this plate."

    assert ["soya"] == _missing(told, [item for item, *_ in MENU])
