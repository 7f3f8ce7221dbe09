"""Values that others published, and the check of each.

A test module lists its values in a `PUBLISHED` tuple; `tests/measure/sources.py` gathers
all of them into `sources.md`, the page that says which source stands behind how many checks.
"""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True)
class Published:
    """One published value and how the library makes it.

    status: "seen" (read in the named source), "quoted" (read in a text that quotes it),
    "computed" (worked out with a general-purpose library or by hand from exact definitions),
    "common practice" (in wide use, no source), "handed on" (told by a reviewer, source not read),
    "memory" (recalled, not read).
    tolerance: absolute, in the unit of `expected`; `relative` instead where that is what is known.
    by: "formula" where the kit works the value out and the print is another's, so the check can
    find a wrong formula; "table" where the kit holds the same print, so it can find a slip of
    copying and no more.
    """

    name: str
    source: str
    status: str
    expected: float
    make: Callable[[], float]
    tolerance: float = 0.0
    relative: float = 0.0
    by: str = ""

    @property
    def allowed(self):
        """The largest difference that passes."""
        return max(self.tolerance, self.relative * abs(self.expected))

    @property
    def deviation(self):
        """How far the library is from the print, as an absolute difference."""
        return abs(float(self.make()) - self.expected)

    def __str__(self):
        return self.name


CHECKED_BY = ("formula", "table")
STATUSES = ("seen", "quoted", "computed", "common practice", "handed on", "memory")
