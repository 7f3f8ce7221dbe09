"""Thickening, gels, emulsions and juices against cookery books, law and geometry."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.sauces import (
    Roux,
    brix_acid_ratio,
    citric_acid,
    dose,
    gel_points,
    gel_strength,
    gelatin_for,
    oil_volume_fraction,
    oil_weight_fraction,
    packing_marks,
    packing_of,
    per_litre,
    roux_for,
    usual_dose,
    vinaigrette,
)
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import grams, percent

GISSLEN = "Gisslen, Professional Cooking (2014), table 8.5"
ESCOFFIER = "Escoffier, A Guide to Modern Cookery (1907)"
GUIDE = "Escoffier, French edition figures"
SPOONS = "common practice; Manual of Home-Making (1919) gives ranges"
SR28 = "USDA SR28 (2015), flour 125 g a cup, butter 14.2 g a tablespoon"
GELATIN = "Ward & Courts, Science and Technology of Gelatin, p. 509, quoted at altphotolist.org"
LINEAR = "vendor and blog rule"
ROOTS = "printed table of roots"
BLOOM = "standard Bloom test"
NEUTRAL = "vendor-neutral texts"
TEXTURE = "Texture, a hydrocolloid recipe collection (Khymos)"
PACKING = "mathematics, π / √18"
PHYSICS_WORLD = "Physics World (2008)"
LITERATURE = "packing literature"
MAYONNAISE = "McGee; Lowe"
FORMULA = "formula, oil 0.915 and water phase 1.03 g/mL"
PRACTICE = "common practice"
PENNISTON = "Penniston et al. 2008, J. Endourol. (PMC2637791)"
KIMBALL = "Kimball, Citrus Processing (1991), definition"


FOUR_LITRES, US_CUP = Q_(4, "L"), Q_(1, "us_cup")
# SR28: a cup of flour is 16 tablespoons.
FLOUR_SPOON_G, BUTTER_SPOON_G = 125 / 16, 14.2

PUBLISHED = (
    *(Published(f"T1 {body}, roux for 4 L", GISSLEN, "seen", weight,
                lambda body=body: roux_for(FOUR_LITRES, body).weight.magnitude, 1e-9, by="table")
      for body, weight in (("thin", 375), ("medium", 500), ("thick", 750))),
    *(Published(f"T1 {body}, roux a litre", GISSLEN, "seen", weight,
                lambda body=body: roux_for(FOUR_LITRES, body).per_litre.magnitude, 1e-9,
                by="table")
      for body, weight in (("thin", 93.75), ("medium", 125), ("thick", 187.5))),
    Published("T2 medium, fat in a litre", GISSLEN, "memory", 62.5,
              lambda: roux_for(Q_(1, "L"), "medium").fat.magnitude, 1e-9, by="table"),
    Published("T2 medium, flour in a litre", GISSLEN, "memory", 62.5,
              lambda: roux_for(Q_(1, "L"), "medium").flour.magnitude, 1e-9, by="table"),
    Published("T3 brown roux, oz", ESCOFFIER, "seen", 16,
              lambda: Roux(Q_(8, "oz"), Q_(9, "oz"), Q_(1, "L")).when_brown.to("oz").magnitude, 1,
              by="formula"),
    Published("T4 brown roux, g", GUIDE, "seen", 1000,
              lambda: Roux(grams(500), grams(600), Q_(1, "L")).when_brown.magnitude, 50,
              by="formula"),
    Published("T5 béchamel, roux for 5 L", GUIDE, "seen", 650,
              lambda: roux_for(Q_(5, "L"), "béchamel", "Escoffier").weight.magnitude, 1e-9,
              by="table"),
    Published("T5 béchamel, roux a litre", GUIDE, "seen", 130,
              lambda: roux_for(Q_(5, "L"), "béchamel", "Escoffier").per_litre.magnitude, 1e-9,
              by="table"),
    Published("T6 velouté, imperial quarts", ESCOFFIER, "computed", 79.8,
              lambda: per_litre(Q_(1, "lb"), Q_(5, "uk_quart")).magnitude, 1, by="formula"),
    Published("T6 velouté, misread as US quarts", ESCOFFIER, "computed", 95.9,
              lambda: per_litre(Q_(1, "lb"), Q_(5, "us_quart")).magnitude, 1, by="formula"),
    *(Published(f"T8 {body}, tablespoons of flour to a cup", SPOONS, "common practice", spoons,
                lambda body=body: roux_for(US_CUP, body, "household").flour.magnitude
                / FLOUR_SPOON_G, 1e-9, by="table")
      for spoons, body in enumerate(("thin", "medium", "thick", "heavy"), 1)),
    *(Published(f"T8 {body}, tablespoons of fat to a cup", SPOONS, "common practice", spoons,
                lambda body=body: roux_for(US_CUP, body, "household").fat.magnitude
                / BUTTER_SPOON_G, 1e-9, by="table")
      for spoons, body in enumerate(("thin", "medium", "thick", "heavy"), 1)),
    Published("T9 household medium, roux a litre", SR28, "computed", 186,
              lambda: roux_for(US_CUP, "medium", "household").per_litre.magnitude, 0.5,
              by="formula"),
    Published("T9 household medium, flour a litre", SR28, "computed", 66,
              lambda: roux_for(US_CUP, "medium", "household").flour_per_litre.magnitude, 0.5,
              by="formula"),
    Published("T9 Gisslen medium, flour a litre", GISSLEN, "computed", 62.5,
              lambda: roux_for(US_CUP, "medium").flour_per_litre.magnitude, 1e-9, by="table"),
    Published("M1 oil to acid", PRACTICE, "common practice", 3,
              lambda: (vinaigrette(Q_(1, "L")).oil / vinaigrette(Q_(1, "L")).acid).magnitude,
              1e-12, by="table"),
    Published("M2 oil in a US gallon, fl oz", PRACTICE, "computed", 96,
              lambda: vinaigrette(Q_(1, "us_gallon")).oil.to("us_fluid_ounce").magnitude, 1e-9,
              by="formula"),
    Published("M2 acid in a US gallon, fl oz", PRACTICE, "computed", 32,
              lambda: vinaigrette(Q_(1, "us_gallon")).acid.to("us_fluid_ounce").magnitude, 1e-9,
              by="formula"),
    Published("M4 closest packing", PACKING, "computed", 100 * math.pi / math.sqrt(18),
              lambda: packing_marks()["closest packing of equal spheres"].magnitude, 1e-3,
              by="formula"),
    Published("M5 random close packing", PHYSICS_WORLD, "seen", 64,
              lambda: packing_marks()["random close packing of equal spheres"].magnitude, 0.5,
              by="table"),
    Published("M6 random loose packing", LITERATURE, "seen", 55,
              lambda: packing_marks()["loose packing of equal spheres"].magnitude, 1, by="table"),
    Published("M7 74.05 % by volume, by weight", FORMULA, "computed", 71.71,
              lambda: oil_weight_fraction(percent(74.05)).magnitude, 0.1, by="formula"),
    Published("M7 64 % by volume, by weight", FORMULA, "computed", 61.23,
              lambda: oil_weight_fraction(percent(64)).magnitude, 0.1, by="formula"),
    Published("M8 65 % by weight, by volume", FORMULA, "computed", 67.64,
              lambda: oil_volume_fraction(grams(65), grams(35)).magnitude, 0.1, by="formula"),
    Published("M9 mayonnaise still workable", MAYONNAISE, "seen", 80,
              lambda: packing_marks()["mayonnaise still workable"].magnitude, 0, by="table"),
    Published("M9 mayonnaise breaks", MAYONNAISE, "seen", 90,
              lambda: packing_marks()["mayonnaise breaks"].magnitude, 0, by="table"),
    Published("J1 the constant of a 175 Bloom gelatin", GELATIN, "quoted", 34300,
              lambda: gel_strength(grams(7.5), grams(105), 175) / (7.5 / 105) ** 2, 1e-6,
              by="formula"),
    Published("J2 7.52 g in 105 g", GELATIN, "quoted", 175.9,
              lambda: gel_strength(grams(7.52), grams(105), 175), 0.1, by="formula"),
    Published("J3 21 g of 250 by 160 Bloom", GELATIN, "computed", 26.25,
              lambda: gelatin_for(grams(21), 250, 160).magnitude, 1e-9, by="formula"),
    Published("J4 the same by the linear rule", LINEAR, "seen", 32.8125,
              lambda: gelatin_for(grams(21), 250, 160, rule="linear").magnitude, 1e-9,
              by="formula"),
    Published("J5 240 by 60 Bloom", ROOTS, "seen", 2.000,
              lambda: gelatin_for(grams(1), 240, 60).magnitude, 1e-3, by="formula"),
    Published("J6 200 by 160 Bloom", ROOTS, "computed", 1.118,
              lambda: gelatin_for(grams(1), 200, 160).magnitude, 0.001, by="formula"),
    # 6.67 % by weight is 6.67 g with 93.33 g of water: there a gelatin is as firm as its Bloom.
    Published("J7 the Bloom test's concentration", BLOOM, "seen", 200,
              lambda: gel_strength(grams(100 / 15), grams(100 - 100 / 15), 200), 1e-9, by="table"),
    *(Published(f"J8 agar {what}, °C", NEUTRAL, "seen", expected,
                lambda what=what, end=end: getattr(gel_points("agar"), what)[end].magnitude, 5,
                by="table")
      for what, end, expected in (("sets", 0, 35), ("sets", 1, 45), ("melts", 0, 80),
                                  ("melts", 1, 90))),
    *(Published(f"J9 {agent}, at least", TEXTURE, "memory", least,
                lambda agent=agent: usual_dose(agent).least.magnitude, 0, by="table")
      for agent, least in (("agar", 0.2), ("gelatin", 0.6), ("xanthan", 0.25))),
    Published("J9 gelatin, at most", TEXTURE, "memory", 1.7,
              lambda: usual_dose("gelatin").most.magnitude, 0, by="table"),
    Published("5.4 lecithin, at least", PRACTICE, "common practice", 0.3,
              lambda: usual_dose("lecithin").least.magnitude, 0, by="table"),
    Published("5.4 lecithin, at most", PRACTICE, "common practice", 0.8,
              lambda: usual_dose("lecithin").most.magnitude, 0, by="table"),
    Published("A1 lemon", PENNISTON, "quoted", 48.0,
              lambda: citric_acid("lemon").magnitude, 7.64, by="formula"),
    Published("A1 lime", PENNISTON, "quoted", 45.86, lambda: citric_acid("lime").magnitude, 0,
    by="formula"),
    Published("A1 orange", PENNISTON, "quoted", 9.10, lambda: citric_acid("orange").magnitude, 0,
    by="table"),
    # The definition is printed; 12 °Brix and 1.5 % put in by hand.
    Published("A4 Brix to acid", KIMBALL, "computed", 8,
              lambda: brix_acid_ratio(percent(12), percent(1.5)), 1e-12, by="table"),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


def test_the_linear_rule_takes_a_quarter_more():
    """Trap 16: at 250 to 160 the ratio of the two rules is √(250 / 160) = 1.25 exactly."""
    root = gelatin_for(grams(21), from_bloom=250, to_bloom=160)
    linear = gelatin_for(grams(21), from_bloom=250, to_bloom=160, rule="linear")

    assert (linear / root).magnitude == pytest.approx(1.25, rel=1e-12)


def test_the_printed_root_was_cut_off_and_not_rounded():
    """Trap 17: √(200 / 160) = 1.118, printed 1.11."""
    assert gelatin_for(grams(1), 200, 160).magnitude - 1.11 > 0.005


@given(st.floats(1, 500), st.floats(50, 325), st.floats(50, 325))
def test_the_swapped_gelatin_sets_as_firm(weight_g, one, other):
    """Two functions agree: the weight by the root rule gives the same firmness. And back."""
    swapped = gelatin_for(grams(weight_g), one, other)
    water = grams(weight_g * 14)

    assert gel_strength(grams(weight_g), water, one) == pytest.approx(
        gel_strength(swapped, water, other), rel=1e-9
    )
    assert weight_g == pytest.approx(gelatin_for(swapped, other, one).magnitude, rel=1e-12)


@given(st.floats(50, 300), st.floats(1, 25))
def test_stronger_gelatin_means_less_of_it(bloom, more):
    """Monotonicity under both rules."""
    for rule in ("square root", "linear"):
        assert gelatin_for(grams(9), bloom, bloom + more, rule) < grams(9)


@given(st.floats(1, 1e4), st.floats(0.05, 5))
def test_a_dose_is_that_percent_of_the_base(base_g, share):
    """There and back, and the same from ounces."""
    weighed = dose(grams(base_g), percent(share))

    assert share == pytest.approx(100 * weighed.magnitude / base_g, rel=1e-12)
    assert weighed.magnitude == pytest.approx(
        dose(grams(base_g).to("oz"), percent(share)).magnitude, rel=1e-12
    )


def test_four_percent_of_lecithin_is_not_usual():
    """Trap 21: one text says 4 %, five times the most that its own recipes take."""
    assert percent(4) >= 5 * usual_dose("lecithin").most


def test_lecithin_is_called_what_it_is():
    """Trap 21: a phospholipid mixture, no protein; the cook's page says so."""
    assert "no protein" in dose.__doc__
    assert "phospholipids" in dose.__doc__


