"""What drills draw and take as right: written on a page, and true to the instrument they name."""

import re

import pytest

from kitchenmath.units import Q_, read
from tests.helpers.asked_drills import DRILLS
from tests.measure.drill_ranges import PAGE, page

SHOWN = re.compile(r"\bshows (a tenth of a gram|half a gram|\d[\d.]* (?:g|mL|%|°C))")
IN_WORDS = {"a tenth of a gram": Q_(0.1, "g"), "half a gram": Q_(0.5, "g")}
# Three goes on a scale of 1 g: 3 g. Half a scale's 5 g, and what a pinch spills: 4 g.
ELSE = ("weighed in three goes", "the portion scale")
TOLERANCES = {
    drill.question.id: drill.question.tolerance
    for drill in DRILLS
    if hasattr(drill.question, "tolerance") and SHOWN.search(drill.question.tolerance.because)
}


def test_the_page_of_ranges_is_current():
    """A range or a tolerance that moves changes what every class sees: it is moved on purpose."""
    current = PAGE.read_text(encoding="utf-8")

    assert current == page(), "out of date: run python -m tests.measure.drill_ranges and commit"


@pytest.mark.parametrize("name", TOLERANCES)
def test_a_tolerance_is_what_its_instrument_shows(name):
    """ "The bench scale shows 5 g": 5 g are right, and neither 4 nor 6."""
    tolerance = TOLERANCES[name]
    shown = SHOWN.search(tolerance.because)[1]
    expected = IN_WORDS.get(shown) or read(shown)
    if not tolerance.because.startswith(ELSE):
        assert expected.to(tolerance.step.units).magnitude == pytest.approx(
            tolerance.step.magnitude
        )
