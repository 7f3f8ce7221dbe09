"""Where a brine is full, where it freezes and where it boils. For table salt (NaCl) alone.

Sea salt is not NaCl: a brine of 3.5 % sea salts freezes at -1.9 °C, one of table salt at -2.1 °C.
"""

import numpy as np

from kitchenmath.errors import OutOfRange
from kitchenmath.heat.boiling import boiling_point
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

__all__ = [
    "SALT_MOLAR_MASS",
    "brine_boiling_point",
    "freezing_point",
    "molality",
    "saturation",
    "sodium_in",
    "strength_from_molality",
]

SALT_MOLAR_MASS = Q_(58.4428, "g/mol")  # NaCl; Salt Institute data page
SODIUM_SHARE = 0.39337  # g of sodium in a gram of NaCl; the same page
EUTECTIC_PERCENT = 23.31  # the coldest brine, -21.12 °C; the same page

# Percent of salt in a full brine against °C, 0 to 108.7 °C: fitted here to the Salt Institute's
# figures (0, 10, 15.6, 21.1, 26.7, 100 °C) and to 28.40 % at the boil (H2O-NaCl diagram, Smith
# College). Within 0.03 points of all of them.
_SATURATION = (0.000141, 0.00415, 26.296)
# Freezing point in °C against percent, 0 to 23.31 %: fitted here to CRC (5, 10, 15, 20 %),
# the Smithsonian table by molality, Lange (9 to 23 %) and the eutectic. Within 0.04 °C of them.
_FREEZING = (-7.13e-6, -2.458e-4, -4.403e-3, -0.57996, 0.0)
_SEA_LEVEL = Q_(0, "m")
# °C against mol/kg: 2 ions x 0.512 °C x m x (a + b m), where 0.512 is water's boiling constant.
# a and b are set so that the full brine boils 8.7 °C above water, and half a mole within 0.03 °C
# of the textbook's 0.5.
_BOILING = (0.905, 0.0512)


def saturation(temperature):
    """How much salt a brine can hold at this temperature, in percent of the finished brine.

    It hardly rises with heat: what does not dissolve cold will not stay dissolved when cold.

    Parameters
    ----------
    temperature : Quantity [temperature], 0 °C to 108.7 °C
        Below 0 °C another crystal, with water in it, settles out.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    At 60 °F, the salometer's own temperature, 26.395 % by definition of that scale.

    >>> print(say(saturation(Q_(60, "degF"))))
    26.39 %

    References
    ----------
    Salt Institute, physical data of sodium chloride; our fit, 0 to 108.7 °C, within 0.03 points.
    """
    celsius = amount(temperature, "degC", "temperature", least=0, most=108.7, many=True)
    return Q_(np.polyval(_SATURATION, celsius), "percent")


def unsaturated(strength, temperature, name="strength"):
    """The plain percent of a strength that water at this temperature can hold; more is refused.

    Parameters
    ----------
    strength : Quantity [percent]
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
    percent = amount(strength, "percent", name, least=0, below=100, many=True)
    most = saturation(temperature)
    # A brine made up to be just full may come out a rounding error above.
    if np.any(percent > most.magnitude + 1e-9):
        raise OutOfRange(
            f"{name}: {say(Q_(percent, 'percent'))} is more salt than a brine holds at "
            f"{say(temperature)} ({say(most)}); the rest would lie on the bottom."
        )
    return percent


def freezing_point(strength):
    """The temperature at which ice begins to form in a brine.

    Not the temperature at which it is solid: the ice is fresh water, and what is left gets
    stronger and freezes lower, down to -21.1 °C.

    Parameters
    ----------
    strength : Quantity [percent], 0 to 23.31
        Above that, salt and not ice comes out first.

    Returns
    -------
    Quantity [temperature]

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    Sources differ by up to 0.08 °C (5 %: Lange -2.97, later CRC -3.05); we follow the later.
    The ideal rule 2 x 1.86 °C x mol/kg says -7.07 °C at 10 %, half a degree too low.

    Examples
    --------
    CRC prints -6.56 °C at 10 %.

    >>> print(say(freezing_point(Q_(10, "percent")), digits=3))
    -6.56 °C

    References
    ----------
    CRC Handbook (later editions); Lange's Handbook, 15th ed., table 5.13; our fit.
    """
    percent = amount(strength, "percent", "strength", least=0, most=EUTECTIC_PERCENT, many=True)
    return Q_(np.polyval(_FREEZING, percent), "degC")


def brine_boiling_point(strength, altitude=_SEA_LEVEL):
    """The temperature at which a brine boils.

    Salting the pasta water changes it by a tenth of a degree; it does not cook faster for it.

    Parameters
    ----------
    strength : Quantity [percent], 0 to 28.41
        The full brine at its own boiling point.
    altitude : Quantity [length]
        Height above the sea, which lowers water's own boiling point.

    Returns
    -------
    Quantity [temperature]
        Within about 0.1 °C below 10 %, 0.3 °C above.

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    Rise = 2 x 0.512 °C x m (0.905 + 0.0512 m), m in mol of salt per kg of water. A salt splits
    in two, hence the 2; a rule that leaves it out gives half the rise.

    Examples
    --------
    Pasta water, 10 g salt to a litre: m = 10 / 58.44 = 0.17, rise 0.16 °C.

    >>> salted, plain = (brine_boiling_point(Q_(share, "percent")) for share in (0.99, 0))
    >>> print(say(salted - plain, digits=2))
    0.16 °C

    References
    ----------
    Full brine 108.7 °C at 28.40 %: H2O-NaCl diagram, Smith College (2009); our fit.
    """
    m = molality(strength).magnitude
    a, b = _BOILING
    return boiling_point(altitude) + Q_(2 * 0.512 * m * (a + b * m), "delta_degC")


def molality(strength):
    """Moles of salt per kilogram of water, the measure that tables of brines are made in.

    Parameters
    ----------
    strength : Quantity [percent], 0 to 28.41

    Returns
    -------
    Quantity [mol/kg]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    5 % is 50 g salt with 950 g water: 50 / 58.4428 / 0.950 = 0.9006 mol/kg.

    >>> print(round(molality(Q_(5, "percent")).magnitude, 4))
    0.9006
    """
    percent = unsaturated(strength, Q_(108.7, "degC"))
    return Q_(1000 / SALT_MOLAR_MASS.magnitude * percent / (100 - percent), "mol/kg")


def strength_from_molality(molality):
    """The strength of a brine with this many moles of salt per kilogram of water.

    Parameters
    ----------
    molality : Quantity [mol/kg], 0 to 6.79

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    1 mol/kg: 58.44 / 1058.44 = 5.52 %.

    >>> print(say(strength_from_molality(Q_(1, "mol/kg")), digits=3))
    5.52 %
    """
    moles = amount(molality, "mol/kg", "molality", least=0, most=6.79, many=True)
    salt_g = moles * SALT_MOLAR_MASS.magnitude
    return Q_(100 * salt_g / (1000 + salt_g), "percent")


def sodium_in(salt):
    """How much sodium, the figure on a diet sheet, a weight of table salt holds.

    Parameters
    ----------
    salt : Quantity [weight]

    Returns
    -------
    Quantity [weight]
        In the unit of `salt`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    6 g salt, a level teaspoon: 6 x 0.393 = 2.36 g sodium.

    >>> print(say(sodium_in(Q_(6, "g")), digits=3))
    2.36 g

    References
    ----------
    Salt Institute, physical data of sodium chloride: 39.337 % sodium.
    """
    amount(salt, "g", "salt", least=0)
    return salt * SODIUM_SHARE
