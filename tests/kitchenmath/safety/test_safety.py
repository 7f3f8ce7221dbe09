"""Quoted limits, look-ups in steps and verdicts against print."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitchenmath.data.tables import table
from kitchenmath.errors import NotCovered, OutOfRange, UnknownName, WrongKind
from kitchenmath.safety import (
    CAUTION,
    cooling_verdict,
    core_verdict,
    holding_verdict,
    limit,
    limits,
    not_covered,
    parasite_verdict,
    roast_hold_time,
    roast_oven_limit,
    roast_tables_with,
    uk_equivalent,
)
from kitchenmath.units.registry import Q_
from tests.helpers.published import STATUSES, Published
from tests.helpers.quantities import celsius, delta, fahrenheit, minutes, seconds

FOOD_CODE = "FDA Food Code, read in state codes that adopt it (MN, WA, SD, DE, AK, CA, DC)"
FSIS = "USDA FSIS Appendix A, Table 2 of FSIS-GD-2021-14 (rhosey.com copy)"
FSIS_TEXT = "USDA FSIS-GD-2021-14, text"
PATTIES = "9 CFR 318.23(b)(1)"
OLD_CODE = "Food Code before 2001, in P-5010-1 Table 1-4"
HOME = "foodsafety.gov chart (2019) / USDA FSIS (wichealth.org 5807)"
BASICS = "USDA FSIS, Basics for handling food safely"
UK = "UK FSA / ACMSF cooking advice, on pages that quote it"


# °F: printed °C, 6.5-log, 7-log; minutes up to 145 °F, seconds above.
FSIS_ROWS = {
    130: (54.4, 112, 121), 131: (55.0, 89, 97), 132: (55.6, 71, 77), 133: (56.1, 56, 62),
    134: (56.7, 45, 47), 135: (57.2, 36, 37), 136: (57.8, 28, 32), 137: (58.4, 23, 24),
    138: (58.9, 18, 19), 139: (59.5, 15, 15), 140: (60.0, 12, 12), 141: (60.6, 9, 10),
    142: (61.1, 8, 8), 143: (61.7, 6, 6), 144: (62.2, 5, 5), 145: (62.8, 4, 4),
    146: (63.3, 169, 182), 147: (63.9, 134, 144), 148: (64.4, 107, 115), 149: (65.0, 85, 91),
    150: (65.6, 67, 72), 151: (66.1, 54, 58), 152: (66.7, 43, 46), 153: (67.2, 34, 37),
    154: (67.8, 27, 29), 155: (68.3, 22, 23), 156: (68.9, 17, 19), 157: (69.4, 14, 15),
    158: (70.0, 0, 0), 159: (70.6, 0, 0), 160: (71.1, 0, 0),
}  # fmt: skip
ROAST_F = (130, 131, 133, 135, 136, 138, 140, 142, 144, 145, 147, 149, 151, 153, 155, 157, 158)
ROAST_C = (54.4, 55.0, 56.1, 57.2, 57.8, 58.9, 60.0, 61.1, 62.2, 62.8, 63.9, 65.0, 66.1, 67.2,
           68.3, 69.4, 70.0)  # fmt: skip
ROAST_S = (*(60 * m for m in (112, 89, 56, 36, 28, 18, 12, 8, 5, 4)), 134, 85, 54, 34, 22, 14, 0)
OLD_ROAST = {130: 121, 132: 77, 134: 47, 136: 32, 138: 19, 140: 12, 142: 8, 144: 5, 145: 3}
OVENS = (("dry still", 9, 350), ("dry still", 10, 250), ("convection", 9, 325),
         ("convection", 10, 250), ("humid", 9, 250))  # fmt: skip
# what, source, edition, °C, °F, seconds (None: no time is named), status, row id
QUOTED = (
    ("fish", None, None, 63, 145, 15, "quoted", "T3-25"),
    ("intact meat", None, None, 63, 145, 15, "quoted", "T3-25"),
    ("eggs", None, None, 63, 145, 15, "quoted", "T3-25"),
    ("ground meat", None, None, None, 155, 17, "quoted", "T3-26"),
    ("ground meat", None, "2013", None, 155, 15, "quoted", "T3-26"),
    ("injected meat", None, None, None, 155, 17, "quoted", "T3-26"),
    ("eggs for later", None, None, None, 155, 17, "quoted", "T3-26"),
    ("poultry", None, None, None, 165, 15, "quoted", "T3-27"),
    ("stuffed food", None, None, None, 165, 15, "quoted", "T3-27"),
    ("microwaved food", None, None, None, 165, 120, "quoted", "T3-28"),
    ("hot holding", None, None, 57, 135, None, "quoted", "T3-33"),
    ("roast hot holding", None, None, 54, 130, None, "quoted", "T3-33"),
    ("cold holding", None, None, 5, 41, None, "quoted", "T3-33"),
    ("shell egg storage", None, None, 7, 45, None, "quoted", "T3-34"),
)
HOME_CHART = {"steaks, chops and roasts": 145, "fresh ham": 145, "precooked ham": 140,
              "other precooked ham": 165, "ground meat": 160, "poultry": 165, "egg dishes": 160,
              "leftovers": 165, "casseroles": 165, "fish": 145}  # fmt: skip
UK_ROWS = {60: 45 * 60, 65: 600, 70: 120, 75: 30, 80: 6}


def fewest_hours(store, solid=None):
    """The shortest freezing, in whole hours, that the quoted rule takes."""
    solid = None if solid is None else celsius(solid)
    return next(h for h in range(1, 400) if parasite_verdict(celsius(store), Q_(h, "h"), solid))


PUBLISHED = (
    *(Published(f"3.1 {f} °F, {table}", FSIS, "seen", row[column] * (60 if f <= 145 else 1),
                lambda f=f, table=table: seconds(roast_hold_time(fahrenheit(f), table).time),
                by="table")
      for f, row in FSIS_ROWS.items()
      for column, table in ((1, "FSIS 6.5-log"), (2, "FSIS 7-log"))),
    *(Published(f"3.1 {f} °F in °C as printed", FSIS, "seen", row[0],
                lambda f=f: roast_hold_time(fahrenheit(f), "FSIS 7-log").temperature.magnitude,
                by="table")
      for f, row in FSIS_ROWS.items()),
    Published("T3-01 poultry at 160 °F, longest", FSIS_TEXT, "seen", 26.9,
              lambda: seconds(limit("poultry in an inspected plant").time), by="table"),
    *(Published(f"T3-07 {what}, older single temperature", FSIS_TEXT, "seen", f,
                lambda what=what: limit(what, edition="2021").fahrenheit.magnitude, by="table")
      for what, f in (("poultry rolls", 160), ("cured and smoked poultry", 155))),
    Published("T3-10 come-up", FSIS_TEXT, "seen", 6,
              lambda: limit("come-up").time.to("h").magnitude, by="table"),
    Published("T3-12 patties, 155 °F", PATTIES, "quoted", 16,
              lambda: seconds(limit("meat patties in an inspected plant").time), by="table"),
    *(Published(f"T3-20/21 roast, {f} °F", FOOD_CODE, "quoted", s,
                lambda f=f: seconds(roast_hold_time(fahrenheit(f)).time), by="table")
      for f, s in zip(ROAST_F, ROAST_S, strict=True)),
    *(Published(f"T3-22 roast, {c} °C", FOOD_CODE, "quoted", s,
                lambda c=c: seconds(roast_hold_time(celsius(c)).time), by="table")
      for c, s in zip(ROAST_C, ROAST_S, strict=True)),
    *(Published(f"T3-22 roast, {f} °F in °C", FOOD_CODE, "quoted", c,
                lambda f=f: roast_hold_time(fahrenheit(f)).temperature.magnitude, by="table")
      for f, c in zip(ROAST_F, ROAST_C, strict=True)),
    *(Published(f"T3-23 {oven} oven, {lb} lb", FOOD_CODE, "quoted", f,
                lambda oven=oven, lb=lb: roast_oven_limit(Q_(lb, "lb"), oven).fahrenheit.magnitude,
                by="table")
      for oven, lb, f in OVENS),
    *(Published(f"T3-24 superseded roast, {f} °F", OLD_CODE, "quoted", m,
                lambda f=f: next(minutes(row.time) for row in
                                 limits("whole roast", edition="before 2001")
                                 if row.fahrenheit == fahrenheit(f)), by="table")
      for f, m in OLD_ROAST.items()),
    *(Published(f"{row} {what} ({edition or 'in force'}), °F", FOOD_CODE, status, f,
                lambda what=what, source=source, edition=edition:
                limit(what, source, edition).fahrenheit.magnitude, by="table")
      for what, source, edition, _, f, _, status, row in QUOTED),
    *(Published(f"{row} {what}, °C", FOOD_CODE, status, c,
                lambda what=what, source=source, edition=edition:
                limit(what, source, edition).temperature.magnitude, by="table")
      for what, source, edition, c, _, _, status, row in QUOTED if c is not None),
    *(Published(f"{row} {what} ({edition or 'in force'}), time", FOOD_CODE, status, s,
                lambda what=what, source=source, edition=edition:
                seconds(limit(what, source, edition).time), by="table")
      for what, source, edition, _, _, s, status, row in QUOTED if s is not None),
    *(Published(f"T3-26 ground meat at {f} °F instead", FOOD_CODE, "quoted", s,
                lambda f=f: next(seconds(row.time) for row in limits("ground meat")
                                 if row.fahrenheit == fahrenheit(f)), by="table")
      for f, s in ((150, 60), (145, 180), (158, 0))),
    Published("T3-29 parasites, -20 °C", FOOD_CODE, "quoted", 168, lambda: fewest_hours(-20),
    by="table"),
    Published("T3-29 parasites, blast and stored at -35 °C", FOOD_CODE, "quoted", 15,
              lambda: fewest_hours(-35, solid=-35), by="table"),
    Published("T3-29 parasites, blast at -35, stored at -20 °C", FOOD_CODE, "quoted", 24,
              lambda: fewest_hours(-20, solid=-35), by="table"),
    *(Published(f"T3-35 at home, {what}", HOME, "quoted", f,
                lambda what=what: limit(what, "USDA FSIS home chart").fahrenheit.magnitude,
                by="table")
      for what, f in HOME_CHART.items()),
    *(Published(f"T3-35 at home, {what}, rest", HOME, "quoted", 3,
                lambda what=what: minutes(limit(what, "USDA FSIS home chart").time), by="table")
      for what in ("steaks, chops and roasts", "fresh ham")),
    Published("T3-36 left out", BASICS, "quoted", 2, lambda: limit("left out").time.magnitude,
    by="table"),
    Published("T3-36 left out above 90 °F", BASICS, "quoted", 1,
              lambda: limit("left out in the heat").time.magnitude, by="table"),
    Published("T3-36 what is hot", BASICS, "quoted", 90,
              lambda: limit("left out in the heat").fahrenheit.magnitude, by="table"),
    Published("T3-36 refrigerator", BASICS, "quoted", 40,
              lambda: limit("refrigerator").fahrenheit.magnitude, by="table"),
    Published("T3-36 freezer", BASICS, "quoted", 0, lambda: limit("freezer").fahrenheit.magnitude,
    by="table"),
    *(Published(f"T3-40 UK, {c} °C", UK, "quoted", s,
                lambda c=c: seconds(uk_equivalent(celsius(c)).time),
                by="table") for c, s in UK_ROWS.items()),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


# Look-ups in steps


def test_between_two_rows_the_lower_one_counts():
    """57 °C lies between 56.1 (56 min) and 57.2 °C (36 min): 56 min."""
    row = roast_hold_time(celsius(57))

    assert (56.1, 56) == (row.temperature.magnitude, row.time.magnitude)


@given(st.floats(54.4, 90), st.sampled_from(["FDA Food Code", "FSIS 6.5-log", "FSIS 7-log"]))
def test_a_looked_up_time_is_never_shorter_than_the_line_between_rows(degree, table):
    """The step stands on or above the log-linear line through the rows around (numpy's interp)."""
    what = {"FDA Food Code": "whole roast", "FSIS 6.5-log": "whole roast, 6.5-log",
            "FSIS 7-log": "whole roast, 7-log"}[table]  # fmt: skip
    rows = limits(what)
    points = [row.temperature.magnitude for row in rows]
    line = np.exp(np.interp(degree, points, [math.log(seconds(row.time) + 1e-9) for row in rows]))

    row = roast_hold_time(celsius(degree), table)

    assert row.temperature.magnitude <= degree + 1e-6
    assert seconds(row.time) >= line * (1 - 1e-9) - 1e-6


@given(st.floats(60, 95), st.floats(0, 30))
def test_hotter_is_never_longer(degree, rise):
    """Monotone, in the UK rows as in the roast table."""
    for look_up in (uk_equivalent, roast_hold_time):
        hotter, cooler = look_up(celsius(degree + rise)), look_up(celsius(degree))

        assert seconds(hotter.time) <= seconds(cooler.time)


@pytest.mark.parametrize("look_up", [roast_hold_time, uk_equivalent])
def test_below_the_first_row_no_time_is_made_up(look_up):
    """No table prints a time at 54 °C."""
    with pytest.raises(OutOfRange, match="below the first row"):
        look_up(celsius(54))


def test_each_scale_is_judged_as_it_is_printed():
    """145 °F is 62.78 °C and meets 63 °C (145 °F); 62.8 °C in a Celsius log does not."""
    assert limit("fish").reached_by(fahrenheit(145))
    assert limit("fish").reached_by(Q_(336.15, "kelvin"))
    assert not limit("fish").reached_by(celsius(62.8))
    assert not limit("fish").reached_by(fahrenheit(144.9))
    assert limit("cold holding").reached_by(celsius(5))
    assert not limit("cold holding").reached_by(fahrenheit(41.5))


# Traps: two roast tables, two editions


def test_the_roast_table_from_before_2001_is_known_and_never_used():
    """145 °F for 3 min stands only in the superseded table; the Food Code asks for 4 min."""
    found = roast_tables_with(fahrenheit(145), Q_(3, "min"))

    assert ["superseded"] == [row.standing for row in found]
    assert "SUPERSEDED" in str(found[0])
    assert Q_(4, "min") == roast_hold_time(fahrenheit(145)).time
    assert not core_verdict("whole roast", fahrenheit(145), Q_(3, "min"))


def test_121_minutes_stand_in_the_old_table_and_in_fsis_7_log():
    """130 °F: 121 min before 2001 and in the 7-log table, 112 min in the Food Code since."""
    found = roast_tables_with(fahrenheit(130), Q_(121, "min"))

    assert [("FDA Food Code", "superseded"), ("USDA FSIS", "current")] == [
        (row.source, row.standing) for row in found
    ]
    assert () == roast_tables_with(fahrenheit(130), Q_(100, "min"))


def test_no_look_up_takes_the_superseded_table():
    """It can only be listed by its edition."""
    with pytest.raises(UnknownName, match="'before 2001' is not one of"):
        roast_hold_time(celsius(60), table="before 2001")
    assert all(row.standing == "current" for row in limits("whole roast"))


def test_seventeen_seconds_are_in_force_and_fifteen_are_asked_for_by_edition():
    """Ground meat at 155 °F: 15 s to 2013, 17 s from 2017. 15 s no longer pass."""
    assert "superseded" == limit("ground meat", edition="2013").standing
    assert core_verdict("ground meat", fahrenheit(155), Q_(17, "s")).meets is True
    assert core_verdict("ground meat", fahrenheit(155), Q_(15, "s")).meets is False


def test_two_printed_celsius_values_are_misprints_and_kept_as_printed():
    """3.1: 137 and 139 °F are printed 58.4 and 59.5 °C; true 58.3 and 59.4."""
    for degree, printed in ((137, 58.4), (139, 59.5)):
        row = roast_hold_time(fahrenheit(degree), "FSIS 6.5-log")

        assert printed == row.temperature.magnitude
        assert "printed" in row.note


@pytest.mark.parametrize(
    "name",
    ["limits.csv", "hold_times.csv", "cooling.csv", "parasites.csv", "parasite_exempt.csv",
     "log_targets.csv", "d_values.csv"],
)  # fmt: skip
def test_every_row_names_source_edition_and_status(name):
    """No row without them, and each status is one of those we know."""
    for row in table(name):
        assert all((row["source"], row["edition"]))
        assert row["status"] in STATUSES
        assert row.get("standing", "current") in ("current", "superseded")


SAFETY_TABLES = ("limits.csv", "hold_times.csv", "cooling.csv", "parasites.csv",
                 "parasite_exempt.csv", "log_targets.csv")  # fmt: skip


@pytest.mark.parametrize("name", SAFETY_TABLES)
def test_no_limit_stands_here_from_memory(name):
    """What could not be read is left out, and named by `not_covered`."""
    assert [] == [row for row in table(name) if "memory" in "".join(row.values())]


def test_a_row_that_was_handed_on_says_so():
    """A cook must be able to tell it from one that was read."""
    assert "handed on, not read in its source" in str(limit("reheating"))
    assert "handed on" not in str(limit("fish"))


@pytest.mark.parametrize(
    ("what", "source"),
    [("game", None), ("plant food held hot", None), ("time as a control", None),
     ("airless packing", None), ("garlic in oil", None), ("raw egg in foams", None),
     ("hot holding", "UK food hygiene regulations"), ("cold holding", "UK"), ("cooling", "UK"),
     ("fish", "UK FSA")],
)  # fmt: skip
def test_what_is_not_covered_gives_no_number_and_says_whom_to_ask(what, source):
    """Silence, or a number for something near it, could hurt somebody."""
    with pytest.raises(NotCovered, match=f"{what}.*not covered here: ask your food code"):
        limit(what, source)
    assert any(line.startswith(what) for line in not_covered())


def test_what_is_covered_elsewhere_is_still_given():
    """Hot holding has no British row, and the Food Code's stands: 57 °C (135 °F)."""
    assert 57 == limit("hot holding").temperature.magnitude
    assert "UK FSA and ACMSF" == limit("core of the food", "UK FSA and ACMSF").source


def test_reheating_is_a_rule_and_no_cooking_row():
    """Its two hours are the longest it may take, and never a time to hold."""
    assert "reheating: at least 74 °C (165 °F) within 2 h" in str(limit("reheating"))
    with pytest.raises(UnknownName, match="no food that is cooked"):
        core_verdict("reheating", celsius(80))


def test_a_humid_oven_says_what_humid_means():
    """Over 90 % for at least an hour, or a moisture-tight bag."""
    note = roast_oven_limit(Q_(3, "kg"), "humid").note

    assert "over 90 % for at least an hour, or a moisture-tight bag" in note


# Verdicts


def test_lean_white_fish_at_48_degrees_is_below_the_code():
    """48 °C (118 °F) against 63 °C (145 °F) for 15 s, with the advisory and the parasites."""
    verdict = core_verdict("fish", celsius(48), Q_(1, "h"))

    assert verdict.meets is False
    for words in ("48 °C (118.4 °F)", "63 °C (145 °F) for 15 s", "consumer advisory",
                  "guests at high risk", "frozen against parasites"):  # fmt: skip
        assert words in str(verdict)


@pytest.mark.parametrize(
    ("what", "temperature", "time", "meets"),
    [
        ("fish", celsius(63), Q_(15, "s"), True),
        ("fish", celsius(63), Q_(14, "s"), False),
        ("fish", celsius(63), None, None),
        ("poultry", celsius(74), None, None),
        ("poultry", celsius(74), Q_(15, "s"), True),
        ("poultry", celsius(74), Q_(14, "s"), False),
        ("poultry", celsius(73.9), Q_(1, "h"), False),
        ("whole roast", celsius(56.2), Q_(56, "min"), True),
        ("whole roast", celsius(56.0), Q_(56, "min"), False),
        ("whole roast", celsius(70), None, True),
        ("ground meat", celsius(66), Q_(60, "s"), True),
        ("ground meat", celsius(63.5), Q_(60, "s"), False),
        ("ground meat", celsius(63.5), Q_(180, "s"), True),
        ("leftovers", fahrenheit(165), None, True),
        ("leftovers", fahrenheit(164), None, False),
    ],
)
def test_core_verdicts_by_hand(what, temperature, time, meets):
    """Each on its side of the printed row that counts."""
    assert meets is core_verdict(what, temperature, time).meets


def test_no_verdict_declares_food_safe():
    """Every verdict ends with the caution and defers to the local food code."""
    log = (Q_([0, 1, 6], "h"), celsius([57, 20, 5]))
    verdicts = [
        core_verdict("fish", celsius(70), Q_(1, "min")),
        core_verdict("fish", celsius(20)),
        core_verdict("fish", celsius(63)),
        cooling_verdict(log),
        holding_verdict(log),
        parasite_verdict(celsius(-20), Q_(8, "d")),
    ]

    for verdict in verdicts:
        assert str(verdict).endswith(CAUTION)
        assert "is safe" not in verdict.words
    assert "does not declare the food safe: the local food code decides" in CAUTION


def test_only_a_plain_true_counts_in_a_condition():
    """Cannot tell is not passed."""
    assert not core_verdict("fish", celsius(63))
    assert core_verdict("fish", celsius(63), Q_(15, "s"))


@pytest.mark.parametrize(
    ("store", "time", "solid", "meets"),
    [
        (-20, Q_(7, "d"), None, True),
        (-19.9, Q_(30, "d"), None, False),
        (-35, Q_(15, "h"), None, False),  # the hours would count while the fish was soft
        (-35, Q_(15, "h"), -35, True),
        (-20, Q_(23.9, "h"), -35, False),
        (-20, Q_(24, "h"), -40, True),
    ],
)
def test_parasite_freezing_by_hand(store, time, solid, meets):
    """T3-29, both sides of each way."""
    solid = None if solid is None else celsius(solid)

    assert meets is parasite_verdict(celsius(store), time, solid).meets


def test_fish_that_needs_no_freezing_is_named():
    """T3-30: shellfish, the listed tunas, farmed fish on clean pellets, rinsed eggs, scallops."""
    words = parasite_verdict(celsius(-20), Q_(1, "d")).words

    for kind in ("molluscan shellfish", "tunas", "pellets", "eggs", "scallops"):
        assert kind in words


def test_a_freezer_in_fahrenheit_is_the_same():
    """-4 °F is -20 °C, -31 °F is -35 °C, exactly."""
    assert parasite_verdict(fahrenheit(-4), Q_(168, "h"))
    assert parasite_verdict(fahrenheit(-31), Q_(15, "h"), fahrenheit(-31))


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: limit("unicorn"), UnknownName, "what: 'unicorn' is not one of 'fish'"),
        (lambda: limit("fish", source="my aunt"), UnknownName, "source: 'my aunt'"),
        (lambda: limit("fish", edition="1893"), UnknownName, "2013, 2017, 2022"),
        (lambda: limit("poultry rolls"), UnknownName, "nothing in force"),
        (lambda: core_verdict("fish", 63), WrongKind, "temperature: needs a quantity"),
        (lambda: core_verdict("fish", delta(63)), WrongKind, "temperature: needs a temperature"),
        (lambda: core_verdict("fish", celsius(63), Q_(-1, "s")), OutOfRange, "time: "),
        (lambda: core_verdict("cold holding", celsius(4)), UnknownName, "holding_verdict"),
        (lambda: roast_oven_limit(Q_(3, "kg"), "solar"), UnknownName, "oven: 'solar'"),
        (lambda: roast_oven_limit(Q_(0, "kg"), "humid"), OutOfRange, "weight: "),
        (lambda: parasite_verdict(celsius(-20), 168), WrongKind, "time: "),
    ],
)  # fmt: skip
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()


@settings(deadline=None)
@given(st.floats(20, 100), st.floats(0, 240))
def test_a_core_verdict_never_passes_below_every_printed_temperature(degree, held):
    """Below the lowest row of the Food Code no time helps."""
    for what in ("fish", "ground meat", "poultry", "whole roast"):
        lowest = min(row.temperature.magnitude for row in limits(what))

        if degree < lowest - 1e-6:
            assert core_verdict(what, celsius(degree), Q_(held, "min")).meets is False
