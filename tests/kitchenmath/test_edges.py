"""Each limit at its edge: what is just allowed comes through, and the next step is refused.

The limits are the house's own, to catch a slip of the keyboard, but for those with a source.
"""

import pytest

from kitchenmath.cuts.sampling import chance_to_pass
from kitchenmath.drills.trays import off_size
from kitchenmath.errors import KitchenError
from kitchenmath.heat.probe_check import check_probe
from kitchenmath.practice.probe_log import ProbeLogKind
from kitchenmath.practice.readings import ReadingsKind
from kitchenmath.ratios.dough_water import ice_for, water_temperature
from kitchenmath.recipes.reading import read_recipe
from kitchenmath.safety.general_method import lethal_rate
from kitchenmath.safety.hold_times import roast_oven_limit, roast_tables_with
from kitchenmath.safety.quoted import limit
from kitchenmath.sauces.thickening import roux_for
from kitchenmath.typed.lists import amounts_in
from kitchenmath.typed.numbers import typed_number
from kitchenmath.units.door import plain_number
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_
from tests.helpers.quantities import celsius


def read_log(text):
    return ProbeLogKind().read(text)


def read_sizes(text):
    return ReadingsKind().read(text)


def dough(target_C):
    """Water for three temperatures of 20 °C and no friction: 3 x target - 40."""
    return water_temperature(
        celsius(target_C), flour=celsius(20), room=celsius(20), friction=Q_(0, "delta_degC")
    )


EDGES = {
    "absolute zero, as a reference": (
        lambda degrees: lethal_rate(celsius(degrees), celsius(degrees), Q_(10, "delta_degC")),
        -273.15, -273.2),
    "absolute zero, under a reference": (
        lambda degrees: lethal_rate(celsius(20), celsius(degrees), Q_(10, "delta_degC")),
        -273.15, -273.2),
    "a number that a double counts": (lambda number: plain_number(number, "covers"), 9.99e14, 1e15),
    "an amount's text": (lambda length: read("2 g".rjust(length)), 200, 201),
    "a list's text": (lambda length: amounts_in("2 g".ljust(length)), 4000, 4001),
    "a recipe's text": (
        lambda length: read_recipe("Foam, 4 covers\n500 g cider\n".ljust(length)), 20_000, 20_001),
    "pieces of a tray that is judged": (
        lambda pieces: chance_to_pass(pieces, 0, Q_(1, "percent")),
        10_000, 10_001),
    "a probe in melting ice": (
        lambda shown: check_probe(celsius(shown), celsius(100)), 10, 10.1),
    "water for a dough with yeast": (dough, 85 / 3, 85.2 / 3),
    "water as cold as there is": (dough, 40 / 3, 39.9 / 3),
    "readings of a cut": (lambda count: read_sizes(", ".join(["3"] * count) + " mm"), 100, 101),
    "a cut's length": (lambda length: read_sizes(f"{length}, 400 mm"), 500, 501),
    "a log's hottest core": (
        lambda core: read_log(f"0 min 5 °C; 5 min {core} °C"), 400, 401),
    "a log's coldest core": (
        lambda core: read_log(f"0 min {core} °C; 5 min 5 °C"), -40, -41),
    "a log's end": (lambda end: read_log(f"0 min 5 °C; {end} min 20 °C"), 2880, 2881),
    "a log's readings": (
        lambda count: read_log([f"{at} min {5 + at / 100} °C" for at in range(count)]),
        500, 501),
    "how far above its reference a lethal rate is taken": (
        lambda core: lethal_rate(celsius(core), celsius(70), Q_(1, "delta_degC")), 170, 170.1),
}  # fmt: skip


@pytest.mark.parametrize("name", EDGES)
def test_the_last_that_is_allowed_comes_through_and_the_next_is_refused(name):
    make, last, beyond = EDGES[name]

    make(last)
    with pytest.raises(KitchenError):
        make(beyond)


@pytest.mark.parametrize(
    ("readings", "unfit"),
    [
        ("0 min 5 °C; 1 min 6; 2 min 7; 3 min 8", "few"),
        ("0 min 5 °C; 1 min 6; 2 min 7; 3 min 8; 4 min 9.9", "flat"),
        ("0 min 5 °C; 1 min 6; 2 min 7; 3 min 8; 4 min 10", ""),
        ("0 min 5 °C; 1 min 6; 2 min 7; 3 min 11; 4 min 10.9", "falling"),
        ("0 min 5 °C; 1 min 6; 2 min 7; 3 min 11; 4 min 11", "falling"),
    ],
)
def test_a_log_is_built_on_from_five_readings_and_five_degrees(readings, unfit):
    """Four readings are few, a rise of 4.9 K says nothing, and a core that stands warms no more."""
    assert unfit == read_log(readings).unfit


