"""Baker's percentages, parts, scaling, pans and dough water against hand calculation and print."""

import iapws
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitchenmath.errors import KitchenError, OutOfRange, UnknownName, WrongKind
from kitchenmath.ratios import (
    Formula,
    Pan,
    conversion_factor,
    friction_factor,
    ice_for,
    pan_factor,
    scale,
    split,
    water_temperature,
)
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import celsius, fahrenheit, percent

# Several suites may share the machine: a slow draw is no failure.
untimed = settings(deadline=None)

SLIDES = "Baker's-math teaching slides (slideplayer 7820492)"
GISSLEN = "Gisslen, Professional Cooking (2014)"
SOURDOUGH = "Sourdough teaching page (host withheld)"
BAKER = "Baker's blog on the three-factor method of a baking school"
INSTRUCTOR = "Culinary-instructor page (host withheld)"
AFRS = "US Armed Forces Recipe Service, TM 10-412, recipe conversion"
NAVY = "US Navy 14163 (navyadministration.tpub.com)"
GEOMETRY = "Geometry"
SR28 = "USDA SR28 (2015), weights of a US cup"


SLIDE_DOUGH = Formula.from_percents(
    flour=percent(100), water=percent(58), sugar=percent(2), salt=percent(1.75),
    yeast=percent(0.375),
)  # fmt: skip
CAKE = Formula.from_percents({"the rest": percent(277.5)}, flour=percent(100))
SOUR = Formula.from_weights(
    flour=Q_(1000, "g"), water=Q_(600, "g"), yeast=Q_(2, "g"), salt=Q_(10, "g")
)


def water_f(target, flour, room, friction, preferment=None):
    """The sum in °F, as the pages print it."""
    return water_temperature(
        fahrenheit(target),
        flour=fahrenheit(flour),
        room=fahrenheit(room),
        friction=Q_(friction, "delta_degF"),
        preferment=None if preferment is None else fahrenheit(preferment),
    ).magnitude


def scaled(quantity, factor):
    return scale({"line": quantity}, factor).amounts["line"]


