"""Lesson 2: what stands worked by hand in its prose, its panels, its drills, its set and guide."""

import json
from pathlib import Path

import pytest
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.drills.dough_warmth import DRILLS as WARMTH
from kitchenmath.drills.mixing import DRILLS as MIXING
from kitchenmath.foods import Food
from kitchenmath.panels.mixing import dough_water_panel, parts, parts_panel, roll_dough_panel
from kitchenmath.ratios import Formula, friction_factor, ice_for, split, water_temperature
from kitchenmath.units import Q_, density_of, say, weight_of
from tests.helpers.lessons import predictions_of
from tests.helpers.panels import words
from tests.helpers.quantities import celsius, percent

KIT = Path(__file__).parents[2]
ROLL = {"flour": 100, "water": 62, "butter": 7, "sugar": 3, "salt": 2, "yeast": 1}


def friction(number):
    return Q_(number, "delta_degC")


def roll(**changes):
    return Formula.from_percents({name: percent(n) for name, n in {**ROLL, **changes}.items()})


def grams(weights):
    return {name: weight.to("g").magnitude for name, weight in weights.items()}


@pytest.fixture(scope="module")
def lesson():
    notebook = json.loads((KIT / "lessons/02-mix-by-ratio.ipynb").read_text(encoding="utf-8"))
    sources = ("".join(cell["source"]) for cell in notebook["cells"])
    return "\n".join([*sources, predictions_of(notebook)])


@pytest.fixture(scope="module")
def guide():
    return (KIT / "instructor/guide/02-mix-by-ratio.md").read_text(encoding="utf-8")


def test_forty_rolls_by_hand(lesson):
    """By hand: 40 x 70 = 2800 g; / 1.75 = 1600 g flour; 62 % = 992 g; 2 % = 32 g; sum 2800 g."""
    batch = grams(roll().weigh(total=40 * Q_(70, "g")))

    expected = {"flour": 1600, "water": 992, "butter": 112, "sugar": 48, "salt": 32, "yeast": 16}
    assert expected == pytest.approx(batch)
    assert 175 == roll().total_percent.magnitude
    assert 35 == round(roll().percents_of_total["water"].magnitude)
    assert 70 == pytest.approx(2800 * 1.75 / 70)
    assert "2800 g ÷ 1.75 = 1600 g" in lesson and "only about 35 %" in lesson
    assert "62 % of 1600 g is 992 g, salt 2 % is 32 g" in lesson and "for 70 rolls" in lesson


def test_the_wetter_dough_by_hand(lesson):
    """By hand: 193 %; 2800 / 1.93 = 1450.8 g flour; 2 % of it is 29 g."""
    wetter = grams(roll(water=80).weigh(total=Q_(2800, "g")))

    assert (1451, 29) == (round(wetter["flour"]), round(wetter["salt"]))
    assert "+ 1 = 193 %" in lesson
    assert "÷ 1.93 = 1451 g" in lesson and "29 g and no longer 32 g" in lesson


def test_two_to_one_by_weight_and_by_cups_by_hand(lesson):
    """By hand: 333 / 667 = 50 %; 237 / (2 x 137) = 86.5 %, and 274 + 237 g is the demonstration."""
    mix = {"bread flour": 2, "water": 1}
    by_weight = grams(split(Q_(1, "kg"), mix))
    by_cups = grams(split(Q_(1, "kg"), mix, by="volume"))

    assert 0.5 == pytest.approx(by_weight["water"] / by_weight["bread flour"])
    assert 0.865 == pytest.approx(by_cups["water"] / by_cups["bread flour"], abs=0.0005)
    assert (667, 333) == (round(by_weight["bread flour"]), round(by_weight["water"]))
    assert "237 ÷ 274 = 86 %" in lesson and "333 ÷ 667 = 50 %" in lesson


