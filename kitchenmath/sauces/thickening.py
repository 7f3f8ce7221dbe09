"""Thickening by weight: doses in percent of the base, and roux by the flour in a litre.

Allergens come in here: flour holds gluten, roux butter; lecithin is mostly from soya, and stocks
carry celery and fish. Write them on the card.
"""

from dataclasses import dataclass
from typing import NamedTuple

from kitchenmath.data.tables import table
from kitchenmath.units.door import amount, one_of, share
from kitchenmath.units.registry import Q_, Quantity

__all__ = ["Dose", "Roux", "Slurry", "dose", "per_litre", "roux_for", "slurry_for", "usual_dose"]

BROWNING_LOSS = 0.075  # share of a roux lost in browning: Escoffier's 6 % (oz) and 9 % (g), middle


class Dose(NamedTuple):
    """The usual dose of an agent; `most` is None where the source gives no upper end."""

    least: Quantity
    most: Quantity
    status: str
    source: str


def dose(base, percent):
    """The weight of an agent at a percent of the base: the base counts as 100 %, as flour does.

    A percent of the base, not of the finished sauce; below 2 % no scale sees the difference.

    Parameters
    ----------
    base : Quantity [weight]
        The liquid that it goes into. Weigh it: a litre of cream or syrup is no kilogram.
    percent : Quantity [percent], above 0, at most 100

    Returns
    -------
    Quantity [weight]
        In grams.

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    What is usual: `usual_dose`. Lecithin is no protein but a mixture of phospholipids, a small
    molecule that works at the surface; 0.3 to 0.8 % of the juice is common practice. Pages that
    call it a protein are wrong; so is a "4 %" in print, whose own recipes take a tenth of that.

    Examples
    --------
    500 g of cider at 0.5 % lecithin: 500 x 0.005 = 2.5 g.

    >>> print(say(dose(base=Q_(500, "g"), percent=Q_(0.5, "percent"))))
    2.5 g
    """
    base_g = amount(base, "g", "base", above=0)
    return Q_(base_g * share(percent, "percent"), "g")


def usual_dose(agent):
    """What is usually taken of a thickener or foaming agent, with the standing of that figure.

    Parameters
    ----------
    agent : str
        "agar", "gelatin", "xanthan" or "lecithin".

    Returns
    -------
    Dose
        `least` and `most` [percent of the base], `status` ("common practice", or "memory" for a
        figure recalled and not read), `source`.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> lecithin = usual_dose("lecithin")
    >>> print(say(lecithin.least), "to", say(lecithin.most), "-", lecithin.status)
    0.3 % to 0.8 % - common practice
    """
    rows = {row["agent"]: row for row in table("doses.csv")}
    row = rows[one_of(agent, rows, "agent")]
    most = Q_(float(row["high_percent"]), "percent") if row["high_percent"] else None
    return Dose(Q_(float(row["low_percent"]), "percent"), most, row["status"], row["source"])


@dataclass(frozen=True)
class Roux:
    """Fat and flour for a liquid, with the figure that lets two recipes be compared.

    Parameters
    ----------
    fat, flour : Quantity [weight]
    liquid : Quantity [volume]
        That the roux thickens.

    Examples
    --------
    125 g of butter and of flour in 2 L: 250 g of roux, 62.5 g of flour a litre.

    >>> roux = Roux(fat=Q_(125, "g"), flour=Q_(125, "g"), liquid=Q_(2, "L"))
    >>> print(say(roux.weight), "with", say(roux.flour_per_litre))
    250 g with 62.5 g/L
    """

    fat: Quantity
    flour: Quantity
    liquid: Quantity

    @property
    def weight(self):
        """Raw [weight]."""
        return self.fat + self.flour

    @property
    def when_brown(self):
        """What is left once it is cooked brown [weight], 6 to 9 % less in Escoffier's figures."""
        return self.weight * (1 - BROWNING_LOSS)

    @property
    def per_litre(self):
        """Raw roux in a litre of liquid [g/L]."""
        return per_litre(self.weight, self.liquid)

    @property
    def flour_per_litre(self):
        """Flour in a litre of liquid [g/L]: it is the flour that thickens."""
        return per_litre(self.flour, self.liquid)


