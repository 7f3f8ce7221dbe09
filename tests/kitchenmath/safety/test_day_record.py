"""Lines of a day's record, the allergens of a menu, and a probe in ice and in boiling water."""

import pytest

from kitchenmath.data.tables import table
from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.heat import boiling_point, check_probe
from kitchenmath.safety import (
    allergen_matrix,
    control_points,
    menu_dishes,
    plate_allergens,
    point_limit,
    reading_verdict,
)
from kitchenmath.units import Q_
from tests.helpers.quantities import celsius


@pytest.mark.parametrize(
    ("point", "keeps", "breaks"),
    [
        ("delivery", 5, 5.5),
        ("cold room", 5, 5.5),
        ("freezer", -18, -17),
        ("core of poultry", 74, 73.5),
        ("core of fish", 63, 62.5),
        ("core of pork or beef", 63, 62.5),
        ("reheated", 74, 73.5),
        ("hot holding", 57, 56.5),
        ("cold at the pass", 5, 5.5),
    ],
)
def test_a_reading_on_the_limit_is_in_order_and_half_a_degree_beyond_is_not(point, keeps, breaks):
    """FDA Food Code 3-401.11, 3-403.11 and 3-501.16; the freezer by USDA FSIS, 0 °F."""
    assert reading_verdict(point, celsius(keeps)).meets is True
    out = reading_verdict(point, celsius(breaks))
    assert out.meets is False
    assert out.if_out
    assert out.limit == point_limit(point)


def test_every_control_point_has_a_line_above():
    assert 9 == len(control_points()) == len(table("control_points.csv"))


def test_a_reading_in_fahrenheit_meets_the_printed_fahrenheit():
    """The code prints 5 °C and 41 °F, and 74 °C and 165 °F."""
    assert reading_verdict("cold room", Q_(41, "degF")).meets
    assert not reading_verdict("cold room", Q_(42, "degF")).meets
    assert reading_verdict("core of poultry", Q_(165, "degF")).meets
    assert not reading_verdict("core of poultry", Q_(164, "degF")).meets


def test_a_country_whose_limit_was_not_read_gets_no_number():
    told = reading_verdict("hot holding", celsius(60), source="UK")

    assert (told.meets, told.limit) == (None, None)
    assert "not covered here: ask your food code" in told.words


def test_what_is_no_point_and_no_temperature_is_refused():
    with pytest.raises(UnknownName, match="point"):
        reading_verdict("oven", celsius(60))
    with pytest.raises(WrongKind, match="reading"):
        reading_verdict("delivery", Q_(5, "kg"))


def test_the_matrix_says_of_each_dish_what_its_plate_says():
    """Celeriac is celery, lecithin mostly soya; cider often holds sulphites: its label tells."""
    rows = allergen_matrix(menu_dishes())

    assert ["milk", "celery"] == [name for name, how in rows["celeriac brunoise"].items()
                                  if how == "holds"]  # fmt: skip
    assert ("holds", "label") == (rows["cider foam"]["soya"], rows["cider foam"]["sulphites"])
    for dish, items in menu_dishes().items():
        holds = [name for name, how in rows[dish].items() if how == "holds"]
        assert holds == list(plate_allergens(items).holds)


def test_the_list_of_nine_has_no_celery_and_no_mustard():
    """FALCPA 2004 and the FASTER Act of 2021 name nine; celery and mustard are not among them."""
    met = next(iter(allergen_matrix(menu_dishes(), "US").values()))

    assert {"celery", "mustard", "sulphites"}.isdisjoint(met)
    assert {"wheat", "soybeans", "milk", "egg", "fish"} == set(met)


@pytest.mark.parametrize("menu", [{}, None, ["butter"], "butter"])
def test_what_is_no_menu_is_refused(menu):
    with pytest.raises(WrongKind, match="dishes"):
        allergen_matrix(menu)


def test_a_sound_probe_in_the_mountains_is_not_to_blame():
    """McGee: 1 °C less for each 305 m; at 1500 m that is 95.1 °C, and IAPWS has 95.0."""
    high = check_probe(celsius(0), celsius(95), altitude=Q_(1500, "m"))

    assert abs(high.boiling_off.magnitude) < 0.1
    assert check_probe(celsius(0), celsius(95)).boiling_off.magnitude == pytest.approx(-5, abs=0.05)


@pytest.mark.parametrize("height", [600, 900, 1200, 1500])
def test_the_rule_of_the_lesson_is_good_to_a_tenth(height):
    """A degree less for each 300 m; US Standard Atmosphere with IAPWS-IF97 are the referee."""
    assert boiling_point(altitude=Q_(height, "m")).magnitude == pytest.approx(
        100 - height / 300, abs=0.1
    )


def test_between_the_two_checks_the_error_is_shared_out():
    """1 too much in ice and 2 at the boil of 100: at 50 °C it is 1.5, at 74 °C 1.74."""
    probe = check_probe(celsius(1), celsius(102))

    assert probe.off_at(celsius(50)).magnitude == pytest.approx(1.5, abs=0.02)
    assert probe.must_show(celsius(74)).magnitude == pytest.approx(75.75, abs=0.03)


def test_a_probe_that_is_far_off_is_broken_or_was_elsewhere():
    with pytest.raises(OutOfRange, match="ice: 12 °C off"):
        check_probe(celsius(12), celsius(100))
    with pytest.raises(OutOfRange, match="boiling"):
        check_probe(celsius(0), celsius(80))
