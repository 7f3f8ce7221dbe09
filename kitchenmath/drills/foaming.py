"""Drills of lesson 6 on foams: parts, dose, overrun, base and syrup."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.sauces import dose, gas_fraction, liquid_for_foam, overrun, sugar_for_syrup
from kitchenmath.units import Q_, weight_of

SUGAR = "granulated sugar"


def _part(percent):
    return percent.to("").magnitude


def _percent(part):
    return Q_(100 * part.to("").magnitude, "percent")


EIGHT_TO_ONE = Drill(
    Question(
        "foam base sugar",
        "weight",
        1,
        Within(Q_(5, "g"), "the bench scale shows 5 g"),
        lambda juice: weight_of(juice / 8, SUGAR),
        (
            Slip(
                "as if water",
                lambda juice: juice.to("mL") / 8 * Q_(1, "g/mL"),
                "You gave each millilitre a gram. Sugar lies loose: a cup of it weighs 200 g, "
                "not 237 g.",
            ),
            Slip(
                "a ninth",
                lambda juice: weight_of(juice / 9, SUGAR),
                "You took a ninth of the juice. Eight to one means an eighth as much sugar as "
                "juice; a ninth is its share of the whole.",
            ),
            Slip(
                "turned round",
                lambda juice: weight_of(juice * 8, SUGAR),
                "You took eight parts of sugar to one of juice. The juice is named first.",
            ),
            Slip(
                "all the juice",
                lambda juice: weight_of(juice, SUGAR),
                "This is one to one. The sugar is an eighth of the juice, by volume.",
            ),
        ),
        working=(
            "the sugar's volume: {juice} ÷ 8 = {volume}",
            "a millilitre of sugar: 200 g ÷ 236.6 = {each}",
            "{volume} × {each} = {answer}",
        ),
        on_the_way={
            "volume": lambda juice: juice / 8,
            "each": lambda: weight_of(Q_(1, "mL"), SUGAR),
        },
    ),
    "A foam base is eight parts of cider to one of sugar, by volume. You have {juice} of cider. "
    "A US cup (236.6 mL) of sugar weighs 200 g. What weight of sugar goes in?",
    "First the sugar's volume, then what that volume weighs.",
    {"juice": steps(1600, 4800, 200, "mL", "cider")},
)

FOAM_DOSE = Drill(
    Question(
        "foam dose",
        "weight",
        1,
        Within(Q_(0.1, "g"), "a pocket scale shows a tenth of a gram"),
        lambda base, percent: dose(base, percent),
        (
            Slip(
                "ten times",
                lambda base, percent: dose(base, percent) * 10,
                "Ten times too much: the point slipped. One percent of 1000 g is 10 g; half a "
                "percent is 5 g.",
            ),
            Slip(
                "a tenth",
                lambda base, percent: dose(base, percent) / 10,
                "A tenth of it: the point slipped the other way. One percent of 1000 g is 10 g.",
            ),
            Slip(
                "one percent",
                lambda base, percent: dose(base, Q_(1, "percent")),
                "That is one percent. The dose asked for is only a part of a percent.",
            ),
        ),
        working=("{base} × {percent} = {answer}",),
    ),
    "Your cider base weighs {base}. The card says {percent} of lecithin, of the base. "
    "What do you weigh in?",
    "What would one percent be?",
    {
        "base": steps(400, 1500, 50, "g", "base"),
        "percent": steps(0.3, 0.8, 0.1, "percent", "lecithin"),
    },
)

OVERRUN = Drill(
    Question(
        "overrun",
        "percent",
        1,
        Within(Q_(5, "percent"), "a gram more or less of foam shows as much"),
        lambda base, foam: overrun(liquid_weight=base, foam_weight=foam),
        (
            Slip(
                "share of gas",
                lambda base, foam: gas_fraction(overrun(liquid_weight=base, foam_weight=foam)),
                "That is the share of the foam that is gas. Overrun compares the gas with the "
                "liquid: here, divide by the foam's weight.",
            ),
            Slip(
                "times",
                lambda base, foam: _percent(base / foam),
                "That is how large the foam is, the liquid counted. Overrun is what came on top: "
                "100 % less.",
            ),
            Slip(
                "what is left",
                lambda base, foam: _percent(foam / base),
                "That is the foam's weight over the base's. It says how much of the foam is "
                "liquid.",
            ),
        ),
        working=(
            "what the gas pushed out: {base} − {foam} = {pushed}",
            "{pushed} ÷ {foam} = {answer}",
        ),
        on_the_way={
            "pushed": lambda base, foam: base - foam,
        },
    ),
    "A cup holds {base} of cider base. The same cup holds {foam} of foam. What is the overrun?",
    "Both fill the same cup. How many cups of foam does one cup of base make?",
    {
        "base": steps(250, 280, 5, "g", "cup of base"),
        "foam": steps(70, 120, 5, "g", "cup of foam"),
    },
)

FOAM_BASE = Drill(
    Question(
        "base for foam",
        "volume",
        1,
        Within(Q_(5, "mL"), "a narrow jug shows 5 mL"),
        lambda plates, spoon, air: liquid_for_foam(plates.magnitude * spoon, air),
        (
            Slip(
                "by the overrun",
                lambda plates, spoon, air: plates.magnitude * spoon / _part(air),
                "You divided by the overrun. The liquid is in the foam too: divide by one more.",
            ),
            Slip(
                "the gas",
                lambda plates, spoon, air: (
                    plates.magnitude * spoon - liquid_for_foam(plates.magnitude * spoon, air)
                ),
                "That is the gas in the foam. The base is the rest of it.",
            ),
            Slip(
                "as if liquid",
                lambda plates, spoon: plates.magnitude * spoon,
                "That is the foam. Most of it is air, so far less base is enough.",
            ),
        ),
        working=(
            "the foam: {plates} × {spoon} = {foam}",
            "foam from one part of base: 1 + {air} = {times}",
            "{foam} ÷ {times} = {answer}",
        ),
        on_the_way={
            "foam": lambda plates, spoon: plates.magnitude * spoon,
            "times": lambda air: Q_(1 + _part(air), "count"),
        },
    ),
    "{plates} plates get {spoon} of foam each. Your overrun is {air}. "
    "How much base do you whip, if none is lost?",
    "Into how many times its volume does the base grow?",
    {
        "plates": steps(24, 48, 4, "count", "plates"),
        "spoon": steps(30, 50, 5, "mL", "foam on a plate"),
        "air": steps(150, 300, 25, "percent", "overrun"),
    },
)

SYRUP = Drill(
    Question(
        "sugar for a syrup",
        "weight",
        1,
        Within(Q_(10, "g"), "half a degree Brix is about as much"),
        lambda water, strong: sugar_for_syrup(water, strong).to("g"),
        (
            Slip(
                "over the water",
                lambda water, strong: (water * _part(strong)).to("g"),
                "You took the percent of the water. Degrees Brix are a percent of the whole "
                "syrup, sugar and water together.",
            ),
            Slip(
                "the syrup",
                lambda water, strong: (water / (1 - _part(strong))).to("g"),
                "That is what the syrup weighs. Take the water off, and the sugar is left.",
            ),
            Slip(
                "by the Brix",
                lambda water, strong: (water / _part(strong)).to("g"),
                "You divided by the sugar's share. The water is the rest, so divide by that.",
            ),
        ),
        working=(
            "the water's part of the syrup: 100 % − {strong} = {part}",
            "{water} ÷ {part} × {strong} = {answer}",
        ),
        on_the_way={
            "part": lambda strong: Q_(100, "percent") - strong,
        },
    ),
    "How much sugar makes {water} of water a syrup of {strong}, that is, as many degrees Brix?",
    "What part of the finished syrup is water?",
    {
        "water": steps(600, 1500, 50, "g", "water"),
        "strong": steps(20, 45, 5, "percent", "°Brix"),
    },
)


DRILLS = {
    drill.question.id: drill for drill in (EIGHT_TO_ONE, FOAM_DOSE, OVERRUN, FOAM_BASE, SYRUP)
}
