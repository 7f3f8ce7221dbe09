"""Lesson 6 and its set: panel sentences, numbers worked by hand, and slips told apart."""

import csv
from pathlib import Path

import numpy as np
import pytest
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key
from scipy.optimize import curve_fit

from kitchenmath.drills.draining import DRILLS as DRAINING
from kitchenmath.drills.foaming import DRILLS as FOAMING
from kitchenmath.panels.foaming import (
    DRAIN_POWER,
    drainage_panel,
    drained_percent,
    overrun_panel,
    parts_panel,
)
from kitchenmath.panels.standing import HOUSE_HALF_MIN, half_life_min, standing_panel
from kitchenmath.predictions import PREDICTIONS
from kitchenmath.sauces import (
    brix,
    drainage_half_life,
    overrun,
    syrup_density,
    syrup_viscosity,
)
from kitchenmath.units import Q_, say, weight_of
from tests.helpers.every_draw import check_every_draw, check_every_draw_of_a_set
from tests.helpers.panels import moved

KIT = Path(__file__).parents[2]
BOOK = {**FOAMING, **DRAINING}
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
    """210 / 910 = 23 °Brix; 300 / 1000 = 30; the base 817 x 0.12 = 98, + 82.5 = 180.5, / 900."""
    assert say(brix(sugar=Q_(210, "g"), water=Q_(700, "g")), 2) == "23 %"
    assert say(brix(sugar=Q_(300, "g"), water=Q_(700, "g"))) == "30 %"
    assert 100 * (817 * 0.12 + 82.5) / 900 == pytest.approx(20.1, abs=0.05)
    assert "98 g + 82.5 g = 180.5 g" in page("lessons/06-foam.ipynb")


def test_the_time_goes_with_the_thickness_as_the_lesson_works_it_out():
    """1.34 mPa·s at 35 °C, 0.835 at 60 °C: 6.25 x 0.835 / 1.34 = 3.9 min; from the fridge 15.

    An anchor outside: 20 °Brix at 20 °C is 1.945 mPa·s in NBS Circular C440, recalled, and water
    thins between 35 and 60 °C by 0.7191 to 0.4660 mPa·s (IAPWS), 0.648: the base by 0.62.
    """
    warm, hot = (
        syrup_viscosity(Q_(20, "percent"), Q_(warmth, "degC")).to("mPa*s").magnitude
        for warmth in (35, 60)
    )

    assert ("1.34", "0.835") == (f"{warm:.3g}", f"{hot:.3g}")
    assert 0.4660 / 0.7191 == pytest.approx(hot / warm, rel=0.05)
    assert 6.25 * 0.835 / 1.34 == pytest.approx(half_life_min(8, 60), abs=0.05)
    assert [15, 4] == [round(half_life_min(8, warmth)) for warmth in (5, 60)]
    assert HOUSE_HALF_MIN == half_life_min(8, 35)
    assert 8 == round(half_life_min(4, 35)) and half_life_min(float("inf"), 35) < 5
    for text in ("6.25 min × 0.835 ÷ 1.34 = 3.9 min", "Twice the sugar makes it 8 minutes"):
        assert text in page("lessons/06-foam.ipynb")


def test_the_standing_panel_says_the_hand_calculation():
    """60 °C: 3.9 min; (5 / 3.9)^1.6 = 1.488, / 2.488 = 60 %; Friday (5 / 6.25)^1.6 = 0.70: 41 %.

    1 % of 900 g is 9 g, above the usual 0.8 %; 0.2 % is below 0.3 %.
    """
    panel = standing_panel()
    said = moved(panel, warm_C=60, powder_percent=1.0)

    assert "20 °Brix at 60 °C (140 °F): half is out after about 3.9 min" in said
    assert "After 5 min 60 % is a puddle; of Friday's foam 41 %" in said
    assert "1 % of lecithin is 9 g in 900 g: more than usual" in said
    assert "less than usual" in moved(panel, powder_percent=0.2)


def test_a_dose_changes_no_time_in_the_panel():
    """What the lesson asks: the slider that gives nothing."""
    panel = standing_panel()
    first = moved(panel, powder_percent=0.4).partition("\n")[0]

    assert first == moved(panel, powder_percent=0.8).partition("\n")[0]


def test_the_litre_of_the_guides_demonstration():
    """Eight ninths of a litre are 889 mL, one ninth 111 mL, x 0.845 = 94 g."""
    assert (889, 111) == (round(8000 / 9), round(1000 / 9))
    assert 94 == round(weight_of(Q_(111, "mL"), "granulated sugar").magnitude)
    assert "889 mL of cider, 111 mL of sugar, 94 g" in page("instructor/guide/06-foam.md")


def test_sixty_grams_of_foam_hold_55_millilitres_of_base():
    """20.1 °Brix: 60 g / 1.083 g/mL = 55.4 mL; the dessert's 37.3 °Brix: 60 / 1.163 = 51.6."""
    house, dessert = (
        60 / syrup_density(Q_(brix_, "percent")).to("g/mL").magnitude for brix_ in (20.1, 37.3)
    )

    assert (round(house), round(dessert)) == (55, 52)


def test_the_three_answers_to_one_cup_are_right():
    """270 and 90 g: gas 67 %, overrun 200 %, three cups 300 %; 45 g: five cups on top, 500 %."""
    assert say(overrun(Q_(270, "g"), Q_(90, "g"))) == "200 %"
    assert "500 %" == say(PREDICTIONS["whipped longer"].right)
    assert say(overrun(Q_(270, "g"), Q_(45, "g"))) == "500 %"
    assert round(100 * (1 - 90 / 270)) == 67
    assert 100 * 270 / 90 == pytest.approx(300)


@pytest.mark.parametrize("text", ["lessons", "instructor/guide"])
def test_the_allergens_and_the_pressure_are_named(text):
    """Soya, egg, milk, sulphites; and the siphon's gas."""
    ending = "md" if "guide" in text else "ipynb"
    said = page(f"{text}/06-foam.{ending}").lower()

    for risk in ("soya", "egg", "milk", "sulphites", "siphon"):
        assert risk in said
    assert "all the gas is out" in said


@pytest.mark.parametrize("question", ["q1", "q2", "q3", "q4", "q5", "q6"])
def test_in_every_possible_draw_of_the_set_slips_keep_clear_of_the_right_answer(question):
    """More than twice the tolerance apart, and the right answer in three figures is right."""
    check_every_draw_of_a_set(load_key(key_notebook("06-foam")).sheet, question)


@pytest.mark.parametrize("drill", BOOK.values(), ids=BOOK)
def test_in_every_possible_round_of_a_drill_slips_keep_clear_of_the_right_answer(drill):
    """More than twice the tolerance apart, and the right answer in three figures is right."""
    check_every_draw(drill.question, drill.choices)
