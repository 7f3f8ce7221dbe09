"""Lesson 1: its numbers worked by hand, what its panels say, and every draw of its set."""

import itertools
import json
from pathlib import Path

import pytest
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key, source

from kitchenmath.heat import energy_to_boil_away
from kitchenmath.panels.measuring import CARD, pan_panel, scale_panel, whose_cup_panel
from kitchenmath.ratios import conversion_factor, scale
from kitchenmath.safety import cooling_rules
from kitchenmath.units import Q_, Unreadable, read, say, weight_of
from tests.helpers.lessons import predictions_of
from tests.helpers.panels import words

KIT = Path(__file__).parents[2]
LESSON = json.loads((KIT / "lessons/01-measure-and-scale.ipynb").read_text(encoding="utf-8"))
PROSE = "\n".join(source(c) for c in LESSON["cells"] if c["cell_type"] == "markdown")
PROSE += predictions_of(LESSON)
GUIDE = (KIT / "instructor/guide/01-measure-and-scale.md").read_text(encoding="utf-8")
TONIGHT = {"old": (4, Q_(60, "g")), "new": (40, Q_(75, "g"))}


def printed(cell_id):
    """What a cell of the lesson printed when it was stored."""
    cell = next(cell for cell in LESSON["cells"] if cell["id"] == cell_id)
    return "".join(line for output in cell["outputs"] for line in output["text"])


def test_the_largest_cup_holds_42_percent_more_than_the_smallest():
    """By hand: 284 / 200 = 1.42; an Australian tablespoon is 20 / 15, a third more."""
    cups = sorted(read("1 cup", each).to("mL").magnitude for each in ("us", "uk", "au", "jp"))

    assert "42 % more" in PROSE and "284 ÷ 200 = 1.42" in PROSE
    assert cups[-1] / cups[0] == pytest.approx(1.42, abs=0.005)
    assert (read("1 tbsp", "au") / read("1 tbsp", "jp")).to("").magnitude == pytest.approx(4 / 3)


def test_a_cup_weighs_from_137_to_339_g_and_flour_less_than_five_ounces():
    """USDA SR28: bread flour 137 g, honey 339 g a cup; 137 / 28.35 = 4.83 oz."""
    flour, honey = (weight_of(Q_(1, "us_cup"), what) for what in ("bread flour", "honey"))

    assert "from 137 g to 339 g" in PROSE and "less than 5 oz" in PROSE
    assert (say(flour, 3), say(honey, 3)) == ("137 g", "339 g")
    assert flour.to("oz").magnitude == pytest.approx(4.83, abs=0.01)
    assert (Q_(8, "us_fluid_ounce") / Q_(1, "us_cup")).to("").magnitude == pytest.approx(1)


def test_what_the_lesson_calls_unreadable_is_refused_with_what_to_type():
    """A number with two readings, a letter with two meanings, an amount that is none."""
    for typed in ("1,250 g", "4 c", "1 pinch"):
        with pytest.raises(Unreadable, match="type"):
            read(typed)


def test_the_factor_of_the_card_is_12_5():
    """By hand: 40 x 75 / (4 x 60) = 3000 / 240 = 12.5; 300 mL x 12.5 = 3750 mL."""
    factor = conversion_factor(**TONIGHT)

    assert "3000 ÷ 240 = 12.5" in PROSE and "300 mL × 12.5 = 3750 mL" in PROSE
    assert factor == pytest.approx(12.5)
    card = str(scale(CARD | {"simmering": Q_(20, "min")}, factor))
    assert "stock: 3750 mL" in card and "simmering: 20 min" in card


def test_the_card_of_the_lesson_is_the_panels():
    """The same lines, so that the numbers of cell and panel agree."""
    space = {}
    cell = next(cell for cell in LESSON["cells"] if cell["id"] == "card")
    exec(source(cell), {"Q_": Q_}, space)
    space["card"].pop("simmering")

    assert space["card"] == CARD


def test_a_point_has_a_32_in_it_and_a_step_has_none():
    """By hand: (350 - 32) / 1.8 = 176.7 °C; 45 / 1.8 = 25; 18 / 1.8 = 10 of step."""
    point, step = read("350 °F").to("degC"), Q_(45, "delta_degF").to("delta_degC")

    assert (point.magnitude, step.magnitude) == pytest.approx((176.67, 25), abs=0.01)
    assert Q_(18, "delta_degF").to("delta_degC").magnitude == pytest.approx(10)
    assert printed("point-and-step") == "177 °C is a point\n25 °C is a step\n"


