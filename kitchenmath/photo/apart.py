"""Pieces that a photo shows as one patch, told apart by their upper faces.

Under a phone that is not right above them, tall pieces hide the mat between them. Their upper
faces still lie apart in the photo, by as much as the pieces do: between two of them runs a darker
strip, a side face or a sliver of mat.
"""

import numpy as np

from kitchenmath.photo.boxes import Box, fit_again, least_rectangle, off_outline
from kitchenmath.photo.doubts import ill_fitting
from kitchenmath.photo.rims import POWER, joined, outward_of, step_along
from kitchenmath.photo.vision import vision

STRIP_MM = 7.0  # a darker strip is no wider
DARKER = 0.06  # of an upper face's light
WORN_MM = 0.8  # taken off around a face, so that two do not hang together by a grain
LEAST_MM2 = 30.0  # of an upper face; what merges is tall, and so it is broad
# How far off the rim of a face may be, by rounds: first as where a strip is thin, then wide.
LOOKS_MM = ((2.0, 1.0, 1.0), (4.0, 2.0, 1.0), (3.0, 2.0, 1.0, 1.0))
WITHIN_MM = 1.0  # of a blob: nearer to its outline, it is the outline that is seen
LEAST_GAP_MM = 1.5  # between bases; pieces that touch stay doubted
ON_SIDE_MM = 1.0
LEAST_SEEN = 4  # points on each side of a piece, of its outline or of its rim


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
    bright = cv2.GaussianBlur(bright, (0, 0), 0.3 * field.px_per_mm) * inside
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
    """A box for each upper face of a blob, with the outline's points that are its own.

    Parameters
    ----------
    field : Field
    blob : Blob
    faces : list of array
        As from `faces_in`, two at least.
    lens_mm : array, shape (3,)

    Returns
    -------
    list of tuple
        (Box, its points) each; empty where they do not explain the blob.
    """
    tried = (_fitted_so(field, blob, faces, lens_mm, looks) for looks in LOOKS_MM)
    return next(filter(None, tried), [])


def _fitted_so(field, blob, faces, lens_mm, looks_mm):
    """The same, looking so far for each rim, round by round."""
    found = [_first(each, lens_mm) for each in faces]
    for look_mm in looks_mm:
        off = np.abs([off_outline(box, blob.points_mm, lens_mm) for box in found])
        owned = [blob.points_mm[off.argmin(axis=0) == place] for place in range(len(found))]
        if min(map(len, owned)) < LEAST_SEEN:
            return []
        rims = [_rim(field, blob, box, lens_mm, look_mm) for box in found]
        found = [fit_again(*each, lens_mm) for each in zip(found, owned, rims, strict=True)]
    whole = all(_all_sides(*each, lens_mm) for each in zip(found, owned, rims, strict=True))
    fits = not any(ill_fitting(box) for box in found)
    return list(zip(found, owned, strict=True)) if whole and fits and _have_gaps(found) else []


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


def _have_gaps(found):
    rings = [box.corners_mm() for box in found]
    return all(
        _gap(one, other) >= LEAST_GAP_MM
        for place, one in enumerate(rings)
        for other in rings[place + 1 :]
    )


def _gap(one, other):
    """How far two rectangles lie apart, along the side that parts them best."""
    return max(
        float((second @ outward).min() - (first @ outward).max())
        for first, second in ((one, other), (other, one))
        for outward in (outward_of(first, side) for side in range(4))
    )
