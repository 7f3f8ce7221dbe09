"""Panels of lesson 5: salt for a brine, the salometer, evening out, and the salted broth."""

from kitchenmath.brine import (
    brine_density,
    equilibrium_strength,
    salt_for_brine,
    salt_for_equilibrium,
    salt_per_litre_of_brine,
    salt_per_litre_of_water,
    saturation,
    strength,
    strength_after_reduction,
    strength_from_salometer,
)
from kitchenmath.figures.seasoning import Salometer
from kitchenmath.figures.vessels import Heaps, Pots
from kitchenmath.panels.frame import slider, wire
from kitchenmath.units import Q_, say

SIXTY_F = Q_(60, "degF")  # the temperature that a salometer's stem is made for
GRAINS = 60  # drawn for each percent of salt in a full pot


def _fine(percent):
    """A strength to three figures, and below one percent to hundredths of it."""
    return say(percent, 3 if percent.magnitude >= 1 else 2)


def two_denominators(water_kg, strength_percent):
    """The salt for a brine of a strength, and the slip that takes the percent of the water.

    Parameters
    ----------
    water_kg, strength_percent : float

    Returns
    -------
    dict
        `amounts` (grams: right, by the slip, and missing), `words` and `sentence`.
    """
    water, wanted = Q_(water_kg, "kg"), Q_(strength_percent, "percent")
    right = salt_for_brine(water, wanted).to("g")
    slip = (water * strength_percent / 100).to("g")
    made = strength(slip, water)
    sentence = (
        f"{say(water)} ({say(water.to('lb'), 3)}) of water and {say(right)} "
        f"({say(right.to('oz'), 3)}) of salt make {say(water + right)} of brine at {say(wanted)}.\n"
        f"That is {say(salt_per_litre_of_water(wanted), 3)} of water, "
        f"or {say(salt_per_litre_of_brine(wanted), 3)} of finished brine.\n"
        f"Who takes {say(wanted)} of the water adds {say(slip)}, and has a brine of "
        f"{_fine(made)}."
    )
    words = [
        f"% of the brine\n{say(right, 3)}",
        f"% of the water\n{say(slip, 3)}",
        f"missing\n{say(right - slip, 2)}",
    ]
    grams = [amount.magnitude for amount in (right, slip, right - slip)]
    return {"amounts": grams, "words": words, "sentence": sentence}


def strength_panel():
    """Water and strength; the salt right, and the salt by the slip.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "water_kg": slider("Water (kg)", 2.0, 12.0, 0.5, 8.0),
            "strength_percent": slider("Strength (% of the brine)", 2.0, 12.0, 0.5, 6.0),
        },
        two_denominators,
        lambda picture: Heaps(picture, 3, most=1700),
        height=1.5,
    )


def stem(shown_degrees, brine_C):
    """What a salometer's degrees mean in a brine at this temperature.

    Parameters
    ----------
    shown_degrees : int
    brine_C : int

    Returns
    -------
    dict
        `shown_degrees`, `percent` (of salt) and `sentence`.
    """
    warmth = Q_(brine_C, "degC")
    held = strength_from_salometer(shown_degrees, temperature=warmth)
    as_if_cool = strength_from_salometer(shown_degrees)
    litre = brine_density(held, warmth).to("g/L").magnitude
    sentence = (
        f"The stem shows {shown_degrees}° in a brine at {say(warmth)} "
        f"({say(warmth.to('degF'), 3)}): it holds {_fine(held)} of salt.\n"
        f"Without the correction for its temperature you would say {_fine(as_if_cool)}.\n"
        f"A litre of it weighs {litre:.0f} g. Degrees are not percent: the fullest brine, "
        f"100°, holds {say(saturation(SIXTY_F), 3)}."
    )
    return {"shown_degrees": shown_degrees, "percent": held.magnitude, "sentence": sentence}


def stem_panel():
    """A reading and the brine's temperature; what the brine holds.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "shown_degrees": slider("The salometer shows (°)", 5, 95, 1, 40),
            "brine_C": slider("The brine is at (°C)", 10, 30, 1, 22),
        },
        stem,
        lambda picture: Salometer(picture, saturation(SIXTY_F).magnitude),
        height=3.1,
    )


