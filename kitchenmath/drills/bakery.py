"""Drills of lesson 2: baked weight, fresh and dried yeast, what a starter brings."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_

FRESH_FOR_DRIED = 3  # times the weight: common practice, as the lesson says


def _part(percent):
    return percent.to("").magnitude


BAKED = Drill(
    Question(
        "dough for baked rolls",
        "weight",
        1,
        Within(Q_(10, "g"), "the bag scale shows 10 g"),
        lambda rolls, baked, loss: rolls.magnitude * baked / (1 - _part(loss)),
        (
            Slip(
                "dough as baked",
                lambda rolls, baked: rolls.magnitude * baked,
                "You weighed dough as if it were bread. Water goes off as steam: the dough is "
                "heavier than the roll.",
            ),
            Slip(
                "loss on top",
                lambda rolls, baked, loss: rolls.magnitude * baked * (1 + _part(loss)),
                "You added the loss to the baked weight. It is a share of the dough: divide by "
                "what is left.",
            ),
            Slip(
                "loss taken off",
                lambda rolls, baked, loss: rolls.magnitude * baked * (1 - _part(loss)),
                "That is lighter than the rolls. The loss has gone already: divide.",
            ),
            Slip(
                "one roll",
                lambda baked, loss: baked / (1 - _part(loss)),
                "That is the dough of one roll. There are more of them.",
            ),
        ),
        working=(
            "what is left: 100 % − {loss} = {left}",
            "the rolls, baked: {rolls} × {baked} = {all_baked}",
            "{all_baked} ÷ {left} = {answer}",
        ),
        on_the_way={
            "left": lambda loss: Q_(100, "percent") - loss,
            "all_baked": lambda rolls, baked: rolls.magnitude * baked,
        },
    ),
    "{rolls} rolls are promised at {baked} each, out of the oven. A roll loses {loss} of its dough "
    "there. What does all the dough weigh?",
    "Which weight is promised? And which one is on the scale?",
    {
        "rolls": steps(24, 48, 4, "count", "rolls"),
        "baked": steps(55, 75, 5, "g", "baked"),
        "loss": steps(11, 15, 1, "percent", "loss in the oven"),
    },
)

YEAST = Drill(
    Question(
        "fresh yeast for dried",
        "weight",
        1,
        Within(Q_(1, "g"), "the salt scale shows 1 g"),
        lambda flour, dried: FRESH_FOR_DRIED * flour.to("g") * _part(dried),
        (
            Slip(
                "weight for weight",
                lambda flour, dried: flour.to("g") * _part(dried),
                "You took as much fresh as dried. Fresh yeast is mostly water: it takes about "
                "three times the weight, or the dough stands still.",
            ),
            Slip(
                "a third",
                lambda flour, dried: flour.to("g") * _part(dried) / FRESH_FOR_DRIED,
                "You divided by three. That is the way from fresh to dried; here you go from dried "
                "to fresh.",
            ),
            Slip(
                "ten times",
                lambda flour, dried: 10 * FRESH_FOR_DRIED * flour.to("g") * _part(dried),
                "Ten times too much: the point slipped. One percent of a kilo is 10 g.",
            ),
        ),
        working=(
            "the dried yeast: {flour} × {dried} = {weight}",
            "{weight} × 3 = {answer}",
        ),
        on_the_way={"weight": lambda flour, dried: flour.to("g") * _part(dried)},
    ),
    "A card has {flour} of flour and {dried} of dried yeast, of the flour. The store has fresh "
    "yeast only. Take three times the weight. How much?",
    "First the dried yeast of the card. Does fresh take more or less?",
    {
        "flour": steps(1, 4, 0.25, "kg", "flour"),
        "dried": steps(0.8, 1.4, 0.1, "percent", "dried yeast"),
    },
)

STARTER = Drill(
    Question(
        "water beside a starter",
        "weight",
        1,
        Within(Q_(5, "g"), "the bench scale shows 5 g"),
        lambda flour, water, starter: flour.to("g") * _part(water) - starter / 2,
        (
            Slip(
                "starter forgotten",
                lambda flour, water: flour.to("g") * _part(water),
                "That is all the water of the dough. Half of the starter is water too: pour that "
                "much less.",
            ),
            Slip(
                "starter as water",
                lambda flour, water, starter: flour.to("g") * _part(water) - starter,
                "You took the whole starter for water. Half of it is flour.",
            ),
            Slip(
                "of the flour in the bag",
                lambda flour, water, starter: (flour.to("g") - starter / 2) * _part(water),
                "You took the percent of the flour that is left to weigh in. The starter's flour "
                "drinks too: the percent is of all the flour.",
            ),
            Slip(
                "of the flour in the bag, less the starter's water",
                lambda flour, water, starter: (
                    (flour.to("g") - starter / 2) * _part(water) - starter / 2
                ),
                "The starter's water is off, as it should be. But the percent is of all the flour, "
                "the starter's as well.",
            ),
        ),
        working=(
            "all the water: {flour} × {water} = {all_water}",
            "water in the starter: {starter} ÷ 2 = {brought}",
            "{all_water} − {brought} = {answer}",
        ),
        on_the_way={
            "all_water": lambda flour, water: flour.to("g") * _part(water),
            "brought": lambda starter: starter / 2,
        },
    ),
    "A bread has {flour} of flour in all, the starter's included, and water at {water} of it. "
    "{starter} of starter, half flour and half water, goes in. How much water do you pour?",
    "How much water belongs in the dough, and how much of it does the starter bring?",
    {
        "flour": steps(2, 4, 0.25, "kg", "flour in all"),
        "water": steps(62, 72, 2, "percent", "water, of all the flour"),
        "starter": steps(300, 700, 50, "g", "starter"),
    },
)

DRILLS = {drill.question.id: drill for drill in (BAKED, YEAST, STARTER)}
