"""Judging a tray of cuts: how large, how even, and how much so few pieces can say."""

import math
from dataclasses import dataclass

from kitchenmath.cuts import spread
from kitchenmath.cuts.named import Cut, cut_named
from kitchenmath.cuts.sampling import CLASSES, class_of, pieces_to_show
from kitchenmath.cuts.tray import measured_mm
from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import amount, one_of, share
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import figures, say


@dataclass(frozen=True)
class Judgement:
    """What a sample of pieces says about a tray. Intervals are 95 % intervals, as (low, high).

    Attributes
    ----------
    count : int
        Pieces measured.
    target, tolerance : Quantity [mm]
        A piece within target ± tolerance counts as on size.
    mean, sd : Quantity [mm]
        `sd` is the sample standard deviation (n - 1), of the readings as they came.
    mean_interval, sd_interval : tuple of Quantity [mm]
    cv : Quantity [percent]
        Coefficient of variation, sd over mean: evenness, whatever the size.
    cv_interval : tuple of Quantity [percent]
    within : int
        Pieces on size.
    within_share : Quantity [percent]
    within_interval : tuple of Quantity [percent]
    doubtful : int
        Pieces that the ruler's resolution could put on either side of the band's edge.
    resolution : Quantity [mm] or None
    """

    count: int
    target: Quantity
    tolerance: Quantity
    mean: Quantity
    mean_interval: tuple
    sd: Quantity
    sd_interval: tuple
    cv: Quantity
    cv_interval: tuple
    within: int
    within_share: Quantity
    within_interval: tuple
    doubtful: int
    resolution: Quantity | None

    @property
    def verdict(self):
        """The judgement in words, which never claims more than the pieces can carry."""
        return " ".join(filter(None, (self._size(), self._evenness(), self._band(), self._ruler())))

    def __str__(self):
        return self.verdict

    def _size(self):
        low, high = self.mean_interval
        gap = self.mean - self.target
        words = f"{self.count} pieces, mean {say(self.mean, 3)} against {say(self.target)}: "
        blind = self.resolution / 2 if self.resolution is not None else 0 * gap
        if low <= self.target <= high or abs(gap) <= blind:
            return words + "on size as far as they can tell."
        return words + f"cut {say(abs(gap), 2)} too {'large' if gap > 0 else 'small'}."

    def _evenness(self):
        if self.sd == 0 * self.sd:
            return "All readings are alike: the ruler is too coarse to see any spread."
        return f"Coefficient of variation {say(self.cv, 2)} ({_between(self.cv_interval)})."

    def _band(self):
        on_size = (
            f"{self.within} of {self.count} lie within ± {say(self.tolerance, 2)}: "
            f"{say(self.within_share, 2)} ({_between(self.within_interval)})."
        )
        off = [1 - each.to("percent").magnitude / 100 for each in self.within_interval]
        best, worst = class_of(off[1]), class_of(off[0])
        if best == worst:
            return f"{on_size} That is {best}, and {self.count} pieces are enough to say so."
        seen = class_of(1 - self.within / self.count)
        words = f"{on_size} It looks {seen}, but {self.count} pieces cannot settle it: "
        words += f"the tray may be anything from {best} to {worst}."
        if seen == CLASSES[0][1]:
            needed = pieces_to_show(Q_(100 * CLASSES[0][0], "percent"))
            words += f" To show {seen} takes {needed} pieces at least, and all of them on size."
        return words

    def _ruler(self):
        if self.resolution is None or self.sd == 0 * self.sd:
            return ""
        rounding = self.resolution / math.sqrt(12)
        words = f"Reading to {say(self.resolution)} alone makes a spread of {say(rounding, 2)}"
        if rounding > self.sd / 2:
            words += ", half of what was seen or more: read finer"
        if self.doubtful:
            words += f", and leaves {self.doubtful} of {self.count} on the edge of the band"
        return words + "."


