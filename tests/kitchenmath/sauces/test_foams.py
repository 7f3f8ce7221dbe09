"""Foams: air, weight and life, against ice cream notes, SR28 and curves of known half-life."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import curve_fit
from scipy.stats import linregress

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.sauces import (
    drainage_half_life,
    foam_volume,
    foam_weight,
    gas_fraction,
    juice_foam_base,
    liquid_for_foam,
    mix_density,
    overrun,
    overrun_from_volumes,
    volume_half_life,
)
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import percent

GUELPH = "Goff, University of Guelph, ice cream notes (uoguelph.ca/foodscience)"
SMALL_CUP = "ice cream notes, small cup (scribd 495662971)"
DEFINITION = "definition"
SR28 = "USDA SR28 (2015), heavy cream 01053"
FOAM_LITERATURE = "protein foam literature, FO % = (V - 30) / 30 x 100"
USDA = "USDA AMS ice cream standards"
PRACTICE = "common practice, no source"


PUBLISHED = (
    Published("O1 ice cream by weight", GUELPH, "seen", 94.6,
              lambda: overrun(Q_(1090, "g/L"), Q_(560, "g/L")).magnitude, 0.1, by="formula"),
    Published("O2 a cup at 5 %", SMALL_CUP, "seen", 104.8,
              lambda: foam_weight(Q_(110, "g"), percent(5)).magnitude, 0.1, by="formula"),
    Published("O2 a cup at 10 %", SMALL_CUP, "seen", 100.0,
              lambda: foam_weight(Q_(110, "g"), percent(10)).magnitude, 0.1, by="formula"),
    Published("O3 density at 100 %", GUELPH, "seen", 550,
              lambda: foam_weight(Q_(1100, "g/L"), percent(100)).magnitude, 1e-9, by="formula"),
    Published("O4 ice cream by volume", GUELPH, "memory", 96,
              lambda: overrun_from_volumes(Q_(500, "L"), Q_(980, "L")).magnitude, 1e-9,
              by="formula"),
    # The formula is printed; 10 % fat and 38 % solids put in by hand: 1 / 0.9039.
    Published("O5 mix density", GUELPH, "computed", 1.10632,
              lambda: mix_density(percent(10), percent(38)).magnitude, 1e-5, by="formula"),
    Published("O6 gas at 100 %", DEFINITION, "computed", 50,
              lambda: gas_fraction(percent(100)).magnitude, 0.1, by="formula"),
    Published("O6 gas at 94.6 %", DEFINITION, "computed", 48.6,
              lambda: gas_fraction(percent(94.6)).magnitude, 0.1, by="formula"),
    Published("O8 whipped cream", SR28, "computed", 98.3,
              lambda: overrun(Q_(238, "g"), Q_(120, "g")).magnitude, 0.5, by="formula"),
    # The formula is printed; 30 mL whipped to 150 put in by hand.
    Published("O9 foaming, 30 to 150 mL", FOAM_LITERATURE, "computed", 400,
              lambda: overrun_from_volumes(Q_(30, "mL"), Q_(150, "mL")).magnitude, 1e-9,
              by="table"),
    Published("juice foam, parts of juice to sugar", PRACTICE, "common practice", 2,
              lambda: (juice_foam_base(Q_(1, "L")).juice / juice_foam_base(Q_(1, "L")).sugar)
              .to("").magnitude, 1e-9, by="table"),
    Published("juice foam, warmed to, °F", PRACTICE, "common practice", 180,
              lambda: juice_foam_base(Q_(1, "L")).warm_to.to("degF").magnitude, 1, by="formula"),
    Published("juice foam, stands at least, min", PRACTICE, "common practice", 5,
              lambda: juice_foam_base(Q_(1, "L")).stands[0].to("min").magnitude, 0, by="table"),
    Published("juice foam, stands at most, min", PRACTICE, "common practice", 10,
              lambda: juice_foam_base(Q_(1, "L")).stands[1].to("min").magnitude, 0, by="table"),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


def test_the_legal_ice_cream_holds_about_its_own_volume_of_air():
    """Row O7: at least 4.5 lb a US gallon (539.2 g/L); from a 1090 g/L mix 1090 / 539.2 - 1."""
    lightest = Q_(4.5, "lb/us_gallon").to("g/L")

    assert lightest.magnitude == pytest.approx(539.2, abs=0.05)
    assert overrun(Q_(1090, "g/L"), lightest).magnitude == pytest.approx(102.2, abs=0.1)


volumes = st.floats(1, 1e4).map(lambda ml: Q_(ml, "mL"))
overruns = st.floats(0, 1500).map(percent)


@given(volumes, overruns)
def test_liquid_to_foam_and_back(liquid, air):
    """There and back, and the overrun of the two volumes is the one put in."""
    foam = foam_volume(liquid, air)

    assert liquid.magnitude == pytest.approx(liquid_for_foam(foam, air).magnitude, rel=1e-12)
    assert air.magnitude == pytest.approx(overrun_from_volumes(liquid, foam).magnitude, abs=1e-9)


@given(volumes, overruns)
def test_weighing_and_measuring_agree(liquid, air):
    """The same foam by weight of one cup and by volume; gas is the share of what was added."""
    by_weight = overrun(Q_(100, "g"), foam_weight(Q_(100, "g"), air)).magnitude
    foam = foam_volume(liquid, air)
    gas = 100 * ((foam - liquid) / foam).magnitude

    assert air.magnitude == pytest.approx(by_weight, abs=1e-8)
    assert gas == pytest.approx(gas_fraction(air).magnitude, abs=1e-9)


@given(st.floats(10, 500), st.floats(1, 9))
def test_ounces_and_grams_give_the_same_overrun(foam_g, times):
    """Unit invariance."""
    grams = overrun(Q_(foam_g * times, "g"), Q_(foam_g, "g"))
    ounces = overrun(Q_(foam_g * times, "g").to("oz"), Q_(foam_g, "g"))

    assert grams.magnitude == pytest.approx(ounces.magnitude, abs=1e-9)


@given(st.floats(0, 1000), st.floats(0.1, 100))
def test_more_air_is_a_larger_share_and_never_all(air, more):
    """Monotonicity, and the limit of 100 %."""
    assert gas_fraction(percent(air)) < gas_fraction(percent(air + more)) < percent(100)


def test_water_without_fat_or_solids_weighs_a_gram_a_millilitre():
    """Limit of the mix formula."""
    assert mix_density(percent(0), percent(0)).magnitude == pytest.approx(1, rel=1e-12)


def drained_curve(minutes, c, n, whole=60.0):
    """v = V tⁿ / (c + tⁿ), row O10."""
    return whole * minutes**n / (c + minutes**n)


curves = {"c": st.floats(2, 40), "n": st.floats(0.7, 2.5)}


@given(**curves)
def test_beyond_the_log_the_curve_gives_its_own_half_life(c, n):
    """Row O10: t½ = c^(1/n). A log that ends at 80 % of that time is carried on exactly."""
    half = c ** (1 / n)
    minutes = np.linspace(0.1, 0.8, 6) * half
    found = drainage_half_life(
        Q_(minutes, "min"), Q_(drained_curve(minutes, c, n), "mL"), Q_(60, "mL"), extrapolate=True
    )

    assert half == pytest.approx(found.magnitude, rel=1e-6)


@pytest.mark.parametrize(
    ("last_mL", "half_min"),
    [(31.2, 4 + 2 * 0.1 / 0.12), (30, 6)],
    ids=["a little more", "just half"],
)
def test_half_is_out_where_the_log_ends_a_little_behind_it(last_mL, half_min):
    """Of 60 mL 24 are out at 4 min: 0.4; 31.2 at 6 min are 0.52, and 0.5 lies between."""
    found = drainage_half_life(Q_([4, 6], "min"), Q_([24, last_mL], "mL"), Q_(60, "mL"))

    assert half_min == pytest.approx(found.magnitude)


@given(**curves)
def test_inside_a_close_log_the_straight_line_is_good_enough(c, n):
    """Row O10 with twenty readings to twice the half-life: within 1 %."""
    half = c ** (1 / n)
    minutes = np.linspace(0.1, 2, 20) * half
    found = drainage_half_life(
        Q_(minutes, "min"), Q_(drained_curve(minutes, c, n) / 60 * 100, "percent")
    )

    assert half == pytest.approx(found.magnitude, rel=0.01)


def test_the_law_of_second_order_is_the_curve_with_n_of_one():
    """Row O11: dv/dt = k (v∞ - v)², integrated by scipy; by hand t½ = 1 / (k v∞) = 12.5 min."""
    k, whole = 0.002, 40.0
    minutes = np.array([2.0, 4, 6, 8, 10])
    drained = solve_ivp(
        lambda _, v: k * (whole - v) ** 2, (0, 10), [0.0], t_eval=minutes, rtol=1e-10, atol=1e-12
    ).y[0]
    found = drainage_half_life(
        Q_(minutes, "min"), Q_(drained, "mL"), Q_(whole, "mL"), extrapolate=True
    )

    assert found.magnitude == pytest.approx(12.5, rel=1e-6)


def test_a_noisy_log_is_carried_on_much_as_scipy_would():
    """scipy.optimize.curve_fit of row O10's curve to the same invented readings; ± 5 %."""
    minutes, drained = np.array([1.0, 2, 3, 4, 5, 6]), np.array([3.1, 7.4, 12.0, 16.8, 20.1, 24.3])
    (c, n), _ = curve_fit(drained_curve, minutes, drained, p0=(10, 1))
    found = drainage_half_life(
        Q_(minutes, "min"), Q_(drained, "mL"), Q_(60, "mL"), extrapolate=True
    )

    assert found.magnitude == pytest.approx(c ** (1 / n), rel=0.05)


