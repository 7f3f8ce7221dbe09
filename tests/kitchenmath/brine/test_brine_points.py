"""Saturation, freezing and boiling of brine against handbooks, CoolProp and sea water."""

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from kitchenmath.brine import (
    SALT_MOLAR_MASS,
    brine_boiling_point,
    freezing_point,
    molality,
    saturation,
    sodium_in,
    strength,
    strength_from_molality,
)
from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import percent

SALT_INSTITUTE = "Salt Institute, physical data of sodium chloride (saltinstitute.org)"
LANGE = "Lange's Handbook of Chemistry, 15th ed., table 5.13 (yumpu.com 21974083)"
CRC_56 = "CRC Handbook, 56th ed., D-252/253, quoted at madsci.org"
CRC_LATER = "CRC Handbook, later editions"
SMITHSONIAN = "Smithsonian table reprinted in CRC (zanotowane.pl/1028/6486)"
COOLPROP = "CoolProp INCOMP::MNA, T_freeze"
OREGON = "Hilderbrand, Oregon State University SG 22"
SMITH = "H2O-NaCl diagram, Smith College (Brady 2009)"
COLLIGATIVE = "textbook colligative value (mecheasyconcepts.blogspot.com)"
GENERAL = "general chemistry value, 35.9 g per 100 g water"


def freezes(strength_percent):
    return freezing_point(percent(strength_percent)).to("degC").magnitude


def boils(strength_percent):
    return brine_boiling_point(percent(strength_percent)).to("degC").magnitude


def rise(strength_percent):
    return boils(strength_percent) - boils(0)


def full(number, unit="degC"):
    return saturation(Q_(number, unit)).magnitude


def depression(moles):
    strength = strength_from_molality(Q_(moles, "mol/kg"))
    return -freezing_point(strength).to("degC").magnitude


LANGE_ROWS = {
    1: -0.58, 2: -1.13, 3: -1.72, 4: -2.35, 5: -2.97, 6: -3.63, 7: -4.32, 8: -5.03, 9: -5.77,
    15: -10.88, 16: -11.90, 17: -12.93, 19: -15.21, 20: -16.46, 21: -17.78, 22: -19.19,
    23: -20.69, 23.3: -21.1,
}  # fmt: skip
CRC_56_ROWS = {1: -0.6, 3: -1.8, 5: -3.0, 10: -6.6, 15: -10.9, 20: -16.5, 23: -20.7}

