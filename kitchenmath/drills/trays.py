"""Drills of lesson 3 on trays and named cuts: a mean, a tray that is sent back, pieces in a block.

The questions are those that set 3 marks, and so are their formulas.
"""

import math

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.choices import steps
from kitchenmath.practice.drawn import cut_names, two_trays
from kitchenmath.practice.readings import invented_readings
from kitchenmath.units import Q_

WHOLE = Within(Q_(0.05, "count"), "pieces are whole")
BAND_MM = 0.5 + 1e-6  # on size within ± 0.5 mm, the edge of it included
# Which cut is taken for which, by people who know the names and mix up the sizes.
NEIGHBOUR = {
    "brunoise": "fine brunoise",
    "small dice": "brunoise",
    "julienne": "allumette",
    "jardinière": "julienne",
    "bâtonnet": "julienne",
}


def sent_back(trays):
    """How far off [mm] the pieces are, of the tray sent back and then of the one that passes."""
    off_mm = [[size - trays.around_mm for size in tray] for tray in (trays.first, trays.second)]
    return sorted(off_mm, key=off_size, reverse=True)


def off_size(off_mm):
    """How many pieces of a tray are off size, the edge of the band being on."""
    return sum(abs(off) > BAND_MM for off in off_mm)


def off_in_the_tray_sent_back(trays):
    """How many pieces are off size in the tray that does not pass."""
    return Q_(off_size(sent_back(trays)[0]), "count")


def band_said(trays):
    """From where to where a piece is on size: "2.5 mm to 3.5 mm"."""
    return f"{trays.around_mm - 0.5:g} mm to {trays.around_mm + 0.5:g} mm"


def told_apart(number, right):
    """A count, or None where it is the right one."""
    return Q_(number, "count") if number != right else None


def tray_slips(worth):
    """The usual slips of judging two trays.

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
            "went by the mean",
            lambda trays: _other(trays, off_size(sent_back(trays)[1])),
            "These are the pieces that are off in the other tray. Its mean is farther from the "
            "size asked for, but its pieces are alike, and nearly all within the band: it passes.",
            worth=worth[0],
        ),
        Slip(
            "counted the edge as off",
            lambda trays: _other(trays, sum(abs(off) > 0.5 - 1e-6 for off in sent_back(trays)[0])),
            "You counted the edge of the band as off; to be strict feels safe. It is on size here: "
            "the band was said beforehand, and the same band judges everybody.",
            worth=worth[1],
        ),
        Slip(
            "counted the large ones only",
            lambda trays: _other(trays, sum(off > BAND_MM for off in sent_back(trays)[0])),
            "You counted the pieces that are too large, as those catch the eye. Those that are too "
            "small are off too: they are mush when the rest is done.",
            worth=worth[2],
        ),
        Slip(
            "counted what is on size",
            lambda trays: _other(trays, 10 - off_size(sent_back(trays)[0])),
            "This is how many are on size in that tray. Asked for is how many are off.",
            worth=worth[3],
        ),
    )


def _other(trays, number):
    return told_apart(number, off_size(sent_back(trays)[0]))


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

MEAN_OF_TEN = Drill(
    Question(
        "mean of ten",
        "length",
        1,
        Within(Q_(0.05, "mm"), "ten readings carry no more"),
        lambda tray: Q_(float(tray.lengths.magnitude.mean()), "mm"),
        (
            Slip(
                "the sum",
                lambda tray: Q_(float(tray.lengths.magnitude.sum()), "mm"),
                "That is the sum. Share it among the ten pieces.",
            ),
            Slip(
                "one too few",
                lambda tray: Q_(float(tray.lengths.magnitude.sum()) / 9, "mm"),
                "You divided by nine. Ten pieces were added, so ten share the sum.",
            ),
            Slip(
                "middle of the ends",
                lambda tray: _far_from_mean(tray, sum(each.magnitude for each in tray.ends) / 2),
                "You took the middle of the smallest and the largest: two pieces speak for ten.",
            ),
        ),
        working=("{tray}: add them up", "the sum ÷ 10 = {answer}"),
    ),
    "Ten cubes measure {tray}. What is their mean edge?",
    "Add up all ten. Then?",
    {"tray": invented_readings(Q_(3, "mm"), Q_(0.5, "mm"), "ten readings")},
)


def _far_from_mean(tray, other_mm):
    far = abs(other_mm - float(tray.lengths.magnitude.mean())) > 0.11
    return Q_(other_mm, "mm") if far else None


TRAY_SENT_BACK = Drill(
    Question(
        "tray sent back",
        "count",
        1,
        WHOLE,
        off_in_the_tray_sent_back,
        tray_slips((0, 0, 0, 0)),
        working=(
            "on size is {band}; a tray passes with one of ten off at most",
            "in the tray that does not pass, {answer} are off",
        ),
        on_the_way={"band": band_said},
    ),
    "Brunoise is on size at {{ cut: brunoise }} ± 0.5 mm, the edge included. "
    "A tray passes with one of ten off at most. Here are {trays}. "
    "One tray goes back to the board. How many of its pieces are off size?",
    "Count in each what is more than 0.5 mm too small or too large. The mean does not matter.",
    {"trays": two_trays("two trays")},
)

PIECES_IN_A_BLOCK = Drill(
    Question(
        "pieces in a block",
        "count",
        1,
        WHOLE,
        whole_pieces,
        piece_slips((0, 0, 0, 0)),
        working=(
            "by the sizes of this class {cut} is {size}",
            "{side} ÷ that, {side} ÷ that and {long} ÷ its length, each rounded down",
            "all three multiplied = {answer}",
        ),
        on_the_way={"size": sizes_said},
    ),
    "A squared block is {side} wide and high, and {long} long. It is all cut to {cut}. "
    "How many whole pieces does it give, by the sizes of this class?",
    "Name, size, shape: how thick is that cut, and how long?",
    BLOCK,
)

DRILLS = {drill.question.id: drill for drill in (MEAN_OF_TEN, TRAY_SENT_BACK, PIECES_IN_A_BLOCK)}
