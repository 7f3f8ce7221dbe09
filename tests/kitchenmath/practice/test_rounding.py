"""Rounding as a kitchen does it: to the safe side it is right, too far it is close."""

import pytest

from kitchenmath.practice import Question, Slip, Within, in_words
from kitchenmath.units import Q_

ORDER = Within(Q_(50, "g"), "the scale shows no less", safe="up", to=Q_(0.1, "kg"))
BEGIN = Within(Q_(1, "min"), safe="down", to=Q_(5, "min"))
DOUBLED = Slip("took it twice", lambda: Q_(11.294, "kg"), "You took it twice.", worth=1)


def order(typed, tolerance=ORDER):
    """5.647 kg are to be ordered; 3 points."""
    asked = Question("q1", "weight", 3, tolerance, lambda: Q_(5.647, "kg"), (DOUBLED,))
    return asked.judge(typed, {})


@pytest.mark.parametrize(
    ("typed", "outcome", "points"),
    [
        ("5.647 kg", "right", 3),
        ("5.65 kg", "right", 3),
        ("5.7 kg", "right", 3),  # up to the next tenth of a kilo
        ("5645 g", "right", 3),  # 2 g are no rounding down: a tenth of the 50 g are 5 g
        ("5.6 kg", "slip", 1.5),  # 47 g short of the dish
        ("5.77 kg", "right", 3),  # the step after, where a rounding on the way led to it
        ("5.8 kg", "wrong", 0),  # 153 g more than needed, and no step of the scale
        ("11.294 kg", "slip", 1),
    ],
)
def test_an_order_is_rounded_up_and_never_down(typed, outcome, points):
    """By hand: 5.647 kg are asked for, and up to 100 g more are the safe side."""
    verdict = order(typed)

    assert (outcome, points) == (verdict.outcome, verdict.points)


def test_the_wrong_side_is_named():
    assert "You rounded down, and so it falls short. The safe side here is up." == in_words(
        order("5.6 kg")
    )
    assert "within 50 g, rounded up, the scale shows no less" == str(ORDER)


@pytest.mark.parametrize(("typed", "right"), [("97 min", True), ("95 min", True),
                                              ("98 min", False), ("90 min", False)])  # fmt: skip
def test_a_time_to_begin_is_rounded_down(typed, right):
    """97 min is the latest: to begin five earlier harms nobody, one later does."""
    asked = Question("q1", "time", 2, BEGIN, lambda: Q_(97, "min"))

    assert right == (asked.judge(typed, {}).outcome == "right")


@pytest.mark.parametrize(
    ("kind", "right", "step", "typed", "outcome"),
    [
        ("percent", Q_(12.28, "percent"), Q_(0.1, "percent"), "12 %", "close"),
        ("weight", Q_(735, "g"), Q_(1, "g"), "740 g", "close"),
        ("weight", Q_(27.8, "g"), Q_(0.5, "g"), "1 oz", "close"),
        ("weight", Q_(735, "g"), Q_(1, "g"), "741 g", "wrong"),  # nothing was rounded here
        ("weight", Q_(735, "g"), Q_(1, "g"), "700 g", "wrong"),  # 4.8 % is too far
        ("count", Q_(12.2, "count"), Q_(0.05, "count"), "12", "wrong"),
    ],
)
def test_a_right_way_rounded_too_far_is_close(kind, right, step, typed, outcome):
    """12.28 % to the whole percent is 12 %, 735 g to ten is 740 g, 27.8 g are an ounce (28.35)."""
    verdict = Question("q1", kind, 4, Within(step), lambda: right).judge(typed, {})

    assert outcome == verdict.outcome
    assert {"close": 3, "wrong": 0}[outcome] == verdict.points


def test_a_close_answer_hears_how_near_it_is_wanted():
    """As a drill says it too, whose text has no room for its step."""
    asked = Question("q1", "weight", 4, Within(Q_(1, "g")), lambda: Q_(735, "g"))

    assert "The way is right, and the number is rounded too far. Answer within 1 g." == in_words(
        asked.judge("740 g", {})
    )


def test_a_slip_is_told_before_a_close_answer():
    """A slip whose number it is, to the figures typed, is no rounding."""
    added = Slip("added one", lambda: Q_(740, "g"), "You added.", worth=1)
    asked = Question("q1", "weight", 4, Within(Q_(1, "g")), lambda: Q_(735, "g"), (added,))

    assert ("slip", 1) == (asked.judge("740 g", {}).outcome, asked.judge("740 g", {}).points)
