"""Panels of lesson 2: a dough by percent of flour, parts by weight and by cups, warm water."""

from kitchenmath.figures.mixing import Dough
from kitchenmath.figures.outlines import wall
from kitchenmath.figures.vessels import Thermometers, Vessels
from kitchenmath.panels.frame import choice, slider, wire
from kitchenmath.ratios import Formula, ice_for, split, water_temperature
from kitchenmath.units import Q_, OutOfRange, say

# The bread roll of Brackwater House, in percent of flour; invented, as is the house.
ROLL = {"butter": 7, "sugar": 3, "salt": 2, "yeast": 1}
TAP = Q_(18, "degC")  # a tap in summer, for the panel

# What an old card measures in cups, and by which name the kit knows what a cup of it weighs.
MIXES = {
    "flour to water": ("bread flour", "water"),
    "sugar to water": ("granulated sugar", "water"),
    "honey to water": ("honey", "water"),
    "oil to vinegar": ("olive oil", "cider vinegar"),
}


def roll_dough(rolls, dough_g, water_percent):
    """What to weigh for so many bread rolls, and what dividing by 100 would make.

    Parameters
    ----------
    rolls : int
    dough_g : float
        Of dough for each roll.
    water_percent : float
        Of the flour.

    Returns
    -------
    dict
        `weights_kg` (flour, water, the rest), `rolls`, `made` (by the slip), the `words` and the
        `tray`'s words for the picture, and `sentence`.
    """
    percents = {"flour": 100, "water": water_percent, **ROLL}
    formula = Formula.from_percents({n: Q_(p, "percent") for n, p in percents.items()})
    dough = (rolls * Q_(dough_g, "g")).to("kg")
    right, slip = formula.weigh(total=dough), formula.weigh(flour=dough)
    made = round((sum(slip.values()) / dough).to("").magnitude * rolls)
    of_total = formula.percents_of_total["water"]
    sentence = (
        f"{rolls} rolls of {say(Q_(dough_g, 'g'))} are {say(dough)} ({say(dough.to('lb'), 3)}) of "
        f"dough. The percents add to {say(formula.total_percent)}.\n"
        f"Flour {_grams(right['flour'])}, water {_grams(right['water'])}, "
        f"salt {_grams(right['salt'])}, yeast {_grams(right['yeast'])}. "
        f"Water is {say(formula.hydration)} of the flour, and {say(of_total, 3)} of the dough.\n"
        f"Who divides by 100 weighs {_grams(slip['flour'])} of flour, and has dough for "
        f"{made} rolls."
    )
    weights_kg = _three(right)
    return {
        "weights_kg": weights_kg,
        "words": [
            f"{name}\n{kilos:.2f} kg"
            for name, kilos in zip(("flour", "water", "the rest"), weights_kg, strict=True)
        ],
        "rolls": rolls,
        "made": made,
        "tray": f"÷ {say(formula.total_percent)}: {rolls} rolls; ÷ 100 %: {made} (too many: white)",
        "sentence": sentence,
    }


def _grams(weight):
    """Whole grams, and tenths below ten: what scales show."""
    grams = weight.to("g").magnitude
    return f"{grams:.0f} g" if grams >= 10 else f"{grams:.1f} g"


def _three(weights):
    """Flour, water and all the rest in kilograms, for the drawing."""
    kilos = {name: weight.to("kg").magnitude for name, weight in weights.items()}
    flour_kg, water_kg = kilos.pop("flour"), kilos.pop("water")
    return [flour_kg, water_kg, sum(kilos.values())]