PUBLISHED = (
    Published("R1 conversion factor, 50 x .230 from 35 x .185", INSTRUCTOR, "seen", 1.77606,
              lambda: conversion_factor((35, Q_(0.185, "kg")), (50, Q_(0.230, "kg"))), 1e-5,
              by="formula"),
    Published("R2 348 for 100", AFRS, "seen", 3.48,
              lambda: conversion_factor(old=Q_(100, "count"), new=Q_(348, "count")), 1e-12,
              by="formula"),
    Published("R3 1.25 lb x 3.48", AFRS, "seen", 4.35,
              lambda: scaled(Q_(1.25, "lb"), 3.48).magnitude, 0.005, by="formula"),
    Published("R3 the ounces of it", AFRS, "seen", 5.6,
              lambda: scaled(Q_(1.25, "lb"), 3.48).to("oz").magnitude - 64, 0.1, by="formula"),
    Published("R4 102 for 30", AFRS, "seen", 3.40,
              lambda: conversion_factor(old=Q_(30, "count"), new=Q_(102, "count")), 1e-12,
              by="formula"),
    Published("R5 348 portions of three quarters, card for 100", NAVY, "seen", 2.61,
              lambda: conversion_factor(old=(100, Q_(4, "oz")), new=(348, Q_(3, "oz"))), 1e-12,
              by="formula"),
    Published("R6 6 gal x 3.33", NAVY, "seen", 19.98,
              lambda: scaled(Q_(6, "us_gallon"), 3.33).magnitude, 1e-9, by="formula"),
    Published("K20 sum of percents", SLIDES, "seen", 162.125,
              lambda: SLIDE_DOUGH.total_percent.magnitude, 1e-12, by="formula"),
    Published("K21 salt for 40 lb flour", SLIDES, "seen", 0.7,
              lambda: SLIDE_DOUGH.weigh(flour=Q_(40, "lb"))["salt"].magnitude, 1e-12, by="formula"),
    Published("K21 salt in ounces", SLIDES, "seen", 11.2,
              lambda: SLIDE_DOUGH.weigh(flour=Q_(40, "lb"))["salt"].to("oz").magnitude, 1e-9,
              by="formula"),
    Published("K22 hydration, 23 lb on 40 lb", SLIDES, "seen", 57.5,
              lambda: Formula.from_weights(flour=Q_(40, "lb"), water=Q_(23, "lb"))
              .hydration.magnitude, 1e-12, by="formula"),
    Published("K23 cake flour, 96 oz at 377.5 %", GISSLEN, "seen", 25.43,
              lambda: CAKE.weigh(total=Q_(96, "oz"))["flour"].magnitude, 0.005, by="formula"),
    Published("C7 cake flour, 3000 g at 377.5 %", GISSLEN, "seen", 794.7,
              lambda: CAKE.weigh(total=Q_(3000, "g"))["flour"].magnitude, 0.05, by="formula"),
    *(Published(f"K24 {name}", SOURDOUGH, "seen", expected,
                lambda name=name: SOUR.percents_of_flour[name].magnitude, 1e-12, by="table")
      for name, expected in (("flour", 100), ("water", 60), ("yeast", 0.2), ("salt", 1))),
    Published("K25 water, 75 °F", BAKER, "seen", 87, lambda: water_f(75, 65, 65, 8), 1e-9,
    by="formula"),
    Published("K25 in °C, 30.556", BAKER, "computed", 55 / 1.8,
              lambda: water_temperature(celsius(43 / 1.8), celsius(33 / 1.8), celsius(33 / 1.8),
                                        Q_(8 / 1.8, "delta_degC")).magnitude, 1e-9, by="formula"),
    # The page prints the sum of the three, 146; any three of that sum will do.
    Published("K26 water, 78 °F", BAKER, "seen", 88, lambda: water_f(78, 66, 70, 10), 1e-9,
    by="formula"),
    Published("K27 four temperatures, target x 4", BAKER, "common practice", 4 * 76 - 241,
              lambda: water_f(76, 70, 72, 24, preferment=75), 1e-9, by="formula"),
    Published("K28 round pan, 8 to 9 in", GEOMETRY, "computed", 1.265625,
              lambda: pan_factor(Pan.round(Q_(8, "inch")), Pan.round(Q_(9, "inch"))), 1e-12,
              by="formula"),
    Published("K29 9 in round to 8 in square", GEOMETRY, "computed", 1.00602,
              lambda: pan_factor(Pan.round(Q_(9, "inch")), Pan.square(Q_(8, "inch"))), 1e-5,
              by="formula"),
    Published("T2 roux, fat of 125 g", GISSLEN, "memory", 62.5,
              lambda: split(Q_(125, "g"), {"fat": 1, "flour": 1})["fat"].magnitude, 1e-12,
              by="formula"),
    Published("M2 vinaigrette, oil of a gallon", "Arithmetic on 3 : 1 by volume", "computed", 96,
              lambda: split(Q_(1, "us_gallon"), {"oil": 3, "acid": 1}, by="volume")["oil"]
              .to("us_fluid_ounce").magnitude, 1e-9, by="formula"),
    Published("M2 vinaigrette, acid of a gallon", "Arithmetic on 3 : 1 by volume", "computed", 32,
              lambda: split(Q_(1, "us_gallon"), {"oil": 3, "acid": 1}, by="volume")["acid"]
              .to("us_fluid_ounce").magnitude, 1e-9, by="formula"),
    Published("H5, H15 sugar and water 2 : 1 by cups", SR28, "computed", 100 * 400 / 637,
              lambda: split(percent_of_kilo(), {"granulated sugar": 2, "water": 1}, by="volume")
              ["granulated sugar"].magnitude, 1e-9, by="formula"),
    Published("Ice for a dough, 70 to 50 °F", "Bakers' rule (tap - wanted)/(tap + 112), °F",
              "memory", 20 / 182,
              lambda: ice_for(Q_(1, "lb"), wanted=fahrenheit(50), tap=fahrenheit(70))["ice"]
              .magnitude, relative=0.005, by="formula"),
)  # fmt: skip


