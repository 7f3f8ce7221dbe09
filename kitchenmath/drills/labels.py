"""Drills of lesson 4 on what a label says: drained and frozen weights, and two losses in a row."""

import math

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.choices import steps
from kitchenmath.units.registry import Q_


def _part(percent):
    return percent.to("").magnitude


def _tins(covers, portion, in_a_tin):
    """Tins before rounding."""
    return (covers.magnitude * portion / in_a_tin).to("").magnitude


def _whole(tins):
    return math.ceil(tins - 1e-9)


TINS = Drill(
    Question(
        "tins by drained weight",
        "count",
        1,
        Within(Q_(0.05, "count"), "tins are whole"),
        lambda covers, portion, drained: _whole(_tins(covers, portion, drained)),
        (
            Slip(
                "the tin's weight",
                lambda covers, portion, net: _whole(_tins(covers, portion, net)),
                "You counted the liquid as beans. What lies on the plate is the drained weight; "
                "the label says it too.",
            ),
            Slip(
                "the liquid",
                lambda covers, portion, net, drained: _whole(_tins(covers, portion, net - drained)),
                "You divided by the liquid, the difference of the two weights. Divide by what is "
                "drained.",
            ),
            Slip(
                "rounded down",
                lambda covers, portion, drained: (
                    math.floor(_tins(covers, portion, drained))
                    if _tins(covers, portion, drained) % 1 > 1e-9
                    else None
                ),
                "You rounded down, and the last plates go short. A part of a tin means one more.",
            ),
            Slip(
                "part of a tin",
                lambda covers, portion, drained: (
                    _tins(covers, portion, drained)
                    if 0.15 < _tins(covers, portion, drained) % 1 < 0.85
                    else None
                ),
                "Nobody sells a part of a tin: round up to whole ones.",
            ),
        ),
        working=(
            "on the plates: {covers} × {portion} = {need}",
            "how many tins: {need} ÷ {drained} = {tins}",
            "{tins}, rounded up = {answer}",
        ),
        on_the_way={
            "need": lambda covers, portion: covers.magnitude * portion,
            "tins": lambda covers, portion, drained: Q_(_tins(covers, portion, drained), "count"),
        },
    ),
    "{covers} covers get {portion} of beans each. A tin says {net}, and in smaller letters "
    "{drained} drained. How many tins?",
    "Which of the two weights lies on the plate?",
    {
        "covers": steps(24, 48, 4, "count", "covers"),
        "portion": steps(45, 65, 5, "g", "on each plate"),
        "net": steps(400, 400, 1, "g", "in the tin"),
        "drained": steps(230, 250, 10, "g", "drained"),
    },
)

FROZEN = Drill(
    Question(
        "frozen fish to order",
        "weight",
        1,
        Within(Q_(10, "g"), "the scale shows 10 g"),
        lambda need, ice: need / (1 - _part(ice)),
        (
            Slip(
                "the ice as fish",
                lambda need: need,
                "You bought the ice as fish. Its coat runs off when it thaws: buy more.",
            ),
            Slip(
                "ice on top",
                lambda need, ice: need * (1 + _part(ice)),
                "You added the percent to the fish. The ice is a share of the frozen weight: "
                "divide by what is left of it.",
            ),
            Slip(
                "ice taken off",
                lambda need, ice: need * (1 - _part(ice)),
                "That is less than you need. Frozen it must weigh more: divide.",
            ),
            Slip(
                "by the ice",
                lambda need, ice: need / _part(ice),
                "You divided by the ice. Divide by the share that is fish.",
            ),
        ),
        working=(
            "what is fish: 100 % − {ice} = {fish}",
            "{need} ÷ {fish} = {answer}",
        ),
        on_the_way={"fish": lambda ice: Q_(100, "percent") - ice},
    ),
    "Tonight needs {need} of fish, thawed and drained. The frozen carton says {ice} of it is a "
    "coat of ice. What weight do you order frozen?",
    "How much of the frozen weight is fish?",
    {
        "need": steps(3, 7, 0.5, "kg", "needed, thawed"),
        "ice": steps(10, 24, 2, "percent", "coat of ice"),
    },
)

TWO_LOSSES = Drill(
    Question(
        "trim, then cooking loss",
        "weight",
        1,
        Within(Q_(20, "g"), "the scale shows 20 g"),
        lambda cooked, yield_, loss: cooked / (_part(yield_) * (1 - _part(loss))),
        (
            Slip(
                "losses added",
                lambda cooked, yield_, loss: cooked / (_part(yield_) - _part(loss)),
                "You added the two losses. The second one is a share of what the first one left: "
                "multiply the two yields.",
            ),
            Slip(
                "trim only",
                lambda cooked, yield_: cooked / _part(yield_),
                "That is enough peeled and raw. In the pan they lose once more.",
            ),
            Slip(
                "cooking only",
                lambda cooked, loss: cooked / (1 - _part(loss)),
                "That is enough if nothing is peeled off. Peel comes off first.",
            ),
            Slip(
                "multiplied",
                lambda cooked, yield_, loss: cooked * _part(yield_) * (1 - _part(loss)),
                "That is less than you serve. Both losses mean buying more: divide.",
            ),
        ),
        working=(
            "what cooking leaves: 100 % − {loss} = {left}",
            "what both leave: {yield_} × {left} = {both}",
            "{cooked} ÷ {both} = {answer}",
        ),
        on_the_way={
            "left": lambda loss: Q_(100, "percent") - loss,
            "both": lambda yield_, loss: yield_ * (1 - _part(loss)),
        },
    ),
    "You serve {cooked} of glazed carrots. Peeled they yield {yield_}; then they lose {loss} in "
    "the pan. What weight do you buy?",
    "What share is left after peeling? And what share of that after the pan?",
    {
        "cooked": steps(2, 5, 0.5, "kg", "served"),
        "yield_": steps(74, 84, 2, "percent", "yield, peeled"),
        "loss": steps(9, 19, 2, "percent", "loss in the pan"),
    },
)

DRILLS = {drill.question.id: drill for drill in (TINS, FROZEN, TWO_LOSSES)}
