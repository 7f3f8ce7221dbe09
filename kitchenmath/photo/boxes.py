"""A box fitted to an outline: what a phone sees of a cube is more than its upper face.

From a phone, the side faces and the height push the outline outwards, by 2 to 9 mm. So a box
of unknown place, turn, width, length and height is laid on the mat, its outline is thrown on to
the mat from where the lens is, and the box is changed until its outline is the one in the photo.
"""

from dataclasses import dataclass

import numpy as np

from kitchenmath.photo.fitting import fitted
from kitchenmath.photo.vision import vision

POINT_MM, POINT_SHARE = 0.05, 0.006  # what a point of an outline lies off a box, by its width
POINTS_THAT_COUNT = 45  # neighbours on an outline err together, so more are no more knowledge
HEIGHT_SHARE = 1.0  # height of a piece, of what its sides say
HEIGHT_SD = 0.08  # of that height: from an outline it cannot be measured, only believed
# The same beside points on the rim of the upper face. Points on one side err together, by as much
# as the face leans; so each of them must not outweigh what is believed as a lone one may.
HEIGHT_SD_BESIDE_RIM = 0.02
LONG = 1.5  # a piece longer than this many widths is a stick, as high as it is wide
LONGEST = 1.05  # of the least rectangle's length; without it some sticks run away
FREELY = 1.3  # how much longer a box may become when it is fitted again
OUTLYING = 2.5  # times what a point is known to: beyond it a point counts less
STARTS = ((0.0, 0.86), (0.0, 0.97), (45.0, 0.75))  # turn, and share of the least rectangle


@dataclass(frozen=True)
class Rim:
    """Points on the rim of a piece's upper face, where the light changes from it to a side face.

    Attributes
    ----------
    points_mm : array, shape (points, 2)
        Where they appear on the mat.
    side : array of int, shape (points,)
        Which side of the face each lies on, in the order of `Box.upper_mm`.
    """

    points_mm: np.ndarray
    side: np.ndarray

    def __len__(self):
        return len(self.points_mm)


NO_RIM = Rim(np.zeros((0, 2)), np.zeros(0, int))


@dataclass(frozen=True)
class Box:
    """A box on the mat.

    Attributes
    ----------
    middle_mm : array, shape (2,)
        Of its base.
    turn : float [radian]
    width_mm, length_mm : float
        At half height, the shorter first.
    height_mm : float
        Believed, not measured.
    misfit_mm : float
        Root mean square distance of the outline's points.
    width_sd_mm, length_sd_mm : float
        As far as the fit can tell.
    """

    middle_mm: np.ndarray
    turn: float
    width_mm: float
    length_mm: float
    height_mm: float
    misfit_mm: float
    width_sd_mm: float
    length_sd_mm: float

    def corners_mm(self):
        """The corners of its base, in order.

        Returns
        -------
        array, shape (4, 2)
        """
        return _rectangle(np.array([[*self.middle_mm, self.turn, self.length_mm, self.width_mm]]))[
            0
        ]

    def upper_mm(self, lens_mm):
        """Where the corners of its upper face appear on the mat.

        Parameters
        ----------
        lens_mm : array, shape (3,)
            Where the lens is: x, y and height.

        Returns
        -------
        array, shape (4, 2)
        """
        return _thrown(self.corners_mm()[None], np.array([self.height_mm]), lens_mm)[0]


def fit_box(points_mm, lens_mm):
    """The box whose outline lies nearest to points on the mat.

    Parameters
    ----------
    points_mm : array, shape (points, 2)
    lens_mm : array, shape (3,)

    Returns
    -------
    Box
    """
    points = np.asarray(points_mm, float)
    middle, sides, turn = least_rectangle(points)
    best = None
    for more_turn, share in STARTS:
        # Sides at right angles to those of the least rectangle help only a piece near to square.
        if more_turn and sides[0] > LONG * sides[1]:
            continue
        start = _start(middle, share * sides, turn + np.radians(more_turn), lens_mm)
        found = _nearest(start, points, NO_RIM, lens_mm, sides)
        if best is None or found[1] < best[1]:
            best = found
    return _box(best[0], best[2], points, NO_RIM, lens_mm)