def percent_of_kilo():
    """100 g, so that grams read as percent."""
    return Q_(100, "g")


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


names = st.sampled_from(["water", "salt", "yeast", "butter", "milk", "egg"])
grams = st.floats(0.5, 5e4)
formulas = st.builds(
    lambda flours, others: Formula.from_weights(
        {**{f"flour {i}": Q_(g, "g") for i, g in enumerate(flours)},
         **{name: Q_(g, "g") for name, g in others.items()}},
        flour=[f"flour {i}" for i in range(len(flours))],
    ),
    st.lists(grams, min_size=1, max_size=3),
    st.dictionaries(names, grams, max_size=5),
)  # fmt: skip


@untimed
@given(formulas, grams)
def test_weights_give_back_the_percents(formula, total_g):
    """There and back: percents -> weights -> percents, and the weights are the total."""
    weights = formula.weigh(total=Q_(total_g, "g"))
    back = Formula.from_weights(weights, flour=formula.flours)

    assert total_g == pytest.approx(sum(w.magnitude for w in weights.values()), rel=1e-12)
    for name, expected in formula.percents_of_flour.items():
        assert expected.magnitude == pytest.approx(back.percents_of_flour[name].magnitude, rel=1e-9)


@untimed
@given(formulas, grams)
def test_the_same_flour_weighed_twice_is_the_same_dough(formula, total_g):
    """weigh(total) and weigh(flour) agree when the flour is the one that the total holds."""
    by_total = formula.weigh(total=Q_(total_g, "g"))
    flour = sum(by_total[name] for name in formula.flours)

    for name, weight in formula.weigh(flour=flour).items():
        assert by_total[name].magnitude == pytest.approx(weight.magnitude, rel=1e-12)


@untimed
@given(formulas, grams)
def test_ounces_and_grams_give_the_same_dough(formula, total_g):
    """Unit invariance, and an answer in the unit that was asked in."""
    in_grams = formula.weigh(total=Q_(total_g, "g"))
    in_ounces = formula.weigh(total=Q_(total_g, "g").to("oz"))

    for name, weight in in_grams.items():
        assert str(in_ounces[name].units) == "ounce"
        assert weight.magnitude == pytest.approx(in_ounces[name].to("g").magnitude, rel=1e-12)


@untimed
@given(formulas)
def test_percents_of_the_total_add_to_a_hundred(formula):
    """The percents of flour add to more than 100 as soon as anything but flour is in it."""
    of_total = formula.percents_of_total

    assert 100 == pytest.approx(sum(p.magnitude for p in of_total.values()), rel=1e-12)
    assert formula.total_percent.magnitude >= 100 - 1e-9
    for name, share in of_total.items():
        assert share <= formula.percents_of_flour[name] * (1 + 1e-12)


def test_percent_of_flour_is_not_percent_of_dough():
    """By hand: 60 % water on flour in a dough of 161.2 % is 60 / 1.612 = 37.22 % of it."""
    assert 60 == SOUR.hydration.magnitude
    assert 37.22 == pytest.approx(SOUR.percents_of_total["water"].magnitude, abs=0.005)


def test_two_flours_share_the_hundred_percent():
    """By hand: 700 + 300 g flour and 675 g water are 70 / 30 / 67.5 %."""
    dough = Formula.from_weights(
        {"wheat flour": Q_(700, "g"), "rye flour": Q_(0.3, "kg"), "water": Q_(675, "g")},
        flour=["wheat flour", "rye flour"],
    )

    assert [70, 30, 67.5] == [
        pytest.approx(p.magnitude, rel=1e-12) for p in dough.percents_of_flour.values()
    ]
    assert "rye flour" in str(dough)