def judge(measurements, cut, tolerance, *, dimension=None, column=None, unit=None, resolution=None):
    """Judge a sample of cut pieces: size, evenness, share within a band, and a verdict in words.

    One number is never enough: a tray can be even and too large, or right on average and wild.

    Parameters
    ----------
    measurements : sequence of Quantity [length], array Quantity [length], or path of a CSV file
        One length a piece, at least two pieces, taken blindly from the whole tray and not picked.
    cut : str, Cut or Quantity [length]
        What was asked for: a name of `CUTS`, a cut of your own, or the size itself.
    tolerance : Quantity [length or percent]
        Half the width of the band, in mm or in percent of the size. No kitchen standard fixes
        one: say it to the class before they cut.
    dimension : str, optional
        Which size was measured, such as "length" of a stick; else the cut's first one.
    column, unit : str, optional
        For a CSV file: the column, and the unit of its plain numbers.
    resolution : Quantity [length], optional
        The smallest step that the ruler was read to.

    Returns
    -------
    Judgement

    Raises
    ------
    WrongKind
    OutOfRange
        For fewer than two pieces, or lengths that are not above nought.
    UnknownName
        For an unknown cut or column, or a dimension that the cut leaves open.
    Unreadable
        For a file or a cell that is no length.

    Examples
    --------
    Ten cubes: mean 3.0 mm; squared distances add to 0.92, so sd = √(0.92/9) = 0.32 mm, 10.7 %.

    >>> edges = Q_([3.0, 3.2, 2.6, 3.4, 3.1, 2.8, 2.5, 3.5, 2.9, 3.0], "mm")
    >>> tray = judge(edges, "brunoise", tolerance=Q_(0.5, "mm"))
    >>> print(say(tray.sd, 3), say(tray.cv, 3), tray.within)
    0.32 mm 10.7 % 10

    All ten are on size, and yet a tray with three in ten off could show that.

    >>> print(say(tray.within_interval[0], 2))
    69 %

    Notes
    -----
    The standard deviation's limits come from chi-square, those of the coefficient of variation
    from McKay's approximation (good up to 30 %), those of the mean from Student's t: all three
    take the sizes to be bell-shaped. The share's limits (Clopper and Pearson) do not.
    A size on the edge of the band is on size.

    References
    ----------
    NIST/SEMATECH *e-Handbook of Statistical Methods*, 7.1 and 7.2; Vangel, *The American
    Statistician* 50 (1996); Clopper and Pearson, *Biometrika* 26 (1934).
    """
    target_mm = _target_mm(cut, dimension)
    tolerance_mm = _tolerance_mm(tolerance, target_mm)
    step_mm = None if resolution is None else amount(resolution, "mm", "resolution", above=0)
    sizes_mm = measured_mm(measurements, column, unit)
    if len(sizes_mm) < 2:
        raise OutOfRange("measurements: needs two pieces at least, since one shows no spread.")
    return _judgement(sizes_mm, target_mm, tolerance_mm, step_mm)


def _target_mm(cut, dimension):
    if isinstance(cut, Quantity):
        return amount(cut, "mm", "cut", above=0)
    cut = cut_named(cut) if isinstance(cut, str | Cut) else amount(cut, "mm", "cut")
    fixed = [key for key in cut.dimensions if key != "faces"]
    return (
        cut.dimensions[one_of(fixed[0] if dimension is None else dimension, fixed, "dimension")]
        .to("mm")
        .magnitude
    )


def _tolerance_mm(tolerance, target_mm):
    if isinstance(tolerance, Quantity) and tolerance.check(""):
        return share(tolerance, "tolerance") * target_mm
    return amount(tolerance, "mm", "tolerance", above=0)


def _judgement(sizes_mm, target_mm, tolerance_mm, step_mm):
    count = len(sizes_mm)
    mean, sd = spread.mean_and_sd(sizes_mm)
    # A millionth of the band is floating point and no cook's fault: 3.3 mm is within 3 ± 0.3.
    past_edge = [abs(size - target_mm) - tolerance_mm for size in sizes_mm]
    within = sum(past <= 1e-6 * tolerance_mm for past in past_edge)
    doubtful = sum(abs(past) < (step_mm or 0) / 2 * (1 - 1e-6) for past in past_edge)
    return Judgement(
        count,
        Q_(target_mm, "mm"),
        Q_(tolerance_mm, "mm"),
        Q_(mean, "mm"),
        _pair(spread.mean_limits(mean, sd, count), 1, "mm"),
        Q_(sd, "mm"),
        _pair(spread.sd_limits(sd, count), 1, "mm"),
        Q_(100 * sd / mean, "percent"),
        _pair(spread.cv_limits(sd / mean, count), 100, "percent"),
        within,
        Q_(100 * within / count, "percent"),
        _pair(spread.share_limits(within, count), 100, "percent"),
        doubtful,
        None if step_mm is None else Q_(step_mm, "mm"),
    )


def _pair(limits, times, unit):
    return tuple(Q_(times * limit, unit) for limit in limits)


def _between(interval):
    low, high = interval
    if math.isinf(high.magnitude):
        return f"95 % interval from {say(low, 2)}, with no upper end"
    return f"95 % interval {figures(low.magnitude, 2)} to {say(high, 2)}"
