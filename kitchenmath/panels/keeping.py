"""Panels of lesson 9: a pot that cools, a cold room's night, a probe in two glasses, a menu."""

from functools import lru_cache

import numpy as np

from kitchenmath.drills.keeping import stages
from kitchenmath.figures.keeping import CoolingCurve, Matrix, NightLog, TwoGlasses
from kitchenmath.foods import food
from kitchenmath.heat import Piece, check_probe, temperature_after, time_to_core
from kitchenmath.panels.frame import choice, slider, wire
from kitchenmath.practice.clock_question import clock_time
from kitchenmath.safety import (
    allergen_matrix,
    cooling_verdict,
    menu_dishes,
    plate_allergens,
    point_limit,
)
from kitchenmath.safety.allergens import LISTS
from kitchenmath.units import Q_, say

MOST_H, EVERY_MIN = 10, 20
# Invented ways of cooling: how warm it is around the tray, how well heat leaves it, and its name
# in the picture.
WAYS = {
    "on the counter": (22, 10, "counter"),
    "in the cold room": (3, 10, "cold room"),
    "in the cold room, by a fan": (3, 25, "by a fan"),
    "in ice and water": (0.5, 200, "ice water"),
}
TEN_AT_NIGHT_MIN, NIGHT_MIN = 22 * 60, 480
# An invented room: how cold it is kept, how much warmer it gets, and how soon half of that.
COLD_C, WARMER_C, HALVES_MIN = 3, 9, 90
SHORT = {"guinea fowl with mustard velouté": "guinea fowl, velouté",
         "cod with mustard mayonnaise": "cod, mayonnaise"}  # fmt: skip


@lru_cache(maxsize=128)
def cooled(depth_mm, way):
    """Hours after 57 °C, and the middle's degrees, of a sauce that nobody stirs."""
    around_C, coefficient, _ = WAYS[way]
    sauce = Piece("slab", thickness=Q_(depth_mm, "mm"), food=food("milk, whole"))
    where = (sauce, Q_(85, "degC"), Q_(around_C, "degC"), Q_(coefficient, "W/m**2/K"))
    begins = time_to_core(*where, core=Q_(57, "degC")).to("min").magnitude
    minutes = np.arange(0, 60 * MOST_H + 1, EVERY_MIN, dtype=float)
    degrees = [
        temperature_after(*where, Q_(begins + minute, "min"), position="centre").magnitude
        for minute in minutes
    ]
    degrees[0] = 57.0
    return minutes, np.array(degrees)


def cooling_pot(depth_mm, way):
    """A sauce of some depth on its way through the two stages.

    Parameters
    ----------
    depth_mm : int
    way : str
        A key of `WAYS`.

    Returns
    -------
    dict
        What `CoolingCurve.show` takes, and `sentence`.
    """
    minutes, degrees = cooled(depth_mm, way)
    verdict = cooling_verdict((Q_(minutes, "min"), Q_(degrees, "degC")))
    kept = [stage.meets for stage in verdict.stages]
    told = {(True, True): "both stages are kept", (False, False): "both stages are broken",
            (False, True): "the first stage is broken",
            (True, False): "the second stage is broken"}  # fmt: skip
    result = told.get(tuple(kept), f"not cold after {MOST_H} h")
    return {
        "hours": minutes / 60,
        "degrees_C": degrees,
        "depth_mm": depth_mm,
        "told": result,
        "room": WAYS[way][2],
        "sentence": f"{depth_mm} mm of sauce {way}, not stirred: {result}.\n{verdict.words}\n"
        "The curve is an estimate; a probe in the middle decides.",
    }