def test_a_formula_cannot_be_changed_by_the_way():
    """Frozen: weighing a dough twice gives the same dough."""
    with pytest.raises(TypeError):
        SOUR.percents_of_flour["water"] = percent(90)


amounts = st.one_of(
    grams.map(lambda g: Q_(g, "g")),
    grams.map(lambda ml: Q_(ml, "mL")),
    st.floats(0.1, 500).map(lambda c: Q_(c, "us_cup")),
    st.floats(1, 300).map(lambda d: Q_(d, "degC")),
    st.floats(1, 600).map(lambda t: Q_(t, "min")),
)
factors = st.floats(1e-3, 1e3)


@untimed
@given(st.dictionaries(names, amounts), factors)
def test_scaling_there_and_back_is_the_old_recipe(recipe, factor):
    """There and back: x factor, then x 1/factor."""
    back = scale(scale(recipe, factor).amounts, 1 / factor).amounts

    for name, quantity in recipe.items():
        assert quantity.units == back[name].units
        assert quantity.magnitude == pytest.approx(back[name].magnitude, rel=1e-12)


@untimed
@given(st.floats(1, 500), grams, st.floats(1, 500), grams)
def test_conversion_there_and_back_is_one(portions_1, size_1, portions_2, size_2):
    """From one recipe to another and back, one of them in ounces."""
    one, other = (portions_1, Q_(size_1, "g")), (portions_2, Q_(size_2, "g").to("oz"))

    assert 1 == pytest.approx(conversion_factor(one, other) * conversion_factor(other, one))


def test_what_does_not_grow_with_a_recipe_stays_and_says_so():
    """Twice the rolls: twice the flour, the same oven, the same minutes, the same depth."""
    rolls = {
        "flour": Q_(500, "g"), "yeast": percent(1), "eggs": Q_(1, "count"), "salt": Q_(10, "g"),
        "oven": Q_(220, "degC"), "baking": Q_(18, "min"), "thickness": Q_(2, "cm"),
        "flour price": Q_(1.2, "dollar/kg"), "cost": Q_(3, "dollar"),
    }  # fmt: skip

    doubled = scale(rolls, 1.5)

    for name in ("yeast", "oven", "baking", "thickness", "flour price"):
        assert doubled.amounts[name] is rolls[name]
        assert doubled.look_again[name].startswith("not multiplied")
    assert Q_(750, "g") == doubled.amounts["flour"]
    assert Q_(4.5, "dollar") == doubled.amounts["cost"]
    assert "taste" in doubled.look_again["salt"]
    assert "whole number" in doubled.look_again["eggs"]
    assert not {"flour", "cost"} & set(doubled.look_again)
    assert "boils away" in str(doubled)


@untimed
@given(st.dictionaries(names, st.floats(0.1, 20), min_size=1), grams)
def test_parts_by_weight_make_the_total_in_their_ratio(parts, total_g):
    """The parts add to the total, and stand to each other as asked."""
    shares = split(Q_(total_g, "g"), parts)
    first = next(iter(parts))

    assert total_g == pytest.approx(sum(s.magnitude for s in shares.values()), rel=1e-12)
    for name, part in parts.items():
        ratio = (shares[name] / shares[first]).magnitude
        assert part / parts[first] == pytest.approx(ratio, rel=1e-9)


@untimed
@given(st.floats(0.1, 20), st.floats(0.1, 20), st.floats(0.3, 2), st.floats(0.3, 2))
def test_parts_by_volume_of_a_weight_measure_as_asked(part_a, part_b, density_a, density_b):
    """Turned back to volumes by their densities, the weights stand in the ratio of the parts."""
    densities = {"a": Q_(density_a, "g/mL"), "b": Q_(density_b, "g/mL")}

    weights = split(Q_(1, "kg"), {"a": part_a, "b": part_b}, by="volume", densities=densities)
    volumes = {name: (weight / densities[name]).to("mL") for name, weight in weights.items()}

    assert part_a / part_b == pytest.approx((volumes["a"] / volumes["b"]).magnitude, rel=1e-9)
    assert 1 == pytest.approx(sum(w.magnitude for w in weights.values()), rel=1e-12)


