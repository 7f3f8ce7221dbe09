"""The printed mat as numbers: where its markers, its field and its two lines lie.

Lengths are millimetres from the top left corner of the frame: x to the right, y down the page.
One layout serves A4 and Letter; only the white around the frame differs.
"""

import numpy as np

FRAME_MM = (258.0, 186.0)
FIELD_MM = (25.0, 25.0, 233.0, 161.0)  # left, top, right, bottom of the blue field
FIELD_SRGB = (60, 105, 190)  # a mid-blue: no common food is blue, and pale and dark both show
MARKER_MM = 18.0
LINE_MM = 100.0  # each of the two lines that the cook checks with a ruler

# The first sixteen of OpenCV's open marker dictionary DICT_4X4_50: four rows of four cells,
# white where a bit is set. Written down here so that the mat prints without OpenCV.
MARKER_BITS = (
    0xB532, 0x0F9A, 0x332D, 0x9946, 0x549E, 0x79CD, 0x9E2E, 0xC4F2,
    0xFEDA, 0xCF56, 0xF991, 0x11A7, 0x0EB7, 0x2A0F, 0x24B1, 0x263E,
)  # fmt: skip


def marker_centres_mm():
    """The middle of each marker by its number, clockwise from the top left corner.

    Returns
    -------
    array of shape (16, 2)

    Examples
    --------
    Six stand on a long side, 48 mm apart; the second is 9 + 48 = 57 mm from the left.

    >>> marker_centres_mm()[1].tolist()
    [57.0, 9.0]
    """
    half = MARKER_MM / 2
    across = np.linspace(half, FRAME_MM[0] - half, 6)
    down = np.linspace(half, FRAME_MM[1] - half, 4)[1:-1]
    top = [(x, half) for x in across]
    right = [(FRAME_MM[0] - half, y) for y in down]
    bottom = [(x, FRAME_MM[1] - half) for x in across[::-1]]
    left = [(half, y) for y in down[::-1]]
    return np.array(top + right + bottom + left)


def corner_offsets_mm():
    """The corners of a marker from its middle: top left, top right, bottom right, bottom left.

    Returns
    -------
    array of shape (4, 2)
    """
    return MARKER_MM / 2 * np.array([(-1, -1), (1, -1), (1, 1), (-1, 1)], float)


def marker_cells(number):
    """The cells of a marker, black border and all.

    Parameters
    ----------
    number : int
        From 0 to 15.

    Returns
    -------
    array of bool, shape (6, 6)
        True where the paper stays white.
    """
    bits = [MARKER_BITS[number] >> place & 1 for place in range(15, -1, -1)]
    return np.pad(np.array(bits, bool).reshape(4, 4), 1)
