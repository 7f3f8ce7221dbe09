"""Drills of lesson 7 on thickening: reducing, roux, slurry, gelatin, oil in an emulsion."""

from kitchenmath.drills import Drill, letting_down
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.sauces import gelatin_for, oil_volume_fraction, reduce_to, slurry_for
from kitchenmath.units import Q_


def _part(percent):
    return percent.to("").magnitude


def _percent(part):
    return Q_(100 * part.to("").magnitude, "percent")


GELATIN = Drill(
    Question(
        "another gelatin",
        "weight",
        1,
        Within(Q_(0.5, "g"), "the small scale shows half a gram"),
        lambda weight, old, new: gelatin_for(weight, old.magnitude, new.magnitude),
        (
            Slip(
                "straight ratio",
                lambda weight, old, new: gelatin_for(
                    weight, old.magnitude, new.magnitude, "linear"
                ),
                "You took the ratio of the Blooms as it stands. Firmness goes with the square of "
                "the gelatin, so the weight goes with the root of the ratio.",
            ),
            Slip(
                "root turned round",
                lambda weight, old, new: gelatin_for(weight, new.magnitude, old.magnitude),
                "The root is right and the ratio turned round. A weaker gelatin needs more.",
            ),
            Slip(
                "ratio turned round",
                lambda weight, old, new: gelatin_for(
                    weight, new.magnitude, old.magnitude, "linear"
                ),
                "Less of a weaker gelatin? Turn the ratio round, and take its root.",
            ),
        ),
        working=(
            "how many times as strong: {old} ÷ {new} = {times}",
            "its root: √{times} = {root}",
            "{weight} × {root} = {answer}",
        ),
        on_the_way={
            "times": lambda old, new: Q_((old / new).to("").magnitude, "count"),
            "root": lambda old, new: Q_((old / new).to("").magnitude ** 0.5, "count"),
        },
    ),
    "A jelly takes {weight} of gelatin of {old} Bloom. You have gelatin of {new} Bloom. "
    "How much sets it as firm?",
    "More or less than before? And firmness goes with the square.",
    {
        "weight": steps(16, 30, 1, "g", "gelatin in the recipe"),
        "old": steps(220, 250, 10, "count", "Bloom in the recipe"),
        "new": steps(130, 170, 10, "count", "your Bloom"),
    },
)

VELOUTE = Drill(
    Question(
        "butter and flour for a velouté",
        "weight",
        1,
        Within(Q_(5, "g"), "the bench scale shows 5 g"),
        lambda stock, flour: (2 * stock * flour).to("g"),
        (
            Slip(
                "flour only",
                lambda stock, flour: (stock * flour).to("g"),
                "That is the flour. A roux is flour and as much butter again.",
            ),
            Slip(
                "four parts",
                lambda stock, flour: (4 * stock * flour).to("g"),
                "You doubled twice. Flour and butter are two equal weights: double once.",
            ),
            Slip(
                "one litre",
                lambda flour: (2 * flour * Q_(1, "L")).to("g"),
                "This thickens one litre. Multiply by the litres of stock.",
            ),
        ),
        working=(
            "the flour: {stock} × {flour} = {weight}",
            "flour and as much butter: 2 × {weight} = {answer}",
        ),
        on_the_way={"weight": lambda stock, flour: (stock * flour).to("g")},
    ),
    "{stock} of stock become a velouté with {flour} of flour. Flour and butter are equal weights. "
    "What does the whole roux weigh?",
    "The figure counts the flour alone.",
    {
        "stock": steps(2, 6, 0.5, "L", "stock"),
        "flour": steps(45, 75, 5, "g/L", "flour in a litre"),
    },
)

REDUCED = Drill(
    Question(
        "reduce by Brix",
        "weight",
        1,
        Within(Q_(20, "g"), "the pot scale shows 20 g"),
        lambda juice, start, target: reduce_to(juice, start, target).to("g"),
        (
            Slip(
                "the steam",
                lambda juice, start, target: (juice - reduce_to(juice, start, target)).to("g"),
                "That is what must go up as steam. What is left in the pan is the rest.",
            ),
            Slip(
                "the difference",
                lambda juice, start, target: (juice * (1 - _part(target - start))).to("g"),
                "You took the difference of the percents off the weight. What stays is the "
                "sugar: its weight is the same before and after.",
            ),
            Slip(
                "the target's share",
                lambda juice, target: (juice * _part(target)).to("g"),
                "You multiplied by the strength wanted. Divide the sugar there is by it.",
            ),
        ),
        working=(
            "the sugar in it: {juice} × {start} = {sugar}",
            "{sugar} ÷ {target} = {answer}",
        ),
        on_the_way={"sugar": lambda juice, start: (juice * start).to("g")},
    ),
    "{juice} of cider at {start} sugar is boiled down to {target}. What is left in the pan?",
    "The sugar stays. How much of it is there?",
    {
        "juice": steps(2, 5, 0.25, "kg", "cider"),
        "start": steps(10, 14, 1, "percent", "°Brix before"),
        "target": steps(45, 65, 5, "percent", "°Brix after"),
    },
)

