"""How far a measured side may be off.

The fit knows only how well a box agrees with an outline. What it cannot know is added here: pieces
are no boxes, their height is partly believed, and a shadow's edge may pass for theirs. The four
numbers were set on rendered photos (tests/measure/photo_accuracy.py judges them on others): no
real tray has tried them.
"""

import numpy as np

IN_95 = 1.96  # standard deviations on either side of the mean that hold 95 %
FLOOR_MM = 0.07  # the outline of any piece
HEIGHT_SHARE = 0.0105  # of the width, which a piece is about as high as
SIDE_SHARE = 0.0022  # of the side: its ends, and the scale
SHADOW_MM = 0.08  # for each natural logarithm of light that the darkest mat near food lacks


def within_mm(side_mm, width_mm, fit_sd_mm, shadow_depth=0.0):
    """Half of the 95 % interval of a side.

    Parameters
    ----------
    side_mm, width_mm : float
        The side, and the shorter side of its piece.
    fit_sd_mm : float
        What the fit says.
    shadow_depth : float
        As from `checks.shadow_depth`, 0 or below.

    Returns
    -------
    float

    Examples
    --------
    A cube of 10 mm in soft light: 1.96 √(0.05² + 0.07² + 0.105² + 0.022²) = 0.27.

    >>> round(within_mm(10.0, 10.0, 0.05), 2)
    0.27
    """
    parts = (
        fit_sd_mm,
        FLOOR_MM,
        HEIGHT_SHARE * width_mm,
        SIDE_SHARE * side_mm,
        SHADOW_MM * shadow_depth,
    )
    return float(IN_95 * np.sqrt(np.sum(np.square(parts))))
