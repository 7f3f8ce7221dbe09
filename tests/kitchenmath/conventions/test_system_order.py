"""A class with pounds and °F first reads them first: in sets, drills and records."""

import json
import re

import pytest
from coursework.sets.key_text import key_notebook, set_ids

from kitchenmath.conventions import conventions_of
from kitchenmath.conventions.system_order import PAIR, first_system_first
from kitchenmath.drills import Round
from kitchenmath.practice.drawn_days import days
from kitchenmath.practice.drawn_logs import nights, tubs
from kitchenmath.safety import limit
from tests.helpers.asked_drills import DRILLS

US = conventions_of("US")
# Degrees that stand alone: dials and cards whose °C or °F is what is to be turned over.
ASKED_FOR = ("01-measure-and-scale", "02-mix-by-ratio")
ALONE = re.compile(r"\d °C(?! \()(?![^(\n]*\))")


@pytest.mark.parametrize(
    ("text", "turned"),
    [
        ("at 57 °C (135 °F), then", "at 135 °F (57 °C), then"),
        ("220 °C (425 °F, gas mark 7)", "425 °F (220 °C, gas mark 7)"),
        ("from 1.5 to 2 kg (3.3 to 4.4 lb)", "from 3.3 to 4.4 lb (1.5 to 2 kg)"),
        ("2 kg (4.4 lb) and 300 m (984 ft)", "4.4 lb (2 kg) and 984 ft (300 m)"),
        ("135 °F (57 °C)", "135 °F (57 °C)"),
    ],
)
def test_a_pair_is_turned_and_nothing_else(text, turned):
    """A span is a pair too; what is turned is not turned again."""
    assert turned == first_system_first(text, US)
    assert text == first_system_first(text, conventions_of("UK"))


@pytest.mark.parametrize("set_id", set_ids())
def test_a_set_of_a_us_class_says_fahrenheit_and_pounds_first(set_id):
    """No pair with the metric system first; a lone °C only where °C is what is asked."""
    cells = json.loads(key_notebook(set_id, US))["cells"]
    text = "\n".join("".join(cell["source"]) for cell in cells)
    shown = "\n".join("".join(c["source"]) for c in cells if c["cell_type"] == "markdown")

    assert [] == PAIR.findall(text)
    assert set_id.startswith(ASKED_FOR) or [] == ALONE.findall(shown)


def test_a_drill_of_a_us_class_says_fahrenheit_and_pounds_first():
    """Its text, its hint, what it tells of slips and its working."""
    metric_first = []
    for drill in DRILLS:
        asked = Round(drill, US)
        told = [slip.sentence for slip in getattr(asked.question, "slips", ())]
        told += getattr(asked.question, "working", ())
        metric_first += [each for each in (asked.text, asked.hint, *told) if PAIR.search(each)]

    assert [] == metric_first


def test_a_us_record_is_in_fahrenheit_with_one_line_in_celsius():
    """The limits as the FDA Food Code prints them: 41, 135, 145, 165 °F."""
    for day in days("a day").in_college(US).values:
        scales = [str(each.reading.units) for each in day.lines]

        assert (9, 1) == (scales.count("degree_Fahrenheit"), scales.count("degree_Celsius"))
        assert 3 == sum(not each.keeps for each in day.lines)
        assert 1 == sum(each.on_its_limit for each in day.lines)


def test_a_us_cold_room_is_out_above_41_and_nowhere_between():
    """FDA Food Code 3-501.16: 41 °F; whole °F, as such a probe shows them."""
    printed = limit("cold holding").fahrenheit.magnitude
    for night in nights("a night").in_college(US).values:
        kept = [degrees <= printed for degrees in night.degrees]

        assert printed == night.limit == 41
        assert kept == sorted(kept, reverse=True)
        assert all(degrees == int(degrees) for degrees in night.degrees)


def test_a_us_tub_shows_the_side_of_the_limit_on_which_it_is():
    """21 °C is 70 °F and 5 °C is 41 °F: no rounding carries a tub across."""
    for sauce in tubs("tubs").in_college(US).values:
        for tub in sauce.lines:
            two, six = (float(each.removesuffix(" °F")) for each in tub.shown[:2])

            assert (tub.after_two.magnitude > 21, tub.after_six.magnitude > 5) == (
                two > 70,
                six > 41,
            )
