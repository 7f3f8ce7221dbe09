"""Boiling sugar: where a syrup boils, and what a thermometer in it means.

Hot sugar burns worse than boiling water: it is hotter, it sticks, and it holds its heat. Long
sleeves, a deep pan, nobody close by, a bowl of cold water ready; never taste it or touch it.
"""

from typing import NamedTuple

import numpy as np

from kitchenmath.data.tables import table
from kitchenmath.heat.boiling import boiling_point
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, Quantity

__all__ = [
    "StageBand",
    "altitude_drop",
    "brix_from_boiling_point",
    "sugar_stage",
    "sugar_stages",
    "syrup_boiling_point",
]

_SEA_LEVEL = Q_(0, "m")
_C_PER_M = 1 / 305  # McGee (2004): 1 °C (2 °F) for each 1000 ft (305 m)
_SLACK_C = 2  # what the printed bounds of the stages are good for


def _boiling_table():
    """°Brix and the rise in °C, rising together."""
    rows = table("syrup_boiling.csv")
    return [float(row["brix"]) for row in rows], [float(row["rise_c"]) for row in rows]


def syrup_boiling_point(brix, altitude=_SEA_LEVEL):
    """The temperature at which a syrup boils; it climbs as the water leaves.

    Parameters
    ----------
    brix : Quantity [percent], 0 to 82
        Beyond that the stages of boiled sugar are the guide: `sugar_stage`.
    altitude : Quantity [length]
        Height above the sea, which lowers water's own boiling point.

    Returns
    -------
    Quantity [temperature]
        Within 0.2 °C of the table; sources differ by half a degree around 65 °Brix.

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    Read off between the rows of a table, by straight lines. The ideal law (0.512 °C for each
    mol/kg) gives half the true rise at 70 °Brix and is not used.

    Examples
    --------
    Browne's table has 6.5 °C above water at 70 °Brix.

    >>> print(say(syrup_boiling_point(Q_(70, "percent")), digits=4))
    106.5 °C

    References
    ----------
    Browne, *Handbook of Sugar Analysis* (1912), in a spline reproduction.
    """
    strengths, rises = _boiling_table()
    percent = amount(brix, "percent", "brix", least=0, most=strengths[-1], many=True)
    return boiling_point(altitude) + Q_(np.interp(percent, strengths, rises), "delta_degC")


def brix_from_boiling_point(temperature, altitude=_SEA_LEVEL):
    """The degrees Brix of a syrup or jam that boils at this temperature.

    Parameters
    ----------
    temperature : Quantity [temperature]
        Of the boiling syrup, from where water boils to 13.9 °C above.
    altitude : Quantity [length]
        Height above the sea. Better still, hold the same thermometer in boiling water first.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    104.0 °C is 4.0 above water: 64 °Brix in Browne's table.

    >>> print(say(brix_from_boiling_point(Q_(104.0, "degC")), digits=2))
    64 %

    References
    ----------
    Browne, *Handbook of Sugar Analysis* (1912), in a spline reproduction.
    """
    strengths, rises = _boiling_table()
    water_C = boiling_point(altitude).to("degC").magnitude
    # A tenth of a degree of slack: the pan may well read as water does.
    low_C, high_C = round(water_C - 0.1, 2), round(water_C + rises[-1] + 0.1, 2)
    boiling_C = amount(temperature, "degC", "temperature", least=low_C, most=high_C, many=True)
    return Q_(np.interp(boiling_C - water_C, rises, strengths), "percent")


class StageBand(NamedTuple):
    """The temperatures of one stage; both are the same where the source prints only one."""

    low: Quantity
    high: Quantity


def altitude_drop(altitude):
    """How much lower to boil sugar on a mountain: 1 °C for each 305 m (2 °F for 1000 ft).

    Parameters
    ----------
    altitude : Quantity [length], -500 m to 3050 m

    Returns
    -------
    Quantity [temperature difference]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    At 1525 m: 1525 / 305 = 5 °C.

    >>> print(say(altitude_drop(Q_(1525, "m"))))
    5 °C

    References
    ----------
    McGee, *On Food and Cooking* (2004), stages of sugar.
    """
    height_m = amount(altitude, "m", "altitude", least=-500, most=3050)
    return Q_(height_m * _C_PER_M, "delta_degC")


def sugar_stages(source="McGee", altitude=_SEA_LEVEL):
    """The stages of boiled sugar as one source prints them, lowest first.

    Parameters
    ----------
    source : "McGee", "Candy Cook Book" or "Greer"
        They differ by several degrees, and in their names.
    altitude : Quantity [length], -500 m to 3050 m
        The print holds at sea level; at a height each stage comes lower.

    Returns
    -------
    dict of str to StageBand
        `low` and `high` [temperature], give or take 2 °C.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    >>> soft = sugar_stages()["soft ball"]
    >>> print(say(soft.low), "to", say(soft.high))
    113 °C to 116 °C

    References
    ----------
    McGee, *On Food and Cooking* (2004); *Candy Cook Book* (1917), p. 20; Greer, *School and Home
    Cooking* (1920). McGee's "240 °F" for the hard ball is a misprint for 250; his °F for dark
    and black caramel are 2 to 5 °C above the °C beside them, and the °C is taken.
    """
    rows = table("sugar_stages.csv")
    one_of(source, sorted({row["source"] for row in rows}), "source")
    drop_C = altitude_drop(altitude).magnitude
    return {
        row["stage"]: StageBand(
            Q_(float(row["low_c"]) - drop_C, "degC"), Q_(float(row["high_c"]) - drop_C, "degC")
        )
        for row in rows
        if row["source"] == source
    }


def sugar_stage(temperature, altitude=_SEA_LEVEL, source="McGee"):
    """What boiled sugar does in cold water at this temperature, by its old name.

    Parameters
    ----------
    temperature : Quantity [temperature], 80 °C to 215 °C
        Of the boiling sugar, by a thermometer that shows boiling water rightly.
    altitude : Quantity [length], -500 m to 3050 m
    source : "McGee", "Candy Cook Book" or "Greer"

    Returns
    -------
    str
        A stage within 2 °C, which is as good as the print; else "between ... and ...".

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    115 °C lies in McGee's 113 to 116 °C.

    >>> sugar_stage(Q_(115, "degC"))
    'soft ball'
    >>> sugar_stage(Q_(160, "degC"))
    'between hard crack and light caramel'
    """
    celsius = amount(temperature, "degC", "temperature", least=80, most=215, many=True)
    bands = sugar_stages(source, altitude)
    away_C = {
        stage: max(band.low.magnitude - celsius, celsius - band.high.magnitude, 0)
        for stage, band in bands.items()
    }
    # Of two stages that touch, the hotter one: listed later, it wins the tie.
    nearest = min(reversed(away_C), key=away_C.get)
    return nearest if away_C[nearest] <= _SLACK_C else _between(bands, celsius)


def _between(bands, celsius):
    """A temperature that is in no stage, told by its neighbours."""
    below = [stage for stage, band in bands.items() if band.high.magnitude < celsius]
    above = [stage for stage, band in bands.items() if band.low.magnitude > celsius]
    if below and above:
        return f"between {below[-1]} and {above[0]}"
    return f"below {above[0]}" if above else f"beyond {below[-1]}"
