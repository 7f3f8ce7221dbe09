"""The drawing for squaring off: a carrot from the side and from its ends."""

from kitchenmath.figures.frame import FOOD, LOST, PAPER, Scene
from kitchenmath.figures.outlines import box, carrot, disc


class Carrot(Scene):
    """A carrot from the side, the square inside it, what falls off; and both ends.

    Parameters
    ----------
    picture : Picture
    most_mm : float
        The thickest that there is room for.
    """

    LONG = 64.0  # from the side; how long it really is plays no part

    def __init__(self, picture, most_mm):
        super().__init__(picture)
        self.y = self.high - 17
        self.scale = min(30 / most_mm, 2 * (self.high - self.y - 1) / most_mm)
        self.whole = self.part(LOST, "///", order=1)
        self.inside = self.part(FOOD)
        self.thick, self.thin = self.part(LOST, "///", order=1), self.part(PAPER, line="--")
        self.square = self.part(FOOD, order=1.5)
        self.thin.set_facecolor("none")
        self.thin.set_zorder(4)
        self.labels = [self.words(2, self.y - 18 - 4.4 * row, ha="left", va="top")
                       for row in range(3)]  # fmt: skip

    def show(self, sizes_mm, words):
        """Move the carrot.

        Parameters
        ----------
        sizes_mm : (float, float, float)
            Across the thick end, the thin end, and the side of the square.
        words : list of str
        """
        thick, thin, side = (size * self.scale for size in sizes_mm)
        self.whole.set_xy(carrot(1, self.y, self.LONG, thick, thin))
        self.inside.set_xy(box(1, self.y - side / 2, self.LONG, side))
        self.thick.set_xy(disc(83, self.y, thick))
        self.thin.set_xy(disc(83, self.y, thin))
        self.square.set_xy(box(83 - side / 2, self.y - side / 2, side, side))
        for label, text in zip(self.labels, words, strict=True):
            label.set_text(text)
