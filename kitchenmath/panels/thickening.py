"""Panels of lesson 6 on thickening: oil in an emulsion, and gelatin of another strength."""

from kitchenmath.figures.thickening import Droplets, Leaves
from kitchenmath.panels.frame import slider, wire
from kitchenmath.sauces import gelatin_for, oil_volume_fraction, packing_marks
from kitchenmath.units import Q_, say

# The marks of the packing table in few words, for the picture.
SEEN_AS = (
    "loose packing",
    "random packing",
    "closest packing",
    "workable up to",
    "breaks from about",
)


def crowded(oil_g, rest_g):
    """How full of oil an emulsion is, by volume and by weight, and what that means.

    Parameters
    ----------
    oil_g, rest_g : int
        The rest is yolk, mustard, vinegar and water together.

    Returns
    -------
    dict
        `oil_percent` (of the volume) and `sentence`.
    """
    oil, rest = Q_(oil_g, "g"), Q_(rest_g, "g")
    full = oil_volume_fraction(oil, rest)
    sentence = (
        f"{oil_g} g of oil in {rest_g} g of the rest: {100 * oil_g / (oil_g + rest_g):.1f} % of "
        f"the weight, and {say(full, 3)} of the volume.\n"
        f"{_passed(full)}{_advice(full)}"
    )
    return {"oil_percent": full.magnitude, "sentence": sentence}


def _passed(full):
    """The highest mark of the picture that the oil has passed, in the picture's words."""
    marks = zip(SEEN_AS, packing_marks().values(), strict=True)
    passed = [f"{words} {say(mark, 2)}" for words, mark in marks if full >= mark]
    return f"Highest mark passed: {passed[-1]}." if passed else "Below every mark: it is runny."


def _advice(full):
    """What to do near the end of the scale; nothing to say below it."""
    marks = packing_marks()
    if full >= marks["mayonnaise breaks"]:
        return " Start again with a spoon of water, and beat the broken sauce into it."
    if full > marks["mayonnaise still workable"]:
        return " Stiff and near its end: a spoon of water before any more oil."
    return ""


def packing_panel():
    """Oil and the rest; how much of the volume is oil, under the marks.

    Returns
    -------
    ipywidgets VBox
    """
    marks = (mark.magnitude for mark in packing_marks().values())
    named = dict(zip(SEEN_AS, marks, strict=True))
    return wire(
        {
            "oil_g": slider("Oil (g)", 100, 900, 25, 300),
            "rest_g": slider("Yolk, mustard, vinegar (g)", 50, 200, 10, 150),
        },
        crowded,
        lambda picture: Droplets(picture, named),
        height=2.6,
    )


def other_bloom(recipe_g, recipe_bloom, own_bloom):
    """Gelatin of another strength by the root, and what the straight ratio makes of it.

    Parameters
    ----------
    recipe_g, recipe_bloom, own_bloom : int

    Returns
    -------
    dict
        `amounts_g` (recipe, by the root, by the straight ratio), `words` and `sentence`.
    """
    recipe = Q_(recipe_g, "g")
    root = gelatin_for(recipe, recipe_bloom, own_bloom)
    straight = gelatin_for(recipe, recipe_bloom, own_bloom, rule="linear")
    apart = (straight - root).to("g")
    too = "too much" if apart.magnitude > 0 else "too little"
    slip = f"{say(abs(apart), 2)} {too}"
    if recipe_bloom == own_bloom:
        slip = "the same, because the strengths are alike. Move one of them"
    sentence = (
        f"{recipe_g} g of {recipe_bloom} Bloom set as firm as {say(root, 3)} of {own_bloom} "
        f"Bloom: {recipe_g} × √({recipe_bloom} ÷ {own_bloom}).\n"
        f"The straight ratio says {say(straight, 3)}: {slip}."
    )
    amounts = (recipe_g, root.magnitude, straight.magnitude)
    names = ("in the recipe", "yours, by the root", "yours, by the straight ratio")
    words = [f"{name}: {grams:.1f} g" for name, grams in zip(names, amounts, strict=True)]
    return {"amounts_g": amounts, "words": words, "sentence": sentence}


def gelatin_panel():
    """The recipe's gelatin and yours; the weight by the root and by the straight ratio.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "recipe_g": slider("In the recipe (g)", 10, 40, 1, 20),
            "recipe_bloom": slider("Its strength (Bloom)", 130, 260, 10, 250),
            "own_bloom": slider("Yours (Bloom)", 130, 260, 10, 160),
        },
        other_bloom,
        lambda picture: Leaves(picture, 3, most_g=82),
        height=2.3,
    )
