"""Mean, spread, and how far a few pieces can be trusted: plain numbers in, plain numbers out.

The limits need quantiles of three distributions. They are found by halving an interval on the
incomplete gamma and beta functions: slower than a clever method, and easy to check.
"""

import math

CONFIDENCE = 0.95  # of every interval that the kit quotes; common practice
TINY = 1e-300  # stands in for nought in the continued fractions


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
    tail = (1 - CONFIDENCE) / 2
    # t² / (t² + n - 1) follows a beta distribution, so Student's t needs no function of its own.
    part = beta_quantile(2 * tail, (count - 1) / 2, 0.5)
    reach = math.sqrt((count - 1) * (1 - part) / part) * sd / math.sqrt(count)
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
    return beta_share(1 - share, count - hits, hits + 1) if hits < count else 1.0


def chi_square_quantile(chance, freedom):
    """The value that chi-square with `freedom` degrees stays below with this chance."""
    high = 1.0 + freedom
    while gamma_share(freedom / 2, high / 2) < chance:
        high *= 2
    return _halving(lambda value: gamma_share(freedom / 2, value / 2), chance, 0.0, high)


def beta_quantile(chance, a, b):
    """The value that a beta distribution stays below with this chance."""
    return _halving(lambda value: beta_share(value, a, b), chance, 0.0, 1.0)


def _halving(rising, wanted, low, high):
    """Where a rising function reaches a value, to the last bit."""
    while low < (middle := (low + high) / 2) < high:
        if rising(middle) < wanted:
            low = middle
        else:
            high = middle
    return middle


def gamma_share(a, x):
    """The regularised lower incomplete gamma function P(a, x).

    Its series below a + 1, and the continued fraction above (Abramowitz and Stegun, *Handbook
    of Mathematical Functions*, 6.5.29 and 6.5.31).
    """
    if x <= 0:
        return 0.0
    front = math.exp(a * math.log(x) - x - math.lgamma(a))
    if x > a + 1:
        steps = ((-k * (k - a), x + 2 * k + 1 - a) for k in range(1, 100_000))
        return 1 - front / _fraction(x + 1 - a, steps)
    step, term, total = a, 1 / a, 1 / a
    while term > total * 1e-17:
        step += 1
        term *= x / step
        total += term
    return front * total


def beta_share(x, a, b):
    """The regularised incomplete beta function I_x(a, b).

    Its continued fraction (Abramowitz and Stegun 26.5.8), which is quick below the mean;
    above it the share of the other side is worked out.
    """
    if x <= 0 or x >= 1:
        return float(x >= 1)
    if x > (a + 1) / (a + b + 2):
        return 1 - beta_share(1 - x, b, a)
    front = a * math.log(x) + b * math.log1p(-x)
    front -= math.lgamma(a) + math.lgamma(b) - math.lgamma(a + b)
    return math.exp(front) / (a * _fraction(1.0, _beta_steps(x, a, b)))


def _beta_steps(x, a, b):
    for m in range(100_000):
        yield -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)), 1.0
        k = m + 1
        yield k * (b - k) * x / ((a + 2 * k - 1) * (a + 2 * k)), 1.0


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
