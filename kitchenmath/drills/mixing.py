"""Drills of lesson 2: percent of flour, and parts by weight and by cups."""

from kitchenmath.drills import Drill, bakery
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.ratios import split
from kitchenmath.units import Q_

BAG_SCALE = Within(Q_(10, "g"), "the bag scale shows 10 g")
BENCH_SCALE = Within(Q_(5, "g"), "the bench scale shows 5 g")
SALT_SCALE = Within(Q_(1, "g"), "the salt scale shows 1 g")
BY_HAND = Within(Q_(0.5, "percent"), "hands feel no half percent")

WATER_CUP = Q_(237, "g")  # USDA SR28 (2015), as is the sugar; the text of the drill quotes both
SUGAR_CUP = Q_(200, "g")


def _part(percent):
    return percent.to("").magnitude


def _first_part(total, first, second):
    """The first of two parts of a total."""
    return total * first / (first + second)


FLOUR_FOR_DOUGH = Drill(
    Question(
        "flour for a dough",
        "weight",
        1,
        BAG_SCALE,
        lambda dough, percents: dough / _part(percents),
        (
            Slip(
                "by a hundred",
                lambda dough: dough,
                "You divided by 100 and not by the total percent. Now the flour alone weighs as "
                "much as the whole dough should.",
            ),
            Slip(
                "flour's own hundred",
                lambda dough, percents: dough / (_part(percents) - 1),
                "You added up what goes with the flour and left out the flour itself. It brings "
                "100 % to the sum.",
            ),
            Slip(
                "percents off",
                lambda dough, percents: dough * (2 - _part(percents)),
                "You took the other percents off the dough. They are shares of the flour, which "
                "weighs less: divide by the total percent.",
            ),
            Slip(
                "multiplied",
                lambda dough, percents: dough * _part(percents),
                "That is more flour than there is dough. Divide by the total percent.",
            ),
        ),
        working=("{dough} ÷ {percents} = {answer}",),
    ),
    "You want {dough} of dough. With the flour's own 100 %, the percents of the card add to "
    "{percents}. What weight of flour?",
    "Flour is 100 of all those percents. Must it be more or less than the dough?",
    {
        "dough": steps(2, 6, 0.25, "kg", "dough"),
        "percents": steps(160, 180, 2.5, "percent", "sum of all percents of flour"),
    },
)

SALT_FOR_DOUGH = Drill(
    Question(
        "salt for a dough",
        "weight",
        1,
        SALT_SCALE,
        lambda flour, salt: flour.to("g") * _part(salt),
        (
            Slip(
                "of the water",
                lambda flour, water, salt: flour * _part(water) * _part(salt),
                "You salted the water. A baker's percent is always of the flour.",
            ),
            Slip(
                "of the dough",
                lambda flour, water, salt: flour * (1 + _part(water) + _part(salt)) * _part(salt),
                "You salted the whole dough. A baker's percent is of the flour alone.",
            ),
            Slip(
                "ten times",
                lambda flour, salt: flour * _part(salt) * 10,
                "Ten times too much: the point slipped. 2 % is 20 g in a kilo.",
            ),
        ),
        working=("{flour} × {salt} = {answer}",),
    ),
    "A plain dough, by the baker's percents: {flour} of flour, water {water}, salt {salt}. "
    "What does the salt weigh?",
    "Percent of what?",
    {
        "flour": steps(1, 4, 0.25, "kg", "flour"),
        "water": steps(56, 70, 2, "percent", "water, of the flour"),
        "salt": steps(1.8, 2.2, 0.1, "percent", "salt, of the flour"),
    },
)

PERCENT_OF_FLOUR = Drill(
    Question(
        "percent of flour",
        "percent",
        1,
        BY_HAND,
        lambda flour, butter: butter / flour,
        (
            Slip(
                "of the total",
                lambda flour, butter: butter / (flour + butter),
                "That is the share of both together. A baker's percent is of the flour alone.",
            ),
            Slip(
                "upside down",
                lambda flour, butter: flour / butter,
                "You divided the flour by the butter. The flour is the whole: it goes below.",
            ),
            Slip(
                "the flour's share",
                lambda flour, butter: flour / (flour + butter),
                "That is the flour's share of both. The butter is asked for, and as a share of the "
                "flour.",
            ),
        ),
        working=("{butter} ÷ {flour} = {answer}",),
    ),
    "A rich dough has {flour} of flour and {butter} of butter. What percent of butter does the "
    "card say?",
    "On a baker's card the flour is the whole.",
    {
        "flour": steps(1, 2, 0.1, "kg", "flour"),
        "butter": steps(200, 600, 20, "g", "butter"),
    },
)

