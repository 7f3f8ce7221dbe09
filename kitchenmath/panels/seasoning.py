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
from kitchenmath.figures.frame import Picture
from kitchenmath.figures.seasoning import (
    draw_reduction,
    draw_rows,
    draw_salt,
    draw_stem,
    move_reduction,
    move_rows,
    move_salt,
    move_stem,
)
from kitchenmath.panels.frame import slider, wire
from kitchenmath.units import Q_, say

SIXTY_F = Q_(60, "degF")  # the temperature that a salometer's stem is made for
LEFT_PERCENTS = tuple(range(100, 19, -2))  # where the broth's curve is drawn


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
        `amounts_g` (right, slip) and `sentence`.
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
    return {"amounts_g": (right.magnitude, slip.magnitude), "sentence": sentence}


def strength_panel():
    """Water and strength; the salt right, and the salt by the slip.

    Returns
    -------
    ipywidgets VBox
    """
    picture = Picture(height=2.1)
    start = two_denominators(8, 6)
    artists = draw_salt(picture.axes(bottom=0.27, top=0.98), *start["amounts_g"], most_g=1700)

    def update(**values):
        found = two_denominators(**values)
        move_salt(artists, *found["amounts_g"])
        return found["sentence"]

    return wire(
        {
            "water_kg": slider("Water (kg)", 2.0, 12.0, 0.5, 8.0),
            "strength_percent": slider("Strength (% of the brine)", 2.0, 12.0, 0.5, 6.0),
        },
        picture,
        update,
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
        `marks` (degrees shown, percent of salt) and `sentence`.
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
    return {"marks": (shown_degrees, held.magnitude), "sentence": sentence}


def stem_panel():
    """A reading and the brine's temperature; what the brine holds.

    Returns
    -------
    ipywidgets VBox
    """
    picture = Picture(height=2.6)
    start = stem(40, 22)
    artists = draw_stem(
        picture.axes(bottom=0.02, top=0.98), *start["marks"], saturation(SIXTY_F).magnitude
    )

    def update(**values):
        found = stem(**values)
        move_stem(artists, *found["marks"])
        return found["sentence"]

    return wire(
        {
            "shown_degrees": slider("The salometer shows (°)", 5, 95, 1, 40),
            "brine_C": slider("The brine is at (°C)", 10, 30, 1, 22),
        },
        picture,
        update,
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
        `percents` (in the end, brine at the start, salt for the water only, for the birds only)
        and `sentence`.
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
    percents = [target_percent, start.magnitude, ends["water"].magnitude, ends["birds"].magnitude]
    return {"percents": percents, "sentence": sentence}


def evening_out_panel():
    """Birds, water and target; how salty brine and birds are at the start and in the end.

    Returns
    -------
    ipywidgets VBox
    """
    picture = Picture(height=3.1)
    names = [
        "brine and birds in the end",
        "the brine at the start",
        "the end, if only the water was counted",
        "the end, if only the birds were counted",
    ]
    start = evening_out(16, 24, 1.8)
    ax = picture.axes(bottom=0.17, top=0.99)
    artists = draw_rows(ax, names, start["percents"], "%", most=7)
    ax.set_xlabel("salt (%)", fontsize=10)

    def update(**values):
        found = evening_out(**values)
        move_rows(artists, found["percents"])
        return found["sentence"]

    return wire(
        {
            "birds_kg": slider("Birds (kg)", 4, 20, 1, 16),
            "water_kg": slider("Water (kg)", 10, 30, 1, 24),
            "target_percent": slider("In the end (%)", 0.8, 2.4, 0.1, 1.8),
        },
        picture,
        update,
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
        `drawn`, as `move_reduction` takes it, and `sentence`.
    """
    broth, salted = Q_(broth_kg, "kg"), Q_(salted_percent, "percent")
    end = broth * left_percent / 100
    salt = (broth * salted_percent / 100).to("g")
    after = strength_after_reduction(salted, broth, end)
    enough = (end * salted_percent / 100).to("g")
    ends = Q_([broth_kg * left / 100 for left in LEFT_PERCENTS], "kg")
    curve = strength_after_reduction(salted, broth, ends).magnitude
    sentence = (
        f"{say(broth)} of broth at {say(salted)} hold {say(salt, 3)} of salt.\n"
        f"Reduced to {say(end, 3)} the salt is still all there: {_fine(after)}.\n"
        f"Salted last, {say(enough, 3)} are enough for {say(salted)}."
    )
    drawn = {
        "first_percents": curve,
        "last_percent": salted_percent,
        "left_now": left_percent,
        "first_g": salt.magnitude,
        "last_g": enough.magnitude,
    }
    return {"drawn": drawn, "sentence": sentence}


def broth_panel():
    """Broth, seasoning and what is left after reducing; salted first against salted last.

    Returns
    -------
    ipywidgets VBox
    """
    picture = Picture(height=3.0)
    ax = picture.axes(left=0.1, bottom=0.19, top=0.97)
    start = salted_first(8, 0.8, 40)
    artists = draw_reduction(ax, LEFT_PERCENTS, most_percent=5.5, **start["drawn"])

    def update(**values):
        found = salted_first(**values)
        move_reduction(artists, **found["drawn"])
        return found["sentence"]

    return wire(
        {
            "broth_kg": slider("Broth at the start (kg)", 2.0, 12.0, 0.5, 8.0),
            "salted_percent": slider("Salted at the start to (%)", 0.6, 1.0, 0.1, 0.8),
            "left_percent": slider("Left after reducing (% of it)", 20, 100, 5, 40),
        },
        picture,
        update,
    )
