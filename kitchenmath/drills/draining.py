"""Drills of lesson 6 on what a base holds and how it drains: Brix, and half out."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, part_of, steps
from kitchenmath.units import Q_

BETWEEN = Q_(3, "min")  # two readings of the jug


def _share(part):
    return Q_(100 * part.to("").magnitude, "percent")


BASE_BRIX = Drill(
    Question(
        "Brix of a base",
        "percent",
        1,
        Within(Q_(0.5, "percent"), "a hand refractometer shows half a degree"),
        lambda cider, own, sugar: _share((cider * own + sugar) / (cider + sugar)),
        (
            Slip(
                "forgot the fruit",
                lambda cider, sugar: _share(sugar / (cider + sugar)),
                "You counted the sugar that you weighed in. The cider was sweet before.",
            ),
            Slip(
                "over the cider",
                lambda cider, own, sugar: _share((cider * own + sugar) / cider),
                "You divided by the cider. The sugar belongs to the base too.",
            ),
            Slip(
                "the added sugar over the cider",
                lambda cider, sugar: _share(sugar / cider),
                "That is the sugar weighed in, in percent of the cider. Brix is all the sugar in "
                "the whole base.",
            ),
        ),
        working=(
            "the cider's own sugar: {cider} × {own} = {own_sugar}",
            "all the sugar: {own_sugar} + {sugar} = {all_sugar}",
            "the whole base: {cider} + {sugar} = {whole}",
            "{all_sugar} ÷ {whole} = {answer}",
        ),
        on_the_way={
            "own_sugar": lambda cider, own: (cider * own).to("g"),
            "all_sugar": lambda cider, own, sugar: (cider * own + sugar).to("g"),
            "whole": lambda cider, sugar: cider + sugar,
        },
    ),
    "A base is {cider} of cider, of which {own} is sugar, and {sugar} of sugar weighed in. How "
    "many degrees Brix has it? Type it as a percent.",
    "How many grams of sugar are in the pan, and how many grams of everything?",
    {
        "cider": steps(800, 1600, 100, "g", "cider"),
        "own": steps(11, 14, 1, "percent", "its own sugar"),
        "sugar": steps(120, 200, 10, "g", "sugar weighed in"),
    },
)

HALF_OUT = Drill(
    Question(
        "half out",
        "time",
        1,
        Within(Q_(15, "s"), "a look at the jug is no nearer"),
        lambda base, minute, before, after: (
            minute + BETWEEN * ((base / 2 - before) / (after - before)).to("").magnitude
        ),
        (
            Slip(
                "the reading before",
                lambda minute: minute,
                "This is the last reading before half. A part of the next three minutes comes on "
                "top.",
            ),
            Slip(
                "the reading after",
                lambda minute: minute + BETWEEN,
                "This is the first reading past half. It was half out before that.",
            ),
            Slip(
                "shared from the wrong end",
                lambda base, minute, before, after: (
                    minute + BETWEEN * ((after - base / 2) / (after - before)).to("").magnitude
                ),
                "The share is laid on from the wrong end. How much was missing at the reading "
                "before?",
            ),
        ),
        working=(
            "half of the base: {base} ÷ 2 = {half}",
            "what was missing: {half} − {before} = {missing}",
            "what ran in 3 min: {after} − {before} = {ran}",
            "{minute} + 3 min × {missing} ÷ {ran} = {answer}",
        ),
        on_the_way={
            "half": lambda base: base / 2,
            "missing": lambda base, before: base / 2 - before,
            "ran": lambda before, after: after - before,
        },
    ),
    "The foam in a jug holds {base} of base. At {minute}, {before} are out; three "
    "minutes later {after}. When was half of it out?",
    "How much was missing to half, and how much ran in the three minutes?",
    {
        "base": steps(60, 80, 10, "mL", "base in the foam"),
        "minute": steps(5, 9, 1, "min", "the reading before half"),
        "before": part_of("base", 43, 45, 1, Q_(1, "mL"), "out by then"),
        "after": part_of("base", 63, 66, 1, Q_(1, "mL"), "out three minutes later"),
    },
)

DRILLS = {drill.question.id: drill for drill in (BASE_BRIX, HALF_OUT)}
