"""Drills of lesson 1: whose cup, whose spoon, which ounce."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_

# A hand fills a cup or a spoon no more exactly than this.
BY_HAND = Within(Q_(2, "percent"), "a hand fills a measure no better")


def _as_if(volume, unit):
    """As many of another country's measure."""
    return Q_(volume.magnitude, unit)


def _grams_each(density):
    """What a millilitre weighs, as a plain number."""
    return density.to("g/mL").magnitude


CUPS = Drill(
    Question(
        "cups to grams",
        "weight",
        1,
        BY_HAND,
        lambda cups, density: cups * density,
        (
            Slip(
                "US cup",
                lambda cups, density: _as_if(cups, "us_cup") * density,
                "You filled an American cup. Whose card is it? A Japanese cup is smaller.",
            ),
            Slip(
                "metric cup",
                lambda cups, density: _as_if(cups, "metric_cup") * density,
                "You filled a metric cup of 250 mL. A Japanese cup is smaller.",
            ),
            Slip(
                "mL as grams",
                lambda cups: Q_(cups.to("mL").magnitude, "g"),
                "You took a millilitre for a gram. That is true of water. Flour is lighter.",
            ),
        ),
        working=(
            "the volume: {cups} × 200 mL = {volume}",
            "{volume} × {density} = {answer}",
        ),
        on_the_way={
            "volume": lambda cups: cups.to("mL"),
        },
    ),
    "A Japanese card asks for flour: {cups}. Its density is {density}. What do you weigh?",
    "A Japanese cup holds 200 mL. Go from cups to millilitres, then to grams.",
    {
        "cups": steps(1.5, 5, 0.5, "jp_cup", "on the card"),
        "density": steps(0.52, 0.58, 0.02, "g/mL", "weight of a millilitre"),
    },
)

SPOONS = Drill(
    Question(
        "spoons to grams",
        "weight",
        1,
        BY_HAND,
        lambda spoons, density: spoons * density,
        (
            Slip(
                "15 mL spoon",
                lambda spoons, density: _as_if(spoons, "metric_tablespoon") * density,
                "You filled a spoon of 15 mL. An Australian tablespoon is a third larger.",
            ),
            Slip(
                "teaspoon",
                lambda spoons, density: _as_if(spoons, "au_teaspoon") * density,
                "You filled teaspoons. tbsp is the big one, tsp the small one.",
            ),
            Slip(
                "mL as grams",
                lambda spoons: Q_(spoons.to("mL").magnitude, "g"),
                "You took a millilitre for a gram. Salt is heavier than water.",
            ),
        ),
        working=(
            "the volume: {spoons} × 20 mL = {volume}",
            "{volume} × {density} = {answer}",
        ),
        on_the_way={
            "volume": lambda spoons: spoons.to("mL"),
        },
    ),
    "An Australian card asks for table salt: {spoons}. Its density is {density}. "
    "What do you weigh?",
    "An Australian tablespoon holds 20 mL.",
    {
        "spoons": steps(2, 6, 0.5, "au_tablespoon", "on the card"),
        "density": steps(1.15, 1.25, 0.05, "g/mL", "weight of a millilitre"),
    },
)

FLUID_OUNCES = Drill(
    Question(
        "fluid ounces to grams",
        "weight",
        1,
        BY_HAND,
        lambda ounces, density: ounces * density,
        (
            Slip(
                "ounces of weight",
                lambda ounces: Q_(ounces.magnitude, "oz"),
                "You took an ounce of weight, 28 g. A fluid ounce is a volume; honey is heavy.",
            ),
            Slip(
                "mL as grams",
                lambda ounces: Q_(ounces.to("mL").magnitude, "g"),
                "These are the millilitres. Each one of honey weighs more than a gram.",
            ),
            Slip(
                "divided",
                lambda ounces, density: Q_(ounces.to("mL").magnitude / _grams_each(density), "g"),
                "You divided by the density. From a volume to a weight you multiply by what a "
                "millilitre weighs.",
            ),
        ),
        working=(
            "the volume: {ounces} × 29.6 mL = {volume}",
            "{volume} × {density} = {answer}",
        ),
        on_the_way={
            "volume": lambda ounces: ounces.to("mL"),
        },
    ),
    "An American card asks for honey: {ounces}. Its density is {density}. What do you weigh?",
    "fl oz is a volume: 29.6 mL in America. What does each millilitre weigh?",
    {
        "ounces": steps(3, 10, 0.5, "us_fluid_ounce", "on the card"),
        "density": steps(1.40, 1.44, 0.02, "g/mL", "weight of a millilitre"),
    },
)


def _times(covers, serves):
    return (covers / serves).to("").magnitude


SPOONS_FOR_MORE = Drill(
    Question(
        "spoons for more covers",
        "volume",
        1,
        Within(Q_(5, "mL"), "the jug has a mark every 10 mL"),
        lambda spoons, serves, covers: spoons.to("mL") * _times(covers, serves),
        (
            # 14.9 mL lies between the spoons sold as a tablespoon, 14.8 mL and 15 mL: one slip.
            Slip(
                "a spoon of 15 mL",
                lambda spoons, serves, covers: (
                    Q_(14.9 * spoons.magnitude, "mL") * _times(covers, serves)
                ),
                "You took a tablespoon of 15 mL. The Australian one holds 20 mL, a third more.",
                near=0.013,
            ),
            Slip(
                "teaspoons",
                lambda spoons, serves, covers: (
                    _as_if(spoons, "au_teaspoon").to("mL") * _times(covers, serves)
                ),
                "You took teaspoons of 5 mL. tbsp is the big one, tsp the small one.",
            ),
            Slip(
                "not scaled",
                lambda spoons: spoons.to("mL"),
                "That is the card's amount. You cook for more covers than the card.",
            ),
            Slip(
                "upside down",
                lambda spoons, serves, covers: spoons.to("mL") * _times(serves, covers),
                "The factor is upside down: more covers, and less vinegar?",
            ),
        ),
        working=(
            "the card in millilitres: {spoons} × 20 mL = {card_ml}",
            "{card_ml} × {covers} ÷ {serves} = {answer}",
        ),
        on_the_way={"card_ml": lambda spoons: spoons.to("mL")},
    ),
    "An Australian card for {serves} covers has {spoons} of vinegar. You cook for {covers}. How "
    "many millilitres do you measure?",
    "An Australian tablespoon holds 20 mL. Then: how many times the card is it?",
    {
        "spoons": steps(2, 4, 0.5, "au_tablespoon", "on the card"),
        "serves": steps(4, 6, 2, "count", "covers on the card"),
        "covers": steps(28, 52, 4, "count", "covers tonight"),
    },
)

DRILLS = {drill.question.id: drill for drill in (CUPS, SPOONS, FLUID_OUNCES, SPOONS_FOR_MORE)}
