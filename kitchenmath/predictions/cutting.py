"""Lesson 3: sizes, squares, tapers, ten pieces, and the time for a new size."""

from kitchenmath.cuts import cooking_time_factor, squared_yield
from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.units import Q_

PREDICTIONS = {
    "brunoise": Pick(
        "Five sources print how wide a brunoise is. How far apart are they?",
        ("they agree", "one is twice the other", "one is three times the other"),
        "one is three times the other",
        "They run from 1 mm to 3 mm, and each source is sure of itself.",
        sides=("too little", "too much"),
    ),
    "dice": Amount(
        "How many brunoise of 3 mm make one small dice of 6 mm?",
        Q_(8, "count"),
        "Two along each of three edges: 2 × 2 × 2 = 8.",
    ),
    "carrot squared": Amount(
        "A straight, peeled carrot is squared off. What percentage of it is left?",
        squared_yield("cylinder", diameter=Q_(40, "mm")).yield_,
        "A square in a circle is 2 ÷ π of it, however thick the carrot is.",
    ),
    "tapered carrot": Pick(
        "A carrot is half as wide at the thin end as at the thick one. How much is left when it is "
        "squared in one piece?",
        ("under 30 %", "about 40 %", "about 50 %"),
        "under 30 %",
        "The thin end decides for the whole length: 27 % is left.",
    ),
    "fifteen millimetres": Amount(
        "In boiling water cubes of 20 mm take 16 minutes. By the square, how long do 15 mm take?",
        Q_(16, "min") * cooking_time_factor(Q_(20, "mm"), Q_(15, "mm")),
        "15 ÷ 20 = 0.75, and 0.75 × 0.75 × 16 = 9 minutes. Straight it would be 12.",
    ),
}
