"""A right answer, or a slip's, as a student types it."""

from kitchenmath.units import say
from kitchenmath.units.registry import Quantity


def as_typed(value, digits=5):
    """An amount in so many figures; a clock time or names out of a list as they say themselves."""
    return say(value, digits) if isinstance(value, Quantity) else str(value)
