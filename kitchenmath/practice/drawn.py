"""Things to draw for a student that are no amounts: a name, and two trays of cut pieces."""

import hashlib
from dataclasses import dataclass

from kitchenmath.conventions.college import OURS, Conventions
from kitchenmath.practice import look_words
from kitchenmath.practice.choices import Choices, Drawn
from kitchenmath.units.saying import figures

WAYS = 60  # pairs of trays to draw from
PIECES = 10
# Off size, in mm, in the tray that fails; what stands at the edge of the band brings its mean to 3.
OFF_MM = ((2, 4), (2, 2, 4), (2, 2, 4, 4), (2, 2, 2, 4, 4), (2, 2, 2, 4, 4, 4))
EDGES_MM = ((3.5, 2.5), (3.5, 3.5), (3.5, 2.5), (3.5, 3.5), (3.5, 2.5))


class Word(str):
    """A word that was drawn; it shows itself without quotes."""

    __repr__ = str.__str__


class CutName(Word, Drawn):
    """The name of a cut, which knows the sizes of a class."""

    college: Conventions = OURS

    def in_college(self, college):
        """The same name with the sizes of a class."""
        mine = CutName(self)
        mine.college = college
        return mine

    def sized(self, name=None):
        """This cut, or one of another name, with the sizes of the class."""
        return self.college.cut(name or str(self))


def words(names, label):
    """Names to draw one from.

    Parameters
    ----------
    names : iterable of str
    label : str

    Returns
    -------
    Choices

    Examples
    --------
    >>> words(["julienne", "brunoise"], "the cut").values
    (julienne, brunoise)
    """
    return Choices(tuple(Word(name) for name in names), label)


def cut_names(names, label):
    """Names of cuts to draw one from, each with the sizes of the class that draws it.

    Parameters
    ----------
    names : iterable of str
    label : str

    Returns
    -------
    Choices
    """
    return Choices(tuple(CutName(name) for name in names), label)


@dataclass(frozen=True, repr=False)
class Trays(Drawn):
    """The edges of ten pieces from each of two trays.

    Attributes
    ----------
    first, second : tuple of float
        In mm, as they are shown: tray A and tray B.
    around_mm : float
        What they were meant to be.
    """

    first: tuple
    second: tuple
    around_mm: float = 3.0

    def in_college(self, college):
        """The same pieces, each as far off the brunoise of a class."""
        off = college.brunoise_mm - self.around_mm
        trays = (tuple(size + off for size in tray) for tray in (self.first, self.second))
        return Trays(*trays, college.brunoise_mm)

    def __repr__(self):
        first, second = (
            ", ".join(figures(each) for each in tray) for tray in (self.first, self.second)
        )
        return look_words.TWO_TRAYS.format(first=first, second=second)


def two_trays(label):
    """Invented pairs of trays of brunoise: one passes, and the other has the better mean.

    Parameters
    ----------
    label : str

    Returns
    -------
    Choices

    Notes
    -----
    A piece is on size at 3 mm ± 0.5 mm, and a tray passes with one of ten off at most. By SHA-256,
    so that they are the same everywhere.

    Examples
    --------
    By hand: 2.5 and 3.5 are on size, 2 and 4 are off.

    >>> two_trays("two trays").values[0]
    tray A: 3, 4, 2, 3, 3, 3, 3, 3, 2.5, 3.5 mm; tray B: 3, 3.5, 3, 3, 4, 3.5, 3, 3, 3.5, 3.5 mm
    """
    return Choices(tuple(_pair(way) for way in range(WAYS)), label)


def _pair(way):
    dice = hashlib.sha256(f"trays|{way}".encode()).digest()
    even = [(3.0, 3.5)[die % 2] for die in dice[: PIECES - 2]] + [3.5, (4.0, 3.5)[dice[9] % 2]]
    kind = way % len(OFF_MM)
    apart = [*map(float, OFF_MM[kind]), *EDGES_MM[kind]]
    apart += [3.0] * (PIECES - len(apart))
    pair = _shuffled(even, dice), _shuffled(apart, dice[16:])
    return Trays(*(pair if dice[11] % 2 else pair[::-1]))


def _shuffled(sizes, dice):
    return tuple(size for _, size in sorted(zip(dice, sizes, strict=False), key=lambda one: one[0]))
