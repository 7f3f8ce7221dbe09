"""How many pieces a block gives, how much surface they have, and how fast they cook."""

import itertools
import math
from dataclasses import dataclass

import numpy as np

from kitchenmath.cuts.named import Cut, cut_named
from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import amount, instance, plain_number
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import figures


@dataclass(frozen=True)
class Pieces:
    """Whole pieces out of one block, and what they are of it."""

    number: int
    used: Quantity
    weight_each: Quantity | None

    @property
    def trim(self):
        """The share of the block that gives no whole piece [percent]."""
        return Q_(100, "percent") - self.used


def pieces(block, cut, density=None):
    """How many whole pieces a squared block gives, cut along its edges.

    Whole pieces only: a strip too thin for a piece is trim. Pieces lie the way that gives most;
    a knife takes nothing away, a blunt one crushes.

    Parameters
    ----------
    block : sequence of three Quantity [length]
        The block's edges, in any order.
    cut : str or Cut
        A cube, stick or flat.
    density : Quantity [g/mL], optional
        To have the weight of a piece; raw roots lie near 1.0 to 1.1 g/mL (common practice),
        and a floating or sinking piece tells which side of 1.0.

    Returns
    -------
    Pieces
        `number`, `used` and `trim` [percent of the block], `weight_each` [g] or None.

    Raises
    ------
    WrongKind
    UnknownName
    OutOfRange
        For a block without three edges, or a cut without three fixed ones.

    Examples
    --------
    60 × 30 × 30 mm in cubes of 6 mm: 10 · 5 · 5 = 250, and nothing is left.

    >>> pieces((Q_(60, "mm"), Q_(30, "mm"), Q_(30, "mm")), "small dice").number
    250

    28 mm square carrot, 100 mm long, in sticks of 3 × 3 × 40: 9 · 9 · 2 = 162, 74 % of it.

    >>> carrot = pieces((Q_(100, "mm"), Q_(28, "mm"), Q_(28, "mm")), "julienne")
    >>> print(carrot.number, say(carrot.used))
    162 74.39 %
    """
    block_mm = _three_mm(block, "block")
    piece_mm = [edge.magnitude for edge in cut_named(cut).edges]
    number = max(
        math.prod(_whole(room, edge) for room, edge in zip(block_mm, way, strict=True))
        for way in itertools.permutations(piece_mm)
    )
    used = number * math.prod(piece_mm) / math.prod(block_mm)
    each = None if density is None else _weight_g(piece_mm, density)
    return Pieces(number, Q_(100 * used, "percent"), each if each is None else Q_(each, "g"))


def pieces_in_ball(diameter, cut):
    """How many whole cubes a peeled round root gives, cut in sheets, sticks and cubes.

    Not to be confused with `squared_yield("sphere", ...)`, which makes one block of the root: who
    squares it off first throws away what still holds many small cubes.

    Parameters
    ----------
    diameter : Quantity [length]
        Peeled, and round.
    cut : str or Cut
        A cube.

    Returns
    -------
    Pieces
        `number`, `used` and `trim` [percent of the peeled root]; no weight.

    Raises
    ------
    WrongKind
    UnknownName
    OutOfRange
        For a stick or a flat, and for a cube too small to count: under a hundredth of the root.

    Examples
    --------
    The largest cube has the diameter as its diagonal, √3 edges: one cube, 36.8 % of the ball.

    >>> one = pieces_in_ball(Q_(20 * 3**0.5, "mm"), "large dice")
    >>> print(one.number, say(one.used, 3))
    1 36.8 %

    Notes
    -----
    All cubes lie in one grid of cuts, set so that it gives most: a cut through the middle, or the
    middle between two cuts, each way. Every cube that is not whole is trim.
    """
    diameter_mm = amount(diameter, "mm", "diameter", above=0)
    edges = cut_named(cut).edges
    edge_mm = edges[0].magnitude
    if len({edge.magnitude for edge in edges}) != 1:
        raise OutOfRange(f"cut: needs a cube such as 'brunoise', and {cut_named(cut).name!r} came.")
    if diameter_mm > 100 * edge_mm:
        raise OutOfRange(
            f"diameter: needs 100 edges of the cube at most, {figures(100 * edge_mm)} mm, and "
            f"{figures(diameter_mm)} mm came."
        )
    number = max(_cubes_in_ball(diameter_mm / 2 / edge_mm, middles) for middles in range(4))
    share = number * edge_mm**3 / (math.pi / 6 * diameter_mm**3)
    return Pieces(number, Q_(100 * share, "percent"), None)


