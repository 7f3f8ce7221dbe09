"""Moist air and wet surfaces against CoolProp's humid air, and by hand."""

import numpy as np
import pytest
from CoolProp.CoolProp import HAPropsSI
from hypothesis import given
from hypothesis import strategies as st

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.heat import Stage, WetSurface, wet_bulb
from kitchenmath.heat.steam import moisture
from kitchenmath.heat.wet import SurfaceLaw
from kitchenmath.units.registry import Q_
from tests.helpers.quantities import celsius, percent


def settles(surroundings, **wet):
    stage = Stage(
        celsius(surroundings), Q_(25, "W/m**2/K"), Q_(1, "h"), wet=WetSurface(**wet)
    )  # fmt: skip
    return stage.settles_at.to("degC").magnitude


@pytest.mark.parametrize(
    ("air", "humidity"),
    [
        (5, 60), (20, 50), (25, 10), (30, 80), (60, 10), (60, 50), (90, 5), (90, 30), (120, 10),
        (150, 0.2), (150, 5), (180, 0.1), (180, 1), (180, 3), (220, 0.5),
    ],
)  # fmt: skip
def test_the_wet_bulb_is_that_of_humid_air(air, humidity):
    """Referee: CoolProp HAPropsSI, thermodynamic wet bulb; within the 0.15 K of the docstring."""
    state = ("T", air + 273.15, "R", humidity / 100, "P", 101325)

    assert HAPropsSI("B", *state) - 273.15 == pytest.approx(
        wet_bulb(celsius(air), humidity=percent(humidity)).magnitude, abs=0.15
    )


@pytest.mark.parametrize(("air", "steam"), [(30, 2), (60, 12), (100, 30), (180, 1), (180, 20)])
def test_the_share_of_steam_is_the_mole_fraction(air, steam):
    """Referee: CoolProp's wet bulb by the mole fraction of water."""
    state = ("T", air + 273.15, "psi_w", steam / 100, "P", 101325)

    assert HAPropsSI("B", *state) - 273.15 == pytest.approx(
        wet_bulb(celsius(air), steam=percent(steam)).magnitude, abs=0.15
    )


@pytest.mark.parametrize("bar", [0.7, 0.85, 1.013])
def test_a_mountain_kitchen_has_a_colder_wet_bulb(bar):
    """Referee: CoolProp under the same pressure."""
    state = ("T", 150 + 273.15, "psi_w", 0.1, "P", bar * 1e5)

    assert HAPropsSI("B", *state) - 273.15 == pytest.approx(
        wet_bulb(celsius(150), steam=percent(10), pressure=Q_(bar, "bar")).magnitude, abs=0.15
    )


@pytest.mark.parametrize(("air", "humidity"), [(20, 50), (60, 30), (90, 40)])
def test_moisture_is_that_of_humid_air(air, humidity):
    """Referee: CoolProp's kilos of steam for each kilo of dry air; real air holds 0.6 % more."""
    state = ("T", air + 273.15, "R", humidity / 100, "P", 101325)
    found, _ = WetSurface(humidity=percent(humidity)).moist_air(air)

    assert HAPropsSI("W", *state) == pytest.approx(found, rel=0.012)


def test_moisture_by_hand():
    """0.62198 x 30 / 70 = 0.26656 kg of steam for a kilo of air, with 30 % by volume."""
    assert moisture(30.0, 100.0) == pytest.approx(0.266563, rel=1e-5)


ovens = st.tuples(st.floats(70, 250), st.floats(1, 25))


@given(ovens)
def test_a_wet_surface_without_radiation_settles_at_the_wet_bulb(oven):
    """There and back: the wet bulb of the steam gives the same place as the steam."""
    air, steam = oven
    bulb = wet_bulb(celsius(air), steam=percent(steam))

    assert bulb.magnitude == pytest.approx(settles(air, steam=percent(steam)), abs=1e-9)
    assert bulb.magnitude == pytest.approx(settles(air, wet_bulb=bulb), abs=1e-6)
    assert bulb.magnitude == pytest.approx(settles(air, wet_bulb=bulb.to("degF")), abs=1e-6)


