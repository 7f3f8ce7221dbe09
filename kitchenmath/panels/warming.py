"""Panels of lesson 8: inside a fillet, thickness against time, a moist roast and its rest."""

from functools import cache, lru_cache

from kitchenmath.errors import OutOfRange
from kitchenmath.figures.warming import Fillet, Roast, Thickness
from kitchenmath.foods import food
from kitchenmath.heat import Piece, Stage, WetSurface, cook, temperature_after, time_to_core
from kitchenmath.panels.frame import slider, wire
from kitchenmath.safety import limit
from kitchenmath.units import Q_, say

START = Q_(5, "degC")  # out of the fridge
WATER = Q_(300, "W/m**2/K")  # a stirred bath, in the band of moving water
AIR = Q_(25, "W/m**2/K")  # a baking oven's air and walls
FOIL = Q_(20, "W/m**2/K")  # wrapped, in air: in the band of an oven
THICK_MM = tuple(range(10, 51, 5))
LOIN = Piece("cylinder", diameter=Q_(80, "mm"), food=food("pork loin, lean"))
OVEN_MIN = 180  # a loin of this size that is not there by then does not come there
REST_MIN = 60


def cod(thickness_mm):
    """A fillet of cod as a slab."""
    return Piece("slab", thickness=Q_(thickness_mm, "mm"), food=food("cod"))


def inside_fillet(thickness_mm, bath_C, minutes):
    """The temperature from face to face of a bagged fillet in a stirred bath.

    Parameters
    ----------
    thickness_mm, bath_C, minutes : int

    Returns
    -------
    dict
        `places_mm`, `inside_C` (there), `bath_C`, `mean_C` and `sentence`.
    """
    piece, bath, time = cod(thickness_mm), Q_(bath_C, "degC"), Q_(minutes, "min")

    def at(position):
        return temperature_after(piece, START, bath, WATER, time, position).magnitude

    outward_mm = [thickness_mm / 2 * step / 6 for step in range(7)]
    outward_C = [at(Q_(place, "mm")) for place in outward_mm]
    places_mm = [-place for place in outward_mm[:0:-1]] + outward_mm
    mean_C = at("mean")
    core_C, surface_C = outward_C[0], outward_C[-1]
    done = time_to_core(piece, START, bath, WATER, Q_(48, "degC"))
    row = limit("fish")
    sentence = (
        f"After {minutes} min in the bath of {bath_C} °C: middle {core_C:.1f} °C, mean "
        f"{mean_C:.1f} °C, surface {surface_C:.1f} °C. "
        f"Rim and middle are {surface_C - core_C:.1f} °C apart.\n"
        f"The middle of {thickness_mm} mm passes 48 °C after about {say(done, 2)}: an estimate, "
        "a probe decides.\n"
        f"{row.source} {row.section} asks {say(row.temperature)} ({say(row.fahrenheit)}) for "
        f"{say(row.time)} in fish."
    )
    return {
        "places_mm": places_mm,
        "inside_C": outward_C[:0:-1] + outward_C,
        "bath_C": bath_C,
        "mean_C": mean_C,
        "sentence": sentence,
    }


def profile_panel():
    """Thickness, bath and clock; the temperature from face to face.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "minutes": slider("Clock (min)", 1, 60, 1, 4),
            "bath_C": slider("Bath (°C)", 50, 95, 1, 60),
            "thickness_mm": slider("Thickness (mm)", 15, 50, 5, 30),
        },
        inside_fillet,
        lambda picture: Fillet(picture, most_mm=50),
        height=2.6,
    )


@cache
def foil_minutes():
    """Minutes to 48 °C in wrapped pieces of each thickness in air of 60 °C."""
    return tuple(
        time_to_core(cod(mm), START, Q_(60, "degC"), FOIL, Q_(48, "degC")).magnitude
        for mm in THICK_MM
    )


def squared(known_mm, known_min, new_mm):
    """A time carried over to another thickness, by the square and over a weak surface.

    Parameters
    ----------
    known_mm, known_min : int
        The piece that was timed.
    new_mm : int

    Returns
    -------
    dict
        `squared_min`, `gentle_min` (at each of THICK_MM), `known`, `new` (thickness and time) and
        `sentence`.
    """
    square_min = [known_min * (mm / known_mm) ** 2 for mm in THICK_MM]
    foil = foil_minutes()
    base_min = foil[THICK_MM.index(known_mm)]
    weak_min = [known_min * minutes / base_min for minutes in foil]
    place = THICK_MM.index(new_mm)
    ratio = new_mm / known_mm
    sentence = (
        f"{new_mm} mm is {ratio:.2f} times {known_mm} mm, and {ratio:.2f} squared is "
        f"{ratio**2:.2f}: {known_min} min become about {square_min[place]:.0f} min.\n"
        f"The straight ratio would say {known_min * ratio:.0f} min.\n"
        f"Where the surface passes little heat, as in foil in air, the model says "
        f"{weak_min[place]:.0f} min: there the surface sets the pace. An estimate: a probe decides."
    )
    return {
        "squared_min": square_min,
        "gentle_min": weak_min,
        "known": (known_mm, known_min),
        "new": (new_mm, square_min[place]),
        "sentence": sentence,
    }


def square_panel():
    """A piece that was timed, and another thickness.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "known_mm": slider("Thickness that you timed (mm)", 20, 30, 5, 20),
            "known_min": slider("Its time (min)", 5, 25, 1, 12),
            "new_mm": slider("New thickness (mm)", 10, 50, 5, 30),
        },
        squared,
        lambda picture: Thickness(picture, THICK_MM),
        height=3.1,
    )