@pytest.mark.parametrize(
    ("name", "grams_a_cup"),
    [("bread flour", 137), ("water", 237), ("olive oil", 216), ("cider vinegar", 238)],
)
def test_the_cups_of_the_lesson_are_the_usda_s(name, grams_a_cup, lesson):
    """USDA SR28 (2015), weight of a US cup: seen."""
    assert grams_a_cup == pytest.approx(weight_of(Q_(1, "us_cup"), name).magnitude)
    assert f"{grams_a_cup} g" in lesson


def test_the_cups_of_the_drill_and_the_set_are_the_usda_s():
    """USDA SR28 (2015): sugar 200 g, honey 339 g, water 237 g a US cup."""
    for name, expected in (("granulated sugar", 200), ("honey", 339), ("water", 237)):
        assert expected == pytest.approx((density_of(name) * Q_(1, "us_cup")).to("g").magnitude)
    assert "200 g" in MIXING["parts by cups"].text and "237 g" in MIXING["parts by cups"].text


def test_oil_and_vinegar_come_closest():
    """What the student is asked to predict: the gap at 2 : 1 in a kilo is the smallest there."""
    mixes = ("flour to water", "sugar to water", "honey to water", "oil to vinegar")
    rows = {mix: parts(mix, 2, 1000)["amounts"] for mix in mixes}
    gaps = {mix: by_cups[0] - by_weight[0] for mix, (by_weight, by_cups) in rows.items()}

    assert "oil to vinegar" == min(gaps, key=lambda mix: abs(gaps[mix]))
    assert gaps["honey to water"] > 0 > gaps["flour to water"]


def test_the_water_by_hand(lesson):
    """By hand: 3 x 25 = 75; 75 - (21 + 21 + 9) = 24 °C. Two warmer: 4 colder; 1 cooler: 3."""
    start = water_temperature(celsius(25), celsius(21), celsius(21), friction(9))
    warm_day = water_temperature(celsius(25), celsius(23), celsius(23), friction(9))
    cooler = water_temperature(celsius(24), celsius(21), celsius(21), friction(9))

    assert (24, 20, 21) == tuple(
        pytest.approx(each.magnitude) for each in (start, warm_day, cooler)
    )
    assert "75 − (21 + 21 + 9) = 24 °C" in lesson


def test_the_american_card_by_hand(lesson):
    """By hand: 16 °F of difference is 16 / 1.8 = 8.9 °C; as a point (16 - 32) / 1.8 = -8.9 °C."""
    assert 8.9 == pytest.approx(Q_(16, "delta_degF").to("delta_degC").magnitude, abs=0.05)
    assert -8.9 == pytest.approx(Q_(16, "degF").to("degC").magnitude, abs=0.05)
    assert "16 ÷ 1.8 = 8.9 °C" in lesson and "you get −8.9 °C" in lesson


def test_the_friction_by_hand(lesson):
    """By hand: 3 x 26 = 78; 78 - (24 + 22 + 23) = 9 °C."""
    found = friction_factor(celsius(26), celsius(24), celsius(22), celsius(23))

    assert 9 == pytest.approx(found.magnitude)
    assert "78 − (24 + 22 + 23) = 9 °C" in lesson


def test_the_ice_by_hand():
    """By hand: 992 g, 18 to 12 °C: 4.19 x 6 / (333.5 + 4.19 x 18) = 0.0615; 61 g, rest 931 g."""
    cold = ice_for(Q_(992, "g"), wanted=celsius(12), tap=celsius(18))

    assert 61 == pytest.approx(992 * 25.14 / 408.92, abs=0.05)
    assert (61, 931) == (round(cold["ice"].magnitude), round(cold["water"].magnitude))


def test_milk_is_not_all_water(lesson):
    """By hand: 60 % x 0.88 = 52.8 %."""
    dough = Formula.from_percents(flour=percent(100), milk=percent(60))

    assert 52.8 == pytest.approx(dough.hydration_with({"milk": percent(88)}).magnitude)
    assert "60 % of milk is 52.8 % of water" in lesson


