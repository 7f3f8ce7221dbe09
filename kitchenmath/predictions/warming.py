"""Lesson 8: thickness squared, the middle of a fillet, rims, a hotter oven.

What comes out of a solved slab or a roast is written down, so that a lesson opens at once; the
tests solve them.
"""

from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.units import Q_

PREDICTIONS = {
    "thickness": Amount(
        "A fillet of 20 mm takes 12 minutes. How long does one of 40 mm take?",
        Q_(12, "min") * (40 / 20) ** 2,
        "Heat has twice as far to go, and twice as much fish to warm on the way: twice times twice "
        "is four.",
    ),
    "middle of the fillet": Amount(
        "A fillet of 30 mm from the fridge, 5 °C, lies in a bath of 60 °C. How warm is its middle "
        "after 10 minutes?",
        Q_(27.6, "degC"),
        "For the first minutes the middle knows nothing. Then it runs.",
    ),
    "hottest rim": Pick(
        "Baths of 55, 60 and 80 °C. Each time we stop when the core is at 48 °C. By how much is "
        "the rim of the fiercest one hotter than its core?",
        ("by 6 °C", "by 16 °C", "by 26 °C"),
        "by 26 °C",
        "In the gentle bath it is 6 °C. The fierce one is twice as fast, and that is the chalky "
        "rim.",
    ),
    "hotter oven": Amount(
        "The covered loin is done in 67 minutes at 100 °C. How many minutes does it take at "
        "200 °C?",
        Q_(62, "min"),
        "A few minutes less. The outside is wet, and steam holds it near one temperature.",
    ),
}
