"""Salometer and Baumé degrees against the trade's tables."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenmath.brine import (
    baume_from_gravity,
    brine_density,
    brine_parts,
    gravity_from_baume,
    salometer,
    salt_for_brine,
    salt_per_litre_of_brine,
    salt_per_litre_of_water,
    strength_from_salometer,
)
from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import percent

SALT_INSTITUTE = "Salt Institute and Seafish figures"
CANNING = "canning trade paper (spotidoc.com/doc/221243)"
SALTBRINE = "Preparing a Saltbrine, Ontario and British Columbia (studylib.net/doc/18269019)"
ILO = "ILO, small-scale fish processing manual (nzdl.org)"
SEAFISH = "Seafish, brining table (seafoodacademy.org/brining-activity.php)"
GLOSSARY = "conservation glossary (cool.conservation-us.org)"
ENCYCLOPAEDIA = "encyclopaedia copy, modulus for 15 °C"


def strong(degrees, **how):
    return strength_from_salometer(degrees, **how).magnitude


# Degrees, percent, g salt to 1 L water, L of brine from it, g in 1 L of brine, kg water and g
# salt in 1 L of brine.
SEAFISH_ROWS = (
    ("K1", 10, 2.64, 27.07, 1.01, 1016.8, 0.990, 26.8),
    ("K2", 20, 5.28, 55.66, 1.02, 1035.6, 0.981, 54.6),
    ("K3", 30, 7.92, 86.01, 1.03, 1055.6, 0.972, 83.6),
    ("K4", 40, 10.56, 117.98, 1.04, 1075.5, 0.962, 113.5),
    ("K5", 50, 13.20, 151.95, 1.05, 1095.5, 0.951, 144.5),
    ("K6", 60, 15.84, 188.18, 1.06, 1115.7, 0.939, 176.7),
    ("K7", 80, 21.12, 267.69, 1.10, 1157.4, 0.913, 244.4),
    ("K8", 90, 23.75, 311.57, 1.11, 1179.1, 0.899, 280.1),
    ("K9", 100, 26.40, 358.82, 1.13, 1201.2, 0.884, 317.2),
)


def litres_of_brine(share):
    """From a kilo of water."""
    made_g = Q_(1000 + salt_for_brine(Q_(1000, "g"), percent(share)).magnitude, "g")
    return (made_g / brine_density(percent(share))).to("L").magnitude


def sixty(unit, share=15.8):
    return salt_per_litre_of_water(percent(share)).to(unit).magnitude


PUBLISHED = (
    Published("S6 the full brine", SALT_INSTITUTE, "seen", 26.395, lambda: strong(100), 0,
    by="table"),
    Published("S6 degrees of 10 %", SALT_INSTITUTE, "computed", 37.886,
              lambda: salometer(percent(10)), 5e-4, by="formula"),
    Published("S7 canning scale", CANNING, "seen", 25,
              lambda: strong(100, scale="canning"), 0, by="formula"),
    Published("S8 60° read at 80 °F is 62°", SALTBRINE, "seen", 62,
              lambda: salometer(strength_from_salometer(60, Q_(80, "degF"))), 0.5, by="formula"),
    Published("S9 60°", SALTBRINE, "seen", 15.8, lambda: strong(60), 0.05, by="formula"),
    Published("S10 60°, lb to an imperial gallon", SALTBRINE, "seen", 1.882,
              lambda: sixty("lb/uk_gallon"), 0.01, by="formula"),
    Published("S10 60°, g to a litre of water", SALTBRINE, "seen", 187.8,
              lambda: sixty("g/L"), 0.5, by="formula"),
    Published("S11 60°, lb to 15 imperial gallons", SALTBRINE, "seen", 28.23,
              lambda: 15 * sixty("lb/uk_gallon"), 0.1, by="formula"),
    Published("S11 60°, kg to 68 L", SALTBRINE, "seen", 12.8,
              lambda: 68 * sixty("kg/L"), 0.1, by="formula"),
    Published("S12 60°, lb to a US gallon", SALTBRINE, "computed", 1.567,
              lambda: sixty("lb/us_gallon"), 0.01, by="formula"),
    Published("S13 full brine, g to a litre", ILO, "seen", 360,
              lambda: sixty("g/L", 26.395), 3, by="formula"),
    *(Published(f"{row} {degrees}°, percent", SEAFISH, "seen", share,
                lambda degrees=degrees: strong(degrees), 0.02, by="formula")
      for row, degrees, share, *_ in SEAFISH_ROWS),
    *(Published(f"{row} {degrees}°, g to a litre of water", SEAFISH, "seen", grams,
                lambda share=share: sixty("g/L", share), 0.15, by="formula")
      for row, degrees, share, grams, *_ in SEAFISH_ROWS),
    *(Published(f"{row} {degrees}°, litres of brine", SEAFISH, "seen", litres,
                lambda share=share: litres_of_brine(share), 0.01, by="formula")
      for row, degrees, share, _, litres, *_ in SEAFISH_ROWS),
    *(Published(f"{row} {degrees}°, g of a litre of brine", SEAFISH, "seen", grams,
                lambda share=share: brine_density(percent(share)).to("g/L").magnitude, 1.5,
                by="formula")
      for row, degrees, share, _, _, grams, *_ in SEAFISH_ROWS),
    *(Published(f"{row} {degrees}°, kg of water in a litre of brine", SEAFISH, "seen", kilos,
                lambda share=share: brine_parts(Q_(1, "L"), percent(share)).water.to("kg")
                .magnitude, 0.0015, by="formula")
      for row, degrees, share, *_, kilos, _ in SEAFISH_ROWS),
    *(Published(f"{row} {degrees}°, g of salt in a litre of brine", SEAFISH, "seen", grams,
                lambda share=share: salt_per_litre_of_brine(percent(share)).magnitude, 0.5,
                by="formula")
      for row, degrees, share, *_, grams in SEAFISH_ROWS),
    Published("Baumé of gravity 1.2", GLOSSARY, "computed", 24.17,
              lambda: baume_from_gravity(1.2), 0.01, by="formula"),
    Published("Baumé of gravity 1.2, other modulus", ENCYCLOPAEDIA, "seen", 24.05,
              lambda: baume_from_gravity(1.2, modulus=144.32), 0.01, by="formula"),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


def test_a_litre_of_water_and_a_litre_of_brine_are_told_apart():
    """Rows S10 and K6: "g/L" at 60° is 188 g to a litre of water, 177 g in one of brine: 6 %."""
    to_water = salt_per_litre_of_water(percent(15.84)).magnitude
    in_brine = salt_per_litre_of_brine(percent(15.84)).magnitude

    assert to_water / in_brine == pytest.approx(188.18 / 176.7, abs=0.002)


@pytest.mark.parametrize("strength_percent", [5, 10, 15.84, 20, 24])
@pytest.mark.parametrize("temperature_C", [10, 20, 25, 30])
def test_the_rule_for_warm_brine_is_what_its_density_says(strength_percent, temperature_C):
    """A float sinks to equal density: read our density curve at 60 °F backwards. ± 0.7°."""
    at_60_f = Q_(60, "degF")
    shares = np.linspace(0, 26.39, 1001)
    curve = brine_density(percent(shares), at_60_f).to("g/L").magnitude
    floated = brine_density(percent(strength_percent), Q_(temperature_C, "degC")).to("g/L")
    seen = salometer(percent(np.interp(floated.magnitude, curve, shares)))
    by_rule = salometer(percent(strength_percent), Q_(temperature_C, "degC"))

    assert seen == pytest.approx(by_rule, abs=0.7)


@given(st.floats(0.6, 24.5), st.floats(10, 30), st.sampled_from(["full brine", "canning"]))
def test_brine_to_salometer_and_back(strength_percent, temperature_C, scale):
    """There and back: strength -> degrees -> strength."""
    temperature = Q_(temperature_C, "degC")
    degrees = salometer(percent(strength_percent), temperature, scale)
    back = strength_from_salometer(degrees, temperature, scale)

    assert strength_percent == pytest.approx(back.magnitude, abs=1e-8)


@given(st.floats(1, 1.9), st.floats(140, 150))
def test_gravity_to_baume_and_back(gravity, modulus):
    """There and back."""
    degrees = baume_from_gravity(gravity, modulus)

    assert gravity == pytest.approx(gravity_from_baume(degrees, modulus), rel=1e-12)


@given(st.floats(0, 94), st.floats(0.1, 5))
def test_more_degrees_are_more_salt(degrees, more):
    """Monotonicity."""
    assert strong(degrees + more) > strong(degrees)


def test_water_is_0_on_every_scale():
    """Limits: 0° of a salometer, 0° Baumé, gravity 1."""
    assert salometer(percent(0)) == 0
    assert baume_from_gravity(1) == 0
    assert gravity_from_baume(0) == 1


def test_a_ratio_of_two_densities_is_a_gravity():
    """By hand: 1.2 / 1 without its unit is 1.2, so 24.17° Baumé."""
    ratio = Q_(1.2, "g/mL") / Q_(1, "kg/L")

    assert baume_from_gravity(ratio) == pytest.approx(24.1667, abs=1e-4)


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: salometer(0.05), WrongKind, r'Q_\(0.05, "percent"\)'),
        (lambda: salometer(percent(27)), OutOfRange, "strength: needs at most 26.395 %"),
        (lambda: salometer(percent(26), scale="canning"), OutOfRange, "at most 25.0 %"),
        (lambda: salometer(percent(5), Q_(2, "degC")), OutOfRange, "temperature: "),
        (lambda: strong(60, scale="old"), UnknownName, "scale: 'old' is not one of"),
        (lambda: strong(160), OutOfRange, "degrees: needs a number from -5 to 105"),
        (lambda: strong(100, temperature=Q_(80, "degF")), OutOfRange, "degrees, corrected: "),
        (lambda: strong(percent(60)), WrongKind, "degrees: .* and 60 % came"),
        (lambda: strong(Q_(60, "degF")), WrongKind, "degrees: "),
        (lambda: strong("60"), WrongKind, "degrees: needs a plain number"),
        (lambda: baume_from_gravity(0.9), OutOfRange, "gravity: needs a number from 1 to 2"),
        (lambda: baume_from_gravity(1.1, modulus=130), OutOfRange, "modulus: "),
        (lambda: gravity_from_baume(float("nan")), OutOfRange, "degrees: "),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
