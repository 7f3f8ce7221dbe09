"""Lesson 5: percents of salt, a salometer, a brine at its start, a broth that boils down."""

from kitchenmath.brine import strength, strength_from_salometer
from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.units import Q_, say


def _gap(share):
    """Salt for 8 kg of water by percent of the brine, less that by percent of the water."""
    return Q_(8000 * share / (1 - share) - 8000 * share, "g")


PREDICTIONS = {
    "salt in a kilo": Amount(
        "100 g of salt are stirred into 1 kg of water. What percentage of the brine is salt?",
        strength(salt=Q_(100, "g"), water=Q_(1, "kg")),
        "The salt is in the tub too, so the whole weighs 1100 g, and 100 ÷ 1100 is 9.09 %.",
    ),
    "two percents": Amount(
        f"8 kg of water, brine of 6 %: the two ways of counting are {say(_gap(0.06), 2)} apart. "
        "How far apart are they at 12 %?",
        _gap(0.12),
        "From 31 g to 131 g: twice as strong is more than four times the gap.",
    ),
    "sixty degrees": Amount(
        "The salometer shows 60°, cold. What is the strength, in percent?",
        strength_from_salometer(60),
        "Degrees are not percent: 60° is sixty hundredths of a full brine, 0.60 × 26.4 = 15.84 %.",
    ),
    "brine at the start": Amount(
        "733 g of salt are in the 24 kg of water, and the 16 kg of birds are not in yet. "
        "How strong is the brine?",
        strength(salt=Q_(733.2, "g"), water=Q_(24, "kg")),
        "733.2 ÷ 24 733 = 2.96 %. The birds will take their share of it.",
    ),
    "last quarter": Pick(
        "A broth boils down to half, and then to a quarter. Which step adds more salt to each "
        "spoon?",
        ("down to half", "both alike", "half to a quarter"),
        "half to a quarter",
        "Down to half: 0.8 to 1.6 %. Half to a quarter: 1.6 to 3.2 %, twice as much.",
        sides=None,
    ),
}