@given(ovens, st.floats(1, 99))
def test_radiation_lifts_the_surface_above_the_wet_bulb(oven, radiant):
    """Monotonicity: it brings heat but takes no steam away; never up to boiling while wet."""
    air, steam = oven
    bulb = wet_bulb(celsius(air), steam=percent(steam)).magnitude
    lifted = settles(air, steam=percent(steam), radiant=percent(radiant))

    assert bulb < lifted < min(air, 99.98)


@given(ovens, st.floats(5, 90))
def test_where_it_settles_nothing_goes_in_or_out(oven, radiant):
    """The balance itself: heat from the air less evaporation is nought there, to 0.01 W/m2."""
    air, steam = oven
    wet = WetSurface(steam=percent(steam), radiant=percent(radiant))
    law = SurfaceLaw(air, 25.0, wet)

    assert law.inward(law.settled_C()) == pytest.approx(0, abs=0.01)


@given(ovens, st.floats(0, 60), st.floats(1e-5, 0.1))
def test_the_surface_found_obeys_its_equation(oven, inside, gain):
    """T = inside + gain x flux(T), one at a time and many at once."""
    air, steam = oven
    law = SurfaceLaw(air, 25.0, WetSurface(steam=percent(steam)))
    surface = law.surface_C(inside, gain, inside)
    many = law.surfaces_C(np.array([inside]), gain, np.array([surface]))

    assert inside + gain * law.inward(surface) == pytest.approx(surface, abs=1e-4)
    assert surface == pytest.approx(many[0], abs=1e-4)


def test_the_flux_is_heat_less_evaporation():
    """By hand at 60 °C in air of 180 °C with 30 % steam and 25 W/m2/K.

    w = 0.62198 x 0.3 / 0.7 = 0.26656; saturated at 60 °C (19.95 kPa) 0.62198 x 19.95 / 81.38
    = 0.15245; humid heat 1.006 + 1.86 x 0.26656 = 1.5018 kJ/kg/K; latent heat 2357.7 kJ/kg.
    Steam condenses: 25 x 120 + 25 / 1.5018 x 2357.7 x (0.26656 - 0.15245) = 3000 + 4479 W/m2.
    """
    law = SurfaceLaw(180.0, 25.0, WetSurface(steam=percent(30)))

    assert law.inward(60.0) == pytest.approx(3000 + 4479, rel=1e-3)


def test_the_slope_of_evaporation_is_its_slope():
    """By differences, within the fiftieth of the docstring; Newton's steps need no better."""
    law = SurfaceLaw(180.0, 25.0, WetSurface(steam=percent(10)))
    for surface in (10.0, 45.0, 80.0):
        by_difference = (
            law.evaporation(surface + 0.01)[0] - law.evaporation(surface - 0.01)[0]
        ) / 0.02

        assert by_difference == pytest.approx(law.evaporation(surface)[1], rel=0.02)


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: WetSurface(), WrongKind, "none of them came"),
        (
            lambda: WetSurface(humidity=percent(5), steam=percent(5)),
            WrongKind,
            "humidity and steam",
        ),
        (lambda: WetSurface(humidity=0.5), WrongKind, "humidity: "),
        (lambda: WetSurface(humidity=percent(120)), OutOfRange, "humidity: needs at most 100"),
        (lambda: WetSurface(steam=percent(100)), OutOfRange, "steam: needs at most 95"),
        (lambda: WetSurface(wet_bulb=percent(50)), WrongKind, "wet_bulb: "),
        (lambda: WetSurface(steam=percent(5), radiant=percent(100)), OutOfRange, "radiant: "),
        (lambda: WetSurface(steam=percent(5), pressure=Q_(5, "Pa")), OutOfRange, "pressure: "),
        (lambda: settles(20, steam=percent(30)), OutOfRange, "steam: air of 20 °C holds at most"),
        (lambda: settles(180, humidity=percent(50)), OutOfRange, "humidity: air of 180 °C"),
        (lambda: settles(180, wet_bulb=celsius(30)), OutOfRange, "wet_bulb: .* between 42.8"),
        (lambda: settles(180, wet_bulb=celsius(100)), OutOfRange, "wet_bulb: "),
        (lambda: wet_bulb(celsius(400), steam=percent(5)), OutOfRange, "air: needs at most 300"),
        (lambda: wet_bulb(celsius(40)), WrongKind, "humidity: give one of"),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
