"""Kinds of answer: what is accepted, how it is refused, and the unit in which it goes back."""

import pytest

from kitchenmath.errors import WrongKind
from kitchenmath.practice import Question, Within
from kitchenmath.practice.answer_look import look_over
from kitchenmath.practice.kinds import as_kind, with_example
from kitchenmath.units import Q_
from kitchenmath.units.saying import as_came


def question(kind, right, step):
    """A question with one right answer."""
    return Question("q1", kind, 1, Within(step), lambda: right)


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        ("6.27 L of water", "right"), ("6270 ml water", "right"), ("6.27 kg of water", "right"),
        ("6,27 litres of cold water", "right"), ("6.27 L", "unreadable"),
        ("6.27 L of cream", "unreadable"), ("6.6 L of water", "wrong"),
    ],
)  # fmt: skip
def test_water_is_weighed_by_its_litres_where_it_is_named(typed, outcome):
    """A litre of water is a kilo, near enough for any scale; of another liquid nothing is known."""
    water = question("weight", Q_(6.27, "kg"), Q_(50, "g"))

    assert outcome == water.judge(typed, {}).outcome


@pytest.mark.parametrize(
    ("typed", "kind", "asked"),
    [
        ("1030 °F", "temperature", "Is it 103 °F?"), ("103 °F", "temperature", ""),
        ("0.1 °C", "temperature", ""), ("5000 °C", "temperature", ""),
        ("0 min 100 °F; 5 min 1030 °F", "probe log", "Is it 103 °F?"),
    ],
)  # fmt: skip
def test_a_point_that_slipped_is_asked_about(typed, kind, asked):
    """1030 °F is 554 °C: no kitchen's, and a tenth of it is a bird on its way."""
    bounds = ("2 °C", "300 °C") if kind == "temperature" else None
    sentence = look_over(typed, kind, bounds).sentence

    assert asked in sentence
    assert ("Is it" in sentence) == bool(asked)


@pytest.mark.parametrize(
    ("kind", "right", "step", "typed", "told"),
    [
        # 2000 g / 453.59237 g = 4.409 lb
        ("weight", Q_(2, "kg"), Q_(50, "g"), "4.41 lb", "4.409 lb (2 kg)"),
        ("weight", Q_(2, "kg"), Q_(50, "g"), "1 lb", "4.409 lb (2 kg)"),
        ("weight", Q_(2, "kg"), Q_(50, "g"), "2 kg", "2 kg"),
        ("weight", Q_(2, "kg"), Q_(50, "g"), "lots", "2 kg"),
        ("weight", Q_(2, "kg"), Q_(50, "g"), "", "2 kg"),
        # A point: 63 x 1.8 + 32 = 145.4; a difference: 10 x 1.8 = 18, and never 50
        ("temperature", Q_(63, "degC"), Q_(1, "delta_degC"), "145 °F", "145.4 °F (63 °C)"),
        ("temperature difference", Q_(10, "delta_degC"), Q_(1, "delta_degC"), "18 °F",
         "18 °F (10 °C)"),
        # $11 a kilo is 11 x 0.45359 = $4.99 a pound
        ("money per weight", Q_(11, "dollar/kg"), Q_(0.1, "dollar/kg"), "$4.99 per lb",
         "$4.99 per lb ($11.00 per kg)"),
    ],
)  # fmt: skip
def test_the_right_answer_goes_back_in_the_student_s_unit(kind, right, step, typed, told):
    """Whether the answer was right or not; ours stands beside it."""
    assert question(kind, right, step).judge(typed, {}).right == told


@pytest.mark.parametrize(
    "odd", [float("inf"), float("nan"), 10**400, Q_(float("inf"), "kg"), Q_([1, 2], "kg"), True, []]
)
def test_what_is_no_amount_is_refused_with_what_to_type(odd):
    with pytest.raises(WrongKind, match=r'"4\.2 kg"'):
        as_kind(odd, "weight")


class Spiteful:
    """Fails when it is shown."""

    def __repr__(self):
        raise RuntimeError("no")


def test_whatever_a_cell_made_can_be_said():
    """Bounded, and never an error: a number of 6001 figures has no repr in Python."""
    assert as_came(Q_(4, "kg")) == "4 kg"
    assert as_came(Spiteful()) == "a “Spiteful”"
    assert as_came(10**6000) == "a “int”"
    assert len(as_came("k" * 1000)) <= 60


def test_an_example_is_added_where_none_of_the_kind_is_given():
    """Asked for money, a student is not left with "such as 4.2 kg" alone."""
    assert with_example("No.", "money") == 'No. Money is asked for, such as "$3.48".'
    assert with_example('Type "4.2 kg".', "weight") == 'Type "4.2 kg".'
