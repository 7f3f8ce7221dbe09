"""Panels of lesson 3 on size and evenness: a piece to judge by eye, and ten pieces."""

from kitchenmath.cuts import CUTS, cooking_time_factor, judge
from kitchenmath.figures.cutting import draw_beside, draw_tray, move_beside, move_tray
from kitchenmath.figures.frame import Picture
from kitchenmath.panels.frame import choice, slider, wire
from kitchenmath.units import Q_, say

CUBES = tuple(name for name, cut in CUTS.items() if cut.shape == "cube")
# Invented: the edge of each numbered piece, in percent of the named cut.
PIECES_PERCENT = (115, 100, 85, 130, 95, 110, 75, 100, 120, 90, 105, 140)
EYE_PERCENT = 10  # what counts as on size here; the lesson's own, no standard fixes one
HIDDEN, MEASURED = "nothing yet", "the measure"
# Invented: ten draws that look like a cook's, brought to mean 0 and standard deviation 1.
SPREAD = (-1.47, 0.36, 1.01, -0.65, 0.12, 1.61, -0.94, 0.66, -1.09, 0.39)


def by_eye(cut, piece, shown):
    """A numbered piece beside the named cut: first the question, then the measure.

    Parameters
    ----------
    cut : str
        A cube of `CUTS`.
    piece : int
        Its number on the invented tray, from 1.
    shown : str
        "nothing yet" or "the measure".

    Returns
    -------
    dict
        `edges_mm` (named cut, piece), `words` (below each) and `sentence`.
    """
    wanted = CUTS[cut].thinnest
    size = wanted * PIECES_PERCENT[piece - 1] / 100
    edges_mm = (wanted.magnitude, size.magnitude)
    words = (f"{cut}, {say(wanted)}", f"piece {piece}" + f": {say(size, 3)}" * (shown == MEASURED))
    if shown == HIDDEN:
        sentence = (
            f"On the left {cut}, {say(wanted)} on the edge; on the right piece {piece}.\n"
            f"Too large, too small, or on size within {EYE_PERCENT} %? Say it aloud, then measure."
        )
    else:
        sentence = _measured(piece, wanted, size)
    return {"edges_mm": edges_mm, "words": words, "sentence": sentence}


def _measured(piece, wanted, size):
    percent = PIECES_PERCENT[piece - 1] - 100
    kind = "on size" if abs(percent) <= EYE_PERCENT else "too large" if percent > 0 else "too small"
    off = "exactly the edge" if not percent else f"{percent:+d} % on the edge"
    return (
        f"Piece {piece} is {say(size, 3)}: {off}, {kind}.\n"
        f"It weighs {(size / wanted).magnitude ** 3:.2f} times as much as the named cut, and takes "
        f"up to {cooking_time_factor(wanted, size):.2f} times as long (an estimate)."
    )


def by_eye_panel():
    """Cut, number of the piece, and whether to measure it; the two squares stand side by side.

    Returns
    -------
    ipywidgets VBox
    """
    picture = Picture(height=2.3)
    start = by_eye("brunoise", 1, HIDDEN)
    axes = picture.axes(bottom=0.04, top=0.98)
    artists = draw_beside(axes, *start["edges_mm"], start["words"])

    def update(**values):
        found = by_eye(**values)
        move_beside(artists, *found["edges_mm"], found["words"])
        return found["sentence"]

    return wire(
        {
            "cut": choice("Named cut", CUBES, "brunoise"),
            "piece": slider("Piece (number on the tray)", 1, len(PIECES_PERCENT), 1, 1),
            "shown": choice("Show", (HIDDEN, MEASURED)),
        },
        picture,
        update,
    )


def tray(mean_mm, sd_mm, tolerance_mm):
    """Ten invented cubes of brunoise with this mean and spread, and what they can tell.

    Parameters
    ----------
    mean_mm, sd_mm, tolerance_mm : float

    Returns
    -------
    dict
        `sizes_mm`, `target_mm`, `tolerance_mm` and `sentence`.
    """
    sizes_mm = [mean_mm + sd_mm * step for step in SPREAD]
    found = judge(Q_(sizes_mm, "mm"), "brunoise", tolerance=Q_(tolerance_mm, "mm"))
    return {
        "sizes_mm": sizes_mm,
        "target_mm": found.target.magnitude,
        "tolerance_mm": tolerance_mm,
        "sentence": found.verdict.replace(". ", ".\n"),  # one fact a line
    }


def tray_panel():
    """Mean, spread and band; ten points in the band, and the verdict of `judge`.

    Returns
    -------
    ipywidgets VBox
    """
    picture = Picture(height=2.8)
    start = {key: value for key, value in tray(3.0, 0.3, 0.5).items() if key != "sentence"}
    artists = draw_tray(picture.axes(bottom=0.2, top=0.98), **start)

    def update(**values):
        found = tray(**values)
        sentence = found.pop("sentence")
        move_tray(artists, **found)
        return sentence

    return wire(
        {
            "mean_mm": slider("Mean of the ten (mm)", 2.4, 3.6, 0.1, 3.0),
            "sd_mm": slider("Standard deviation (mm)", 0.1, 0.7, 0.1, 0.3),
            "tolerance_mm": slider("On size within ± (mm)", 0.3, 1.0, 0.1, 0.5),
        },
        picture,
        update,
    )
