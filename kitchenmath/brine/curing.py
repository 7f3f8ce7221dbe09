"""Curing salts: a warning, and a look at whether a figure is above the legal limit. No dosing."""

from typing import NamedTuple

import numpy as np

from kitchenmath.data.tables import table
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, Quantity

__all__ = ["CURING_CAUTION", "above_curing_limit", "curing_limit"]

CURING_CAUTION = (
    "Nitrite poisons in gram amounts, and too little does not hold back botulism. This kit doses "
    "no curing salt. Follow the packet, a tested recipe and the food code, under a trained person."
)


class CuringLimit(NamedTuple):
    """A limit as a regulation prints it."""

    limit: Quantity
    counted_as: str
    source: str


def curing_limit(use):
    """The legal limit of a curing salt for one use in the United States, quoted.

    A limit, not a recipe: never aim at it, and the local food code decides.

    Parameters
    ----------
    use : str
        Such as "comminuted meat, not bacon" or "dry cured bacon". Bacon has limits of its own, far
        below those of other cured meat.

    Returns
    -------
    CuringLimit
        `limit` [mg/kg, which is parts per million], `counted_as`, `source`.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> bacon = curing_limit("pumped bacon")
    >>> print(say(bacon.limit), "of", bacon.counted_as)
    120 mg/kg of sodium nitrite going in

    References
    ----------
    FSIS Handbook 7620.3 (1995); 21 CFR 172.170 (nitrate) and 172.175 (nitrite). Two rows of bacon
    are handed on and were not read in their source; `source` says so.
    """
    limits = {row["use"]: row for row in table("curing_limits.csv")}
    row = limits[one_of(use, limits, "use")]
    return CuringLimit(Q_(float(row["limit_mg_per_kg"]), "mg/kg"), row["counted_as"], row["source"])


def above_curing_limit(found, use):
    """Whether a figure, worked out or measured elsewhere, is above the legal limit for this use.

    "Not above" does not mean safe: too little nitrite fails as well, and nobody sees it.

    Parameters
    ----------
    found : Quantity [mg/kg]
        As sodium nitrite or nitrate, not as the curing mixture that holds a few percent of it.
    use : str
        As in `curing_limit`.

    Returns
    -------
    bool

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    FSIS sets 156 parts per million going in for sausages and other comminuted meat.

    >>> above_curing_limit(Q_(180, "mg/kg"), "comminuted meat, not bacon")
    True

    400 in a dry cured ham is below 625; in a dry cured bacon it is twice the limit.

    >>> above_curing_limit(Q_(400, "mg/kg"), "dry cured bacon")
    True
    """
    found_mg_kg = amount(found, "mg/kg", "found", least=0)
    return bool(np.any(found_mg_kg > curing_limit(use).limit.magnitude))
