"""Lesson 7 and its set: panel sentences, numbers worked by hand, and slips told apart."""

from pathlib import Path

import pytest
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.drills.setting import DRILLS as LEAVES
from kitchenmath.drills.thickening import DRILLS as THICKENING
from kitchenmath.panels.thickening import gelatin_panel, packing_panel, veloute_panel
from kitchenmath.predictions import PREDICTIONS
from kitchenmath.safety import limit
from kitchenmath.sauces import (
    gel_strength,
    gelatin_for,
    leaf_gelatins,
    oil_volume_fraction,
    reduce_to,
    roux_for,
    slurry_for,
)
from kitchenmath.units import Q_, say
from tests.helpers.every_draw import check_every_draw, check_every_draw_of_a_set
from tests.helpers.panels import moved

KIT = Path(__file__).parents[2]
LESSON, GUIDE = "lessons/07-thicken-and-set.ipynb", "instructor/guide/07-thicken-and-set.md"
BOOK = {**THICKENING, **LEAVES}


def page(name):
    return (KIT / name).read_text(encoding="utf-8")


def test_the_gelatin_panel_says_the_hand_calculation():
    """By hand: √(240 / 150) = 1.2649; 30 x that = 37.9 g; straight 30 x 1.6 = 48 g, 10 too much."""
    said = moved(gelatin_panel(), recipe_g=30, recipe_bloom=240, own_bloom=150)

    assert (
        "30 g of 240 Bloom (platinum) set as firm as 37.9 g of 150 Bloom (bronze or silver)" in said
    )
    assert "The straight ratio says 48 g: 10 g too much." in said


def test_the_gelatin_panel_turns_round_with_the_strength():
    """A stronger gelatin: less is needed, and the straight ratio takes too little."""
    panel = gelatin_panel()
    said = moved(panel, recipe_g=20, recipe_bloom=160, own_bloom=250)

    assert "20 g of 160 Bloom (silver) set as firm as 16 g of 250 Bloom (platinum)" in said
    assert "says 12.8 g: 3.2 g too little" in said
    assert "the same, because the strengths are alike" in moved(panel, own_bloom=160)


def test_the_packing_panel_says_the_hand_calculation():
    """By hand: 600 / 0.915 = 655.7 mL; 100 / 1.03 = 97.1 mL; 655.7 / 752.8 = 87.1 %."""
    panel = packing_panel()
    said = moved(panel, oil_g=600, rest_g=100)

    assert "85.7 % of the weight, and 87.1 % of the volume" in said
    assert "Highest mark passed: workable up to 80 %. Stiff and near its end" in said
    assert "Start again with a spoon of water" in moved(panel, oil_g=900, rest_g=80)
    assert moved(panel, oil_g=100, rest_g=200).endswith("it is runny.")


def test_the_two_roux_differ_in_butter_and_not_in_flour():
    """Per litre: 125 against 186 g of roux ("half as thick again"), 62.5 against 66 g of flour."""
    shop, home = (roux_for(Q_(4, "L"), "medium", source=s) for s in ("Gisslen", "household"))

    assert ["62.5 g/L", "500 g"] == [say(shop.flour_per_litre), say(shop.weight)]
    assert (home.per_litre / shop.per_litre).magnitude == pytest.approx(1.5, abs=0.02)
    assert (home.flour_per_litre / shop.flour_per_litre).magnitude == pytest.approx(1.06, abs=0.01)


def test_the_jellies_of_the_guide_are_as_firm_as_it_says():
    """250 x 20² = 160 x 25²: equal; 31 g is (31 / 25)² = 1.54 times as firm."""
    strong, root, straight = (
        gel_strength(Q_(grams, "g"), Q_(300, "g"), bloom)
        for grams, bloom in ((20, 250), (25, 160), (31, 160))
    )

    assert root == pytest.approx(strong)
    assert straight / strong == pytest.approx(1.54, abs=0.005)
    assert gel_strength(Q_(2, "g"), Q_(21, "g"), 160) == pytest.approx(
        4 * gel_strength(Q_(1, "g"), Q_(21, "g"), 160)
    )


def test_the_prediction_and_the_straight_ratio_by_hand():
    """√(250 / 160) = √1.5625 = 1.25: 25 g; straight 31.25 g; (31 / 25)² = 1.54, half again."""
    straight = gelatin_for(Q_(20, "g"), 250, 160, rule="linear")

    assert 25 == pytest.approx(PREDICTIONS["another Bloom"].right.to("g").magnitude)
    assert "31.25 g" == say(straight)
    assert 250 / 160 == 1.5625 == 1.25**2


def test_the_leaves_by_hand_in_lesson_and_guide():
    """12 x 1.7 = 20.4 g; x √(250 / 140) = 27.3 g; / 3.3 = 8.3; twelve 39.6 g, (39.6 / 27.3)² = 2.1.

    Without the root the makers' weights meet: 1.7 x 250 = 425, 3.3 x 140 = 462.
    """
    kinds = leaf_gelatins()
    platinum, bronze = kinds["platinum"], kinds["bronze"]
    card = 12 * platinum.weight
    own = gelatin_for(card, platinum.middle, bronze.middle)

    assert (250, 140) == (platinum.middle, bronze.middle)
    assert ["20.4 g", "27.3 g"] == [say(card, 3), say(own, 3)]
    assert 8.25 == pytest.approx((own / bronze.weight).magnitude, abs=0.05)
    firm = [gel_strength(grams, Q_(300, "g"), 140) for grams in (12 * bronze.weight, own)]
    assert 2.1 == pytest.approx(firm[0] / firm[1], abs=0.05)
    assert "eight and a quarter" in page(LESSON) and "eight and a quarter" in page(GUIDE)


