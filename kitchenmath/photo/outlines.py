"""The outline of each piece on the flat mat, to a small part of a millimetre."""

from dataclasses import dataclass

import numpy as np

from kitchenmath.photo.markers import sampled
from kitchenmath.photo.vision import vision

LEAST_MM2 = 2.5  # a blob below it is a crumb or a drop
THRESHOLDS = (0.18, 0.45)  # between which the two masks are cut, in logarithms of light
STEP_MM = 0.3  # from point to point of an outline
# How far from the border an edge is looked for, and between which distances from it the light on
# either side is taken [mm]: first from the mask's border, then from the edge so found.
LOOKS = ((1.1, 0.45, 1.0), (0.9, 0.45, 0.85))
MOST_POINTS = 140
# Blur is made in light, and a JPEG smears its colours in bent tones: the middle of an edge is
# looked for between the two, and by weights that see food alike however it is lit, for a part.
# Both numbers were set on rendered photos, where the sides come out without bias.
POWER, BLIND = 0.7, 0.7
AT_THE_EDGE_MM = 1.0


@dataclass(frozen=True)
class Blob:
    """One connected patch that is not mat.

    Attributes
    ----------
    points_mm : array, shape (points, 2)
        On the mat's plane, where the light is half that of the piece and half that of the mat.
    solidity : float
        Its area as a share of the area of its convex hull.
    cut_off : bool
        Whether it lies against the border of the field.
    area_mm2 : float
    middle_px : tuple of float
    mask : int
        Which of the two ways of telling food from mat showed it.
    faces : int
        Upper faces in it: more than one, and it is more than one piece.
    """

    points_mm: np.ndarray
    solidity: float
    cut_off: bool
    area_mm2: float
    middle_px: tuple
    mask: int
    faces: int = 1


def blobs(field):
    """All blobs of a field, as each of two ways shows them.

    Parameters
    ----------
    field : Field

    Returns
    -------
    tuple of list of Blob
        First where some colour is brighter than the lit mat, which no shadow can be; then where
        the colour differs, whatever the brightness.
    """
    cv2 = vision()
    smooth = cv2.GaussianBlur(field.against_mat, (0, 0), 0.1 * field.px_per_mm)
    brighter = smooth.max(axis=2)
    chroma = np.linalg.norm(smooth - smooth.mean(axis=2, keepdims=True), axis=2)
    return tuple(_blobs(field, each, way) for way, each in enumerate((brighter, chroma)))


def _blobs(field, strength, way):
    cv2 = vision()
    mask = (strength > _threshold(strength)).astype(np.uint8)
    kernel = np.ones((3, 3), np.uint8)
    mask = cv2.morphologyEx(mask, cv2.MORPH_OPEN, kernel)
    count, labels, stats, _ = cv2.connectedComponentsWithStats(mask, connectivity=8)
    found = []
    for label in range(1, count):
        left, top, wide, high, area = stats[label]
        if area < LEAST_MM2 * field.px_per_mm**2:
            continue
        window = (labels[top : top + high, left : left + wide] == label).astype(np.uint8)
        found.append(_blob(field, np.pad(window, 2), (left - 2, top - 2), way))
    return [blob for blob in found if blob is not None]


def _threshold(strength):
    """Otsu's, kept between bounds: a field without food has no two heaps to part."""
    cv2 = vision()
    scaled = np.clip(strength * 160, 0, 255).astype(np.uint8)
    level, _ = cv2.threshold(scaled, 0, 255, cv2.THRESH_BINARY + cv2.THRESH_OTSU)
    return float(np.clip(level / 160, *THRESHOLDS))


