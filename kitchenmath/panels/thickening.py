"""Panels of lesson 7: flour in what is left, gelatin of another strength, oil in an emulsion."""

from kitchenmath.figures.outlines import wall
from kitchenmath.figures.thickening import Droplets, Leaves
from kitchenmath.figures.vessels import Vessels
from kitchenmath.panels.frame import slider, wire
from kitchenmath.sauces import (
    gelatin_for,
    leaf_gelatins,
    oil_volume_fraction,
    packing_marks,
    per_litre,
    roux_for,
    slurry_for,
)
from kitchenmath.units import Q_, say

# The marks of the packing table in few words, for the picture.
SEEN_AS = (
    "loose packing",
    "random packing",
    "closest packing",
    "workable up to",
    "breaks from about",
)


def coats(stock_l, cut_percent, flour_g):
    """How thick a velouté becomes: the flour in each litre that is left, beside a book's bodies.

    Parameters
    ----------
    stock_l : float
        Before it is reduced.
    cut_percent : int
        What boils away.
    flour_g : int
        In the roux, with as much butter.

    Returns
    -------
    dict
        `amounts` (litres: before, and what is left under what went up as steam), `words` and
        `sentence`.
    """
    left = Q_(stock_l * (1 - cut_percent / 100), "L")
    thick = per_litre(Q_(flour_g, "g"), left)
    slurry = slurry_for(Q_(flour_g, "g"))
    sentence = (
        f"{stock_l:g} L reduced by {cut_percent} % leave {say(left, 3)}. {flour_g} g of flour are "
        f"{say(thick, 3)}: {body_of(thick)}.\n"
        f"The roux weighs {2 * flour_g} g. Without flour: about {say(slurry.starch, 3)} of "
        f"cornflour in {say(slurry.water, 3)} of cold water."
    )
    amounts = [(stock_l, 0), (left.magnitude, stock_l - left.magnitude)]
    words = [f"stock\n{stock_l:g} L", f"left {left.magnitude:.2f} L\n{say(thick, 3)} of flour"]
    return {"amounts": amounts, "words": words, "sentence": sentence}


BODIES = ("thin", "medium", "thick")


def body_of(thick):
    """Where a sauce lies among the bodies of Gisslen's table.

    Parameters
    ----------
    thick : Quantity [g/L]
        Flour in a litre.

    Returns
    -------
    str
    """
    flour = [roux_for(Q_(1, "L"), body).flour_per_litre for body in BODIES]
    if thick < 0.95 * flour[0]:
        return "runny, below a book's thin sauce"
    if thick > 1.05 * flour[-1]:
        return "paste, beyond a book's thick sauce"
    near = min(range(len(BODIES)), key=lambda place: abs((thick / flour[place]).magnitude - 1))
    return f"about as a book's {BODIES[near]} sauce ({say(flour[near], 3)})"


def veloute_panel():
    """Stock, what boils away, and flour; what is left, and how thick it becomes.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "stock_l": slider("Stock (L)", 2.0, 8.0, 0.5, 6.0),
            "cut_percent": slider("Reduced by (%)", 0, 60, 5, 0),
            "flour_g": slider("Flour in the roux (g)", 100, 500, 10, 260),
        },
        coats,
        lambda picture: Vessels(picture, 2, most=8.4, outline=wall),
        height=2.6,
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
    kinds = [_kind(bloom) for bloom in (recipe_bloom, own_bloom)]
    sentence = (
        f"{recipe_g} g of {recipe_bloom} Bloom{kinds[0]} set as firm as {say(root, 3)} "
        f"of {own_bloom} Bloom{kinds[1]}: {recipe_g} × √({recipe_bloom} ÷ {own_bloom}).\n"
        f"The straight ratio says {say(straight, 3)}: {slip}."
    )
    amounts = (recipe_g, root.magnitude, straight.magnitude)
    names = ("in the recipe", "yours, by the root", "yours, by the straight ratio")
    words = [f"{name}: {grams:.1f} g" for name, grams in zip(names, amounts, strict=True)]
    return {"amounts_g": amounts, "words": words, "sentence": sentence}


def _kind(bloom):
    """The names under which leaves of this Bloom are sold, in brackets; "" where none is."""
    named = [
        name for name, leaf in leaf_gelatins().items() if leaf.bloom[0] <= bloom <= leaf.bloom[1]
    ]
    return f" ({' or '.join(named)})" if named else ""


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
            "own_bloom": slider("Yours (Bloom)", 130, 260, 10, 200),
        },
        other_bloom,
        lambda picture: Leaves(picture, 3, most_g=82),
        height=2.3,
    )
