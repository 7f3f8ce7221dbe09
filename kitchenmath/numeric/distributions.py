"""Quantiles of chi-square, Student's t and beta, on the incomplete gamma and beta functions."""

import math

from kitchenmath.numeric.roots import bisect

TINY = 1e-300  # stands in for zero in the continued fractions


def chi_square_quantile(chance, freedom):
    """The value that chi-square with `freedom` degrees stays below with this chance."""
    high = 1.0 + freedom
    while regularized_gamma(freedom / 2, high / 2) < chance:
        high *= 2
    return bisect(lambda value: regularized_gamma(freedom / 2, value / 2) >= chance, 0.0, high)


def student_t_quantile(chance, freedom):
    """The value that Student's t with `freedom` degrees stays below with this chance, above 0.5.

    t² / (t² + freedom) follows a beta distribution, so t needs no function of its own.
    """
    part = beta_quantile(2 * (1 - chance), freedom / 2, 0.5)
    return math.sqrt(freedom * (1 - part) / part)


def beta_quantile(chance, alpha, beta):
    """The value that a beta distribution stays below with this chance."""
    return bisect(lambda value: regularized_beta(value, alpha, beta) >= chance, 0.0, 1.0)


def regularized_gamma(shape, value):
    """The regularised lower incomplete gamma function P(a, x), a the shape and x the value.

    Its series below a + 1, and the continued fraction above (Abramowitz and Stegun, *Handbook
    of Mathematical Functions*, 6.5.29 and 6.5.31).
    """
    if value <= 0:
        return 0.0
    front = math.exp(shape * math.log(value) - value - math.lgamma(shape))
    if value > shape + 1:
        steps = ((-k * (k - shape), value + 2 * k + 1 - shape) for k in range(1, 100_000))
        return 1 - front / _fraction(value + 1 - shape, steps)
    step, term, total = shape, 1 / shape, 1 / shape
    while term > total * 1e-17:
        step += 1
        term *= value / step
        total += term
    return front * total


def regularized_beta(value, alpha, beta):
    """The regularised incomplete beta function I_x(a, b), x the value.

    Its continued fraction (Abramowitz and Stegun 26.5.8), which is quick below the mean;
    above it the share of the other side is worked out.
    """
    if value <= 0 or value >= 1:
        return float(value >= 1)
    if value > (alpha + 1) / (alpha + beta + 2):
        return 1 - regularized_beta(1 - value, beta, alpha)
    front = alpha * math.log(value) + beta * math.log1p(-value)
    front -= math.lgamma(alpha) + math.lgamma(beta) - math.lgamma(alpha + beta)
    return math.exp(front) / (alpha * _fraction(1.0, _beta_steps(value, alpha, beta)))


def _beta_steps(value, alpha, beta):
    for pair in range(100_000):
        ahead = alpha + 2 * pair
        yield -(alpha + pair) * (alpha + beta + pair) * value / (ahead * (ahead + 1)), 1.0
        k = pair + 1
        yield k * (beta - k) * value / ((ahead + 1) * (ahead + 2)), 1.0


def _fraction(first, steps):
    """first + n1/(d1 + n2/(d2 + …)), worked from the front until it stands still (Lentz)."""
    value = upper = first if first else TINY
    lower = 0.0
    for numerator, denominator in steps:
        lower = 1 / (denominator + numerator * lower or TINY)
        upper = denominator + numerator / upper or TINY
        value *= upper * lower
        if abs(upper * lower - 1) < 1e-16:
            break
    return value