@given(st.floats(0.5, 60), st.floats(20, 1000))
def test_an_evenly_decaying_foam_has_its_half_life_inside_and_beyond(half, start):
    """Exponential decay: exact beyond the log, within 1 % on straight lines inside it."""
    minutes = np.linspace(0, 2, 21) * half
    left = start * 0.5 ** (minutes / half)
    inside = volume_half_life(Q_(minutes, "min"), Q_(left, "mL"))
    beyond = volume_half_life(Q_(minutes[:8], "min"), Q_(left[:8], "mL"), extrapolate=True)

    assert half == pytest.approx(inside.magnitude, rel=0.01)
    assert half == pytest.approx(beyond.magnitude, rel=1e-9)


def test_one_bad_first_reading_does_not_move_the_decay():
    """By hand: 110 read for 100, then 90, 81, 72.9: the line through all four, by scipy."""
    minutes, left = np.array([0.0, 1, 2, 3]), np.array([110, 90, 81, 72.9])
    line = linregress(minutes, np.log(left))
    crossing = (np.log(110 / 2) - line.intercept) / line.slope
    found = volume_half_life(Q_(minutes, "min"), Q_(left, "mL"), extrapolate=True)

    assert found.magnitude == pytest.approx(crossing, rel=1e-9)


def test_the_two_half_lives_of_one_foam_are_different_things():
    """By hand: half of 60 mL liquid is out at 5 min, half of 400 mL foam gone at 12.5 min."""
    minutes = Q_([0, 4, 6, 10, 15], "min")
    drainage = drainage_half_life(minutes, Q_([0, 24, 36, 45, 50], "mL"), Q_(60, "mL"))
    volume = volume_half_life(minutes, Q_([400, 370, 340, 250, 150], "mL"))

    assert drainage.magnitude == pytest.approx(5, rel=1e-12)
    assert volume.magnitude == pytest.approx(12.5, rel=1e-12)


