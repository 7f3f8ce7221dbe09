"""Making brine, salt that evens out, reduced broths and curing limits."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenmath.brine import (
    CURING_CAUTION,
    above_curing_limit,
    brine_density,
    brine_parts,
    curing_limit,
    equilibrium_strength,
    salt_for_brine,
    salt_for_equilibrium,
    salt_to_strengthen,
    saturation,
    strength,
    strength_after_reduction,
    water_phase_salt,
)
from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import grams, percent

ONTARIO = "Ontario fish inspection sheet FB.14.14; Maine rules ch. 359 (formula)"
TWO_WAYS = "two denominators, both in use"
FSIS = "FSIS Handbook 7620.3 (1995)"
HOME_CANNING = "USDA Complete Guide to Home Canning, weights from SR28"
NCHFP = "USDA/NCHFP recipe, weights from SR28"


# SR28 weights: salt 292 g a cup and 18 g a tablespoon, water 237 g and vinegar 238 g a cup.
DILL_SALT, DILL_WATER, DILL_VINEGAR = grams(292 / 2), grams(8 * 237), grams(238 / 4)

PUBLISHED = (
    Published("E4 water phase salt", ONTARIO, "computed", 3.501,
              lambda: water_phase_salt(percent(2.5), percent(68.9)).magnitude, 1e-3, by="formula"),
    Published("E5 salt over everything", TWO_WAYS, "computed", 1.961,
              lambda: equilibrium_strength(grams(1000), grams(1000), grams(40)).magnitude, 1e-3,
              by="formula"),
    Published("E5 salt over food and water", TWO_WAYS, "computed", 2.000,
              lambda: equilibrium_strength(grams(1000), grams(1000), grams(40),
                                           counting="food and water").magnitude, 1e-3,
                                           by="formula"),
    Published("E5 salt for 2.000 % of food and water", TWO_WAYS, "computed", 40,
              lambda: salt_for_equilibrium(grams(1000), grams(1000), percent(2),
                                           counting="food and water").magnitude, 1e-9,
                                           by="formula"),
    *(Published(f"E8 {use}", FSIS, "quoted", limit,
                lambda use=use: curing_limit(use).limit.to("mg/kg").magnitude, 0, by="table")
      for use, limit in (("comminuted meat, not bacon", 156),
                         ("immersed or pumped meat, not bacon", 200),
                         ("dry cured meat, not bacon", 625), ("pumped bacon", 120))),
    Published("E9 nitrite in the finished food", "21 CFR 172.175", "seen", 200,
              lambda: curing_limit("nitrite in the finished food").limit.magnitude, 0, by="table"),
    Published("E9 nitrate in the finished food", "21 CFR 172.170", "seen", 500,
              lambda: curing_limit("nitrate in the finished food").limit.magnitude, 0, by="table"),
    Published("P1 dill brine", HOME_CANNING, "computed", 6.95,
              lambda: strength(DILL_SALT, DILL_WATER + DILL_VINEGAR).magnitude, 0.15, by="formula"),
    Published("P1 dill brine without vinegar", HOME_CANNING, "computed", 7.15,
              lambda: strength(DILL_SALT, DILL_WATER).magnitude, 0.15, by="formula"),
    Published("P3 overflow-bag brine", NCHFP, "computed", 2.77,
              lambda: strength(grams(4.5 * 18), grams(12 * 237)).magnitude, 0.05, by="formula"),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


weights = st.floats(1, 1e5).map(grams)
strengths = st.floats(0.1, 26.3).map(percent)


@given(weights, strengths)
def test_strength_to_salt_and_back(water, target):
    """There and back: strength -> salt -> strength."""
    salt = salt_for_brine(water, target)

    assert target.magnitude == pytest.approx(strength(salt, water).magnitude, rel=1e-12)


@given(weights, strengths)
def test_ounces_and_grams_need_the_same_salt(water, target):
    """Unit invariance; the salt comes back in the unit of the water."""
    in_ounces = salt_for_brine(water.to("oz"), target)

    assert str(in_ounces.units) == "ounce"
    assert salt_for_brine(water, target).magnitude == pytest.approx(
        in_ounces.to("g").magnitude, rel=1e-12
    )


@given(st.floats(0.1, 1e3), strengths)
def test_the_parts_of_a_brine_make_that_brine(litres, target):
    """There and back: parts -> strength, and their weight over the density is the volume."""
    salt, water = brine_parts(Q_(litres, "L"), target)
    volume = (salt + water) / brine_density(target)

    assert target.magnitude == pytest.approx(strength(salt, water).magnitude, rel=1e-12)
    assert litres == pytest.approx(volume.to("L").magnitude, rel=1e-12)


@given(weights, st.floats(0, 20), st.floats(0, 6))
def test_a_strengthened_brine_has_the_strength_asked_for(brine, start, more):
    """By balance of salt: (brine x start + added) / (brine + added) = target."""
    added = salt_to_strengthen(brine, percent(start), percent(start + more)).magnitude
    salt = brine.magnitude * start / 100 + added

    assert start + more == pytest.approx(100 * salt / (brine.magnitude + added), abs=1e-9)


@pytest.mark.parametrize("counting", ["everything", "food and water"])
@given(food=weights, water=weights, target=st.floats(0.1, 20).map(percent))
def test_equilibrium_salt_and_back(counting, food, water, target):
    """There and back under either way of counting."""
    salt = salt_for_equilibrium(food, water, target, counting)
    back = equilibrium_strength(food, water, salt, counting)

    assert target.magnitude == pytest.approx(back.magnitude, rel=1e-12)


@given(weights, weights, st.floats(0.1, 20).map(percent))
def test_counting_the_salt_itself_takes_more_of_it(food, water, target):
    """Row E5: the larger denominator needs the larger numerator."""
    whole = salt_for_equilibrium(food, water, target)
    part = salt_for_equilibrium(food, water, target, counting="food and water")

    assert whole > part


@given(st.floats(0.05, 2), st.floats(1, 12))
def test_reducing_and_then_topping_up_gives_the_old_strength(strength_percent, times):
    """There and back: down to a part, and the strong broth thinned to the old weight."""
    reduced = strength_after_reduction(percent(strength_percent), Q_(times, "kg"), Q_(1, "kg"))
    salt_kg = reduced.magnitude / 100 * 1

    assert strength_percent == pytest.approx(100 * salt_kg / times, rel=1e-12)


@given(st.floats(0.1, 15), st.floats(1, 80))
def test_water_phase_salt_lies_above_the_salt_of_the_whole(salt, moisture):
    """Limit: with 100 % water and salt together the two are one."""
    in_water = water_phase_salt(percent(salt), percent(moisture)).magnitude

    assert in_water > salt
    assert salt == pytest.approx(
        water_phase_salt(percent(salt), percent(100 - salt)).magnitude, rel=1e-12
    )


def test_a_strength_is_not_a_share_of_the_water():
    """By hand: 100 g salt in 1 kg water is 100 / 1100 = 9.0909 %, not 10 %."""
    made = strength(grams(100), Q_(1, "kg"))

    assert made.magnitude == pytest.approx(9.0909, abs=1e-4)


def test_a_litre_of_water_is_weighed_at_its_temperature():
    """By hand: 1 L at 20 °C is 998.2 g (IAPWS-95: 998.207), x 5 / 95 = 52.54 g."""
    salt = salt_for_brine(Q_(1, "L"), percent(5))

    assert salt.to("g").magnitude == pytest.approx(52.537, abs=1e-3)


def test_a_gallon_of_water_says_whose_gallon():
    """Trap 12: tables from Canada mean imperial gallons, 4546.09 / 3785.41 = 1.2010 US ones."""
    imperial = salt_for_brine(Q_(1, "uk_gallon"), percent(10))
    us = salt_for_brine(Q_(1, "us_gallon"), percent(10))

    assert (imperial / us).to("").magnitude == pytest.approx(1.20095, abs=1e-5)


def test_a_broth_salted_right_and_reduced_is_salted_wrong():
    """By hand: 0.9 % in 3 L down to 1 L is 2.7 %."""
    after = strength_after_reduction(percent(0.9), Q_(3, "L"), Q_(1, "L"))

    assert after.magnitude == pytest.approx(2.7, rel=1e-12)


def test_a_brine_made_just_full_is_allowed():
    """Saturation itself is no overload: the limit is included."""
    full = saturation(Q_(20, "degC"))
    salt = salt_for_brine(Q_(1, "kg"), full)

    assert full.magnitude == pytest.approx(strength(salt, Q_(1, "kg")).magnitude, rel=1e-12)


def test_sauerkraut_salt_is_within_its_grade_standard():
    """7 CFR 52.3451: 2-3 % of the product. By hand: 25 g on 1 kg cabbage is 25 / 1025 = 2.44 %."""
    salted = equilibrium_strength(grams(995), grams(5), grams(25))

    assert 2 <= salted.magnitude <= 3


def test_curing_salts_are_checked_and_never_dosed():
    """A limit is included, anything above is said to be above; the caution stands beside it."""
    at_limit, above = Q_(120, "mg/kg"), Q_(120.1, "mg/kg")

    assert not above_curing_limit(at_limit, "pumped bacon")
    assert above_curing_limit(above, "pumped bacon")
    assert "doses no curing salt" in CURING_CAUTION


@pytest.mark.parametrize(
    ("use", "limit"),
    [("pumped bacon", 120), ("immersion cured bacon", 120), ("dry cured bacon", 200)],
)
def test_bacon_never_takes_the_limit_of_other_meat(use, limit):
    """400 mg/kg is below the 625 of a dry cured ham, and far above each limit of bacon."""
    assert limit == curing_limit(use).limit.magnitude
    assert above_curing_limit(Q_(400, "mg/kg"), use)
    assert not above_curing_limit(Q_(400, "mg/kg"), "dry cured meat, not bacon")


def test_bacon_without_its_cure_is_asked_back():
    """Every use says whether it is bacon, so none is taken by mistake."""
    with pytest.raises(UnknownName, match="dry cured bacon"):
        above_curing_limit(Q_(400, "mg/kg"), "dry cured meat")


def test_parts_per_million_may_come_in_any_unit_of_it():
    """By hand: 0.02 % is 200 mg/kg, and 0.16 g/kg is 160."""
    assert not above_curing_limit(percent(0.02), "immersed or pumped meat, not bacon")
    assert above_curing_limit(Q_(0.16, "g/kg"), "comminuted meat, not bacon")


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: strength(50, grams(950)), WrongKind, r'salt: .*Q_\(50, "g"\)'),
        (lambda: strength(Q_(50, "mL"), grams(950)), WrongKind, "salt: needs a weight"),
        (lambda: strength(grams(50), 950), WrongKind, r'water: .*Q_\(950, "g"\)'),
        (lambda: strength(grams(500), grams(1000)), OutOfRange, "salt, as a strength: 33.33 %"),
        (lambda: salt_for_brine(grams(0), percent(5)), OutOfRange, "water: needs more than 0 g"),
        (lambda: salt_for_brine(grams(9), percent(27)), OutOfRange, "strength: 27 % is more"),
        (lambda: salt_for_brine(grams(9), 0.05), WrongKind, r'Q_\(0.05, "percent"\)'),
        (lambda: brine_parts(12, percent(5)), WrongKind, r'brine: .*Q_\(12, "g"\)'),
        (
            lambda: salt_to_strengthen(grams(9), percent(6), percent(4)),
            OutOfRange,
            "target: 4 % is weaker than the 6 %",
        ),
        (
            lambda: salt_for_equilibrium(grams(9), grams(9), percent(2), counting="meat"),
            UnknownName,
            "counting: 'meat' is not one of 'everything', 'food and water'",
        ),
        (
            lambda: salt_for_equilibrium(Q_(1, "kg"), Q_(1, "L"), percent(2)),
            WrongKind,
            "water: 1 L is a volume",
        ),
        (
            lambda: strength_after_reduction(percent(1), Q_(1, "L"), Q_(2, "L")),
            OutOfRange,
            "end: 2 L is more than the 1 L",
        ),
        (
            lambda: strength_after_reduction(percent(10), Q_(10, "L"), Q_(1, "L")),
            OutOfRange,
            "strength, reduced: needs less than 100",
        ),
        (
            lambda: strength_after_reduction(percent(3), Q_(10, "L"), Q_(1, "L")),
            OutOfRange,
            "strength, reduced: 30 % is more salt than",
        ),
        (lambda: water_phase_salt(percent(30), percent(80)), OutOfRange, "moisture: 80 % and"),
        (lambda: curing_limit("sausage"), UnknownName, "use: 'sausage' is not one of"),
        (lambda: above_curing_limit(156, "pumped bacon"), WrongKind, r'Q_\(156, "mg/kg"\)'),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