def test_small_numbers_of_where_this_breaks():
    """By hand: 0.4 g x 12.5 = 5 g of yeast; 12.5 eggs are no whole number."""
    scaled = scale({"yeast": Q_(0.4, "g"), "egg": Q_(1, "count")}, 12.5)

    assert "0.4 g of yeast times 12.5 is 5 g" in PROSE
    assert scaled.amounts["yeast"].magnitude == pytest.approx(5)
    assert "no whole number" in scaled.look_again["egg"]


@pytest.mark.parametrize("text", [PROSE, GUIDE], ids=["lesson", "guide"])
def test_the_cooling_limit_is_the_food_codes(text):
    """FDA Food Code 3-501.14(A): 57 to 21 °C within 2 h, to 5 °C within 6 h in all."""
    first, second = cooling_rules("two-stage")

    assert (
        f"from {first['from_C']} °C ({first['from_F']} °F) to {first['to_C']} °C "
        f"({first['to_F']} °F) within {first['hours']} hours"
    ) in text.replace("From 57", "from 57")
    assert (
        f"to {second['to_C']} °C ({second['to_F']} °F) within {second['hours']} hours in all"
    ) in text


def test_the_cup_panel_says_the_hand_calculation():
    """British half a pint is 284.1 mL; 284.1 / 200 is 42 % more; 20 / 14.787 is 35 % more."""
    panel = whose_cup_panel()
    panel.typed.value = "1 cup"
    assert "By American measures “1 cup” is read as 1 US cup, 236.6 mL." in words(panel)
    assert "smallest (200 mL), the British one the largest (284.1 mL): 42 % more." in words(panel)
    assert "as in old books. A cup sold in Britain today is metric: 250 mL." in words(panel)
    panel.controls["country"].value = "Australian"
    panel.typed.value = "2 tbsp"

    assert "“2 tbsp” is read as 2 AU tbsp, 40 mL." in words(panel)
    assert "old books" not in words(panel)
    assert "American one is the smallest (29.57 mL), the Australian one" in words(panel)
    assert "(40 mL): 35 % more." in words(panel)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("300 g", "It is the same for all five countries."),
        ("1 gō", "there is no go among the us measures"),
        ("1 pint", "The American one is the smallest (473.2 mL), the British one the largest"),
        ("4", "A number alone has no unit"),
        ("-4 °C", "It is the same for all five countries."),
        ("0 g", "It is the same for all five countries."),
        ("1,250 g", "can be read in two ways"),
        ("<b>2</b>", "does not start with a number"),
        ("", "nothing is typed yet"),
    ],
)
def test_the_cup_panel_takes_whatever_is_typed(typed, said):
    """Never an error; what cannot be read is answered with what to type."""
    panel = whose_cup_panel()
    panel.typed.value = typed

    assert said in words(panel)
    assert "<b>" not in panel.words.value


def test_the_scale_panel_says_the_hand_calculation():
    """By hand: 12.5 x 300 mL = 3.75 L; 40 x 60 / 75 g fill 32 plates; 60 / 50 is 20 % more."""
    panel = scale_panel()
    assert "= 12.5." not in words(panel)  # that is asked above it
    panel.controls["covers"].value = 40
    assert "Factor: (40 × 75) ÷ (4 × 60) = 12.5." in words(panel)
    assert "300 mL on the card, 3.75 L to take." in words(panel)
    assert "Who forgets the size of the portion fills 32 plates of 40." in words(panel)
    panel.controls["portion_g"].value = 50
    assert "Who forgets the size of the portion makes 20 % too much." in words(panel)
    panel.controls["portion_g"].value = 60
    panel.controls["line"].value = "mustard"

    assert "Mustard: 10 g on the card, 100 g to take (multiplied; hold a quarter" in words(panel)
    assert "here the covers alone give the factor" in words(panel)


def test_the_pan_panel_says_the_hand_calculation():
    """By hand: 28 cm across is 615.8 cm²: 3000 / 615.8 = 4.9 cm, 205 cm² a litre.

    A quarter of 3 kg takes 0.75 x 2256 = 1692 kJ, at 1.5 kW 1128 s = 19 min; the card's quarter
    of 300 g at 0.5 kW 338 s = 6 min. 300 mL on 201.1 cm² stand 1.5 cm, 670 cm² a litre.
    """
    said = words(pan_panel())

    assert "40 covers are 3 L: 4.9 cm deep in a pan 28 cm across." in said
    assert "The card's 300 mL stands 1.5 cm deep." in said
    assert "Each litre has 205 cm² of open surface. On the card it has 670 cm²." in said
    assert "takes about 19 min with 1.5 kW getting in; the card's takes 6 min" in said


