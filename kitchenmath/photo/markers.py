"""The printed markers in a photo: found, then each side set to a small part of a pixel."""

from dataclasses import dataclass

import numpy as np

from kitchenmath.photo.layout import MARKER_BITS
from kitchenmath.photo.vision import vision

PROFILES = 40  # across each side of a marker
CORNERS_LEFT_OUT = 0.12  # of a side, at each end, where two sides blur into one another


@dataclass(frozen=True)
class Markers:
    """What was found of the sixteen.

    Attributes
    ----------
    numbers : array of int, shape (found,)
    corners_px : array, shape (found, 4, 2)
        As (column, row), in the order of `layout.corner_offsets_mm`.
    edge_px : array, shape (found, 4)
        How wide each side's edge is, from a tenth to nine tenths of the light.
    """

    numbers: np.ndarray
    corners_px: np.ndarray
    edge_px: np.ndarray

    def __len__(self):
        return len(self.numbers)


def find_markers(pixels, bright):
    """Find the mat's markers.

    Parameters
    ----------
    pixels : array of uint8, shape (rows, columns, 3)
    bright : array of float32, shape (rows, columns)
        The light of the same picture.

    Returns
    -------
    Markers
    """
    cv2 = vision()
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    # Only our numbers: a stray pattern on the board is then no marker.
    dictionary.bytesList = dictionary.bytesList[: len(MARKER_BITS)]
    detector = cv2.aruco.ArucoDetector(dictionary, cv2.aruco.DetectorParameters())
    grey = cv2.cvtColor(pixels, cv2.COLOR_RGB2GRAY)
    corners, numbers, _ = detector.detectMarkers(grey)
    numbers = np.array([] if numbers is None else numbers, int).reshape(-1)
    corners = np.array(corners, float).reshape(-1, 4, 2)
    once = [place for place, each in enumerate(numbers) if np.sum(numbers == each) == 1]
    refined = [_refined(bright, corners[place]) for place in once]
    kept = [place for place, each in enumerate(refined) if each is not None]
    return Markers(
        numbers[[once[place] for place in kept]].astype(int),
        np.array([refined[place][0] for place in kept]).reshape(-1, 4, 2),
        np.array([refined[place][1] for place in kept]).reshape(-1, 4),
    )


def _refined(bright, corners):
    """Corners where lines through the sides' half-light points meet, and the edges' widths."""
    lines, widths = [], []
    for first, second in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        found = _side(bright, first, second)
        if found is None:
            return None
        lines.append(found[0])
        widths.append(found[1])
    meet = [_crossing(lines[place - 1], lines[place]) for place in range(4)]
    if np.max(np.linalg.norm(np.array(meet) - corners, axis=1)) > 4:
        return None
    return np.array(meet), widths


def _side(bright, first, second):
    """A line (point, direction) along one side, and the width of its edge in pixels."""
    length = np.linalg.norm(second - first)
    along = (second - first) / length
    outward = np.array([along[1], -along[0]])  # corners run clockwise on the screen
    reach = float(np.clip(length / 6 * 0.9, 2.5, 8))  # a border is a sixth of the marker wide
    places = np.linspace(CORNERS_LEFT_OUT, 1 - CORNERS_LEFT_OUT, PROFILES)
    off = np.arange(-reach, reach + 0.01, 0.25)
    points = first + places[:, None, None] * (second - first) + off[None, :, None] * outward
    profiles = sampled(bright, points)
    dark = np.median(profiles[:, : len(off) // 4])
    white = np.median(profiles[:, -(len(off) // 4) :])
    if white - dark < 0.03:
        return None
    share = (profiles - dark) / (white - dark)
    crossings = np.array([crossing(off, each, 0.5) for each in share])
    good = np.isfinite(crossings)
    if good.sum() < PROFILES // 2:
        return None
    edge = first + places[good, None] * (second - first) + crossings[good, None] * outward
    return _line(edge), _edge_width(off, share[good], crossings[good])


def _edge_width(off, share, crossings):
    """From a tenth to nine tenths, on the mean of the profiles laid over one another."""
    laid = [np.interp(off, off - at, each) for each, at in zip(share, crossings, strict=True)]
    mean = np.median(laid, axis=0)
    low, high = crossing(off, mean, 0.1), crossing(off, mean, 0.9)
    return float(high - low) if np.isfinite(high - low) else float(off[-1] - off[0])


def crossing(off, values, level):
    """Where rising values cross a level, nearest to the middle of `off`; nan where they do not.

    Examples
    --------
    >>> round(crossing(np.array([-1.0, 0.0, 1.0]), np.array([0.0, 0.4, 0.8]), 0.5), 6)
    0.25
    """
    up = np.flatnonzero((values[:-1] < level) & (values[1:] >= level))
    if not len(up):
        return float("nan")
    at = off[up] + (level - values[up]) / (values[up + 1] - values[up]) * (off[up + 1] - off[up])
    return float(at[np.argmin(np.abs(at))])


def sampled(image, points):
    """An image between its pixels, by straight lines.

    Parameters
    ----------
    image : array, shape (rows, columns) or (rows, columns, channels)
    points : array, shape (..., 2)
        As (column, row).

    Returns
    -------
    array, shape (...) or (..., channels)
    """
    rows, columns = image.shape[:2]
    across = np.clip(points[..., 0], 0, columns - 1.001)
    down = np.clip(points[..., 1], 0, rows - 1.001)
    left, top = across.astype(int), down.astype(int)
    right_share, low_share = across - left, down - top
    if image.ndim == 3:
        right_share, low_share = right_share[..., None], low_share[..., None]
    upper = image[top, left] * (1 - right_share) + image[top, left + 1] * right_share
    lower = image[top + 1, left] * (1 - right_share) + image[top + 1, left + 1] * right_share
    return upper * (1 - low_share) + lower * low_share


def _line(points):
    """A straight line through points, of which a few may be off: its middle and direction."""
    kept = points
    for _ in range(3):
        middle = kept.mean(axis=0)
        direction = np.linalg.svd(kept - middle, full_matrices=False)[2][0]
        off = (points - middle) @ np.array([-direction[1], direction[0]])
        kept = points[np.abs(off) <= max(0.1, 2.5 * np.median(np.abs(off)))]
    return middle, direction


def _crossing(one, other):
    """Where two lines meet."""
    (start, direction), (second, other_direction) = one, other
    both = np.column_stack([direction, -other_direction])
    return start + np.linalg.solve(both, second - start)[0] * direction
