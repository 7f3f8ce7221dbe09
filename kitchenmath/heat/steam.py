"""Water and its steam as plain numbers: vapour pressure, boiling, latent heat, moist air."""

import math

from kitchenmath.numeric.roots import bisect

# IAPWS Industrial Formulation 1997, region 4 (revised 2007), Table 34; 0 to 374 °C.
_N = (
    0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
    -0.32325550322333e7, 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6,
    -0.23855557567849, 0.65017534844798e3,
)  # fmt: skip
# Latent heat in kJ/kg by powers of °C, from the fourth down: our fit to IAPWS-95 from 0 to
# 130 °C, off by at most 0.06 kJ/kg.
_LATENT = (-1.5294e-8, -9.1676e-6, 3.2536e-4, -2.37042, 2500.89)
MASS_RATIO = 0.62198  # water's molar mass over dry air's (18.015 / 28.964)
DRY_AIR_KJ_KGK = 1.006  # specific heat of dry air (ASHRAE Handbook - Fundamentals, psychrometrics)
STEAM_KJ_KGK = 1.86  # specific heat of steam in moist air (the same)
SEA_LEVEL_PA = 101325.0  # US Standard Atmosphere 1976


def vapour_pressure_Pa(celsius):
    """The pressure of saturated steam at a temperature (IF97 equation 30)."""
    kelvin = celsius + 273.15
    turned = kelvin + _N[8] / (kelvin - _N[9])
    a = turned * turned + _N[0] * turned + _N[1]
    b = _N[2] * turned * turned + _N[3] * turned + _N[4]
    c = _N[5] * turned * turned + _N[6] * turned + _N[7]
    return 1e6 * (2 * c / ((b * b - 4 * a * c) ** 0.5 - b)) ** 4


def boiling_C(pressure_Pa):
    """The temperature at which water boils under a pressure (IF97 equation 31)."""
    beta = (pressure_Pa / 1e6) ** 0.25
    e = beta * beta + _N[2] * beta + _N[5]
    f = _N[0] * beta * beta + _N[3] * beta + _N[6]
    g = _N[1] * beta * beta + _N[4] * beta + _N[7]
    d = 2 * g / (-f - math.sqrt(f * f - 4 * e * g))
    return (_N[9] + d - math.sqrt((_N[9] + d) ** 2 - 4 * (_N[8] + _N[9] * d))) / 2 - 273.15


def latent_kJ_kg(celsius):
    """The heat that turns a kilo of water at a temperature into steam."""
    heat = 0.0
    for factor in _LATENT:
        heat = heat * celsius + factor
    return heat


def moisture(vapour_Pa, pressure_Pa):
    """Kilos of steam for each kilo of dry air."""
    return MASS_RATIO * vapour_Pa / (pressure_Pa - vapour_Pa)


def humid_heat_kJ_kgK(moisture_kg_kg):
    """What warms a kilo of dry air, with its steam, by a degree."""
    return DRY_AIR_KJ_KGK + STEAM_KJ_KGK * moisture_kg_kg


def settled_C(air_C, moisture_kg_kg, pressure_Pa, by_air=1.0):
    """Where a wet surface settles: the heat it gets is just what its evaporation takes.

    Bisection between cold and boiling; the gain falls and the loss rises with the temperature, so
    there is one answer. `by_air` is the share of the heat that the air brings; with all of it,
    this is the wet-bulb temperature.
    """
    low, high = -60.0, min(air_C, boiling_C(pressure_Pa))
    if moisture(vapour_pressure_Pa(high - 1e-9), pressure_Pa) < moisture_kg_kg:
        return high

    def loses_more(surface_C):
        gain = humid_heat_kJ_kgK(moisture_kg_kg) * (air_C - surface_C)
        there = moisture(vapour_pressure_Pa(surface_C), pressure_Pa)
        return by_air * latent_kJ_kg(surface_C) * (there - moisture_kg_kg) >= gain

    return bisect(loses_more, low, high)


def moisture_from_wet_bulb(air_C, wet_bulb_C, pressure_Pa):
    """The air's moisture behind a dry and a wet thermometer; below 0 where there is none such."""
    latent = latent_kJ_kg(wet_bulb_C)
    there = moisture(vapour_pressure_Pa(wet_bulb_C), pressure_Pa)
    apart_C = air_C - wet_bulb_C
    return (latent * there - DRY_AIR_KJ_KGK * apart_C) / (latent + STEAM_KJ_KGK * apart_C)
