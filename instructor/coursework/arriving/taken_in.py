"""What one taking-in brought, as data; `taken_in_words` says it."""

from dataclasses import dataclass

__all__ = ["TakenIn"]


@dataclass(frozen=True)
class TakenIn:
    """What one taking-in brought.

    Attributes
    ----------
    came : tuple of Arrival
        Every file that was found this time, new or not, in order.
    new : tuple of Arrival
        Those that were not in the list before.
    mended : tuple of Arrival
        Those that could not be placed before and now are: on a mended roster, for instance.
    in_doubt : tuple of (Arrival, int, int)
        Those among the new ones that are late, and in time by their own word, with both times.
    """

    came: tuple
    new: tuple
    mended: tuple
    in_doubt: tuple = ()
