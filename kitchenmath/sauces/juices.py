"""Citrus juices: their acid, their balance, and the base of a juice foam."""

from typing import NamedTuple

from kitchenmath.data.tables import table
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, Quantity

__all__ = ["JuiceFoam", "brix_acid_ratio", "citric_acid", "juice_foam_base"]


def citric_acid(juice):
    """The citric acid in a litre of fresh juice, on average; fruits differ by a tenth and more.

    Parameters
    ----------
    juice : str
        "lemon", "lime" or "orange".

    Returns
    -------
    Quantity [g/L]

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> print(say(citric_acid("lemon")))
    48 g/L

    References
    ----------
    Penniston et al., *J. Endourol.* 22 (2008) 567.
    """
    acids = {row["juice"]: row["citric_acid_g_per_l"] for row in table("juice_acid.csv")}
    return Q_(float(acids[one_of(juice, acids, "juice")]), "g/L")


def brix_acid_ratio(brix, acid):
    """How sweet a juice tastes for its sourness: degrees Brix over percent of acid.

    Parameters
    ----------
    brix : Quantity [percent]
        Sugar by weight; a degree Brix is a percent.
    acid : Quantity [percent], above 0
        By weight, as citric acid.

    Returns
    -------
    float
        The citrus trade's standards ask for 8 to 13 at least; its market wants 15 to 18.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    Orange juice of 12 °Brix with 0.8 % acid: 12 / 0.8 = 15.

    >>> brix_acid_ratio(Q_(12, "percent"), acid=Q_(0.8, "percent"))
    15.0

    References
    ----------
    Kimball, *Citrus Processing* (1991).
    """
    brix_percent = amount(brix, "percent", "brix", least=0, most=100)
    return float(brix_percent / amount(acid, "percent", "acid", above=0, most=100))


class JuiceFoam(NamedTuple):
    """A juice foam base, and what to expect of it: common practice, no source."""

    juice: Quantity
    sugar: Quantity
    warm_to: Quantity
    stands: tuple


def juice_foam_base(juice):
    """The usual base of a citrus foam: two parts of juice to one part of sugar by volume.

    Warm it to about 82 °C (180 °F), never boil it, foam it, and expect it to stand for 5 to 10
    minutes. With egg white let it cool to hand-warm first, as egg white sets in a hot base. It is
    a dessert's sweetness; for a savoury dish take far less sugar. Common practice, no source:
    measure yours with `drainage_half_life`.

    Parameters
    ----------
    juice : Quantity [volume]

    Returns
    -------
    JuiceFoam
        `juice` and `sugar` [volume], `warm_to` [temperature], `stands` (shortest, longest [time]).

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    Sugar slows the draining by making the liquid thicker. Lecithin lets a thin juice hold a
    light, wet, short-lived foam; protein with pectin or xanthan is the documented way to one
    that stands (*Food Hydrocolloids* 61, 2016). Hot syrup burns: it sticks and holds its heat.

    Examples
    --------
    400 mL of juice take 200 mL of sugar.

    >>> print(say(juice_foam_base(Q_(400, "mL")).sugar))
    200 mL
    """
    amount(juice, "mL", "juice", above=0)
    return JuiceFoam(juice, juice / 2, Q_(82, "degC"), (Q_(5, "min"), Q_(10, "min")))