PUBLISHED = (
    Published("S1 full brine at 0 °C", SALT_INSTITUTE, "seen", 26.30, lambda: full(0), 0.05,
    by="formula"),
    Published("S1 full brine at 10 °C", SALT_INSTITUTE, "seen", 26.36, lambda: full(10), 0.05,
    by="formula"),
    Published("S2 full brine at 60 °F", SALT_INSTITUTE, "seen", 26.395,
              lambda: full(60, "degF"), 0.005, by="formula"),
    Published("S3 full brine at 70 °F", SALT_INSTITUTE, "seen", 26.45,
              lambda: full(70, "degF"), 0.05, by="formula"),
    Published("S3 full brine at 80 °F", SALT_INSTITUTE, "seen", 26.52,
              lambda: full(80, "degF"), 0.05, by="formula"),
    Published("S3 full brine at 100 °C", SALT_INSTITUTE, "seen", 28.12, lambda: full(100), 0.05,
    by="formula"),
    Published("S4 full brine at 25 °C", GENERAL, "memory", 26.42, lambda: full(25), 0.1,
    by="formula"),
    Published("S4 35.9 g in 100 g water", GENERAL, "memory", 26.42,
              lambda: strength(Q_(35.9, "g"), Q_(100, "g")).magnitude, 0.1, by="formula"),
    Published("S5 molar mass", SALT_INSTITUTE, "seen", 58.4428,
              lambda: SALT_MOLAR_MASS.to("g/mol").magnitude, 1e-3, by="table"),
    Published("S5 sodium in 100 g", SALT_INSTITUTE, "seen", 39.337,
              lambda: sodium_in(Q_(100, "g")).magnitude, 1e-3, by="table"),
    Published("S14 eutectic, °F", OREGON, "seen", -6,
              lambda: freezing_point(percent(23.3)).to("degF").magnitude, 0.5, by="formula"),
    *(Published(f"B19 {share} %, mol/kg", "M = 58.4428 g/mol", "computed", moles,
                lambda share=share: molality(percent(share)).magnitude, 1e-4, by="formula")
      for share, moles in ((5, 0.90057), (10, 1.90119), (20, 4.27769))),
    *(Published(f"F1-F18 {share} % freezes", LANGE, "seen", point,
                lambda share=share: freezes(share), 0.10,
                by="formula") for share, point in LANGE_ROWS.items()),
    *(Published(f"F19 {share} % freezes", CRC_56, "quoted", point,
                lambda share=share: freezes(share), 0.1,
                by="formula") for share, point in CRC_56_ROWS.items()),
    *(Published(f"F21 {share} % freezes", CRC_LATER, "memory", point,
                lambda share=share: freezes(share), 0.03, by="formula")
      for share, point in ((5, -3.05), (10, -6.56), (15, -10.89), (20, -16.46))),
    *(Published(f"F22 {share} % freezes", COOLPROP, "computed", point,
                lambda share=share: freezes(share), 0.05, by="formula")
      for share, point in ((5, -3.05), (10, -6.55), (15, -10.90), (20, -16.46))),
    *(Published(f"F23 {moles} mol/kg, depression", SMITHSONIAN, "quoted", drop,
                lambda moles=moles: depression(moles), 0.02, by="formula")
      for moles, drop in ((0.05, 0.18), (0.10, 0.35), (0.25, 0.85), (0.50, 1.68))),
    Published("F24 eutectic", SALT_INSTITUTE, "seen", -21.12, lambda: freezes(23.31), 0.1,
    by="formula"),
    Published("T5-16 the full brine boils", SMITH, "seen", 108.7, lambda: boils(28.40), 0.3,
    by="formula"),
    Published("T5-16 full brine at its boil", SMITH, "seen", 28.40, lambda: full(108.7), 0.05,
    by="formula"),
    Published("T5-18 half a mole raises the boil", COLLIGATIVE, "seen", 0.5,
              lambda: rise(100 * 29.2214 / 1029.2214), 0.03, by="formula"),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


@pytest.mark.parametrize("strength_percent", range(1, 21))
def test_freezing_agrees_with_coolprop(strength_percent):
    """CoolProp INCOMP::MNA to 20 %; it drifts near its end, so not beyond. ± 0.05 °C."""
    fluid = f"INCOMP::MNA[{strength_percent / 100}]"
    expected = PropsSI("T_freeze", "T", 300, "P", 101325, fluid) - 273.15

    assert freezes(strength_percent) == pytest.approx(expected, abs=0.05)


def test_brine_does_not_freeze_by_the_ideal_rule():
    """Row F25: 2 x 1.86 x 1.901 = 7.07 °C at 10 %, half a degree more than is measured."""
    ideal = -2 * 1.86 * molality(percent(10)).magnitude

    assert -7.07 == pytest.approx(ideal, abs=0.005)
    assert freezes(10) - ideal == pytest.approx(0.51, abs=0.03)


def test_the_boil_rises_with_both_ions_of_the_salt():
    """Row T5-17: 58 g to a kilo of water is + 1.0 °C (2 ions); the rule of + 0.5 counts one."""
    assert rise(100 * 58 / 1058) == pytest.approx(1.0, abs=0.06)


@pytest.mark.parametrize(
    ("strength_percent", "sea_rise"), [(1.7, 0.240), (3.5, 0.517), (5, 0.766), (10, 1.712)]
)
def test_brine_boils_somewhat_higher_than_sea_water(strength_percent, sea_rise):
    """Sea salt has heavier ions, so fewer a gram: Hakuta, Goto & Ishizaka 1974 (row T5-19)."""
    x, t = strength_percent, 100
    hakuta = (
        0.528764e-1 * x + 0.826030e-3 * x * t - 0.315082e-7 * x * t**2
        + 0.320553e-2 * x**2 - 0.144367e-4 * x**2 * t + 0.184416e-6 * x**2 * t**2
    )  # fmt: skip

    assert hakuta == pytest.approx(sea_rise, abs=0.02)
    assert 1.05 < rise(strength_percent) / hakuta < 1.2


def test_sea_water_freezes_higher_than_brine_of_table_salt():
    """Row W5: sea water of 35.165 g/kg freezes at -1.919 °C (TEOS-10), 0.2 °C above NaCl."""
    assert -1.919 - freezes(3.516504) == pytest.approx(0.19, abs=0.05)


def test_23_percent_is_not_a_full_brine():
    """A page on science outreach says so; 23.3 % is the coldest brine, 26.4 % the fullest."""
    assert full(20) - 23.31 > 3


@given(st.floats(0, 23), st.floats(0.01, 0.3))
def test_more_salt_freezes_lower_and_boils_higher(strength_percent, more):
    """Monotonicity."""
    assert freezes(strength_percent + more) < freezes(strength_percent)
    assert boils(strength_percent + more) > boils(strength_percent)


def test_without_salt_it_is_water():
    """Limits: 0 °C and, by IAPWS-95 at 1 atm, 99.974 °C."""
    assert freezes(0) == 0
    assert boils(0) == pytest.approx(99.974, abs=0.01)


def test_brine_boils_lower_on_a_mountain():
    """US Standard Atmosphere and IAPWS: water boils at 94.98 °C at 1500 m, 4.99 °C lower."""
    high = brine_boiling_point(percent(20), Q_(1500, "m")).to("degC").magnitude

    assert boils(20) - high == pytest.approx(4.99, abs=0.03)


@given(st.floats(0, 28.4))
def test_strength_to_molality_and_back(strength_percent):
    """There and back."""
    back = strength_from_molality(molality(percent(strength_percent)))

    assert strength_percent == pytest.approx(back.magnitude, abs=1e-9)


@given(st.floats(0, 108))
def test_a_warmer_brine_holds_more(temperature_C):
    """Monotonicity."""
    assert full(temperature_C + 0.5) > full(temperature_C)


@given(st.floats(1, 1e4))
def test_sodium_is_the_same_in_grams_and_ounces(grams):
    """Unit invariance."""
    in_ounces = sodium_in(Q_(grams, "g").to("oz")).to("g")

    assert sodium_in(Q_(grams, "g")).magnitude == pytest.approx(in_ounces.magnitude, rel=1e-12)


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: saturation(Q_(-5, "degC")), OutOfRange, "temperature: needs at least 0 °C"),
        (lambda: saturation(Q_(5, "delta_degC")), WrongKind, "temperature: "),
        (lambda: freezing_point(percent(25)), OutOfRange, "strength: needs at most 23.31 %"),
        (lambda: freezing_point(5), WrongKind, r'Q_\(5, "percent"\)'),
        (lambda: brine_boiling_point(percent(30)), OutOfRange, "strength: 30 % is more salt than"),
        (lambda: strength_from_molality(Q_(9, "mol/kg")), OutOfRange, "molality: "),
        (lambda: sodium_in(Q_(5, "percent")), WrongKind, "salt: needs a weight"),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
