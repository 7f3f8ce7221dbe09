"""Lesson 8's drills: right answers by hand, and slips told apart in every round."""

import itertools

import pytest

from kitchenmath.drills.resting import DRILLS as RESTING
from kitchenmath.drills.resting import HeldCore
from kitchenmath.drills.warming import DRILLS as WARMING
from kitchenmath.units import Q_, say

BOOK = {**WARMING, **RESTING}


def every_draw(choices):
    """All the numbers that a question may ask for."""
    for values in itertools.product(*(choice.values for choice in choices.values())):
        yield dict(zip(choices, values, strict=True))


@pytest.mark.parametrize("drill", BOOK.values(), ids=BOOK)
def test_in_every_possible_round_of_a_drill_slips_keep_clear_of_the_right_answer(drill):
    """More than twice the tolerance apart, and the right answer in three figures is right."""
    question = drill.question
    for known in every_draw(drill.choices):
        right = question.right(known)
        allowed = question.tolerance.around(right, of_percent=question.kind == "percent")
        for slip in question.slips:
            number = question.slip_value(slip, known).to(right.units)
            assert abs(number.magnitude - right.magnitude) > 2 * allowed
        assert question.judge(say(right, 3), known).outcome == "right"


@pytest.mark.parametrize(
    ("drill", "known", "answer"),
    [
        ("thickness squared",
         {"time": Q_(12, "min"), "old": Q_(20, "mm"), "new": Q_(30, "mm")}, 27),
        ("thickness for the clock",
         {"old": Q_(40, "mm"), "time": Q_(40, "min"), "wanted": Q_(10, "min")}, 20),
        ("share of the way",
         {"start": Q_(10, "degC"), "core": Q_(45, "degC"), "bath": Q_(60, "degC")}, 70),
        ("the gap halves",
         {"half": Q_(10, "min"), "gap": Q_(16, "delta_degC"), "left": Q_(2, "delta_degC")}, 30),
        ("evening out",
         {"core": Q_(48, "degC"), "mean": Q_(65, "degC"), "surface": Q_(72, "degC")}, 17),
        ("when to pull",
         {"pulled": Q_(54, "degC"), "peak": Q_(60, "degC"), "wanted": Q_(65, "degC")}, 59),
        ("short of the limit", {"probe": Q_(118, "degF"), "limit": Q_(145, "degF")}, 15),
        ("still to hold", {"core": HeldCore(3), "held": Q_(10, "min")}, 46),
    ],
)  # fmt: skip
def test_a_drill_by_hand(drill, known, answer):
    """12 x 1.5²; 40 x √¼; 35 / 50; 16, 8, 4, 2; 65 - 48; 65 - 6; 27 / 1.8; 133 °F asks 56 min."""
    assert BOOK[drill].question.right(known).magnitude == pytest.approx(answer)