PARTS_BY_WEIGHT = Drill(
    Question(
        "parts by weight",
        "weight",
        1,
        BENCH_SCALE,
        lambda total, flour, butter: total * butter / (flour + butter + 1),
        (
            Slip(
                "own part left out",
                lambda total, flour, butter: total * butter / (flour + 1),
                "You shared by the other parts only. Butter's own part belongs to the sum.",
            ),
            Slip(
                "of the flour's part",
                lambda total, flour, butter: total * butter / flour,
                "You took butter over flour of the whole paste. Butter is so many parts of all "
                "the parts.",
            ),
            Slip(
                "one part",
                lambda total, flour, butter: total / (flour + butter + 1),
                "That is one part. The butter has more than one.",
            ),
        ),
        working=(
            "all parts: {flour} + {butter} + 1 = {parts}",
            "{total} × {butter} ÷ {parts} = {answer}",
        ),
        on_the_way={"parts": lambda flour, butter: flour + butter + 1},
    ),
    "A shortbread is {flour} parts of flour, {butter} of butter and 1 of sugar, by weight. You "
    "make {total} of it. What does the butter weigh?",
    "How many parts are there in all?",
    {
        "total": steps(800, 2400, 100, "g", "paste"),
        "flour": steps(3, 5, 0.5, "count", "parts of flour"),
        "butter": steps(1.5, 2.5, 0.5, "count", "parts of butter"),
    },
)

PARTS_BY_CUPS = Drill(
    Question(
        "parts by cups",
        "weight",
        1,
        BENCH_SCALE,
        lambda total, cups: split(
            total, {"sugar": cups.magnitude, "water": 1}, by="volume",
            densities={"sugar": SUGAR_CUP / Q_(1, "us_cup"), "water": WATER_CUP / Q_(1, "us_cup")},
        )["sugar"],
        (
            Slip(
                "cups as weights",
                lambda total, cups: _first_part(total, cups, Q_(1, "count")),
                "You shared by weight. The card counts cups, and a cup of sugar is lighter than "
                "a cup of water.",
            ),
            Slip(
                "upside down",
                lambda total, cups: _first_part(total, cups / SUGAR_CUP, 1 / WATER_CUP),
                "You divided by what a cup weighs. Parts times the weight of a cup is weight.",
            ),
            Slip(
                "the water",
                lambda total, cups: total - _first_part(total, cups * SUGAR_CUP, WATER_CUP),
                "That is the water. The sugar was asked for.",
            ),
        ),
        working=(
            "the sugar's parts in grams: {cups} × 200 g = {sugar}",
            "with a cup of water: {sugar} + 237 g = {both}",
            "{total} × {sugar} ÷ {both} = {answer}",
        ),
        on_the_way={
            "sugar": lambda cups: cups.magnitude * SUGAR_CUP,
            "both": lambda cups: cups.magnitude * SUGAR_CUP + WATER_CUP,
        },
    ),
    "An old card asks for {cups} cups of sugar to 1 cup of water. A cup of sugar weighs 200 g, "
    "a cup of water 237 g. You make {total} of syrup on the scale. What does the sugar weigh?",
    "First turn the cups into grams. Then share the total out.",
    {
        "total": steps(800, 2000, 100, "g", "syrup"),
        "cups": steps(1.5, 3, 0.5, "count", "cups of sugar to one of water"),
    },
)  # fmt: skip

DRILLS = {
    drill.question.id: drill
    for drill in (
        FLOUR_FOR_DOUGH,
        SALT_FOR_DOUGH,
        PERCENT_OF_FLOUR,
        PARTS_BY_WEIGHT,
        PARTS_BY_CUPS,
    )
} | bakery.DRILLS
