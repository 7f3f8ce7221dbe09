"""Lesson 10: nets, the last moment for the oven, foam that waits, and a kitchen with less."""

from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.units import Q_

PREDICTIONS = {
    "nets": Amount(
        "24 plates of 60 g at a yield of 68 %. How many nets of 1 kg do you order?",
        Q_(3, "count"),
        "1440 g ÷ 0.68 is 2118 g: two nets are 118 g short, two covers without brunoise.",
    ),
    "into the oven": Amount(
        "How many minutes before 19:30 do the birds go into the oven, at the latest?",
        Q_(110, "min"),
        "10 + 15 + 15 + 70 = 110 minutes, so at 17:40. The rest is the piece that people forget.",
    ),
    "foam too early": Amount(
        "How many minutes too long does the foam wait?",
        Q_(3, "min"),
        "It is ready at 19:11 and used at 19:20, when plating starts. 9 min of waiting, less 6 "
        "allowed, is 3 too many.",
    ),
    "first task": Pick(
        "Which task is first?",
        ("the birds", "the celeriac", "the dough"),
        "the dough",
        "The roll is the smallest thing on the table, and its chain is the longest: knead, wait, "
        "shape, wait, bake, cool.",
        sides=None,
    ),
    "two burners break": Pick(
        "Two of three burners break. Does the service break?",
        ("it holds", "it breaks"),
        "it holds",
        "One burner is enough, at a price: cider, velouté and brunoise take turns on it.",
        sides=None,
    ),
    "one cook ill": Pick(
        "All burners work, and one of three cooks is ill. Where are hands missing?",
        ("nowhere", "in the last 25 min", "there and in the afternoon"),
        "there and in the afternoon",
        "In the afternoon rolls and brunoise want three hands. At the end it is carving and the "
        "third hand at the plates.",
        sides=None,
    ),
    "ten covers": Pick(
        "For ten covers in place of 24, what is a cover?",
        ("cheaper", "the same", "dearer"),
        "dearer",
        "A bird feeds four, so ten covers take three birds and leave half of one.",
    ),
}
