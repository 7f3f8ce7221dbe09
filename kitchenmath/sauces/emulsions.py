"""Oil in water: how much of the volume is oil, and how tightly its droplets are packed.

Egg and mustard are allergens. Mayonnaise from raw yolk is ready-to-eat raw egg: use pasteurised
egg where the local food code or the guest asks for it.
"""

from typing import NamedTuple

from kitchenmath.data.tables import table
from kitchenmath.units.door import alike, amount
from kitchenmath.units.registry import Q_, Quantity, same_kind
from kitchenmath.units.scales import reading

__all__ = [
    "Vinaigrette",
    "oil_volume_fraction",
    "oil_weight_fraction",
    "packing_marks",
    "packing_of",
    "vinaigrette",
]

_OIL = Q_(0.915, "g/mL")  # salad oils at room temperature; SR28's cup of oil gives 0.92
_WATER_PHASE = Q_(1.03, "g/mL")  # vinegar, yolk and salt together; a round figure


def oil_volume_fraction(oil, water_phase, oil_density=_OIL, water_density=_WATER_PHASE):
    """The share of an emulsion's volume that is oil: what decides how thick it is.

    Not the share of its weight, which is lower, because oil is light: 65 % by weight, the least
    that US law allows in mayonnaise (21 CFR 169.140), is 67.6 % by volume.

    Parameters
    ----------
    oil, water_phase : Quantity [both weights, or both volumes]
        The water phase is all the rest: vinegar, yolk, mustard.
    oil_density, water_density : Quantity [density]
        Used for weights only.

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
    65 g oil is 71.0 mL, 35 g of the rest 34.0 mL: 71.0 / 105.0 = 67.6 %.

    >>> print(say(oil_volume_fraction(Q_(65, "g"), Q_(35, "g")), digits=3))
    67.6 %
    """
    oil_u, rest_u = alike(oil, "oil", water_phase, "water_phase")
    if not same_kind(oil, "mL"):
        amount(oil, "g", "oil")
        oil_u = oil_u / amount(oil_density, "g/mL", "oil_density", above=0)
        rest_u = rest_u / amount(water_density, "g/mL", "water_density", above=0)
    return Q_(100 * oil_u / (oil_u + rest_u), "percent")


def oil_weight_fraction(volume_fraction, oil_density=_OIL, water_density=_WATER_PHASE):
    """The share of an emulsion's weight that is oil, from its share of the volume.

    Parameters
    ----------
    volume_fraction : Quantity [percent], 0 to 100
    oil_density, water_density : Quantity [density]

    Returns
    -------
    Quantity [percent]
        By weight.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    64 mL oil is 58.6 g, 36 mL of the rest 37.1 g: 58.6 / 95.6 = 61.2 %.

    >>> print(say(oil_weight_fraction(Q_(64, "percent")), digits=3))
    61.2 %
    """
    oil_share = amount(volume_fraction, "percent", "volume_fraction", least=0, most=100) / 100
    oil_g = oil_share * amount(oil_density, "g/mL", "oil_density", above=0)
    rest_g = (1 - oil_share) * amount(water_density, "g/mL", "water_density", above=0)
    return Q_(100 * oil_g / (oil_g + rest_g), "percent")


def packing_marks():
    """The shares of oil by volume at which an emulsion changes, from thin to broken.

    Droplets differ in size and give way, so 74 %, the closest packing of equal hard spheres, is
    no ceiling: mayonnaise is workable to about 80 % and breaks above about 90 %.

    Returns
    -------
    dict of str to Quantity [percent]
        Rising.

    Examples
    --------
    Closest packing is π / √18 = 74.05 %.

    >>> print(say(packing_marks()["closest packing of equal spheres"]))
    74.05 %

    References
    ----------
    *Physics World* (2008), random packing; McGee (2004) and Lowe (1943), mayonnaise.
    """
    return {
        row["mark"]: Q_(float(row["oil_percent"]), "percent") for row in table("packing_marks.csv")
    }


def packing_of(oil):
    """The highest mark that this share of oil has reached, in words.

    Parameters
    ----------
    oil : Quantity [percent], 0 to 100
        Of the volume, as `oil_volume_fraction` gives it.

    Returns
    -------
    str

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    The legal least of mayonnaise, 67.6 % by volume, lies between random and closest packing.

    >>> packing_of(Q_(67.6, "percent"))
    'random close packing of equal spheres'
    """
    oil_percent = amount(oil, "percent", "oil", least=0, most=100)
    reached = [mark for mark, least in packing_marks().items() if least.magnitude <= oil_percent]
    return reached[-1] if reached else "droplets apart: runny"


class Vinaigrette(NamedTuple):
    """What goes into a vinaigrette."""

    oil: Quantity
    acid: Quantity


def vinaigrette(batch, oil_to_acid=3):
    """Oil and acid for a batch, by volume: three to one is common practice, no law.

    Parameters
    ----------
    batch : Quantity [volume]
    oil_to_acid : float, 0.5 to 10
        Parts of oil to one part of vinegar or juice.

    Returns
    -------
    Vinaigrette
        `oil` and `acid` in the unit of `batch`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    1 L at three to one: 750 mL and 250 mL.

    >>> oil, acid = vinaigrette(Q_(1000, "mL"))
    >>> print(say(oil), "and", say(acid))
    750 mL and 250 mL
    """
    amount(batch, "mL", "batch", above=0)
    parts = reading(oil_to_acid, "oil_to_acid", least=0.5, most=10)
    return Vinaigrette(batch * (parts / (parts + 1)), batch / (parts + 1))
