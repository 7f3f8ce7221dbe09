"""A dish of one's own: read from typed lines, scaled, costed, ordered, and put on a card."""

from kitchenmath.recipes.card import Card, Row, card_as_html, card_of
from kitchenmath.recipes.costing import CardPrice, DishCost, card_price, dish_cost, order_for
from kitchenmath.recipes.linked_data import recipe_as_json_ld
from kitchenmath.recipes.reading import read_recipe, recipe_text
from kitchenmath.recipes.recipe import Ingredient, Recipe, bakers_percents
from kitchenmath.recipes.scaled import for_portions, for_total

__all__ = [
    "Card",
    "CardPrice",
    "DishCost",
    "Ingredient",
    "Recipe",
    "Row",
    "bakers_percents",
    "card_as_html",
    "card_of",
    "card_price",
    "dish_cost",
    "for_portions",
    "for_total",
    "order_for",
    "read_recipe",
    "recipe_as_json_ld",
    "recipe_text",
]
