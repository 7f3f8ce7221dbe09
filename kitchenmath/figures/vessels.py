"""Drawings of vessels side by side: what stands in them, and how much of it."""

import numpy as np

from kitchenmath.figures.frame import ACCENT, FOOD, LOST, PAPER, Scene, put
from kitchenmath.figures.outlines import box, disc, heap, jug, wall

LAYERS = ((FOOD, ""), (LOST, "///"))
FOAM = ((FOOD, ""), (PAPER, "oo"))  # liquid below, and the bubbles above it


class Vessels(Scene):
    """Jugs or jars in a row, all to one scale, each with its layers and the words below it.

    Parameters
    ----------
    picture : Picture
    number : int
        Of vessels.
    most : float
        What fills one to the brim.
    layers : tuple of (str, str)
        Colour and hatch of each layer, from the bottom.
    outline : callable
        `jug` or `wall`.
    lines : int
        Lines of words below each.
    """

    def __init__(self, picture, number, most, layers=LAYERS, outline=jug, lines=2):
        super().__init__(picture)
        self.most, self.bottom = most, 4.2 * lines + 2
        self.pitch = 100 / number
        width = min(0.62 * self.pitch, 34)
        self.lefts = [(place + 0.5) * self.pitch - width / 2 for place in range(number)]
        self.width, self.room = width, self.high - self.bottom - 4
        self.walls = [self.line() for _ in self.lefts]
        self.filled = [[self.part(*look) for look in layers] for _ in self.lefts]
        self.labels = [self.words(left + width / 2, self.bottom - 2, va="top")
                       for left in self.lefts]  # fmt: skip
        for drawn, left in zip(self.walls, self.lefts, strict=True):
            put(drawn, outline(left, self.bottom, width, self.room))

    def show(self, amounts, words, marked=None):
        """Fill the vessels anew.

        Parameters
        ----------
        amounts : list of list of float
            For each vessel its layers from the bottom, in the unit of `most`.
        words : list of str
        marked : int, optional
            Whose words are bold.
        """
        for place, (parts, layers, label) in enumerate(
            zip(self.filled, amounts, self.labels, strict=True)
        ):
            level = self.bottom
            for part, amount in zip(parts, layers, strict=True):
                height = self.room * amount / self.most
                part.set_xy(box(self.lefts[place], level, self.width, height))
                part.set_visible(height > 0)
                level += height
            label.set(text=words[place], fontweight="bold" if place == marked else "normal")


class Pots(Scene):
    """Pots of one size side by side: how high the water stands, what swims in it, and its salt.

    Each grain stands for the same weight of salt, so a pot with more grains in the same water
    tastes saltier, and water that boils away leaves its grains behind.

    Parameters
    ----------
    picture : Picture
    number : int
        Of pots.
    lines : int
        Lines of words below each.
    """

    MOST_GRAINS = 400

    def __init__(self, picture, number, lines=3):
        super().__init__(picture)
        self.bottom, self.pitch = 4.2 * lines + 2, 100 / number
        self.width, self.room = 0.8 * self.pitch, self.high - self.bottom - 3
        self.lefts = [(place + 0.1) * self.pitch for place in range(number)]
        chance = np.random.default_rng(7)  # always the same: grains must not dance
        self.scattered = chance.uniform(0.03, 0.97, (2, self.MOST_GRAINS))
        self.water = [self.part(LOST, order=1) for _ in self.lefts]
        self.food = [self.part(PAPER, order=2) for _ in self.lefts]
        self.salt = [self.grains() for _ in self.lefts]
        self.labels = [self.words((place + 0.5) * self.pitch, self.bottom - 2, va="top")
                       for place in range(number)]  # fmt: skip
        for left in self.lefts:
            put(self.line(), wall(left, self.bottom, self.width, self.room))

    def show(self, levels, grains, words, foods=None, all_through=None):
        """Fill the pots anew.

        Parameters
        ----------
        levels : list of float
            How full each pot is, 0 to 1.
        grains : list of float
            Of salt in each pot, of `MOST_GRAINS`.
        words : list of str
        foods : list of float, optional
            How much of what is in the pot is food, 0 to 1.
        all_through : list of bool, optional
            Whether the salt is in the food too; if not, it is in the water only.
        """
        for place, left in enumerate(self.lefts):
            height = self.room * levels[place]
            self.water[place].set_xy(box(left, self.bottom, self.width, height))
            share = foods[place] if foods else 0
            middle, across, high = left + self.width / 2, 0.9 * self.width, 1.05 * share * height
            self.food[place].set_visible(bool(share))
            self.food[place].set_xy(disc(middle, self.bottom + high / 2 + 1, across, high))
            x, y = self.scattered[:, : round(grains[place])]
            x, y = left + x * self.width, self.bottom + y * height
            if share and not all_through[place]:
                inside = ((x - middle) / (across / 2)) ** 2
                inside += ((y - self.bottom - high / 2 - 1) / (high / 2)) ** 2
                x, y = x[inside > 1], y[inside > 1]
            self.salt[place].set_data(x, y)
            self.labels[place].set_text(words[place])


