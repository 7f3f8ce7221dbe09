"""Pieces that a photo shows as one patch, told apart by their upper faces.

Under a phone that is not right above them, tall pieces hide the mat between them. Their upper
faces still lie apart in the photo, by as much as the pieces do: between two of them runs a darker
strip, a side face or a sliver of mat.
"""

from dataclasses import dataclass

import numpy as np

from kitchenmath.photo.boxes import Box, fit_again, least_rectangle, off_outline
from kitchenmath.photo.doubts import ill_fitting
from kitchenmath.photo.rims import POWER, joined, outward_of, step_along
from kitchenmath.photo.vision import vision

STRIP_MM = 7.0  # a darker strip is no wider
DARKER = 0.06  # of an upper face's light
WORN_MM = 0.8  # taken off around a face, so that two do not hang together by a grain
LEAST_MM2 = 30.0  # of an upper face; what merges is tall, and so it is broad
LOOKS_MM = (2.0, 1.0, 1.0)  # how far off the rim of a face may be, round by round
WITHIN_MM = 1.0  # of a blob: nearer to its outline, it is the outline that is seen
LEAST_GAP_MM = 1.5  # between bases; pieces that touch stay doubted
ON_SIDE_MM = 1.0
LEAST_SEEN = 4  # points on each side of a piece, of its outline or of its rim


@dataclass(frozen=True)
class Apart:
    """One piece of several in a blob.

    Attributes
    ----------
    box : Box
    points_mm : array, shape (points, 2)
        The part of the blob's outline that is its own; none where others lie all around it.
    sound : bool
        Whether each of its sides is seen, and mat between it and every other.
    """

    box: Box
    points_mm: np.ndarray
    sound: bool


def faces_in(field, blob):
    """The upper faces in a blob, as rings of points on the mat.

    Parameters
    ----------
    field : Field
    blob : Blob

    Returns
    -------
    list of array, shape (points, 2)
    """
    cv2 = vision()
    ring = np.round(field.pixels_of(blob.points_mm)).astype(np.int32)
    low, high = np.maximum(ring.min(axis=0) - 2, 0), ring.max(axis=0) + 3
    light = np.maximum(field.light[low[1] : high[1], low[0] : high[0]], 0) ** POWER
    inside = np.zeros(light.shape[:2], np.uint8)
    cv2.fillPoly(inside, [ring - low], 1)
    food = np.percentile(light[inside > 0], 60, axis=0)
    bright = (light @ food / max(float(food @ food), 1e-9)).astype(np.float32)
    bright = cv2.GaussianBlur(bright, (0, 0), 0.3 * field.px_per_mm)
    # All around counts as light, so that a side face at the outline is a strip like any other.
    bright[inside == 0] = 1.0
    closed = cv2.morphologyEx(bright, cv2.MORPH_CLOSE, _disc(STRIP_MM * field.px_per_mm))
    faces = ((closed - bright < DARKER) & (inside > 0)).astype(np.uint8)
    faces = cv2.erode(faces, _disc(2 * WORN_MM * field.px_per_mm), borderValue=0)
    rings, _ = cv2.findContours(faces, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    least = LEAST_MM2 * field.px_per_mm**2
    return [
        field.mm_of(each.reshape(-1, 2) + low) for each in rings if cv2.contourArea(each) >= least
    ]


def _disc(wide):
    size = 2 * int(wide / 2) + 1
    return vision().getStructuringElement(vision().MORPH_ELLIPSE, (size, size))


def boxes_apart(field, blob, faces, lens_mm):
    """A piece under each upper face of a blob, with the outline's points that are its own.

    Parameters
    ----------
    field : Field
    blob : Blob
    faces : list of array
        As from `faces_in`, two at least.
    lens_mm : array, shape (3,)

    Returns
    -------
    list of Apart
    """
    found = firsts = [_first(each, lens_mm) for each in faces]
    for look_mm in LOOKS_MM:
        off = np.abs([off_outline(box, blob.points_mm, lens_mm) for box in found])
        owned = [blob.points_mm[off.argmin(axis=0) == place] for place in range(len(found))]
        rims = [_rim(field, blob, box, lens_mm, look_mm) for box in found]
        found = [
            fit_again(*each, lens_mm) if len(each[1]) + len(each[2]) >= LEAST_SEEN else each[0]
            for each in zip(found, owned, rims, strict=True)
        ]
    sound = [
        _all_sides(box, points, rim, lens_mm) and not ill_fitting(box) and gap >= LEAST_GAP_MM
        for box, points, rim, gap in zip(found, owned, rims, _least_gaps(found), strict=True)
    ]
    # A box that went astray is drawn where its face was seen.
    shown = [box if good else first for box, first, good in zip(found, firsts, sound, strict=True)]
    return [Apart(*each) for each in zip(shown, owned, sound, strict=True)]


def _first(face, lens_mm):
    """A box under a face; its height is believed."""
    middle, sides, turn = least_rectangle(face)
    length, width = sides + 2 * WORN_MM
    height = (length + width) / 2 if length < 1.5 * width else width
    nearer = (lens_mm[2] - height) / lens_mm[2]
    base = lens_mm[:2] + (middle - lens_mm[:2]) * nearer
    return Box(base, turn, width * nearer, length * nearer, height, 0.0, 0.0, 0.0)


def _rim(field, blob, box, lens_mm, look_mm):
    """The rim of an upper face wherever it lies within the blob, also before a neighbour."""
    cv2 = vision()
    upper, ring = box.upper_mm(lens_mm), blob.points_mm.astype(np.float32)
    found = []
    for side in range(4):
        ends = upper[[side, (side + 1) % 4]]
        points = step_along(field, ends, outward_of(upper, side), look_mm, darker=True)
        within = [
            cv2.pointPolygonTest(ring, tuple(map(float, each)), True) > WITHIN_MM for each in points
        ]
        found.append((side, points[np.array(within, bool)]))
    return joined(found)


def _all_sides(box, points, rim, lens_mm):
    """Whether each side of a piece is seen, on its outline or on its rim."""
    upper, base = box.upper_mm(lens_mm), box.corners_mm()
    for side in range(4):
        outward = outward_of(upper, side)
        reach = max(upper[side] @ outward, base[side] @ outward)
        near = np.sum(np.abs(points @ outward - reach) < ON_SIDE_MM)
        if near < LEAST_SEEN and np.sum(rim.side == side) < LEAST_SEEN:
            return False
    return True


def _least_gaps(found):
    """How far each box lies from the nearest other one."""
    rings = [box.corners_mm() for box in found]
    return [min(_gap(one, other) for other in rings if other is not one) for one in rings]


def _gap(one, other):
    """How far two rectangles lie apart, along the side that parts them best."""
    return max(
        float((second @ outward).min() - (first @ outward).max())
        for first, second in ((one, other), (other, one))
        for outward in (outward_of(first, side) for side in range(4))
    )
