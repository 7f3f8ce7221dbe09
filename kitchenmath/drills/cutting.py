"""Drills of lesson 3: named sizes, squaring off, whole pieces, evenness and time."""

import math

from kitchenmath.cuts import CUTS, cooking_time_factor, squared_yield
from kitchenmath.drills import Drill, trays
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.choices import steps
from kitchenmath.practice.drawn import cut_names
from kitchenmath.units import Q_

WHOLE = Within(Q_(0.05, "count"), "pieces are whole")
DICE_MM = CUTS["small dice"].dimensions["edge"].to("mm").magnitude


def _ratio(one, other):
    return (one / other).to("").magnitude


def _edge(cut):
    return CUTS[cut].thinnest


def _length(cut):
    return CUTS[cut].dimensions["length"]


def _dice(size):
    """Whole small dice along an edge; the edges of the drill always leave a rest."""
    return math.floor(size.to("mm").magnitude / DICE_MM)


def _by_volume(length, side):
    return round((length * side * side).to("mm**3").magnitude / DICE_MM**3)


def _over_target(sd, mean):
    """The spread over the 3 mm asked for; None where that is hardly another number."""
    over_target = 100 * _ratio(sd, _edge("brunoise"))
    return Q_(over_target, "percent") if abs(over_target - 100 * _ratio(sd, mean)) > 1.2 else None


CUBES_IN_A_STRIP = Drill(
    Question(
        "cubes in a strip",
        "count",
        1,
        WHOLE,
        lambda strip, cut: _ratio(strip, cut.sized().thinnest),
        (
            Slip(
                "as elsewhere",
                lambda strip, cut: _ratio(strip, Q_(5, "mm") - cut.sized().thinnest),
                "You cut at another size. Sources call 2 mm and 3 mm a brunoise; here the sizes of "
                "this class count.",
            ),
            Slip(
                "as fine brunoise",
                lambda strip: _ratio(strip, _edge("fine brunoise")),
                "That is fine brunoise, 1.5 mm. A brunoise is larger.",
            ),
            Slip(
                "as small dice",
                lambda strip: _ratio(strip, _edge("small dice")),
                "That is small dice, 6 mm. A brunoise is half of it or less.",
            ),
        ),
        working=(
            "the edge: {cut}, by the sizes of this class = {edge}",
            "{strip} ÷ {edge} = {answer}",
        ),
        on_the_way={"edge": lambda cut: cut.sized().thinnest},
    ),
    "A strip of carrot is squared for {cut} and {strip} long. "
    "How many cubes does it give, by the sizes of this class?",
    "First the name: how many millimetres is the edge of a brunoise?",
    {
        "strip": steps(60, 150, 6, "mm", "strip"),
        "cut": cut_names(("brunoise",), "the cut"),
    },
)

STICKS_IN_A_LINE = Drill(
    Question(
        "sticks in a line",
        "length",
        1,
        Within(Q_(5, "mm"), "sticks do not lie closer than that"),
        lambda sticks: sticks.magnitude * _length("julienne"),
        (
            Slip(
                "side by side",
                lambda sticks: sticks.magnitude * _edge("julienne"),
                "You used the side, 3 mm. End to end the length counts.",
            ),
            Slip(
                "as bâtonnet",
                lambda sticks: sticks.magnitude * _length("bâtonnet"),
                "That is the length of a bâtonnet, 50 mm. A julienne is 40 mm long here.",
            ),
            Slip(
                "as jardinière",
                lambda sticks: sticks.magnitude * _length("jardinière"),
                "That is the length of a jardinière, 25 mm. A julienne is 40 mm long here.",
            ),
        ),
        working=(
            "the length: a julienne, by its card = {length}",
            "{sticks} × {length} = {answer}",
        ),
        on_the_way={
            "length": lambda: _length("julienne"),
        },
    ),
    "{sticks} sticks of julienne lie end to end. How long is the line?",
    "A stick has two sizes: 3 mm square, and its length.",
    {"sticks": steps(3, 14, 1, "count", "sticks")},
)

SQUARED_SHARE = Drill(
    Question(
        "share left when squared",
        "percent",
        1,
        Within(Q_(1, "percent"), "no carrot is truer than that"),
        lambda round_, side: squared_yield("cylinder", diameter=round_, side=side).yield_,
        (
            Slip(
                "square in a square",
                lambda round_, side: (side / round_) ** 2,
                "You took the carrot for a square. The area of a round is 0.785 × diameter².",
            ),
            Slip(
                "side over diameter",
                lambda round_, side: side / round_,
                "You compared widths. Weight goes with the area: square the side.",
            ),
            Slip(
                "the trim",
                lambda round_, side: squared_yield("cylinder", round_, side=side).trim,
                "That is the trim. What is left is the rest of it.",
            ),
        ),
        working=(
            "side over diameter: {side} ÷ {round_} = {ratio}",
            "its square: {ratio} × {ratio} = {square}",
            "{square} ÷ 0.785 = {answer}",
        ),
        on_the_way={
            "ratio": lambda round_, side: Q_(_ratio(side, round_), "count"),
            "square": lambda round_, side: Q_(_ratio(side, round_) ** 2, "count"),
        },
    ),
    "A straight peeled carrot, {round_} across, is squared off to {side}. "
    "What percentage of it is left?",
    "The square is side × side, the round 0.785 × diameter × diameter. Compare the two.",
    {
        "round_": steps(28, 40, 2, "mm", "across"),
        "side": steps(15, 18, 3, "mm", "side"),
    },
)

