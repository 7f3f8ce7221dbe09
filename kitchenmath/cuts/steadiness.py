"""Is the hand steady? Limits for pieces in the order they were cut, and for tray after tray.

A control chart asks one question: did something change? A dull knife, a tired hand or a new
sack of carrots shows as a point outside the limits. It does not ask whether the cut is the
right size: `judge` and `capability` do.
"""

import itertools
import math
from dataclasses import dataclass

from kitchenmath.cuts.tray import measured_mm
from kitchenmath.data.tables import table
from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import amount, one_of, plain_number
from kitchenmath.units.registry import Q_, Quantity

# Constants of the standard chart tables for ranges of two (NIST/SEMATECH e-Handbook, 6.3.2).
D2_OF_TWO, D4_OF_TWO = 1.128, 3.267


@dataclass(frozen=True)
class Limits:
    """The centre line of a chart and the limits that chance alone hardly ever passes."""

    centre: Quantity | float
    low: Quantity | float
    high: Quantity | float


@dataclass(frozen=True)
class PieceLimits(Limits):
    """Limits for single pieces, and for the step from one piece to the next."""

    step: Quantity
    step_high: Quantity


def piece_limits(measurements, column=None, unit=None):
    """Limits for single pieces in the order they were cut.

    Parameters
    ----------
    measurements : sequence of Quantity [length], array Quantity [length], or path of a CSV file
        At least two, in order: sorted pieces say nothing.
    column, unit : str, optional
        For a CSV file, as in `judge`.

    Returns
    -------
    PieceLimits
        `centre`, `low`, `high`; `step` is the mean step between neighbours and `step_high` the
        step that is too large for chance. All in mm.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName
    Unreadable

    Examples
    --------
    3, 4, 3, 4 mm: mean 3.5, every step 1, so 3.5 ± 3 · 1/1.128 = 0.84 to 6.16 mm.

    >>> chart = piece_limits(Q_([3, 4, 3, 4], "mm"))
    >>> print(say(chart.low, 2), say(chart.high, 3), say(chart.step_high))
    0.84 mm 6.16 mm 3.267 mm

    References
    ----------
    NIST/SEMATECH *e-Handbook of Statistical Methods*, 6.3.2.2.
    """
    sizes_mm = measured_mm(measurements, column, unit)
    if len(sizes_mm) < 2:
        raise OutOfRange("measurements: needs two pieces at least to see a step between them.")
    mean_mm = math.fsum(sizes_mm) / len(sizes_mm)
    steps_mm = [abs(b - a) for a, b in itertools.pairwise(sizes_mm)]
    step_mm = math.fsum(steps_mm) / len(steps_mm)
    reach_mm = 3 * step_mm / D2_OF_TWO
    lengths_mm = (mean_mm, mean_mm - reach_mm, mean_mm + reach_mm, step_mm, D4_OF_TWO * step_mm)
    return PieceLimits(*(Q_(length, "mm") for length in lengths_mm))


def fault_limits(faults, trays):
    """Limits for the number of faults on one tray, when all trays are alike.

    Parameters
    ----------
    faults : int
        On all trays together.
    trays : int

    Returns
    -------
    Limits
        Plain numbers; the lower one is never below 0.

    Raises
    ------
    OutOfRange

    Examples
    --------
    400 faults on 25 trays: 16 a tray, ± 3 · √16, so 4 to 28.

    >>> fault_limits(faults=400, trays=25)
    Limits(centre=16.0, low=4.0, high=28.0)

    References
    ----------
    NIST/SEMATECH *e-Handbook of Statistical Methods*, 6.3.3.1.
    """
    faults = plain_number(faults, "faults", least=0)
    mean = faults / plain_number(trays, "trays", least=1)
    return Limits(mean, max(0.0, mean - 3 * math.sqrt(mean)), mean + 3 * math.sqrt(mean))


def off_size_limits(off, pieces):
    """Limits for the share off size in one sample, when all samples come from alike trays.

    Parameters
    ----------
    off : Quantity [percent], at least 0, at most 100
        The mean share off size of many samples.
    pieces : int
        In each sample.

    Returns
    -------
    Limits
        In percent, held between 0 and 100 %.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    20 % off in samples of 25: 20 ± 3 · √(0.2 · 0.8 / 25) = 20 ± 24, so 0 to 44 %.

    >>> print(say(off_size_limits(Q_(20, "percent"), pieces=25).high))
    44 %

    References
    ----------
    NIST/SEMATECH *e-Handbook of Statistical Methods*, 6.3.3.2.
    """
    mean = amount(off, "percent", "off", least=0, most=100) / 100
    pieces = plain_number(pieces, "pieces", least=1)
    reach = 3 * math.sqrt(mean * (1 - mean) / pieces)
    shares = (mean, max(0.0, mean - reach), min(1.0, mean + reach))
    return Limits(*(Q_(100 * each, "percent") for each in shares))


def sd_from_ranges(mean_range, pieces):
    """The standard deviation behind the mean range (largest less smallest) of small samples.

    Parameters
    ----------
    mean_range : Quantity [length]
    pieces : int, 2 to 10
        In each sample.

    Returns
    -------
    Quantity
        In the unit of `mean_range`.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName
        For a sample of another number of pieces.

    Examples
    --------
    Five pieces of a bell-shaped lot range over 2.326 standard deviations in the mean.

    >>> print(say(sd_from_ranges(Q_(2.326, "mm"), pieces=5)))
    1 mm

    References
    ----------
    As data/range_factors.csv.
    """
    factors = {int(row["pieces"]): float(row["d2"]) for row in table("range_factors.csv")}
    amount(mean_range, "mm", "mean_range", least=0)
    return mean_range / factors[one_of(pieces, factors, "pieces")]


def capability(mean, sd, low, high):
    """How well a steady hand fits between two limits: Cp for the spread, Cpk with the centre too.

    Parameters
    ----------
    mean, sd : Quantity [length]
    low, high : Quantity [length]
        The limits that a piece must keep.

    Returns
    -------
    tuple of float
        (Cp, Cpk). At 1 the limits lie three standard deviations from the centre, or from the
        mean; Cpk below Cp says that the hand is off centre. The 1.33 that industry asks of a
        machine (common practice) is asked of no hand.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    Limits 8 and 20, mean 16, sd 2: 12/12 = 1, and the nearer limit is 4/6 = 0.667 away.

    >>> cp, cpk = capability(Q_(16, "mm"), Q_(2, "mm"), low=Q_(8, "mm"), high=Q_(20, "mm"))
    >>> round(cp, 3), round(cpk, 3)
    (1.0, 0.667)

    References
    ----------
    NIST/SEMATECH *e-Handbook of Statistical Methods*, 6.1.6.
    """
    mean_mm, sd_mm = amount(mean, "mm", "mean"), amount(sd, "mm", "sd", above=0)
    low_mm, high_mm = amount(low, "mm", "low"), amount(high, "mm", "high")
    if low_mm >= high_mm:
        raise OutOfRange("low: needs to be below `high`; are the two limits the wrong way round?")
    nearer_mm = min(high_mm - mean_mm, mean_mm - low_mm)
    return (high_mm - low_mm) / (6 * sd_mm), nearer_mm / (3 * sd_mm)