def test_the_top_of_agar_is_left_open():
    """Row J9 says "0.2 % and up"; no upper end is made up."""
    assert usual_dose("agar").most is None


@given(st.floats(0.1, 100), st.sampled_from(["thin", "medium", "thick"]))
def test_roux_grows_with_the_liquid_and_its_flour_a_litre_does_not(litres, body):
    """Unit invariance and proportion: litres, quarts; the flour a litre stays."""
    roux = roux_for(Q_(litres, "L"), body)
    in_quarts = roux_for(Q_(litres, "L").to("us_quart"), body)

    assert roux.weight.magnitude == pytest.approx(in_quarts.weight.magnitude, rel=1e-12)
    assert roux.flour_per_litre.magnitude == pytest.approx(
        roux_for(Q_(1, "L"), body).flour.magnitude, rel=1e-12
    )


def test_thicker_takes_more_flour_in_every_source():
    """Monotonicity over the bodies."""
    for source in ("Gisslen", "household"):
        flours = [roux_for(Q_(1, "L"), body, source).flour for body in ("thin", "medium", "thick")]

        assert flours == sorted(flours)


def test_two_mediums_differ_in_fat_and_not_in_flour():
    """Row T9: 186 against 125 g roux a litre, 66 against 62.5 g flour."""
    spoons, scale = roux_for(US_CUP, "medium", "household"), roux_for(US_CUP, "medium")

    assert (spoons.per_litre / scale.per_litre).magnitude == pytest.approx(1.49, abs=0.01)
    assert (spoons.flour_per_litre / scale.flour_per_litre).magnitude < 1.06


