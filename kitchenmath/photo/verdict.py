"""The pieces of a photo against a named cut."""

from dataclasses import dataclass

from kitchenmath.cuts import cut_named, judge
from kitchenmath.errors import OutOfRange
from kitchenmath.photo.words import readings_line, usual_within_mm
from kitchenmath.units.door import one_of
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

# Which side of a piece on the mat is which size of a cut. A thickness lies under the piece.
SEEN = {
    "cube": {"edge": "across"},
    "stick": {"side": "width", "length": "length"},
    "flat": {"width": "across"},
    "shred": {"width": "width"},
    "turned": {"length": "length"},
    "slice": {},
}
FEWEST = 2


@dataclass(frozen=True)
class PhotoVerdict:
    """What the pieces of a photo say about a cut.

    Attributes
    ----------
    dimension : str
        Of the cut, such as "edge".
    sizes_mm : tuple of float
        One for each single piece, in the order of their numbers.
    within_mm : float
        Half of a size's 95 % interval.
    near_edge : int
        Pieces that this uncertainty could put on either side of the band's edge.
    judgement : Judgement
    """

    dimension: str
    sizes_mm: tuple
    within_mm: float
    near_edge: int
    judgement: object

    @property
    def words(self):
        """The verdict, one fact a sentence."""
        words = f"{self.judgement.verdict} Each size is known to ± {self.within_mm:.1f} mm"
        if self.near_edge:
            count = self.judgement.count
            words += f", which leaves {self.near_edge} of {count} on the edge of the band"
        return words + "."

    @property
    def readings(self):
        """The sizes, to type or paste as one's readings."""
        return readings_line(self.sizes_mm, self.within_mm)


def usual_sizes_mm(cut):
    """(width, length) of a cut as it lies on the mat, to doubt a piece that is two of them.

    Parameters
    ----------
    cut : str or Cut

    Returns
    -------
    list of tuple of float
        Empty where the cut does not fix both.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> usual_sizes_mm("julienne")
    [(3.0, 40.0)]
    """
    cut = cut_named(cut)
    try:
        edges = [edge.magnitude for edge in cut.edges]
    except OutOfRange:
        return []
    return [(float(edges[1]), float(edges[2]))]


def sizes_seen(cut):
    """The sizes of a cut that a photo from above can show.

    Parameters
    ----------
    cut : str or Cut

    Returns
    -------
    list of str

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> sizes_seen("paysanne"), sizes_seen("julienne")
    (['width'], ['side', 'length'])
    """
    cut = cut_named(cut)
    return [key for key in SEEN[cut.shape] if key in cut.dimensions]


def judge_board(board, cut, tolerance=None, dimension=None):
    """Judge the single pieces of a photo against a cut.

    Of a cube one side a piece is taken, the one that runs more across the mat: chosen by how it
    happened to lie, as you would take one edge without looking.

    Parameters
    ----------
    board : BoardPhoto
    cut : str or Cut
    tolerance : Quantity [length or percent], optional
        Half the width of the band; else 15 % of the size, a convention of this kit's own.
    dimension : str, optional
        Such as "length" of a stick; else the first that can be seen.

    Returns
    -------
    PhotoVerdict

    Raises
    ------
    UnknownName
    WrongKind
    OutOfRange
        For a photo with fewer than two single pieces, or a cut that shows no fixed size from above.
    """
    cut = cut_named(cut)
    seen = sizes_seen(cut)
    if not seen:
        raise OutOfRange(
            f"cut: seen from above, {cut.name} has no fixed size; measure its thickness by hand."
        )
    dimension = one_of(dimension or seen[0], seen, "dimension")
    if len(board.measured) < FEWEST:
        raise OutOfRange(
            f"photo: {len(board.measured)} single pieces were seen, and a verdict needs "
            f"{FEWEST} at least; lay them apart: 4 mm, and half as far as they are high."
        )
    tolerance = Q_(15, "percent") if tolerance is None else tolerance
    sides = [_side(piece, SEEN[cut.shape][dimension]) for piece in board.measured]
    sizes = tuple(size for size, _ in sides)
    judgement = judge(Q_(list(sizes), "mm"), cut, tolerance, dimension=dimension)
    off = [
        abs(abs(size - judgement.target.magnitude) - judgement.tolerance.magnitude) < within
        for size, within in sides
    ]
    return PhotoVerdict(dimension, sizes, usual_within_mm(board.measured), sum(off), judgement)


def _side(piece, name):
    return {
        "across": piece.across_mm,
        "width": (piece.width_mm, piece.width_within_mm),
        "length": (piece.length_mm, piece.length_within_mm),
    }[name]


def against(verdict):
    """What was judged, as a heading: "edge, 3 mm ± 0.45 mm".

    Parameters
    ----------
    verdict : PhotoVerdict

    Returns
    -------
    str
    """
    found = verdict.judgement
    return f"{verdict.dimension}, {say(found.target)} ± {say(found.tolerance, 2)}"
