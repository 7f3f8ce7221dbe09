"""What a rule about so many pieces of a tray can and cannot tell."""

import math

from kitchenmath.cuts import spread
from kitchenmath.data.tables import table
from kitchenmath.units.door import amount, plain_number
from kitchenmath.units.registry import Q_

MOST_PIECES = 10_000  # far more than anybody measures
# Words for a share off size, borrowed from a processed-fruit grade standard (7 CFR 52.1029, as
# data/cut_bands.csv quotes it); no kitchen standard prints any.
GRADE = "processed fruit, "
CLASSES = (
    *(
        (float(row["share_percent"]) / 100, row["name"].removeprefix(GRADE))
        for row in table("cut_bands.csv")
        if row["name"].startswith(GRADE)
    ),
    (1.00, "too often off size"),
)


def class_of(off_share):
    """The word of a grade standard for a share off size (a plain share of one)."""
    return next(word for most, word in CLASSES if off_share <= most + 1e-12)


def chance_to_pass(pieces, allowed, off):
    """The chance that a tray passes a rule "at most `allowed` of `pieces` off size".

    Parameters
    ----------
    pieces : int
        How many are measured.
    allowed : int
        How many of them may be off size.
    off : Quantity [percent]
        The true share off size in the whole tray.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    A tray with exactly 10 % off size meets "at most 2 of 20" in two cases of three: the rule
    fails one good cook in three.

    >>> print(say(chance_to_pass(pieces=20, allowed=2, off=Q_(10, "percent")), 3))
    67.7 %

    Notes
    -----
    Binomial: pieces taken blindly from a tray of many more.
    """
    off_share = amount(off, "percent", "off", least=0, most=100) / 100
    pieces = plain_number(pieces, "pieces", least=1, most=MOST_PIECES, whole=True)
    allowed = plain_number(allowed, "allowed", least=0, most=pieces, whole=True)
    return Q_(100 * spread.chance_of_at_most(allowed, pieces, off_share), "percent")


def pieces_to_show(off):
    """How many pieces, every one on size, it takes to show that at most `off` of a tray is not.

    Parameters
    ----------
    off : Quantity [percent], above 0, below 100

    Returns
    -------
    int

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    0.9 to the power of 36 is 2.3 %, below 2.5 %: 36 pieces for a tray with at most 10 % off.

    >>> pieces_to_show(Q_(10, "percent"))
    36

    Notes
    -----
    The smallest n with (1 - off)ⁿ at most 2.5 %, which ends a 95 % interval of Clopper and
    Pearson at `off`.
    """
    off_share = amount(off, "percent", "off", above=0, below=100) / 100
    return math.ceil(math.log((1 - spread.CONFIDENCE) / 2) / math.log1p(-off_share) - 1e-9)
