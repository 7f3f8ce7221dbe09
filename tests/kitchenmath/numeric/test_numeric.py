"""Roots and quantiles against scipy, which the kit itself does not load."""

import math

import pytest
from scipy import special, stats

from kitchenmath.numeric.distributions import (
    beta_quantile,
    chi_square_quantile,
    regularized_beta,
    regularized_gamma,
    student_t_quantile,
)
from kitchenmath.numeric.roots import bisect


def test_bisection_ends_at_the_last_bit():
    """The square root of two, as math has it or its neighbour."""
    found = bisect(lambda side: side * side >= 2, 0.0, 2.0)

    assert math.sqrt(2) == pytest.approx(found, rel=2e-16)


@pytest.mark.parametrize("freedom", [1, 2, 5, 9, 30, 1000])
@pytest.mark.parametrize("chance", [0.6, 0.9, 0.975, 0.999])
def test_students_t_is_scipys(freedom, chance):
    """One freedom is Cauchy's tan, a thousand is nearly the bell; ten figures."""
    assert stats.t.ppf(chance, freedom) == pytest.approx(
        student_t_quantile(chance, freedom), rel=1e-10
    )


@pytest.mark.parametrize("freedom", [1, 4, 9, 200])
def test_chi_square_is_scipys(freedom):
    for chance in (0.025, 0.5, 0.975):
        assert stats.chi2.ppf(chance, freedom) == pytest.approx(
            chi_square_quantile(chance, freedom), rel=1e-10
        )


@pytest.mark.parametrize(("alpha", "beta"), [(0.5, 0.5), (1, 10), (10, 1), (4.5, 0.5)])
def test_beta_is_scipys(alpha, beta):
    for chance in (0.025, 0.5, 0.975):
        assert stats.beta.ppf(chance, alpha, beta) == pytest.approx(
            beta_quantile(chance, alpha, beta), rel=1e-10
        )


@pytest.mark.parametrize(("shape", "value"), [(0.5, 0.01), (3, 2.0), (3, 9.0), (100, 120.0)])
def test_the_incomplete_gamma_is_scipys(shape, value):
    """Below and above shape + 1: the series and the continued fraction."""
    assert special.gammainc(shape, value) == pytest.approx(
        regularized_gamma(shape, value), rel=1e-12
    )


def test_the_incomplete_beta_ends_at_nought_and_one():
    assert [0.0, 1.0] == [regularized_beta(end, 2, 3) for end in (0.0, 1.0)]