def _cubes_in_ball(radius, middles):
    """Whole unit cubes in a ball; along `middles` of its three ways a cube lies in the middle."""
    reach = math.ceil(radius)
    cut = np.arange(reach + 1) + 1.0  # the far wall of each cube on one side of a middle cut
    across = np.arange(reach + 1) + 0.5  # and where a cube lies across the middle
    ways = [across] * middles + [cut] * (3 - middles)
    # Each cube on this side stands for one on the other, but for the one across the middle.
    times = [np.where(way == 0.5, 1, 2) for way in ways]
    far = sum(way**2 for way in np.meshgrid(*ways, indexing="ij", sparse=True))
    alike = math.prod(np.meshgrid(*times, indexing="ij", sparse=True))
    return int(np.sum(np.broadcast_to(alike, far.shape)[far <= radius**2 * (1 + 1e-9)]))


def pieces_in(weight, cut, density):
    """How many pieces a weight of finished cuts is: the count that a scale can do.

    Parameters
    ----------
    weight : Quantity [weight]
        Of the pieces, without trim.
    cut : str or Cut
        A cube, stick or flat, as truly cut: 10 % on the edge is 33 % on the weight of a cube.
    density : Quantity [g/mL]

    Returns
    -------
    int
        Rounded to the nearest piece.

    Raises
    ------
    WrongKind
    UnknownName
    OutOfRange

    Examples
    --------
    A 3 mm cube is 0.027 mL; at 1 g/mL 0.027 g, so 100 g are 3704.

    >>> pieces_in(Q_(100, "g"), "brunoise", density=Q_(1, "g/mL"))
    3704
    """
    weight_g = amount(weight, "g", "weight", above=0)
    piece_mm = [edge.magnitude for edge in cut_named(cut).edges]
    return round(weight_g / _weight_g(piece_mm, density))


def surface_per_volume(cut):
    """Surface over volume of a piece: what browns, seasons and dries, for what is inside.

    Parameters
    ----------
    cut : str, Cut, or sequence of three Quantity [length]

    Returns
    -------
    Quantity [1/mm]

    Raises
    ------
    WrongKind
    UnknownName
    OutOfRange

    Examples
    --------
    A cube has 6/edge: 2 per mm at 3 mm. Half the edge, twice as much.

    >>> print(surface_per_volume("brunoise").magnitude, surface_per_volume("fine brunoise"))
    2.0 4.0 / millimeter

    Notes
    -----
    2/a + 2/b + 2/c for the edges a, b, c.
    """
    edges = cut_named(cut).edges if isinstance(cut, str | Cut) else cut
    return Q_(sum(2 / edge for edge in _three_mm(edges, "cut")), "1/mm")


def cooking_time_factor(old, new, power=2):
    """How much longer a thicker piece takes until its middle is done: (new/old) to a power.

    An estimate: a probe or a tooth decides. For food that must be safe, the core temperature of
    the local food code decides and no factor does.

    Parameters
    ----------
    old, new : Quantity [length], str or Cut
        The smallest dimension of each piece; of a cut its thinnest size.
    power : float, 1 to 2
        2 where the middle waits for heat to travel through the food (boiling, frying, a thick
        piece); 1 where the surface lets the heat in slowly (thin pieces, still air of a low
        oven). Real pans lie between, so between the two answers.

    Returns
    -------
    float

    Raises
    ------
    WrongKind
    UnknownName
    OutOfRange

    Examples
    --------
    Twice the size takes four times as long where conduction rules, twice as long at the least.

    >>> cooking_time_factor(Q_(10, "mm"), Q_(20, "mm"))
    4.0
    >>> cooking_time_factor(Q_(10, "mm"), Q_(20, "mm"), power=1)
    2.0

    Notes
    -----
    At equal temperatures and equal Biot number all times go with thickness²/diffusivity. It says
    how long the heat is on its way, and nothing about what takes its time at any size once hot:
    roots that soften, connective tissue. For a brunoise that is all but the whole of its time.

    References
    ----------
    Dickerson and Read, "Cooling rates of foods", *J. Milk Food Technol.* (1973): doubling the
    smallest dimension multiplies a conduction-limited time by four.
    """
    power = plain_number(power, "power", least=1, most=2)
    return (_thin_mm(new, "new") / _thin_mm(old, "old")) ** power


def _thin_mm(piece, name):
    if isinstance(piece, str | Cut):
        return cut_named(piece, name).thinnest.magnitude
    return amount(piece, "mm", name, above=0)


def _three_mm(edges, name):
    """Three edges in mm."""
    edges = list(instance(edges, list | tuple, name, "three edges in a list"))
    if len(edges) != 3:
        raise OutOfRange(f"{name}: needs three edges, and {len(edges)} came.")
    return [amount(edge, "mm", f"{name}, edge {i}", above=0) for i, edge in enumerate(edges, 1)]


def _whole(room_mm, edge_mm):
    """Whole edges in a room; 6.0 that floating point made 5.999999999 is 6."""
    return math.floor(room_mm / edge_mm + 1e-9)


def _weight_g(piece_mm, density):
    return math.prod(piece_mm) / 1000 * amount(density, "g/mL", "density", above=0)
