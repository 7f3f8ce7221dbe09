"""Syrups: degrees Brix, and the density, gravity and degrees Baumé that go with them.

A degree Brix is a percent of sugar by weight. A refractometer or a hydrometer for sugar shows it
truly in plain syrup only; in juice it counts acids and salts as sugar.
"""

import numpy as np

from kitchenmath.brine.density import grams_of_water, water_density
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, same_kind
from kitchenmath.units.scales import reading

__all__ = [
    "GRAVITY_FORMULAS",
    "brix",
    "brix_from_gravity",
    "sugar_for_syrup",
    "syrup_density",
    "syrup_gravity",
]

# °Brix from gravity at 20/20 °C, falling powers: from g³ to 1, and from g to 1/g. 0 to 60 °Brix
# and 0 to 30 °Brix; both are fits to sugar tables in wide print.
GRAVITY_FORMULAS = {
    "cubic": (182.46007, -775.68212, 1262.7794, -669.56218),
    "rational": (28.14203, 202.4427, -230.5870),
}
_HIGHEST_GRAVITY = {"cubic": 1.290, "rational": 1.130}  # 60 and 30 °Brix
# mL that a gram of sugar takes up in a syrup at 20 °C, by falling powers of its share, 0 to 0.7:
# fitted here to a table of Toruń university (5 to 30 %) and to handbook values as recalled (40 to
# 70 %), within 0.05 kg/m³ of both; and its growth for each °C, from the same table at 15 °C.
_SUGAR_ML_PER_G = (0.02207, -0.01028, 0.01995, 0.61460)
_SUGAR_ML_PER_G_AND_C = 0.00046

_AT_20_C = Q_(20, "degC")


def brix(sugar, water, temperature=_AT_20_C):
    """The degrees Brix of a syrup: sugar over sugar and water together, by weight.

    A syrup of equal weights is 50 °Brix, one of equal cups less: a cup of sugar is lighter.

    Parameters
    ----------
    sugar : Quantity [weight]
    water : Quantity [weight or volume]
        A volume is weighed by the density of water at `temperature`.
    temperature : Quantity [temperature], 0 °C to 100 °C

    Returns
    -------
    Quantity [percent]
        Water at 20 °C dissolves sugar up to 67.1 °Brix; a syrup boiled beyond may crystallise.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    300 g sugar in 700 g water: 300 / 1000 = 30 °Brix.

    >>> print(say(brix(sugar=Q_(300, "g"), water=Q_(700, "g"))))
    30 %
    """
    sugar_g = amount(sugar, "g", "sugar", least=0, many=True)
    water_g = grams_of_water(water, temperature)
    return Q_(100 * sugar_g / (sugar_g + water_g), "percent")


def sugar_for_syrup(water, brix, temperature=_AT_20_C):
    """The sugar to stir into water for a syrup of this strength: water x Brix / (100 - Brix).

    Parameters
    ----------
    water : Quantity [weight or volume]
        A volume is weighed by the density of water at `temperature`.
    brix : Quantity [percent], 0 to 90
    temperature : Quantity [temperature], 0 °C to 100 °C

    Returns
    -------
    Quantity [weight]
        In the unit of `water`, in grams for a volume.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    700 g of water to 30 °Brix: 700 x 30 / 70 = 300 g.

    >>> print(say(sugar_for_syrup(water=Q_(700, "g"), brix=Q_(30, "percent"))))
    300 g
    """
    percent = amount(brix, "percent", "brix", least=0, most=90, many=True)
    water_g = grams_of_water(water, temperature)
    unit = str(water.units) if same_kind(water, "g") else "g"
    return Q_(water_g * percent / (100 - percent), "g").to(unit)


def syrup_density(brix, temperature=_AT_20_C):
    """How heavy a litre of syrup is.

    Parameters
    ----------
    brix : Quantity [percent], 0 to 70
    temperature : Quantity [temperature], 10 °C to 30 °C
        The tables behind it stand at 15 °C and 20 °C.

    Returns
    -------
    Quantity [density]
        Within 0.05 kg/m³ to 30 °Brix at 15 °C and 20 °C, within 0.3 elsewhere at 20 °C.

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    The volumes of water and of dissolved sugar added up; a gram of sugar takes up 0.615 mL
    in a thin syrup and 0.631 mL in a thick one.

    Examples
    --------
    The tables print 1126.98 kg/m³ for 30 °Brix at 20 °C.

    >>> print(round(syrup_density(Q_(30, "percent")).to("g/L").magnitude, 1))
    1127.0

    References
    ----------
    Toruń university, physics laboratory tables (5 to 30 %).
    """
    share = amount(brix, "percent", "brix", least=0, most=70, many=True) / 100
    celsius = amount(temperature, "degC", "temperature", least=10, most=30, many=True)
    water_ml_per_g = 1 / water_density(temperature).to("g/mL").magnitude
    sugar_ml_per_g = np.polyval(_SUGAR_ML_PER_G, share) + _SUGAR_ML_PER_G_AND_C * (celsius - 20)
    return Q_(1 / ((1 - share) * water_ml_per_g + share * sugar_ml_per_g), "g/mL")


def syrup_gravity(brix, temperature=_AT_20_C, water_temperature=_AT_20_C):
    """What a gravity hydrometer says in a syrup; `baume_from_gravity` makes degrees Baumé of it.

    Parameters
    ----------
    brix : Quantity [percent], 0 to 70
    temperature : Quantity [temperature], 10 °C to 30 °C
        Of the syrup: a hot one reads far too low, so let it cool.
    water_temperature : Quantity [temperature]
        Of the water that the hydrometer calls 1; "20/20" on the stem names both.

    Returns
    -------
    float

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    30 °Brix at 20 °C: 1127.0 / 998.2 = 1.129.

    >>> round(syrup_gravity(Q_(30, "percent")), 3)
    1.129
    """
    ratio = syrup_density(brix, temperature) / water_density(water_temperature)
    return reading(ratio, "gravity")


def brix_from_gravity(gravity, formula="cubic"):
    """The degrees Brix of a syrup in which a gravity hydrometer (20/20 °C) shows `gravity`.

    Parameters
    ----------
    gravity : float, 1 to 1.29, or to 1.13 for "rational"
    formula : "cubic" or "rational"
        Two formulas in print, 0.003 °Brix apart to 30 °Brix.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Notes
    -----
    cubic: 182.46007 g³ - 775.68212 g² + 1262.7794 g - 669.56218, within 0.1 to 60 °Brix.
    rational: 28.14203 g + 202.4427 - 230.5870 / g, to 30 °Brix. At gravity 1 both miss 0 by less
    than 0.005, and 0 is given.

    Examples
    --------
    The US Department of Agriculture prints 4.00 °Brix for 1.01569.

    >>> print(say(brix_from_gravity(1.01569)))
    4 %

    References
    ----------
    USDA AMS, file code 135-A-50 (gravity at 20/20 °C).
    """
    coefficients = GRAVITY_FORMULAS[one_of(formula, GRAVITY_FORMULAS, "formula")]
    ratio = reading(gravity, "gravity", least=1, most=_HIGHEST_GRAVITY[formula])
    value = np.polyval(coefficients, ratio)
    # The rational one ends in 1 / gravity: the same polynomial, one power lower.
    value = value / ratio if formula == "rational" else value
    return Q_(np.maximum(value, 0.0), "percent")
