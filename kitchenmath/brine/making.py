"""Making a brine of a stated strength.

"Strength" here is always salt over the finished brine, by weight, in percent: 50 g in 950 g of
water is 5 %. Table salt (NaCl) is meant; sea salt and coarse salts hold other things and water.
Curing salts (nitrite) are not dosed: see `curing`.
"""

from typing import NamedTuple

from kitchenmath.brine.density import (
    brine_density,
    grams_of_water,
)
from kitchenmath.brine.points import (
    unsaturated,
)
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity, same_kind

__all__ = [
    "BrineParts",
    "brine_parts",
    "salt_for_brine",
    "salt_per_litre_of_brine",
    "salt_per_litre_of_water",
    "strength",
]

_AT_20_C = Q_(20, "degC")


class BrineParts(NamedTuple):
    """What goes into a brine."""

    salt: Quantity
    water: Quantity


def strength(salt, water, temperature=_AT_20_C):
    """The strength of a brine: salt over salt and water together.

    Not salt over water: 100 g in a kilo of water is 9.09 %, not 10 %.

    Parameters
    ----------
    salt : Quantity [weight]
    water : Quantity [weight or volume]
        A volume is weighed by the density of water at `temperature`.
    temperature : Quantity [temperature], 0 °C to 100 °C
        At which it must all dissolve.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange
        When more salt came than that water dissolves.

    Examples
    --------
    50 g salt in 950 g water: 50 / 1000 = 5 %.

    >>> print(say(strength(salt=Q_(50, "g"), water=Q_(950, "g"))))
    5 %
    """
    salt_g = amount(salt, "g", "salt", least=0)
    water_g = grams_of_water(water, temperature)
    made = Q_(100 * salt_g / (salt_g + water_g), "percent")
    unsaturated(made, temperature, "salt, as a strength")
    return made


def salt_for_brine(water, strength, temperature=_AT_20_C):
    """The salt to add to a weight of water: water x p / (100 - p).

    More than p percent of the water, because the salt itself counts in the finished brine.

    Parameters
    ----------
    water : Quantity [weight or volume]
        A volume is weighed by the density of water at `temperature`.
    strength : Quantity [percent], up to saturation
    temperature : Quantity [temperature], 0 °C to 100 °C
        At which it must all dissolve.

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
    A kilo of water, 5 %: 1000 x 5 / 95 = 52.63 g.

    >>> print(say(salt_for_brine(water=Q_(1000, "g"), strength=Q_(5, "percent"))))
    52.63 g
    """
    percent = unsaturated(strength, temperature)
    water_g = grams_of_water(water, temperature)
    unit = str(water.units) if same_kind(water, "g") else "g"
    return Q_(water_g * percent / (100 - percent), "g").to(unit)


def brine_parts(brine, strength, temperature=_AT_20_C):
    """The salt and the water that make a stated amount of brine.

    Parameters
    ----------
    brine : Quantity [weight or volume]
        What must be there in the end, such as enough to cover the birds.
    strength : Quantity [percent], up to saturation
    temperature : Quantity [temperature]
        For a volume of brine 0 °C to 30 °C, else to 100 °C.

    Returns
    -------
    BrineParts
        `salt` and `water`, both in grams.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    12 L at 6 %: a litre weighs 1041.4 g, so 12 497 g, of which 6 % or 749.8 g is salt.

    >>> salt, water = brine_parts(brine=Q_(12, "L"), strength=Q_(6, "percent"))
    >>> print(say(salt), "and", say(water.to("kg")))
    749.8 g and 11.75 kg
    """
    share = unsaturated(strength, temperature) / 100
    if isinstance(brine, Quantity) and same_kind(brine, "mL"):
        brine = brine * brine_density(strength, temperature)
    brine_g = amount(brine, "g", "brine", above=0)
    return BrineParts(Q_(brine_g * share, "g"), Q_(brine_g * (1 - share), "g"))


def salt_per_litre_of_water(strength):
    """Grams of salt to stir into each litre of water. Not what a litre of the brine then holds.

    Guides write "g/L" for both: 60° on the salometer is 188 g to a litre of water, and 177 g in
    a litre of the brine, because a litre of water gives 1.07 L of brine.

    Parameters
    ----------
    strength : Quantity [percent], up to saturation at 20 °C

    Returns
    -------
    Quantity [g/L]
        A litre of water is taken as a kilogram, as such tables do; at 20 °C it is 0.2 % less.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    15.84 %: 1000 x 15.84 / 84.16 = 188.2 g.

    >>> print(say(salt_per_litre_of_water(Q_(15.84, "percent"))))
    188.2 g/L

    References
    ----------
    Seafish, brining table (60°: 188.18 g to a litre of water, 176.7 g in a litre of brine).
    """
    percent = unsaturated(strength, _AT_20_C)
    return Q_(1000 * percent / (100 - percent), "g/L")


def salt_per_litre_of_brine(strength, temperature=_AT_20_C):
    """Grams of salt that a litre of finished brine holds. Not what went into a litre of water.

    Parameters
    ----------
    strength : Quantity [percent], up to saturation
    temperature : Quantity [temperature], 0 °C to 30 °C

    Returns
    -------
    Quantity [g/L]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    10 % at 20 °C: a litre weighs 1070.7 g, a tenth of it is salt.

    >>> print(say(salt_per_litre_of_brine(Q_(10, "percent"))))
    107.1 g/L

    References
    ----------
    *Poradnik fizykochemiczny* (WNT, 1974): 107.07 g/L at 10 %.
    """
    density_g_per_l = brine_density(strength, temperature).to("g/L").magnitude
    return Q_(density_g_per_l * unsaturated(strength, temperature) / 100, "g/L")
