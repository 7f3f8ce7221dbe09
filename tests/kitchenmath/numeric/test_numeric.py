"""Roots and quantiles against scipy, which the kit itself does not load."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import special, stats

from kitchenmath.numeric.distributions import (
    beta_quantile,
    chi_square_quantile,
    regularized_beta,
    regularized_gamma,
    student_t_quantile,
)
from kitchenmath.numeric.roots import bisect

halves = st.integers(1, 400).map(lambda n: n / 2)
untimed = settings(deadline=None)


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


@untimed
@given(halves, st.floats(0, 4))
def test_the_incomplete_gamma_is_scipys(a, times):
    """Referee: scipy.special.gammainc."""
    x = a * times

    assert special.gammainc(a, x) == pytest.approx(regularized_gamma(a, x), rel=1e-10, abs=1e-300)


@untimed
@given(halves, halves, st.floats(0, 1))
def test_the_incomplete_beta_is_scipys(a, b, x):
    """Referee: scipy.special.betainc."""
    assert special.betainc(a, b, x) == pytest.approx(regularized_beta(x, a, b), rel=1e-9, abs=1e-12)


def test_the_incomplete_beta_ends_at_nought_and_one():
    assert [0.0, 1.0] == [regularized_beta(end, 2, 3) for end in (0.0, 1.0)]