def evening_out(birds_kg, water_kg, target_percent):
    """Salt for birds and water together, and where two short cuts end.

    Parameters
    ----------
    birds_kg, water_kg : int
    target_percent : float
        Of birds, water and salt together.

    Returns
    -------
    dict
        `levels`, `grains`, `words`, `foods` and `all_through` of four pots (at the start, in the
        end, salt for the water only, for the birds only), and `sentence`.
    """
    birds, water = Q_(birds_kg, "kg"), Q_(water_kg, "kg")
    target = Q_(target_percent, "percent")
    salt = salt_for_equilibrium(birds, water, target).to("g")
    bare = salt_for_equilibrium(birds, water, target, counting="food and water").to("g")
    start = strength(salt, water)
    short = {
        "water": salt_for_brine(water, target).to("g"),
        "birds": (birds * target_percent / 100).to("g"),
    }
    ends = {name: equilibrium_strength(birds, water, grams) for name, grams in short.items()}
    sentence = (
        f"{say(birds)} of birds and {say(water)} of water to {say(target)} of everything: "
        f"{say(salt)} of salt. (Counted without the salt: {say(bare)}.)\n"
        f"The brine starts at {_fine(start)}; left long enough, brine and birds meet at "
        f"{say(target)}.\n"
        f"Salt for the water only, {say(short['water'])}, ends at {_fine(ends['water'])}; "
        f"for the birds only, {say(short['birds'])}, at {_fine(ends['birds'])}."
    )
    level = 0.9 * (birds_kg + water_kg) / 50
    grains = [GRAINS * level * each for each in (target_percent, ends["water"].magnitude,
                                                 ends["birds"].magnitude)]  # fmt: skip
    return {
        "levels": [level] * 4,
        # At the start the same grains swim in the water alone.
        "grains": [grains[0], *grains],
        "words": [
            f"at the start:\nbrine\n{_fine(start)}",
            f"in the end:\nall of it\n{say(target)}",
            f"only water\ncounted:\n{_fine(ends['water'])}",
            f"only birds\ncounted:\n{_fine(ends['birds'])}",
        ],
        "foods": [birds_kg / (birds_kg + water_kg)] * 4,
        "all_through": [False, True, True, True],
        "sentence": sentence,
    }


def evening_out_panel():
    """Birds, water and target; how salty brine and birds are at the start and in the end.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "birds_kg": slider("Birds (kg)", 4, 20, 1, 10),
            "water_kg": slider("Water (kg)", 10, 30, 1, 24),
            "target_percent": slider("In the end (%)", 0.8, 2.4, 0.1, 1.8),
        },
        evening_out,
        lambda picture: Pots(picture, 4),
        height=2.3,
    )


def salted_first(broth_kg, salted_percent, left_percent):
    """A broth that is salted right and then reduced, and the salt that would have been enough.

    Parameters
    ----------
    broth_kg, salted_percent : float
    left_percent : int
        What is left of the broth, of its weight at the start.

    Returns
    -------
    dict
        `levels`, `grains` and `words` of three pots (at the start, reduced, salted last), and
        `sentence`.
    """
    broth, salted = Q_(broth_kg, "kg"), Q_(salted_percent, "percent")
    end = broth * left_percent / 100
    salt = (broth * salted_percent / 100).to("g")
    after = strength_after_reduction(salted, broth, end)
    enough = (end * salted_percent / 100).to("g")
    sentence = (
        f"{say(broth)} of broth at {say(salted)} hold {say(salt, 3)} of salt.\n"
        f"Reduced to {say(end, 3)} the salt is still all there: {_fine(after)}.\n"
        f"Salted last, {say(enough, 3)} are enough for {say(salted)}."
    )
    level, left = 0.9 * broth_kg / 12, left_percent / 100
    grains = 4 * GRAINS * level * salted_percent
    return {
        "levels": [level, level * left, level * left],
        "grains": [grains, grains, grains * left],
        "words": [
            f"at the start\n{say(broth)}\n{say(salted)}",
            f"salted first\n{say(end, 3)}\n{_fine(after)}",
            f"salted last\n{say(end, 3)}\n{say(salted)}",
        ],
        "sentence": sentence,
    }


def broth_panel():
    """Broth, seasoning and what is left after reducing; salted first against salted last.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "broth_kg": slider("Broth at the start (kg)", 2.0, 12.0, 0.5, 8.0),
            "salted_percent": slider("Salted at the start to (%)", 0.6, 1.0, 0.1, 0.8),
            "left_percent": slider("Left after reducing (% of it)", 20, 100, 5, 40),
        },
        salted_first,
        lambda picture: Pots(picture, 3),
        height=2.3,
    )
