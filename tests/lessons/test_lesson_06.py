"""Lesson 6 and its set: panel sentences, numbers worked by hand, and slips told apart."""

import csv
import inspect
import itertools
from pathlib import Path

import numpy as np
import pytest
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key
from scipy.optimize import curve_fit

from kitchenmath.drills.foaming import DRILLS as FOAMING
from kitchenmath.drills.thickening import DRILLS as THICKENING
from kitchenmath.panels.foaming import (
    DRAIN_POWER,
    drainage_panel,
    drained_percent,
    overrun_panel,
    parts_panel,
)
from kitchenmath.panels.predicting import PREDICTIONS
from kitchenmath.panels.thickening import gelatin_panel, packing_panel
from kitchenmath.safety import limit
from kitchenmath.sauces import (
    brix,
    drainage_half_life,
    gel_strength,
    oil_volume_fraction,
    overrun,
    roux_for,
    syrup_density,
)
from kitchenmath.units import Q_, say, weight_of
from tests.helpers.panels import moved

KIT = Path(__file__).parents[2]
BOOK = {**FOAMING, **THICKENING}
LOG = KIT / "lessons" / "data" / "cider_foam_drainage.csv"


def page(name):
    return (KIT / name).read_text(encoding="utf-8")


def test_the_parts_panel_says_the_hand_calculation():
    """By hand, 1200 g, a dessert's two to one: cups weigh 2 x 1.0465 = 2.093 to 0.8454, of 2.9384.

    Sugar 1200 x 0.8454 / 2.9384 = 345 g, cider 855 g, of it 12 % sugar, 103 g: 448 / 1200 =
    37.3 %. By weight 400 g of sugar and 800 g of cider, 96 g: 496 / 1200 = 41.3 %.
    """
    said = moved(parts_panel(), base_g=1200, cider_parts=2.0)

    assert "2 to 1 by volume: 855 g of cider and 345 g of sugar." in said
    assert "that is 37.3 °Brix" in said
    assert "2 to 1 by weight: 800 g of cider and 400 g of sugar, 41.3 °Brix" in said
    assert "puts in 54.8 g of sugar too much" in said


def test_the_overrun_panel_says_the_hand_calculation():
    """By hand: (250 - 50) / 50 = 400 %; 5 cups from 1, 4/5 gas; 40 x 40 mL / 5 = 320 mL."""
    said = moved(overrun_panel(), base_g=250, foam_g=50, plates=40)

    assert "an overrun of 400 %" in said
    assert "100 mL of base become 500 mL of foam, and 80 % of that foam is gas" in said
    assert "40 plates of 40 mL are 1600 mL of foam: whip at least 320 mL of base" in said


def test_the_drainage_panel_says_the_hand_calculation():
    """By hand: at half the half-life 1 / (1 + 2^1.6) = 1 / 4.031 = 24.8 %; 40 mL / 4 = 10 mL."""
    said = moved(drainage_panel(), half_min=8.0, eaten_min=4.0, overrun_percent=300)

    assert "After 4 min 25 % is out. Less than half is out." in said
    assert "holds 10 mL of base, and 2.5 mL of that is a puddle" in said
    assert "An estimate" in said


def test_the_drainage_panel_says_half_and_more_than_half():
    """At the half-life half is out, whatever the curve's power; later more."""
    panel = drainage_panel()

    assert "After 6 min 50 % is out. Half is out." in moved(panel, half_min=6.0, eaten_min=6.0)
    assert "More than half is out" in moved(panel, eaten_min=7.0)


def test_the_gelatin_panel_says_the_hand_calculation():
    """By hand: √(240 / 150) = 1.2649; 30 x that = 37.9 g; straight 30 x 1.6 = 48 g, 10 too much."""
    said = moved(gelatin_panel(), recipe_g=30, recipe_bloom=240, own_bloom=150)

    assert "30 g of 240 Bloom set as firm as 37.9 g of 150 Bloom" in said
    assert "The straight ratio says 48 g: 10 g too much." in said


def test_the_gelatin_panel_turns_round_with_the_strength():
    """A stronger gelatin: less is needed, and the straight ratio takes too little."""
    panel = gelatin_panel()
    said = moved(panel, recipe_g=20, recipe_bloom=160, own_bloom=250)

    assert "as 16 g of 250 Bloom" in said
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


