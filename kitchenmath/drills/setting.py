"""Drill of lesson 7 on leaf gelatin: leaves of one kind for leaves of another."""

import math

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_


def _root(old, new):
    return math.sqrt((old / new).to("").magnitude)


def _unlike(leaves, found):
    """A number of leaves, or None where nobody can tell it from leaf for leaf."""
    return found if abs((found - leaves).to("count").magnitude) > 1 else None


LEAVES = Drill(
    Question(
        "leaves of another kind",
        "count",
        1,
        Within(Q_(0.25, "count"), "scissors cut a leaf into quarters"),
        lambda leaves, card_leaf, card, own_leaf, own: (
            leaves * _root(card, own) * (card_leaf / own_leaf).to("").magnitude
        ),
        (
            Slip(
                "leaf for leaf",
                lambda leaves: leaves,
                "You took leaf for leaf. Leaves of different kinds differ in weight and in Bloom: "
                "go by grams.",
            ),
            Slip(
                "the strength only",
                lambda leaves, card, own: leaves * _root(card, own),
                "The root is right, and then you counted leaves as if they weighed the same. "
                "Yours are heavier, so fewer are enough.",
            ),
            Slip(
                "the weight only",
                lambda leaves, card_leaf, own_leaf: (
                    leaves * (card_leaf / own_leaf).to("").magnitude
                ),
                "You went by grams only. Yours is weaker, so it takes more grams than the card.",
            ),
            Slip(
                "without the root",
                lambda leaves, card_leaf, card, own_leaf, own: _unlike(
                    leaves, leaves * (card_leaf * card / (own_leaf * own)).to("").magnitude
                ),
                "You took the ratio of the Blooms as it stands. The weight goes with its root.",
            ),
        ),
        working=(
            "grams on the card: {leaves} × {card_leaf} = {grams}",
            "the root: √({card} ÷ {own}) = {root}",
            "grams of yours: {grams} × {root} = {own_grams}",
            "{own_grams} ÷ {own_leaf} = {answer}",
        ),
        on_the_way={
            "grams": lambda leaves, card_leaf: leaves.magnitude * card_leaf,
            "root": lambda card, own: Q_(_root(card, own), "count"),
            "own_grams": lambda leaves, card_leaf, card, own: (
                leaves.magnitude * card_leaf * _root(card, own)
            ),
        },
    ),
    "A jelly takes {leaves} leaves of {card_leaf} each, {card} Bloom. Your leaves weigh {own_leaf} "
    "each and have {own} Bloom. How many leaves set it as firm?",
    "Turn leaves into grams, grams into your grams, and those into leaves.",
    {
        "leaves": steps(10, 20, 1, "count", "leaves in the recipe"),
        "card_leaf": steps(1.7, 1.8, 0.1, "g", "a leaf of the recipe's kind"),
        "card": steps(240, 250, 10, "count", "Bloom in the recipe"),
        "own_leaf": steps(3.2, 3.4, 0.1, "g", "a leaf of yours"),
        "own": steps(130, 150, 10, "count", "your Bloom"),
    },
)

DRILLS = {LEAVES.question.id: LEAVES}
