"""What a photo of the mat shows, in words for a cook."""

import numpy as np

from kitchenmath.photo import checks, doubts
from kitchenmath.units.saying import figures, plural

CAUTIONS = (
    "Knife away first, then the phone. Wash your hands after the phone, before the food. Food that "
    "lay on paper goes into the stockpot or the bin, unless the mat is in a clean sleeve. No faces "
    "in the picture."
)
RENDERED = (
    "How near the sizes are was tried on rendered photos, whose truth is known. No real tray has "
    "been measured against a calliper yet."
)

FINDINGS = {
    ("blur", checks.WARN): "The photo is a little blurred. Wipe the lens, hold still, take it "
    "again if you can.",
    ("blur", checks.REFUSE): "The photo is too blurred to measure. Wipe the lens, rest your elbows "
    "on the table, tap on the food to focus, and take it again.",
    ("distance", checks.WARN): "The phone was far away. Come nearer: the mat should fill the "
    "picture.",
    ("distance", checks.REFUSE): "The phone was too far away to measure. Come nearer, until the "
    "mat fills the picture, about 35 cm (14 in) above it.",
    ("tilt", checks.WARN): "The phone was tilted by {value:.0f}°. Hold it level, over the middle "
    "of the mat.",
    ("tilt", checks.REFUSE): "The phone was tilted by {value:.0f}°, too much to measure. Hold it "
    "level, over the middle of the mat.",
    ("markers", checks.WARN): "Only {value:.0f} of the 16 black squares can be seen. Keep food, "
    "hands and shadow off the white rim.",
    ("markers", checks.REFUSE): "Only {value:.0f} of the 16 black squares can be seen, too few to "
    "measure. The whole mat must be in the picture, with nothing on its white rim.",
    ("side", checks.REFUSE): "One side of the mat cannot be seen. The whole mat must be in the "
    "picture, with nothing on its white rim.",
    ("bent", checks.WARN): "The mat does not lie quite flat. Tape its corners down.",
    ("bent", checks.REFUSE): "The mat is bent, so nothing on it can be measured. Tape its corners "
    "down, or lay it in a flat sleeve, and take the photo again.",
    ("shadow", checks.REFUSE): "The shadows are too deep: a shadow may pass for food. Move out of "
    "the lamp's way, or take the photo by a window, without flash.",
    ("ruler", checks.REFUSE): "The two lines of the mat are far from 100 mm. Measure them again, "
    "in millimetres; if it is so, print the mat again at 100 %.",
    ("lines", checks.REFUSE): "The two lines of the mat differ from one another by more than "
    "half a millimetre. Measure them again; if it is so, print the mat again.",
    ("unruled", checks.WARN): "Nobody said how long the two lines are on your mat. The sizes are "
    "true only if both are 100 mm: lay a ruler on them.",
    ("nothing", checks.WARN): "No piece was seen on the blue field.",
}
DOUBTS = {
    doubts.SHAPE: "not one clean piece: pieces that touch, or an odd shape",
    doubts.DOUBLE: "twice or three times the usual: two pieces side by side?",
    doubts.EDGE: "at the edge of the blue field: not measured",
}


def finding_in_words(finding):
    """One sentence, and what to do.

    Parameters
    ----------
    finding : Finding

    Returns
    -------
    str

    Examples
    --------
    >>> finding_in_words(checks.Finding("tilt", checks.WARN, 23.4))
    'The phone was tilted by 23°. Hold it level, over the middle of the mat.'
    """
    return FINDINGS[finding.about, finding.level].format(value=finding.value)


def counted(board):
    """How many pieces there are: single ones, and others.

    Parameters
    ----------
    board : BoardPhoto

    Returns
    -------
    str
    """
    if board.refused:
        return "This photo is not measured."
    single, others = len(board.measured), len(board.clumps)
    words = plural(single, "single piece")
    if others:
        words += f", and {plural(others, 'that is', 'that are')} not counted"
    return words + "."


def usual_within_mm(pieces):
    """The middle of the pieces' 95 % half-intervals, rounded up to a tenth.

    Parameters
    ----------
    pieces : sequence of BoardPiece
        One at least.

    Returns
    -------
    float
    """
    widths = [each for piece in pieces for each in (piece.width_within_mm, piece.length_within_mm)]
    return float(np.ceil(10 * np.median(widths) - 1e-9) / 10)


def table_lines(board):
    """A table of all pieces, one a line, under a head.

    Parameters
    ----------
    board : BoardPhoto

    Returns
    -------
    list of str
    """
    lines = [f"{'piece':>5}  {'width':>8}  {'length':>8}  {'within':>8}"]
    for piece in board.pieces:
        if piece.doubts:
            why = "; ".join(DOUBTS[doubt] for doubt in piece.doubts)
            lines.append(f"{piece.number:>5}  {why}")
            continue
        within = max(piece.width_within_mm, piece.length_within_mm)
        lines.append(
            f"{piece.number:>5}  {piece.width_mm:>5.1f} mm  {piece.length_mm:>5.1f} mm  "
            f"± {within:>3.1f} mm"
        )
    return lines


def readings_line(sizes_mm, within_mm):
    """Sizes as an answer that can be typed or pasted: a list, its unit, its uncertainty.

    Parameters
    ----------
    sizes_mm : sequence of float
    within_mm : float

    Returns
    -------
    str

    Examples
    --------
    >>> readings_line([3.04, 2.88], 0.2)
    '3.0, 2.9 mm ± 0.2 mm'
    """
    return ", ".join(f"{size:.1f}" for size in sizes_mm) + f" mm ± {figures(within_mm, 2)} mm"