def test_parts_by_weight_of_a_volume_weigh_as_asked():
    """By hand: equal weights of oil 0.9 and honey 1.4 fill 1.4 : 0.9 of a jar of 2.3 L."""
    densities = {"oil": Q_(0.9, "g/mL"), "honey": Q_(1.4, "g/mL")}

    shares = split(Q_(2.3, "L"), {"oil": 1, "honey": 1}, densities=densities)

    assert [1.4, 0.9] == [pytest.approx(share.magnitude) for share in shares.values()]


def test_a_density_can_be_looked_up_under_another_name():
    """Oil and vinegar from the tables: 216 and 238 g a US cup; 3 x 216 to 238."""
    shares = split(
        Q_(886, "g"), {"oil": 3, "vinegar": 1}, by="volume",
        densities={"oil": "olive oil", "vinegar": Q_(238, "g") / Q_(1, "us_cup")},
    )  # fmt: skip

    assert [648, 238] == [pytest.approx(share.magnitude) for share in shares.values()]


bakehouse = st.floats(15, 25)


@untimed
@given(st.floats(22, 28), bakehouse, bakehouse, st.floats(0, 15))
def test_celsius_and_fahrenheit_ask_for_the_same_water(target, flour, room, friction):
    """Unit invariance of the sum, which holds only while friction is a difference."""
    in_C = water_temperature(
        celsius(target), celsius(flour), celsius(room), Q_(friction, "delta_degC"),
        hottest=celsius(80),
    )  # fmt: skip
    in_f = water_temperature(
        celsius(target).to("degF"), celsius(flour).to("degF"), celsius(room).to("degF"),
        Q_(friction, "delta_degC").to("delta_degF"), hottest=celsius(80),
    )  # fmt: skip

    assert str(in_f.units) == "degree_Fahrenheit"
    assert in_C.magnitude == pytest.approx(in_f.to("degC").magnitude, abs=1e-9)


@untimed
@given(bakehouse, bakehouse, st.floats(5, 35), st.floats(0, 15), st.none() | bakehouse)
def test_the_friction_of_a_batch_gives_its_water_back(flour, room, water, friction, preferment):
    """There and back: water -> dough -> friction factor -> the same water."""
    given_ = [t for t in (flour, room, water, preferment) if t is not None]
    dough = celsius((sum(given_) + friction) / len(given_))
    sponge = None if preferment is None else celsius(preferment)

    found = friction_factor(dough, celsius(water), celsius(flour), celsius(room), sponge)
    # Rounding may leave friction a hair below nought, where none was put in.
    found = max(found, Q_(0, "delta_degC"))
    back = water_temperature(dough, celsius(flour), celsius(room), found, sponge)

    assert friction == pytest.approx(found.magnitude, abs=1e-9)
    assert water == pytest.approx(back.magnitude, abs=1e-9)


def test_friction_as_a_temperature_is_refused_with_what_to_type():
    """K25's trap: 8 °F as a point is -13.3 °C, and the water would come out 17.8 °C too warm."""
    with pytest.raises(WrongKind, match=r'temperature 8 °F came.*Q_\(8, "delta_degF"\)'):
        water_temperature(fahrenheit(75), fahrenheit(65), fahrenheit(65), fahrenheit(8))
    with pytest.raises(WrongKind, match=r'Q_\(4, "delta_degC"\)'):
        water_temperature(celsius(24), celsius(18), celsius(18), celsius(4))


