"""Numbers and counts as a cook writes them, for every page, sheet and terminal."""

from types import MappingProxyType

from kitchenmath.units.saying import figures, plural

__all__ = ["APART", "UNKNOWN", "number", "plural"]

UNKNOWN = MappingProxyType({})  # nobody's name and no title is known: what is said goes by numbers

# What a mark book, a sheet and a page say where a mark does not come from a file.
APART = {"excused": "Excused: it counts nowhere.", "on paper": "On paper."}


def number(value):
    """Points as a cook writes them: 3, 2.5."""
    return figures(round(value, 4), 8)
