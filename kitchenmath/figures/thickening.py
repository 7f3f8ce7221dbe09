"""Drawings for thickening: droplets crowded into a sauce, and leaves of gelatin."""

import numpy as np

from kitchenmath.figures.frame import ACCENT, FOOD, LOST, PAPER, Scene, put
from kitchenmath.figures.outlines import box, disc

TOUCH = 0.74  # share of the volume at which equal balls touch in the closest packing (Kepler)
LEAF_G = 2.0  # of the leaves as drawn


class Droplets(Scene):
    """Droplets of oil in a square of sauce, and a scale with the marks at which it changes.

    Parameters
    ----------
    picture : Picture
    marks : dict of str to float
        What happens, and from how many percent of oil on; rising.
    """

    LOW, HIGH = 35.0, 95.0  # the ends of the scale

    def __init__(self, picture, marks):
        super().__init__(picture)
        side = self.high - 12
        self.side, self.bottom = side, 9.0
        sauce = self.part(LOST, order=0)
        sauce.set_xy(box(2, self.bottom, side, side))
        step = side / 6
        self.centres = [
            (2 + (column + 0.5 + 0.5 * (row % 2)) * step, 9 + (0.5 + 5 / 6 * row) * step)
            for row in range(7)
            for column in range(6 - row % 2)
        ]
        self.step = step
        self.drops = [self.part(FOOD) for _ in self.centres]
        for drop in self.drops:
            drop.set_edgecolor(PAPER)
            drop.set_clip_path(sauce)
        self.label = self.words(2, 4, ha="left")
        self.x = side + 8
        put(
            self.line(width=1.2),
            np.array([(self.x, self._y(end)) for end in (self.LOW, self.HIGH)]),
        )
        for words, percent in marks.items():
            y = self._y(percent)
            put(self.line(width=1.2), np.array([(self.x, y), (self.x + 2, y)]))
            self.words(self.x + 3, y, f"{words} {percent:.0f} %", ha="left")
        self.pointer = self.ax.plot([], [], ">", color=ACCENT, markersize=10, zorder=5)[0]

    def _y(self, percent):
        within = min(max(percent, self.LOW), self.HIGH)
        return self.bottom + self.side * (within - self.LOW) / (self.HIGH - self.LOW)

    def show(self, oil_percent):
        """Crowd in another share of oil.

        Parameters
        ----------
        oil_percent : float
            Of the volume. Below or beyond the scale's ends the pointer stays there.
        """
        # Balls in a lattice touch at TOUCH; fuller ones press each other flat, as drawn by overlap.
        across = 0.97 * self.step * (oil_percent / 100 / TOUCH) ** (1 / 3)
        for drop, (x, y) in zip(self.drops, self.centres, strict=True):
            drop.set_xy(disc(x, y, across))
        self.pointer.set_data([self.x - 2.5], [self._y(oil_percent)])
        self.label.set_text(
            f"oil {oil_percent:.1f} % of the volume, the rest {100 - oil_percent:.1f} %"
        )


class Leaves(Scene):
    """Rows of gelatin leaves, the last one cut to what is needed; the longest row fills the width.

    Parameters
    ----------
    picture : Picture
    rows : int
    most_g : float
        The most that a row has room for.
    """

    def __init__(self, picture, rows, most_g):
        super().__init__(picture)
        number, self.rows = int(np.ceil(most_g / LEAF_G)), []
        looks = ((LOST, "xx", "-"), (FOOD, "", "-"), (PAPER, "", "--"))
        for row in range(rows):
            top = self.high - 3 - row * self.high / rows
            leaves = [self.part(*looks[row]) for _ in range(number)]
            self.rows.append((self.words(1, top, ha="left"), leaves, top - 11))

    def show(self, amounts_g, words):
        """Lay out other leaves.

        Parameters
        ----------
        amounts_g : list of float
        words : list of str
            Above each row.
        """
        pitch = 98 / (max(amounts_g) / LEAF_G)
        for (label, leaves, bottom), amount_g, text in zip(
            self.rows, amounts_g, words, strict=True
        ):
            label.set_text(text)
            for place, leaf in enumerate(leaves):
                part = min(max(amount_g / LEAF_G - place, 0), 1)
                leaf.set_visible(part > 0)
                leaf.set_xy(box(1 + place * pitch, bottom, 0.92 * pitch * part, 8))
