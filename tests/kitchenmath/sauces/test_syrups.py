"""Syrups, boiling sugar and reduction against sugar tables and old cookery books."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.sauces import (
    altitude_drop,
    baume_from_gravity,
    brix,
    brix_from_boiling_point,
    brix_from_gravity,
    dilute_to,
    reduce_to,
    sugar_for_syrup,
    sugar_stage,
    sugar_stages,
    syrup_boiling_point,
    syrup_density,
    syrup_gravity,
)
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import celsius, grams, percent

USDA = "USDA AMS, file code 135-A-50 (20/20 °C)"
CUBIC = "cubic formula, encyclopaedia copy"
RATIONAL = "rational formula, in wide print"
C440 = "NBS Circular C440, in a fruit-trade handbook (foodpartners.net)"
TORUN = "Toruń university, physics laboratory tables (wwwold.fizyka.umk.pl)"
HANDBOOK = "sugar handbook values, recalled"
MOHOS = "Mohos, Confectionery and Chocolate Engineering"
SOLUBILITY = "standard table of sucrose solubility"
TRADE = "trade page on juice concentrate"
BALANCE = "mass balance"
BROWNE = "Browne, Handbook of Sugar Analysis (1912), spline reproduction (vk1od.net)"
LOWE = "Lowe, Experimental Cookery (chestofbooks.com)"
MCGEE = "McGee, On Food and Cooking (2004)"
CANDY = "Candy Cook Book (1917), p. 20"
GREER = "Greer, School and Home Cooking"
ALTITUDE = "NOAA/NASA table in Wikipedia, High-altitude cooking"


def kg_m3(degrees_brix, temperature_C=20):
    density = syrup_density(percent(degrees_brix), celsius(temperature_C))
    return density.to("kg/m**3").magnitude


def pounds_a_gallon_in_air(degrees_brix):
    """Air of 1.2 kg/m³ carries part of the weight, and of the brass that balances it."""
    vacuum = kg_m3(degrees_brix)
    return Q_(vacuum - 1.2 * (1 - vacuum / 8000), "kg/m**3").to("lb/us_gallon").magnitude


def rise(degrees_brix):
    """Above water, which boils at 99.974 °C."""
    return (
        (syrup_boiling_point(percent(degrees_brix)) - syrup_boiling_point(percent(0)))
        .to("delta_degC")
        .magnitude
    )


def boils(degrees_brix):
    return syrup_boiling_point(percent(degrees_brix)).to("degC").magnitude


def stage_f(source, stage, end):
    return getattr(sugar_stages(source)[stage], end).to("degF").magnitude


# °Brix to °Baumé. 55 °Brix, printed 30.2, is left out: it is off its own neighbours' curve by 0.3.
MOHOS_ROWS = {
    5: (2.8, 0.1), 10: (5.6, 0.1), 15: (8.3, 0.1), 20: (11.1, 0.1), 25: (13.8, 0.1),
    30: (16.6, 0.1), 35: (19.3, 0.1), 40: (22.0, 0.25), 45: (24.6, 0.25), 50: (27.5, 0.25),
    60: (32.5, 0.25), 65: (35, 0.5), 70: (37.6, 0.5),
}  # fmt: skip
BROWNE_ROWS = {
    10: (0.4, 0.1), 20: (0.6, 0.1), 32: (1.1, 0.1), 40: (1.5, 0.1), 50: (2.0, 0.1),
    62: (3.4, 0.15), 64: (4.0, 0.15), 68: (5.6, 0.15), 70: (6.5, 0.15), 72: (7.4, 0.15),
    74: (8.4, 0.15), 78: (10.6, 0.2), 80: (12.0, 0.2), 82: (13.9, 0.2),
}  # fmt: skip
# McGee prints both scales. The hard ball's lower bound is printed 240 °F and is 250. The °F of
# dark caramel (375-380) and black caramel (410) contradict the °C beside them and are left out.
MCGEE_C = {
    "thread": (102, 113), "soft ball": (113, 116), "firm ball": (118, 121),
    "hard ball": (121, 130), "soft crack": (132, 143), "hard crack": (149, 154),
    "light caramel": (170, 170), "medium caramel": (180, 182), "dark caramel": (188, 190),
    "black caramel": (205, 205),
}  # fmt: skip
MCGEE_F = {
    "thread": (215, 235), "soft ball": (235, 240), "firm ball": (245, 250),
    "hard ball": (250, 265), "soft crack": (270, 290), "hard crack": (300, 310),
    "light caramel": (340, 340), "medium caramel": (355, 360),
}  # fmt: skip
CANDY_F = {
    "crystal syrup": 220, "soft ball": 238, "medium ball": 240, "stiff ball": 244,
    "hard ball": 250, "light crack": 264, "medium crack": 272, "hard crack": 290,
    "extra hard crack": 330, "caramel": 360,
}  # fmt: skip
GREER_F = {"thread": 230, "soft ball": 236, "hard ball": 252, "soft crack": 270,
           "hard crack": 293, "melted dry sugar": 310}  # fmt: skip

PUBLISHED = (
    Published("A5 parts of water, 70 to 12 °Brix", TRADE, "seen", 70 / 12 - 1,
              lambda: dilute_to(grams(1), percent(70), percent(12)).magnitude - 1, 1e-12,
              by="formula"),
    *(Published(f"A6 gravity {gravity}", USDA, "seen", degrees,
                lambda gravity=gravity: brix_from_gravity(gravity).magnitude, 0.01, by="formula")
      for gravity, degrees in ((1.01490, 3.80), (1.01569, 4.00), (1.03017, 7.60))),
    *(Published(f"A7 gravity {gravity}", CUBIC, "seen", degrees,
                lambda gravity=gravity: brix_from_gravity(gravity).magnitude, 1e-3, by="formula")
      for gravity, degrees in ((1.01490, 3.8011), (1.01569, 4.0002), (1.03017, 7.6002))),
    *(Published(f"A8 gravity {gravity}", RATIONAL, "seen", degrees,
                lambda gravity=gravity: brix_from_gravity(gravity, formula="rational").magnitude,
                1e-3, by="formula")
      for gravity, degrees in ((1.01490, 3.8024), (1.01569, 4.0013), (1.03017, 7.5998))),
    *(Published(f"A9 {degrees} °Brix, lb to a US gallon in air", C440, "quoted", pounds,
                lambda degrees=degrees: pounds_a_gallon_in_air(degrees), 0.002, by="formula")
      for degrees, pounds in ((0, 8.322), (1, 8.354), (2, 8.387), (3, 8.419), (4, 8.452),
                              (5, 8.486))),
    *(Published(f"A9a {degrees} °Brix at 20 °C", TORUN, "seen", density,
                lambda degrees=degrees: kg_m3(degrees), 0.05, by="formula")
      for degrees, density in ((5, 1017.84), (10, 1038.13), (15, 1059.16), (20, 1080.94),
                               (25, 1103.54), (30, 1126.98))),
    *(Published(f"A9b {degrees} °Brix at 15 °C", TORUN, "seen", density,
                lambda degrees=degrees: kg_m3(degrees, 15), 0.1, by="formula")
      for degrees, density in ((10, 1039.25), (20, 1082.33), (30, 1128.63))),
    *(Published(f"{degrees} °Brix at 20 °C", HANDBOOK, "memory", density,
                lambda degrees=degrees: kg_m3(degrees), 0.3, by="formula")
      for degrees, density in ((40, 1176.47), (50, 1229.58), (60, 1286.46), (70, 1347.17))),
    *(Published(f"A10, A11 {degrees} °Brix, degrees Baumé", MOHOS, "seen", baume,
                lambda degrees=degrees: baume_from_gravity(syrup_gravity(percent(degrees))),
                tolerance, by="formula") for degrees, (baume, tolerance) in MOHOS_ROWS.items()),
    Published("A12 203.9 g in 100 g water", SOLUBILITY, "seen", 67.09,
              lambda: brix(grams(203.9), grams(100)).magnitude, 0.1, by="formula"),
    *(Published(f"T5-10 to 12, rise at {degrees} °Brix", BROWNE, "seen", above,
                lambda degrees=degrees: rise(degrees), tolerance, by="table")
      for degrees, (above, tolerance) in BROWNE_ROWS.items()),
    Published("T5-13 60 °Brix boils", LOWE, "seen", 103.0, lambda: boils(60), 0.2, by="formula"),
    Published("T5-13 70 °Brix boils", LOWE, "seen", 106.5, lambda: boils(70), 0.2, by="formula"),
    Published("T5-38 1 kg from 12 to 65 °Brix", BALANCE, "computed", 184.6,
              lambda: reduce_to(grams(1000), percent(12), percent(65)).magnitude, 0.05,
              by="formula"),
    Published("T5-38 water that leaves", BALANCE, "computed", 815.4,
              lambda: 1000 - reduce_to(grams(1000), percent(12), percent(65)).magnitude, 0.05,
              by="formula"),
    *(Published(f"5.4 {stage}, {end}, °C", MCGEE, "seen", print_C,
                lambda stage=stage, end=end: getattr(sugar_stages()[stage], end).magnitude, 2,
                by="table")
      for stage, ends in MCGEE_C.items()
      for end, print_C in zip(("low", "high"), ends, strict=True)),
    # ± 2 °C is 3.6 °F.
    *(Published(f"5.4 {stage}, {end}, °F", MCGEE, "seen", print_f,
                lambda stage=stage, end=end: stage_f("McGee", stage, end), 3.6, by="table")
      for stage, ends in MCGEE_F.items()
      for end, print_f in zip(("low", "high"), ends, strict=True)),
    *(Published(f"5.4 1917 {stage}, °F", CANDY, "seen", print_f,
                lambda stage=stage: stage_f("Candy Cook Book", stage, "low"), 0.1, by="table")
      for stage, print_f in CANDY_F.items()),
    *(Published(f"5.4 Greer {stage}, °F", GREER, "seen", print_f,
                lambda stage=stage: stage_f("Greer", stage, "low"), 0.1, by="table")
      for stage, print_f in GREER_F.items()),
    Published("5.4 °F to take off for 1000 ft", MCGEE, "seen", 2,
              lambda: altitude_drop(Q_(1000, "ft")).to("delta_degF").magnitude, 0.25, by="formula"),
    Published("5.4 °C to take off for 305 m", MCGEE, "seen", 1,
              lambda: altitude_drop(Q_(305, "m")).magnitude, 1e-9, by="table"),
    *(Published(f"T5-02 water's own drop at {feet} ft, °F", ALTITUDE, "seen", drop_f,
                lambda feet=feet: altitude_drop(Q_(feet, "ft")).to("delta_degF").magnitude, 0.45,
                by="formula")
      for feet, drop_f in ((1000, 1.8), (2000, 3.6), (5000, 9.0), (6000, 10.9), (8000, 14.6),
                           (10000, 18.4))),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


def test_the_ideal_law_gives_half_the_rise_of_a_thick_syrup():
    """Row T5-15: 0.512 x (700 / 342.3) / 0.300 = 3.49 °C at 70 °Brix against 6.5 in the table."""
    ideal = 0.512 * (700 / 342.3) / 0.300

    assert ideal == pytest.approx(3.49, abs=0.01)
    assert rise(70) > 1.8 * ideal


def test_the_ideal_law_is_where_thin_syrups_begin():
    """Limit: at 10 °Brix 0.512 x (100 / 342.3) / 0.900 = 0.17 °C; the table rounds up to 0.4."""
    assert 0.17 - 0.1 < rise(10) < 0.17 + 0.3


def test_the_17_percent_misprint_is_not_followed():
    """Row A9b: 0.2303 mol/L at 17 % and 15 °C is printed for 0.5303 = 170 g/kg x 1.0677 / 342.3."""
    moles = 0.17 * kg_m3(17, 15) / 342.3

    assert moles == pytest.approx(0.5303, abs=0.001)


@given(st.floats(0, 60))
def test_gravity_to_brix_agrees_with_density(degrees):
    """Two roads: the cubic in print against the density fitted to other tables; ± 0.1 °Brix."""
    back = brix_from_gravity(max(1.0, syrup_gravity(percent(degrees))))

    assert degrees == pytest.approx(back.magnitude, abs=0.1)


@given(st.floats(1.0, 1.13))
def test_the_two_formulas_agree_on_thin_syrup(gravity):
    """Cubic and rational, to 30 °Brix: ± 0.005."""
    cubic = brix_from_gravity(gravity)
    rational = brix_from_gravity(gravity, formula="rational")

    assert cubic.magnitude == pytest.approx(rational.magnitude, abs=0.005)


@given(st.floats(1, 1e4), st.floats(0.1, 85))
def test_brix_to_sugar_and_back(water_g, degrees):
    """There and back, in ounces as in grams."""
    sugar = sugar_for_syrup(grams(water_g).to("oz"), percent(degrees))

    assert degrees == pytest.approx(brix(sugar, grams(water_g)).magnitude, rel=1e-12)
    assert str(sugar.units) == "ounce"


@given(st.floats(0.01, 82), st.floats(0, 3000))
def test_brix_to_boiling_point_and_back(degrees, height_m):
    """There and back at any altitude."""
    altitude = Q_(height_m, "m")
    boiling = syrup_boiling_point(percent(degrees), altitude)

    assert degrees == pytest.approx(brix_from_boiling_point(boiling, altitude).magnitude, abs=1e-6)


@given(st.floats(0, 69), st.floats(0.1, 1))
def test_a_stronger_syrup_is_heavier_and_boils_hotter(degrees, more):
    """Monotonicity."""
    assert kg_m3(degrees + more) > kg_m3(degrees)
    assert rise(degrees + more) > rise(degrees)


@given(st.floats(10, 29))
def test_a_warm_syrup_is_lighter(temperature_C):
    """Monotonicity in temperature."""
    assert kg_m3(50, temperature_C + 1) < kg_m3(50, temperature_C)


@given(st.floats(10, 1e4), st.floats(1, 30), st.floats(0, 50))
def test_reduced_and_then_diluted_weighs_as_before(weight_g, start, more):
    """There and back: reduce, then dilute; and the sugar in it never changed."""
    start, target = percent(start), percent(start + more)
    reduced = reduce_to(grams(weight_g), start, target)
    sugar_g = reduced.magnitude * target.magnitude / 100

    assert weight_g == pytest.approx(dilute_to(reduced, target, start).magnitude, rel=1e-12)
    assert weight_g * start.magnitude / 100 == pytest.approx(sugar_g, rel=1e-12)


def test_without_sugar_it_is_water():
    """Limits: 998.207 kg/m³ at 20 °C and 99.974 °C at the boil (IAPWS-95)."""
    assert kg_m3(0) == pytest.approx(998.207, abs=0.01)
    assert boils(0) == pytest.approx(99.974, abs=0.01)


def test_every_stage_is_found_at_its_own_temperature():
    """The middle of each printed band gives that band, in each source."""
    for source in ("McGee", "Candy Cook Book", "Greer"):
        for stage, (low, high) in sugar_stages(source).items():
            middle = celsius((low.magnitude + high.magnitude) / 2)

            assert stage == sugar_stage(middle, source=source)


def test_mcgees_two_scales_part_at_the_dark_caramels():
    """Printed 375 °F beside 188 °C and 410 °F beside 205 °C: by arithmetic 190.6 and 210.0."""
    dark, black = Q_(375, "degF").to("degC").magnitude, Q_(410, "degF").to("degC").magnitude

    assert dark - sugar_stages()["dark caramel"].low.magnitude == pytest.approx(2.6, abs=0.05)
    assert black - sugar_stages()["black caramel"].low.magnitude == pytest.approx(5.0, abs=0.05)


@pytest.mark.parametrize(
    ("degrees_C", "stage"),
    [
        (95, "below thread"),
        (112.9, "thread"),
        (113, "soft ball"),
        (121, "hard ball"),
        (146, "between soft crack and hard crack"),
        (171.1, "light caramel"),
        (196, "between dark caramel and black caramel"),
        (214, "beyond black caramel"),
    ],
)
def test_stages_by_hand(degrees_C, stage):
    """Read off McGee's table; bounds that touch go to the hotter stage."""
    assert stage == sugar_stage(celsius(degrees_C))


