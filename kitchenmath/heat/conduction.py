"""How far heat has come into a slab, a long cylinder or a sphere: the exact series.

All three bodies obey one formula. With s = 0, 1, 2 (the power of r in the area that heat crosses)
and the waves p(x) = cos x, J0(x), sin x / x and q = -p' = sin x, J1(x), (sin x - x cos x) / x^2:

    roots        x q(x) = Bi p(x)
    weight       C = 2 q / (x [p^2 + q^2 + (1 - s) p q / x])
    at r         p(x r / R)
    mean         (s + 1) q / x

so that theta = sum of C exp(-x^2 Fo) times the place's factor.
"""

from dataclasses import dataclass

import numpy as np

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.numeric.bessel import bessel_j0_j1, zeros_of_j0
from kitchenmath.units.door import one_of, plain_number

__all__ = ["series_terms", "theta"]

POWERS = {"slab": 0, "cylinder": 1, "sphere": 2}
PLACES = ("centre", "surface", "mean")
_MOST_TERMS = 10_000
_SHORTEST = 1e-6  # Fourier number below which the series would need thousands of terms
# Before this Fourier number the centre knows nothing yet: 1 - theta is below 2e-10 for any Bi.
_CENTRE_WAKES = 0.01


@dataclass(frozen=True)
class Modes:
    """The terms of the series for one body and one Biot number."""

    power: int
    biot: float
    roots: np.ndarray
    inner: np.ndarray  # p at the surface
    slope: np.ndarray  # q at the surface

    @property
    def norm(self):
        """The integral of p^2 over the body, times r^s."""
        p, q = self.inner, self.slope
        return (p * p + q * q + (1 - self.power) * p * q / self.roots) / 2

    @property
    def weights(self):
        """The share of each wave in a body that is at one temperature throughout."""
        return self.slope / (self.roots * self.norm)

    @property
    def mean(self):
        """The mean of each wave over the volume."""
        return (self.power + 1) * self.slope / self.roots

    def at(self, place):
        """Each wave at a place: "centre", "surface", "mean", or r / R as a number or array."""
        if isinstance(place, str):
            centre = np.ones_like(self.roots)
            return {"centre": centre, "surface": self.inner, "mean": self.mean}[place]
        return waves(self.power, np.multiply.outer(np.asarray(place, float), self.roots))[0]


def waves(power, x):
    """p(x) and q(x) of the table above."""
    if power == 0:
        return np.cos(x), np.sin(x)
    if power == 1:
        return bessel_j0_j1(x)
    sine, safe = np.sin(x), np.where(x > 0, x, 1.0)
    # Near nought sin x - x cos x loses its figures, so a few terms of its series stand in.
    short = x / 3 * (1 - x**2 / 10 * (1 - x**2 / 28 * (1 - x**2 / 54)))
    slope = np.where(x > 0.3, (sine - x * np.cos(x)) / safe**2, short)
    return np.where(x > 0, sine / safe, 1.0), slope


def make_modes(power, biot, count):
    """The first `count` terms for this body and Biot number (infinity allowed)."""
    ends = zeros_of_j0(count) if power == 1 else (np.arange(count) + (1 + power / 2) / 2) * np.pi
    roots = ends if np.isinf(biot) else _roots(power, biot, ends)
    return Modes(power, biot, roots, *waves(power, roots))


def _roots(power, biot, ends):
    """The roots of x q = Bi p, one below each zero of p: Halley's steps, kept between bounds."""
    low, high = np.concatenate([[0.0], ends[:-1]]), ends
    root = _guessed_roots(power, biot, ends)
    rising = (-1.0) ** np.arange(len(ends))
    for _ in range(60):
        p, q = waves(power, root)
        excess = root * q - biot * p
        slope = (1 - power + biot) * q + root * p
        bend = (1 - power + biot) * (p - power * q / root) + p - root * q
        low = np.where(rising * excess <= 0, root, low)
        high = np.where(rising * excess > 0, root, high)
        step = root - 2 * excess * slope / (2 * slope**2 - excess * bend)
        step = np.where((low <= step) & (step <= high), step, (low + high) / 2)
        moved = np.abs(step - root)
        root = step
        if (moved <= 1e-6 * root).all():  # the next step would be about the cube of this
            break
    return root


def _guessed_roots(power, biot, ends):
    """Roots to start from: x = (n - 1 + s / 4) pi + arctan((Bi - s / 2) / x), n from 1.

    So it is for a slab and a sphere; for a cylinder to the first order in 1 / x. The first root is
    taken from the limits of small and of large Bi instead.
    """
    turns = (np.arange(len(ends)) + power / 4) * np.pi
    root = turns + np.pi / 4
    for _ in range(3):
        root = turns + np.arctan((biot - power / 2) / root) + (power == 1) / (8 * root)
    root[0] = ends[0] / np.sqrt(1 + ends[0] ** 2 / ((power + 1) * biot))
    return root


