"""Drills of lesson 3: whole pieces in a block, and all three sides of one piece.

The first is a question that set 3 marks, and so are its formulas.
"""

import math

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.choices import steps
from kitchenmath.practice.drawn import cut_names
from kitchenmath.units import Q_

WHOLE = Within(Q_(0.05, "count"), "pieces are whole")
# Which cut is taken for which, by people who know the names and mix up the sizes.
NEIGHBOUR = {
    "brunoise": "fine brunoise",
    "small dice": "brunoise",
    "julienne": "allumette",
    "jardinière": "julienne",
    "bâtonnet": "julienne",
}


def told_apart(number, right):
    """A count, or None where it is the right one."""
    return Q_(number, "count") if number != right else None


def whole_pieces(cut, side, long):
    """Whole pieces of a named cut out of a squared block: across × across × along."""
    return _cut_to(cut.sized(), side, long)


def _cut_to(named, side, long):
    thin_mm, along_mm = _sizes_mm(named)
    across, along = _fit(side, thin_mm), _fit(long, along_mm)
    return Q_(across * across * along, "count")


def sizes_mm(cut):
    """Edge or side of a cut, and how long it is; a cube is as long as it is thick.

    Parameters
    ----------
    cut : CutName
    """
    return _sizes_mm(cut.sized())


def _sizes_mm(named):
    thin_mm = named.thinnest.to("mm").magnitude
    long = named.dimensions.get("length")
    return thin_mm, thin_mm if long is None else long.to("mm").magnitude


def sizes_said(cut):
    """The size of a named cut as it is said at the board: "3 × 3 × 40 mm"."""
    thin_mm, along_mm = sizes_mm(cut)
    return f"{thin_mm:g} × {thin_mm:g} × {along_mm:g} mm"


def _fit(size, piece_mm):
    return math.floor(size.to("mm").magnitude / piece_mm + 1e-9)


def _told(cut, side, long, other):
    return told_apart(other.magnitude, whole_pieces(cut, side, long).magnitude)


def _as_cubes(cut, side, long):
    thin_mm, _ = sizes_mm(cut)
    cubes = _fit(side, thin_mm) ** 2 * _fit(long, thin_mm)
    return _told(cut, side, long, Q_(cubes, "count"))


def _one_layer(cut, side, long):
    thin_mm, along_mm = sizes_mm(cut)
    return _told(cut, side, long, Q_(_fit(side, thin_mm) * _fit(long, along_mm), "count"))


def _by_volume(cut, side, long):
    thin_mm, along_mm = sizes_mm(cut)
    block_mm3 = (side * side * long).to("mm**3").magnitude
    return _told(cut, side, long, Q_(round(block_mm3 / (thin_mm**2 * along_mm)), "count"))


def piece_slips(worth):
    """The usual slips of cutting a block to a named cut.

    Parameters
    ----------
    worth : sequence of float
        Points that each still earns, in their order.

    Returns
    -------
    tuple of Slip
    """
    return (
        Slip(
            "took another cut's size",
            lambda cut, side, long: _told(
                cut, side, long, _cut_to(cut.sized(NEIGHBOUR[cut]), side, long)
            ),
            "You cut to the size of another cut, whose name lies near. By the sizes of this class "
            "each name has one size: look it up on the card beside the board.",
            worth=worth[0],
        ),
        Slip(
            "cut sticks to cubes",
            _as_cubes,
            "You took it for cubes. A stick is as thick as it is wide, and it has a length of its "
            "own: along the block its length counts.",
            worth=worth[1],
        ),
        Slip(
            "counted one layer",
            _one_layer,
            "This is one layer of the block. It is as high as it is wide: count the layers too.",
            worth=worth[2],
        ),
        Slip(
            "divided the volumes",
            _by_volume,
            "You divided the volumes, as if what is left over at the sides could be put together. "
            "A strip that is too thin gives no piece: whole ones along each edge.",
            worth=worth[3],
        ),
    )


BLOCK = {
    "cut": cut_names(NEIGHBOUR, "the cut"),
    "side": steps(16, 34, 3, "mm", "the block, wide and high"),
    "long": steps(88, 148, 20, "mm", "the block, long"),
}

PIECES_IN_A_BLOCK = Drill(
    Question(
        "pieces in a block",
        "count",
        1,
        WHOLE,
        whole_pieces,
        piece_slips((0, 0, 0, 0)),
        working=(
            "across: {side} into {size}, rounded down = {across}",
            "along: {long} into {size}, rounded down = {along}",
            "{across} × {across} × {along} = {answer}",
        ),
        on_the_way={
            "size": sizes_said,
            "across": lambda cut, side: Q_(_fit(side, sizes_mm(cut)[0]), "count"),
            "along": lambda cut, long: Q_(_fit(long, sizes_mm(cut)[1]), "count"),
        },
    ),
    "A squared block is {side} wide and high, and {long} long. It is all cut to {cut}. "
    "How many whole pieces does it give, by the sizes of this class?",
    "Name, size, shape: how thick is that cut, and how long?",
    BLOCK,
)


def _worst(asked, sides):
    return max(sides, key=lambda side: abs((side - asked).magnitude))


def _off(asked, side):
    return abs(side - asked)


def _spread(asked, long, wide, high):
    """The largest less the smallest; None where the smallest is what was asked for."""
    sides = (long, wide, high)
    found = max(sides) - min(sides)
    right = _off(asked, _worst(asked, sides))
    return found if abs((found - right).magnitude) > 0.2 else None


WORST_SIDE = Drill(
    Question(
        "the worst side of a cube",
        "length",
        1,
        Within(Q_(0.2, "mm"), "a ruler shows half a millimetre"),
        lambda asked, long, wide, high: _off(asked, _worst(asked, (long, wide, high))),
        (
            Slip(
                "the first side only",
                lambda asked, long: _off(asked, long),
                "You measured one side and stopped. Turn the piece: another side is farther off.",
            ),
            Slip(
                "the mean of three",
                lambda asked, long, wide, high: _off(asked, (long + wide + high) / 3),
                "You took the mean of the sides. A side too short makes up for one too long there, "
                "and not in the pan.",
            ),
            Slip(
                "beyond the band",
                lambda asked, long, wide, high: (
                    _off(asked, _worst(asked, (long, wide, high))) - Q_(1, "mm")
                ),
                "You took the band off. Asked for is how far the side is from the size itself.",
            ),
            Slip(
                "largest less smallest",
                _spread,
                "That is how unlike the sides are. Count each from the size that was asked for.",
            ),
        ),
        working=(
            "the side that is farthest off: of {long}, {wide} and {high} = {side}",
            "{side} − {asked} = {answer}",
        ),
        on_the_way={
            "side": lambda asked, long, wide, high: _worst(asked, (long, wide, high)),
        },
    ),
    "Cubes of {asked} are asked for, each side within 1 mm. One measures {long} long, {wide} wide "
    "and {high} high. By how much is its worst side off?",
    "Three sides, three readings. Which one is farthest from what was asked?",
    {
        "asked": steps(10, 10, 1, "mm", "asked for"),
        "long": steps(10, 10, 1, "mm", "long"),
        "wide": steps(12, 13.5, 0.5, "mm", "wide"),
        "high": steps(8.5, 10, 0.5, "mm", "high"),
    },
)

DRILLS = {drill.question.id: drill for drill in (PIECES_IN_A_BLOCK, WORST_SIDE)}
