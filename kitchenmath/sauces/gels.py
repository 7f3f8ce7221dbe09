"""Gelatin of one strength for another, and at what temperature gels set and melt."""

import math
from typing import NamedTuple

from kitchenmath.data.tables import table
from kitchenmath.units.door import alike, amount, one_of
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.scales import reading

__all__ = [
    "GELATIN_RULES",
    "GelPoints",
    "Leaf",
    "gel_points",
    "gel_strength",
    "gelatin_for",
    "leaf_gelatins",
]

GELATIN_RULES = {"square root": math.sqrt, "linear": float}
# The gel in which Bloom is measured: 7.5 g in 105 g of water (6.67 %), at 10 °C, 4 mm deep.
_BLOOM_TEST = 7.5 / 105


def gelatin_for(weight, from_bloom, to_bloom, rule="square root"):
    """How much of another gelatin sets a jelly as firm: weight x √(from / to).

    A higher Bloom is a stronger gelatin, so less of it is needed.

    Parameters
    ----------
    weight : Quantity [weight]
        Of the gelatin in the recipe.
    from_bloom, to_bloom : float, 50 to 325
        The strength of the recipe's gelatin, and of yours.
    rule : "square root" or "linear"
        Firmness goes with the square of the concentration, so the root is what is measured.
        Weight x from / to is printed as widely; from 250 to 160 it takes 25 % more.

    Returns
    -------
    Quantity [weight]
        In the unit of `weight`.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    21 g of 250 Bloom by gelatin of 160: 21 x √(250 / 160) = 26.25 g.

    >>> print(say(gelatin_for(Q_(21, "g"), from_bloom=250, to_bloom=160)))
    26.25 g

    References
    ----------
    Ward & Courts, *The Science and Technology of Gelatin*, p. 509.
    """
    amount(weight, "g", "weight", above=0)
    one_of(rule, GELATIN_RULES, "rule")
    was = reading(from_bloom, "from_bloom", least=50, most=325)
    now = reading(to_bloom, "to_bloom", least=50, most=325)
    return weight * GELATIN_RULES[rule](was / now)


def gel_strength(gelatin, water, bloom):
    """How firm a jelly sets, on the scale of the Bloom test: bloom x (ratio / test's ratio)².

    Parameters
    ----------
    gelatin, water : Quantity [weight]
    bloom : float, 50 to 325
        Of the gelatin: the firmness of 7.5 g in 105 g of water at 10 °C.

    Returns
    -------
    float
        Trust it near the test's concentration only, from about half to twice as much gelatin.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    7.52 g of a 175 Bloom gelatin in 105 g: 175 x (7.52 / 7.5)² = 175.9.

    >>> round(gel_strength(Q_(7.52, "g"), Q_(105, "g"), bloom=175), 1)
    175.9

    References
    ----------
    Ward & Courts, *The Science and Technology of Gelatin*, p. 509.
    """
    amount(gelatin, "g", "gelatin", above=0)
    gelatin_u, water_u = alike(gelatin, "gelatin", water, "water")
    strength = reading(bloom, "bloom", least=50, most=325)
    return float(strength * (gelatin_u / water_u / _BLOOM_TEST) ** 2)


class GelPoints(NamedTuple):
    """Where a gel sets and melts, each as (lowest, highest) temperature."""

    sets: tuple
    melts: tuple
    status: str


def gel_points(agent):
    """The temperatures at which a gel sets on cooling and melts on warming.

    They are far apart: an agar jelly made hot can be served hot, one of gelatin cannot.

    Parameters
    ----------
    agent : str
        "agar".

    Returns
    -------
    GelPoints
        `sets` and `melts` (lowest, highest [temperature]) and `status`; give or take 5 °C.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> print(" to ".join(say(point) for point in gel_points("agar").melts))
    80 °C to 90 °C
    """
    rows = {row["agent"]: row for row in table("gel_points.csv")}
    row = rows[one_of(agent, rows, "agent")]
    points = [Q_(float(row[f"{end}_c"]), "degC") for end in
              ("sets_low", "sets_high", "melts_low", "melts_high")]  # fmt: skip
    return GelPoints(tuple(points[:2]), tuple(points[2:]), row["status"])


class Leaf(NamedTuple):
    """A kind of leaf gelatin: its Bloom as (lowest, highest), and what a leaf weighs."""

    bloom: tuple
    weight: Quantity
    status: str

    @property
    def middle(self):
        """The Bloom in the middle, to reckon with where the packet names none."""
        return sum(self.bloom) / 2


def leaf_gelatins():
    """Leaf gelatin by the names that it is sold under, the weakest first.

    A leaf of a weak kind weighs more, so that a leaf of each sets about as much. Only about: weigh
    the leaves, and read the Bloom on the packet.

    Returns
    -------
    dict of str to Leaf
        `bloom`, `weight` [weight] and `status`; all of it recalled and not read.

    Examples
    --------
    >>> gold = leaf_gelatins()["gold"]
    >>> print(gold.bloom, say(gold.weight), gold.status)
    (190.0, 220.0) 2 g memory
    """
    return {
        row["name"]: Leaf(
            (float(row["bloom_low"]), float(row["bloom_high"])),
            Q_(float(row["leaf_g"]), "g"),
            row["status"],
        )
        for row in table("leaf_gelatin.csv")
    }