def test_reading_english_quarts_as_american_thickens_by_a_fifth():
    """Trap 30: 4546.09 / 3785.41 = 1.201."""
    english, american = (per_litre(Q_(1, "lb"), Q_(5, quart)) for quart in ("uk_quart", "us_quart"))

    assert (american / english).magnitude == pytest.approx(1.20095, abs=1e-5)


@given(st.floats(1, 99), st.floats(0.85, 0.95), st.floats(1.0, 1.1))
def test_oil_by_weight_to_volume_and_back(by_weight, oil_density, water_density):
    """There and back, with any two densities."""
    densities = {
        "oil_density": Q_(oil_density, "g/mL"),
        "water_density": Q_(water_density, "g/mL"),
    }
    by_volume = oil_volume_fraction(grams(by_weight), grams(100 - by_weight), **densities)
    back = oil_weight_fraction(by_volume, **densities)

    assert by_volume.magnitude > by_weight
    assert by_weight == pytest.approx(back.magnitude, rel=1e-9)


@given(st.floats(1, 1000), st.floats(1, 1000))
def test_oil_measured_and_oil_weighed_are_the_same_emulsion(oil_ml, rest_ml):
    """Volumes need no density: the same as their weights at 0.915 and 1.03 g/mL."""
    measured = oil_volume_fraction(Q_(oil_ml, "mL"), Q_(rest_ml, "mL"))
    weighed = oil_volume_fraction(grams(0.915 * oil_ml), grams(1.03 * rest_ml))

    assert measured.magnitude == pytest.approx(weighed.magnitude, rel=1e-9)