def test_water_carries_more_than_twice_the_heat_of_flour():
    """Bread flour of USDA SR28 (20083, from memory): 13.4 water, 12 protein, 1.7 fat, 72.5 carb."""
    flour = Food(
        water=percent(13.4), protein=percent(12), fat=percent(1.7), carbohydrate=percent(72.4),
        fibre=percent(0), ash=percent(0.5),
    )  # fmt: skip

    assert 4.18 / flour.specific_heat(celsius(20)).to("kJ/kg/K").magnitude > 2


def test_the_roll_panel_says_the_hand_calculation():
    """By hand: 24 x 70 = 1680 g; / 1.75 = 960 g; 62 % = 595 g; 2 % = 19 g; slip: 24 x 1.75 = 42."""
    panel = roll_dough_panel()
    panel.controls["rolls"].value = 24

    assert "24 rolls of 70 g are 1.68 kg (3.7 lb) of dough. The percents add to 175 %." in words(
        panel
    )
    assert "Flour 960 g, water 595 g, salt 19 g, yeast 9.6 g." in words(panel)
    assert "62 % of the flour, and 35.4 % of the dough" in words(panel)
    assert "weighs 1680 g of flour, and has dough for 42 rolls" in words(panel)


def test_the_parts_panel_says_the_hand_calculation():
    """By hand: 3 : 1 of sugar and water in 800 g: 600; by cups 800 x 600 / 837 = 573.5 g."""
    panel = parts_panel()
    panel.controls["mix"].value = "sugar to water"
    panel.controls["first_parts"].value = 3.0
    panel.controls["total_g"].value = 800

    assert "By weight: 600 g of granulated sugar and 200 g of water." in words(panel)
    assert "By cups: 573 g of granulated sugar and 227 g of water" in words(panel)
    assert "that is 27 g less granulated sugar" in words(panel)


def test_the_water_panel_says_the_hand_calculation():
    """By hand: 75 - (27 + 27 + 9) = 12 °C; ice of a kilo from 18 °C: 61 g; 9 / 3 = 3 °C."""
    panel = dough_water_panel()
    panel.controls["bakehouse_C"].value = 27

    assert "wants a sum of 3 × 25 = 75" in words(panel)
    assert "make 63 of it. So the water is 12 °C (53.6 °F)" in words(panel)
    assert "61 g of each kilo of it is crushed ice" in words(panel)
    assert "comes out 3 °C too warm" in words(panel)


def test_the_water_panel_says_when_no_water_will_do():
    """By hand: 66 - (32 + 32 + 9) = -7 °C; 84 - (14 + 14 + 9) = 47 °C, above 45."""
    panel = dough_water_panel()
    panel.controls["bakehouse_C"].value, panel.controls["target_C"].value = 32, 22.0
    cold = words(panel)
    panel.controls["bakehouse_C"].value, panel.controls["target_C"].value = 14, 28.0

    assert "would have to be -7 °C: no water will do. Cool the flour" in cold
    assert "would have to be 47 °C: no water will do. Yeast is sure of 45 °C" in words(panel)


BY_HAND = (
    ("flour for a dough", {"dough": Q_(2.8, "kg"), "percents": percent(175)}, "1.6 kg"),
    ("salt for a dough", {"flour": Q_(2.5, "kg"), "water": percent(60), "salt": percent(2)},
     "50 g"),
    ("percent of flour", {"flour": Q_(1.6, "kg"), "butter": Q_(400, "g")}, "25 %"),
    ("parts by weight", {"total": Q_(1200, "g"), "flour": Q_(3, "count"),
                         "butter": Q_(2, "count")}, "400 g"),
    ("parts by cups", {"total": Q_(1274, "g"), "cups": Q_(2, "count")}, "800 g"),
    ("dough water", {"target": celsius(25), "flour": celsius(20), "room": celsius(22),
                     "friction": friction(9)}, "24 °C"),
    ("mixer friction", {"dough": celsius(26), "water": celsius(24), "flour": celsius(22),
                        "room": celsius(23)}, "9 °C"),
    ("friction from a card", {"target": celsius(25), "bakehouse": celsius(20),
                              "friction": Q_(18, "delta_degF")}, "25 °C"),
)  # fmt: skip


