"""Thermal properties from composition against print, measurements and water's own formulation."""

import CoolProp.CoolProp as coolprop
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenmath.data.tables import table
from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.foods import Food, food, food_names, food_source
from kitchenmath.foods.components import component_values
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import celsius, percent

CHOI = "Choi and Okos (1986); ASHRAE Handbook Refrigeration 2006 ch. 9, Tables 1-2"
ASHRAE = "ASHRAE Handbook Refrigeration, Table 3"
SWEAT = "Sweat, Haugh and Stadelman 1973, J. Food Sci. 38"
MORLEY = "Morley 1972, via a Lawrie-type table 13.2"
GEANKOPLIS = "Geankoplis 4e, Table A.4-1"
EARLE = "Earle, Unit Operations in Food Processing, Appendix 7"
SINGH = "ASHRAE thermal diffusivity table (Singh 1982)"
PARTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash", "ice")


def mixed(**parts):
    return Food(**{name: percent(number) for name, number in parts.items()})


def heat(food_, at=20, after="Choi and Okos 1986"):
    return food_.specific_heat(celsius(at), after=after).to("kJ/kg/K").magnitude


def conductivity(food_, at=20, layers="parallel"):
    return food_.conductivity(celsius(at), layers=layers).to("W/m/K").magnitude


def density(food_, at=20):
    return food_.density(celsius(at)).to("kg/m**3").magnitude


def diffusivity(food_, at=20):
    return food_.diffusivity(celsius(at)).to("m**2/s").magnitude


BIRD = mixed(water=75, protein=23, fat=1, ash=1)
POTATO = mixed(water=78.96, protein=2.07, fat=0.10, carbohydrate=16.38, fibre=1.60, ash=0.89)
# Singh and Heldman's Example 4.1.
PASTE = mixed(carbohydrate=40, protein=20, fat=10, ash=5, water=25)
# Component: conductivity, density and specific heat at 20 °C (ice at -20 °C). Conductivities are
# written out to the tolerance, by hand from the coefficients: 0.57109 + 0.03525 - 0.00268144.
AT_20 = {
    "water": (0.60365856, 995.740, 4.17657),
    "protein": (0.20163888, 1319.532, 2.03185),
    "fat": (0.175118204, 917.239, 2.01175),
    "carbohydrate": (0.22742552, 1592.891, 1.58567),
    "fibre": (0.20703668, 1304.182, 1.88065),
    "ash": (0.35647924, 2418.187, 1.12892),
    "ice": (2.385194, 919.504, 1.94076),
}
# Water alone is known of these; the split of the rest is ours, for a lean or a fatty cut.
CUTS = {
    "chicken, lean": (mixed(water=73, protein=24, fat=2, ash=1), 3.39),
    "beef, lean": (mixed(water=72, protein=22, fat=5, ash=1), 3.43),
    "beef, fatty": (mixed(water=51, protein=15, fat=33, ash=1), 2.89),
    "pork, lean": (mixed(water=57, protein=16, fat=26, ash=1), 3.06),
    "veal": (mixed(water=63, protein=19, fat=17, ash=1), 3.22),
    "lamb leg": (mixed(water=57.8, protein=16, fat=25.2, ash=1), 3.18),
}

