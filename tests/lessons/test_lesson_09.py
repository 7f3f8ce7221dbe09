"""Lesson 9: its numbers worked by hand, what its panels say, and every draw of its set."""

import itertools
import json
import re
from pathlib import Path

import pytest
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.conventions import OURS
from kitchenmath.drills import allergen_rows, keeping, records
from kitchenmath.heat import boiling_point
from kitchenmath.panels.keeping import cooling_panel, menu_panel, night_panel, probe_panel
from kitchenmath.practice.drawn_days import COLD, HOT, cases, days
from kitchenmath.practice.drawn_logs import nights, tubs
from kitchenmath.predictions import PREDICTIONS
from kitchenmath.safety import cooling_verdict, limit, plate_allergens, point_limit
from kitchenmath.units import Q_, say
from tests.helpers.lessons import predictions_of
from tests.helpers.panels import moved

KIT = Path(__file__).parents[2]
LESSON = json.loads((KIT / "lessons/09-keep-it-safe.ipynb").read_text(encoding="utf-8"))
PROSE = "\n".join("".join(c["source"]) for c in LESSON["cells"] if c["cell_type"] == "markdown")
PROSE += predictions_of(LESSON)
GUIDE = (KIT / "instructor/guide/09-keep-it-safe.md").read_text(encoding="utf-8")
DAYS = days("a day").values
[BIRD] = keeping.bird_core("a bird's core").in_college(OURS).values
SET = "09-keep-it-safe"


def test_thirty_eight_fahrenheit_are_in_order():
    """By hand: (38 - 32) / 1.8 = 3.3 °C, below 5 °C."""
    assert Q_(38, "degF").to("degC").magnitude == pytest.approx(3.33, abs=0.01)
    assert "A cold room at 38 °F is in order: that is 3.3 °C." in PROSE


def test_four_and_a_half_hours_are_left():
    """By hand: from 20:00 to 21:30 is 1.5 h, and 6 - 1.5 = 4.5 h."""
    assert [(21, 2), (5, 6)] == list(keeping.stages())
    assert "4.5 h" == say(PREDICTIONS["six hours"].right)


def test_the_pot_of_the_lesson_breaks_the_first_stage_by_an_hour_and_keeps_the_second():
    """FDA Food Code 3-501.14(A). By hand: at 21 °C after 3 h, 2 h are allowed; 5 °C at 6 h."""
    pot = (Q_([0, 1, 2, 3, 4, 5, 6], "h"), Q_([57, 42, 30, 21, 13, 8, 5], "degC"))

    assert [False, True] == [stage.meets for stage in cooling_verdict(pot).stages]
    assert "57 °C at 0 h, 21 °C at 3 h: 3 h, and 2 h are allowed." in PROSE


def test_the_probe_by_hand():
    """By hand: 900 / 300 = 3, 97 °C; 98 - 97 = 1; 74 + 1 = 75. IAPWS has 96.98 °C."""
    assert boiling_point(altitude=Q_(900, "m")).magnitude == pytest.approx(97, abs=0.05)
    right = keeping.must_show(Q_(900, "m"), Q_(98, "degC"), BIRD).magnitude
    assert right == pytest.approx(75, abs=0.05)
    assert "74 + 1 = 75 °C on the dial" in PROSE


def test_the_minutes_of_the_guide_follow_each_other_to_ninety():
    """No gap and no overlap."""
    spans = [(int(a), int(b)) for a, b in re.findall(r"^\| (\d+)–(\d+) \|", GUIDE, re.MULTILINE)]

    assert (spans[0][0], spans[-1][1]) == (0, 90)
    assert all(end == start for (_, end), (start, _) in itertools.pairwise(spans))


def test_the_limits_of_the_guide_are_those_that_are_quoted():
    for what in ("cold holding", "hot holding", "poultry"):
        row = limit(what)
        assert f"{row.temperature.magnitude:g} °C ({row.fahrenheit.magnitude:g} °F)" in GUIDE


def test_the_lesson_has_the_length_of_the_others():
    """1,000 to 1,600 words to read, tables' bars and lists' dashes not counted."""
    words = [word for word in PROSE.split() if re.search(r"\w", word)]

    assert 1000 <= len(words) <= 1600


def test_the_cooling_panel_says_which_stage_is_broken():
    """Half as deep is nearly four times as fast where heat leaves well: 120 mm against 60 mm."""
    panel = cooling_panel()

    assert "both stages are broken" in moved(panel, depth_mm=120, way="in ice and water")
    assert "both stages are kept" in moved(panel, depth_mm=60, way="in ice and water")
    assert "(FDA Food Code 3-501.14(A)" in moved(panel, depth_mm=20, way="in the cold room")


def test_the_night_panel_counts_from_the_last_reading_in_order():
    """3 °C until 23:00, then 3 + 9 (1 - 0.5^(t / 90)): at 23:20 4.3 °C, at 23:40 5.4 °C.

    By hand: 0.5^(20/90) = 0.857 and 0.5^(40/90) = 0.735. Read every 20 min it is 23:20; every
    two hours 22:00 is in order and 00:00 is not: 12 - 9 x 0.63 = 6.3 °C.
    """
    panel = night_panel()

    assert "count from 23:20" in moved(panel, every_min=20, fails_min=60)
    told = moved(panel, every_min=120)
    assert "count from 22:00" in told
    assert "Until 06:00 that is 8 h." in told


