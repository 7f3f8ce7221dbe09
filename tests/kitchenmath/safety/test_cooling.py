"""Cooling, holding and the logs they are read from, by hand and against closed forms."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenmath.errors import OutOfRange, UnknownName, Unreadable, WrongKind
from kitchenmath.safety import (
    cooling_rules,
    cooling_verdict,
    core_verdict,
    holding_verdict,
    read_log,
    time_at_or_above,
)
from kitchenmath.units.registry import Q_
from tests.helpers.published import Published
from tests.helpers.quantities import celsius, fahrenheit

FOOD_CODE = "FDA Food Code, read in state codes that adopt it (MN, WA, SD, DE, AK, CA, DC)"
APPENDIX_B = "USDA FSIS Appendix B (1999)"


PUBLISHED = (
    *(Published(f"{row} {rule}, stage {stage + 1}, {column}", source, status, expected,
                lambda rule=rule, stage=stage, column=column:
                float(cooling_rules(rule)[stage][column]), by="table")
      for row, rule, stage, source, status, values in (
          ("T3-31", "two-stage", 0, FOOD_CODE, "quoted",
           {"from_C": 57, "to_C": 21, "from_F": 135, "to_F": 70, "hours": 2}),
          ("T3-31", "two-stage", 1, FOOD_CODE, "quoted",
           {"from_C": 57, "to_C": 5, "from_F": 135, "to_F": 41, "hours": 6}),
          ("T3-32", "from ambient", 0, FOOD_CODE, "quoted", {"to_C": 5, "hours": 4}),
          ("T3-38", "FSIS option 2", 0, APPENDIX_B, "seen",
           {"from_F": 120, "to_F": 80, "hours": 1}),
          ("T3-38", "FSIS option 2", 1, APPENDIX_B, "seen",
           {"from_F": 120, "to_F": 55, "hours": 6}),
      ) for column, expected in values.items()),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


# Cooling


def exponential_pot(rate_per_h, room=2.0, start=80.0, step_min=1.0, hours=14):
    """A pot that cools as Newton says, read every few minutes."""
    times = np.arange(0, 60 * hours + step_min, step_min)
    return Q_(times, "min"), Q_(room + (start - room) * np.exp(-rate_per_h * times / 60), "degC")


@given(st.floats(0.3, 3))
def test_cooling_times_agree_with_newtons_closed_form(rate):
    """t = ln((57 - room) / (T - room)) / rate, on both sides of both limits."""
    verdict = cooling_verdict(exponential_pot(rate))
    exact_h = [math.log((57 - 2) / (to - 2)) / rate for to in (21, 5)]

    for stage, exact, allowed in zip(verdict.stages, exact_h, (2, 6), strict=True):
        if stage.took is None:
            assert stage.meets is False
            continue
        assert exact == pytest.approx(stage.took.to("h").magnitude, abs=0.002)
        if abs(exact - allowed) > 0.01:
            assert (exact <= allowed) is stage.meets


def test_the_same_pot_in_fahrenheit_and_hours():
    """135 to 70 °F in 2 h and to 41 °F in 6 h is kept to the minute, by the printed °F."""
    log = (Q_([0, 2, 6], "h"), fahrenheit([135, 70, 41]))

    verdict = cooling_verdict(log)

    assert verdict.meets is True
    assert [120, 360] == [stage.took.magnitude for stage in verdict.stages]


@pytest.mark.parametrize(
    ("times", "temperatures", "meets", "words"),
    [
        ([0, 120, 360], [57, 21, 5], (True, True),
         "57 °C to 21 °C: took 2 h, 2 h are allowed: kept"),
        ([0, 121, 360], [57, 21, 5], (False, True),
         "took 2 h 1 min, 2 h are allowed: 1 min too long"),
        ([0, 120, 375], [57, 21, 5], (True, False), "6 h are allowed: 15 min too long"),
        # Slow first, quick after: the total is kept, the first stage is not.
        ([0, 60, 120, 180, 240, 300], [57, 48, 40, 25, 10, 4], (False, True), "57 °C to 21 °C"),
        # 80 °C falls through 57 °C at 20 min: 80 - 23 = 57 at 20, 21 °C at 20 + 36/0.3 = 140.
        ([0, 20, 140, 300], [80, 57, 21, 4], (True, True), "took 2 h, 2 h are allowed: kept"),
        ([0, 10, 100], [57, 55, 30], (None, None), "cannot tell, still at 30 °C"),
        ([0, 10, 130], [57, 55, 30], (False, None),
         "still at 30 °C after 2 h 10 min, 2 h are allowed: at least 10 min too long"),
        # Below 57 °C by the reading at 20 min at the latest, so 200 - 20 min of it are sure.
        ([0, 20, 140, 200], [60, 50, 30, 25], (False, None),
         "still at 25 °C after 3 h, 2 h are allowed: at least 1 h too long"),
        ([0, 60], [40, 15], (None, None), "the log begins at 40 °C, later than this stage"),
        ([0, 130], [40, 22], (False, None), "still at 22 °C after 2 h 10 min"),
        ([0, 60], [80, 60], (None, None), "the log never falls below 57 °C"),
        # Within a gap of three hours the pot may have passed 21 °C at any time.
        ([0, 180, 300], [57, 15, 4], (None, True), "readings more than 30 min apart"),
        # A dip to 20 °C and a rise to 24: not arrived before 21 °C is passed for good.
        ([0, 60, 90, 110, 140, 300], [57, 30, 20, 24, 20, 4], (False, True),
         "57 °C to 21 °C: took 2 h 12 min"),
    ],
)  # fmt: skip
def test_cooling_logs_by_hand(times, temperatures, meets, words):
    """Times in minutes, temperatures in °C; straight lines between readings."""
    verdict = cooling_verdict((Q_(times, "min"), Q_(temperatures, "degC")))

    assert meets == tuple(stage.meets for stage in verdict.stages)
    assert words in verdict.words


def test_a_crossing_between_close_readings_is_interpolated_and_said():
    """Read at 110 and 130 min: 22 and 20 °C cross 21 °C at 120 min, just kept."""
    log = (Q_([0, 60, 110, 130, 350], "min"), celsius([57, 35, 22, 20, 5]))

    stage = cooling_verdict(log).stages[0]

    assert (True, 120) == (stage.meets, stage.took.magnitude)
    assert "interpolated between two readings" in stage.words


def test_ambient_ingredients_have_four_hours_from_the_start():
    """T3-32: tuna salad from 20 °C: 4 h are kept, 4 h 30 min are not."""
    for hours, meets in ((4, True), (4.5, False)):
        log = (Q_([0, 2, hours], "h"), celsius([20, 11, 5]))

        assert meets is cooling_verdict(log, rule="from ambient").meets


def test_heating_before_cooling_does_not_start_the_clock():
    """The clock starts at the fall through 57 °C, an hour after the pot was at 80."""
    log = (Q_([0, 60, 83, 203, 400], "min"), celsius([10, 80, 57, 21, 5]))

    assert [120, 317] == [stage.took.magnitude for stage in cooling_verdict(log).stages]


def test_a_plant_is_judged_by_its_option():
    """T3-38: 120 to 80 °F in an hour and to 55 °F in six."""
    log = (Q_([0, 1, 6], "h"), fahrenheit([120, 80, 55]))

    assert cooling_verdict(log, rule="FSIS option 2").meets is True
    # Against the Food Code: its first stage is not in this log, and 55 °F after 6 h is too warm.
    assert [None, False] == [stage.meets for stage in cooling_verdict(log).stages]


# Holding


def test_holding_time_on_the_wrong_side_is_counted():
    """By hand: 60 to 50 °C in an hour passes 57 °C after 18 min, 42 are too cold."""
    log = (Q_([0, 60, 120], "min"), celsius([60, 50, 70]))

    verdict = holding_verdict((log[0][:2], log[1][:2]))

    assert verdict.meets is False
    assert verdict.words.startswith("42 min of 1 h are on the wrong side")
    # Back up from 50 to 70 °C it is below 57 °C for another 21 min.
    assert holding_verdict(log).words.startswith("1 h 3 min of 2 h")


def test_cold_holding_looks_at_what_is_too_warm():
    """3 to 7 °C in an hour: half of it above 5 °C."""
    log = (Q_([0, 60], "min"), celsius([3, 7]))

    assert holding_verdict(log, "cold holding").words.startswith("30 min of 1 h")
    assert holding_verdict(log, "refrigerator").meets is False


# Logs


@given(st.lists(st.floats(40, 80), min_size=2, max_size=10), st.floats(45, 75))
def test_time_above_agrees_with_counting_fine_steps(degrees, level):
    """Referee: numpy.interp at 20 000 points, the longest run of them at or above the level."""
    times = np.arange(len(degrees), dtype=float)
    fine = np.linspace(0, times[-1], 20001)
    above = np.interp(fine, times, degrees) >= level
    longest = run = 0
    for here in above:
        run = run + 1 if here else 0
        longest = max(longest, run)

    got = time_at_or_above((Q_(times, "min"), Q_(np.array(degrees), "degC")), celsius(level))

    assert longest * times[-1] / 20000 == pytest.approx(got.magnitude, abs=3 * times[-1] / 20000)


def test_a_hold_read_from_a_log_meets_the_roast_table(tmp_path):
    """56.5 °C for an hour and more: the row at 56.1 °C asks for 56 min."""
    file = tmp_path / "roast.csv"
    file.write_text("time_h,temperature_core_C,note\n0,5,in\n3,56.5,\n4,56.8,\n4.5,50,out\n")
    held = time_at_or_above(file, celsius(56.1))

    assert core_verdict("whole roast", celsius(56.1), held).meets is True
    # By hand: 56.1 is passed at 3 h x 51.1 / 51.5 and left after 4 h + 0.5 x 0.7 / 6.8.
    assert 4 + 0.5 * 0.7 / 6.8 - 3 * 51.1 / 51.5 == pytest.approx(held.magnitude, rel=1e-9)


def test_all_ways_of_giving_a_log_agree(tmp_path):
    """Arrays, lists of quantities, readings, a file with a mark at its head and blank lines."""
    file = tmp_path / "pot.csv"
    file.write_bytes("﻿time_min,temperature_F\r\n0,135\r\n\r\n120,70\r\n".encode())
    logs = [
        (Q_([0, 120], "min"), fahrenheit([135, 70])),
        ([Q_(0, "min"), Q_(2, "h")], [fahrenheit(135), fahrenheit(70)]),
        [(Q_(0, "min"), fahrenheit(135)), (Q_(2, "h"), fahrenheit(70))],
        file,
        str(file),
    ]

    for log in logs:
        times, temperatures = read_log(log)

        assert [0, 120] == list(times.to("min").magnitude)
        assert [135, 70] == list(temperatures.magnitude)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("time_min,temperature_C\n0,57\n60,warm\n", "line 3: the temperature “warm” is no number"),
        ("time_min,temperature_C\n0,57\n\n60\n", "line 4: the temperature “” is no number"),
        ("time_min,temperature_C\n0,57\nnan,3\n", "line 3: the time “nan” is no number"),
        ("time,temperature_C\n0,57\n", "line 1 needs one time column with its unit"),
        ("time_min,temperature\n0,57\n", "line 1 needs one temperature column"),
        ("time_min,temperature_a_C,temperature_b_C\n0,5,5\n", "line 1 needs one temperature"),
        ("", "nothing came"),
    ],
)
def test_a_bad_line_of_a_file_is_named_by_its_number(tmp_path, text, words):
    """So that it can be found in a spreadsheet."""
    file = tmp_path / "pot.csv"
    file.write_text(text)

    with pytest.raises(Unreadable, match=words):
        cooling_verdict(file)


def test_a_line_out_of_order_is_named_by_its_number(tmp_path):
    """Line 4 goes back in time."""
    file = tmp_path / "pot.csv"
    file.write_text("time_min,temperature_C\n0,57\n60,40\n50,35\n")

    with pytest.raises(OutOfRange, match=r"pot\.csv, line 4 is not later"):
        read_log(file)


def test_a_file_in_another_coding_is_read_too(tmp_path):
    """Saved as Latin-1 with a degree sign in the notes: 0xB0."""
    file = tmp_path / "pot.csv"
    file.write_bytes(b"time_min,temperature_C,note\n0,57,5 \xb0C\n60,21,\n")

    assert [57, 21] == list(read_log(file)[1].magnitude)


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: holding_verdict((Q_([0, 1], "h"), celsius([4, 4])), "fish"), UnknownName,
         "core_verdict"),
        (lambda: cooling_verdict("no such file.csv"), Unreadable, "cannot be read"),
        (lambda: cooling_verdict((Q_([0, 1], "h"), celsius([57, 5])), rule="mine"), UnknownName,
         "rule: 'mine'"),
        (lambda: cooling_verdict(5), WrongKind, "log: needs a file"),
        (lambda: read_log((Q_([0, 0], "h"), celsius([57, 5]))), OutOfRange,
         "reading 2 is not later"),
        (lambda: read_log((Q_([0, 1], "h"), celsius([57, -300]))), OutOfRange, "temperatures: "),
    ],
)  # fmt: skip
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()
