"""The drawing of a dough: what is weighed, and how many rolls come of it."""

from kitchenmath.figures.frame import FOOD, INK, LOST, PAPER, Scene
from kitchenmath.figures.outlines import bowl, box, heap


class Dough(Scene):
    """A heap of flour, a bowl of water and the rest; below them the tray with its rolls.

    Parameters
    ----------
    picture : Picture
    most_kg : float
        The largest weight that the picture has room for.
    """

    ACROSS = 24  # rolls in a row of the tray

    def __init__(self, picture, most_kg):
        super().__init__(picture)
        self.most_kg, self.bottom = most_kg, self.high - 24
        self.middles = (20, 56, 86)
        looks = ((PAPER, "..."), (LOST, "---"), (FOOD, ""))
        self.parts = [self.part(*look) for look in looks]
        self.labels = [self.words(x, self.bottom - 2, va="top") for x in self.middles]
        self.part(PAPER, order=1).set_xy(box(2, 1, 96, self.bottom - 16))
        self.wanted = self.ax.plot([], [], "o", color=FOOD, markersize=6, markeredgecolor=INK)[0]
        self.extra = self.ax.plot([], [], "o", color=PAPER, markersize=6, markeredgecolor=INK)[0]
        self.rolls = self.words(2, self.bottom - 12.4, ha="left")

    def show(self, weights_kg, words, rolls, made, tray):
        """Weigh another dough.

        Parameters
        ----------
        weights_kg : list of float
            Flour, water, the rest.
        words : list of str
            Below each.
        rolls, made : int
            What is wanted, and what the slip makes.
        tray : str
        """
        shapes = (heap, bowl, heap)
        biggest = 230.0
        for place, shape in enumerate(shapes):
            area = biggest * weights_kg[place] / self.most_kg
            self.parts[place].set_xy(shape(self.middles[place], self.bottom, area))
            self.labels[place].set_text(words[place])
        x = [4.5 + 3.95 * (each % self.ACROSS) for each in range(made)]
        y = [self.bottom - 17.6 - 3.9 * (each // self.ACROSS) for each in range(made)]
        self.wanted.set_data(x[:rolls], y[:rolls])
        self.extra.set_data(x[rolls:], y[rolls:])
        self.rolls.set_text(tray)
