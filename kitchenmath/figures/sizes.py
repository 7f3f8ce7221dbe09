"""A drawing of measured sizes: how many pieces of each, with the band that counts as on size."""

import numpy as np
from matplotlib.patches import Rectangle
from matplotlib.ticker import MaxNLocator

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, quiet

MOST_BARS = 24


def draw_sizes(ax, sizes_mm, target_mm, tolerance_mm, what):
    """Bars of how many pieces have which size; one off size is hatched too.

    Parameters
    ----------
    ax : matplotlib Axes
        Emptied first.
    sizes_mm : list of float
        None for a tray that is not measured yet.
    target_mm, tolerance_mm : float
    what : str
        Which side was taken, such as "edge".

    Returns
    -------
    list of artist
        The bars.
    """
    ax.clear()
    quiet(ax, keep=("bottom", "left"))
    step_mm = max(tolerance_mm / 2, np.ptp([*sizes_mm, target_mm]) / MOST_BARS)
    steps = np.round((np.asarray(sizes_mm) - target_mm) / step_mm).astype(int)
    places, counts = np.unique(steps, return_counts=True)
    low, high = target_mm - tolerance_mm, target_mm + tolerance_mm
    tallest = max([1, *counts.tolist()])
    ax.add_patch(Rectangle((low, 0), high - low, 1.25 * tallest, facecolor=LOST, zorder=0))
    middles = target_mm + places * step_mm
    bars = ax.bar(middles, counts, 0.85 * step_mm, facecolor=FOOD, edgecolor=INK, zorder=2)
    for bar, middle in zip(bars, middles, strict=True):
        if not low - 1e-9 <= middle <= high + 1e-9:
            bar.set(facecolor=ACCENT, hatch="//")
    reach = max(1.5 * tolerance_mm, float(np.abs(middles - target_mm).max(initial=0)) + step_mm)
    ax.set(xlim=(target_mm - reach, target_mm + reach), ylim=(0, 1.25 * tallest))
    ax.yaxis.set_major_locator(MaxNLocator(4, integer=True))
    ax.set_ylabel("pieces", color=INK, fontsize=10)
    ax.set_xlabel(f"{what} in millimetres; the light band is on size", color=INK, fontsize=10)
    return list(bars)
