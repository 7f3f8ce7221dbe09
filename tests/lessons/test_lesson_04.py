"""Lesson 4: its numbers worked by hand, what its guide adds, and every draw of its drills."""

import itertools
import json
from pathlib import Path

import pytest

from kitchenmath.drills.buying import DRILLS
from kitchenmath.panels.buying import breast_price_panel, purchase_panel
from kitchenmath.safety import limit
from kitchenmath.units import Q_, read, say
from kitchenmath.yields import (
    Pack,
    TrimTest,
    as_purchased,
    cooking_loss,
    edible_portion,
    menu_price,
    order,
    portions,
    published_yields,
    yield_of,
)
from tests.helpers.lessons import predictions_of
from tests.helpers.panels import moved

KIT = Path(__file__).parents[2]
LESSON = json.loads((KIT / "lessons/04-buy-enough.ipynb").read_text(encoding="utf-8"))
PROSE = "\n".join("".join(c["source"]) for c in LESSON["cells"] if c["cell_type"] == "markdown")
PROSE += predictions_of(LESSON)
# As it is read: in Markdown a dollar sign stands in a span of its own, see `test_written.py`.
PROSE = PROSE.replace("<span>\\$</span>", "$")
GUIDE = (KIT / "instructor/guide/04-buy-enough.md").read_text(encoding="utf-8")
NET, SMALL = Pack(Q_(2.5, "kg"), Q_(5.50, "dollar")), Pack(Q_(1, "kg"), Q_(2.60, "dollar"))


def printed(cell_id):
    """What a cell of the lesson printed when it was stored."""
    cell = next(cell for cell in LESSON["cells"] if cell["id"] == cell_id)
    return "".join("".join(output["text"]) for output in cell["outputs"])


def test_a_kilo_of_carrots_leaves_eighty_percent():
    """By hand: 800 / 1000 = 80 %, and 100 - 80 = 20 % went elsewhere."""
    assert say(yield_of(purchased=read("1 kg"), edible=read("800 g"))) == "80 %"
    assert "So 80 % is left, and 20 % went into the stockpot or the bin." in PROSE


def test_forty_plates_are_divided_by_the_yield():
    """By hand: 40 x 60 g = 2.4 kg; 2.4 / 0.68 = 3.53 kg; 2.4 x 0.68 = 1.63 kg."""
    served, share = 40 * read("60 g"), read("68 %")

    assert say(served.to("kg")) == "2.4 kg"
    assert say(as_purchased(edible=served, yield_=share).to("kg"), 3) == "3.53 kg"
    assert say(edible_portion(purchased=served, yield_=share).to("kg"), 3) == "1.63 kg"
    assert "Forty plates of 60 g are 2.4 kg" in PROSE
    for line in ("2.4 ÷ 0.68 = 3.53 kg", "2.4 × 0.68 = 1.63 kg"):
        assert line in PROSE


def test_the_loss_added_on_top_leaves_five_plates_bare():
    """By hand: 2.4 x 1.32 = 3.168 kg; x 0.68 = 2.154 kg; / 60 g = 35.9, so 35 plates of 40."""
    left = edible_portion(purchased=2.4 * Q_(1.32, "kg"), yield_=read("68 %"))

    assert say(2.4 * Q_(1.32, "kg"), 3) == "3.17 kg"
    assert say(left, 3) == "2.15 kg"
    assert portions(left, read("60 g")) == 35
    assert "2.4 × 1.32 = 3.17 kg" in PROSE
    assert "3.17 × 0.68 = 2.15 kg, and 35 of 40 plates" in PROSE


def test_from_eighty_to_sixty_percent_the_order_grows_by_a_third():
    """By hand: 2.4 / 0.80 = 3.0 kg, 2.4 / 0.60 = 4.0 kg, and 4.0 / 3.0 = 1.33."""
    at_80 = as_purchased(edible=read("2.4 kg"), yield_=read("80 %"))
    at_60 = as_purchased(edible=read("2.4 kg"), yield_=read("60 %"))

    assert (say(at_80), say(at_60)) == ("3 kg", "4 kg")
    assert (at_60 / at_80).to("").magnitude == pytest.approx(4 / 3)
    for line in ("2.4 ÷ 0.80 = 3.0 kg", "2.4 ÷ 0.60 = 4.0 kg", "4.0 is a third more than 3.0"):
        assert line in PROSE
    panel = purchase_panel()
    assert "you buy 3 kg" in moved(panel, yield_percent=80)
    assert "you buy 4 kg" in moved(panel, yield_percent=60)


def test_books_differ_by_twenty_points_for_celery():
    """By hand: 89 - 69 = 20."""
    shares = [share.to("percent").magnitude for share in published_yields("celery").values()]

    assert (min(shares), max(shares)) == (69, 89)
    assert "They differ by twenty points" in PROSE


def test_the_breast_loses_28_percent_and_the_way_back_is_a_division():
    """By hand: 126 / 175 = 0.72; 100 - 72 = 28 %; 126 / 0.72 = 175 g."""
    loss = cooking_loss(raw=read("175 g"), cooked=read("126 g"))

    assert say(loss, 3) == "28 %"
    assert say(as_purchased(edible=read("126 g"), yield_=Q_(100, "percent") - loss)) == "175 g"
    assert "126 ÷ 175 = 0.72 is left, so 28 % is lost" in PROSE
    assert "126 ÷ 0.72 = 175 g" in PROSE


