"""Drills of lesson 1: one factor for the card, a wider pan, a step of degrees, and measures."""

from kitchenmath.drills import Drill, measures
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_


def _times(new, old):
    """How many times as much, as a plain number."""
    return (new / old).to("").magnitude


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
        working=(
            "what is wanted: {new} × {large} = {wanted}",
            "what the card makes: {old} × {small} = {made}",
            "{wanted} ÷ {made} = {answer}",
        ),
        on_the_way={
            "wanted": lambda new, large: new.magnitude * large,
            "made": lambda old, small: old.magnitude * small,
        },
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
        working=(
            "in the same pan: {depth} × {factor} = {same}",
            "the old floor in the new one: ({old} ÷ {new})² = {floor}",
            "{same} × {floor} = {answer}",
        ),
        on_the_way={
            "same": lambda depth, factor: depth * factor.magnitude,
            "floor": lambda old, new: Q_(_times(old, new) ** 2, "count"),
        },
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
        working=(
            "the step in °C: {rise} ÷ 1.8 = {step}",
            "{now} + {step} = {answer}",
        ),
        on_the_way={
            "step": lambda rise: rise.to("delta_degC"),
        },
    ),
    "A dough stands at {now}. An American card lets it warm by {rise}. What does it show then?",
    "A step has no 32 in it. 18 °F of step are 10 °C of step.",
    {
        "now": steps(18, 23, 1, "degC", "dough now"),
        "rise": steps(8, 14, 1, "delta_degF", "warmer"),
    },
)

DRILLS = measures.DRILLS | {drill.question.id: drill for drill in (ONE_LINE, FACTOR, DEPTH, WARMER)}