def fit_again(box, points_mm, rim, lens_mm):
    """A box fitted once more, with what is seen of the rim of its upper face.

    Parameters
    ----------
    box : Box
        Where to begin.
    points_mm : array, shape (points, 2)
        Of its outline, as far as it is seen.
    rim : Rim
    lens_mm : array, shape (3,)

    Returns
    -------
    Box
    """
    points = np.asarray(points_mm, float)
    start = np.array([*box.middle_mm, box.turn, box.length_mm, box.width_mm, box.height_mm], float)
    sides = (FREELY * box.length_mm, box.width_mm)
    found = _nearest(start, points, rim, lens_mm, sides)
    return _box(found[0], found[2], points, rim, lens_mm)


def off_outline(box, points_mm, lens_mm):
    """How far points lie from a box's outline, outside above nought.

    Parameters
    ----------
    box : Box
    points_mm : array, shape (points, 2)
    lens_mm : array, shape (3,)

    Returns
    -------
    array, shape (points,)
    """
    at = [*box.middle_mm, box.turn, box.length_mm, box.width_mm, box.height_mm]
    return _distances(np.array([at], float), points_mm, lens_mm)[0]


def _nearest(start, points, rim, lens_mm, sides):
    count = len(points) + len(rim.points_mm)
    scale = np.sqrt(POINTS_THAT_COUNT / count) / _known_to(sides[1])
    # Glare and blurred corners may lie far off; what is believed beforehand may not.
    outlying = np.concatenate([np.full(count, OUTLYING * scale * _known_to(sides[1])), [1e6, 1e6]])
    return fitted(
        lambda many: _residuals(many, points, rim, lens_mm, sides[0], scale),
        start,
        steps=[1e-4, 1e-4, 1e-5, 1e-4, 1e-4, 1e-4],
        outlying=outlying,
    )


def _start(middle, sides, turn, lens_mm):
    height = HEIGHT_SHARE * (np.mean(sides) if sides[0] < LONG * sides[1] else sides[1])
    back = (lens_mm[2] - height / 2) / lens_mm[2]
    base = lens_mm[:2] + (middle - lens_mm[:2]) * back
    return np.array([*base, turn, *sides, height])


def _box(found, covariance, points, rim, lens_mm):
    off = _off(found[None], points, rim, lens_mm)[0]
    # The worst tenth are corners rounded by blur, and glare; they tell nothing of the sides.
    kept = np.sort(np.abs(off))[: int(0.9 * len(off)) or 1]
    spread = np.sqrt(np.mean(kept**2)) / _known_to(min(abs(found[3]), abs(found[4])))
    sds = max(spread, 0.5) * np.sqrt(np.abs(np.diag(covariance)))
    sizes = [(abs(found[3]), sds[3], found[2]), (abs(found[4]), sds[4], found[2] + np.pi / 2)]
    (length, length_sd, turn), (width, width_sd, _) = sorted(sizes, reverse=True)
    misfit = float(np.sqrt(np.mean(off**2)))
    height = abs(found[5])
    return Box(found[:2], turn, width, length, height, misfit, float(width_sd), float(length_sd))


def least_rectangle(points_mm):
    """The rectangle of least area around points: middle, sides (longer first), turn of the longer.

    Parameters
    ----------
    points_mm : array, shape (points, 2)

    Returns
    -------
    middle : array, shape (2,)
    sides : array, shape (2,)
    turn : float [radian]
    """
    cv2 = vision()
    origin = points_mm.mean(axis=0)
    rectangle = cv2.minAreaRect((points_mm - origin).astype(np.float32))
    # The angle's convention changed between OpenCV's versions: the corners' did not.
    corners = cv2.boxPoints(rectangle).astype(float)
    first, second = corners[1] - corners[0], corners[2] - corners[1]
    longer, shorter = sorted((first, second), key=np.linalg.norm, reverse=True)
    sides = np.array([np.linalg.norm(longer), np.linalg.norm(shorter)])
    return corners.mean(axis=0) + origin, sides, float(np.arctan2(longer[1], longer[0]))


