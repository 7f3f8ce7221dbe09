"""Lethality, D and z against print, scipy and closed forms."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, optimize

from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.safety import (
    d_value_at,
    death_time_line,
    equivalent_time,
    lethal_rate,
    lethality,
    log_reduction,
    log_target,
    published_d_values,
    roast_hold_time,
    uk_equivalent,
)
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import celsius, delta, fahrenheit, minutes, seconds

FSIS = "USDA FSIS Appendix A, Table 2 of FSIS-GD-2021-14 (rhosey.com copy)"
FSIS_TEXT = "USDA FSIS-GD-2021-14, text"
UK = "UK FSA / ACMSF cooking advice, on pages that quote it"
MPI = "NZ MPI Technical Paper 2016/05 (scribd 479222877)"
JUNEJA = "Juneja, Eblen & Ransom 2001, J. Food Sci. 66:146"
MURPHY = "Murphy et al. 2004, Poultry Sci. 83:1218"
ENDPOINT = "End-point study of ground chicken breast (acnpsearch 78701165)"
THERMAL = "Thermal Food Processing, Table 7.1 (yumpu 6346760 p. 222)"
NOTES = "Lecture notes on thermal process calculation (scribd 637547421)"
WARNE = "Warne, FAO Fish. Tech. Paper 285 (1988), fish-canning example"
MULLAN = "Mullan, dairyscience.info, after Stumbo (1973)"
PMO = "Legal pasteurisation pairs of the US Pasteurized Milk Ordinance"
CALCULUS = "Closed form of the integral over a linear ramp"


UK_C = (60, 65, 70, 75, 80)
D_ENDS = {  # D at 55 and 70 °C [min], z of the two or as printed
    "T3-44": ("Salmonella", "chicken leg meat", 43.33, 0.07, 5.37, "computed"),
    "T3-45": ("Salmonella", "chicken skin", 43.76, 0.09, 5.56, "seen"),
    "T3-46": ("Listeria monocytogenes", "chicken leg meat", 38.94, 0.04, 5.02, "computed"),
    "T3-47": ("Listeria monocytogenes", "chicken skin", 34.05, 0.05, 5.27, "seen"),
}
D_TABLE = {
    "T3-43": ("Salmonella", "chicken broth", (4.87, 2.72, 1.30, 0.41), JUNEJA),
    "T3-49": ("Salmonella Senftenberg", "ground turkey", (211.35, 13.24, 3.43), THERMAL),
    "T3-50": ("E. coli O157:H7", "ground turkey", (79.4, 5.47, 1.69), THERMAL),
    "T3-51": ("Listeria monocytogenes", "ground turkey", (81.3, 2.6, 0.6), THERMAL),
}


def d_values(organism, food):
    found = published_d_values(organism)
    return found[next(name for name in found if name.startswith(food))]


def fitted(table, first=130, last=157):
    """The line through a printed roast table, without its "at once"."""
    rows = [
        roast_hold_time(fahrenheit(degree), f"FSIS {table}") for degree in range(first, last + 1)
    ]
    return death_time_line([row.fahrenheit for row in rows], [row.time for row in rows])


def off_the_line():
    """How far each printed 6.5-log time is from z = 10 °F through 112 min at 130 °F [percent]."""
    off = []
    for degree in range(130, 158):
        line = d_value_at(fahrenheit(degree), Q_(112, "min"), fahrenheit(130), Q_(10, "delta_degF"))
        printed = roast_hold_time(fahrenheit(degree), "FSIS 6.5-log").time
        off.append(100 * (seconds(printed) / seconds(line) - 1))
    return off


def uk_line(degrees):
    rows = [uk_equivalent(celsius(degree)) for degree in degrees]
    return death_time_line([row.temperature for row in rows], [row.time for row in rows])


def log_of_rates(rates, step_min=5, reference=121.1, z=10):
    """A log whose lethal rates are these; a rate of nought is a temperature far below."""
    temperatures = [reference + z * math.log10(max(rate, 1e-12)) for rate in rates]
    times = [step_min * n for n in range(len(rates))]
    return Q_(times, "min"), Q_(temperatures, "degC")


# The printed readings are not in the text that was read, only their sums: one log of each sum.
WARNE_WHOLE = [0, 0.010, 0.060, 0.145, 0.270, 0.420, 0.545, 0.640, 0.560, 0.210, 0.055, 0.010, 0]
WARNE_HEATING = [0, 0.024, 0.074, 0.144, 0.250, 0.370, 0.480, 0.776]


def warne(rates):
    return minutes(lethality(*log_of_rates(rates), reference=celsius(121.1), z=delta(10)))


def ramp(first=50, last=60, rate=0.5, reference=60, z=5.56, readings=4001):
    """The library's trapezoids over a straight rise, readings close together."""
    times = Q_(np.linspace(0, (last - first) / rate, readings), "min")
    rising = Q_(np.linspace(first, last, readings), "degC")
    return minutes(lethality(times, rising, celsius(reference), delta(z)))