def test_the_pan_panel_knows_that_no_small_pan_is_that_deep():
    """The lesson's prediction: 3000 / 201.1 = 14.9 cm in the card's pan of 16 cm."""
    panel = pan_panel()
    assert "No saucepan" not in words(panel)
    panel.controls["pan_cm"].value = 16

    assert "3 L: 14.9 cm deep in a pan 16 cm across" in words(panel)
    assert "No saucepan of that width is so deep" in words(panel)


def test_ten_times_the_sauce_wants_more_heat_than_the_slider_has():
    """By hand: 10 x 0.5 kW = 5 kW; at the slider's end, 4 kW, 40 covers still take longer."""
    panel = pan_panel()
    panel.controls["heat_kw"].value = panel.controls["heat_kw"].max

    assert "10 × 0.5 kW = 5 kW, more than the slider has" in PROSE
    assert panel.controls["heat_kw"].max < 5
    assert "about 7 min with 4.0 kW getting in; the card's takes 6 min" in words(panel)


def test_forgetting_the_portion_costs_nothing_where_it_is_the_cards():
    """The lesson sends the student to find 60 g."""
    panel = scale_panel()
    panel.controls["portion_g"].value = 60

    assert "here the covers alone give the factor" in words(panel)


def test_the_demonstration_of_the_guide_by_hand():
    """0.1 kg x 2256 kJ/kg = 226 kJ; over 300 s that is 0.75 kW."""
    energy = energy_to_boil_away(Q_(100, "g"))

    assert "226 kJ" in GUIDE and "0.75 kW" in GUIDE
    assert energy.to("kJ").magnitude == pytest.approx(226, abs=0.5)
    assert (energy / Q_(5, "min")).to("kW").magnitude == pytest.approx(0.75, abs=0.005)


SHEET = load_key(key_notebook("01-measure-and-scale")).sheet


def draws(question):
    """Everything that a student's numbers for a question may be, with all that it builds on.

    Question 2 multiplies the answer to question 1, so the lightest and the heaviest flour do.
    """
    choices = SHEET.choices[question]
    own = [
        dict(zip(choices, drawn, strict=True))
        for drawn in itertools.product(*(each.values for each in choices.values()))
    ]
    if question != "q2":
        return own
    flours = sorted(SHEET.questions["q1"].right(drawn) for drawn in draws("q1"))
    return [{"q1": flour, **drawn} for flour in (flours[0], flours[-1]) for drawn in own]


@pytest.mark.parametrize("name", SHEET.questions)
def test_no_draw_of_the_set_brings_a_slip_near_the_right_answer(name):
    """At least two and a half tolerances away, and no two slips that give the same number."""
    question = SHEET.questions[name]
    for known in draws(name):
        right = question.right(known)
        for slip in question.slips:
            value = question.slip_value(slip, known).to(right.units)
            gap = abs(value.magnitude - right.magnitude)

            assert gap > 2.5 * question.tolerance.around(right)
            assert question.judge(say(value, 3), known).slips == (slip.name,)


@pytest.mark.parametrize("name", SHEET.questions)
def test_a_right_answer_is_right_however_a_cook_rounds_it(name):
    """To three figures, for every draw."""
    question = SHEET.questions[name]
    for known in draws(name):
        assert question.judge(say(question.right(known), 3), known).outcome == "right"


@pytest.mark.parametrize(
    ("name", "millilitres", "measure", "density"),
    [("q1", 240, "cups", "density"), ("q3", 30, "ounces", "heavy")],
    ids=["label cup", "label ounce"],
)
def test_the_round_measures_of_labels_are_right_as_the_set_says(
    name, millilitres, measure, density
):
    """21 CFR 101.9: a labelled cup is 240 mL and a fluid ounce 30 mL, 1.4 % more."""
    for known in draws(name):
        grams = known[measure].magnitude * millilitres * known[density].magnitude

        assert SHEET.questions[name].judge(f"{grams:.0f} g", known).outcome == "right"


@pytest.mark.parametrize("spoon", ["us_tablespoon", "metric_tablespoon"])
def test_either_tablespoon_of_another_country_is_the_same_slip(spoon):
    """14.8 mL or 15 mL for the Australian 20 mL."""
    for known in draws("q4"):
        spoons = Q_(known["spoons"].magnitude, spoon).to("mL")
        typed = say(spoons * (known["covers"] / known["serves"]).magnitude, 3)
        verdict = SHEET.questions["q4"].judge(typed, known)

        assert verdict.slips == ("tablespoon of another country",)