OIL_SHARE = Drill(
    Question(
        "oil in an emulsion",
        "percent",
        1,
        Within(Q_(0.5, "percent"), "weighing to 2 g allows no more"),
        lambda oil, rest: oil_volume_fraction(oil, rest),
        (
            Slip(
                "by weight",
                lambda oil, rest: _percent(oil / (oil + rest)),
                "That is its share of the weight. Oil is light, so it takes more of the room.",
            ),
            Slip(
                "the rest's share",
                lambda oil, rest: Q_(100, "percent") - oil_volume_fraction(oil, rest),
                "That is the share of everything else. The oil is the other part.",
            ),
            Slip(
                "densities swapped",
                lambda oil, rest: oil_volume_fraction(
                    oil, rest, Q_(1.03, "g/mL"), Q_(0.915, "g/mL")
                ),
                "You gave the oil the weight of the water. Oil floats: it is the lighter one.",
            ),
        ),
        working=(
            "the oil's volume: {oil} ÷ 0.915 g/mL = {oil_ml}",
            "the volume of the rest: {rest} ÷ 1.03 g/mL = {rest_ml}",
            "{oil_ml} ÷ ({oil_ml} + {rest_ml}) = {answer}",
        ),
        on_the_way={
            "oil_ml": lambda oil: (oil / Q_(0.915, "g/mL")).to("mL"),
            "rest_ml": lambda rest: (rest / Q_(1.03, "g/mL")).to("mL"),
        },
    ),
    "A mustard mayonnaise holds {oil} of oil (0.915 g/mL) and {rest} of yolk, mustard and vinegar "
    "(1.03 g/mL). What share of its volume is oil?",
    "Turn both weights into volumes first.",
    {
        "oil": steps(200, 400, 20, "g", "oil"),
        "rest": steps(80, 150, 10, "g", "the rest"),
    },
)


LEFT = Drill(
    Question(
        "left after reducing",
        "volume",
        1,
        Within(Q_(0.1, "L"), "a stock pot's mark shows no less"),
        lambda stock, cut: stock * (1 - _part(cut)),
        (
            Slip(
                "the steam",
                lambda stock, cut: stock * _part(cut),
                "That is what goes up as steam. Reduced “by” it means that the rest is left.",
            ),
            Slip(
                "the other way",
                lambda stock, cut: stock / (1 - _part(cut)),
                "That is more than went in: you divided. Boiling leaves less, so multiply.",
            ),
            Slip(
                "nothing gone",
                lambda stock: stock,
                "That is the stock before it is reduced. A part of it goes up as steam.",
            ),
        ),
        working=(
            "what is left: 100 % − {cut} = {left}",
            "{stock} × {left} = {answer}",
        ),
        on_the_way={
            "left": lambda cut: Q_(100, "percent") - cut,
        },
    ),
    "{stock} of stock is reduced by {cut}. How much is left in the pot?",
    "“By” says what goes. What percentage stays?",
    {
        "stock": steps(4, 10, 0.5, "L", "stock"),
        "cut": steps(20, 35, 5, "percent", "reduced by"),
    },
)

SLURRY = Drill(
    Question(
        "slurry for a sauce",
        "weight",
        1,
        Within(Q_(5, "g"), "the bench scale shows 5 g"),
        lambda flour: slurry_for(flour).weight,
        (
            Slip(
                "the starch only",
                lambda flour: slurry_for(flour).starch,
                "That is the cornflour, dry. Dry starch makes lumps: cold water belongs to it.",
            ),
            Slip(
                "the water only",
                lambda flour: slurry_for(flour).water,
                "That is the cold water. The cornflour is in the slurry too.",
            ),
            Slip(
                "as much as flour",
                lambda flour: 3 * flour,
                "You took as much cornflour as flour. It is pure starch: half is enough.",
            ),
            Slip(
                "twice the flour",
                lambda flour: 6 * flour,
                "You doubled. Cornflour thickens twice as well, so take half of the flour.",
            ),
        ),
        working=(
            "the cornflour: {flour} ÷ 2 = {starch}",
            "the cold water: {starch} × 2 = {water}",
            "{starch} + {water} = {answer}",
        ),
        on_the_way={
            "starch": lambda flour: slurry_for(flour).starch,
            "water": lambda flour: slurry_for(flour).water,
        },
    ),
    "A sauce takes {flour} of flour. A guest eats no gluten, so you take cornflour: half the "
    "weight of the flour, one part in two parts of cold water. What does the slurry weigh?",
    "First the cornflour alone. Then its water.",
    {"flour": steps(60, 240, 10, "g", "flour in the recipe")},
)


DRILLS = {
    drill.question.id: drill for drill in (GELATIN, VELOUTE, REDUCED, OIL_SHARE, LEFT, SLURRY)
} | letting_down.DRILLS