@pytest.mark.parametrize(
    ("sizes", "odd"),
    [
        ("3, 3, 3, 15 mm", [15]),
        ("3, 3, 3, 14.9 mm", []),
        ("3, 3, 3, 60 mm", [60]),
        ("3, 3, 3, 60.1 mm", []),
        ("3, 3, 3, 0.6 mm", [0.6]),
        ("3, 3, 3, 0.61 mm", []),
        ("30, 30, 30, 1.5 mm", [1.5]),
        ("30, 30, 30, 1.49 mm", []),
    ],
)
def test_a_decimal_point_slipped_where_a_piece_is_5_to_20_times_the_others(sizes, odd):
    assert odd == [pytest.approx(each.magnitude) for each in read_sizes(sizes).tenfold]


@pytest.mark.parametrize(("pounds", "shown_F"), [(9.99, 350), (10, 250), (10.01, 250)])
def test_a_roast_of_ten_pounds_counts_as_ten_pounds_and_over(pounds, shown_F):
    """FDA Food Code 3-401.11(B)(1): under 10 lb 350 °F, 10 lb or more 250 °F, dry still oven."""
    row = roast_oven_limit(Q_(pounds, "lb"), "dry still")

    assert shown_F == pytest.approx(row.fahrenheit.magnitude)


@pytest.mark.parametrize(
    ("fahrenheit", "minutes", "stands"),
    [(130, 112, 1), (130.049, 112, 1), (130.051, 112, 0), (130, 112.008, 1), (130, 112.009, 0)],
)
def test_a_pair_stands_in_a_roast_table_as_it_is_printed(fahrenheit, minutes, stands):
    """FDA Food Code 3-401.11(B)(2), 130 °F for 112 min: within half a second and 0.05 degrees."""
    found = roast_tables_with(Q_(fahrenheit, "degF"), Q_(minutes, "min"))

    assert bool(stands) is bool([row for row in found if "Food Code" in row.source])


def test_at_most_and_at_least_hold_at_the_limit_itself():
    """FDA Food Code 3-501.16: cold at 5 °C (41 °F) or below, hot at 57 °C (135 °F) or above."""
    cold, hot = limit("cold holding"), limit("hot holding")

    assert [True, False] == [cold.reached_by(celsius(shown)) for shown in (5, 5.1)]
    assert [True, False] == [hot.reached_by(celsius(shown)) for shown in (57, 56.9)]
    assert [True, False] == [cold.reached_by(Q_(shown, "degF")) for shown in (41, 41.1)]
    assert [True, False] == [hot.reached_by(Q_(shown, "degF")) for shown in (135, 134.9)]


def test_a_piece_on_the_edge_of_the_band_is_on_size():
    """From 2.5 to 3.5 mm around 3 mm, as the drill says to the student."""
    assert 2 == off_size([0.5, -0.5, 0, 0.6, -0.6])


@pytest.mark.parametrize("typed", ["1,250", "12,500", "125,000", "999,999"])
def test_three_figures_behind_a_comma_are_never_read_as_a_fraction_in_silence(typed):
    """125,000 is 125 in one country and a thousand times as much in the next: both are said."""
    with pytest.raises(KitchenError, match=typed.replace(",", "")):
        read(f"{typed} g")
    with pytest.raises(KitchenError, match="in two ways"):
        typed_number(typed)


@pytest.mark.parametrize(
    ("typed", "number"), [("0,125", 0.125), ("1250,5", 1250.5), ("12,50", 12.5)]
)
def test_a_comma_that_can_mean_one_thing_only_is_the_decimal_sign(typed, number):
    assert number == read(f"{typed} g").magnitude
    assert number == typed_number(typed)


def test_ice_from_the_freezer_takes_its_own_warmth_too():
    """10 kg from 20 to 5 °C with ice of -18 °C, in kJ: 4.19 x 15 / (2 x 18 + 333.5 + 4.19 x 20)
    = 62.85 / 453.3 = 0.13865 of it; IAPWS and Choi and Okos (1986)."""
    parts = ice_for(Q_(10, "kg"), wanted=celsius(5), tap=celsius(20), ice=celsius(-18))

    assert 1.3865 == pytest.approx(parts["ice"].to("kg").magnitude, abs=0.0005)
    assert 10 == pytest.approx((parts["ice"] + parts["water"]).to("kg").magnitude)


def test_a_roux_cooked_brown_has_lost_what_escoffier_weighs():
    """Between 6 % (by his ounces) and 9 % (by his grams): 925 g are left of a kilogram."""
    roux = roux_for(Q_(8, "L"), body="medium")

    assert 1000 == pytest.approx(roux.weight.to("g").magnitude)
    assert 925 == pytest.approx(roux.when_brown.to("g").magnitude)
