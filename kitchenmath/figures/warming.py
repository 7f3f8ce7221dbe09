"""Drawings of lesson 8: a fillet and a roast cut through, and thickness against time."""

import numpy as np
from matplotlib.colors import ListedColormap

from kitchenmath.figures.frame import ACCENT, FOOD, INK, PAPER, Scene, quiet
from kitchenmath.figures.outlines import box, disc

SMALL = {"fontsize": 10, "color": INK}
BAND_C = 10  # a band of colour for each ten degrees, from 0 to 100 °C
# From raw and dark to done and light, so that the order is seen in grey too.
BANDS = ("#4a1021", "#6d1a2c", "#8e2c35", "#ad4540", "#c5654e", "#d6875f", "#e2a777", "#ebc497",
         "#f3dfbe", "#fbf5e6")  # fmt: skip
COLOURS = ListedColormap(BANDS)


class Scale(Scene):
    """A scene with the scale of temperatures along its foot."""

    def __init__(self, picture):
        super().__init__(picture)
        for band, colour in enumerate(BANDS):
            self.part(colour).set_xy(box(6 + 8.6 * band, 7, 8.6, 4))
        for band in range(0, 11, 2):
            self.words(6 + 8.6 * band, 4, f"{band * BAND_C}")
        self.words(98.5, 9, "°C", ha="right")

    def picture_of(self, rows):
        """An image of temperatures in °C, in bands, not yet placed."""
        return self.ax.imshow(rows, cmap=COLOURS, vmin=0, vmax=100, interpolation="nearest",
                              aspect="auto", origin="lower", zorder=1)  # fmt: skip

    def settle(self):
        """Matplotlib fits the axes to an image; put them back."""
        self.ax.set(xlim=(0, 100), ylim=(0, self.high))


class Fillet(Scale):
    """A fillet cut through from face to face, its colour by temperature, true in its thickness.

    Parameters
    ----------
    picture : Picture
    most_mm : float
        The thickest that there is room for.
    """

    LONG = 60.0

    def __init__(self, picture, most_mm):
        super().__init__(picture)
        self.scale, self.y = (self.high - 18) / most_mm, 14 + (self.high - 18) / 2
        self.inside = self.picture_of(np.zeros((61, 1)))
        self.edge = self.part(PAPER)
        self.edge.set_facecolor("none")
        self.thick = self.line(width=1.2)
        self.labels = [self.words(x=68, ha="left") for _ in range(3)]
        self.settle()

    def show(self, places_mm, inside_C, bath_C, mean_C):
        """Warm the fillet.

        Parameters
        ----------
        places_mm, inside_C : sequence of float
            From face to face, from the centre.
        bath_C, mean_C : float
        """
        fine_mm = np.linspace(places_mm[0], places_mm[-1], 61)
        self.inside.set_data(np.interp(fine_mm, places_mm, inside_C)[:, None])
        half = places_mm[-1] * self.scale
        self.inside.set_extent((2, 2 + self.LONG, self.y - half, self.y + half))
        self.settle()
        self.edge.set_xy(box(2, self.y - half, self.LONG, 2 * half))
        self.thick.set_data([65, 65], [self.y - half, self.y + half])
        words = (
            f"surface {inside_C[-1]:.0f} °C\nin a bath of {bath_C:.0f} °C",
            f"middle {min(inside_C):.0f} °C",
            f"mean {mean_C:.0f} °C",
        )
        for label, text, y in zip(self.labels, words, (12, 2, -4), strict=True):
            label.set(text=text, y=self.y + y)