@pytest.mark.parametrize(("name", "numbers", "expected"), BY_HAND, ids=[row[0] for row in BY_HAND])
def test_a_drill_by_hand(name, numbers, expected):
    """2.8/1.75; 2.5 kg x 2 %; 400/1600; 1200 x 2/6; 400 of 637; 75-51; 78-69; 75-40-10."""
    question = {**MIXING, **WARMTH}[name].question

    assert expected == say(question.right(numbers))
    assert "right" == question.judge(expected, numbers).outcome


@pytest.fixture(scope="module")
def questions():
    return load_key(key_notebook("02-mix-by-ratio")).sheet.questions


SET_BY_HAND = (
    # 40 x 70 = 2800 g; 100 + 62 + 7 + 3 + 2 + 1 = 175 %
    ("q1", {"rolls": Q_(40, "count"), "piece": Q_(70, "g"), "water": percent(62),
            "butter": percent(7), "sugar": percent(3), "salt": percent(2), "yeast": percent(1)},
     "1.6 kg"),
    ("q2", {"q1": Q_(1.6, "kg"), "salt": percent(2)}, "32 g"),
    # 2.6 + 0.4 = 3 kg; 1.95 / 3
    ("q3", {"white": Q_(2.6, "kg"), "whole": Q_(400, "g"), "poured": Q_(1.95, "kg")}, "65 %"),
    # 678 g honey to 237 g water is 915 g
    ("q4", {"glaze": Q_(915, "g"), "cups": Q_(2, "count")}, "678 g"),
    # 3 x 26.5 - 67
    ("q5", {"came_out": celsius(26.5), "went_in": celsius(22), "flour_then": celsius(22),
            "room_then": celsius(23)}, "12.5 °C"),
    # 77 °F is 25 °C; 75 - 23 - 25 - 12.5
    ("q6", {"target": Q_(77, "degF"), "flour": celsius(23), "room": celsius(25),
            "q5": friction(12.5)}, "14.5 °C"),
)  # fmt: skip


@pytest.mark.parametrize(("question", "known", "expected"), SET_BY_HAND)
def test_a_question_of_the_set_by_hand(question, known, expected, questions):
    """Each line of SET_BY_HAND says how."""
    assert expected == say(questions[question].right(known))


def test_a_slip_in_the_friction_does_not_cost_the_water_too(questions):
    """Follow-through: 4.2 °C of rise taken for the friction, then 75 - 48 - 4.2 = 22.8 °C."""
    known = dict(SET_BY_HAND[5][1])
    verdict = questions["q6"].judge("22.8 °C", known, own={"q5": friction(4.2)})

    assert ("follow-through", 3) == (verdict.outcome, verdict.points)


def test_the_bench_of_the_guide_by_hand(guide, lesson):
    """By hand: a quarter of 2800 g is 700 g, ten rolls; 1600 / 4 = 400 g flour, and so on."""
    bench = grams(roll().weigh(total=Q_(700, "g")))

    for name, expected in (("flour", 400), ("water", 248), ("butter", 28), ("sugar", 12),
                           ("salt", 8)):  # fmt: skip
        assert expected == pytest.approx(bench[name])
        assert f"{expected} g {name}" in guide
    assert 4 == pytest.approx(bench["yeast"])
    assert 474 == 200 + 2 * 137
    assert "700 g of dough" in guide and "(474 g)" in guide and "10 rolls: a quarter" in lesson
