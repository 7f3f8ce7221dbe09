"""Drills of lesson 10 on the order: whole packs for the menu, and what they cost a cover."""

import math

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.choices import steps
from kitchenmath.units.registry import Q_

WHOLE = Within(Q_(0.05, "count"), "packs are whole")
NET = Q_(1, "kg")
BOTTLE = Q_(1, "L")


def _bottles(need):
    return (need / BOTTLE).to("").magnitude


COVER_COST = Drill(
    Question(
        "cost a cover",
        "money",
        1,
        Within(Q_(0.005, "dollar"), "to the cent"),
        lambda need, price, covers: math.ceil(_bottles(need)) * price / covers.magnitude,
        (
            Slip(
                "part of a bottle",
                lambda need, price, covers: _bottles(need) * price / covers.magnitude,
                "That is what goes into the pan. Tonight you pay for whole bottles.",
            ),
            Slip(
                "rounded down",
                lambda need, price, covers: math.floor(_bottles(need)) * price / covers.magnitude,
                "One bottle too few: a part of a bottle is a whole one on the bill.",
            ),
            Slip(
                "not shared out",
                lambda need, price: math.ceil(_bottles(need)) * price,
                "That is the cost of the batch. Share it among the covers.",
            ),
        ),
        working=(
            "whole bottles: {need} ÷ 1 L, rounded up = {bottles}",
            "what they cost: {bottles} × {price} = {bill}",
            "{bill} ÷ {covers} = {answer}",
        ),
        on_the_way={
            "bottles": lambda need: Q_(math.ceil(_bottles(need)), "count"),
            "bill": lambda need, price: math.ceil(_bottles(need)) * price,
        },
    ),
    "{covers} covers need {need} of cider. A bottle of 1 L costs {price}, and no other dish takes "
    "the rest. What does the cider cost a cover?",
    "Whole bottles first, then money, then covers.",
    {
        "need": steps(1.2, 2.7, 0.3, "L", "cider"),
        "price": steps(3, 5, 0.2, "dollar", "a bottle"),
        "covers": steps(20, 28, 2, "count", "covers"),
    },
)


def _nets(covers, portion, yield_):
    """Nets of 1 kg, before rounding."""
    return (covers.magnitude * portion / yield_ / NET).to("").magnitude


def _unless_same(number, right):
    """A slip's number, or None where it makes no difference."""
    return None if abs(number - right) < 0.15 else number


MENU_PACKS = Drill(
    Question(
        "packs for the menu",
        "count",
        1,
        WHOLE,
        lambda covers, portion, yield_: math.ceil(_nets(covers, portion, yield_) - 1e-9),
        (
            Slip(
                "trim forgotten",
                lambda covers, portion, yield_: _unless_same(
                    math.ceil((covers.magnitude * portion / NET).to("").magnitude - 1e-9),
                    math.ceil(_nets(covers, portion, yield_) - 1e-9),
                ),
                "That is enough on the plates, and nothing for the peel. Divide by the yield.",
            ),
            Slip(
                "part of a net",
                lambda covers, portion, yield_: _unless_same(
                    _nets(covers, portion, yield_),
                    math.ceil(_nets(covers, portion, yield_) - 1e-9),
                ),
                "Nets are whole. A part of one means one more.",
            ),
            Slip(
                "rounded down",
                lambda covers, portion, yield_: _unless_same(
                    math.floor(_nets(covers, portion, yield_) + 1e-9),
                    math.ceil(_nets(covers, portion, yield_) - 1e-9),
                ),
                "You rounded down, and the last covers go without.",
            ),
        ),
        working=(
            "on the plates: {covers} × {portion} = {plated}",
            "to buy: {plated} ÷ {yield_} = {bought}",
            "{bought} ÷ 1 kg, rounded up = {answer}",
        ),
        on_the_way={
            "plated": lambda covers, portion: (covers.magnitude * portion).to("kg"),
            "bought": lambda covers, portion, yield_: (covers.magnitude * portion / yield_).to(
                "kg"
            ),
        },
    ),
    "{covers} covers get {portion} of celeriac brunoise each. The yield is {yield_}. Celeriac "
    "comes in nets of 1 kg. How many nets?",
    "Grams on the plates, then grams to buy, then nets.",
    {
        "covers": steps(24, 60, 4, "count", "covers"),
        "portion": steps(50, 75, 5, "g", "on each plate"),
        "yield_": steps(55, 72, 1, "percent", "yield"),
    },
)

DRILLS = {drill.question.id: drill for drill in (COVER_COST, MENU_PACKS)}