def roll_dough_panel():
    """Rolls, dough for each and water; the dough by the total percent and by the slip.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "rolls": slider("Rolls (number)", 12, 60, 4, 40),
            "dough_g": slider("Dough for each (g)", 40, 80, 5, 70),
            "water_percent": slider("Water (% of the flour)", 54, 80, 1, 62),
        },
        roll_dough,
        lambda picture: Dough(picture, most_kg=3.2),
        height=2.6,
    )


def parts(mix, first_parts, total_g):
    """A mix shared out in parts by weight, and in parts by cups.

    Parameters
    ----------
    mix : str
        A key of `MIXES`.
    first_parts : float
        Of the first ingredient, to one of the second.
    total_g : float

    Returns
    -------
    dict
        `amounts` (grams by weight, by cups), `words` and `sentence`.
    """
    first, second = MIXES[mix]
    total, asked = Q_(total_g, "g"), {first: first_parts, second: 1}
    by_weight, by_cups = split(total, asked), split(total, asked, by="volume")
    gap_g = (by_cups[first] - by_weight[first]).magnitude
    sentence = (
        f"{first_parts:g} : 1 of {first} and {second}, {say(total)} "
        f"({say(total.to('oz'), 3)}) in all.\n"
        f"By weight: {_grams(by_weight[first])} of {first} and {_grams(by_weight[second])} of "
        f"{second}.\n"
        f"By cups: {_grams(by_cups[first])} of {first} and {_grams(by_cups[second])} of {second}; "
        f"that is {abs(gap_g):.0f} g {'more' if gap_g > 0 else 'less'} {first}."
    )
    amounts = [[share.magnitude for share in way.values()] for way in (by_weight, by_cups)]
    words = [
        f"by {way}\n{first} {grams[0]:.0f} g\n{second} {grams[1]:.0f} g"
        for way, grams in zip(("weight", "cups"), amounts, strict=True)
    ]
    return {"amounts": amounts, "words": words, "sentence": sentence}


def parts_panel():
    """A mix, its parts and the total; two bars, one by weight and one by cups.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "mix": choice("What is mixed", MIXES),
            "first_parts": slider("Parts of the first (to 1)", 0.5, 4.0, 0.5, 2.0),
            "total_g": slider("In all (g)", 200, 1500, 50, 1000),
        },
        parts,
        lambda picture: Vessels(picture, 2, most=1600, outline=wall, lines=3),
        height=2.6,
    )


def dough_water(target_C, bakehouse_C, friction_C):
    """The water for a dough of the wanted temperature, as a sum that must come out.

    Parameters
    ----------
    target_C : float
        Of the dough.
    bakehouse_C : float
        Flour and room, both.
    friction_C : float
        What the mixer adds to the sum, a difference.

    Returns
    -------
    dict
        `temperatures_C` (flour, room, friction, water) and `words` below them, `wanted_C` and
        what is written there, and `sentence`.
    """
    target, bakehouse = Q_(target_C, "degC"), Q_(bakehouse_C, "degC")
    heat_C = [bakehouse_C, bakehouse_C, friction_C]
    lines = [
        f"A dough of {_both(target)} wants a sum of 3 × {target_C:g} = {3 * target_C:g}.",
        f"Flour {bakehouse_C:g}, room {bakehouse_C:g} and friction {friction_C:g} make "
        f"{sum(heat_C):g} of it.",
    ]
    try:
        water = water_temperature(target, bakehouse, bakehouse, Q_(friction_C, "delta_degC"))
    except OutOfRange:
        water_C = 0.0
        lines.append(_no_water_will_do(3 * target_C - sum(heat_C)))
        water_says = "none will do"
    else:
        water_C = water.magnitude
        lines[-1] += f" So the water is {_both(water)}.{_colder(water)}"
        too_warm = Q_(friction_C / 3, "delta_degC")
        lines.append(f"Forget the friction, and the dough comes out {say(too_warm, 2)} too warm.")
        water_says = f"{water_C:g} °C"
    return {
        "temperatures_C": [*heat_C, max(water_C, 0)],
        "words": [
            f"flour\n{bakehouse_C:g} °C",
            f"room\n{bakehouse_C:g} °C",
            f"friction\n+{friction_C:g} °C",
            f"water\n{water_says}",
        ],
        "wanted_C": target_C,
        "wanted": f"dashed: the dough wanted, {target_C:g} °C",
        "sentence": "\n".join(lines),
    }


def _both(temperature):
    """A temperature in °C with °F beside it."""
    return f"{say(temperature)} ({say(temperature.to('degF'), 3)})"


def _no_water_will_do(needed_C):
    """What to change where the water would have to be ice, or hot enough to harm the yeast."""
    change = (
        "Cool the flour, or mix less."
        if needed_C < 0
        else "Yeast is sure of 45 °C only: warm the flour."
    )
    return f"The water would have to be {needed_C:g} °C: no water will do. {change}"


def _colder(water):
    """The ice for a kilo of water where the tap is too warm."""
    if water >= TAP:
        return ""
    ice = ice_for(Q_(1, "kg"), wanted=water, tap=TAP)["ice"]
    return f" From a tap of {say(TAP)}, {_grams(ice)} of each kilo of it is crushed ice."


def dough_water_panel():
    """Wanted dough, bakehouse and friction; the sum that is wanted and what makes it up.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "target_C": slider("Dough wanted (°C)", 22.0, 28.0, 0.5, 25.0),
            "bakehouse_C": slider("Flour and room (°C)", 14, 32, 1, 21),
            "friction_C": slider("Friction (°C on the sum)", 1, 18, 1, 9),
        },
        dough_water,
        lambda picture: Thermometers(picture, 4, most_C=60),
        height=2.4,
    )