WHOLE_DICE = Drill(
    Question(
        "whole dice",
        "count",
        1,
        WHOLE,
        lambda length, side: _dice(length) * _dice(side) ** 2,
        (
            Slip(
                "by volume",
                _by_volume,
                "You divided the volumes. A strip too thin for a dice gives none: "
                "count whole dice along each edge.",
            ),
            Slip(
                "one layer",
                lambda length, side: _dice(length) * _dice(side),
                "That is one layer. Count the layers too.",
            ),
            Slip(
                "rounded up",
                lambda length, side: (_dice(length) + 1) * (_dice(side) + 1) ** 2,
                "You rounded up. What is left at the end is no dice: round down.",
            ),
        ),
        working=(
            "along: {length} ÷ 6 mm, rounded down = {along}",
            "across: {side} ÷ 6 mm, rounded down = {across}",
            "{along} × {across} × {across} = {answer}",
        ),
        on_the_way={
            "along": lambda length: Q_(_dice(length), "count"),
            "across": lambda side: Q_(_dice(side), "count"),
        },
    ),
    "A squared block is {length} long and {side} wide and high. "
    "How many whole small dice does it give?",
    "How many fit along each edge? Only whole ones count.",
    {
        "length": steps(62, 104, 7, "mm", "long"),
        "side": steps(20, 29, 3, "mm", "wide and high"),
    },
)

EVENNESS = Drill(
    Question(
        "evenness",
        "percent",
        1,
        Within(Q_(0.5, "percent"), "ten pieces tell no more"),
        lambda sd, mean: sd / mean,
        (
            Slip(
                "upside down",
                lambda sd, mean: mean / sd,
                "Upside down: the spread is a part of the mean.",
            ),
            Slip(
                "over the target",
                _over_target,
                "You divided by 3 mm. Evenness asks how alike they are: divide by their own mean.",
            ),
            Slip(
                "half the spread",
                lambda sd, mean: sd / mean / 2,
                "The standard deviation is not a width from edge to edge: do not halve it.",
            ),
        ),
        working=("{sd} ÷ {mean} = {answer}",),
    ),
    "Ten cubes cut to 3 mm have a mean edge of {mean} and a standard deviation of {sd}. "
    "What is their coefficient of variation?",
    "How large is the spread, as a share of the mean?",
    {
        "mean": steps(2.4, 3.6, 0.2, "mm", "mean"),
        "sd": steps(0.2, 0.5, 0.1, "mm", "standard deviation"),
    },
)

TIME_FOR_A_NEW_SIZE = Drill(
    Question(
        "time for a new size",
        "time",
        1,
        Within(Q_(0.5, "min"), "nobody tries a root more often than that"),
        lambda old, new, time: time * cooking_time_factor(old, new),
        (
            Slip(
                "straight",
                lambda old, new, time: time * _ratio(new, old),
                "You took half the size for half the time. Where heat must travel to the middle, "
                "square the ratio.",
            ),
            Slip(
                "cubed",
                lambda old, new, time: time * _ratio(new, old) ** 3,
                "You went by the weight of a piece. The time goes with the square, not the cube.",
            ),
            Slip(
                "upside down",
                lambda old, new, time: time * _ratio(old, new) ** 2,
                "A smaller piece cannot take longer: new over old.",
            ),
        ),
        working=(
            "the sizes: {new} ÷ {old} = {ratio}",
            "the square: {ratio} × {ratio} = {square}",
            "{time} × {square} = {answer}",
        ),
        on_the_way={
            "ratio": lambda new, old: (new / old).to("count"),
            "square": lambda new, old: ((new / old) ** 2).to("count"),
        },
    ),
    "Boiled cubes of {old} are done in {time}. Now they are cut to {new}. "
    "How long, by the square of the size?",
    "New size over old size. Then what?",
    {
        "old": steps(16, 20, 2, "mm", "old edge"),
        "new": steps(8, 10, 2, "mm", "new edge"),
        "time": steps(12, 30, 2, "min", "time now"),
    },
)

DRILLS = {
    drill.question.id: drill
    for drill in (
        CUBES_IN_A_STRIP,
        STICKS_IN_A_LINE,
        SQUARED_SHARE,
        WHOLE_DICE,
        EVENNESS,
        TIME_FOR_A_NEW_SIZE,
    )
} | trays.DRILLS