def test_water_that_cannot_be_is_refused_with_what_to_do():
    """By hand: 3 · 20 - (28 + 28 + 8) = -4 °C; 3 · 30 - (15 + 15 + 5) = 55 °C."""
    with pytest.raises(OutOfRange, match=r"-4 °C.*chill the flour"):
        water_temperature(celsius(20), celsius(28), celsius(28), Q_(8, "delta_degC"))
    hot = (celsius(30), celsius(15), celsius(15), Q_(5, "delta_degC"))
    with pytest.raises(OutOfRange, match=r"55 °C.*45 °C.*hottest"):
        water_temperature(*hot)

    assert 55 == pytest.approx(water_temperature(*hot, hottest=celsius(60)).magnitude)


@untimed
@given(st.floats(0, 35), st.floats(0, 35), st.floats(-20, 0))
def test_melted_ice_and_tap_water_hold_the_heat_of_the_water_wanted(one, other, ice):
    """Referee: enthalpies of IAPWS-95 and of IAPWS ice; the mixed water is within 0.3 °C."""
    wanted, tap = sorted((one, other))

    parts = ice_for(Q_(1, "kg"), wanted=celsius(wanted), tap=celsius(tap), ice=celsius(ice))
    ice_kj = iapws._iapws._Ice(min(ice, -0.01) + 273.15, 0.101325)["h"]
    tap_kj = iapws.IAPWS95(T=tap + 273.15, P=0.101325).h
    mixed_kj = parts["ice"].magnitude * ice_kj + parts["water"].magnitude * tap_kj
    wanted_kj = iapws.IAPWS95(T=wanted + 273.15, P=0.101325).h

    assert 1 == pytest.approx(parts["ice"].magnitude + parts["water"].magnitude)
    assert wanted_kj == pytest.approx(mixed_kj, abs=0.3 * 4.19)


def test_ice_counts_as_water_and_none_is_needed_from_a_cold_tap():
    """By hand: 4.19 · 15 / (333.5 + 4.19 · 20) = 0.1506 kg of the kilo."""
    parts = ice_for(Q_(1, "kg"), wanted=celsius(5), tap=celsius(20))
    none = ice_for(Q_(1, "kg"), wanted=celsius(12), tap=celsius(12))

    assert 0.1506 == pytest.approx(parts["ice"].magnitude, abs=5e-5)
    assert Q_(0, "kg") == none["ice"]


@untimed
@given(st.floats(5, 60), st.floats(5, 60), st.floats(1, 12), st.floats(1, 12))
def test_pan_factors_there_and_back_are_one_in_any_unit(side, diameter, low, high):
    """A square in cm and a round in inches, with the depth of the filling."""
    square = Pan.square(Q_(side, "cm"), depth=Q_(low, "cm"))
    round_ = Pan.round(Q_(diameter, "cm").to("inch"), depth=Q_(high, "cm").to("inch"))

    assert 1 == pytest.approx(pan_factor(square, round_) * pan_factor(round_, square))


def test_depth_and_volume_count_where_they_are_given():
    """By hand: 20 x 30 x 4 cm against 20 x 20 x 3 cm is 2400/1200; 1 L against 1.5 L is 1.5."""
    tray = Pan.rectangle(Q_(20, "cm"), Q_(30, "cm"), depth=Q_(40, "mm"))
    tin = Pan.square(Q_(20, "cm"), depth=Q_(30, "mm"))

    assert 2 == pytest.approx(pan_factor(tin, tray))
    assert 1.5 == pytest.approx(pan_factor(Q_(1, "L"), Q_(1500, "mL")))


