"""The panel of lesson 3 on evenness: ten pieces in their band."""

from kitchenmath.cuts import judge
from kitchenmath.figures.cutting import Tray
from kitchenmath.panels.frame import slider, wire
from kitchenmath.units import Q_

# Invented: ten draws that look like a cook's, brought to mean 0 and standard deviation 1.
SPREAD = (-1.47, 0.36, 1.01, -0.65, 0.12, 1.61, -0.94, 0.66, -1.09, 0.39)


def tray(mean_mm, sd_mm, tolerance_mm):
    """Ten invented cubes of brunoise with this mean and spread, and what they can tell.

    Parameters
    ----------
    mean_mm, sd_mm, tolerance_mm : float

    Returns
    -------
    dict
        `sizes_mm`, `target_mm`, `tolerance_mm` and `sentence`.
    """
    sizes_mm = [mean_mm + sd_mm * step for step in SPREAD]
    found = judge(Q_(sizes_mm, "mm"), "brunoise", tolerance=Q_(tolerance_mm, "mm"))
    return {
        "sizes_mm": sizes_mm,
        "target_mm": found.target.magnitude,
        "tolerance_mm": tolerance_mm,
        "sentence": found.verdict.replace(". ", ".\n"),  # one fact a line
    }


def tray_panel():
    """Mean, spread and band; ten points in the band, and the verdict of `judge`.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "mean_mm": slider("Mean of the ten (mm)", 2.4, 3.6, 0.1, 3.0),
            "sd_mm": slider("Standard deviation (mm)", 0.1, 0.7, 0.1, 0.3),
            "tolerance_mm": slider("On size within ± (mm)", 0.3, 1.0, 0.1, 0.5),
        },
        tray,
        lambda picture: Tray(picture, most_mm=4.8),
        height=2.5,
    )
