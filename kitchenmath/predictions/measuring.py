"""Lesson 1: whose cup, one factor, a smaller plate, a small pan."""

from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.ratios import conversion_factor
from kitchenmath.units import Q_

PREDICTIONS = {
    "largest cup": Amount(
        "A cup is not the same in all countries. By what percentage is the largest larger "
        "than the smallest?",
        (Q_(1, "uk_cup") / Q_(1, "jp_cup")).to("") * Q_(100, "percent") - Q_(100, "percent"),
        "An old British cup holds 284 mL, a Japanese one 200 mL: 284 ÷ 200 = 1.42.",
    ),
    "factor": Amount(
        "The card makes 4 covers of 60 g. You want 40 covers of 75 g. How many times the card?",
        Q_(conversion_factor(old=(4, Q_(60, "g")), new=(40, Q_(75, "g"))), "count"),
        "Ten times the covers, and each plate a quarter larger. 36 is the difference: how many "
        "guests more. It multiplies nothing.",
    ),
    "smaller plate": Pick(
        "The plates shrink to 50 g. Who forgets the size of the portion takes ten times the card. "
        "What does that make?",
        ("too little", "just enough", "too much"),
        "too much",
        "The factor is 40 × 50 ÷ 240 = 8.33, less than ten. At 60 g, as on the card, forgetting "
        "it costs nothing.",
        sides=None,
    ),
    "little pan": Amount(
        "3 L for 40 covers go into the card's little pan, 16 cm across. How deep do they stand?",
        Q_(3, "L").to("cm**3") / (Q_(16, "cm") ** 2 * 0.785398),
        "The floor is 0.785 × 16 × 16 = 201 cm², and 3000 ÷ 201 = 14.9 cm: a pot, no sauce pan.",
    ),
}
