"""The drawing of an order: packs as they are bought, and what is left over in them."""

from kitchenmath.figures.frame import FOOD, LOST, Scene
from kitchenmath.figures.outlines import box


class Packs(Scene):
    """A row of packs for each item: what is used is dark, what is left over hatched.

    Parameters
    ----------
    picture : Picture
    rows : int
    most : int
        Packs that a row has room for.
    """

    def __init__(self, picture, rows, most):
        super().__init__(picture)
        self.pitch, step = 98 / most, self.high / rows
        self.rows = []
        for row in range(rows):
            top = self.high - row * step - 2.4
            used = [self.part(FOOD) for _ in range(most)]
            left = [self.part(LOST, "////") for _ in range(most)]
            self.rows.append((self.words(1, top, ha="left"), used, left, top - step + 4.0))
        self.height = step - 6.8

    def show(self, packs, spare, words):
        """Order anew.

        Parameters
        ----------
        packs : list of int
            Bought of each item.
        spare : list of float
            Packs' worth that is left over.
        words : list of str
            Above each row.
        """
        for (label, used, left, bottom), number, over, text in zip(
            self.rows, packs, spare, words, strict=True
        ):
            label.set_text(text)
            for place, (dark, light) in enumerate(zip(used, left, strict=True)):
                share = min(max(number - over - place, 0), 1)
                wide, x = 0.86 * self.pitch, 1 + place * self.pitch
                dark.set_xy(box(x, bottom, wide * share, self.height))
                light.set_xy(box(x + wide * share, bottom, wide * (1 - share), self.height))
                dark.set_visible(place < number and share > 0)
                light.set_visible(place < number and share < 1)
