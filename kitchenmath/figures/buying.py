"""Drawings for buying: roots and their peel, the plates they feed, and a bird taken apart."""

import numpy as np

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, Scene
from kitchenmath.figures.outlines import breast, carcass, disc, leg

ROOTS_G = (50, 100, 200, 250, 500, 1000)  # of the roots as drawn: the smallest that find room


class Roots(Scene):
    """Two orders of roots, the peel hatched around what is left, and the plates that each feeds.

    The larger order fills the width, whatever it weighs; a line says what one root stands for.

    Parameters
    ----------
    picture : Picture
    """

    MOST, TALLEST = 9, 13.0  # roots in a row; across, of the largest

    def __init__(self, picture):
        super().__init__(picture)
        self.rows = []
        for order in range(2):
            top = self.high - 3 - order * (self.high - 4) / 2
            self.rows.append({
                "words": self.words(1, top, ha="left"),
                "peel": [self.part(LOST, "////", order=1) for _ in range(self.MOST)],
                "core": [self.part(FOOD) for _ in range(self.MOST)],
                "fed": self.ax.plot([], [], "o", color=INK, markersize=3.5)[0],
                "unfed": self.ax.plot([], [], "x", color=ACCENT, markersize=4.5)[0],
                "top": top,
            })  # fmt: skip
        self.each = self.words(1, 2.4, ha="left")

    def show(self, orders_kg, left_share, fed, covers, words):
        """Buy anew.

        Parameters
        ----------
        orders_kg : (float, float)
        left_share : float
            What trimming leaves, 0 to 1.
        fed : (int, int)
            How many plates each order feeds.
        covers : int
        words : list of str
        """
        root_g = next(each for each in ROOTS_G if max(orders_kg) * 1000 <= each * self.MOST)
        self.pitch = 98 / np.ceil(max(orders_kg) * 1000 / root_g)
        self.each.set_text(f"Each root is {root_g} g, each dot a plate.")
        spots = 1 + 98 / covers * (np.arange(covers) + 0.5)
        for row, order_kg, plates, text in zip(self.rows, orders_kg, fed, words, strict=True):
            row["words"].set_text(text)
            self._lay_out(row, 1000 * order_kg / root_g, left_share)
            y = row["top"] - 17
            row["fed"].set_data(spots[:plates], np.full(min(plates, covers), y))
            row["unfed"].set_data(spots[plates:], np.full(max(covers - plates, 0), y))

    def _lay_out(self, row, roots, left_share):
        """So many roots in a row; the last one is as small as what is still needed."""
        for place, (peel, core) in enumerate(zip(row["peel"], row["core"], strict=True)):
            part = min(max(roots - place, 0), 1)
            across = min(0.94 * self.pitch, self.TALLEST) * np.sqrt(part)
            x, y = 1 + (place + 0.5) * self.pitch, row["top"] - 9
            peel.set_visible(part > 0)
            core.set_visible(part > 0)
            peel.set_xy(disc(x, y, across))
            core.set_xy(disc(x, y, across * np.sqrt(left_share)))


class Bird(Scene):
    """A bird taken apart: each part as large as its share of the weight, with its money below.

    Parameters
    ----------
    picture : Picture
    """

    def __init__(self, picture):
        super().__init__(picture)
        self.title = self.words(2, self.high - 3, ha="left")
        self.middles, self.y = (14, 41, 70, 91), self.high - 19
        self.shapes = (breast, leg, carcass, disc)
        looks = ((FOOD, ""), (LOST, ""), (PAPER, "///"), (PAPER, "xxx"))
        self.parts = [self.part(*look) for look in looks]
        self.labels = [self.words(x, self.y - 12, va="top") for x in self.middles]
        self.foot = [self.words(2, 7.6 - 4.6 * row, ha="left") for row in range(2)]

    def show(self, shares, title, words, foot):
        """Take another bird apart.

        Parameters
        ----------
        shares : list of float
            Of the weight: breast, legs, carcass, the rest; 1 in all.
        title : str
        words : list of str
            Below each part.
        foot : list of str
            Two lines below all.
        """
        self.title.set_text(title)
        for place, shape in enumerate(self.shapes):
            area = 760 * shares[place]
            size = 2 * np.sqrt(area / np.pi) if shape is disc else area
            self.parts[place].set_xy(shape(self.middles[place], self.y, size))
            self.labels[place].set_text(words[place])
        for label, text in zip(self.foot, foot, strict=True):
            label.set_text(text)