def roux_for(liquid, body, source="Gisslen"):
    """Fat and flour for a liquid, after a named source: they differ, mostly in the fat.

    Compare the flour in a litre and not the roux: at "medium" the household spoons take half as
    much roux again as Gisslen (186 against 125 g/L), but nearly the same flour (66 against 62.5).

    Parameters
    ----------
    liquid : Quantity [volume]
    body : str
        "thin", "medium" or "thick"; for "household" also "heavy", for "Escoffier" only "béchamel".
    source : "Gisslen", "Escoffier" or "household"

    Returns
    -------
    Roux

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    2 L of velouté of medium body: 500 g in 4 L, so 250 g, half of it flour.

    >>> roux = roux_for(Q_(2, "L"), body="medium")
    >>> print(say(roux.weight), "of which flour", say(roux.flour))
    250 g of which flour 125 g

    References
    ----------
    Gisslen, *Professional Cooking* (2014), table 8.5; Escoffier (1907); spoons: common practice.
    """
    rows = table("roux.csv")
    one_of(source, sorted({row["source"] for row in rows}), "source")
    bodies = {row["body"]: row for row in rows if row["source"] == source}
    row = bodies[one_of(body, bodies, "body")]
    times = amount(liquid, "mL", "liquid", above=0) / float(row["liquid_ml"])
    return Roux(
        Q_(times * float(row["fat_g"]), "g"), Q_(times * float(row["flour_g"]), "g"), liquid
    )


def per_litre(weight, liquid):
    """Grams to each litre of liquid, the figure in which two recipes can be compared.

    Parameters
    ----------
    weight : Quantity [weight]
    liquid : Quantity [volume]
        Name the country of its pint or quart: English books mean imperial ones, a fifth larger.

    Returns
    -------
    Quantity [g/L]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    Escoffier's velouté, 1 lb of roux to 5 imperial quarts: 453.6 g / 5.683 L = 79.8 g/L.

    >>> print(say(per_litre(Q_(1, "lb"), Q_(5, "uk_quart")), digits=3))
    79.8 g/L
    """
    weight_g = amount(weight, "g", "weight", above=0)
    return Q_(weight_g / amount(liquid, "L", "liquid", above=0), "g/L")


class Slurry(NamedTuple):
    """Starch, and the cold water that it is stirred into before it meets the pot."""

    starch: Quantity
    water: Quantity
    status: str

    @property
    def weight(self):
        """Of both [weight]."""
        return self.starch + self.water


def slurry_for(flour, starch="cornflour"):
    """The slurry of pure starch that thickens like a weight of flour.

    Flour is starch for three quarters, and its protein gets in the way: pure starch thickens about
    twice as well. Only about: stir half of it in, let it boil up, and look at the spoon.

    Parameters
    ----------
    flour : Quantity [weight]
    starch : str
        "cornflour" or "arrowroot".

    Returns
    -------
    Slurry
        `starch` and `water` [weight], and `status`.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    120 g of flour: half as much cornflour, 60 g, in twice its weight of water, 120 g.

    >>> slurry = slurry_for(Q_(120, "g"))
    >>> print(say(slurry.starch), "in", say(slurry.water), "-", slurry.status)
    60 g in 120 g - common practice
    """
    rows = {row["starch"]: row for row in table("starches.csv")}
    row = rows[one_of(starch, rows, "starch")]
    pure = Q_(amount(flour, "g", "flour", above=0) * float(row["of_flour_percent"]) / 100, "g")
    return Slurry(pure, pure * float(row["slurry_water"]), row["status"])