def _known_to(width_mm):
    return POINT_MM + POINT_SHARE * width_mm


def _residuals(many, points, rim, lens_mm, longest_mm, scale):
    """Distances of the points, then what is believed beforehand; each over what it is known to."""
    off = _off(many, points, rim, lens_mm) * scale
    longer = np.maximum(np.abs(many[:, 3]), np.abs(many[:, 4]))
    wide = np.minimum(np.abs(many[:, 3]), np.abs(many[:, 4]))
    believed = HEIGHT_SHARE * np.where(longer < LONG * wide, (longer + wide) / 2, wide)
    height_sd = HEIGHT_SD_BESIDE_RIM if len(rim) else HEIGHT_SD
    height = (many[:, 5] - believed) / (height_sd * np.maximum(wide, 0.5))
    too_long = np.maximum(longer / longest_mm - LONGEST, 0) * 200
    return np.column_stack([off, height, too_long])


def _off(many, points, rim, lens_mm):
    """Distances of an outline's points, then of those on the rim of the upper face."""
    off = _distances(many, points, lens_mm)
    return np.concatenate([off, _rim_distances(many, rim, lens_mm)], axis=1) if len(rim) else off


def _rim_distances(many, rim, lens_mm):
    """Signed distance of each point from its side of the upper face, thrown on to the mat."""
    upper = _thrown(_rectangle(many[:, :5]), many[:, 5], lens_mm)
    across, along = _axes(many[:, 2])
    outward = np.stack([-along, across, along, -across], axis=1)
    reach = np.einsum("msd,msd->ms", outward, upper)
    return np.einsum("mkd,kd->mk", outward[:, rim.side], rim.points_mm) - reach[:, rim.side]


def _distances(many, points, lens_mm):
    """Signed distance of each point from the outline of each box, outside above nought.

    The outline is the hull of the base and of the upper face thrown on to the mat. Its sides are
    parallel to the box's, or join a corner of the base to the same corner above: in these twelve
    directions the hull's reach is taken, and a point is as far out as in the worst of them.
    """
    base = _rectangle(many[:, :5])
    corners = np.concatenate([base, _thrown(base, many[:, 5], lens_mm)], axis=1)
    across, along = _axes(many[:, 2])
    slant = base - lens_mm[:2]
    slant = np.stack([slant[..., 1], -slant[..., 0]], axis=-1)
    slant /= np.maximum(np.linalg.norm(slant, axis=-1, keepdims=True), 1e-9)
    sides = np.stack([across, -across, along, -along], axis=1)
    directions = np.concatenate([sides, slant, -slant], axis=1)
    reach = np.einsum("mkd,mcd->mkc", directions, corners).max(axis=2)
    return (directions @ points.T - reach[:, :, None]).max(axis=1)


def _axes(turn):
    across = np.stack([np.cos(turn), np.sin(turn)], axis=-1)
    return across, np.stack([-across[..., 1], across[..., 0]], axis=-1)


def _rectangle(many):
    """Corners of rectangles (x, y, turn, length, width), shape (many, 4, 2)."""
    across, along = _axes(many[:, 2])
    signs = np.array([(-1, -1), (1, -1), (1, 1), (-1, 1)]) / 2
    reach = signs[None] * many[:, None, 3:5]
    middle = many[:, None, :2]
    return middle + reach[..., :1] * across[:, None] + reach[..., 1:] * along[:, None]


def _thrown(corners, height, lens_mm):
    """Corners at a height, thrown from the lens on to the mat."""
    farther = lens_mm[2] / np.maximum(lens_mm[2] - height, 1e-3)
    return lens_mm[:2] + (corners - lens_mm[:2]) * farther[:, None, None]
