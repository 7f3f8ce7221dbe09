"""Drills of lesson 5 on mixing a brine: two denominators, ounces and litres, and a weak brine."""

from kitchenmath.brine import brine_parts, salt_for_brine, salt_to_strengthen, strength
from kitchenmath.drills import Drill, flakes
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_, weight_of

THREE_G = Within(Q_(3, "g"), "weighed in three goes on a scale that shows 1 g")


def _part(percent):
    return percent.to("").magnitude


def _brine_weight(brine, wanted):
    parts = brine_parts(brine, wanted)
    return parts.salt + parts.water


SALT_FOR_BRINE = Drill(
    Question(
        "salt for a brine",
        "weight",
        1,
        THREE_G,
        lambda water, wanted: salt_for_brine(water, wanted).to("g"),
        (
            Slip(
                "over the water",
                lambda water, wanted: water * _part(wanted),
                "That is a percent of the water. The salt counts in the brine too, so it takes "
                "a little more: divide by what is water, and multiply by what is salt.",
            ),
            Slip(
                "wrong way",
                lambda water, wanted: water * _part(wanted) / (1 + _part(wanted)),
                "You went the wrong way: this is less than a percent of the water, and it must "
                "be more.",
            ),
            Slip(
                "the brine",
                lambda water, wanted: water / (1 - _part(wanted)),
                "That is what the whole brine weighs. Take the water off, and the salt is left.",
            ),
        ),
        working=(
            "the water's part of the brine: 100 % − {wanted} = {part}",
            "{water} ÷ {part} × {wanted} = {answer}",
        ),
        on_the_way={
            "part": lambda wanted: Q_(100, "percent") - wanted,
        },
    ),
    "You have {water} of water. How much salt makes it a brine of {wanted} strength?",
    "What part of the finished brine is water?",
    {
        "water": steps(5, 9, 0.5, "kg", "water"),
        "wanted": steps(5, 9, 1, "percent", "strength"),
    },
)

STRENGTH = Drill(
    Question(
        "strength of a brine",
        "percent",
        1,
        Within(Q_(0.1, "percent"), "no hydrometer in a kitchen shows less"),
        lambda salt, water: strength(salt, water),
        (
            Slip(
                "over water alone",
                lambda salt, water: 100 * (salt / water).to("") * Q_(1, "percent"),
                "You divided by the water. The salt is part of the brine: divide by both together.",
            ),
            Slip(
                "salt taken off",
                lambda salt, water: 100 * (salt / (water - salt)).to("") * Q_(1, "percent"),
                "You took the salt off the water. It comes on top of it.",
            ),
            Slip(
                "the other part",
                lambda salt, water: 100 * (water / (water + salt)).to("") * Q_(1, "percent"),
                "That is the part which is water. The strength is the other part.",
            ),
        ),
        working=(
            "the brine: {water} + {salt} = {brine}",
            "{salt} ÷ {brine} = {answer}",
        ),
        on_the_way={"brine": lambda water, salt: water + salt},
    ),
    "{salt} of salt goes into {water} of water. How strong is the brine?",
    "What does the finished brine weigh?",
    {
        "salt": steps(240, 480, 20, "g", "salt"),
        "water": steps(2, 4, 0.5, "kg", "water"),
    },
)

OUNCES = Drill(
    Question(
        "ounces by measure",
        "weight",
        1,
        Within(Q_(3, "g"), "a cup cannot be levelled closer"),
        lambda salt: weight_of(salt, "table salt"),
        (
            Slip(
                "ounces of weight",
                lambda salt: Q_(salt.magnitude, "oz").to("g"),
                "You took fluid ounces for ounces. A fluid ounce is a space; what fits into it "
                "depends on what it is.",
            ),
            Slip(
                "as if water",
                lambda salt: salt.to("mL") * Q_(1, "g/mL"),
                "That is what so much water weighs. Table salt packs heavier.",
            ),
            Slip(
                "British ounces",
                lambda salt: weight_of(Q_(salt.magnitude, "uk_fluid_ounce"), "table salt"),
                "You took the British fluid ounce, which is 4 % smaller than the American one.",
            ),
        ),
        working=(
            "one fluid ounce of it: 292 g ÷ 8 = {ounce}",
            "{salt} × {ounce} = {answer}",
        ),
        on_the_way={
            "ounce": lambda: weight_of(Q_(1, "us_fluid_ounce"), "table salt"),
        },
    ),
    "A card says {salt} of table salt, by measure. A US cup is 8 US fluid ounces and holds 292 g "
    "of it. What does the salt weigh?",
    "What does one fluid ounce of this salt weigh?",
    {"salt": steps(8, 20, 1, "us_fluid_ounce", "salt by measure")},
)

