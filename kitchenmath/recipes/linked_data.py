"""A recipe as schema.org's Recipe in JSON-LD, an open form that sites and programs read."""

import json

from kitchenmath.recipes.recipe import Ingredient, check_recipe
from kitchenmath.units.saying import figures, say


def recipe_as_json_ld(recipe):
    """A recipe in schema.org's words.

    Amounts are text there, in any wording; ours are written so that `read` reads them back. Yield,
    price and pack have no place in that form and stay behind.

    Parameters
    ----------
    recipe : Recipe

    Returns
    -------
    str
        JSON, with line ends; the same recipe gives the same text.

    Examples
    --------
    >>> from kitchenmath.recipes.reading import read_recipe
    >>> text = recipe_as_json_ld(read_recipe("Roll\\nserves 24\\n900 g bread flour\\n1. Bake."))
    >>> json.loads(text)["recipeIngredient"]
    ['900 g bread flour']

    References
    ----------
    schema.org, type Recipe (with HowToStep), in JSON-LD 1.1 (W3C Recommendation, 2020).
    """
    check_recipe(recipe)
    portion = f" of {say(recipe.portion)}" if recipe.portion is not None else ""
    document = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": recipe.title,
        "recipeYield": f"{figures(recipe.portions)} portions{portion}",
        "recipeIngredient": [in_words(each) for each in recipe.ingredients],
        "recipeInstructions": [{"@type": "HowToStep", "text": step} for step in recipe.steps],
    }
    return json.dumps(document, ensure_ascii=False, indent=2) + "\n"


def in_words(line: Ingredient):
    """An ingredient as one reads it: "900 g bread flour", "salt to taste"."""
    return f"{line.name} to taste" if line.amount is None else f"{say(line.amount)} {line.name}"