def test_the_legal_least_of_mayonnaise_lies_between_two_packings():
    """Row M3: 65 % by weight (21 CFR 169.140) is above random and below closest packing."""
    legal = oil_volume_fraction(grams(65), grams(35))

    assert packing_of(legal) == "random close packing of equal spheres"


@pytest.mark.parametrize(
    ("oil", "words"),
    [
        (30, "droplets apart: runny"),
        (60, "loose packing of equal spheres"),
        (78, "closest packing of equal spheres"),
        (85, "mayonnaise still workable"),
        (95, "mayonnaise breaks"),
    ],
)
def test_packing_in_words(oil, words):
    """Read off the table of marks."""
    assert words == packing_of(percent(oil))


def test_marks_rise():
    """`packing_of` takes the last mark reached, so they must be in order."""
    marks = [mark.magnitude for mark in packing_marks().values()]

    assert marks == sorted(marks)


@given(st.floats(10, 1e4), st.floats(0.5, 10))
def test_a_vinaigrette_is_all_oil_and_acid(batch_ml, parts):
    """The two make the batch, in that ratio."""
    oil, acid = vinaigrette(Q_(batch_ml, "mL"), oil_to_acid=parts)

    assert batch_ml == pytest.approx((oil + acid).magnitude, rel=1e-12)
    assert parts == pytest.approx((oil / acid).magnitude, rel=1e-12)


