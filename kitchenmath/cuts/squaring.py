"""What is left of a round vegetable when it is squared off, rounded or turned."""

import math
from dataclasses import dataclass

from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import amount, one_of, plain_number
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say


@dataclass(frozen=True)
class Squared:
    """A block cut from a round vegetable: the side of its square face, and the share kept."""

    side: Quantity
    yield_: Quantity

    @property
    def trim(self):
        """The share cut off [percent]: soup, stock or purée, not the bin."""
        return Q_(100, "percent") - self.yield_


def squared_yield(shape, diameter, small_diameter=None, side=None):
    """The square block in a round vegetable, and how much of the vegetable it is.

    The share does not depend on the length. It is of the peeled, straight piece: peel, ends and
    bends come off before, and have a yield of their own.

    Parameters
    ----------
    shape : str
        "cylinder" (a straight carrot or courgette), "cone" (a tapered carrot, thick to thin end)
        or "sphere" (a celeriac or potato, cut to a cube).
    diameter : Quantity [length]
        At the thick end.
    small_diameter : Quantity [length], optional
        At the thin end; for "cone" only, which needs it. The block's side is taken from there.
    side : Quantity [length], optional
        A smaller side than the largest one that fits.

    Returns
    -------
    Squared
        `side` [mm], `yield_` and `trim` [percent].

    Raises
    ------
    WrongKind
    UnknownName
    OutOfRange
        When the side does not fit, or the thin end is the thicker one.

    Examples
    --------
    The largest square in a round of 40 mm has the side 40 / √2 = 28.28 mm, and 2/π of its area.

    >>> carrot = squared_yield("cylinder", diameter=Q_(40, "mm"))
    >>> print(say(carrot.side), say(carrot.yield_))
    28.28 mm 63.66 %

    Tapered from 40 to 25 mm the same carrot keeps far less: cut it in two and square each half.

    >>> print(say(squared_yield("cone", Q_(40, "mm"), small_diameter=Q_(25, "mm")).yield_))
    37.01 %

    Notes
    -----
    Cylinder and cone: side²·L over πL/12·(D² + D·d + d²), with side = d/√2 at most.
    Sphere: side³ over πD³/6, with side = D/√3 at most.
    """
    one_of(shape, ("cylinder", "cone", "sphere"), "shape")
    wide_mm = amount(diameter, "mm", "diameter", above=0)
    narrow_mm = _narrow_mm(shape, wide_mm, small_diameter)
    most_mm = narrow_mm / math.sqrt(3 if shape == "sphere" else 2)
    side_mm = most_mm if side is None else amount(side, "mm", "side", above=0)
    if side_mm > most_mm * (1 + 1e-9):
        raise OutOfRange(
            f"side: {say(side)} does not fit; a {shape} of {say(Q_(narrow_mm, 'mm'))} "
            f"squares to at most {say(Q_(most_mm, 'mm'))}."
        )
    if shape == "sphere":
        kept = side_mm**3 / (math.pi / 6 * wide_mm**3)
    else:
        kept = side_mm**2 / (math.pi / 12 * (wide_mm**2 + wide_mm * narrow_mm + narrow_mm**2))
    return Squared(Q_(side_mm, "mm"), Q_(100 * kept, "percent"))


def _narrow_mm(shape, wide_mm, small_diameter):
    """The thin end: the given one of a cone, the only one of the others."""
    if (shape == "cone") != (small_diameter is not None):
        raise OutOfRange(
            "small_diameter: a cone needs its thin end, and only a cone has one; "
            f"shape is {shape!r}."
        )
    if small_diameter is None:
        return wide_mm
    return amount(small_diameter, "mm", "small_diameter", above=0, most=wide_mm)


def rounded_yield(shape):
    """What is left when a round is cut out of a square: a disc from a tile, a ball from a cube.

    Parameters
    ----------
    shape : str
        "disc" (a ring cutter on a square) or "ball".

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    UnknownName

    Examples
    --------
    A round in a square is π/4 of it.

    >>> print(say(rounded_yield("disc")))
    78.54 %
    """
    one_of(shape, ("disc", "ball"), "shape")
    return Q_(100 * math.pi / (4 if shape == "disc" else 6), "percent")


def turned_yield(faces=7):
    """What is left of a round section when it is turned to so many equal faces.

    A tourné tapers to both ends and loses more: this is its middle only, so the best case.

    Parameters
    ----------
    faces : int, at least 3
        Seven by the convention.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    OutOfRange

    Examples
    --------
    7 / (2π) · sin(360°/7) = 87.1 %; four faces are the square again.

    >>> print(say(turned_yield(7)), say(turned_yield(4)))
    87.1 % 63.66 %
    """
    faces = plain_number(faces, "faces", least=3, whole=True)
    return Q_(100 * faces / (2 * math.pi) * math.sin(2 * math.pi / faces), "percent")