def test_the_cheapest_mix_of_nets_by_hand():
    """By hand: 3.53 / 2.5 = 1.41 nets; 11.00, 5.50 + 5.20 = 10.70 and 4 x 2.60 = 10.40 dollars.

    Three small are 3 kg; one of each is 3.5 kg, and 3.529 - 3.5 = 0.029 kg.
    """
    need = as_purchased(edible=read("2.4 kg"), yield_=read("68 %"))
    [line] = order({"celeriac": need}, {"celeriac": [NET, SMALL]})

    assert f"{(need / NET.size).to('').magnitude:.2f}" == "1.41"
    assert "Nobody sells 1.41 nets" in PROSE
    enough = {
        (large, small): large * NET.price + small * SMALL.price
        for large, small in itertools.product(range(4), range(6))
        if large * NET.size + small * SMALL.size >= need
    }
    best = min(enough, key=enough.get)
    assert best == (0, 4)
    assert say(line.cost) == say(enough[best]) == "$10.40"
    assert [say(enough[mix]) for mix in ((2, 0), (1, 2), (0, 4))] == ["$11.00", "$10.70", "$10.40"]
    assert say((need - NET.size - SMALL.size).to("g"), 2) == "29 g"
    for words in ("$11.00", "5.50 + 2 × 2.60 = $10.70", "4 × 2.60 = $10.40", "29 g short"):
        assert words in PROSE


def test_a_kilo_of_breast_by_hand():
    """By hand: 12 x 9 = 108; 3 x 6 = 18; 108 - 18 = 90; 90 / 3.6 = 25; 25 / 9 = 2.78."""
    birds = TrimTest(
        purchased=Q_(12, "kg"),
        price=Q_(9, "dollar/kg"),
        usable=Q_(3.6, "kg"),
        by_products={"legs": (Q_(3, "kg"), Q_(6, "dollar/kg"))},
    )

    assert [say(each) for each in (birds.cost, birds.credit, birds.net_cost)] == [
        "$108.00", "$18.00", "$90.00",
    ]  # fmt: skip
    assert say(birds.usable_price) == "$25.00 per kg"
    assert round(birds.cost_factor, 2) == 2.78
    for line in ("12 kg × $9 = $108", "3 kg × $6 = $18", "108 − 18 = $90", "90 ÷ 3.6 kg = $25",
                 "25 ÷ 9 = 2.78"):  # fmt: skip
        assert line in PROSE


def test_the_factor_holds_only_where_the_legs_move_in_price_too():
    """By hand: 12 x 10 - 18 = 102; / 3.6 = 28.33. With legs at 6 x 10 / 9 = 6.67 it is 10 x 25 / 9,
    27.78, and the rounded factor says 27.80.
    """

    def breast(legs):
        parts = {"legs": (Q_(3, "kg"), Q_(legs, "dollar/kg"))}
        birds = TrimTest(Q_(12, "kg"), Q_(10, "dollar/kg"), Q_(3.6, "kg"), by_products=parts)
        return birds.usable_price.m_as("dollar/kg")

    assert breast(6) == pytest.approx(28.33, abs=0.005)
    assert breast(6.67) == pytest.approx(10 * 2.78, abs=0.05)
    assert "12 × 10 − 18 = $102, and 102 ÷ 3.6 kg = $28.33" in PROSE
    assert "10 × 2.78 = $27.80. That holds where the legs get dearer too" in PROSE


def test_legs_worth_nothing_leave_the_breast_the_whole_cost():
    """By hand: 10 kg at $9 = $90; carcasses 2.8 x 1.50 = $4.20; 85.80 / 3 kg = $28.60."""
    assert "$85.80: $28.60 per kg" in moved(breast_price_panel(), legs_value=0)


def test_the_menu_price_is_a_division_and_a_mark_up_is_none():
    """By hand: 4.50 / 0.30 = 15.00; 4.50 x 1.30 = 5.85; 4.50 / 5.85 = 77 %."""
    plate = Q_(4.50, "dollar")

    assert say(menu_price(plate, read("30 %"))) == "$15.00"
    assert say(plate * 1.30) == "$5.85"
    assert say((plate / (plate * 1.30)).to("percent"), 2) == "77 %"
    assert "4.50 ÷ 0.30 = $15.00" in PROSE
    assert "4.50 × 1.30 = $5.85 for that plate, and the food takes 77 % of it" in PROSE


def test_half_the_size_has_twice_the_share_of_skin():
    """By hand, a ball: skin over volume is 6 / diameter, so 6 / 40 is twice 6 / 80."""
    assert 6 / 40 == 2 * 6 / 80
    assert "halve the size and the share of skin doubles" in PROSE


@pytest.mark.parametrize("text", [PROSE, GUIDE], ids=["lesson", "guide"])
def test_the_poultry_limit_is_the_quoted_one(text):
    """74 °C (165 °F) in the FDA Food Code 3-401.11."""
    row = limit("poultry")

    assert f"{say(row.temperature)} ({say(row.fahrenheit)})" in text
    assert "local food code" in text


@pytest.mark.parametrize("text", [PROSE, GUIDE], ids=["lesson", "guide"])
def test_knife_raw_poultry_and_allergens_are_named(text):
    """Where the hands meet them."""
    for risk in ("fingertips", "Raw poultry", "counts as celery"):
        assert risk in text


@pytest.mark.parametrize("drill", DRILLS.values(), ids=DRILLS)
def test_no_slip_of_any_draw_passes_for_the_right_answer(drill):
    """Every number that a drill can draw; of the butcher's 26,180 every tenth."""
    draws = list(itertools.product(*(choice.values for choice in drill.choices.values())))
    for drawn in draws if len(draws) < 1000 else draws[::10]:
        assert drill.question.collisions(dict(zip(drill.choices, drawn, strict=True))) == []
