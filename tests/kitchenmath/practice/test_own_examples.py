"""What the kit gives as an example can be typed: in its messages, its sets and its benches."""

import json
import re

import pytest
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.bench import BENCHES
from kitchenmath.conventions import conventions_of, countries
from kitchenmath.practice.amount_kind import AmountKind
from kitchenmath.practice.answer_look import look_over
from kitchenmath.practice.question_kinds import ANSWER_KINDS, answer_kind
from kitchenmath.recipes import read_recipe, recipe_text
from kitchenmath.units import Q_, read, say
from kitchenmath.units.registry import KINDS

# As a set's text gives them: `"fish, egg"`, and a few words that are no answer.
EXAMPLE = re.compile(r'`"([^"`]+)"`')


@pytest.mark.parametrize("country", countries())
@pytest.mark.parametrize("kind", KINDS)
def test_the_example_of_a_kind_is_read_and_what_is_said_of_it_is_read_again(kind, country):
    """“25 cm² is asked for”: then 25 cm² is an answer, and so is the kit's own way to say it."""
    asked = AmountKind(kind, conventions_of(country))
    value = asked.read(asked.example)

    assert value.magnitude == pytest.approx(asked.read(say(value)).magnitude)
    assert "there" == look_over(asked.example, kind, college=asked.college).state


@pytest.mark.parametrize("kind", sorted(ANSWER_KINDS))
def test_the_example_of_an_added_kind_is_read(kind):
    """A list of lengths, a probe's log, a moment, a choice, a plan: what their messages say."""
    sentence = look_over(answer_kind(kind).example, kind).sentence

    assert sentence.startswith(("read as", "Plan"))


@pytest.mark.parametrize("country", countries())
@pytest.mark.parametrize("set_id", set_ids())
def test_what_a_set_gives_as_an_example_is_an_answer(set_id, country):
    """Such as `"165 °C"` below a dial: the set page shows it in the empty field."""
    key = key_notebook(set_id, conventions_of(country))
    sheet = load_key(key, tried=()).sheet
    texts = {cell["id"]: "".join(cell["source"]) for cell in json.loads(key)["cells"]}
    refused = [
        (question, example, look_over(example, kind, plausible, sheet.college).sentence)
        for question, (kind, plausible) in sheet.looked.items()
        for example in EXAMPLE.findall(texts[f"{question}-text"])
        if not _is_answer(example, kind, plausible, sheet.college)
    ]

    assert [] == refused


def _is_answer(example, kind, plausible, college):
    """There; of several readings the example shows three, and is read as three."""
    look = look_over(example, kind, plausible, college)
    return look.state == "there" or (kind == "readings" and look.sentence.startswith("read as 3"))


def test_what_a_bench_gives_as_an_example_is_read():
    """“Type it such as 55 mL.”"""
    for bench in BENCHES.values():
        for box in bench.boxes.values():
            assert box.read(box.example) is not None


@pytest.mark.parametrize("line", ["2 kg celeriac", "200 g butter"])
def test_what_a_recipe_gives_as_an_example_is_an_ingredient(line):
    """“Type one a line, such as “2 kg celeriac”.”"""
    assert [line] == recipe_text(read_recipe(f"Brunoise\nserves 4\n{line}")).splitlines()[-1:]


@pytest.mark.parametrize(
    ("typed", "number", "unit"),
    [
        ("25 cm²", 25, "cm**2"), ("25 cm2", 25, "cm**2"), ("25 cm^2", 25, "cm**2"),
        ("25 sq cm", 25, "cm**2"), ("25 square centimetres", 25, "cm**2"), ("4 in²", 4, "in**2"),
        ("0.5 m³", 0.5, "m**3"), ("500 cubic cm", 500, "mL"), ("1.4e-7 m²/s", 1.4e-7, "m**2/s"),
        ("20 W/(m² K)", 20, "W/m**2/K"), ("1030 kg/m³", 1.03, "g/mL"),
        ("1.03 g per mL", 1.03, "g/mL"),
    ],
)  # fmt: skip
def test_areas_solids_and_what_is_made_of_them_are_read(typed, number, unit):
    """One square centimetre is written in five ways; 500 cubic centimetres are 500 mL."""
    assert number == pytest.approx(read(typed).to(unit).magnitude)


@pytest.mark.parametrize("typed", ["2 in 3", "25 cm 2", "4 in 2", "1 m 2"])
def test_a_number_behind_a_length_is_no_power_of_it(typed):
    """“2 in 3” is no volume of 2 cubic inches."""
    assert "unreadable" == look_over(typed, "area").state


@pytest.mark.parametrize(
    ("unit", "said"),
    [("cm**2", "2 cm²"), ("W/m**2/K", "2 W/m²K"), ("kJ/kg/K", "2 kJ/kgK"), ("mm**3", "2 mm³")],
)
def test_powers_are_written_as_a_cook_reads_them(unit, said):
    """Never “2 centimeter ** 2”."""
    assert said == say(Q_(2, unit))
