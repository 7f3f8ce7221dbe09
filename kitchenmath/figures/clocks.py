"""Clock faces in a row: a slice for the minutes that pass, and a hand for a limit."""

from kitchenmath.figures.frame import ACCENT, FOOD, LOST, PAPER, Scene
from kitchenmath.figures.outlines import dice, disc, wedge


class Clocks(Scene):
    """Faces of an hour, each with the minutes that pass, perhaps a limit, and words below.

    Parameters
    ----------
    picture : Picture
    number : int
    lines : int
        Lines of words below each face.
    cubes_mm : float, optional
        The largest cube that may stand above a face; room is left for it.
    """

    def __init__(self, picture, number, lines=3, cubes_mm=None):
        super().__init__(picture)
        pitch, bottom = 100 / number, 4.2 * lines + 3
        self.cubes_mm, above = cubes_mm, 18 if cubes_mm else 0
        self.across = min(0.84 * pitch, self.high - bottom - 3 - above)
        self.middles = [(place + 0.5) * pitch for place in range(number)]
        self.y = bottom + self.across / 2
        for middle in self.middles:
            self.part(PAPER, order=1).set_xy(disc(middle, self.y, self.across))
        self.slices = [self.part(FOOD) for _ in self.middles]
        self.limits = [self.line(width=3, colour=ACCENT, order=5) for _ in self.middles]
        self.cubes = [[self.part(LOST) for _ in "fts"] for _ in self.middles if cubes_mm]
        self.labels = [self.words(middle, bottom - 2, va="top") for middle in self.middles]

    def show(self, minutes, words, limits_min=None, edges_mm=()):
        """Move the hands.

        Parameters
        ----------
        minutes : list of float
            An hour or more fills the face.
        words : list of str
        limits_min : list of float, optional
            A thick hand; what is past it is hatched. An hour and more shows no hand.
        edges_mm : list of float, optional
            Of the cube above each face.
        """
        for place, middle in enumerate(self.middles):
            passed = minutes[place]
            self.slices[place].set_xy(wedge(middle, self.y, 0.94 * self.across, passed / 60))
            if limits_min is not None:
                late = passed > limits_min[place]
                self.slices[place].set(
                    facecolor=LOST if late else FOOD, hatch="///" if late else ""
                )
                x, y = wedge(middle, self.y, self.across, limits_min[place] / 60)[-1]
                hand = ([middle, x], [self.y, y]) if limits_min[place] < 60 else ([], [])
                self.limits[place].set_data(*hand)
            self.labels[place].set_text(words[place])
        for place, edge_mm in enumerate(edges_mm):
            edge = 11 * edge_mm / self.cubes_mm
            faces = dice(self.middles[place] - 0.6 * edge, self.high - 16, edge)
            for part, face in zip(self.cubes[place], faces, strict=True):
                part.set_xy(face)