class Roast(Scale):
    """A roast cut through when it leaves the oven, and the clock of its core, mean and surface.

    Parameters
    ----------
    picture : Picture
    """

    DOTS = 120

    def __init__(self, picture):
        super().__init__(picture)
        self.labels = [self.words(18, self.high - 3.5 - 4.4 * row) for row in range(2)]
        across = np.linspace(-1, 1, self.DOTS)
        self.radius = np.hypot(*np.meshgrid(across, across))
        self.inside = self.picture_of(np.zeros((self.DOTS, self.DOTS)))
        self.inside.set_extent((2, 34, 16, 48))
        self.part("none", order=3).set_xy(disc(18, 32, 32))
        self.settle()
        bottom = 21 / self.high
        self.clock = picture.axes(left=0.46, bottom=bottom, right=0.985, top=0.84)
        quiet(self.clock, keep=("bottom", "left"))
        styles = {"surface": (INK, ":", 2), "mean": (ACCENT, "--", 1.5), "core": (FOOD, "-", 2.5)}
        self.lines = {
            name: self.clock.plot([], [], style, color=colour, linewidth=wide)[0]
            for name, (colour, style, wide) in styles.items()
        }
        self.pulled = self.clock.axvline(0, color=INK, linewidth=0.8)
        self.clock.set(xlim=(0, 250), ylim=(0, 102), xticks=(0, 60, 120, 180, 240),
                       yticks=(0, 50, 100))  # fmt: skip
        self.words(
            40, self.high - 5, "°C by minutes: core full,\nmean dashed, surface dotted", ha="left"
        )

    def show(self, minutes, curves_C, cut_C, pulled_min, words):
        """Roast anew.

        Parameters
        ----------
        minutes : sequence of float
        curves_C : dict of str to sequence of float
            "core", "mean" and "surface" at those times.
        cut_C : (float, float, float)
            Core, mean and surface of the piece as it is cut through.
        pulled_min : float
        words : (str, str)
        """
        core_C, mean_C, surface_C = cut_C
        # The power of the radius with which a round has this core, mean and surface.
        power = max(2 * (surface_C - core_C) / max(mean_C - core_C, 0.1) - 2, 0.5)
        round_C = core_C + (surface_C - core_C) * np.minimum(self.radius, 1) ** power
        self.inside.set_data(np.where(self.radius <= 1, round_C, np.nan))
        for name, line in self.lines.items():
            line.set_data(minutes, curves_C[name])
        self.pulled.set_xdata([pulled_min, pulled_min])
        for label, text in zip(self.labels, words, strict=True):
            label.set_text(text)


class Thickness:
    """Time against thickness: by the square, and where the surface passes little heat.

    Parameters
    ----------
    picture : Picture
    thick_mm : sequence of float
        Where the curves are drawn.
    """

    def __init__(self, picture, thick_mm):
        self.thick_mm = thick_mm
        self.ax = picture.axes(left=0.16, bottom=0.17, top=0.7, right=0.98)
        quiet(self.ax, keep=("bottom", "left"))
        self.squared = self.ax.plot([], [], color=FOOD, linewidth=2.5)[0]
        self.gentle = self.ax.plot([], [], "--", color=INK, linewidth=1.5)[0]
        self.dots = [self.ax.plot([], [], mark, color=ACCENT, markersize=9, clip_on=False,
                                  zorder=5)[0] for mark in ("s", "o")]  # fmt: skip
        self.labels = [picture.figure.text(0.02, 0.95 - 0.085 * row, "", va="center", **SMALL)
                       for row in range(3)]  # fmt: skip
        self.labels[2].set_text("line: by the square; dashed: weak surface")
        self.ax.set_xlim(9, 51)
        self.ax.set_xlabel("thickness (mm)", **SMALL)
        self.ax.set_ylabel("minutes", **SMALL)

    def show(self, squared_min, gentle_min, known, new):
        """Move curves and dots.

        Parameters
        ----------
        squared_min, gentle_min : sequence of float
        known, new : (float, float)
            Thickness and time: the piece that was timed, the piece asked for.
        """
        self.squared.set_data(self.thick_mm, squared_min)
        self.gentle.set_data(self.thick_mm, gentle_min)
        marks = (("timed (square)", known), ("asked (dot)", new))
        for dot, label, (name, (thick, minutes)) in zip(
            self.dots, self.labels[:2], marks, strict=True
        ):
            dot.set_data([thick], [minutes])
            label.set_text(f"{name}: {thick:.0f} mm, {minutes:.0f} min")
        # The scale doubles when the curve would leave it, so that small steps do not shake it.
        most = next(end for end in (60, 120, 180) if max(squared_min) <= end or end == 180)
        self.ax.set(ylim=(0, most), yticks=range(0, most + 1, most // 6))
