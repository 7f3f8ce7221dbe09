"""Which pieces cannot be trusted: more than one, half outside, or lost in a shadow."""

import numpy as np

SHAPE, DOUBLE, EDGE = "shape", "double", "edge"
MISFIT_MM, MISFIT_SHARE = 0.15, 0.01  # of the width
# Of the hull, less what the unrest of an outline (in mm of the width) eats of a small piece.
LEAST_SOLIDITY, UNREST_MM = 0.94, 0.1
STICK = 4.0  # widths long; a slightly bent one fills less of its hull and is still one piece
# A side that is two or three pieces' worth; hands err, and two small ones make less than twice one.
TIMES = ((1.65, 2.4), (2.5, 3.4))


def of_one(blob, box):
    """What speaks against a blob being one whole piece.

    Parameters
    ----------
    blob : Blob
    box : Box

    Returns
    -------
    tuple of str
    """
    doubts = [EDGE] * blob.cut_off
    least = LEAST_SOLIDITY - UNREST_MM / box.width_mm
    hollow = blob.solidity < least and box.length_mm < STICK * box.width_mm
    if ill_fitting(box) or hollow or blob.faces > 1:
        doubts.append(SHAPE)
    return tuple(doubts)


def ill_fitting(box):
    """Whether an outline is none of a box.

    Parameters
    ----------
    box : Box

    Returns
    -------
    bool
    """
    return box.misfit_mm > MISFIT_MM + MISFIT_SHARE * box.width_mm


def doubles(sizes_mm, usual_mm=()):
    """Pieces with a side that is two or three times the usual: two that lie flush look like one.

    Parameters
    ----------
    sizes_mm : array, shape (pieces, 2)
        Width and length.
    usual_mm : sequence of tuple of float
        Further (width, length) to hold them against, such as a named cut's.

    Returns
    -------
    array of bool, shape (pieces,)

    Examples
    --------
    Three cubes of 10 mm and two that lie side by side:

    >>> doubles(np.array([(10, 10), (9, 10), (10, 11), (10, 20)])).tolist()
    [False, False, False, True]
    """
    sizes = np.asarray(sizes_mm, float).reshape(-1, 2)
    found = np.zeros(len(sizes), bool)
    if not len(sizes):
        return found
    # The smaller half of a heap holds the single pieces, also where many lie together.
    for usual in [np.median(sizes, axis=0), *map(np.array, usual_mm)]:
        times = sizes / usual
        for low, high in TIMES:
            found |= ((times > low) & (times < high)).any(axis=1)
    return found
