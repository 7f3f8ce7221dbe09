"""Whether a photo can be measured at all: what is looked at, and where it warns or refuses.

The bounds were set on rendered photos; no real tray has tried them yet.
"""

from dataclasses import dataclass

import numpy as np

from kitchenmath.photo.field import sharpness
from kitchenmath.photo.layout import LINE_MM
from kitchenmath.photo.vision import vision

WARN, REFUSE = "warn", "refuse"
# What is looked at: above (or, with a minus sign, below) the first it warns, the second it refuses.
BOUNDS = {
    "blur": (0.5, 0.6),  # mm from a tenth to nine tenths of the light, in the worst direction
    "distance": (-3.0, -2.2),  # pixels for a millimetre
    "tilt": (20.0, 30.0),  # degrees
    "markers": (-12, -8),  # of the sixteen
    "bent": (0.10, 0.16),  # mm that the markers lie off a plane
    "shadow": (None, -1.0),  # of the bare mat near pieces, logarithm of the light
}
SIDES = {"top": range(0, 6), "right": (5, 6, 7, 8), "bottom": range(8, 14), "left": (13, 14, 15, 0)}
PRINT_SHARE = 0.06  # a line farther off is a slip of the ruler, or the wrong page
LINES_APART = 0.005  # of each other: paper is not stretched one way only
NEAR_MM = 6.0  # of a piece, where its shadow would fall
RIM_MM = 1.0  # around a piece, which belongs to its blurred edge


@dataclass(frozen=True)
class Finding:
    """One thing that a photo does not keep to.

    Attributes
    ----------
    about : str
        A key of `BOUNDS`, or "side", "ruler", "lines", "unruled", "nothing".
    level : str
        "warn" or "refuse".
    value : float
    """

    about: str
    level: str
    value: float


def graded(about, value):
    """A finding where a value lies beyond a bound, or none.

    Parameters
    ----------
    about : str
    value : float

    Returns
    -------
    list of Finding

    Examples
    --------
    At 2.5 pixels a millimetre the phone was too far for a good measure, and near enough for one.

    >>> graded("distance", 2.5)
    [Finding(about='distance', level='warn', value=2.5)]
    """
    for level, bound in zip((REFUSE, WARN), BOUNDS[about][::-1], strict=True):
        if bound is None:
            continue
        below = bound < 0
        if (value < (bound if about == "shadow" else -bound)) if below else value > bound:
            return [Finding(about, level, float(value))]
    return []


def markers_found(markers):
    """Whether enough of the mat is in sight.

    Parameters
    ----------
    markers : Markers

    Returns
    -------
    list of Finding
    """
    found = graded("markers", len(markers))
    bare = [side for side in SIDES.values() if not set(side) & set(markers.numbers.tolist())]
    return found + [Finding("side", REFUSE, float(len(bare)))] * bool(bare)


def view(markers, camera):
    """Blur, distance, tilt, and whether the mat lies flat.

    Parameters
    ----------
    markers : Markers
    camera : Camera

    Returns
    -------
    list of Finding
    """
    sharp = sharpness(camera)
    # The two directions of a marker's sides apart: motion blurs one of them only.
    edge_px = max(float(np.median(markers.edge_px[:, pair])) for pair in ((0, 2), (1, 3)))
    looked_at = {
        "blur": edge_px / sharp,
        "distance": sharp,
        "tilt": camera.tilt_degrees,
        "bent": camera.misfit_mm,
    }
    return [finding for about, value in looked_at.items() for finding in graded(about, value)]


def shadow_depth(field, blobs):
    """How dark the bare mat is near the pieces, where it is darkest.

    Parameters
    ----------
    field : Field
    blobs : list of Blob

    Returns
    -------
    float
        Logarithm of the light against the lit mat's, 0 or below.
    """
    cv2 = vision()
    food = np.zeros(field.against_mat.shape[:2], np.uint8)
    for blob in blobs:
        cv2.fillPoly(food, [np.round(field.pixels_of(blob.points_mm)).astype(np.int32)], 1)

    def grown(by_mm):
        size = 2 * int(by_mm * field.px_per_mm) + 1
        return cv2.dilate(food, cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (size, size))) > 0

    around = grown(NEAR_MM) & ~grown(RIM_MM)
    if not around.any():
        return 0.0
    return min(0.0, float(np.percentile(field.against_mat[around].mean(axis=1), 5)))


def print_size(ruler_mm):
    """How large the mat was printed, and what speaks against the two lines.

    Parameters
    ----------
    ruler_mm : tuple of float or None
        The long and the short line, as a ruler showed them.

    Returns
    -------
    scale : float
    findings : list of Finding

    Examples
    --------
    Lines of 97 mm on paper: every piece is 3 % smaller than it looks beside them.

    >>> print_size((97.0, 97.0))
    (0.97, [])
    """
    if ruler_mm is None:
        return 1.0, [Finding("unruled", WARN, 0.0)]
    shares = np.array(ruler_mm) / LINE_MM
    scale = float(shares.mean())
    findings = []
    if np.max(np.abs(shares - 1)) > PRINT_SHARE:
        findings.append(Finding("ruler", REFUSE, scale))
    elif np.ptp(shares) > LINES_APART + 1e-9:
        findings.append(Finding("lines", REFUSE, float(np.ptp(shares))))
    return scale, findings