def test_the_probe_panel_says_the_hand_calculation():
    """At 900 m 97 °C: 0.5 and 1 too much; 0.5 + 74 / 97 x 0.5 = 0.88; 74.9 °C."""
    told = moved(probe_panel(), height_m=900, ice_C=0.5, boiling_C=98.0)

    assert "At 900 m water boils at 97 °C." in told
    assert "must show 74.9 °C" in told


def test_the_menu_panel_says_what_the_plate_says():
    told = moved(menu_panel(), dish="celeriac brunoise")

    assert "Holds milk (butter), celery (celeriac)." in told
    assert "Holds milk (butter)." in moved(menu_panel(), dish="celeriac brunoise", country="US")


def test_every_day_has_three_faults_cold_and_hot_ones_among_them():
    """One line stands on its limit, and one in °F is in order; neither is a fault."""
    for day in DAYS:
        out = records.out_of_limits(day)
        assert 3 == len(out)
        assert out & set(COLD)
        assert out & set(HOT)
        assert 1 == len(records.on_the_limit(day) - out)
        fahrenheit = {line.letter for line in day.lines if "degF" in f"{line.reading.units:P}"
                      or str(line.reading.units) == "degree_Fahrenheit"}  # fmt: skip
        assert 1 == len(fahrenheit - out)


def test_the_first_day_by_hand():
    """A line is out where cold is above its printed limit and hot below it."""
    for line in DAYS[0].lines:
        row = point_limit(line.point)
        here = line.reading.to("degC").magnitude
        beyond = (
            here > row.temperature.magnitude + 0.2
            if row.sense == "at most"
            else here < row.temperature.magnitude
        )
        assert beyond == (line.letter in records.out_of_limits(DAYS[0]))


def test_a_night_is_in_order_until_the_moment_that_is_asked_and_never_after():
    for night in nights("a night").values:
        place = records.last_in_order(night)
        assert max(night.degrees[: place + 1]) <= 5 < min(night.degrees[place + 1 :])
        assert "°C" in str(night)


def test_three_tubs_of_five_go_by_hand():
    """Each goes that was above 21 °C after 2 h or above 5 °C after 6; their weights are added."""
    for sauce in tubs("tubs").values:
        gone = [each for each in sauce.lines
                if each.after_two.magnitude > 21 or each.after_six.magnitude > 5]  # fmt: skip

        assert 3 == len(gone)
        total = sum(each.weight.magnitude for each in gone)
        assert keeping.thrown_away(sauce).magnitude == pytest.approx(total)


def test_what_stood_too_long_is_never_put_right():
    for found in cases("cases").values:
        right = records.can_be_put_right(found)
        assert {"A", "G"} <= right <= {"A", "B", "C", "G"}
        for case in found.lines:
            assert (" h" in case.words) <= (case.letter not in right)


@pytest.mark.parametrize("main", allergen_rows.MAINS)
def test_every_plate_of_the_set_holds_what_its_items_hold(main):
    """The row is worked out from the same table as every order list."""
    main = allergen_rows.Dish(main)
    for side, extra in itertools.product(allergen_rows.SIDES, allergen_rows.EXTRAS):
        items = allergen_rows.items_of(main, side, extra)
        assert allergen_rows.plate_holds(main, side, extra) == set(plate_allergens(items).holds)
        assert ("celeriac" in items) == ("celery" in allergen_rows.plate_holds(main, side, extra))


@pytest.fixture(scope="module")
def sheet():
    return load_key(key_notebook(SET)).sheet


@pytest.mark.parametrize("question", ["q1", "q2", "q3", "q4", "q5", "q6"])
def test_in_every_draw_a_slip_that_makes_a_difference_is_named(sheet, question):
    """All draws, not a sample: what the slip leads to is told by its name."""
    asked = sheet.questions[question]
    choices = {name: choice.values for name, choice in sheet.choices[question].items()}
    for draw in itertools.product(*choices.values()):
        known = dict(zip(choices, draw, strict=True))
        assert [] == asked.collisions(known)
        for answer, way, slips in asked.played(known):
            verdict = asked.judge(answer, known)
            assert way != "right" or verdict.outcome == "right"
            assert way != "slip" or slips[0] in verdict.slips, (answer, known)


def test_what_is_safe_costs_less_than_what_is_not(sheet):
    """A fault that is passed over costs more than one too many; something gone that is served too.

    By hand: q1 3 - 1 = 2 and 3 - 0.5 = 2.5; q4 3 - 0.5 = 2.5 and 3 - 1 = 2.
    """
    known = {"day": DAYS[0], "found": cases("cases").values[0]}
    faults = sorted(records.out_of_limits(known["day"]))
    rest = sorted(set(records.ALL_LINES) - set(faults) - {"D"})
    fine, right = sheet.questions["q1"], sorted(records.can_be_put_right(known["found"]))

    assert 2 == fine.judge(faults[:-1], known).points
    assert 2.5 == fine.judge([*faults, rest[0]], known).points
    assert 2.5 == sheet.questions["q4"].judge(right[:-1], known).points
    assert 2 == sheet.questions["q4"].judge([*right, "D"], known).points


def test_a_whole_degree_up_is_right_and_down_is_not(sheet):
    """900 m and 98.5 °C: 74 + 98.5 - 96.98 = 75.52 °C; 76 is safe, 75 is not."""
    known = {"height": Q_(900, "m"), "shows": Q_(98.5, "degC"), "core": BIRD}
    asked = sheet.questions["q5"]

    assert "right" == asked.judge("76 °C", known).outcome
    assert "right" == asked.judge("75.6 °C", known).outcome
    assert "right" != asked.judge("75 °C", known).outcome
