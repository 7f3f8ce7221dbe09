"""Where water boils: by height above the sea, and under pressure."""

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.heat.steam import SEA_LEVEL_PA, boiling_C, latent_kJ_kg
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

__all__ = ["air_pressure", "boiling_point", "latent_heat"]

EARTH_M = 6356766  # radius used by the US Standard Atmosphere 1976


def air_pressure(altitude):
    """The air's pressure at a height above the sea, on an average day.

    Parameters
    ----------
    altitude : Quantity [length], -500 m to 11 km

    Returns
    -------
    Quantity [Pa]

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    p = 101325 (1 - 0.0065 H / 288.15)^5.25588, H the height corrected for the earth's roundness.
    Weather moves it by 3 % either way, which is about 1 °C at the boil.

    Examples
    --------
    At 1500 m: 101325 x 0.9662^5.256 = 84 560 Pa, 0.846 bar.

    >>> print(say(air_pressure(Q_(1500, "m")).to("bar")))
    0.8456 bar

    References
    ----------
    *US Standard Atmosphere* (1976).
    """
    height_m = amount(altitude, "m", "altitude", least=-500, most=11000)
    corrected_m = EARTH_M * height_m / (EARTH_M + height_m)
    return Q_(SEA_LEVEL_PA * (1 - 0.0065 * corrected_m / 288.15) ** 5.25588, "Pa")


def boiling_point(altitude=None, pressure=None, gauge=None):
    """The temperature at which plain water boils.

    Easily confused: a pressure cooker's dial shows what stands above the air outside (`gauge`),
    not the whole pressure.

    Parameters
    ----------
    altitude : Quantity [length], optional
        Height above the sea; sea level when left out.
    pressure : Quantity [pressure], optional
        The whole pressure over the water, instead of an altitude.
    gauge : Quantity [pressure], optional
        What a pressure cooker adds.

    Returns
    -------
    Quantity [degC]

    Raises
    ------
    WrongKind
        When both an altitude and a pressure are given.
    OutOfRange

    Notes
    -----
    IAPWS-IF97 for water; sugar and salt raise it. About 1 °C less for each 300 m. A hot vessel
    under pressure can scald: follow its maker's instructions, and never open it before it is down.

    Examples
    --------
    At 2000 m water boils at 93.3 °C; in a cooker with 15 psi more at the sea, at 121 °C.

    >>> print(say(boiling_point(altitude=Q_(2000, "m"))), say(boiling_point(gauge=Q_(15, "psi"))))
    93.32 °C 121 °C

    References
    ----------
    IAPWS, *Revised Release on the IAPWS Industrial Formulation 1997* (2007), region 4.
    """
    if altitude is not None and pressure is not None:
        raise WrongKind("altitude: give an altitude or a pressure, not both.")
    if pressure is None:
        pressure = air_pressure(Q_(0, "m") if altitude is None else altitude)
    whole_Pa = amount(pressure, "Pa", "pressure", above=0)
    if gauge is not None:
        whole_Pa += amount(gauge, "Pa", "gauge", least=0)
    # A cook's range: from a vacuum pan at 5 °C to a retort at 180 °C.
    if not 870 <= whole_Pa <= 1.0e6:
        raise OutOfRange(
            f"pressure: needs 0.0087 to 10 bar in all, and {say(Q_(whole_Pa / 1e5, 'bar'))} came."
        )
    return Q_(boiling_C(whole_Pa), "degC")


def latent_heat(temperature):
    """The heat that turns a kilo of water into steam at a temperature.

    Parameters
    ----------
    temperature : Quantity [temperature], 0 to 130 °C

    Returns
    -------
    Quantity [kJ/kg]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    At 100 °C five times what it took to bring the water there from the ice.

    >>> print(say(latent_heat(Q_(100, "degC"))))
    2256 kJ/kg

    References
    ----------
    A fit to IAPWS-95, within 0.06 kJ/kg.
    """
    return Q_(latent_kJ_kg(amount(temperature, "degC", "temperature", least=0, most=130)), "kJ/kg")