def test_the_same_sugar_is_a_ball_earlier_on_a_mountain():
    """By hand: at 1525 m (5 x 305) the firm ball of 118 to 121 °C is at 113 to 116 °C."""
    low, high = sugar_stages(altitude=Q_(1525, "m"))["firm ball"]

    assert (low.magnitude, high.magnitude) == pytest.approx((113, 116), abs=1e-9)
    assert sugar_stage(celsius(114), altitude=Q_(1525, "m")) == "firm ball"


def test_whole_arrays_can_be_asked_for():
    """A curve for a figure: each point as by itself."""
    curve = syrup_density(percent(np.array([10.0, 60.0]))).to("kg/m**3").magnitude

    assert [kg_m3(10), kg_m3(60)] == pytest.approx(list(curve), rel=1e-12)


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: brix(grams(50), Q_(5, "min")), WrongKind, "water: needs a weight"),
        (lambda: brix(Q_(1, "us_cup"), grams(50)), WrongKind, "sugar: needs a weight"),
        (lambda: sugar_for_syrup(grams(50), 30), WrongKind, r'brix: .*Q_\(30, "percent"\)'),
        (lambda: syrup_density(percent(85)), OutOfRange, "brix: needs at most 70 %"),
        (lambda: syrup_density(percent(5), celsius(80)), OutOfRange, "temperature: needs at most"),
        (lambda: brix_from_gravity(0.9), OutOfRange, "gravity: needs a number from 1 to 1.29"),
        (lambda: brix_from_gravity(1.2, "rational"), OutOfRange, "from 1 to 1.13"),
        (lambda: brix_from_gravity(1.2, "plato"), UnknownName, "formula: 'plato' is not one of"),
        (lambda: syrup_boiling_point(percent(90)), OutOfRange, "brix: needs at most 82"),
        (lambda: brix_from_boiling_point(celsius(120)), OutOfRange, "temperature: needs at most"),
        (lambda: sugar_stage(celsius(240)), OutOfRange, "temperature: needs at most 215 °C"),
        (lambda: sugar_stage(115), WrongKind, r'temperature: .*Q_\(115, "degC"\)'),
        (lambda: sugar_stages("grandmother"), UnknownName, "source: 'grandmother'"),
        (lambda: altitude_drop(Q_(9000, "m")), OutOfRange, "altitude: needs at most 3050 m"),
        (
            lambda: reduce_to(grams(50), percent(20), percent(10)),
            OutOfRange,
            "target: 10 % is weaker .*see dilute_to",
        ),
        (
            lambda: dilute_to(grams(50), percent(10), percent(20)),
            OutOfRange,
            "target: 20 % is stronger .*see reduce_to",
        ),
        (lambda: reduce_to(Q_(1, "L"), percent(5), percent(9)), WrongKind, "weight: needs a wei"),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