def test_lemon_sours_five_times_as_much_as_orange():
    """By hand: 48.0 / 9.10 = 5.27."""
    ratio = (citric_acid("lemon") / citric_acid("orange")).magnitude

    assert ratio == pytest.approx(5.27, abs=0.01)


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: dose(Q_(1, "L"), percent(0.5)), WrongKind, "base: needs a weight"),
        (lambda: dose(grams(500), 0.5), WrongKind, r'percent: .*Q_\(0.5, "percent"\)'),
        (lambda: dose(grams(500), percent(0)), OutOfRange, "percent: needs more than 0"),
        (lambda: usual_dose("glue"), UnknownName, "agent: 'glue' is not one of 'agar'"),
        (lambda: gel_points("gelatin"), UnknownName, "agent: 'gelatin' is not one of 'agar'"),
        (lambda: roux_for(Q_(1, "kg"), "thin"), WrongKind, "liquid: needs a volume"),
        (lambda: roux_for(Q_(1, "L"), "heavy"), UnknownName, "body: 'heavy' is not one of 'thin'"),
        (lambda: roux_for(Q_(1, "L"), "thin", "me"), UnknownName, "source: 'me'"),
        (lambda: per_litre(grams(0), Q_(1, "L")), OutOfRange, "weight: needs more than 0 g"),
        (lambda: gelatin_for(grams(21), 250, 0), OutOfRange, "to_bloom: needs a number from 50"),
        (lambda: gelatin_for(grams(21), "gold", 160), WrongKind, "from_bloom: .*'gold' came"),
        (
            lambda: gelatin_for(grams(21), 250, 160, rule="cube"),
            UnknownName,
            "rule: 'cube' is not one of 'square root', 'linear'",
        ),
        (lambda: gel_strength(grams(7), Q_(1, "L"), 200), WrongKind, "water: 1 L is a volume"),
        (lambda: oil_volume_fraction(grams(7), Q_(1, "L")), WrongKind, "water_phase: 1 L is a"),
        (lambda: oil_weight_fraction(percent(120)), OutOfRange, "volume_fraction: needs at most"),
        (lambda: packing_of(0.7), WrongKind, "oil: "),
        (lambda: vinaigrette(Q_(1, "L"), oil_to_acid=0), OutOfRange, "oil_to_acid: "),
        (lambda: vinaigrette(grams(100)), WrongKind, "batch: needs a volume"),
        (lambda: citric_acid("apple"), UnknownName, "juice: 'apple' is not one of 'lemon'"),
        (lambda: brix_acid_ratio(percent(12), percent(0)), OutOfRange, "acid: needs more than"),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
