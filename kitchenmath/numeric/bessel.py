"""The Bessel functions J0 and J1 and the zeros of J0, for cylinders, with numpy alone."""

from functools import cache

import numpy as np

# Midpoints of a quarter circle. The integrands repeat, so the midpoint rule errs by J64(x) only.
_SINES = np.sin((np.arange(16) + 0.5) * np.pi / 32)
_FAR = 25.0  # up to here the integral, beyond it Hankel's series (its error is below 1e-15 there)


def _hankel_terms(order, count=16):
    """The coefficients of Hankel's series for J of this order (Abramowitz and Stegun 9.2.5)."""
    terms = [1.0]
    for k in range(1, count):
        terms.append(terms[-1] * (4 * order**2 - (2 * k - 1) ** 2) / (8 * k))
    signs = [1 if k % 4 < 2 else -1 for k in range(count)]  # + + - - with k = 0, 1, 2, 3
    return np.array(terms) * signs


# One column an order; even powers of 1 / x go with the one wave, odd powers with the other.
_HANKEL = np.stack([_hankel_terms(0), _hankel_terms(1)], axis=1)


def bessel_j0_j1(argument):
    """J0(x) and J1(x) for an argument x of at least 0, good to 1e-14.

    Up to 25 by Bessel's integral, J0(x) = mean of cos(x sin t) and J1(x) = mean of
    sin(x sin t) sin t over a quarter circle; beyond by Hankel's expansion.

    Parameters
    ----------
    argument : numpy.ndarray

    Returns
    -------
    tuple of numpy.ndarray

    References
    ----------
    Abramowitz and Stegun, *Handbook of Mathematical Functions* (1964), 9.1.18, 9.2.5-9.2.10.
    """
    x = np.asarray(argument, float)
    both = np.empty((2, *x.shape))
    near = x <= _FAR
    angles = np.multiply.outer(x[near], _SINES)
    both[:, near] = np.cos(angles).mean(axis=-1), np.sin(angles) @ _SINES / len(_SINES)
    if not near.all():
        both[:, ~near] = _far_j0_j1(x[~near])
    return both[0], both[1]


def _far_j0_j1(x):
    """J0 and J1 by Hankel's series."""
    even, odd = np.zeros((2, 2, x.size))
    square = 1 / x**2
    for k in range(len(_HANKEL) - 2, -1, -2):
        even = even * square + _HANKEL[k][:, None]
        odd = odd * square + _HANKEL[k + 1][:, None]
    odd = odd / x
    sine, cosine = np.sin(x), np.cos(x)
    # cos and sin of x - pi/4 (J0) and x - 3 pi/4 (J1), each times the square root of two.
    turned = np.stack([cosine + sine, sine - cosine])
    return (even * turned - odd * np.stack([turned[1], -turned[0]])) / np.sqrt(np.pi * x)


@cache
def zeros_of_j0(count):
    """The first `count` x at which J0(x) = 0.

    From McMahon's first two terms, then four steps of Newton (J0' = -J1).

    References
    ----------
    Abramowitz and Stegun (1964), 9.5.12.
    """
    beta = (np.arange(1, count + 1) - 0.25) * np.pi
    root = beta + 1 / (8 * beta)
    for _ in range(4):
        j0, j1 = bessel_j0_j1(root)
        root = root + j0 / j1
    return root
