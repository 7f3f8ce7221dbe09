"""Mean, spread, and how far a few pieces can be trusted: plain numbers in, plain numbers out."""

import math

from kitchenmath.numeric.distributions import (
    beta_quantile,
    chi_square_quantile,
    regularized_beta,
    student_t_quantile,
)

CONFIDENCE = 0.95  # of every interval that the kit quotes; common practice


def mean_and_sd(values):
    """Mean and sample standard deviation (n - 1) of at least two floats, safe with large ones.

    The short formula (mean of the squares less the square of the mean) loses every figure of
    10000000.1, 10000000.3, …; taking the mean off first keeps them.
    """
    count = len(values)
    mean = math.fsum(values) / count
    apart = [value - mean for value in values]
    # The mean itself is rounded; its remainder is taken off again.
    squares = math.fsum(each * each for each in apart) - math.fsum(apart) ** 2 / count
    return mean, math.sqrt(max(0.0, squares) / (count - 1))


def mean_limits(mean, sd, count):
    """Limits between which the mean of the whole tray lies (Student's t)."""
    reach = student_t_quantile((1 + CONFIDENCE) / 2, count - 1) * sd / math.sqrt(count)
    return mean - reach, mean + reach


def sd_limits(sd, count):
    """Limits of the standard deviation, from chi-square; true for bell-shaped sizes."""
    tail = (1 - CONFIDENCE) / 2
    return tuple(
        sd * math.sqrt((count - 1) / chi_square_quantile(chance, count - 1))
        for chance in (1 - tail, tail)
    )


def cv_limits(cv, count):
    """Limits of a coefficient of variation (a plain ratio), from chi-square.

    McKay's approximation in Vangel's form (*The American Statistician* 50, 1996, 21): within
    1 % of the exact limits for ten pieces and more and a ratio up to 0.3.
    The upper one is infinite where the sample is too small or too uneven to give any.
    """
    tail = (1 - CONFIDENCE) / 2
    limits = []
    for chance in (1 - tail, tail):
        chi = chi_square_quantile(chance, count - 1)
        below_root = ((chi + 2) / count - 1) * cv**2 + chi / (count - 1)
        limits.append(cv / math.sqrt(below_root) if below_root > 0 else math.inf)
    return tuple(limits)


def share_limits(hits, count):
    """Limits of a share of which `hits` in `count` were seen (Clopper and Pearson, exact).

    Never narrower than it claims, which a normal approximation is at ten pieces.
    """
    tail = (1 - CONFIDENCE) / 2
    low = beta_quantile(tail, hits, count - hits + 1) if hits else 0.0
    high = beta_quantile(1 - tail, hits + 1, count - hits) if hits < count else 1.0
    return low, high


def chance_of_at_most(hits, count, share):
    """The chance of at most `hits` in `count` when each is a hit with the chance `share`."""
    return regularized_beta(1 - share, count - hits, hits + 1) if hits < count else 1.0
