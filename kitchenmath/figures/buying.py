"""Drawings for buying: roots and their peel, the plates they feed, and a bird taken apart."""

import numpy as np

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, Scene
from kitchenmath.figures.outlines import breast, carcass, disc, leg

ROOT_KG = 1.0  # of the roots as drawn


class Roots(Scene):
    """Two orders of roots, the peel hatched around what is left, and the plates that each feeds.

    Parameters
    ----------
    picture : Picture
    most_kg : float
        The largest order that there is room for.
    """

    def __init__(self, picture, most_kg):
        super().__init__(picture)
        number = int(np.ceil(most_kg / ROOT_KG))
        self.pitch = 98 / number
        self.rows = []
        for order in range(2):
            top = self.high - 3 - order * self.high / 2
            self.rows.append({
                "words": self.words(1, top, ha="left"),
                "peel": [self.part(LOST, "////", order=1) for _ in range(number)],
                "core": [self.part(FOOD) for _ in range(number)],
                "fed": self.ax.plot([], [], "o", color=INK, markersize=3.5)[0],
                "unfed": self.ax.plot([], [], "x", color=ACCENT, markersize=4.5)[0],
                "top": top,
            })  # fmt: skip

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
        for row, order_kg, plates, text in zip(self.rows, orders_kg, fed, words, strict=True):
            row["words"].set_text(text)
            middle = row["top"] - 9
            for place, (peel, core) in enumerate(zip(row["peel"], row["core"], strict=True)):
                # The last one is as small as what is still needed.
                part = min(max(order_kg / ROOT_KG - place, 0), 1)
                across = 0.94 * self.pitch * np.sqrt(part)
                x = 1 + (place + 0.5) * self.pitch
                peel.set_visible(part > 0)
                core.set_visible(part > 0)
                peel.set_xy(disc(x, middle, across))
                core.set_xy(disc(x, middle, across * np.sqrt(left_share)))
            y = middle - 8
            spots = 2 + 1.62 * np.arange(covers)
            row["fed"].set_data(spots[:plates], np.full(min(plates, covers), y))
            row["unfed"].set_data(spots[plates:], np.full(max(covers - plates, 0), y))


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
