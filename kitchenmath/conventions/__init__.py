"""The college's conventions: what a class calls a brunoise, a price, a limit and an oven.

They are a line of data that travels: from the class's file into a set's first cell, into the
edition, and from there into every number that is drawn and every limit that is quoted.
"""

from kitchenmath.conventions.college import (
    OURS,
    Conventions,
    as_text,
    college_here,
    conventions_of,
    countries,
)
from kitchenmath.conventions.in_words import words_of

__all__ = [
    "OURS",
    "Conventions",
    "as_text",
    "college_here",
    "conventions_of",
    "countries",
    "words_of",
]
