"""Lesson 5: its numbers worked by hand, what its panels say, and every draw of its set."""

import itertools
import json
import re
from pathlib import Path

import pytest
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.brine import (
    brine_parts,
    equilibrium_strength,
    salt_for_brine,
    salt_for_equilibrium,
    salt_per_litre_of_brine,
    salt_per_litre_of_water,
    salt_to_strengthen,
    strength,
    strength_after_reduction,
    strength_from_density,
    strength_from_salometer,
)
from kitchenmath.panels.seasoning import (
    broth_panel,
    evening_out_panel,
    stem_panel,
    strength_panel,
)
from kitchenmath.units import Q_, read, say, weight_of
from tests.helpers.lessons import predictions_of
from tests.helpers.panels import words

KIT = Path(__file__).parents[2]
LESSON = json.loads((KIT / "lessons/05-season-and-brine.ipynb").read_text(encoding="utf-8"))
PROSE = "\n".join("".join(c["source"]) for c in LESSON["cells"] if c["cell_type"] == "markdown")
PROSE += predictions_of(LESSON)
GUIDE = (KIT / "instructor/guide/05-season-and-brine.md").read_text(encoding="utf-8")


def test_a_hundred_grams_in_a_kilo_are_9_09_percent():
    """By hand: 100 / 1100 = 0.0909."""
    assert say(strength(read("100 g"), read("1 kg")), 3) == "9.09 %"
    assert "100 ÷ 1100 is 9.09 %." in PROSE


def test_eight_kilos_of_water_at_six_percent_by_hand():
    """By hand: 8000 / 94 x 6 = 510.6 g; of the water 480 g, and 480 / 8480 = 5.66 %."""
    assert say(salt_for_brine(read("8000 g"), read("6 %"))) == "510.6 g"
    assert say(strength(read("480 g"), read("8 kg")), 3) == "5.66 %"
    assert "8000 ÷ 94 × 6 = 510.6 g." in PROSE
    assert "480 ÷ 8480 is only 5.66 %" in PROSE


def test_the_gap_between_the_denominators_grows_more_than_fourfold():
    """By hand, 8 kg of water: 8000 x 6 / 94 - 480 = 30.6 g; 8000 x 12 / 88 - 960 = 130.9 g."""
    gaps = [(salt_for_brine(read("8000 g"), Q_(p, "percent")).magnitude - 80 * p) for p in (6, 12)]

    assert gaps == pytest.approx([30.64, 130.91], abs=0.01)
    assert "From 31 g to 131 g" in PROSE


def test_188_and_177_grams_are_the_same_brine():
    """Seafish, brining table, 60°: 188.18 g to a litre of water, 176.7 g in a litre of brine."""
    sixty = read("15.84 %")

    assert round(salt_per_litre_of_water(sixty).magnitude) == 188
    assert round(salt_per_litre_of_brine(sixty).to("g/L").magnitude) == 177
    assert "188 g and 177 g in one line, for the same brine of 15.84 %" in PROSE


def test_a_cup_of_salt_is_nearly_a_third_more_than_eight_ounces():
    """By hand: 292 / (8 x 28.35) = 1.287; USDA SR28 has 292 g in a US cup."""
    more = (weight_of(read("8 fl oz"), "table salt") / read("8 oz")).to("").magnitude

    assert more == pytest.approx(1.287, abs=0.001)
    assert "Nearly a third more salt" in PROSE


def test_sixty_degrees_by_hand():
    """By hand: 0.60 x 26.4 = 15.84 %; a degree for 10 °F is one for 5.56 °C."""
    assert say(strength_from_salometer(60)) == "15.84 %"
    warmer = strength_from_salometer(60, temperature=Q_(70, "degF"))
    assert say(warmer) == say(strength_from_salometer(61))
    assert "0.60 × 26.4 = 15.84 %" in PROSE


def test_ten_kilos_from_four_to_six_percent_by_hand():
    """By hand: 10 000 x 2 / 94 = 212.8 g."""
    more = salt_to_strengthen(read("10 kg"), start=read("4 %"), target=read("6 %"))

    assert say(more.to("g")) == "212.8 g"
    assert "10 000 × 2 ÷ 94 = 212.8 g" in PROSE


