"""The same cake in another pan: how much of the recipe fills it as high."""

import math
from dataclasses import dataclass

from kitchenmath.errors import WrongKind
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity, kind_of
from kitchenmath.units.saying import say


@dataclass(frozen=True)
class Pan:
    """A pan with straight walls: its bottom, and how high it is filled where that matters.

    Make one with `Pan.round`, `Pan.square` or `Pan.rectangle`, measured inside, at the bottom.

    Parameters
    ----------
    area : Quantity [area]
    depth : Quantity [length], optional
        Of the filling, not of the wall.

    Raises
    ------
    WrongKind
    OutOfRange
    """

    area: Quantity
    depth: Quantity | None = None

    def __post_init__(self):
        amount(self.area, "cm**2", "area", above=0)
        if self.depth is not None:
            amount(self.depth, "cm", "depth", above=0)

    @classmethod
    def round(cls, diameter, depth=None):
        """A round pan of this diameter [length], filled to `depth` [length]."""
        diameter_cm = amount(diameter, "cm", "diameter", above=0)
        return cls(Q_(math.pi / 4 * diameter_cm**2, "cm**2"), depth)

    @classmethod
    def square(cls, side, depth=None):
        """A square pan of this side [length], filled to `depth` [length]."""
        return cls(Q_(amount(side, "cm", "side", above=0) ** 2, "cm**2"), depth)

    @classmethod
    def rectangle(cls, length, width, depth=None):
        """A pan of this length and width [length], filled to `depth` [length]."""
        length_cm = amount(length, "cm", "length", above=0)
        return cls(Q_(length_cm * amount(width, "cm", "width", above=0), "cm**2"), depth)


def pan_factor(old, new):
    """What to multiply a recipe by when it moves to another pan.

    Areas count, not diameters: from 8 to 9 in round is 27 % more batter, and not 12 %.

    Parameters
    ----------
    old, new : Pan, or Quantity [volume]
        Two pans; or two volumes, for odd shapes: fill each with water and weigh it, a gram a mL.
        Both pans have a depth, or neither has: then both are filled as high.

    Returns
    -------
    float

    Raises
    ------
    WrongKind
        When only one pan has a depth, or one is a pan and the other a volume.
    OutOfRange

    Examples
    --------
    (9/8)² = 1.2656 from 8 to 9 in round.

    >>> round(pan_factor(Pan.round(Q_(8, "inch")), Pan.round(Q_(9, "inch"))), 6)
    1.265625

    A 9 in round and an 8 in square hold the same within a percent: 64 / 63.62 = 1.006.

    >>> round(pan_factor(Pan.round(Q_(9, "inch")), Pan.square(Q_(8, "inch"))), 3)
    1.006

    Notes
    -----
    As high means as long in the oven, about. Filled higher it takes longer and browns more before
    the middle is done: see `cooking_time_factor`, and test with a skewer or a probe.
    """
    old_u, new_u = _size(old, "old"), _size(new, "new")
    if old_u[0] != new_u[0]:
        raise WrongKind(
            f"new: {new_u[0]} came, and old is {old_u[0]}; give both in the same way, "
            'such as Pan.round(Q_(20, "cm")), both with a depth or both without.'
        )
    return new_u[1] / old_u[1]


def _size(pan, name):
    """What can be compared of a pan, and its number."""
    if not isinstance(pan, Pan):
        if not isinstance(pan, Quantity) or kind_of(pan) != "volume":
            came = say(pan) if isinstance(pan, Quantity) else repr(pan)
            raise WrongKind(
                f'{name}: needs a pan such as Pan.round(Q_(20, "cm")), or the volume it holds, '
                f"and {came} came."
            )
        return "a volume", amount(pan, "mL", name, above=0)
    area_cm2 = pan.area.to("cm**2").magnitude
    if pan.depth is None:
        return "a pan without depth", area_cm2
    return "a pan with depth", area_cm2 * pan.depth.to("cm").magnitude
