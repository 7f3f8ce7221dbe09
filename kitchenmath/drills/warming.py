"""Drills of lesson 8 on warming through: thickness squared, the way gone, the gap that halves."""

import math

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_


def _ratio(over, under):
    """How many times one thickness or time is the other."""
    return (over / under).to("").magnitude


def _halvings(gap, left):
    """How often a gap halves until so much is left."""
    return math.log2(gap.magnitude / left.magnitude)


SQUARED = Drill(
    Question(
        "warming, thickness squared",
        "time",
        1,
        Within(Q_(5, "percent"), "a ruler on soft fish shows no more"),
        lambda time, old, new: time * _ratio(new, old) ** 2,
        (
            Slip(
                "straight ratio",
                lambda time, old, new: time * _ratio(new, old),
                "You took the ratio of the thicknesses as it stands. Heat has further to go and "
                "more to fill: the ratio goes in twice.",
            ),
            Slip(
                "ratio turned round",
                lambda time, old, new: time * _ratio(old, new) ** 2,
                "Squared, but turned round. Does the thick piece take less time?",
            ),
            Slip(
                "cubed",
                lambda time, old, new: time * _ratio(new, old) ** 3,
                "You took the ratio three times, as for weight. For time it goes in twice.",
            ),
        ),
        working=(
            "how many times as thick: {new} ÷ {old} = {ratio}",
            "{time} × {ratio} × {ratio} = {answer}",
        ),
        on_the_way={"ratio": lambda new, old: Q_(_ratio(new, old), "count")},
    ),
    "A fillet of {old} takes {time} in the bath. How long does one of {new} take, to the same core "
    "in the same bath?",
    "How many times as thick? That many times, twice over.",
    {
        "time": steps(10, 20, 1, "min", "time of the piece you know"),
        "old": steps(18, 22, 2, "mm", "thickness of the piece you know"),
        "new": steps(28, 40, 2, "mm", "thickness of the new piece"),
    },
)

FITTED = Drill(
    Question(
        "warming, thickness for the clock",
        "length",
        1,
        Within(Q_(1, "mm"), "a ruler on soft fish shows a millimetre"),
        lambda old, time, wanted: old * math.sqrt(_ratio(wanted, time)),
        (
            Slip(
                "straight ratio",
                lambda old, time, wanted: old * _ratio(wanted, time),
                "You took the ratio of the times as it stands. Time goes with thickness squared, "
                "so thickness goes with the root of the ratio.",
            ),
            Slip(
                "squared again",
                lambda old, time, wanted: old * _ratio(wanted, time) ** 2,
                "You squared the ratio of the times. From time back to thickness it is the root.",
            ),
            Slip(
                "root turned round",
                lambda old, time, wanted: old / math.sqrt(_ratio(wanted, time)),
                "The root is right and the ratio turned round. Less time needs a thinner piece.",
            ),
        ),
        working=(
            "the times compared: {wanted} ÷ {time} = {ratio}",
            "its root: √{ratio} = {root}",
            "{old} × {root} = {answer}",
        ),
        on_the_way={
            "ratio": lambda time, wanted: Q_(_ratio(wanted, time), "count"),
            "root": lambda time, wanted: Q_(math.sqrt(_ratio(wanted, time)), "count"),
        },
    ),
    "A fillet of {old} takes {time}. The pass gives you {wanted}. How thick may the fillets be?",
    "Thinner, but by less than you would think: take the root.",
    {
        "old": steps(30, 40, 2, "mm", "thickness that was timed"),
        "time": steps(36, 44, 2, "min", "its time"),
        "wanted": steps(14, 22, 2, "min", "time that you have"),
    },
)

WAY = Drill(
    Question(
        "warming, share of the way",
        "percent",
        1,
        Within(Q_(1, "percent"), "the probe is good to half a degree"),
        lambda start, core, bath: Q_(
            100 * (core - start).magnitude / (bath - start).magnitude, "percent"
        ),
        (
            Slip(
                "counted from zero",
                lambda core, bath: Q_(100 * core.magnitude / bath.magnitude, "percent"),
                "You divided the readings. Zero degrees is not where the piece began: count "
                "both from the start.",
            ),
            Slip(
                "what is left",
                lambda start, core, bath: Q_(
                    100 * (bath - core).magnitude / (bath - start).magnitude, "percent"
                ),
                "That share is still to go. The way gone is the rest.",
            ),
            Slip(
                "over the bath",
                lambda start, core, bath: Q_(
                    100 * (core - start).magnitude / bath.magnitude, "percent"
                ),
                "The top is right. The whole way runs from the start to the bath, not from zero.",
            ),
        ),
        working=(
            "the way gone: {core} − {start} = {gone}",
            "the whole way: {bath} − {start} = {whole}",
            "{gone} ÷ {whole} = {answer}",
        ),
        on_the_way={
            "gone": lambda start, core: Q_((core - start).magnitude, "delta_degC"),
            "whole": lambda start, bath: Q_((bath - start).magnitude, "delta_degC"),
        },
    ),
    "A fillet begins at {start} in a bath of {bath}. The core is now at {core}. What percent of "
    "its way has it gone?",
    "How far has it come from the start, and how far could it come?",
    {
        "start": steps(8, 14, 1, "degC", "start"),
        "core": steps(42, 47, 1, "degC", "core now"),
        "bath": steps(55, 62, 1, "degC", "bath"),
    },
)

HALVED = Drill(
    Question(
        "warming, the gap halves",
        "time",
        1,
        Within(Q_(2, "min"), "the clock on the wall is read to a minute or two"),
        lambda half, gap, left: half * _halvings(gap, left),
        (
            Slip(
                "straight line",
                lambda half, gap, left: half * 2 * (gap.magnitude - left.magnitude) / gap.magnitude,
                "You let the core rise by the same degrees in every span. It slows down: each "
                "span halves what is left.",
            ),
            Slip(
                "one span short",
                lambda half, gap, left: half * (_halvings(gap, left) - 1),
                "You are one span short. Write the gaps in a row and count the steps between them.",
            ),
            Slip(
                "how many times smaller",
                lambda half, gap, left: half * gap.magnitude / left.magnitude,
                "You multiplied by how many times smaller the gap becomes. Count the halvings.",
            ),
        ),
        working=(
            "how often: halve {gap} until it is {left}, and count = {halvings}",
            "{halvings} × {half} = {answer}",
        ),
        on_the_way={
            "halvings": lambda gap, left: Q_(_halvings(gap, left), "count"),
        },
    ),
    "Late in a bath the gap between bath and core halves every {half}. The gap is {gap}. When is "
    "it {left}?",
    "Write it down: half, and half of that, and so on.",
    {
        "half": steps(8, 20, 1, "min", "time in which the gap halves"),
        "gap": steps(16, 32, 16, "delta_degC", "gap now"),
        "left": steps(2, 2, 1, "delta_degC", "gap that may be left"),
    },
)

DRILLS = {
    "thickness squared": SQUARED,
    "thickness for the clock": FITTED,
    "share of the way": WAY,
    "the gap halves": HALVED,
}