def closed_ramp(first=50, last=60, rate=0.5, reference=60, z=5.56):
    ends = 10 ** ((last - reference) / z) - 10 ** ((first - reference) / z)
    return z / (rate * math.log(10)) * ends


PUBLISHED = (
    Published("3.1 z of the 6.5-log table, °F", FSIS, "computed", 10.01,
              lambda: fitted("6.5-log").z.to("delta_degF").magnitude, 0.005, by="formula"),
    Published("3.1 z of the 6.5-log table, °C", FSIS, "computed", 5.56,
              lambda: fitted("6.5-log").z.to("delta_degC").magnitude, 0.005, by="formula"),
    Published("3.1 z of the 7-log table, °F", FSIS, "computed", 10.02,
              lambda: fitted("7-log").z.to("delta_degF").magnitude, 0.005, by="formula"),
    Published("3.1 fitted time at 140 °F", FSIS, "computed", 11.5,
              lambda: minutes(fitted("6.5-log").time_at(fahrenheit(140))), 0.05, by="formula"),
    # Printed as "-0.5 / +13 %": the ends of the range, to the printed figure.
    Published("3.1 line of z 10 °F, furthest below, %", FSIS, "computed", -0.5,
              lambda: min(off_the_line()), 0.05, by="formula"),
    Published("3.1 line of z 10 °F, furthest above, %", FSIS, "computed", 13,
              lambda: max(off_the_line()), 0.5, by="formula"),
    Published("3.1 D at 60 °C from 12 min and 6.5 log", FSIS, "computed", 6.5,
              lambda: log_reduction(roast_hold_time(celsius(60)).time, Q_(1.85, "min")),
              relative=0.13, by="formula"),
    *(Published(f"T3-11 target, {food}", FSIS_TEXT, "seen", logs,
                lambda food=food: log_target(food), by="table")
      for food, logs in (("roast beef", 6.5), ("meat patties", 5), ("poultry", 7))),
    Published("T3-41 z of the UK rows, end points", UK, "computed", 7.54,
              lambda: uk_line((60, 80)).z.magnitude, 0.1, by="formula"),
    Published("T3-41 z of the UK rows, fit", UK, "computed", 7.57,
              lambda: uk_line(UK_C).z.magnitude, 0.1, by="formula"),
    Published("T3-42 Listeria, 6D in 2 min at 70 °C", MPI, "quoted", 6,
              lambda: log_reduction(uk_equivalent(celsius(70)).time, Q_(20, "s")), 1e-9,
              by="table"),
    *(Published(f"{row} {organism} in {food}, D no. {n + 1}", source, "seen", d,
                lambda organism=organism, food=food, n=n: d_values(organism, food)[1].magnitude[n],
                by="table")
      for row, (organism, food, values, source) in D_TABLE.items() for n, d in enumerate(values)),
    Published("T3-43 z in broth", JUNEJA, "computed", 6.65,
              lambda: death_time_line(*d_values("Salmonella", "chicken broth")).z.magnitude, 0.005,
              by="formula"),
    *(Published(f"{row} {organism} in {food}, D at {c} °C", MURPHY, "seen", d,
                lambda organism=organism, food=food, c=c:
                d_values(organism, food)[1].magnitude[int(c == 70)], by="table")
      for row, (organism, food, low, high, *_) in D_ENDS.items()
      for c, d in ((55, low), (70, high))),
    *(Published(f"{row} {organism} in {food}, z", MURPHY, status, z,
                lambda organism=organism, food=food:
                death_time_line(*d_values(organism, food)).z.magnitude, 0.1, by="formula")
      for row, (organism, food, _, _, z, status) in D_ENDS.items()),
    Published("T3-48 7D at 65 °C from 3 s at 71.1 °C", ENDPOINT, "computed", 35.3,
              lambda: seconds(equivalent_time(Q_(3, "s"), celsius(71.1), celsius(65), delta(5.7))),
              0.05, by="formula"),
    Published("T3-48 7D at 60 °C from 3 s at 71.1 °C", ENDPOINT, "computed", 4.43,
              lambda: minutes(d_value_at(celsius(60), Q_(3, "s"), celsius(71.1), delta(5.7))),
              0.005, by="formula"),
    *(Published(f"T3-60 lethal rate at {c} °C", NOTES, "seen", rate,
                lambda c=c: lethal_rate(celsius(c), celsius(121.1), delta(10)), relative=1e-9,
                by="formula")
      for c, rate in ((101.1, 0.01), (111.1, 0.1), (121.1, 1), (131.1, 10), (141.1, 100))),
    *(Published(f"T3-60 2.4 min at 121.1 °C, at {c} °C", NOTES, "seen", s,
                lambda c=c: seconds(equivalent_time(Q_(2.4, "min"), celsius(121.1), celsius(c),
                                                    delta(10))), relative=1e-9, by="formula")
      for c, s in ((101.1, 4 * 3600), (111.1, 24 * 60), (121.1, 144), (131.1, 14.4),
                   (141.1, 1.44))),
    Published("T3-61 F0 of the whole process", WARNE, "seen", 14.6, lambda: warne(WARNE_WHOLE),
              0.05, by="formula"),
    # Printed 8.6, worked as 8.65 there: the value before it was cut is the check.
    Published("T3-62 F0 of the heating phase", WARNE, "seen", 8.65, lambda: warne(WARNE_HEATING),
              0.05, by="formula"),
    Published("T3-63 15 min at 85 °C, at 102 °C", MULLAN, "seen", 0.167,
              lambda: minutes(equivalent_time(Q_(15, "min"), celsius(85), celsius(102),
                                              delta(8.7))), 0.001, by="formula"),
    Published("T3-64 z of the milk pairs", PMO, "computed", 4.33,
              lambda: death_time_line(Q_([63, 72], "degC"), Q_([1800, 15], "s")).z.magnitude, 0.02,
              by="formula"),
    *(Published(f"T3-65 12-D in {f} min", NOTES, "computed", 12,
                lambda f=f, d=d: log_reduction(Q_(f, "min"), Q_(d, "min")), 1e-9, by="formula")
      for f, d in ((2.4, 0.20), (3.0, 0.25))),
    Published("T3-66 ramp from 50 to 60 °C", CALCULUS, "computed", closed_ramp(), ramp,
              relative=1e-6, by="formula"),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


def test_the_heating_readings_have_the_printed_sums():
    """T3-61 and T3-62: 2.925, and (0 + 0.776) / 2 + the readings between = 1.730."""
    assert sum(WARNE_WHOLE) == pytest.approx(2.925, abs=1e-12)
    assert 0.776 / 2 + sum(WARNE_HEATING[:-1]) == pytest.approx(1.730, abs=1e-12)


temperatures_C = st.lists(st.floats(40, 75), min_size=3, max_size=12)
z_values = st.floats(4, 12)


@given(temperatures_C, z_values, st.data())
def test_lethality_adds_up_over_the_parts_of_a_log(degrees, z, data):
    """Cut at a reading: the parts make the whole."""
    cut = data.draw(st.integers(1, len(degrees) - 2))
    times = Q_(np.arange(len(degrees), dtype=float), "min")
    log = Q_(np.array(degrees), "degC")

    def worth(part):
        return lethality(times[part], log[part], celsius(60), delta(z)).magnitude

    whole = worth(slice(None))

    assert whole == pytest.approx(worth(slice(cut + 1)) + worth(slice(cut, None)), rel=1e-12)


@given(temperatures_C, z_values, st.floats(0, 5))
def test_a_hotter_log_is_worth_more(degrees, z, rise):
    """Monotone in every reading."""
    times = Q_(np.arange(len(degrees), dtype=float), "min")
    cooler = lethality(times, Q_(np.array(degrees), "degC"), celsius(60), delta(z))
    hotter = lethality(times, Q_(np.array(degrees) + rise, "degC"), celsius(60), delta(z))

    assert hotter.magnitude >= cooler.magnitude


@given(st.floats(40, 75), z_values, st.floats(1, 500), st.integers(2, 20))
def test_a_constant_temperature_is_worth_time_times_rate(degree, z, length, readings):
    """No trapezoid error where nothing changes."""
    times = Q_(np.linspace(0, length, readings), "min")
    worth = lethality(times, Q_(np.full(readings, degree), "degC"), celsius(60), delta(z))
    rate = lethal_rate(celsius(degree), celsius(60), delta(z))

    assert length * rate == pytest.approx(worth.magnitude, rel=1e-9)


@given(temperatures_C, z_values)
def test_fahrenheit_and_minutes_agree_with_celsius_and_seconds(degrees, z):
    """Unit invariance of log, reference and z at once."""
    times = Q_(np.arange(len(degrees), dtype=float), "min")
    log = Q_(np.array(degrees), "degC")
    metric = lethality(times.to("s"), log, celsius(60), delta(z))
    american = lethality(times, log.to("degF"), fahrenheit(140), delta(z).to("delta_degF"))

    assert minutes(metric) == pytest.approx(minutes(american), rel=1e-9)


@given(temperatures_C, z_values)
def test_trapezoids_agree_with_scipy(degrees, z):
    """Referee: scipy.integrate.trapezoid on the rates."""
    minutes_ = np.cumsum(1 + np.arange(len(degrees)) % 3).astype(float)
    rates = 10 ** ((np.array(degrees) - 60) / z)
    worth = lethality(Q_(minutes_, "min"), Q_(np.array(degrees), "degC"), celsius(60), delta(z))

    assert integrate.trapezoid(rates, minutes_) == pytest.approx(worth.magnitude, rel=1e-12)


def test_readings_far_apart_flatter():
    """One z in one step: (1 + 10) / 2 = 5.5 for a true 9 / ln 10 = 3.91; close readings mend it."""
    coarse = ramp(first=50, last=60, rate=10, reference=50, z=10, readings=2)
    fine = ramp(first=50, last=60, rate=10, reference=50, z=10, readings=401)

    assert coarse == pytest.approx(5.5, rel=1e-12)
    assert fine == pytest.approx(9 / math.log(10), rel=1e-5)


def test_a_quarter_of_z_between_readings_is_close_enough():
    """The docstring's advice: the flattery is then under 3 %."""
    worth = ramp(first=50, last=60, rate=1, reference=60, z=10, readings=5)

    assert 1 < worth / closed_ramp(50, 60, 1, 60, 10) < 1.03


@given(st.floats(0.1, 100), st.floats(50, 70), z_values)
def test_a_d_value_goes_there_and_back(d, degree, z):
    """From 60 °C to another temperature and back."""
    there = d_value_at(celsius(degree), Q_(d, "min"), celsius(60), delta(z))
    back = d_value_at(celsius(60), there, celsius(degree), delta(z))

    assert d == pytest.approx(minutes(back), rel=1e-9)


@given(st.floats(3, 15), st.floats(0.1, 50))
def test_a_line_through_points_made_with_z_finds_that_z(z, d):
    """There and back: points on a line, then the line."""
    degrees = [55.0, 58.0, 61.0, 66.0]
    times = [d_value_at(celsius(c), Q_(d, "min"), celsius(60), delta(z)) for c in degrees]
    line = death_time_line([celsius(c) for c in degrees], times)

    assert z == pytest.approx(line.z.magnitude, rel=1e-9)
    assert d == pytest.approx(minutes(line.time_at(celsius(60))), rel=1e-9)


def test_the_fitted_line_agrees_with_scipys_least_squares():
    """Referee: scipy.optimize.curve_fit on the printed D-values in broth."""
    degrees, times = d_values("Salmonella", "chicken broth")
    (slope, _), _ = optimize.curve_fit(
        lambda x, slope, height: slope * (x - 58) + height, degrees.magnitude,
        np.log10(times.magnitude), p0=(-0.1, 0),
    )  # fmt: skip

    assert -1 / slope == pytest.approx(death_time_line(degrees, times).z.magnitude, rel=1e-6)


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: lethal_rate(celsius(60), celsius(60), celsius(5)), WrongKind,
         "z: needs a temperature difference"),
        (lambda: lethal_rate(celsius(60), celsius(60), delta(0)), OutOfRange, "z: needs more"),
        (lambda: lethality(Q_([0, 1], "min"), [60, 60], celsius(60), delta(5)), WrongKind,
         "temperatures, reading 1"),
        (lambda: lethality(Q_([0], "min"), celsius([60]), celsius(60), delta(5)), OutOfRange,
         "at least two readings"),
        (lambda: lethality(Q_([0, 1, 2], "min"), celsius([60, 60]), celsius(60), delta(5)),
         OutOfRange, "3 times and 2 temperatures"),
        (lambda: log_reduction(Q_(1, "min"), Q_(0, "min")), OutOfRange, "d_value: "),
        (lambda: d_value_at(celsius(60), Q_(1, "g"), celsius(60), delta(5)), WrongKind, "d_value"),
        (lambda: equivalent_time(Q_(0, "min"), celsius(60), celsius(65), delta(5)), OutOfRange,
         "time: "),
        (lambda: death_time_line(celsius([60, 60]), Q_([1, 2], "min")), OutOfRange,
         "two different temperatures"),
        (lambda: death_time_line(celsius([60, 65]), Q_([1, 2], "min")), OutOfRange,
         "do not get shorter"),
        (lambda: death_time_line(celsius([60, 65]), Q_([1, 2, 3], "min")), OutOfRange, "3 came"),
        (lambda: published_d_values("yeti"), UnknownName, "organism: 'yeti'"),
        (lambda: log_target("soup"), UnknownName, "food: 'soup'"),
    ],
)  # fmt: skip
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
