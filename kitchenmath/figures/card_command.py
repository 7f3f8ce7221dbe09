"""A card from a recipe's file on the command line: python3 lessons card dish.txt --make 36."""

import argparse
import sys
from pathlib import Path

from kitchenmath.errors import KitchenError
from kitchenmath.figures.recipe_card import recipe_card
from kitchenmath.recipes.card import card_as_html
from kitchenmath.recipes.linked_data import recipe_as_json_ld
from kitchenmath.recipes.reading import read_recipe, recipe_text
from kitchenmath.recipes.wanted import worked


def main(words):
    """Write the card of a recipe as PDF and page, and the recipe as linked data, beside its file.

    Parameters
    ----------
    words : list of str

    Returns
    -------
    int
        0 when all was written, else 1 after a sentence that says what to mend.
    """
    options = _parser().parse_args(words)
    try:
        files = _write(options)
    except (KitchenError, OSError) as error:
        print(error, file=sys.stderr)
        return 1
    print("\n".join(str(file) for file in files))
    return 0


def _write(options):
    recipe = read_recipe(options.recipe.read_text(encoding="utf-8-sig"))
    made = worked(
        recipe,
        make=options.make,
        portion=options.portion,
        food_cost=options.food_cost,
        gross_profit=options.gross_profit,
        tax=options.tax,
        tax_in_price=not options.tax_on_top,
    )
    stem = options.recipe.with_suffix("")
    files = {
        stem.with_name(f"{stem.name}-card.html"): card_as_html(made.card),
        stem.with_name(f"{stem.name}.jsonld"): recipe_as_json_ld(made.recipe),
        stem.with_name(f"{stem.name}-made.txt"): recipe_text(made.recipe),
    }
    for file, text in files.items():
        file.write_text(text, encoding="utf-8")
    return [recipe_card(made.card, stem.with_name(f"{stem.name}-card.pdf")), *files]


def _parser():
    parser = argparse.ArgumentParser(prog="python3 lessons card", description=__doc__)
    parser.add_argument("recipe", type=Path, help="a text file: title, what it makes, ingredients")
    for name, what in (
        ("make", "36 portions as 36, or a total as “5 kg”; the recipe as it is by default"),
        ("portion", "another size of portion, such as “150 g”"),
        ("food-cost", "the food's share of the price before tax, such as “30 %%”"),
        ("gross-profit", "what is left of that price, such as “70 %%”"),
        ("tax", "such as “20 %%”"),
    ):
        parser.add_argument(f"--{name}", default="", help=what)
    parser.add_argument(
        "--tax-on-top", action="store_true", help="the card shows the price without the tax"
    )
    return parser