def _blob(field, window, corner, way):
    cv2 = vision()
    contours, _ = cv2.findContours(window, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    contour = max(contours, key=cv2.contourArea)
    area = cv2.contourArea(contour)
    hull = cv2.contourArea(cv2.convexHull(contour))
    if hull <= 0:
        return None
    ring = contour.reshape(-1, 2).astype(float) + corner
    rows, columns = field.light.shape[:2]
    near = AT_THE_EDGE_MM * field.px_per_mm
    cut_off = bool(
        (ring < near).any()
        or (ring[:, 0] > columns - near).any()
        or (ring[:, 1] > rows - near).any()
    )
    middle = tuple(ring.mean(axis=0))
    points, normals = _even_ring(ring, field.px_per_mm)
    edge = _half_light(field, points, normals)
    if len(edge) < 8:
        return None
    # The mask's own staircase cuts a corner of every pixel; a pixel's rim makes up for it.
    return Blob(field.mm_of(edge), _solidity(edge), cut_off, area / field.px_per_mm**2, middle, way)


def _solidity(ring):
    """Area over the area of the hull, for points in order."""
    cv2 = vision()
    ring = ring.astype(np.float32)
    hull = cv2.contourArea(cv2.convexHull(ring))
    return float(cv2.contourArea(ring) / hull) if hull > 0 else 0.0


def _even_ring(ring, px_per_mm):
    """Points at even steps along a closed ring, smoothed, with the outward normal at each."""
    closed = np.vstack([ring, ring[:1]])
    along = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(closed, axis=0), axis=1))])
    step = max(STEP_MM * px_per_mm, along[-1] / MOST_POINTS)
    count = max(12, int(along[-1] / step))
    fine = np.linspace(0, along[-1], 4 * count, endpoint=False)
    points = np.stack([np.interp(fine, along, closed[:, axis]) for axis in (0, 1)], axis=1)
    points = _smoothed(points, 5)
    forward = _smoothed(np.roll(points, -3, axis=0) - np.roll(points, 3, axis=0), 5)[::4]
    points = points[::4]
    lengths = np.linalg.norm(forward, axis=1, keepdims=True)
    forward = forward / np.maximum(lengths, 1e-9)
    normals = np.stack([forward[:, 1], -forward[:, 0]], axis=1)
    doubled_area = np.sum(points[:, 0] * np.roll(points[:, 1], -1))
    doubled_area -= np.sum(points[:, 1] * np.roll(points[:, 0], -1))
    return points, normals * np.sign(doubled_area)


def _smoothed(points, width):
    kernel = np.ones(width) / width
    padded = np.vstack([points[-width:], points, points[:width]])
    return np.stack(
        [np.convolve(padded[:, axis], kernel, "same")[width:-width] for axis in (0, 1)], axis=1
    )


def _half_light(field, points, normals):
    """Along each normal, where the light is half-way between piece and mat.

    In tones near to light, not in its logarithm: there sides come out a tenth of a millimetre long.
    Looked for twice: the mask's border is near the edge, and from the edge itself the light on
    either side can be taken close by, where a dark side face is not yet the bright upper one.
    """
    for reach_mm, near_mm, far_mm in LOOKS:
        moved, good = _crossings(field, points, normals, reach_mm, (near_mm, far_mm))
        points, normals = points[good] + moved[good, None] * normals[good], normals[good]
    return points


def _crossings(field, points, normals, reach_mm, levels_mm):
    """How far along its normal [px] each point's edge lies, and whether there is one."""
    off = np.arange(-reach_mm, reach_mm + 0.01, 0.05)
    lines = points[:, None, :] + off[None, :, None] * field.px_per_mm * normals[:, None, :]
    profiles = sampled(field.light, lines) ** POWER
    near, far = levels_mm
    inside = profiles[:, (off >= -far) & (off <= -near)].mean(axis=1)
    outside = profiles[:, (off >= near) & (off <= far)].mean(axis=1)
    weights = _weights(np.median(inside, axis=0), np.median(outside, axis=0))
    mat, here = outside @ weights, inside @ weights
    share = (profiles @ weights - mat[:, None]) / np.minimum(here - mat, -1e-6)[:, None]
    before, after = share[:, :-1], share[:, 1:]
    falls = (before >= 0.5) & (after < 0.5)
    at = off[:-1] + (before - 0.5) / np.where(falls, before - after, 1) * 0.05
    at = np.where(falls, at, np.inf)
    nearest = at[np.arange(len(at)), np.argmin(np.abs(at), axis=1)]
    good = np.abs(nearest) < 0.75 * reach_mm
    return nearest * field.px_per_mm, good


def _weights(food, mat):
    """How much each colour counts where food and mat are told apart.

    By their difference alone, the middle between mat and the bright upper face may lie within
    a dark side face: pieces come out small. Weights that add up to nought for the food, however
    it is lit, see both faces alike; but they live on differences of colour, which a JPEG keeps at
    half the sharpness: pieces come out large. So a part of each.
    """
    apart = mat - food
    upper = food / max(float(np.linalg.norm(food)), 1e-6)
    blind = mat - (mat @ upper) * upper
    return (1 - BLIND) * apart / (mat @ apart - food @ apart) + BLIND * blind / max(
        mat @ blind, 1e-6
    )
