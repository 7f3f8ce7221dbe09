"""Drawings of lesson 9: a pot that cools, a cold room's night, a probe in two glasses, a menu."""

import numpy as np

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, Scene, put, quiet
from kitchenmath.figures.outlines import box, disc, wall

SMALL = {"fontsize": 10, "color": INK}


class CoolingCurve(Scene):
    """A pot cut through beside its curve, and what the two stages forbid.

    Parameters
    ----------
    picture : Picture
    stages : sequence of (float, float)
        Degrees and hours of each stage.
    most_h : float
        Where the clock ends.
    """

    START_C = 57

    def __init__(self, picture, stages, most_h):
        super().__init__(picture)
        self.stages = stages
        put(self.line(), wall(2, 16, 20, 34))
        self.sauce = self.part(FOOD)
        self.depth = self.words(12, 12)
        self.room = self.words(12, 6)
        self.ax_of_clock(picture, most_h)
        self.told = self.words(63, self.high - 4)

    def ax_of_clock(self, picture, most_h):
        """The clock: hours below, degrees beside, and what is forbidden hatched."""
        ax = self.clock = picture.axes(left=0.36, bottom=0.22, right=0.97, top=0.86)
        quiet(ax, keep=("bottom", "left"))
        ax.set(xlim=(0, most_h), ylim=(0, 60), xticks=range(0, int(most_h) + 1, 2),
               yticks=(5, 21, 57))  # fmt: skip
        ax.set_xlabel("hours after 57 °C", **SMALL)
        ax.set_ylabel("°C", **SMALL)
        ends = [hours for _, hours in self.stages[1:]] + [most_h]
        for (degrees, hours), end in zip(self.stages, ends, strict=True):
            ax.fill_between([hours, end], degrees, 60, facecolor=LOST, edgecolor=INK, hatch="///",
                            linewidth=0.5)  # fmt: skip
        self.curve = ax.plot([], [], color=FOOD, linewidth=2.5, zorder=4)[0]

    def show(self, hours, degrees_C, depth_mm, told, room):
        """Cool anew.

        Parameters
        ----------
        hours, degrees_C : sequence of float
            Of the middle, from the moment at 57 °C.
        depth_mm : float
        told, room : str
        """
        self.curve.set_data(hours, degrees_C)
        self.sauce.set_xy(box(2, 16, 20, 34 * depth_mm / 220))
        self.depth.set_text(f"{depth_mm:.0f} mm deep")
        self.room.set_text(room)
        self.told.set_text(told)


class NightLog:
    """What a cold room was, what was read of it, and the stretch of which nobody knows.

    Parameters
    ----------
    picture : Picture
    limit_C : float
    """

    def __init__(self, picture, limit_C):
        self.ax = picture.axes(left=0.12, bottom=0.2, right=0.97, top=0.84)
        quiet(self.ax, keep=("bottom", "left"))
        self.ax.set(xlim=(-10, 490), ylim=(0, 16), yticks=(0, limit_C, 10, 15),
                    xticks=range(0, 481, 120))  # fmt: skip
        self.ax.set_xticklabels(["22:00", "00:00", "02:00", "04:00", "06:00"])
        self.ax.axhline(limit_C, color=INK, linewidth=1)
        self.ax.set_ylabel("°C", **SMALL)
        self.unknown = self.ax.axvspan(0, 1, facecolor=LOST, hatch="///", edgecolor=INK)
        self.room = self.ax.plot([], [], "--", color=ACCENT, linewidth=1.5)[0]
        self.read = self.ax.plot([], [], "o", color=FOOD, markersize=8, zorder=5)[0]
        self.told = picture.figure.text(0.5, 0.93, "", ha="center", va="center", **SMALL)

    def show(self, minutes, room_C, read_min, read_C, unknown_min, told):
        """Another night.

        Parameters
        ----------
        minutes, room_C : sequence of float
            What the room was.
        read_min, read_C : sequence of float
            What somebody read.
        unknown_min : (float, float)
            From the last reading in order to the first that is out.
        told : str
        """
        self.room.set_data(minutes, room_C)
        self.read.set_data(read_min, read_C)
        self.unknown.set_x(unknown_min[0])
        self.unknown.set_width(unknown_min[1] - unknown_min[0])
        self.told.set_text(told)