def test_twelve_birds_by_hand_with_both_denominators():
    """By hand: 40 000 x 1.8 / 98.2 = 733.2 g; 40 000 x 0.018 = 720 g; 13 g apart."""
    birds, water, target = read("16 kg"), read("24 kg"), read("1.8 %")
    ways = [
        salt_for_equilibrium(birds, water, target, counting=counting).to("g")
        for counting in ("everything", "food and water")
    ]

    assert [say(salt) for salt in ways] == ["733.2 g", "720 g"]
    assert round((ways[0] - ways[1]).magnitude) == 13
    assert say(strength(ways[0], water), 3) == "2.96 %"  # 733.2 / 24 733.2
    water_only = salt_for_brine(water, target).to("g")  # 24 000 x 1.8 / 98.2
    assert say(water_only) == "439.9 g"
    assert say(equilibrium_strength(birds, water, water_only), 3) == "1.09 %"  # 439.9 / 40 439.9
    for text in ("733.2 ÷ 24 733 = 2.96 %", "98.2 = 439.9 g", "ends at 1.09 %"):
        assert text in PROSE
    for text in ("98.2 = 733.2 g", "0.018 = 720 g", "Here they are 13 g apart"):
        assert text in PROSE


def test_eight_litres_down_to_two_by_hand():
    """By hand: 0.8 x 8 / 4 = 1.6 %, 0.8 x 8 / 2 = 3.2 %."""
    assert say(strength_after_reduction(read("0.8 %"), read("8 L"), read("4 L"))) == "1.6 %"
    assert "Down to half: 0.8 to 1.6 %. Half to a quarter: 1.6 to 3.2 %" in PROSE
    assert say(strength_after_reduction(read("0.8 %"), read("8 L"), read("2 L"))) == "3.2 %"
    assert "0.8 × 8 ÷ 2 = 3.2 %" in PROSE


def test_two_millilitres_are_about_half_a_percent():
    """By hand: 2 in 500 is 0.4 % of 1034 g/L, 4.1 g/L; a percent of salt is 7.2 g/L; 0.57 %."""
    at_500, at_502 = (strength_from_density(read("518 g") / Q_(v, "mL")) for v in (500, 502))

    assert (at_500 - at_502).magnitude == pytest.approx(0.57, abs=0.03)
    assert "2 mL out already moves the last line by about half a percent" in PROSE


def test_the_tub_of_the_guide_by_hand():
    """By hand: 19 800 x 1.8 / 98.2 = 362.9 g; birds alone 140.4 g, 140.4 / 19 940.4 = 0.70 %."""
    birds, water = read("7.8 kg"), read("12 kg")
    salt = salt_for_equilibrium(birds, water, read("1.8 %")).to("g")
    short = equilibrium_strength(birds, water, read("140.4 g"))

    assert say(salt) == "362.9 g"
    assert f"{short.magnitude:.2f}" == "0.70"
    assert "362.9 g of salt" in GUIDE
    assert "(140.4 g), and where that ends (0.70 %)" in GUIDE


def test_the_broth_of_the_guide_by_hand():
    """By hand: 4 / 504 = 0.79 %, said as 0.8; 0.8 x 500 / 125 = 3.2 %."""
    made = strength(read("4 g"), read("500 g"))

    assert say(made, 1) == "0.8 %"
    assert say(strength_after_reduction(made, read("504 g"), read("126 g")), 2) == "3.2 %"
    assert "Salt 500 g of broth with 4 g, to 0.8 %" in GUIDE


def test_the_minutes_of_the_guide_follow_each_other_to_ninety():
    """No gap and no overlap."""
    spans = [(int(a), int(b)) for a, b in re.findall(r"^\| (\d+)–(\d+) \|", GUIDE, re.MULTILINE)]

    assert (spans[0][0], spans[-1][1]) == (0, 90)
    assert all(end == start for (_, end), (start, _) in itertools.pairwise(spans))


def test_the_strength_panel_says_the_hand_calculation():
    """By hand: 10 kg at 5 %: 10 000 x 5 / 95 = 526.3 g, 10.53 kg; slip 500 g, 500 / 10 500."""
    panel = strength_panel()
    panel.controls["water_kg"].value = 10
    panel.controls["strength_percent"].value = 5

    said = words(panel)
    assert "10 kg (22 lb) of water and 526.3 g (18.6 oz) of salt make 10.53 kg of brine" in said
    assert "52.6 g/L of water, or 51.7 g/L of finished brine" in said
    assert "adds 500 g, and has a brine of 4.76 %" in said


