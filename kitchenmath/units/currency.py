"""Money of one currency: an invented price is the same number in each, and none is changed over."""

from functools import lru_cache

from kitchenmath.units.registry import Quantity, kind_of, registry
from kitchenmath.units.saying import MONEY

__all__ = ["in_currency", "money_unit"]

MONEY_KINDS = ("money", "money per weight")


def money_unit(unit, currency):
    """A unit of money in another currency: "dollar/kg" in sterling is "sterling/kg".

    Parameters
    ----------
    unit, currency : str

    Returns
    -------
    str
    """
    for known in MONEY:
        unit = unit.replace(known, currency)
    return unit


def in_currency(quantity, currency):
    """The same number in another currency; what is no money stays as it is.

    Parameters
    ----------
    quantity : Quantity or object
    currency : str
        "dollar", "sterling" or "euro".

    Returns
    -------
    Quantity or object

    Examples
    --------
    >>> from kitchenmath.units import Q_, say
    >>> print(say(in_currency(Q_(9.25, "dollar/kg"), "sterling")))
    £9.25 per kg
    """
    if not isinstance(quantity, Quantity) or kind_of(quantity) not in MONEY_KINDS:
        return quantity
    return Quantity(quantity.magnitude, _in(quantity.units, currency))


@lru_cache(maxsize=64)
def _in(units, currency):
    return registry.Unit(money_unit(str(units), currency))
