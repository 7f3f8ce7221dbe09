"""Lesson 7: flour in a litre, reducing, slurry, gelatin and leaves, oil in an emulsion."""

from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.sauces import gelatin_for, reduce_to, slurry_for
from kitchenmath.units import Q_

PREDICTIONS = {
    "two roux": Pick(
        "For the same 4 L of stock one card weighs half as much roux again as the other. "
        "How thick is its sauce?",
        ("thinner", "about the same", "thicker"),
        "about the same",
        "By flour they are nearly the same: home spoons only bring more butter.",
        sides=("too thin", "too thick"),
    ),
    "reduced by": Amount(
        "6 L hold 260 g of flour. You reduce them by 30 %. By what percentage does the flour in "
        "each litre go up?",
        (Q_(1, "") / 0.7 - 1).to("percent"),
        "You divide by what is left, and 70 % is left: 43.3 g/L become 61.9 g/L.",
    ),
    "glaze": Amount(
        "2 kg of cider at 12 °Brix boil down to a glaze of 60 °Brix. What does the pan hold then?",
        reduce_to(Q_(2, "kg"), start=Q_(12, "percent"), target=Q_(60, "percent")).to("g"),
        "The 240 g of sugar stay: 240 ÷ 0.60 = 400 g. Five times as sweet is a fifth.",
    ),
    "slurry": Amount(
        "The sauce for 24 takes 120 g of flour. What does the slurry weigh that does the same, "
        "water and all?",
        slurry_for(Q_(120, "g")).weight,
        "Half of the flour, 60 g of cornflour, and twice that in water: 60 + 120 = 180 g.",
    ),
    "another Bloom": Amount(
        "A jelly takes 20 g of gelatin of 250 Bloom. You have 160 Bloom. How many grams of yours "
        "set it as firm?",
        gelatin_for(Q_(20, "g"), from_bloom=250, to_bloom=160),
        "250 ÷ 160 = 1.5625, its root is 1.25, and 20 g × 1.25 = 25 g. The straight ratio makes "
        "31 g, half as firm again.",
    ),
    "bronze leaves": Pick(
        "The card's jelly takes 12 leaves of platinum, and you have bronze. What are 12 bronze "
        "leaves?",
        ("too few", "just right", "too many"),
        "too many",
        "A bronze leaf is weak, but it weighs nearly twice as much: eight and a quarter will do.",
        sides=None,
    ),
    "room for oil": Amount(
        "100 g of yolk, mustard and vinegar fill 97 mL. How many mL of oil until 80 % is oil?",
        Q_(100, "g") / Q_(1.03, "g/mL") * 4,
        "At 80 % the oil is four times the rest: 4 × 97 = 388 mL, or 355 g.",
    ),
}
