"""Drawings for measuring and scaling: bowls to compare, and two pans side by side."""

import numpy as np

from kitchenmath.figures.frame import FOOD, LOST, Scene, put
from kitchenmath.figures.outlines import bowl, box, handle, wall
from kitchenmath.numeric.roots import bisect


class Bowls(Scene):
    """Full bowls in a row; how much is in each is seen by its size, and said below.

    Parameters
    ----------
    picture : Picture
    number : int
    """

    def __init__(self, picture, number):
        super().__init__(picture)
        self.bottom, self.pitch = 18.0, 100 / number
        self.biggest = (0.92 * self.pitch) ** 2 * 3.14159 / 8
        self.middles = [(place + 0.5) * self.pitch for place in range(number)]
        self.bowls = [self.part() for _ in self.middles]
        self.labels = [self.words(middle, self.bottom - 2, va="top") for middle in self.middles]

    def show(self, amounts, words, marked):
        """Fill other bowls.

        Parameters
        ----------
        amounts : list of float
            In any unit; the largest fills its place.
        words : list of str
        marked : int
            Which one is right: it is dark, the others are hatched.
        """
        most = max(amounts) or 1.0
        for place, middle in enumerate(self.middles):
            right = place == marked
            self.bowls[place].set(facecolor=FOOD if right else LOST, hatch="" if right else "///")
            area = max(self.biggest * amounts[place] / most, 0.3)
            self.bowls[place].set_xy(bowl(middle, self.bottom, area))
            self.labels[place].set(text=words[place], fontweight="bold" if right else "normal")


class Pans(Scene):
    """Two pans cut through the middle, to scale, with what stands in them.

    Parameters
    ----------
    picture : Picture
    most_cm : float
        How wide both may be together.
    """

    BETWEEN = 13.0  # room for a handle

    def __init__(self, picture, most_cm):
        super().__init__(picture)
        self.bottom, self.scale = 16.0, (100 - 2 * self.BETWEEN - 4) / most_cm
        self.liquids = [self.part(FOOD) for _ in "ab"]
        self.walls = [self.line(width=2.5) for _ in "ab"]
        self.handles = [self.line(width=4) for _ in "ab"]
        self.labels = [self.words(va="top", ha="left") for _ in "ab"]

    def show(self, widths_cm, depths_cm, words):
        """Move both pans.

        Parameters
        ----------
        widths_cm, depths_cm : (float, float)
            Across, and how deep the liquid stands.
        words : list of str
            Below each.
        """
        left = 2.0
        for place in range(2):
            width, depth = widths_cm[place] * self.scale, depths_cm[place] * self.scale
            rim = max(width / 2, depth + 1.5)
            self.liquids[place].set_xy(box(left, self.bottom, width, depth))
            put(self.walls[place], wall(left, self.bottom, width, rim))
            put(self.handles[place], handle(left + width, self.bottom + rim, self.BETWEEN - 4))
            # The card's pan keeps its place; the other's words never run into the card's.
            self.labels[place].set(x=(2.0, 44.0)[place], y=self.bottom - 2, text=words[place])
            left += width + self.BETWEEN


class Spoon(Scene):
    """A round spoon cut through, and what lies in it, level.

    Parameters
    ----------
    picture : Picture
    """

    def __init__(self, picture):
        super().__init__(picture)
        self.across, self.middle = 1.6 * (self.high - 6), 36.0
        self.rim = self.high - 5
        self.filled = self.part(FOOD)
        turn = np.linspace(np.pi, 2 * np.pi, 61)
        shape = np.column_stack([np.cos(turn), np.sin(turn)]) * self.across / 2
        put(self.line(width=2.5), shape + np.array([self.middle, self.rim]))
        put(
            self.line(width=4),
            np.array([(self.middle + self.across / 2, self.rim), (96, self.rim + 2)]),
        )

    def show(self, full_percent):
        """Fill the spoon to another share of its volume.

        Parameters
        ----------
        full_percent : float
            A round spoon is half a ball: at a depth of h radii it holds h² (3 - h) / 2.
        """
        depth = bisect(lambda h: h * h * (3 - h) / 2 >= full_percent / 100, 0.0, 1.0)
        turn = np.linspace(np.pi + np.arcsin(1 - depth), 2 * np.pi - np.arcsin(1 - depth), 61)
        level = np.column_stack([np.cos(turn), np.sin(turn)]) * self.across / 2
        self.filled.set_xy(level + np.array([self.middle, self.rim]))
