"""Session plans: each lesson has one, and its order list is what the kit works out."""

import csv
import re
from pathlib import Path

import pytest
from coursework.sets.order_lists import BEGIN, END, GUIDE, order_list, with_order_list

from kitchenmath.data.tables import table
from kitchenmath.units import read

WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
NUMBERS = {word: number for number, word in enumerate((*WORDS, "eleven", "twelve"))}
KNIVES, PROBES = 12, 6  # what a college has for a class of 24
ROW = re.compile(r"^\| (?P<from>[−\d]+)(?:–(?P<to>\d+))? \| (?P<what>.*) \|$", re.MULTILINE)
LESSONS = sorted(file.stem for file in (Path(__file__).parents[2] / "lessons").glob("*.ipynb"))


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_lesson_has_a_session_plan_with_all_its_parts(lesson):
    """Timing, equipment, order list, demonstration, slips, cautions, what to look for."""
    page = (GUIDE / f"{lesson}.md").read_text(encoding="utf-8")
    for heading in ("Minute by minute", "Order list for 24", "Equipment", "The demonstration",
                    "The usual slips", "Cautions", "At the board"):  # fmt: skip
        assert heading in page


@pytest.mark.parametrize("lesson", LESSONS)
def test_the_order_list_is_still_what_the_kit_works_out(lesson):
    """Worked out anew from orders.csv and compared as text."""
    page = (GUIDE / f"{lesson}.md").read_text(encoding="utf-8")

    assert BEGIN in page and END in page
    assert page == with_order_list(page, lesson)


def test_the_order_list_by_hand():
    """By hand: 12 x 0.25 kg of celeriac is 3 kg; 3 nets of 1 kg, and nothing over."""
    assert "| celeriac | 12 x 0.25 kg | 3 kg | 3 x 1 kg | none | celery |" in order_list(
        "04-buy-enough"
    )


def plan(lesson):
    return (GUIDE / f"{lesson}.md").read_text(encoding="utf-8")


def minutes(lesson):
    """From, to and what of each row of the session's 90 minutes."""
    rows = [row for row in ROW.finditer(plan(lesson)) if row["to"]]
    return [(int(row["from"]), int(row["to"]), row["what"]) for row in rows]


@pytest.mark.parametrize("lesson", LESSONS)
def test_the_minutes_follow_each_other_to_ninety(lesson):
    """No gap, none twice, and no row shorter than two minutes."""
    rows = minutes(lesson)
    ends = [0, *(end for _, end, _ in rows)]

    assert ends[:-1] == [start for start, _, _ in rows]
    assert 90 == ends[-1]
    assert all(end - start >= 2 for start, end, _ in rows)


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_session_recalls_cleans_down_and_hands_its_set_out(lesson):
    """It opens with the last lessons and ends clean; and it says what is done the day before."""
    rows = minutes(lesson)
    words = plan(lesson)

    assert "recall" in rows[0][2]
    assert any("Clean-down" in what for _, _, what in rows)
    assert any(f"Set {int(lesson[:2])} is handed out" in what for _, _, what in rows)
    assert "he day before" in words
    assert "**For the quick**: " in words and "**For the slow**: " in words


@pytest.mark.parametrize("lesson", LESSONS)
def test_twelve_knives_and_six_probes_do_for_24(lesson):
    """As the equipment counts them; the instructor's own come on top."""
    equipment = plan(lesson).partition("## Equipment")[2].partition("##")[0].casefold()
    knives = re.findall(r"(\w+) (?:chef's )?knives", equipment)
    probes = re.findall(r"([\w-]+) probe thermometers", equipment)

    assert all(NUMBERS[each] <= KNIVES for each in knives if each in NUMBERS)
    assert all(NUMBERS[each] <= PROBES for each in probes)


@pytest.mark.parametrize(
    ("lesson", "shares", "students"),
    [
        ("03-cut-to-size", {"carrots": 0.5}, 2),
        ("04-buy-enough", {"celeriac": 0.66, "carrots": 0.55}, 1),
    ],
)
def test_one_knife_for_two_cuts_the_amounts_of_the_bench_in_its_minutes(lesson, shares, students):
    """The kit's own plan has 90 min for 24 covers of 60 g of brunoise, 16 g a minute; who learns
    it has half that speed. The share is what is cut of a root. Speed and shares are invented.

    Lesson 4: (0.66 x 250 g + 0.55 x 100 g) / 8 g a minute = 27.5 min of 30.
    """
    cook = next(row for row in table("service.csv") if row["task"] == "cut the celeriac brunoise")
    learner_g_a_min = 24 * 60 / int(cook["duration_min"]) / 2
    with (GUIDE / f"{lesson}.csv").open(encoding="utf-8", newline="") as file:
        amounts = {row["item"]: read(row["each_student"]) for row in csv.DictReader(file)}
    cut_g = sum(share * amounts[item].to("g").magnitude for item, share in shares.items())
    at_board = next(end - start for start, end, what in minutes(lesson) if "At the board" in what)

    assert 8 == learner_g_a_min
    assert students * cut_g / learner_g_a_min <= at_board
