"""The drawing of a salometer: how deep it sinks in a glass of brine, and what that means."""

import numpy as np

from kitchenmath.figures.frame import ACCENT, LOST, PAPER, Scene, put
from kitchenmath.figures.outlines import box, disc, wall


class Salometer(Scene):
    """A stem with its degrees in a glass of brine; beside it the scale of percent.

    Parameters
    ----------
    picture : Picture
    full_percent : float
        What 100° stands for, where the scale of percent ends.
    """

    STEM = 26.0  # from 0 to 100 degrees, in the picture

    def __init__(self, picture, full_percent):
        super().__init__(picture)
        self.full_percent, self.surface = full_percent, 43.0
        self.part(LOST, order=0).set_xy(box(4, 2, 34, self.surface - 2))
        put(self.line(), wall(4, 2, 34, self.high - 4))
        self.stem, self.bulb = self.part(PAPER), self.part(PAPER)
        self.marks = [self.line(width=1.0) for _ in range(6)]
        self.numbers = [self.words(ha="right") for _ in self.marks]
        self.pointer = self.line(width=2, colour=ACCENT, order=5)
        self.read = self.words(46, self.surface + 3, ha="left", va="bottom", fontweight="bold")
        self.scale = np.array([46.0, 96.0])
        row = self.surface - 16
        put(self.line(width=1.2), np.array([(self.scale[0], row), (self.scale[1], row)]))
        for percent in range(0, int(full_percent) + 1, 5):
            x = self._place(percent)
            put(self.line(width=1.0), np.array([(x, row), (x, row - 1.5)]))
            self.words(x, row - 4, str(percent))
        self.words(46, row - 8.5, "percent of salt", ha="left")
        self.dot = self.ax.plot([], [], "o", color=ACCENT, markersize=9, zorder=5)[0]
        self.row, self.holds = row, self.words(y=row + 4, fontweight="bold")

    def _place(self, percent):
        return self.scale[0] + (self.scale[1] - self.scale[0]) * percent / self.full_percent

    def show(self, shown_degrees, percent):
        """Sink or lift the stem.

        Parameters
        ----------
        shown_degrees : float
            Where the surface of the brine meets the stem; 0 in plain water, where it sinks most.
        percent : float
            Of salt in the brine.
        """
        at_nought = self.surface + self.STEM * shown_degrees / 100
        foot = at_nought - self.STEM
        self.stem.set_xy(box(19, foot - 2, 5, self.STEM + 3.5))
        self.bulb.set_xy(disc(21.5, foot - 7, 11, 12))
        for number, (mark, label) in enumerate(zip(self.marks, self.numbers, strict=True)):
            y = at_nought - self.STEM * number / 5
            mark.set_data([19, 21.5], [y, y])
            label.set(x=17.5, y=y, text=str(20 * number))
        self.pointer.set_data([24, 45], [self.surface, self.surface])
        self.read.set_text(f"the stem shows {shown_degrees:g}°")
        x = self._place(percent)
        self.dot.set_data([x], [self.row])
        self.holds.set(x=min(max(x, 58), 84), text=f"it holds {percent:.1f} %")
