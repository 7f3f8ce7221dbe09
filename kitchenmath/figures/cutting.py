"""Drawings for cutting: a cube beside the named cut, and ten cubes in their band."""

import numpy as np

from kitchenmath.figures.frame import ACCENT, FOOD, LOST, PAPER, Scene
from kitchenmath.figures.outlines import box, dice


class Cubes(Scene):
    """The named cut on the left and a piece on the right, enlarged alike, on one board.

    Parameters
    ----------
    picture : Picture
    """

    def __init__(self, picture):
        super().__init__(picture)
        self.bottom, self.edge = 8.0, (self.high - 12) / 1.28 / 1.45
        self.cubes = [
            [self.part(colour) for colour in colours]
            for colours in ((LOST, PAPER, LOST), (FOOD, LOST, FOOD))
        ]
        self.labels = [self.words(x, self.bottom - 2, va="top") for x in (26, 74)]

    def show(self, shares, words):
        """Put another piece beside the named cut.

        Parameters
        ----------
        shares : (float, float)
            Edges of both, in edges of the named cut; up to 1.45.
        words : (str, str)
        """
        for cube, label, share, text in zip(self.cubes, self.labels, shares, words, strict=True):
            edge = share * self.edge
            middle = label.get_position()[0]
            for part, face in zip(cube, dice(middle - 0.6 * edge, self.bottom, edge), strict=True):
                part.set_xy(face)
            label.set_text(text)


class Tray(Scene):
    """Ten cubes in two rows, to scale; the band behind their upper edges is what counts as on size.

    Parameters
    ----------
    picture : Picture
    most_mm : float
        The longest edge that there is room for.
    """

    def __init__(self, picture, most_mm):
        super().__init__(picture)
        self.scale = 0.86 * 20 / most_mm
        self.bottoms = (6.0 + (self.high - 6) / 2, 6.0)
        self.bands = [self.part(LOST, order=0) for _ in self.bottoms]
        self.levels = [self.line("--", 1.0) for _ in self.bottoms]
        self.cubes = [self.part() for _ in range(10)]
        self.crosses = self.ax.plot([], [], "x", color=ACCENT, markersize=10, markeredgewidth=2.5,
                                    zorder=5)[0]  # fmt: skip
        self.label = self.words(50, 3)

    def show(self, sizes_mm, target_mm, tolerance_mm):
        """Put ten others on the tray.

        Parameters
        ----------
        sizes_mm : list of float
        target_mm : float
        tolerance_mm : float or None
            Without it there is no band, only the dashed line at the target, and no crosses.
        """
        self._put_band(target_mm, tolerance_mm)
        off = []
        for number, size_mm in enumerate(sizes_mm):
            edge, bottom = size_mm * self.scale, self.bottoms[number // 5]
            middle = 10 + 20 * (number % 5)
            # A size on the edge of the band counts as on size, as in `judge`.
            reach = np.inf if tolerance_mm is None else tolerance_mm * (1 + 1e-6)
            on_size = abs(size_mm - target_mm) <= reach
            self.cubes[number].set_xy(box(middle - edge / 2, bottom, edge, edge))
            self.cubes[number].set_facecolor(FOOD if on_size else PAPER)
            off += [] if on_size else [(middle, bottom + edge / 2)]
        self.crosses.set_data([x for x, _ in off], [y for _, y in off])

    def _put_band(self, target_mm, tolerance_mm):
        seen = tolerance_mm is not None
        for bottom, band, level in zip(self.bottoms, self.bands, self.levels, strict=True):
            middle = bottom + target_mm * self.scale
            level.set_data([0, 100], [middle, middle])
            for part in (band, self.label):
                part.set_visible(seen)
            if seen:
                reach = tolerance_mm * self.scale
                band.set_xy(box(0, middle - reach, 100, 2 * reach))
        if seen:
            ends = [f"{target_mm + sign * tolerance_mm:.1f}" for sign in (-1, 1)]
            self.label.set_text(f"band {ends[0]} to {ends[1]} mm; a cross is off size")
