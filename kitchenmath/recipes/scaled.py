"""The dish for more or fewer: for other covers, or for a total."""

import math
from dataclasses import replace

from kitchenmath.errors import WrongKind
from kitchenmath.ratios.scaling import conversion_factor, scale
from kitchenmath.recipes.recipe import check_recipe
from kitchenmath.units.door import alike, plain_number, positive


def for_portions(recipe, portions, portion=None):
    """The recipe for other covers, and for another size of portion if one is given.

    More portions and larger portions both count.

    Parameters
    ----------
    recipe : Recipe
    portions : float, above 0
    portion : Quantity, optional
        Of the recipe's own portion by default.

    Returns
    -------
    Recipe

    Raises
    ------
    WrongKind
        When a size is given and the recipe does not say its own.
    OutOfRange

    Examples
    --------
    4 kg for 50 covers is 1.92 kg for 24.

    >>> from kitchenmath.recipes import Ingredient, Recipe
    >>> from kitchenmath.units import Q_, say
    >>> stew = Recipe("Stew", 50, ingredients=(Ingredient("beef", Q_(4, "kg")),))
    >>> print(say(for_portions(stew, 24).ingredients[0].amount))
    1.92 kg
    """
    check_recipe(recipe)
    portions = plain_number(portions, "portions", above=0)
    if portion is None:
        return _times(recipe, portions / recipe.portions)
    if recipe.portion is None:
        raise WrongKind(
            f"portion: “{recipe.title}” does not say what a portion is. Write it in the second "
            'line, as in "makes 10 portions of 120 g".'
        )
    positive(portion, "portion")
    factor = conversion_factor((recipe.portions, recipe.portion), (portions, portion))
    return replace(_times(recipe, factor), portions=portions, portion=portion)


def for_total(recipe, total):
    """The recipe for a total weight or volume: the portion stays, their number follows.

    Parameters
    ----------
    recipe : Recipe
    total : Quantity [of the kind of the recipe's portion]

    Returns
    -------
    Recipe

    Raises
    ------
    WrongKind
        When the recipe does not say what a portion is, or that is of another kind.
    OutOfRange

    Examples
    --------
    10 portions of 120 g are 1.2 kg; 3 kg is 2.5 times that, 25 portions.

    >>> from kitchenmath.recipes import Ingredient, Recipe
    >>> from kitchenmath.units import Q_, say
    >>> soup = Recipe("Soup", 10, Q_(120, "g"), (Ingredient("celeriac", Q_(800, "g")),))
    >>> larger = for_total(soup, Q_(3, "kg"))
    >>> print(larger.portions, "portions,", say(larger.ingredients[0].amount))
    25.0 portions, 2000 g
    """
    check_recipe(recipe)
    positive(total, "total")
    if recipe.total is None:
        raise WrongKind(
            f"total: “{recipe.title}” does not say what a portion is. Write it in the second "
            'line, as in "makes 10 portions of 120 g".'
        )
    made_u, total_u = alike(recipe.total, "recipe", total, "total")
    return _times(recipe, total_u / made_u)


def look_again(recipe, factor):
    """What a factor alone does not settle, a sentence for each such ingredient.

    Parameters
    ----------
    recipe : Recipe
        As scaled.
    factor : float
        By which it was scaled.

    Returns
    -------
    dict of str to str
    """
    if math.isclose(factor, 1):
        return {}
    amounts = {each.name: each.amount for each in recipe.ingredients if each.amount is not None}
    return scale(amounts, 1).look_again


def _times(recipe, factor):
    ingredients = tuple(each.times(factor) for each in recipe.ingredients)
    return replace(recipe, portions=recipe.portions * factor, ingredients=ingredients)
