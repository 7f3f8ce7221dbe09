"""What water, protein, fat, carbohydrate, fibre, ash and ice each bring to a food's heat."""

from functools import cache

import numpy as np

from kitchenmath.data.tables import table

CELSIUS_RANGE = (-40, 150)  # where Choi and Okos measured


@cache
def _polynomials(thermal_property):
    """Of each component the pieces (from °C, constant, linear, quadratic), coldest first."""
    pieces = {}
    for row in table("components.csv"):
        if row["property"] == thermal_property:
            columns = ("from_celsius", "constant", "linear", "quadratic")
            pieces.setdefault(row["component"], []).append([float(row[name]) for name in columns])
    return pieces


def component_values(thermal_property, temperature_C):
    """A property of every component at a temperature.

    Ice has its polynomial up to 0 °C; above there is none, and a food's share of it is nought.

    Parameters
    ----------
    thermal_property : str
        "conductivity" [W/m/K], "density" [kg/m3] or "specific_heat" [kJ/kg/K].
    temperature_C : float or array

    Returns
    -------
    dict of str to float or array
    """
    values = {}
    for component, pieces in _polynomials(thermal_property).items():
        value = 0.0
        for start, constant, linear, quadratic in pieces:
            here = constant + linear * temperature_C + quadratic * temperature_C**2
            value = np.where(temperature_C >= start, here, value) if start > -40 else here
        values[component] = value if np.ndim(value) else float(value)
    return values


def specific_heats():
    """The equations for specific heat in kJ/kg/K, by author: each takes shares and °C.

    Heldman 1975: quoted in a solution sheet. Heldman and Singh 1981: *Food Process Engineering*.
    Chen 1985: in ASHRAE *Handbook - Refrigeration* ch. 9, s the share of solids.
    Earle 1983: *Unit Operations in Food Processing*, appendix 7, above freezing.
    """
    return {
        "Choi and Okos 1986": _choi_and_okos,
        "Heldman 1975": lambda shares, _: _linear(shares, 4.180, 1.547, 1.672, 1.42, 0.836),
        "Heldman and Singh 1981": lambda shares, _: _linear(
            shares, 4.187, 1.549, 1.675, 1.424, 0.837
        ),
        "Chen 1985": lambda shares, _: _chen(1 - shares["water"] - shares["ice"]),
        "Earle 1983": lambda shares, _: 4.19 * shares["water"] + 0.84 * (1 - shares["water"]),
    }


def _choi_and_okos(shares, temperature_C):
    heats = component_values("specific_heat", temperature_C)
    return sum(part * heats[name] for name, part in shares.items())


def _linear(shares, water, protein, fat, carbohydrate, ash):
    """Fibre counts as carbohydrate in these."""
    return (
        water * shares["water"]
        + protein * shares["protein"]
        + fat * shares["fat"]
        + carbohydrate * (shares["carbohydrate"] + shares["fibre"])
        + ash * shares["ash"]
    )


def _chen(solids):
    return 4.19 - 2.30 * solids - 0.628 * solids**3