def cooling_panel():
    """How deep a sauce stands, and where; its way through the two stages.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "depth_mm": slider("Sauce in the tray (mm)", 20, 200, 10, 120),
            "way": choice("It cools", list(WAYS), "in the cold room"),
        },
        cooling_pot,
        lambda picture: CoolingCurve(picture, stages(), MOST_H),
        height=2.7,
    )


def cold_room_night(every_min, fails_min):
    """A cold room that fails at night, and what its readings tell.

    Parameters
    ----------
    every_min : int
        From reading to reading.
    fails_min : int
        Minutes after 22:00 at which it stops cooling.

    Returns
    -------
    dict
        What `NightLog.show` takes, and `sentence`.
    """
    limit_C = point_limit("cold room").temperature.magnitude
    minutes = np.arange(0, NIGHT_MIN + 1, 5)

    def room_C(minute):
        gone = np.maximum(minute - fails_min, 0)
        return COLD_C + WARMER_C * (1 - 0.5 ** (gone / HALVES_MIN))

    read_min = np.arange(0, NIGHT_MIN + 1, every_min)
    read_C = room_C(read_min)
    good = int(np.flatnonzero(read_C <= limit_C)[-1])
    last, first = read_min[good], read_min[min(good + 1, len(read_min) - 1)]
    since, seen = (str(clock_time(TEN_AT_NIGHT_MIN + each)) for each in (last, first))
    if last == first:
        sentence = "No reading of this night is out of limits, though the room has begun to warm."
        told = "nothing is seen yet"
    else:
        sentence = (
            f"The last reading in order is that of {since}, the first above {limit_C:g} °C that of "
            f"{seen}. Nobody knows what was between: count from {since}.\n"
            f"Until 06:00 that is {say(Q_((NIGHT_MIN - last) / 60, 'h'), 3)}. In truth it was at "
            f"{_passed(fails_min, limit_C)}, and only this picture knows that."
        )
        told = f"in order until {since}, out at {seen}"
    return {
        "minutes": minutes,
        "room_C": room_C(minutes),
        "read_min": read_min,
        "read_C": read_C,
        "unknown_min": (last, first),
        "told": told,
        "sentence": sentence,
    }


def _passed(fails_min, limit_C):
    """When the room passed its limit."""
    missing = (WARMER_C - (limit_C - COLD_C)) / WARMER_C
    return clock_time(TEN_AT_NIGHT_MIN + fails_min - HALVES_MIN * np.log2(missing))


def night_panel():
    """How often a cold room is read, and when it fails.

    Returns
    -------
    ipywidgets VBox
    """
    limit_C = point_limit("cold room").temperature.magnitude
    return wire(
        {
            "every_min": slider("A reading every (min)", 20, 120, 20, 60),
            "fails_min": slider("It fails after 22:00 by (min)", 0, 300, 10, 130),
        },
        cold_room_night,
        lambda picture: NightLog(picture, limit_C),
        height=2.5,
    )


def probe_in_glasses(height_m, ice_C, boiling_C):
    """A probe in melting ice and in boiling water, at a height.

    Parameters
    ----------
    height_m : int
    ice_C, boiling_C : float
        What it shows.

    Returns
    -------
    dict
        What `TwoGlasses.show` takes, and `sentence`.
    """
    probe = check_probe(Q_(ice_C, "degC"), Q_(boiling_C, "degC"), Q_(height_m, "m"))
    boils, limit = probe.boils_at, point_limit("core of poultry")
    needed = probe.must_show(limit.temperature)
    offs = [round(each.magnitude, 1) for each in (probe.ice_off, probe.boiling_off)]
    sentence = (
        f"At {height_m} m water boils at {say(boils, 3)}. In ice the probe is {_off(offs[0])}, in "
        f"boiling water {_off(offs[1])}.\nBefore a bird is at {say(limit.temperature)} "
        f"({say(limit.fahrenheit)}), this probe must show {needed.magnitude:.1f} °C."
    )
    truths = (f"melting ice: 0 °C\n{_off(offs[0])}", f"boils at {say(boils, 3)}\n{_off(offs[1])}")
    shown = (f"{ice_C:.1f} °C", f"{boiling_C:.1f} °C")
    return {"shown": shown, "words": truths, "sentence": sentence}


def _off(degrees):
    if not degrees:
        return "right"
    return f"{abs(degrees):.1f} °C too {'high' if degrees > 0 else 'low'}"


def probe_panel():
    """How high the kitchen lies, and what a probe shows in ice and in boiling water.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "height_m": slider("Height above the sea (m)", 0, 1800, 300, 0),
            "ice_C": slider("In ice it shows (°C)", -2.0, 3.0, 0.5, 0.5),
            "boiling_C": slider("In boiling water (°C)", 92.0, 103.0, 0.5, 99.0),
        },
        probe_in_glasses,
        TwoGlasses,
        height=2.7,
    )


def menu_allergens(dish, country):
    """The menu's matrix, and what one dish of it holds.

    Parameters
    ----------
    dish, country : str

    Returns
    -------
    dict
        What `Matrix.show` takes, and `sentence`.
    """
    menu = menu_dishes()
    rows = allergen_matrix(menu, country)
    return {
        "names": list(next(iter(rows.values()))),
        "rows": list(rows.values()),
        "marked": list(menu).index(dish),
        "sentence": f"{dish[0].upper()}{dish[1:]}, of {', '.join(menu[dish])}. "
        f"{plate_allergens(menu[dish], country)}\nWorked out from its items. What else touched it "
        "is not in here.",
    }


def menu_panel():
    """A dish of the menu and a country's list; the matrix of the whole menu.

    Returns
    -------
    ipywidgets VBox
    """
    dishes = list(menu_dishes())
    return wire(
        {"dish": choice("Dish", dishes), "country": choice("By the list of", list(LISTS))},
        menu_allergens,
        lambda picture: Matrix(picture, [SHORT.get(each, each) for each in dishes], columns=9),
        height=3.6,
    )