def test_the_invented_log_is_clean_and_its_half_life_is_the_one_worked_by_hand():
    """By hand: 29 mL at 6 min, 33 mL at 7 min; 30 is a quarter of the way: 6.25 min."""
    with LOG.open(encoding="utf-8", newline="") as file:
        assert next(file).startswith("# Invented")
        rows = list(csv.DictReader(file))
    minutes = Q_([float(row["time_min"]) for row in rows], "min")
    drained = Q_([float(row["drained_mL"]) for row in rows], "mL")

    assert say(drainage_half_life(minutes, drained, liquid=Q_(60, "mL"))) == "6.25 min"
    assert {"6": "29", "7": "33"}.items() <= {r["time_min"]: r["drained_mL"] for r in rows}.items()
    assert "It is invented." in page("lessons/06-foam.ipynb")


def test_the_panels_curve_has_the_power_of_the_log():
    """Referee: scipy's least squares of 60 tⁿ / (cⁿ + tⁿ) on the log, whole millilitres read."""
    log = np.loadtxt(LOG, delimiter=",", skiprows=2)[1:]
    (power, half), _ = curve_fit(
        lambda t, n, c: 60 * t**n / (c**n + t**n), log[:, 0], log[:, 1], p0=(1.5, 6)
    )

    assert power == pytest.approx(DRAIN_POWER, abs=0.1)
    assert half == pytest.approx(6.25, abs=0.25)


def test_three_quarters_are_out_after_twice_the_half_life():
    """By hand: 2^1.6 = 3.031; 3.031 / 4.031 = 75.2 %: "about three quarters"."""
    assert drained_percent(12, 6) == pytest.approx(75.2, abs=0.05)


def test_the_base_by_hand_in_the_lesson():
    """800 mL x 1.046 = 837 g; 100 mL x 0.845 = 85 g; an eighth of 837 is 105, 20 g more."""
    cider = weight_of(Q_(800, "mL"), syrup_density(Q_(12, "percent")))
    sugar = weight_of(Q_(100, "mL"), "granulated sugar")

    assert round(cider.magnitude) == 837
    assert round(sugar.magnitude) == 85
    assert (cider / 8 - sugar).magnitude == pytest.approx(20, abs=0.5)


def test_one_cider_foam_runs_through_the_term_and_is_no_dessert():
    """Eight to one: (0.12 x 837 + 84.5) / 921.7 = 20.1 °Brix; reduced by two fifths 12 / 0.6 = 20.

    Set 10 reduces its cider by 30 to 45 %, so by two fifths among others; two to one is 37 °Brix.
    """
    assert "that is 20.1 °Brix" in moved(parts_panel(), cider_parts=8.0)
    assert 12 / (1 - 0.4) == pytest.approx(20)
    assert "that is 37.3 °Brix" in moved(parts_panel(), cider_parts=2.0)
    for name in ("lessons/06-foam.ipynb", "instructor/guide/06-foam.md"):
        assert "ight parts of cider to one of sugar" in page(name) or "eight to one" in page(name)
        assert "and-warm" in page(name)


def test_the_guides_sugar_is_what_its_two_bases_take():
    """Six pairs x 75 mL, six x 300 mL, at 0.845 g: 6 x 63.4 + 6 x 253.6 = 1902 g, below 1920 g."""
    gram_mL = weight_of(Q_(1, "mL"), "granulated sugar").magnitude

    assert 75 * gram_mL == pytest.approx(63, abs=0.5)
    assert 6 * (75 + 300) * gram_mL < 12 * 160


def test_the_syrups_by_hand_in_the_lesson():
    """210 / 910 = 23 °Brix; 300 / 1000 = 30; 2 kg at 12 °Brix hold 240 g, 240 / 0.60 = 400 g."""
    assert say(brix(sugar=Q_(210, "g"), water=Q_(700, "g")), 2) == "23 %"
    assert say(brix(sugar=Q_(300, "g"), water=Q_(700, "g"))) == "30 %"
    assert 2000 * 0.12 / 0.60 == pytest.approx(400)