class Thermometers(Scene):
    """Thermometers in a row, one scale for all, with a level across them.

    Parameters
    ----------
    picture : Picture
    number : int
    most_C : float
        Where the scale ends; it begins at 0 °C.
    """

    def __init__(self, picture, number, most_C):
        super().__init__(picture)
        self.most_C, self.pitch = most_C, 100 / number
        self.bottom, self.room = 14.0, self.high - 22
        self.middles = [(place + 0.5) * self.pitch for place in range(number)]
        for middle in self.middles:
            put(self.line(width=1.2), wall(middle - 2, self.bottom, 4, self.room))
            self.part(FOOD).set_xy(disc(middle, self.bottom - 0.5, 6))
        self.columns = [self.part(FOOD) for _ in self.middles]
        self.labels = [self.words(middle, 9.5, va="top") for middle in self.middles]
        self.across = self.line("--", 1.2, ACCENT)
        self.wanted = self.words(50, self.high - 3)

    def show(self, temperatures_C, words, wanted_C, wanted):
        """Move the columns and the level.

        Parameters
        ----------
        temperatures_C : list of float
        words : list of str
            Below each.
        wanted_C : float
        wanted : str
        """
        for column, middle, degrees, label, text in zip(
            self.columns, self.middles, temperatures_C, self.labels, words, strict=True
        ):
            column.set_xy(box(middle - 1.6, self.bottom, 3.2, self.room * degrees / self.most_C))
            label.set_text(text)
        level = self.bottom + self.room * wanted_C / self.most_C
        self.across.set_data([2, 98], [level, level])
        self.wanted.set_text(wanted)


class Heaps(Scene):
    """Heaps side by side, seen from the side: twice as wide and high is eight times as much.

    Parameters
    ----------
    picture : Picture
    number : int
    most : float
        The largest heap that the picture has room for.
    """

    def __init__(self, picture, number, most):
        super().__init__(picture)
        self.most, self.pitch, self.bottom = most, 100 / number, 13.0
        self.biggest = (min(self.pitch * 0.46, self.high - 17) * 2) ** 2 / np.pi
        self.middles = [(place + 0.5) * self.pitch for place in range(number)]
        self.heaps = [self.part(LOST, "...") for _ in self.middles]
        self.labels = [self.words(middle, self.bottom - 2, va="top") for middle in self.middles]
        put(self.line(width=1.2), np.array([(2, self.bottom), (98, self.bottom)]))

    def show(self, amounts, words):
        """Heap up anew.

        Parameters
        ----------
        amounts : list of float
        words : list of str
        """
        for place, middle in enumerate(self.middles):
            area = self.biggest * (amounts[place] / self.most) ** (2 / 3)
            self.heaps[place].set_xy(heap(middle, self.bottom, area))
            self.labels[place].set_text(words[place])