def test_the_reduced_sauce_by_hand():
    """6 L x 0.70 = 4.2 L; 260 / 6 = 43.3, 260 / 4.2 = 61.9 g/L, 1 / 0.70 = 43 % more."""
    said = moved(veloute_panel(), cut_percent=30)

    assert "6 L reduced by 30 % leave 4.2 L. 260 g of flour are 61.9 g/L" in said
    assert "about as a book's medium sauce (62.5 g/L)" in said
    assert "The roux weighs 520 g. Without flour: about 130 g of cornflour in 260 g" in said
    assert 43 == round(100 / 0.70 - 100)
    assert "43.3 g/L become 61.9 g/L" in PREDICTIONS["reduced by"].why


def test_the_veloute_panel_names_what_no_book_has():
    """260 / 6 = 43.3, below a thin sauce's 46.9 g/L; 500 / 2 = 250, above a thick one's 93.75."""
    panel = veloute_panel()

    assert "runny, below a book's thin sauce" in moved(panel, cut_percent=0)
    assert "paste, beyond a book's thick sauce" in moved(panel, stock_l=2.0, flour_g=500)


def test_a_sauce_let_down_by_hand():
    """5 x 75 = 375 g; 375 / 60 = 6.25 L; 1.25 L more."""
    assert (375, 6.25) == (5 * 75, 375 / 60)
    assert "375 ÷ 60 = 6.25 L. So stir in 1.25 L" in page(LESSON)


def test_the_glaze_and_the_slurry_by_hand():
    """2000 x 0.12 = 240 g, / 0.60 = 400 g; 120 / 2 = 60 g, 2 x 60 = 120 g of water, 180 g."""
    left = reduce_to(Q_(2, "kg"), start=Q_(12, "percent"), target=Q_(60, "percent"))
    slurry = slurry_for(Q_(120, "g"))

    assert "400 g" == say(left.to("g"))
    assert ["60 g", "120 g", "180 g"] == [say(each) for each in (*slurry[:2], slurry.weight)]
    assert "240 ÷ 0.60 = 400 g" in PREDICTIONS["glaze"].why
    assert "60 + 120 = 180 g" in PREDICTIONS["slurry"].why


def test_the_stoves_sauce_goes_from_thin_to_medium():
    """45 g of flour in a litre is a book's thin sauce; 0.7 L of it is left: 64.3 g/L, a medium."""
    thin, medium = (roux_for(Q_(1, "L"), body).flour_per_litre for body in ("thin", "medium"))

    assert 45 == pytest.approx(thin.to("g/L").magnitude, rel=0.05)
    assert 45 / 0.7 == pytest.approx(medium.to("g/L").magnitude, rel=0.05)


@pytest.mark.parametrize("place", ["lesson", "guide"])
def test_the_allergens_and_the_hot_sauce_are_named(place):
    """Gluten, milk, egg, mustard, celery; gelatin of fish; hot sauce, steam, raw egg."""
    said = page({"lesson": LESSON, "guide": GUIDE}[place]).casefold()

    for risk in ("gluten", "milk", "egg", "mustard", "celery", "fish", "hot sauce", "steam"):
        assert risk in said
    assert "pasteurised" in said and "blender" in said


def test_boiled_gelatin_is_warned_of():
    """Common practice; no number is given for what is lost."""
    assert "**Never boil gelatin**: it loses its strength" in page(LESSON)
    assert "that you boiled hard for ten minutes" in page(GUIDE)


def test_the_oil_by_hand_in_lesson_and_guide():
    """65 % by weight is 67.6 % by volume; 100 g of the rest: 300 g oil is 77 %, 355 g is 80 %.

    97.1 mL x 4 = 388 mL; x 0.915 = 355 g.
    """
    shares = {
        oil: oil_volume_fraction(Q_(oil, "g"), Q_(rest, "g")).magnitude
        for oil, rest in ((65, 35), (300, 100), (355, 100))
    }

    assert shares[65] == pytest.approx(67.6, abs=0.05)
    assert shares[300] == pytest.approx(77, abs=0.5)
    assert shares[355] == pytest.approx(80, abs=0.05)
    assert 4 * 100 / 1.03 * 0.915 == pytest.approx(355, abs=0.5)


def test_holding_and_reheating_are_quoted_and_not_worked_out():
    """FDA Food Code 3-501.16 and 3-403.11, as the library quotes them; the lesson prints them."""
    holding, again = limit("hot holding"), limit("reheating")

    assert f"{say(holding.temperature)} (135 °F) or above" in page(GUIDE)
    assert f"{say(again.temperature)} (165 °F) within 2 h" in page(GUIDE)
    for row, section in ((holding, "3-501.16"), (again, "3-403.11")):
        assert (row.source, row.section) == ("FDA Food Code", section)
        assert section in page(GUIDE)
        assert str(row) in page(LESSON)


@pytest.mark.parametrize("question", ["q1", "q2", "q3", "q4", "q5", "q6"])
def test_in_every_possible_draw_of_the_set_slips_keep_clear_of_the_right_answer(question):
    """More than twice the tolerance apart, and the right answer in three figures is right."""
    check_every_draw_of_a_set(load_key(key_notebook("07-thicken-and-set")).sheet, question)


@pytest.mark.parametrize("drill", BOOK.values(), ids=BOOK)
def test_in_every_possible_round_of_a_drill_slips_keep_clear_of_the_right_answer(drill):
    """More than twice the tolerance apart, and the right answer in three figures is right."""
    check_every_draw(drill.question, drill.choices)
