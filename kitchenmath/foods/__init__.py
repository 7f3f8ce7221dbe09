"""How well a food carries and holds heat, reckoned from what it is made of.

Composition goes in (from a label or the table of common foods), conductivity, density, specific
heat and diffusivity come out. Water decides nearly everything: it holds most heat and carries it
best, so lean and watery foods of all kinds come close to each other.
"""

from kitchenmath.foods.composition import (
    food,
    food_names,
    food_source,
)
from kitchenmath.foods.mixture import (
    Food,
)

__all__ = [
    "Food",
    "food",
    "food_names",
    "food_source",
]
