"""What is left after trimming and cooking, and what to buy so that enough is left.

"As purchased" is what comes through the door, "edible portion" what reaches the plate;
the yield is the second over the first. What the buying needs beside it (the butcher's test,
whole packs, cost) lies in modules of its own and can be had from here.
"""

from kitchenmath.yields.butchery import (
    CookingTest,
    TrimTest,
)
from kitchenmath.yields.costing import (
    allowed_cost,
    edible_cost,
    margin_of,
    menu_price,
    portion_cost,
)
from kitchenmath.yields.ordering import (
    OrderLine,
    Pack,
    order,
    portions,
)
from kitchenmath.yields.shares import (
    as_purchased,
    cooking_loss,
    edible_portion,
    published_yields,
    yield_from_factor,
    yield_of,
)

__all__ = [
    "CookingTest",
    "OrderLine",
    "Pack",
    "TrimTest",
    "allowed_cost",
    "as_purchased",
    "cooking_loss",
    "edible_cost",
    "edible_portion",
    "margin_of",
    "menu_price",
    "order",
    "portion_cost",
    "portions",
    "published_yields",
    "yield_from_factor",
    "yield_of",
]
