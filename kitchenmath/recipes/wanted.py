"""What is asked of a recipe, as people type it: for how many, at which food cost, which tax."""

from dataclasses import dataclass

from kitchenmath.errors import KitchenError, WrongKind
from kitchenmath.recipes.card import Card, card_of
from kitchenmath.recipes.costing import card_price, dish_cost
from kitchenmath.recipes.recipe import Recipe
from kitchenmath.recipes.scaled import for_portions, for_total
from kitchenmath.units.reading import read
from kitchenmath.units.registry import kind_of


@dataclass(frozen=True)
class Worked:
    """A recipe as it was asked for.

    Attributes
    ----------
    recipe : Recipe
    card : Card
    factor : float
    """

    recipe: Recipe
    card: Card
    factor: float


def worked(recipe, make="", portion="", food_cost="", gross_profit="", tax="", tax_in_price=True):
    """A recipe scaled, priced and put on a card, from what a cook typed.

    Parameters
    ----------
    recipe : Recipe
    make : str
        "36" for so many portions, "5 kg" or "3 L" for a total; "" for the recipe as it is.
    portion : str
        Another size of portion, such as "150 g"; only beside a number of portions.
    food_cost, gross_profit : str
        Such as "30 %". One of them, or none for a card without a price.
    tax : str
        Such as "20 %".
    tax_in_price : bool
        Whether the card's price has the tax in it.

    Returns
    -------
    Worked

    Raises
    ------
    KitchenError
        Naming the box, what came, and what to type.
    WrongKind
        When a price is asked for and no ingredient has one.
    """
    made = recipe
    if make.strip():
        amount = _read(make, "make")
        if kind_of(amount) == "number":
            made = for_portions(recipe, amount.magnitude, _read(portion, "portion"))
        else:
            made = for_total(recipe, amount)
    elif portion.strip():
        made = for_portions(recipe, recipe.portions, _read(portion, "portion"))
    factor = _factor(recipe, made)
    shares = {"food_cost": _percent(food_cost, "food cost"),
              "gross_profit": _percent(gross_profit, "gross profit")}  # fmt: skip
    price = None
    if any(share is not None for share in shares.values()):
        cost = dish_cost(made).portion
        if cost is None:
            raise WrongKind("price: no ingredient has a price yet; type one, as in “$3.20 per kg”.")
        price = card_price(cost, **shares, tax=_percent(tax, "tax"), tax_in_price=tax_in_price)
    return Worked(made, card_of(made, factor, price), factor)


def _factor(old, new):
    """By how much a recipe was multiplied."""
    for before, after in zip(old.ingredients, new.ingredients, strict=True):
        if before.amount is not None:
            return (after.amount / before.amount).to("").magnitude
    return 1.0


def _percent(typed, name):
    """A share as typed; "30" beside a box that asks for a percent can only mean 30 %."""
    if not typed.strip():
        return None
    value = _read(typed if "%" in typed or "percent" in typed else f"{typed} %", name)
    if kind_of(value) != "percent":
        raise WrongKind(f"{name}: type a percent such as “30 %”, and “{typed}” came.")
    return value


def _read(typed, name):
    if not typed.strip():
        return None
    try:
        return read(typed)
    except KitchenError as error:
        raise type(error)(f"{name}: {error}") from None