LITRES_OF_BRINE = Drill(
    Question(
        "litres of brine",
        "weight",
        1,
        Within(Q_(5, "g"), "the bench scale shows 5 g"),
        lambda brine, wanted: brine_parts(brine, wanted).salt,
        (
            Slip(
                "to litres of water",
                lambda brine, wanted: salt_for_brine(Q_(brine.to("L").magnitude, "kg"), wanted),
                "That goes into so many litres of water, and makes more than you were asked for. "
                "Here the finished brine is given.",
            ),
            Slip(
                "litres as kilograms",
                lambda brine, wanted: Q_(1000 * brine.to("L").magnitude, "g") * _part(wanted),
                "You took a litre of brine for a kilogram. It is heavier: weigh it first.",
            ),
            Slip(
                "the water",
                lambda brine, wanted: brine_parts(brine, wanted).water,
                "That is the water in it. The salt is asked for.",
            ),
        ),
        working=(
            "the weight of a litre: as listed for {wanted} = {litre}",
            "the weight of the brine: {brine} × {litre} = {weight}",
            "{weight} × {wanted} = {answer}",
        ),
        on_the_way={
            "litre": lambda wanted: _brine_weight(Q_(1, "L"), wanted).to("g"),
            "weight": lambda brine, wanted: _brine_weight(brine, wanted),
        },
    ),
    "You need {brine} of finished brine of {wanted}, at 20 °C. (A litre weighs 1041 g at 6 %, "
    "1056 g at 8 %, 1071 g at 10 %.) How much salt is in it?",
    "Turn the litres into a weight before you take a percent.",
    {
        "brine": steps(12, 20, 1, "L", "finished brine"),
        "wanted": steps(6, 10, 2, "percent", "strength"),
    },
)

STRENGTHEN = Drill(
    Question(
        "strengthen a brine",
        "weight",
        1,
        THREE_G,
        lambda brine, start, wanted: salt_to_strengthen(brine, start, wanted).to("g"),
        (
            Slip(
                "the difference",
                lambda brine, start, wanted: brine * (_part(wanted) - _part(start)),
                "Nearly. The new salt is brine as well, so it takes a little more: divide by "
                "what is not salt in the end.",
            ),
            Slip(
                "all anew",
                lambda brine, wanted: salt_for_brine(brine, wanted).to("g"),
                "That would do for plain water. There is salt in it already.",
            ),
            Slip(
                "all anew, over water",
                lambda brine, wanted: brine * _part(wanted),
                "That forgets the salt which is there, and counts a percent of the old weight.",
            ),
        ),
        working=(
            "what is missing: {brine} × ({wanted} − {start}) = {missing}",
            "the water's part in the end: 100 % − {wanted} = {part}",
            "{missing} ÷ {part} = {answer}",
        ),
        on_the_way={
            "missing": lambda brine, start, wanted: (brine * (wanted - start)).to("g"),
            "part": lambda wanted: Q_(100, "percent") - wanted,
        },
    ),
    "{brine} of brine turned out at {start}. It should be {wanted}. How much salt do you stir in?",
    "The water stays as it is. What part of the brine is water in the end?",
    {
        "brine": steps(8, 14, 1, "kg", "brine"),
        "start": steps(3, 4, 0.5, "percent", "now"),
        "wanted": steps(6, 8, 1, "percent", "wanted"),
    },
)

DRILLS = {
    drill.question.id: drill
    for drill in (SALT_FOR_BRINE, STRENGTH, OUNCES, LITRES_OF_BRINE, STRENGTHEN)
} | flakes.DRILLS