def terms_needed(shortest_fourier, fall=30.0):
    """How many terms until the last has fallen by exp(-fall) at the shortest Fourier number."""
    return int(np.sqrt(fall / shortest_fourier) / np.pi) + 3


def series_terms(shape, biot, count=1):
    """The first roots and weights of the series, as printed in the one-term tables.

    Not to be confused: the Biot number here is h R / k with the radius or half-thickness, not
    with volume over area.

    Parameters
    ----------
    shape : str
        "slab", "cylinder" (long) or "sphere".
    biot : float, above 0
        `numpy.inf` for a surface that is at once at the surroundings' temperature.
    count : int

    Returns
    -------
    tuple of numpy.ndarray
        Roots and weights.

    Raises
    ------
    UnknownName
    OutOfRange

    Examples
    --------
    Of a sphere with Biot number 1 the equation is 1 - x cot x = 1, so x = pi / 2 and the weight
    is 4 / pi.

    >>> roots, weights = series_terms("sphere", 1)
    >>> print(round(float(roots[0]), 4), round(float(weights[0]), 4))
    1.5708 1.2732

    References
    ----------
    Carslaw and Jaeger, *Conduction of Heat in Solids* (1959), ch. III, VII and IX;
    Çengel and Ghajar, *Heat and Mass Transfer* (5th ed.), Table 4-2.
    """
    power = POWERS[one_of(shape, POWERS, "shape")]
    biot = _biot(biot, above=0)
    count = plain_number(count, "count", least=1, most=_MOST_TERMS, whole=True)
    modes = make_modes(power, float(biot), count)
    return modes.roots, modes.weights


def theta(shape, biot, fourier, position=0):
    """The difference to the surroundings that is left: 1 is untouched, 0 has their temperature.

    Plain numbers go in and come out, because nothing here has a unit.

    Parameters
    ----------
    shape : str
        "slab", "cylinder" (long) or "sphere".
    biot : float, at least 0
        h R / k, with R the half-thickness or the radius. `numpy.inf` is allowed.
    fourier : float or array
        a t / R^2: 0, or from 1e-6 up.
    position : float, array or str
        r / R from 0 at the centre to 1 at the surface; or "centre", "surface", "mean".

    Returns
    -------
    float or numpy.ndarray

    Raises
    ------
    UnknownName
    OutOfRange

    Notes
    -----
    The whole series is summed, with as many terms as the shortest time needs. The first term
    alone, as in many books, errs by 0.1-1.5 % at Fo 0.2 and grossly below; it can exceed 1, which
    no body does. The body starts at one temperature, its properties stay, nothing freezes or dries.

    Examples
    --------
    A slab with Biot number 1 at Fo 1: the first term is 1.1191 exp(-0.8603^2) = 0.534.

    >>> round(theta("slab", 1, 1.0), 4)
    0.5339

    References
    ----------
    Carslaw and Jaeger (1959), ch. III, VII and IX.
    """
    power = POWERS[one_of(shape, POWERS, "shape")]
    biot = _biot(biot, least=0)
    fourier = _as_numbers(fourier, "fourier")
    if not (np.isfinite(fourier) & ((fourier == 0) | (fourier >= _SHORTEST))).all():
        raise OutOfRange(f"fourier: needs 0 or numbers from 1e-6 up, and {fourier} came.")
    if isinstance(position, str):
        one_of(position, PLACES, "position")
    else:
        position = _as_numbers(position, "position")
        if not ((position >= 0) & (position <= 1)).all():
            raise OutOfRange(f"position: needs 0 (centre) to 1 (surface), and {position} came.")
    left = difference_left(power, float(biot), fourier, position)
    return left if left.ndim else float(left)


def _biot(biot, **bounds):
    """A Biot number, which alone among plain numbers may be endless."""
    endless = isinstance(biot, float) and biot == np.inf
    return biot if endless else plain_number(biot, "biot", **bounds)


def _as_numbers(plain, name):
    """Plain numbers as an array."""
    try:
        return np.asarray(plain, float)
    except (TypeError, ValueError, OverflowError):
        raise WrongKind(f"{name}: needs plain numbers, and {plain!r:.60} came.") from None


def difference_left(power, biot, fourier, place):
    """`theta` without the checks, for one body of the three and plain numbers."""
    fourier = np.asarray(fourier, float)
    if biot == 0 or not (fourier > 0).any():
        return np.ones(np.broadcast(fourier, 0 if isinstance(place, str) else place).shape)
    at_centre = isinstance(place, str) and place == "centre"
    untouched = fourier < (_CENTRE_WAKES if at_centre else 1e-12)
    shortest = max(fourier[fourier > 0].min(), _CENTRE_WAKES if at_centre else 0)
    modes = make_modes(power, biot, terms_needed(shortest))
    terms = np.exp(-np.multiply.outer(fourier, modes.roots**2)) * modes.weights * modes.at(place)
    # Rounding in the twelfth place must not make a factor above the whole or below none.
    return np.where(untouched, 1.0, np.clip(terms.sum(axis=-1), 0.0, 1.0))