def test_the_stem_panel_says_the_hand_calculation():
    """By hand: 58° at 80 °F, say 27 °C: 58 + 11.44 x 0.18 = 60.06°, 15.9 %; cold 15.3 %.

    A litre at 15.85 % and 27 °C: between 1115.2 (Poradnik, 16 % at 20 °C) and 1110.
    """
    panel = stem_panel()
    panel.controls["shown_degrees"].value = 58
    panel.controls["brine_C"].value = 27

    said = words(panel)
    assert "58° in a brine at 27 °C (80.6 °F): it holds 15.9 % of salt" in said
    assert "you would say 15.3 %" in said
    assert 1110 <= int(re.search(r"weighs (\d+) g", said)[1]) <= 1115
    assert "100°, holds 26.4 %" in said


def test_the_evening_out_panel_says_the_hand_calculation():
    """By hand: 22 kg to 2 %: 22 000 x 2 / 98 = 449 g, else 440 g; start 449 / 12 449 = 3.61 %.

    Water only 12 000 x 2 / 98 = 244.9 g, / 22 244.9 = 1.10 %; birds only 200 g, / 22 200 = 0.90 %.
    """
    panel = evening_out_panel()
    for name, value in (("birds_kg", 10), ("water_kg", 12), ("target_percent", 2.0)):
        panel.controls[name].value = value

    said = words(panel)
    assert "to 2 % of everything: 449 g of salt. (Counted without the salt: 440 g.)" in said
    assert "The brine starts at 3.61 %" in said
    assert "water only, 244.9 g, ends at 1.1 %; for the birds only, 200 g, at 0.9 %" in said


def test_the_broth_panel_says_the_hand_calculation():
    """By hand: 6 kg at 0.9 % hold 54 g; a quarter is 1.5 kg, 3.6 %; enough is 13.5 g."""
    panel = broth_panel()
    for name, value in (("broth_kg", 6), ("salted_percent", 0.9), ("left_percent", 25)):
        panel.controls[name].value = value

    said = words(panel)
    assert "6 kg of broth at 0.9 % hold 54 g of salt" in said
    assert "Reduced to 1.5 kg the salt is still all there: 3.6 %" in said
    assert "Salted last, 13.5 g are enough for 0.9 %" in said


@pytest.mark.parametrize("percent", [6, 8, 10])
def test_the_litre_weights_printed_in_the_set_are_the_published_ones(percent):
    """*Poradnik fizykochemiczny* at 20 °C: 1041.3, 1055.9, 1070.7 g; the set rounds to a gram."""
    published = {6: 1041, 8: 1056, 10: 1071}[percent]
    with_printed = 20 * published * percent / 100  # the most that is ever asked for: 20 L

    asked = load_key(key_notebook("05-season-and-brine")).asked["q3"]
    assert f"{published} g at {percent} %" in asked
    right = brine_parts(Q_(20, "L"), Q_(percent, "percent")).salt.magnitude
    assert with_printed == pytest.approx(right, abs=1)


@pytest.fixture(scope="module")
def sheet():
    return load_key(key_notebook("05-season-and-brine")).sheet


@pytest.mark.parametrize("question", ["q1", "q2", "q3", "q4", "q5", "q6"])
def test_in_every_draw_each_slip_is_clearly_more_than_two_tolerances_away(sheet, question):
    """All draws, not a sample: right and slip never share an answer, not even when both round."""
    asked = sheet.questions[question]
    choices = {name: choice.values for name, choice in sheet.choices[question].items()}
    if question == "q2":  # builds on every right answer to q1
        salts = [sheet.questions["q1"].formula(s) for s in sheet.choices["q1"]["salt"].values]
        choices["q1"] = salts
    for draw in itertools.product(*choices.values()):
        known = dict(zip(choices, draw, strict=True))
        right = asked.right(known)
        allowed = asked.tolerance.around(right, of_percent=asked.kind == "percent")
        for slip in asked.slips:
            made = asked.slip_value(slip, known)
            apart = abs(made.to(right.units).magnitude - right.magnitude)
            assert apart > 2.5 * allowed, (slip.name, known)
