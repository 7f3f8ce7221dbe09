"""How heavy a brine is, and what a hydrometer in it says. For table salt (NaCl) alone."""

import numpy as np

from kitchenmath.brine.points import saturation, unsaturated
from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity, same_kind
from kitchenmath.units.saying import say
from kitchenmath.units.scales import reading

__all__ = [
    "brine_density",
    "brine_gravity",
    "strength_from_density",
    "strength_from_gravity",
    "water_density",
]

_AT_15_C, _AT_20_C = Q_(15, "degC"), Q_(20, "degC")

# kg/m³ of water against °C: the form of Kell (1975) fitted here to IAPWS-95 at 1 atm from 0 to
# 100 °C, within 0.0004 kg/m³. Kell's own numbers rest on older measurements, 0.003 lower.
_WATER_TOP = (-3.1380658e-10, 1.1302312e-7, -4.6768508e-5, -7.9720811e-3, 16.945091, 999.84282)
_WATER_BELOW = 16.879850e-3

# kg/m³ above water against the share of salt w and °C: each bracket's rows are powers of w, from
# w³ to w, with falling powers of °C in each. Fitted here to Rogers & Pitzer (10, 20, 25 °C), to
# Poradnik fizykochemiczny (10, 20 °C) and to Kraków's table (18 °C), each weighted by its stated
# tolerance; within 0.1, 0.2 and 0.4 of them. Range: 0 to 30 °C, up to saturation.
_EXCESS = (
    (417.906,),
    (3.1038, 36.968),
    (0.025594, -2.97747, 760.621),
)


def water_density(temperature):
    """How heavy a litre of plain water is, at 1 atm.

    Parameters
    ----------
    temperature : Quantity [temperature], 0 °C to 100 °C

    Returns
    -------
    Quantity [density]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    A litre at 20 °C is 998 g: the kilogram holds only at 4 °C.

    >>> print(round(water_density(Q_(20, "degC")).to("g/L").magnitude, 1))
    998.2

    References
    ----------
    IAPWS-95 at 1 atm; our fit, in the form of Kell, *J. Chem. Eng. Data* 20 (1975) 97.
    """
    celsius = amount(temperature, "degC", "temperature", least=0, most=100, many=True)
    return Q_(_water_kg_m3(celsius), "kg/m**3")


def _water_kg_m3(celsius):
    """Kell's quotient of two polynomials, with our own numbers in it."""
    return np.polyval(_WATER_TOP, celsius) / (1 + _WATER_BELOW * celsius)


def grams_of_water(water, temperature, name="water"):
    """The plain grams of water that came as a weight or as a volume at this temperature.

    Parameters
    ----------
    water : Quantity [weight or volume]
    temperature : Quantity [temperature]
    name : str
        The parameter's name, for the error.

    Returns
    -------
    float or numpy.ndarray

    Raises
    ------
    WrongKind
    OutOfRange
    """
    if isinstance(water, Quantity) and same_kind(water, "mL"):
        water_ml = amount(water, "mL", name, above=0, many=True)
        return water_ml * water_density(temperature).to("g/mL").magnitude
    return amount(water, "g", name, above=0, many=True)


def brine_density(strength, temperature=_AT_20_C):
    """How heavy a litre of brine is.

    Parameters
    ----------
    strength : Quantity [percent]
        Salt over the finished brine, up to saturation.
    temperature : Quantity [temperature], 0 °C to 30 °C
        Of the brine.

    Returns
    -------
    Quantity [density]
        Within 0.3 kg/m³ up to 20 %, within 0.5 above.

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    Water at the same temperature plus a polynomial in the share of salt, fitted by us to
    published tables at 10, 20 and 25 °C. For sea salt it is up to 1.5 kg/m³ too low at 3.5 %.

    Examples
    --------
    The tables print 1070.7 kg/m³ for 10 % at 20 °C.

    >>> print(round(brine_density(Q_(10, "percent")).to("g/L").magnitude, 1))
    1070.7

    References
    ----------
    *Poradnik fizykochemiczny* (WNT, 1974), NaCl; CRC Handbook, after Rogers & Pitzer (1982).
    """
    celsius = amount(temperature, "degC", "temperature", least=0, most=30, many=True)
    share = unsaturated(strength, temperature) / 100
    return Q_(_brine_kg_m3(share, celsius), "kg/m**3")


def _brine_kg_m3(share, celsius):
    """Water and what the salt adds: a polynomial in the share, without a constant term."""
    coefficients = [np.polyval(row, celsius) for row in _EXCESS]
    return _water_kg_m3(celsius) + np.polyval([*coefficients, 0 * celsius], share)


def strength_from_density(density, temperature=_AT_20_C):
    """The strength of a brine of which a measured volume was weighed.

    Parameters
    ----------
    density : Quantity [density]
    temperature : Quantity [temperature], 0 °C to 30 °C
        Of the brine.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange
        When it is lighter than water or heavier than a full brine.

    Examples
    --------
    Half a litre at 20 °C weighs 535.4 g: 1070.8 g/L, so 10 %.

    >>> print(say(strength_from_density(Q_(535.4, "g") / Q_(0.5, "L")), digits=3))
    10 %
    """
    celsius = amount(temperature, "degC", "temperature", least=0, most=30, many=True)
    kg_m3 = amount(density, "kg/m**3", "density", many=True)
    shares = np.linspace(0, saturation(temperature).magnitude / 100, 3001)
    densities = _brine_kg_m3(shares, celsius)
    low, high = densities[0], densities[-1]
    # Half a gram a litre of slack: that is what a kitchen's jug and scale do not see.
    if np.min(kg_m3) < low - 0.5 or np.max(kg_m3) > high + 0.5:
        raise OutOfRange(
            f"density: a brine at {say(temperature)} weighs from {low:.0f} to {high:.0f} g a "
            f"litre, and {say(density.to('g/L'))} came."
        )
    return Q_(100 * np.interp(kg_m3, densities, shares), "percent")


def brine_gravity(strength, temperature=_AT_15_C, water_temperature=_AT_15_C):
    """What a gravity hydrometer says in a brine: its density over that of water.

    "15/15" on the stem means brine and water both at 15 °C, "20/4" brine at 20, water at 4 °C.

    Parameters
    ----------
    strength : Quantity [percent]
    temperature : Quantity [temperature], 0 °C to 30 °C
        Of the brine.
    water_temperature : Quantity [temperature]
        Of the water that the hydrometer calls 1.

    Returns
    -------
    float

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    Lange prints 1.036 for 5 % at 15 °C.

    >>> round(brine_gravity(Q_(5, "percent")), 3)
    1.036
    """
    ratio = brine_density(strength, temperature) / water_density(water_temperature)
    return reading(ratio, "gravity")


def strength_from_gravity(gravity, temperature=_AT_15_C, water_temperature=_AT_15_C):
    """The strength of a brine in which a gravity hydrometer shows `gravity`.

    Parameters
    ----------
    gravity : float, 0.99 to 1.22
    temperature : Quantity [temperature], 0 °C to 30 °C
        Of the brine.
    water_temperature : Quantity [temperature]
        Of the water that the hydrometer calls 1.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    1.152 at 15 °C is about 20 % in Lange.

    >>> print(say(strength_from_gravity(1.152), digits=2))
    20 %
    """
    ratio = reading(gravity, "gravity", least=0.99, most=1.22)
    return strength_from_density(ratio * water_density(water_temperature), temperature)