def in_oven(oven_C, steam_percent, time):
    """So long in the oven, with a surface that stays wet."""
    wet = WetSurface(steam=Q_(steam_percent, "percent"))
    return Stage(Q_(oven_C, "degC"), AIR, time, wet=wet)


@lru_cache(maxsize=64)
def heated_loin(oven_C, steam_percent):
    """The loin's way through the longest stay in the oven; kept, because each slider asks anew."""
    return cook(LOIN, START, [in_oven(oven_C, steam_percent, Q_(OVEN_MIN, "min"))])


def loin_minutes(oven_C, steam_percent=None):
    """How long the loin takes to 56 °C: covered, open, or with a surface that is all dry crust.

    Parameters
    ----------
    oven_C : int
    steam_percent : int, optional
        Steam in the oven's air around a surface that stays wet; none for a dry crust.

    Returns
    -------
    str
        Such as "63 min", or "not in 3 h".
    """
    pull = Q_(56, "degC")
    try:
        if steam_percent is None:
            time = time_to_core(LOIN, START, Q_(oven_C, "degC"), AIR, pull)
        else:
            time = heated_loin(oven_C, steam_percent).when(pull)
    except OutOfRange:
        return f"not in {OVEN_MIN // 60} h"
    return f"{time.magnitude:.0f} min"


def moist_roast(oven_C, steam_percent, pull_C):
    """A pork loin in a moist oven until its core is at the pull temperature, and its rest.

    Parameters
    ----------
    oven_C, steam_percent, pull_C : int

    Returns
    -------
    dict
        What `Roast.show` takes, and `sentence`.
    """
    heated = heated_loin(oven_C, steam_percent)
    settled = in_oven(oven_C, steam_percent, Q_(OVEN_MIN, "min")).settles_at
    held = f"The wet surface settles at {settled.magnitude:.0f} °C"
    try:
        pulled = heated.when(Q_(pull_C, "degC"))
    except OutOfRange:
        sentence = (
            f"{held}, and after {OVEN_MIN // 60} hours the core is at "
            f"{heated.core.magnitude[-1]:.0f} °C: it does not come to {pull_C} °C in that time.\n"
            "More steam, or a surface that dries, would bring it there. An estimate: a probe "
            "decides."
        )
        return _seen(heated, len(heated.time) - 1, OVEN_MIN, "still in") | {"sentence": sentence}
    board = Stage(Q_(22, "degC"), Q_(10, "W/m**2/K"), Q_(REST_MIN, "min"))
    rested = cook(LOIN, START, [in_oven(oven_C, steam_percent, pulled), board])
    out = rested.heat_ends
    sentence = (
        f"{held} in the oven of {oven_C} °C. The core is at {pull_C} °C after about "
        f"{pulled.magnitude:.0f} min; the mean is then {rested.mean.magnitude[out]:.0f} °C.\n"
        f"On the board the core rises by {rested.carry_over.magnitude:.1f} °C, to "
        f"{rested.peak.magnitude:.1f} °C after {rested.peak_after.magnitude:.0f} min.\n"
        f"{_against_the_code(rested.peak)} An estimate: a probe decides."
    )
    return _seen(rested, out, pulled.magnitude, "out") | {"sentence": sentence}


def _seen(cooked, at, pulled_min, state):
    """What the drawing shows: the curves, and the piece cut through at one of their readings."""
    names = ("core", "mean", "surface")
    curves_C = {name: getattr(cooked, name).magnitude for name in names}
    cut_C = tuple(float(curves_C[name][at]) for name in names)
    words = (f"{state} at {pulled_min:.0f} min", f"core {cut_C[0]:.0f}, rim {cut_C[2]:.0f} °C")
    return {
        "minutes": cooked.time.magnitude,
        "curves_C": curves_C,
        "cut_C": cut_C,
        "pulled_min": pulled_min,
        "words": words,
    }


def _against_the_code(peak):
    row = limit("intact meat")
    there = "reaches" if row.reached_by(peak) else "is below"
    return (
        f"That peak {there} the {say(row.temperature)} ({say(row.fahrenheit)}) that {row.source} "
        f"{row.section} asks for {say(row.time)}; a probe and a clock prove it, no model."
    )


def roast_panel():
    """Oven, steam and pull temperature; core, mean and surface through oven and rest.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "oven_C": slider("Oven (°C)", 90, 220, 10, 150),
            "steam_percent": slider("Steam in its air (%)", 10, 50, 5, 30),
            "pull_C": slider("Out when the core is at (°C)", 45, 62, 1, 56),
        },
        moist_roast,
        Roast,
        height=2.8,
    )
