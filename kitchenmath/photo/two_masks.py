"""Two masks show the same tray: what is one thing in both, and which of them to believe.

One mask may show two pieces where the other shows them as one patch, so a place is what hangs
together over both masks, and one mask is believed for the whole of it: no piece counts twice.
"""

import numpy as np

from kitchenmath.photo import doubts
from kitchenmath.photo.vision import vision

SAME_PLACE = 0.2  # of a blob's own size: with middles nearer than this, two masks show one thing
WITHIN_MM = 1.0  # of a blob: two masks' outlines of two neighbours cross by less


def same_places(brighter, coloured):
    """The blobs of two masks, place by place.

    Parameters
    ----------
    brighter, coloured : list of tuple
        (Blob, Box) each, of either mask.

    Returns
    -------
    list of tuple
        (those of the first mask, those of the second); one of the two may be empty.
    """
    places = [([pair], []) for pair in brighter]
    for pair in coloured:
        met = [
            place for place in places if any(_same_place(pair[0], other) for other, _ in place[0])
        ]
        others = [place for place in places if not any(place is each for each in met)]
        first = [each for place in met for each in place[0]]
        second = [each for place in met for each in place[1]]
        places = [*others, (first, [*second, pair])]
    return places


def misfit_share(pair):
    """How badly a box fits its blob, a wide piece being rougher.

    Parameters
    ----------
    pair : tuple
        (Blob, Box)

    Returns
    -------
    float
    """
    box = pair[1]
    return box.misfit_mm / (1 + 0.01 * box.width_mm)


def doubtfulness(pairs):
    """What speaks against one mask's view of a place: doubted pieces, then the worst fit.

    Parameters
    ----------
    pairs : list of tuple
        (Blob, Box) each, one at least.

    Returns
    -------
    tuple
        To be compared with another's; the less the better.
    """
    return sum(bool(doubts.of_one(*pair)) for pair in pairs), max(map(misfit_share, pairs))


def _same_place(one, other):
    """Whether two blobs are one thing, or share a part: sticks lie nearer to one another than
    they are long, so that near is not enough."""
    here, there = one.points_mm.mean(axis=0), other.points_mm.mean(axis=0)
    apart = np.linalg.norm(here - there)
    if apart < SAME_PLACE * np.sqrt(max(one.area_mm2, other.area_mm2)):
        return True
    low = np.maximum(one.points_mm.min(axis=0), other.points_mm.min(axis=0))
    high = np.minimum(one.points_mm.max(axis=0), other.points_mm.max(axis=0))
    return bool((low < high).all()) and (_reaches_into(one, other) or _reaches_into(other, one))


def _reaches_into(one, other):
    """Whether the middle of a blob or a part of its outline lies well within another."""
    ring = other.points_mm.astype(np.float32)
    points = [one.points_mm.mean(axis=0), *one.points_mm]
    depths = [vision().pointPolygonTest(ring, tuple(map(float, each)), True) for each in points]
    return depths[0] >= 0 or max(depths) > WITHIN_MM
