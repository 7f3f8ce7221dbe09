"""What invented records are drawn with: by SHA-256 onto kitchen steps, the same everywhere."""

import hashlib
from dataclasses import dataclass

from kitchenmath.conventions.college import OURS, Conventions
from kitchenmath.practice.choices import Drawn
from kitchenmath.units.registry import Q_

__all__ = ["WAYS", "Dice", "Lines", "as_read", "reads_fahrenheit"]

WAYS = 60  # of each kind of record


@dataclass(frozen=True, repr=False)
class Lines(Drawn):
    """Several `lines` under one label, drawn by their number as a class reads them.

    Sixty are made to draw one of, for each class: so a kind works its lines out when it is asked.
    """

    way: int
    college: Conventions = OURS

    def in_college(self, college):
        """The same by a class's limits and in its scale."""
        return type(self)(self.way, college)

    def __repr__(self):
        return "".join(f"\n    {line}" for line in self.lines)


class Dice:
    """Draws that follow from a name."""

    def __init__(self, name):
        self.name, self.thrown = name, 0

    def below(self, number):
        self.thrown += 1
        digest = hashlib.sha256(f"{self.name}|{self.thrown}".encode()).digest()
        return int.from_bytes(digest[:8], "big") % number

    def one(self, things):
        return things[self.below(len(things))]

    def shuffled(self, things):
        left, drawn = list(things), []
        while left:
            drawn.append(left.pop(self.below(len(left))))
        return drawn

    def between(self, first, last, step):
        """One of the steps from first to last."""
        return first + step * self.below(round((last - first) / step) + 1)


def reads_fahrenheit(college):
    """Whether a class reads °F first."""
    return college.units_first == "us"


def as_read(celsius, college):
    """A temperature as a class's probe shows it: in whole °F where it reads these."""
    if not reads_fahrenheit(college):
        return Q_(celsius, "degC")
    return Q_(float(round(Q_(celsius, "degC").to("degF").magnitude)), "degF")
