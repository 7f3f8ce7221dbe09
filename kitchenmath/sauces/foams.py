"""Foams: how much air is in them, and how long they stand.

Whipping siphons hold gas at high pressure: fill to the maker's line, use the maker's cartridges,
strain what goes in, and never unscrew a head before all the gas is out. Foams carry allergens
out of sight: egg white, milk, soya lecithin. Tell the pass.
"""

from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import alike, amount, positive
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

__all__ = [
    "foam_volume",
    "foam_weight",
    "gas_fraction",
    "liquid_for_foam",
    "mix_density",
    "overrun",
    "overrun_from_volumes",
]


def overrun(liquid_weight, foam_weight):
    """The air whipped in, in percent of the liquid: fill one cup with each and weigh both.

    100 % means twice the volume; the foam is then half gas, not all of it (`gas_fraction`).

    Parameters
    ----------
    liquid_weight, foam_weight : Quantity [weight, or density]
        Of the same volume, first before and then after whipping.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange
        When the foam is the heavier one.

    Examples
    --------
    A cup holds 238 g of cream, 120 g of it whipped: 238 / 120 - 1 = 98.3 %.

    >>> print(say(overrun(liquid_weight=Q_(238, "g"), foam_weight=Q_(120, "g")), digits=3))
    98.3 %

    References
    ----------
    Goff, University of Guelph, ice cream notes: (1090 - 560) / 560 = 94.6 %.
    """
    liquid_u, foam_u = alike(liquid_weight, "liquid_weight", foam_weight, "foam_weight")
    if foam_u > liquid_u:
        raise OutOfRange(
            f"foam_weight: {say(foam_weight)} is more than the {say(liquid_weight)} of liquid; "
            "weigh the same volume of both, or are the two the wrong way round?"
        )
    return Q_(100 * (liquid_u / foam_u - 1), "percent")


def overrun_from_volumes(liquid_volume, foam_volume):
    """The air whipped in, when all the liquid became foam: (foam - liquid) / liquid.

    Parameters
    ----------
    liquid_volume, foam_volume : Quantity [volume]

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange
        When the foam is smaller than the liquid.

    Examples
    --------
    500 L of mix become 980 L of ice cream: 480 / 500 = 96 %.

    >>> print(say(overrun_from_volumes(Q_(500, "L"), Q_(980, "L"))))
    96 %

    References
    ----------
    Goff, University of Guelph, ice cream notes.
    """
    liquid_ml = amount(liquid_volume, "mL", "liquid_volume", above=0)
    foam_ml = amount(foam_volume, "mL", "foam_volume", above=0)
    if foam_ml < liquid_ml:
        raise OutOfRange(
            f"foam_volume: {say(foam_volume)} is less than the {say(liquid_volume)} of liquid."
        )
    return Q_(100 * (foam_ml / liquid_ml - 1), "percent")


def foam_volume(liquid_volume, overrun):
    """How much foam a volume of liquid gives: liquid x (100 + overrun) / 100.

    Parameters
    ----------
    liquid_volume : Quantity [volume]
    overrun : Quantity [percent], at least 0

    Returns
    -------
    Quantity [volume]
        In the unit of `liquid_volume`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    200 mL of cider base at 400 %: 200 x 5 = 1000 mL.

    >>> print(say(foam_volume(Q_(200, "mL"), overrun=Q_(400, "percent"))))
    1000 mL
    """
    amount(liquid_volume, "mL", "liquid_volume", above=0)
    return liquid_volume * _swelling(overrun)


def liquid_for_foam(foam_volume, overrun):
    """How much liquid to whip for a volume of foam; allow for what drains and what sticks.

    Parameters
    ----------
    foam_volume : Quantity [volume]
    overrun : Quantity [percent], at least 0

    Returns
    -------
    Quantity [volume]
        In the unit of `foam_volume`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    24 plates of 40 mL at 400 %: 960 / 5 = 192 mL.

    >>> print(say(liquid_for_foam(Q_(960, "mL"), overrun=Q_(400, "percent"))))
    192 mL
    """
    amount(foam_volume, "mL", "foam_volume", above=0)
    return foam_volume / _swelling(overrun)


def foam_weight(liquid_weight, overrun):
    """What a cup weighs full of foam, when it weighs `liquid_weight` full of liquid.

    Parameters
    ----------
    liquid_weight : Quantity [weight, or density]
    overrun : Quantity [percent], at least 0

    Returns
    -------
    Quantity
        In the unit of `liquid_weight`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    A mix of 1100 g/L at 100 %: 1100 / 2 = 550 g/L.

    >>> print(say(foam_weight(Q_(1100, "g/L"), overrun=Q_(100, "percent"))))
    550 g/L

    References
    ----------
    Goff, University of Guelph, ice cream notes.
    """
    positive(liquid_weight, "liquid_weight")
    return liquid_weight / _swelling(overrun)


def gas_fraction(overrun):
    """The share of the foam that is gas: overrun / (100 + overrun).

    Parameters
    ----------
    overrun : Quantity [percent], at least 0

    Returns
    -------
    Quantity [percent]
        By volume.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    100 % of overrun is half gas.

    >>> print(say(gas_fraction(Q_(100, "percent"))))
    50 %
    """
    return Q_(100 * (1 - 1 / _swelling(overrun)), "percent")


def _swelling(overrun):
    """How many times the liquid's volume the foam has."""
    return 1 + amount(overrun, "percent", "overrun", least=0) / 100


def mix_density(fat, solids):
    """How heavy an ice cream mix is, from its fat and its solids.

    Parameters
    ----------
    fat : Quantity [percent]
        Of the mix, by weight.
    solids : Quantity [percent]
        All of them, the fat included.

    Returns
    -------
    Quantity [density]

    Raises
    ------
    WrongKind
    OutOfRange
        When there is more fat than solids.

    Examples
    --------
    10 % fat, 38 % solids: 1 / (0.10 x 1.075 + 0.28 x 0.63 + 0.62) = 1.106 g/mL.

    >>> print(say(mix_density(fat=Q_(10, "percent"), solids=Q_(38, "percent"))))
    1.106 g/mL

    References
    ----------
    Goff, University of Guelph, ice cream notes.
    """
    fat_share = amount(fat, "percent", "fat", least=0, most=100) / 100
    solids_share = amount(solids, "percent", "solids", least=0, most=100) / 100
    if fat_share > solids_share:
        raise OutOfRange(f"fat: {say(fat)} is more than the {say(solids)} of solids it belongs to.")
    ml_per_g = fat_share * 1.075 + (solids_share - fat_share) * 0.63 + 1 - solids_share
    return Q_(1 / ml_per_g, "g/mL")
