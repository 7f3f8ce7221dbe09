"""Drills of lesson 1: whose cup, which ounce, one factor for the card, and a step of degrees."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_

# A hand fills a cup or a spoon no more exactly than this.
BY_HAND = Within(Q_(2, "percent"), "a hand fills a measure no better")


def _as_if(volume, unit):
    """As many of another country's measure."""
    return Q_(volume.magnitude, unit)


def _times(new, old):
    """How many times as much, as a plain number."""
    return (new / old).to("").magnitude


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
        working=("{cups} × 200 mL × {density} = {answer}",),
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
        working=("{spoons} × 20 mL × {density} = {answer}",),
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
        working=("{ounces} × 29.6 mL × {density} = {answer}",),
    ),
    "An American card asks for honey: {ounces}. Its density is {density}. What do you weigh?",
    "fl oz is a volume: 29.6 mL in America. What does each millilitre weigh?",
    {
        "ounces": steps(3, 10, 0.5, "us_fluid_ounce", "on the card"),
        "density": steps(1.40, 1.44, 0.02, "g/mL", "weight of a millilitre"),
    },
)

ONE_LINE = Drill(
    Question(
        "one line of a card",
        "weight",
        1,
        Within(Q_(5, "g"), "the bench scale shows 5 g"),
        lambda line, old, new: line * _times(new, old),
        (
            Slip(
                "added the difference",
                lambda line, old, new: line + Q_(new.magnitude - old.magnitude, "g"),
                "You added the difference in covers as grams. Each cover takes a share: divide "
                "the covers and multiply.",
            ),
            Slip(
                "the extra covers only",
                lambda line, old, new: line * (_times(new, old) - 1),
                "This feeds the extra covers only. The first ones eat too.",
            ),
            Slip(
                "times the covers",
                lambda line, new: line * new.magnitude,
                "You multiplied by the covers. The line is for more than one of them already.",
            ),
            Slip(
                "upside down",
                lambda line, old, new: line * _times(old, new),
                "The factor is upside down: more covers, and less butter?",
            ),
        ),
        working=(
            "the factor: {new} ÷ {old} = {factor}",
            "{line} × {factor} = {answer}",
        ),
        on_the_way={"factor": lambda new, old: Q_(_times(new, old), "count")},
    ),
    "The card has {line} of butter and makes {old} covers. You cook for {new}. What do you weigh?",
    "How many times the card is it?",
    {
        "line": steps(30, 90, 10, "g", "on the card"),
        "old": steps(4, 8, 2, "count", "covers on the card"),
        "new": steps(28, 60, 4, "count", "covers wanted"),
    },
)

FACTOR = Drill(
    Question(
        "conversion factor",
        "count",
        1,
        Within(Q_(1, "percent"), "three figures are enough"),
        lambda old, small, new, large: _times(new * large, old * small),
        (
            Slip(
                "forgot the portion",
                lambda old, new: _times(new, old),
                "The plates grew too. Portions times size, on both sides.",
            ),
            Slip(
                "upside down",
                lambda old, small, new, large: _times(old * small, new * large),
                "Upside down: what is wanted goes on top.",
            ),
            Slip(
                "the difference",
                lambda old, new: new - old,
                "That is how many more plates. A factor says how many times as much.",
            ),
        ),
        working=("({new} × {large}) ÷ ({old} × {small}) = {answer}",),
    ),
    "A card makes {old} plates of {small}. You want {new} plates of {large}. "
    "What is the factor? Type the number alone.",
    "What is wanted, over what the card makes. Plates times size, both times.",
    {
        "old": steps(20, 36, 4, "count", "plates on the card"),
        "small": steps(150, 200, 10, "g", "each"),
        "new": steps(40, 60, 4, "count", "plates wanted"),
        "large": steps(220, 260, 10, "g", "each"),
    },
)

DEPTH = Drill(
    Question(
        "depth in a wider pan",
        "length",
        1,
        Within(Q_(2, "mm"), "a ruler in a pan shows no better"),
        lambda depth, factor, old, new: depth * factor.magnitude * _times(old, new) ** 2,
        (
            Slip(
                "same pan",
                lambda depth, factor: depth * factor.magnitude,
                "That is the depth in the old pan. A wider one spreads it out.",
            ),
            Slip(
                "widths, not areas",
                lambda depth, factor, old, new: depth * factor.magnitude * _times(old, new),
                "You compared the widths. A pan twice as wide has four times the floor.",
            ),
            Slip(
                "forgot the factor",
                lambda depth, old, new: depth * _times(old, new) ** 2,
                "That is the old amount in the new pan. There is more of it now.",
            ),
        ),
        working=("the same pan: {depth} × {factor}", "× ({old} ÷ {new})², so {answer}"),
    ),
    "Soup stands {depth} deep in a pan {old} across. You make {factor} times as much, in a pan "
    "{new} across. How deep does it stand?",
    "First the same pan. Then: how many times as large is the floor of the new one?",
    {
        "depth": steps(20, 35, 5, "mm", "deep"),
        "factor": steps(5, 10, 1, "count", "times as much"),
        "old": steps(16, 20, 2, "cm", "the card's pan"),
        "new": steps(30, 40, 2, "cm", "the large pan"),
    },
)

WARMER = Drill(
    Question(
        "a step of so many degrees",
        "temperature",
        1,
        Within(Q_(1, "delta_degC"), "a probe is good to a degree"),
        lambda now, rise: now + rise,
        (
            Slip(
                "step as a point",
                lambda now, rise: now + Q_((rise.magnitude - 32) / 1.8, "delta_degC"),
                "You took 32 off. That is for a point on the scale. A step is only divided by 1.8.",
            ),
            Slip(
                "°F as °C",
                lambda now, rise: now + Q_(rise.magnitude, "delta_degC"),
                "You took steps of °F for steps of °C. A °F is the smaller step.",
            ),
            Slip("went down", lambda now, rise: now - rise, "It gets warmer, not colder."),
        ),
        working=("{rise} of step ÷ 1.8, in °C", "added to {now} = {answer}"),
    ),
    "A dough stands at {now}. An American card lets it warm by {rise}. What does it show then?",
    "A step has no 32 in it. 18 °F of step are 10 °C of step.",
    {
        "now": steps(18, 23, 1, "degC", "dough now"),
        "rise": steps(8, 14, 1, "delta_degF", "warmer"),
    },
)

DRILLS = {
    drill.question.id: drill
    for drill in (CUPS, SPOONS, FLUID_OUNCES, ONE_LINE, FACTOR, DEPTH, WARMER)
}
