"""The drawing of an order: packs as they are bought, and what is left over in them."""

from kitchenmath.figures.frame import FOOD, LOST, Scene
from kitchenmath.figures.outlines import box

WORDS_WIDE = 60  # of the picture, before the packs


class Packs(Scene):
    """A row of upright packs for each item: what is used is dark, what is left over hatched.

    Parameters
    ----------
    picture : Picture
    rows : int
    most : int
        Packs that a row has room for.
    """

    def __init__(self, picture, rows, most):
        super().__init__(picture)
        self.pitch, step = (99 - WORDS_WIDE) / most, self.high / rows
        self.rows = []
        for row in range(rows):
            middle = self.high - (row + 0.5) * step
            used = [self.part(FOOD) for _ in range(most)]
            left = [self.part(LOST, "////") for _ in range(most)]
            label = self.words(1, middle, ha="left")
            self.rows.append((label, used, left, middle - 0.4 * step))
        self.height = 0.8 * step

    def show(self, packs, spare, words):
        """Order anew.

        Parameters
        ----------
        packs : list of int
            Bought of each item.
        spare : list of float
            Packs' worth that is left over.
        words : list of str
            Before each row.
        """
        for (label, used, left, bottom), number, over, text in zip(
            self.rows, packs, spare, words, strict=True
        ):
            label.set_text(text)
            for place, (dark, light) in enumerate(zip(used, left, strict=True)):
                share = min(max(number - over - place, 0), 1)
                wide, x = 0.8 * self.pitch, WORDS_WIDE + place * self.pitch
                dark.set_xy(box(x, bottom, wide * share, self.height))
                light.set_xy(box(x + wide * share, bottom, wide * (1 - share), self.height))
                dark.set_visible(place < number and share > 0)
                light.set_visible(place < number and share < 1)
