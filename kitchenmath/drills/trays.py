"""Drills of lesson 3 on trays: a mean, and a tray that is sent back.

The questions are those that set 3 marks, and so are their formulas.
"""

from kitchenmath.drills import Drill, blocks
from kitchenmath.drills.blocks import WHOLE, told_apart
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.drawn import two_trays
from kitchenmath.practice.readings import invented_readings
from kitchenmath.units import Q_

BAND_MM = 0.5 + 1e-6  # on size within ± 0.5 mm, the edge of it included


def sent_back(trays):
    """How far off [mm] the pieces are, of the tray sent back and then of the one that passes."""
    off_mm = [[size - trays.around_mm for size in tray] for tray in (trays.first, trays.second)]
    return sorted(off_mm, key=off_size, reverse=True)


def off_size(off_mm):
    """How many pieces of a tray are off size, the edge of the band being on."""
    return sum(abs(off) > BAND_MM for off in off_mm)


def _off_in(trays, tray):
    return Q_(off_size([size - trays.around_mm for size in tray]), "count")


def off_in_the_tray_sent_back(trays):
    """How many pieces are off size in the tray that does not pass."""
    return Q_(off_size(sent_back(trays)[0]), "count")


def band_said(trays):
    """From where to where a piece is on size: "2.5 mm to 3.5 mm"."""
    return f"{trays.around_mm - 0.5:g} mm to {trays.around_mm + 0.5:g} mm"


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
        working=(
            "the sum: all ten added up = {total}",
            "{total} ÷ 10 = {answer}",
        ),
        on_the_way={
            "total": lambda tray: Q_(float(tray.lengths.magnitude.sum()), "mm"),
        },
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
            "off size in tray A: outside {band} = {in_a}",
            "off size in tray B: outside {band} = {in_b}",
            "sent back, with more than one off: the larger of {in_a} and {in_b} = {answer}",
        ),
        on_the_way={
            "band": band_said,
            "in_a": lambda trays: _off_in(trays, trays.first),
            "in_b": lambda trays: _off_in(trays, trays.second),
        },
    ),
    "Brunoise is on size at {{ cut: brunoise }} ± 0.5 mm, the edge included. "
    "A tray passes with one of ten off at most. Here are {trays}. "
    "One tray goes back to the board. How many of its pieces are off size?",
    "Count in each what is more than 0.5 mm too small or too large. The mean does not matter.",
    {"trays": two_trays("two trays")},
)

DRILLS = {drill.question.id: drill for drill in (MEAN_OF_TEN, TRAY_SENT_BACK)} | blocks.DRILLS