class TwoGlasses(Scene):
    """One probe in melting ice and in boiling water: what it shows, and what is true.

    Parameters
    ----------
    picture : Picture
    """

    LEFTS, WIDE, BOTTOM, HIGH = (12, 62), 26, 14, 24

    def __init__(self, picture):
        super().__init__(picture)
        self.dials, self.labels = [], []
        for place, left in enumerate(self.LEFTS):
            self.part(LOST, order=1).set_xy(box(left, self.BOTTOM, self.WIDE, self.HIGH - 4))
            self._fill(place, left)
            put(self.line(), wall(left, self.BOTTOM, self.WIDE, self.HIGH))
            middle = left + self.WIDE / 2
            stem = self.line(width=2.5, order=5)
            put(stem, np.array([(middle, self.BOTTOM + 8), (middle, self.BOTTOM + self.HIGH + 6)]))
            self.part(PAPER, order=5).set_xy(disc(middle, self.BOTTOM + self.HIGH + 13, 26, 14))
            self.dials.append(self.words(middle, self.BOTTOM + self.HIGH + 13, fontweight="bold"))
            self.labels.append(self.words(middle, self.BOTTOM - 2, va="top"))

    def _fill(self, place, left):
        """Lumps of ice on the left, bubbles on the right."""
        chance = np.random.default_rng(9)
        for x, y in chance.uniform(0, 1, (14, 2)):
            x, y = left + 1 + x * (self.WIDE - 7), self.BOTTOM + 1 + y * (self.HIGH - 10)
            shape = disc(x + 2, y + 2, 2.4) if place else box(x, y, 4.4, 4.0)
            self.part(PAPER, order=2).set_xy(shape)

    def show(self, shown, words):
        """Hold the probe in anew.

        Parameters
        ----------
        shown : (str, str)
            On the dial, in ice and in boiling water.
        words : (str, str)
            Below each glass.
        """
        for dial, label, text, told in zip(self.dials, self.labels, shown, words, strict=True):
            dial.set_text(text)
            label.set_text(told)


class Matrix(Scene):
    """Dishes by allergens: a full dot where a dish holds one, a ring where its label tells.

    Parameters
    ----------
    picture : Picture
    dishes : sequence of str
    columns : int
        Allergens that there is room for.
    """

    def __init__(self, picture, dishes, columns):
        super().__init__(picture)
        self.top = self.high - 27
        self.pitch, self.step = 58 / columns, (self.top - 8) / len(dishes)
        self.dishes = dishes
        self.heads = [self.words(0, self.top + 2, rotation=90, va="bottom") for _ in range(columns)]
        self.rows, self.labels = [], []
        for row, dish in enumerate(dishes):
            y = self.top - (row + 0.5) * self.step
            put(self.line(width=0.5), np.array([(1, y - self.step / 2), (99, y - self.step / 2)]))
            self.labels.append(self.words(1, y, dish, ha="left"))
            self.rows.append([self.part(order=4) for _ in range(columns)])
        self.words(50, 3.5, "full: holds it; ring: read the label")

    def show(self, names, rows, marked):
        """Fill the fields.

        Parameters
        ----------
        names : sequence of str
            The allergens that the menu meets.
        rows : list of dict of str to str
            For each dish, "holds", "label" or "".
        marked : int
            Whose name is bold.
        """
        for place, head in enumerate(self.heads):
            x = 41 + (place + 0.5) * self.pitch
            head.set(text=names[place] if place < len(names) else "", x=x)
        for number, (row, dots, label) in enumerate(zip(rows, self.rows, self.labels, strict=True)):
            label.set_fontweight("bold" if number == marked else "normal")
            y = self.top - (number + 0.5) * self.step
            for place, dot in enumerate(dots):
                how = row.get(names[place], "") if place < len(names) else ""
                dot.set_visible(bool(how))
                dot.set_facecolor(INK if how == "holds" else PAPER)
                dot.set_xy(disc(41 + (place + 0.5) * self.pitch, y, 3.4))