PUBLISHED = (
    *(Published(f"2.1 {part}, {name}", CHOI, "computed", value, lambda part=part, make=make:
                make(mixed(**{part: 100}), -20 if part == "ice" else 20), relative=1e-5,
                by="formula")
      for part, values in AT_20.items()
      for name, make, value in zip(("conductivity", "density", "specific heat"),
                                   (conductivity, density, heat), values, strict=True)),
    *(Published(f"T2-0{row} {name}, specific heat", ASHRAE, "seen", value,
                lambda name=name: heat(food(name)), relative=0.025, by="formula")
      for row, (name, value) in enumerate({"carrot": 3.92, "cabbage": 4.02, "sweet corn": 3.62,
                                           "garlic": 3.17, "cucumber": 4.09,
                                           "horseradish": 3.70}.items(), 1)),
    *(Published(f"T2-0{row} {name}, specific heat computed", CHOI, "computed", value,
                lambda name=name: heat(food(name)), relative=1e-3, by="formula")
      for row, (name, value) in enumerate({"carrot": 3.8708, "cabbage": 3.9843,
                                           "sweet corn": 3.5782, "garlic": 3.1334,
                                           "cucumber": 4.0773, "horseradish": 3.6672}.items(), 1)),
    Published("T2-07 potato, specific heat", CHOI, "computed", 3.6418,
              lambda: heat(POTATO), relative=1e-4, by="formula"),
    Published("T2-07 potato, density", CHOI, "computed", 1076.96,
              lambda: density(POTATO), relative=1e-4, by="formula"),
    Published("T2-07 potato, conductivity", CHOI, "computed", 0.54848,
              lambda: conductivity(POTATO), relative=1e-4, by="formula"),
    Published("T2-07 potato, diffusivity", CHOI, "computed", 1.3985e-7,
              lambda: diffusivity(POTATO), relative=1e-4, by="formula"),
    # Chen's equation; Choi and Okos's give 3.77 for this composition (from memory).
    Published("T2-08 apple, specific heat", ASHRAE, "seen", 3.81,
              lambda: heat(mixed(water=83.93, protein=0.19, fat=0.36, carbohydrate=12.55,
                                 fibre=2.70, ash=0.26), after="Chen 1985"), relative=0.005,
                                 by="formula"),
    Published("T2-09 cod, specific heat", ASHRAE, "seen", 3.77,
              lambda: heat(food("cod")), relative=0.01, by="formula"),
    Published("T2-09 pink salmon, specific heat", ASHRAE, "seen", 3.68,
              lambda: heat(food("pink salmon")), relative=0.01, by="formula"),
    Published("T2-09 beef round, specific heat", ASHRAE, "seen", 3.52,
              lambda: heat(food("beef round, lean")), relative=0.01, by="formula"),
    Published("T2-10 bird, density", CHOI, "computed", 1060.95,
              lambda: density(BIRD), relative=1e-4, by="formula"),
    Published("T2-10 bird, specific heat", CHOI, "computed", 3.6312,
              lambda: heat(BIRD), relative=1e-4, by="formula"),
    Published("T2-10 bird, conductivity, parallel", CHOI, "computed", 0.52327,
              lambda: conductivity(BIRD), relative=1e-4, by="formula"),
    Published("T2-10 bird, conductivity, series", CHOI, "computed", 0.43117,
              lambda: conductivity(BIRD, layers="series"), relative=1e-4, by="formula"),
    Published("T2-10 bird, diffusivity", CHOI, "computed", 1.3583e-7,
              lambda: diffusivity(BIRD), relative=1e-4, by="formula"),
    Published("T2-11 paste", "Singh and Heldman, Example 4.1", "memory", 2.14,
              lambda: heat(PASTE, after="Heldman and Singh 1981"), 0.005, by="formula"),
    Published("T2-12 paste by the older equation", "Heldman 1975 (studylib.net 9707268)", "seen",
              4.180 * 0.25 + 1.547 * 0.20 + 1.672 * 0.10 + 1.42 * 0.40 + 0.836 * 0.05,
              lambda: heat(PASTE, after="Heldman 1975"), 1e-12, by="formula"),
    Published("T2-13 carrot", "ASHRAE ch. 9 (Chen 1985)", "memory", 3.908,
              lambda: heat(food("carrot"), after="Chen 1985"), 0.0005, by="formula"),
    Published("T2-13 garlic", "ASHRAE ch. 9 (Chen 1985)", "memory", 3.193,
              lambda: heat(food("garlic"), after="Chen 1985"), 0.0005, by="formula"),
    Published("T2-14 75 % water, specific heat", EARLE, "seen", 3.3525,
              lambda: heat(BIRD, after="Earle 1983"), 1e-12, by="formula"),
    Published("2.3 chicken, white meat, conductivity", SWEAT, "seen", 0.488,
              lambda: conductivity(food("chicken breast")), relative=0.10, by="formula"),
    *(Published(f"2.3 {name}, specific heat", MORLEY, "seen", value,
                lambda cut=cut: heat(cut), relative=0.08,
                by="formula") for name, (cut, value) in CUTS.items()),
    Published("2.3 poultry, specific heat", GEANKOPLIS, "seen", 3.31,
              lambda: heat(mixed(water=74, protein=22, fat=3, ash=1)), relative=0.10, by="formula"),
    Published("2.3 potato, specific heat", GEANKOPLIS, "seen", 3.52,
              lambda: heat(mixed(water=75, protein=2, carbohydrate=20, fibre=2, ash=1)),
              relative=0.08, by="formula"),
    *(Published(f"2.3 carrot, specific heat from {value}", GEANKOPLIS, "seen", value,
                lambda: heat(food("carrot")), relative=0.08,
                by="formula") for value in (3.81, 3.94)),
    *(Published(f"2.3 apples of {water} % water, specific heat", GEANKOPLIS, "seen", value,
                lambda water=water: heat(mixed(water=water, carbohydrate=98 - water, fibre=2)),
                relative=0.08, by="formula") for water, value in ((75, 3.73), (85, 4.02))),
    Published("2.3 milk, specific heat", GEANKOPLIS, "seen", 3.85,
              lambda: heat(food("milk, whole")), relative=0.03, by="formula"),
    Published("2.3 butter, specific heat", GEANKOPLIS, "seen", 2.30,
              lambda: heat(food("butter, salted")), relative=0.03, by="formula"),
    Published("2.3 olive oil, specific heat", GEANKOPLIS, "seen", 2.01,
              lambda: heat(food("olive oil")), relative=0.03, by="formula"),
    Published("2.3 water, specific heat", GEANKOPLIS, "seen", 4.185,
              lambda: heat(food("water")), relative=0.03, by="formula"),
    *(Published(f"2.3 {name}, specific heat by water alone", EARLE, "seen", value,
                lambda water=water: heat(mixed(water=water, protein=100 - water),
                                         after="Earle 1983"), relative=0.08, by="formula")
      for name, water, value in (("apples", 84, 3.60), ("beef", 75, 3.22), ("fish", 70, 3.18),
                                 ("carrot", 88, 3.60))),
    Published("2.3 apple, diffusivity", SINGH, "seen", 1.37e-7,
              lambda: diffusivity(food("apple"), 15), relative=0.10, by="formula"),
    Published("2.3 beef round, diffusivity", SINGH, "seen", 1.33e-7,
              lambda: diffusivity(food("beef round, lean"), 50), relative=0.10, by="formula"),
    Published("2.3 cod, diffusivity", SINGH, "seen", 1.22e-7,
              lambda: diffusivity(food("cod"), 5), relative=0.12, by="formula"),
    Published("2.3 strawberry, diffusivity", SINGH, "seen", 1.27e-7,
              lambda: diffusivity(mixed(water=92, protein=0.6, carbohydrate=5.6, fibre=1.4,
                                        ash=0.4), 5), relative=0.12, by="formula"),
    Published("2.3 smoked ham, diffusivity", SINGH, "seen", 1.18e-7,
              lambda: diffusivity(mixed(water=64, protein=20, fat=12, ash=4), 5), relative=0.12,
              by="formula"),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


@pytest.mark.parametrize("at", [20, 60])
def test_water_of_the_model_is_near_the_water_of_iapws(at):
    """Referee: CoolProp (IAPWS-95). A print with 4.1289 for 4.1762 misses specific heat by 1 %."""
    state = ("T", at + 273.15, "P", 101325, "Water")
    water = food("water")

    assert coolprop.PropsSI("C", *state) / 1000 == pytest.approx(heat(water, at), rel=0.002)
    assert coolprop.PropsSI("L", *state) == pytest.approx(conductivity(water, at), rel=0.01)
    assert coolprop.PropsSI("D", *state) == pytest.approx(density(water, at), rel=0.01)


@pytest.mark.parametrize("part", ["protein", "fat", "carbohydrate", "fibre", "ash"])
@pytest.mark.parametrize("at", [0, 20, 60, 100])
def test_components_are_those_of_a_general_library(part, at):
    """Referee: CoolProp's incompressible food components (ASHRAE 2006), all but water's heat."""
    name = {"carbohydrate": "Carbohydrate", "fibre": "Fiber"}.get(part, part.capitalize())
    state = ("T", at + 273.15, "P", 1e6, f"INCOMP::Food{name}")
    pure = mixed(**{part: 100})

    assert coolprop.PropsSI("C", *state) / 1000 == pytest.approx(heat(pure, at), rel=1e-4)
    assert coolprop.PropsSI("L", *state) == pytest.approx(conductivity(pure, at), rel=1e-4)
    assert coolprop.PropsSI("D", *state) == pytest.approx(density(pure, at), rel=1e-4)


def test_misprints_of_copies_stay_out():
    """Each guard fails with the wrong digit that a copy prints (heat-conduction references)."""
    assert conductivity(mixed(fat=100), 60) > 0.14  # 2.7604e-3 for -2.7604e-4 gives 0.014
    assert heat(mixed(fat=100)) == pytest.approx(2.01175, abs=2e-5)  # 1.4373 for 1.4733e-3
    assert heat(mixed(fibre=100)) == pytest.approx(1.88065, abs=2e-5)  # 1.8906 for 1.8306e-3
    assert density(mixed(protein=100)) == pytest.approx(1319.532, abs=2e-3)  # .51810 for .51840
    assert conductivity(mixed(ice=100), -20) == pytest.approx(2.385194, abs=2e-5)  # 6.248e-2
    assert heat(food("water")) == pytest.approx(4.1841, rel=0.005)  # 4.1289 for 4.1762


# Diffusivity in 1e-6 m2/s by powers of °C, Choi and Okos's own polynomial for each component.
DIFFUSIVITIES = {
    "protein": (6.8714e-2, 4.7578e-4, -1.4646e-6),
    "carbohydrate": (8.0842e-2, 5.3052e-4, -2.3218e-6),
    "water": (1.3168e-1, 6.2477e-4, -2.4022e-6),
    "ash": (1.2461e-1, 3.7321e-4, -1.2244e-6),
    "fibre": (7.3976e-2, 5.1902e-4, -2.2202e-6),
    "fat": (9.8777e-2, -1.2569e-4, -3.8286e-8),
}


@pytest.mark.parametrize("part", DIFFUSIVITIES)
@pytest.mark.parametrize("at", [0, 20, 60])
def test_diffusivity_follows_from_the_three_others(part, at):
    """Choi and Okos fitted it on its own as well (last digits from memory): 8 % at most."""
    constant, linear, quadratic = DIFFUSIVITIES[part]
    printed = 1e-6 * (constant + linear * at + quadratic * at**2)

    assert printed == pytest.approx(diffusivity(mixed(**{part: 100}), at), rel=0.08)


def test_potato_lies_in_the_range_of_two_measurements():
    """Singh 1982: mashed 1.23e-7 at 5 °C, flesh 1.70e-7 at 25 °C."""
    assert 1.23e-7 < diffusivity(POTATO, 15) < 1.70e-7


def test_meat_across_the_grain_lies_between_the_two_ways_of_layering():
    """Sweat and others 1973, 0.488 W/m/K at 20 °C: above series (0.43), below parallel (0.52)."""
    breast = food("chicken breast")

    assert conductivity(breast, layers="series") < 0.488 < conductivity(breast)


def test_below_freezing_water_that_has_not_frozen_has_its_own_specific_heat():
    """Choi and Okos, -40 to 0 °C: 4.0817 + 0.0053062 x 20 + 9.9516e-4 x 400 = 4.5859."""
    assert heat(food("water"), -20) == pytest.approx(4.585888, rel=1e-6)


shares = st.lists(st.floats(0.01, 1), min_size=6, max_size=6)


@given(shares, st.floats(0, 120))
def test_series_never_carries_more_than_parallel(parts, at):
    """Both bounds of any mixture: the harmonic mean is never above the arithmetic one."""
    whole = sum(parts)
    mixture = mixed(
        **{name: 100 * part / whole for name, part in zip(PARTS[:6], parts, strict=True)}
    )

    assert conductivity(mixture, at, layers="series") <= conductivity(mixture, at) + 1e-12


@given(shares, st.floats(0, 120))
def test_a_mixture_lies_between_its_components(parts, at):
    """Limits: no mixture holds more heat than water or less than ash."""
    whole = sum(parts)
    mixture = mixed(
        **{name: 100 * part / whole for name, part in zip(PARTS[:6], parts, strict=True)}
    )
    heats = component_values("specific_heat", at)

    assert heats["ash"] <= heat(mixture, at) <= heats["water"]


def test_fahrenheit_gives_the_same():
    """Unit invariance: 68 °F is 20 °C."""
    cod = food("cod")

    assert cod.conductivity(celsius(20)).magnitude == pytest.approx(
        cod.conductivity(Q_(68, "degF")).magnitude, rel=1e-12
    )


def test_a_list_of_temperatures_gives_a_list():
    """One polynomial for many temperatures: the same as one by one."""
    at = np.array([0.0, 20.0, 60.0])
    expected = [conductivity(BIRD, each) for each in at]

    assert expected == pytest.approx(BIRD.conductivity(Q_(at, "degC")).magnitude, rel=1e-12)


def test_a_table_that_does_not_add_up_keeps_its_water():
    """By hand: 80 water + 18 protein = 98, so the protein counts as 20: 3.3413 + 0.4064."""
    food_ = mixed(water=80, protein=18)

    assert heat(food_) == pytest.approx(0.8 * 4.17657 + 0.2 * 2.03185, rel=1e-5)


def test_every_food_of_the_table_has_a_source_and_adds_up():
    """Each row makes a Food (97 to 103 %), and says where it is from."""
    assert len(food_names()) == len(table("foods.csv")) >= 20
    for name in food_names():
        assert food(name).density(celsius(20)).magnitude > 0.9
        assert food_source(name).endswith(")")


def test_composition_that_was_not_read_says_so():
    """Status beside the source: seen in ASHRAE, or from memory."""
    assert food_source("garlic").endswith("(seen)")
    assert "from memory" in food_source("cod")


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: food("carot"), UnknownName, "did you mean 'carrot'"),
        (lambda: food("salmon"), UnknownName, "'pink salmon' or 'salmon, farmed'"),
        (lambda: food("xyzzy"), UnknownName, "try food_names"),
        (lambda: food_source("xyzzy"), UnknownName, "no food 'xyzzy'"),
        (lambda: mixed(water=75), OutOfRange, "75 % and should be 100 %"),
        (lambda: mixed(water=88, fibre=3, carbohydrate=10, protein=3), OutOfRange, "fibre counted"),
        (lambda: Food(water=0.75), WrongKind, 'water: .*Q_(0.75, "percent")'),
        (lambda: Food(fat=Q_(5, "g")), WrongKind, "fat: needs a percent"),
        (lambda: mixed(water=110, fat=-10), OutOfRange, "water: needs at most 103 %"),
        (lambda: mixed(water=100, fat=-1), OutOfRange, "fat: needs at least 0 %"),
        (lambda: BIRD.conductivity(celsius(200)), OutOfRange, "temperature: needs at most 150"),
        (lambda: BIRD.conductivity(20), WrongKind, "temperature: needs a quantity"),
        (lambda: BIRD.conductivity(celsius(20), layers="mixed"), UnknownName, "layers: 'mixed'"),
        (lambda: heat(BIRD, after="Nobody 2000"), UnknownName, "after: 'Nobody 2000'"),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words.replace("(", r"\(").replace(")", r"\)")):
        wrong()
