"""Drills of lesson 5 on seasoning: the salometer, evening out, and salt before reducing."""

from kitchenmath.brine import (
    salt_for_brine,
    salt_for_equilibrium,
    strength_after_reduction,
    strength_from_salometer,
)
from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_

FULL_OVER_WATER = 35.9  # grams of salt in 100 g of water, full: general chemistry value
HALF_A_DEGREE = Within(Q_(0.14, "percent"), "half a degree on the stem")


def _part(percent):
    return percent.to("").magnitude


def _true_degrees(shown, warmth):
    """What the stem would show in the same brine at 60 °F."""
    full, cold = strength_from_salometer(shown, warmth), strength_from_salometer(shown)
    return (full / cold).to("").magnitude * shown.magnitude


def _added(warmth):
    """Degrees for the warmth by the rule of thumb that the hint gives, as a calculator shows."""
    return (warmth.to("degC").magnitude - 15.6) / 5.6


SALOMETER = Drill(
    Question(
        "salometer",
        "percent",
        1,
        HALF_A_DEGREE,
        lambda shown: strength_from_salometer(shown),
        (
            Slip(
                "degrees as percent",
                lambda shown: shown.magnitude * Q_(1, "percent"),
                "You took degrees for percent. 100° is a brine that holds no more, and that is "
                "26.4 % of salt.",
            ),
            Slip(
                "full over water",
                lambda shown: Q_(FULL_OVER_WATER * shown.magnitude / 100, "percent"),
                "You took the full brine as salt over water, 35.9 %. Strength is over the brine: "
                "26.4 %.",
            ),
            Slip(
                "the canning stem",
                lambda shown: strength_from_salometer(shown, scale="canning"),
                "You took 100° for 25 %, as an old canning scale does. Here it is 26.4 %.",
            ),
        ),
        working=(
            "the part of a full brine: {shown} ÷ 100 = {part}",
            "{part} × 26.4 % = {answer}",
        ),
        on_the_way={
            "part": lambda shown: shown / 100,
        },
    ),
    "The salometer shows {shown}° in a brine at 15.6 °C (60 °F). 100° is 26.4 %. "
    "How strong is the brine?",
    "Which part of the way up to a full brine is it?",
    {"shown": steps(22, 84, 2, "count", "degrees")},
)

WARM_BRINE = Drill(
    Question(
        "warm brine",
        "percent",
        1,
        HALF_A_DEGREE,
        lambda shown, warmth: strength_from_salometer(shown, temperature=warmth),
        (
            Slip(
                "not corrected",
                lambda shown: strength_from_salometer(shown),
                "You read the stem and left it at that. Warm brine is lighter, so it shows too "
                "little: add a degree for each 5.6 °C.",
            ),
            Slip(
                "corrected downwards",
                lambda shown, warmth: strength_from_salometer(
                    2 * shown.magnitude - _true_degrees(shown, warmth)
                ),
                "You took the correction off. Warm brine shows too little: add it.",
            ),
            Slip(
                "degrees as percent",
                lambda shown, warmth: Q_(_true_degrees(shown, warmth), "percent"),
                "The correction is right, and then degrees were taken for percent.",
            ),
        ),
        working=(
            "degrees to add: ({warmth} − 15.6 °C) ÷ 5.6 °C = {added}",
            "corrected: {shown} + {added} = {corrected}",
            "{corrected} ÷ 100 × 26.4 % = {answer}",
        ),
        on_the_way={
            "added": lambda warmth: Q_(_added(warmth), "count"),
            "corrected": lambda shown, warmth: Q_(shown.magnitude + _added(warmth), "count"),
        },
    ),
    "The salometer shows {shown}° in a brine at {warmth}. How strong is the brine?",
    "The stem is made for 15.6 °C (60 °F). Add 1° for each 5.6 °C (10 °F) above it.",
    {
        "shown": steps(20, 60, 2, "count", "degrees"),
        "warmth": steps(24, 30, 2, "degC", "temperature"),
    },
)

EQUILIBRIUM = Drill(
    Question(
        "equilibrium salt",
        "weight",
        1,
        Within(Q_(3, "g"), "weighed in three goes on a scale that shows 1 g"),
        lambda birds, water, target: salt_for_equilibrium(birds, water, target).to("g"),
        (
            Slip(
                "the birds only",
                lambda birds, target: birds * _part(target),
                "You salted the birds and forgot the water. The salt spreads through both.",
            ),
            Slip(
                "the water only",
                lambda water, target: salt_for_brine(water, target).to("g"),
                "That makes the water right before the birds go in. They take their share, and "
                "it all ends too mild.",
            ),
            Slip(
                "salt not counted",
                lambda birds, water, target: (birds + water) * _part(target),
                "This percent is of birds and water. “Of everything” has the salt in it too.",
            ),
        ),
        working=(
            "birds and water: {birds} + {water} = {both}",
            "their part of everything: 100 % − {target} = {part}",
            "{both} ÷ {part} × {target} = {answer}",
        ),
        on_the_way={
            "both": lambda birds, water: birds + water,
            "part": lambda target: Q_(100, "percent") - target,
        },
    ),
    "{birds} of guinea fowl lie in {water} of water. In the end everything, birds, water and salt "
    "together, shall be at {target}. How much salt?",
    "Where can the salt go? All of that counts.",
    {
        "birds": steps(14, 18, 0.5, "kg", "birds"),
        "water": steps(20, 26, 1, "kg", "water"),
        "target": steps(1.6, 2.0, 0.1, "percent", "target"),
    },
)

SALTED_FIRST = Drill(
    Question(
        "salted before reducing",
        "percent",
        1,
        Within(Q_(0.1, "percent"), "a salt meter shows 0.1 %"),
        lambda broth, end, salted: strength_after_reduction(salted, broth, end),
        (
            Slip(
                "as before",
                lambda salted: salted,
                "Nothing changed? Water leaves as steam, and the salt stays in the pan.",
            ),
            Slip(
                "upside down",
                lambda broth, end, salted: salted * (end / broth).to("").magnitude,
                "Milder than before? The ratio is upside down: the same salt is in less broth.",
            ),
            Slip(
                "by what boiled away",
                lambda broth, end, salted: salted * (broth / (broth - end)).to("").magnitude,
                "You divided by what boiled away. The salt is in what is left.",
            ),
        ),
        working=(
            "the salt: {broth} × {salted} = {salt}",
            "{salt} ÷ {end} = {answer}",
        ),
        on_the_way={"salt": lambda broth, salted: (broth * salted).to("g")},
    ),
    "{broth} of broth was salted to {salted}, and then reduced to {end}. How salty is it now?",
    "How much salt is in the pan, before and after?",
    {
        "broth": steps(6, 9, 0.5, "kg", "broth"),
        "end": steps(1.5, 2.4, 0.1, "kg", "left"),
        "salted": steps(0.6, 0.9, 0.1, "percent", "salted"),
    },
)

DRILLS = {drill.question.id: drill for drill in (SALOMETER, WARM_BRINE, EQUILIBRIUM, SALTED_FIRST)}