def test_seconds_and_minutes_give_the_same_half_life():
    """Unit invariance; the answer comes in the unit of the times."""
    seconds = drainage_half_life(Q_([240, 360], "s"), Q_([24, 36], "mL"), Q_(0.06, "L"))

    assert str(seconds.units) == "second"
    assert seconds.magnitude == pytest.approx(300, rel=1e-12)


def test_a_log_from_its_first_minute_is_counted_from_there():
    """By hand: 200 mL at 3 min, 100 mL at 9 min, so 6 min."""
    found = volume_half_life(Q_([3, 9], "min"), Q_([200, 100], "mL"))

    assert found.magnitude == pytest.approx(6, rel=1e-12)


def test_a_log_whose_first_reading_is_beyond_half_starts_from_nothing():
    """By hand: nothing at 0, 45 of 60 mL at 3 min; half on the line between, at 2 min."""
    found = drainage_half_life(Q_([3, 5], "min"), Q_([45, 50], "mL"), Q_(60, "mL"))

    assert found.magnitude == pytest.approx(2, rel=1e-12)


TWO_MINUTES = Q_([2, 4], "min")


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: overrun(Q_(120, "g"), Q_(238, "g")), OutOfRange, "wrong way round"),
        (lambda: overrun(Q_(120, "g"), Q_(60, "mL")), WrongKind, "foam_weight: 60 mL is a vol"),
        (lambda: overrun(120, Q_(60, "g")), WrongKind, "liquid_weight: "),
        (
            lambda: overrun_from_volumes(Q_(60, "mL"), Q_(50, "mL")),
            OutOfRange,
            "foam_volume: 50 mL is less than",
        ),
        (lambda: foam_volume(Q_(60, "mL"), 4), WrongKind, r'overrun: .*Q_\(4, "percent"\)'),
        (lambda: foam_volume(Q_(60, "g"), percent(50)), WrongKind, "liquid_volume: "),
        (lambda: gas_fraction(percent(-5)), OutOfRange, "overrun: needs at least 0 %"),
        (lambda: mix_density(percent(40), percent(38)), OutOfRange, "fat: 40 % is more than"),
        (lambda: juice_foam_base(Q_(60, "g")), WrongKind, "juice: needs a volume"),
        (
            lambda: drainage_half_life(TWO_MINUTES, Q_([5, 9], "mL"), Q_(60, "mL")),
            OutOfRange,
            "drained: the log ends at 9 mL, before half .*extrapolate=True",
        ),
        (
            lambda: drainage_half_life(TWO_MINUTES, Q_([5, 9], "mL")),
            WrongKind,
            "liquid: .* but of how much",
        ),
        (
            lambda: drainage_half_life(TWO_MINUTES, Q_([9, 5], "mL"), Q_(60, "mL")),
            OutOfRange,
            "drained: .*never falling",
        ),
        (
            lambda: drainage_half_life(TWO_MINUTES, Q_([9, 70], "mL"), Q_(60, "mL")),
            OutOfRange,
            "at most the liquid there was",
        ),
        (
            lambda: drainage_half_life(Q_([4, 2], "min"), Q_([5, 9], "mL"), Q_(60, "mL")),
            OutOfRange,
            "times: needs two or more, rising",
        ),
        (
            lambda: drainage_half_life(TWO_MINUTES, Q_([5, 9, 11], "mL"), Q_(60, "mL")),
            OutOfRange,
            "2 times .* and 3 readings",
        ),
        (
            lambda: drainage_half_life(Q_(2, "min"), Q_(5, "mL"), Q_(60, "mL")),
            WrongKind,
            "times: needs a list",
        ),
        (
            lambda: drainage_half_life([2, 4], Q_([5, 9], "mL"), Q_(60, "mL")),
            WrongKind,
            "times: needs a list with a unit",
        ),
        (
            lambda: drainage_half_life(Q_([2, 4], "g"), Q_([5, 9], "mL"), Q_(60, "mL")),
            WrongKind,
            "times: needs a time",
        ),
        (
            lambda: drainage_half_life(
                TWO_MINUTES, Q_([0, 9], "mL"), Q_(60, "mL"), extrapolate=True
            ),
            OutOfRange,
            "drained: to go beyond the log two different readings",
        ),
        (
            lambda: drainage_half_life(
                TWO_MINUTES, Q_([9, 9], "mL"), Q_(60, "mL"), extrapolate=True
            ),
            OutOfRange,
            "two different readings",
        ),
        (
            lambda: volume_half_life(TWO_MINUTES, Q_([400, 300], "mL")),
            OutOfRange,
            "volumes: the log ends at 300 mL",
        ),
        (
            lambda: volume_half_life(TWO_MINUTES, Q_([400, 400], "mL"), extrapolate=True),
            OutOfRange,
            "volumes: to go beyond the log, a tenth",
        ),
        (
            lambda: volume_half_life(
                Q_([0, 1, 2, 3, 4], "min"), Q_([100, 52, 60, 75, 89], "mL"), extrapolate=True
            ),
            OutOfRange,
            "volumes: to go beyond the log",
        ),
        (
            lambda: volume_half_life(TWO_MINUTES, Q_([0, 400], "mL")),
            OutOfRange,
            "volumes: needs more than 0",
        ),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
