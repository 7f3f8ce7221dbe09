"""The rim of a piece's upper face, where its light changes to that of a side face.

An outline alone cannot tell a wide piece from a high one: both push it outwards. Inside the
outline the rim of the upper face can be seen, and with it how high the piece is.
"""

import numpy as np

from kitchenmath.photo.boxes import NO_RIM, Rim
from kitchenmath.photo.markers import sampled

LEAST_FACE_MM = 1.5  # a side face that shows less of itself has no light of its own in the photo
ALONG = (0.12, 0.88)  # of a side; nearer its ends two faces run into one another
STEP_MM = 0.7  # from point to point
LOOK_SHARE, LOOK_MM = 0.45, 2.5  # how far off the rim may be: of the face that is seen, at most
NEAR_MM, FAR_MM = 0.3, 0.9  # from the rim, between which the light of either face is taken
LEAST_STEP = 0.05  # of the upper face's light
POWER = 0.7  # between light and a file's numbers, as for outlines


def rim_seen(field, box, lens_mm):
    """Points on the rim of a box's upper face, on the sides whose face the phone sees.

    Parameters
    ----------
    field : Field
    box : Box
        As it is known so far.
    lens_mm : array, shape (3,)

    Returns
    -------
    Rim
    """
    base, upper = box.corners_mm(), box.upper_mm(lens_mm)
    found = []
    for side in range(4):
        ends = upper[[side, (side + 1) % 4]]
        outward = outward_of(upper, side)
        face_mm = float((base[side] - upper[side]) @ outward)
        if face_mm >= LEAST_FACE_MM:
            found.append(
                (side, step_along(field, ends, outward, min(LOOK_SHARE * face_mm, LOOK_MM)))
            )
    return joined(found)


def joined(found):
    """One rim of several sides' points."""
    found = [(side, points) for side, points in found if len(points)]
    if not found:
        return NO_RIM
    sides = np.concatenate([np.full(len(points), side) for side, points in found])
    return Rim(np.concatenate([points for _, points in found]), sides)


def outward_of(corners, side):
    """The unit normal of a side of a rectangle, away from its middle."""
    along = corners[(side + 1) % 4] - corners[side]
    normal = np.array([along[1], -along[0]]) / np.linalg.norm(along)
    return normal * np.sign((corners[side] - corners.mean(axis=0)) @ normal)


def step_along(field, ends, outward, look_mm, darker=False):
    """Points where the light steps, along a line that is known to within `look_mm`.

    Parameters
    ----------
    field : Field
    ends : array, shape (2, 2)
        Of the line, on the mat.
    outward : array, shape (2,)
        At right angles to it, away from the upper face.
    look_mm : float
    darker : bool
        Whether only a step to less light counts: a side face may be the lighter one.

    Returns
    -------
    array, shape (points, 2)
    """
    length = np.linalg.norm(ends[1] - ends[0])
    places = np.linspace(*ALONG, max(4, int(length / STEP_MM)))
    on_line = ends[0] + places[:, None] * (ends[1] - ends[0])
    off = np.arange(-look_mm - FAR_MM, look_mm + FAR_MM + 0.01, 0.1)
    lines = field.pixels_of(on_line[:, None] + off[None, :, None] * outward)
    light = np.maximum(sampled(field.light, lines), 0) ** POWER
    upper = np.median(light[:, off < -0.5 * look_mm], axis=(0, 1))
    profiles = light @ upper / max(float(upper @ upper), 1e-9)
    at, steps = _steps(off, profiles.mean(axis=0)[None], look_mm)
    steps = steps[0] if darker else np.abs(steps[0])
    best = int(np.argmax(steps))
    if steps[best] < LEAST_STEP or best in (0, len(at) - 1):
        return on_line[:0]
    crossed = _crossings(off, _smoothed(profiles), at[best])
    good = np.abs(crossed) < look_mm
    return on_line[good] + crossed[good, None] * outward


def _steps(off, profiles, look_mm):
    """At each place of a profile: how much darker it is just outside than just inside."""
    at = off[np.abs(off) <= look_mm]
    inside = (at[:, None] - off >= NEAR_MM) & (at[:, None] - off <= FAR_MM)
    outside = (off - at[:, None] >= NEAR_MM) & (off - at[:, None] <= FAR_MM)
    means = [each / each.sum(axis=1, keepdims=True) for each in (inside, outside)]
    return at, profiles @ means[0].T - profiles @ means[1].T


def _smoothed(profiles):
    """Each with its neighbours: grain in the food is no rim."""
    padded = np.concatenate([profiles[:1], profiles, profiles[-1:]])
    return (padded[:-2] + padded[1:-1] + padded[2:]) / 3


def _crossings(off, profiles, near):
    """Where each profile is half-way between its two faces, near a place; nan where nowhere."""
    inside = profiles[:, (near - off >= NEAR_MM) & (near - off <= FAR_MM)].mean(axis=1)
    outside = profiles[:, (off - near >= NEAR_MM) & (off - near <= FAR_MM)].mean(axis=1)
    share = (profiles - outside[:, None]) / np.where(inside == outside, 1, inside - outside)[
        :, None
    ]
    before, after = share[:, :-1], share[:, 1:]
    falls = (before >= 0.5) & (after < 0.5)
    at = off[:-1] + (before - 0.5) / np.where(falls, before - after, 1) * (off[1] - off[0])
    at = np.where(falls, at, np.inf)
    nearest = np.argmin(np.abs(at - near), axis=1)
    at = at[np.arange(len(at)), nearest]
    return np.where(np.abs(at - near) < FAR_MM, at, np.nan)