TIN = Pan.round(Q_(20, "cm"))


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: Formula.from_percents(flour=percent(90)), OutOfRange, "flour must be 100 %"),
        (lambda: Formula.from_percents(flour=100), WrongKind, 'flour: .*Q_(100, "percent")'),
        (lambda: Formula.from_percents({"rye flour": percent(100)}), UnknownName,
         "flour: say which of rye flour"),
        (lambda: Formula.from_percents({"rye": percent(100)}, flour="wheat"), UnknownName,
         "flour: 'wheat' is not one of rye"),
        (lambda: Formula.from_percents({"flour": percent(100)}, flour=percent(100)), WrongKind,
         "one name came twice"),
        (lambda: Formula.from_percents(flour=percent(100), salt=percent(-1)), OutOfRange,
         "salt: needs at least 0 %"),
        (lambda: Formula.from_weights(flour=Q_(1, "kg"), milk=Q_(1, "L")), WrongKind,
         "milk: needs a weight"),
        (lambda: Formula.from_weights(flour=Q_(0, "g"), water=Q_(1, "g")), OutOfRange,
         "flour: needs more than 0 g"),
        (lambda: CAKE.hydration, UnknownName, "no 'water' in flour, the rest"),
        (lambda: SOUR.hydration_with({"water": percent(120)}), OutOfRange, "water: needs at most"),
        (lambda: SOUR.weigh(), WrongKind, "total, flour: give one"),
        (lambda: SOUR.weigh(total=Q_(1, "kg"), flour=Q_(1, "kg")), WrongKind, "give one"),
        (lambda: SOUR.weigh(total=Q_(1, "L")), WrongKind, "total: needs a weight"),
        (lambda: conversion_factor(Q_(4, "kg"), Q_(24, "count")), WrongKind, "new: 24 is"),
        (lambda: conversion_factor((0, Q_(1, "g")), (1, Q_(1, "g"))), OutOfRange,
         "old, portions: "),
        (lambda: conversion_factor((1, 2, 3), Q_(1, "g")), WrongKind, "old: needs portions and"),
        (lambda: scale({"salt": 10}, 2), WrongKind, "salt: needs a quantity"),
        (lambda: scale({"salt": Q_(10, "g")}, 0), OutOfRange, "factor: needs"),
        (lambda: scale({}, float("nan")), OutOfRange, "factor: needs"),
        (lambda: split(Q_(1, "kg"), {}), OutOfRange, "parts: "),
        (lambda: split(Q_(1, "kg"), {"oil": 0, "acid": 1}), OutOfRange, "parts, oil: "),
        (lambda: split(Q_(1, "h"), {"oil": 3, "acid": 1}), WrongKind, "total: needs a weight or"),
        (lambda: split(Q_(1, "kg"), {"oil": 3}, by="moles"), UnknownName, "by: 'moles'"),
        (lambda: split(Q_(1, "kg"), {"unicorn": 3}, by="volume"), UnknownName, "'unicorn'"),
        (lambda: water_temperature(celsius(75), celsius(18), celsius(18), Q_(4, "delta_degC")),
         OutOfRange, "target: needs at most 50"),
        (lambda: water_temperature(celsius(24), celsius(18), celsius(18), 4), WrongKind,
         'friction: .*"delta_degC"'),
        (lambda: friction_factor(celsius(10), celsius(20), celsius(20), celsius(20)), OutOfRange,
         "dough: 10 °C is colder"),
        (lambda: ice_for(Q_(1, "kg"), wanted=celsius(20), tap=celsius(12)), OutOfRange,
         "wanted: 20 °C is warmer"),
        (lambda: ice_for(Q_(1, "kg"), wanted=celsius(-2), tap=celsius(12)), OutOfRange,
         "wanted: needs at least 0"),
        (lambda: ice_for(Q_(1, "kg"), celsius(2), celsius(12), ice=celsius(4)), OutOfRange,
         "ice: needs at most 0"),
        (lambda: pan_factor(TIN, Q_(1, "L")), WrongKind, "new: a volume came"),
        (lambda: pan_factor(TIN, Pan.round(Q_(20, "cm"), Q_(3, "cm"))), WrongKind, "new: a pan wi"),
        (lambda: pan_factor(Q_(20, "cm"), TIN), WrongKind, "old: needs a pan such as Pan.round"),
        (lambda: Pan.round(Q_(0, "cm")), OutOfRange, "diameter: "),
    ],
)  # fmt: skip
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type; every error is a KitchenError."""
    assert issubclass(error, KitchenError)
    with pytest.raises(error, match=words.replace("(", r"\(").replace(")", r"\)")):
        wrong()
