"""Kitchen units: quantities, reading what a cook types, weight and volume, practical measures.

This page is the door for everybody else; the work is done in `registry` (the one registry of
units), `reading`, `measures`, `saying` and `door`.
"""

from kitchenmath.errors import KitchenError, OutOfRange, UnknownName, Unreadable, WrongKind
from kitchenmath.units.door import alike, amount, money, one_of, positive, share
from kitchenmath.units.measures import (
    density_of,
    household_names,
    in_other_system,
    practical,
    volume_of,
    weight_of,
)
from kitchenmath.units.ovens import oven_mark, oven_temperature
from kitchenmath.units.reading import SYSTEMS, read
from kitchenmath.units.registry import KINDS, Q_, Quantity, kind_of, registry, same_kind
from kitchenmath.units.saying import figures, say, spoken

__all__ = [
    "KINDS",
    "Q_",
    "SYSTEMS",
    "KitchenError",
    "OutOfRange",
    "Quantity",
    "UnknownName",
    "Unreadable",
    "WrongKind",
    "alike",
    "amount",
    "density_of",
    "figures",
    "household_names",
    "in_other_system",
    "kind_of",
    "money",
    "one_of",
    "oven_mark",
    "oven_temperature",
    "positive",
    "practical",
    "read",
    "registry",
    "same_kind",
    "say",
    "share",
    "spoken",
    "volume_of",
    "weight_of",
]