def test_sixty_grams_of_foam_hold_55_millilitres_of_base():
    """20.1 °Brix: 60 g / 1.083 g/mL = 55.4 mL; the dessert's 37.3 °Brix: 60 / 1.163 = 51.6."""
    house, dessert = (
        60 / syrup_density(Q_(brix_, "percent")).to("g/mL").magnitude for brix_ in (20.1, 37.3)
    )

    assert (round(house), round(dessert)) == (55, 52)


def test_the_three_answers_to_one_cup_are_right():
    """270 and 90 g: gas 67 %, overrun 200 %, three cups 300 %; 45 g: five cups on top, 500 %."""
    assert say(overrun(Q_(270, "g"), Q_(90, "g"))) == "200 %"
    assert "500 %" == say(PREDICTIONS["overrun"].right)
    assert say(overrun(Q_(270, "g"), Q_(45, "g"))) == "500 %"
    assert round(100 * (1 - 90 / 270)) == 67
    assert 100 * 270 / 90 == pytest.approx(300)


def test_the_two_roux_differ_in_butter_and_not_in_flour():
    """Per litre: 125 against 186 g of roux ("half as thick again"), 62.5 against 66 g of flour."""
    shop, home = (roux_for(Q_(4, "L"), "medium", source=s) for s in ("Gisslen", "household"))

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


@pytest.mark.parametrize(
    "text", ["lessons/06-foam.ipynb", "instructor/guide/06-foam.md"]
)
def test_the_holding_limit_is_the_quoted_one(text):
    """FDA Food Code 3-501.16, as the library quotes it."""
    row = limit("hot holding")

    assert f"{say(row.temperature)} (135 °F) or above" in page(text)
    assert (row.source, row.section) == ("FDA Food Code", "3-501.16")


@pytest.mark.parametrize("text", ["lessons", "instructor/guide"])
def test_the_allergens_and_the_pressure_are_named(text):
    """Soya, egg, milk, mustard, celery, gluten, sulphites; and the siphon's gas."""
    ending = "md" if "guide" in text else "ipynb"
    said = page(f"{text}/06-foam.{ending}").lower()

    for risk in ("soya", "egg", "milk", "mustard", "celery", "gluten", "sulphites", "siphon"):
        assert risk in said
    assert "all the gas is out" in said


def every_draw(choices):
    """All the numbers that a question may ask for."""
    for values in itertools.product(*(choice.values for choice in choices.values())):
        yield dict(zip(choices, values, strict=True))


def nearest(question, known):
    """How near any slip comes to the right answer, in tolerances."""
    right = question.right(known)
    allowed = question.tolerance.around(right, of_percent=question.kind == "percent")
    distances = []
    for slip in question.slips:
        number = question.slip_value(slip, known).to(right.units)
        distances.append(abs(number.magnitude - right.magnitude) / allowed)
    return min(distances)


@pytest.mark.parametrize("question", ["q1", "q2", "q3", "q4", "q5", "q6"])
def test_in_every_possible_draw_of_the_set_slips_keep_clear_of_the_right_answer(question):
    """More than twice the tolerance apart, and the right answer in three figures is right."""
    sheet = load_key(key_notebook("06-foam")).sheet
    asked, first = sheet.questions[question], sheet.questions["q1"]
    builds_on_q1 = "q1" in inspect.signature(asked.formula).parameters
    choices = {**(sheet.choices["q1"] if builds_on_q1 else {}), **sheet.choices[question]}
    for known in every_draw(choices):
        known = {**known, "q1": first.right(known)} if builds_on_q1 else known
        assert nearest(asked, known) > 2
        assert asked.judge(say(asked.right(known), 3), known).outcome == "right"


@pytest.mark.parametrize("drill", BOOK.values(), ids=BOOK)
def test_in_every_possible_round_of_a_drill_slips_keep_clear_of_the_right_answer(drill):
    """More than twice the tolerance apart, and the right answer in three figures is right."""
    for known in every_draw(drill.choices):
        assert nearest(drill.question, known) > 2
        assert drill.question.judge(say(drill.question.right(known), 3), known).outcome == "right"
