"""Lesson 10: panel sentences and the numbers worked by hand in the lesson and its guide."""

import itertools
from pathlib import Path

import pytest

from kitchenmath.cuts import pieces_in
from kitchenmath.drills.landing import DRILLS
from kitchenmath.figures.clocks import Clocks
from kitchenmath.figures.frame import Picture
from kitchenmath.figures.landing import Packs
from kitchenmath.panels.landing import (
    BURNERS,
    CLOCK_MIN,
    COOKS,
    SERVING_TIMES,
    cover_cost_panel,
    menu_needs,
    menu_packs,
    moved_earlier,
    service,
    service_panel,
    slack_panel,
    usual_plan,
)
from kitchenmath.safety import limit
from kitchenmath.service import check_plan, read_tasks
from kitchenmath.units import Q_, say
from kitchenmath.yields import order, portion_cost
from tests.helpers.panels import moved, words

KIT = Path(__file__).parents[2]


def page(name):
    return (KIT / name).read_text(encoding="utf-8")


def test_the_work_begins_with_the_dough():
    """By hand: 15 + 75 + 20 + 40 + 18 + 20 = 188 min; 19:30 less 3 h 8 min is 16:22."""
    plan = usual_plan()

    assert "15 + 75 + 20 + 40 + 18 + 20 = 188 min" in page("lessons/10-land-the-plate.ipynb")
    assert (plan.sequence[0], plan.starts["knead the dough"]) == ("knead the dough", "16:22")
    assert plan.serve_s // 60 - plan.starts_s["knead the dough"] // 60 == 188


def test_the_birds_go_in_at_twenty_to_six():
    """By hand: 10 + 15 + 15 + 70 = 110 min before 19:30."""
    assert usual_plan().starts["roast in the low oven"] == "17:40"


def test_the_plan_for_45_minutes_holds_the_three_mistakes_that_the_guide_names():
    """By hand: 17:45 + 70 + 15 min is 19:10, five after 19:05; 18:58 + 18 + 20 is 19:36."""
    plan = usual_plan()
    mistakes = {"roast in the low oven": "17:45", "bake the rolls": "18:58",
                "cook the mustard velouté": "18:35"}  # fmt: skip
    found = "\n".join(
        check_plan(plan.starts | mistakes, list(plan.tasks.values()), plan.serve_at, plan.crew,
                   plan.equipment)
    )  # fmt: skip

    assert "at 17:45" in page("instructor/guide/10-land-the-plate.md")
    assert "'carve the birds' starts at 19:05, but" in found and "rested only at 19:10" in found
    assert "'bake the rolls' is rested at 19:36, 6 min after the service" in found
    assert "“sauce” is wanted in two places between 19:05 and 19:10" in found


def test_one_guest_more_costs_a_whole_bird_and_32_covers_are_cheapest():
    """By hand: 25 / 4 is 6.25, so 7 birds for 6; all other packs last: $14.00 more."""
    bills = {
        covers: sum(line.cost.magnitude for line in order(menu_needs(covers), menu_packs()))
        for covers in range(20, 41)
    }

    # In Markdown a dollar sign is escaped, and the file escapes that once more.
    lesson = page("lessons/10-land-the-plate.ipynb").replace("<span>\\\\$</span>", "$")
    assert "The 25th guest costs $14.00" in lesson and "in that span are 32 covers" in lesson
    assert bills[25] - bills[24] == pytest.approx(14.00)
    assert min(bills, key=lambda covers: bills[covers] / covers) == 32


def test_the_lesson_names_the_holding_limits_of_the_table():
    """Foam 6 min, carved birds 4 min, warm brunoise 10 min, velouté 2 h; and four roomy tasks."""
    plan = usual_plan()
    holds = [
        plan.tasks[name].hold.to("min").magnitude
        for name in ("aerate the cider foam", "carve the birds", "warm the brunoise in butter",
                     "cook the mustard velouté")
    ]  # fmt: skip

    assert holds == [6, 4, 10, 120]
    assert sum(room.magnitude > 0 for room in plan.slack.values()) == 4
    assert len(read_tasks()) == 15
    assert check_plan(plan, list(plan.tasks.values())) == []


def test_the_oven_is_wanted_low_and_hot_within_two_minutes():
    """ "Where this breaks": birds out at 17:40 + 70 min = 18:50, rolls in at 19:30 - 38 min."""
    plan = usual_plan()

    assert plan.ends_s("roast in the low oven")[0] == (18 * 60 + 50) * 60
    assert plan.starts["bake the rolls"] == "18:52"


def test_one_burner_is_enough_and_costs_a_wait():
    """By hand: the brunoise takes it at 19:02, so the velouté is done then, used 19:20: 18 min."""
    said = moved(service_panel(), burners=1)

    assert "3 cooks, 1 burner. Service at 19:30, work begins at 16:22." in said
    assert "The velouté waits 18 min" in said
    assert "Every limit is kept." in said


def test_two_cooks_are_too_few_in_the_last_minutes():
    """Plating takes three hands; and rolls take two while the brunoise takes one.

    The brunoise needs 90 min before 19:02, and the rolls stand at 17:52 to 18:12.
    """
    said = moved(service_panel(), cooks=2)

    assert "✗ Too few hands between 17:52 and 18:12" in said
    assert "✗ Too few hands between 19:05 and 19:30" in said
    assert "need 3, and there are 2 cooks" in said
    assert said.count("✗") == 2
    assert "nobody is free: " in said
    assert "carve the birds 19:05–19:20; plate for 24 19:20–19:30." in said


def test_the_chart_shows_what_nobody_is_free_for():
    """Three bars with two cooks, as the lesson says, and none with three."""
    plans = [service("19:30", burners=3, cooks=cooks)["plan"] for cooks in (2, 3)]
    missing = [sum(row.look == "nobody is free" for row in plan.rows) for plan in plans]

    assert [3, 0] == missing
    assert "carving and the third hand at the plates" in page("lessons/10-land-the-plate.ipynb")


def test_every_plan_of_the_panel_fits_the_clock_of_its_chart():
    """From 15:30 to 19:30: the earliest start of all is 15:37, for 18:45."""
    for serve_at, cooks, burners in itertools.product(SERVING_TIMES, COOKS, BURNERS):
        plan = service(serve_at, burners, cooks)["plan"]
        assert CLOCK_MIN[0] <= min(row.start_min for row in plan.rows)
        assert plan.serve_min <= CLOCK_MIN[1]


def test_with_a_fourth_cook_the_veloute_comes_straight_from_the_stove():
    """Somebody can stir it to the end."""
    assert "The velouté does not wait." in moved(service_panel(), cooks=4)


def test_at_a_quarter_to_seven_the_dough_starts_before_the_door_opens():
    """By hand: 18:45 less 3 h 8 min is 15:37, 23 min before 16:00."""
    said = moved(service_panel(), serve_at="18:45")

    assert "'knead the dough' starts at 15:37, 23 min before the kitchen opens at 16:00." in said


def test_the_foam_made_early_breaks_its_limit():
    """By hand: 10 min early it waits 10 and holds 6, so 4 too long; at 6 the limit is kept."""
    panel = slack_panel()

    assert "waits 10 min until 'plate for 24' and holds 6 min: 4 min too long" in moved(
        panel, earlier_min=10
    )
    assert "too long" not in moved(panel, earlier_min=6)


def test_the_veloute_may_be_twenty_minutes_early_and_not_an_hour():
    """By hand: it waits 15 + 20 = 35 of 120 min; its slack is 18:30 less 18:07, 23 min.

    An hour early is 17:30 to 18:05: larder cuts until 18:07, and from 17:52 rolls take two hands.
    """
    found, hour = moved_earlier("mustard velouté", 20), moved_earlier("mustard velouté", 60)

    assert found["minutes"][3] == 35
    assert "start at 18:10, 20 min earlier than planned. Its slack is 23 min." in found["sentence"]
    assert "Every limit is kept." in found["sentence"]
    assert "✗ Too few hands between 17:52 and 18:05" in hour["sentence"]


def test_the_brunoise_is_prepared_early_and_what_cannot_wait_comes_late():
    """Larder kneads until 16:37, then cuts; foam, carving and plating stand at the end."""
    plan = usual_plan()

    assert plan.starts["cut the celeriac brunoise"] == "16:37"
    assert plan.tasks["cut the celeriac brunoise"].early
    assert list(plan.starts)[-1] == "plate for 24"
    assert plan.waits["cut the celeriac brunoise"] <= plan.tasks["cut the celeriac brunoise"].hold


def test_ninety_minutes_of_brunoise_by_hand():
    """24 x 60 g = 1440 g; 0.027 mL x 1.05 g/mL = 0.02835 g; 50,800 cubes; / 25 = 2,032 strokes."""
    cubes = pieces_in(24 * Q_(60, "g"), "brunoise", Q_(1.05, "g/mL"))
    lesson = page("lessons/10-land-the-plate.ipynb")

    assert cubes == pytest.approx(51_000, rel=0.01)
    assert cubes / 25 / 60 == pytest.approx(34, abs=0.5)
    assert "51,000 cubes" in lesson and "34 min at one a second" in lesson
    assert usual_plan().tasks["cut the celeriac brunoise"].duration == Q_(90, "min")


def test_a_quarter_of_a_bird_by_hand():
    """Lesson 4: (3.6 + 3.0) / 12 = 55 %; 1300 x 0.55 / 4 = 179 g; 72 % of it roasted, 129 g."""
    assert (3.6 + 3.0) / 12 == pytest.approx(0.55)
    assert (round(1300 * 0.55 / 4), round(1300 * 0.55 / 4 * 0.72)) == (179, 129)
    assert "1300 g × 0.55 ÷ 4 = 179 g" in page("lessons/10-land-the-plate.ipynb")
    assert menu_needs(24)["guinea fowl"].magnitude == 6
    assert "six for tomorrow's 24 covers" in page("lessons/05-season-and-brine.ipynb")


def test_a_wait_past_its_limit_is_hatched_and_said():
    """Never by colour alone."""
    clocks = Clocks(Picture(), 2)
    clocks.show([9, 15], ["foam", "sauce"], [6, 120])

    assert [face.get_hatch() for face in clocks.slices] == ["///", ""]


def test_the_order_and_the_cost_by_hand():
    """By hand: 24 x 60 / 0.68 = 2118 g, three nets; two nets are 118 g short.

    6 x 14 + 3 x 2.60 + 2 x 3.20 + 2 x 4 + 2.80 + 2 x 3 + 2.10 = $117.10, and the foam's lecithin,
    salt, sugar and yeast 9 + 1 + 1.40 + 2.50 = $13.90: $131.00; / 24 = $5.46.
    """
    lines = order(menu_needs(24), menu_packs())
    total = sum((line.cost for line in lines), start=Q_(0, "dollar"))

    assert menu_needs(24)["celeriac"].to("g").magnitude == pytest.approx(2118, abs=0.5)
    assert [line.packs[0][0] for line in lines] == [6, 3, 2, 2, 1, 2, 1, 1, 1, 1, 1]
    assert (say(total), say(portion_cost(total, 24))) == ("$131.00", "$5.46")
    assert "$131.00 in whole packs, $5.46 a cover" in words(cover_cost_panel())


def test_ten_covers_are_dearer_a_head():
    """By hand: 3 birds $42, 17.70 for the plate, 13.90 for its seasoning: $73.60 / 10 = $7.36."""
    said = moved(cover_cost_panel(), covers=10)

    assert "10 covers: $73.60 in whole packs, $7.36 a cover." in said
    assert "The birds alone are $4.20 a cover." in said


def test_a_dollar_sign_in_a_label_is_a_dollar():
    """Two of them in one text would be set as a formula."""
    packs = Packs(Picture(), rows=1, most=2)
    packs.show([1], [0.2], ["cider: $0.25 used, $0.02 left over"])
    label = packs.rows[0][0]

    assert label.get_text() == "cider: $0.25 used, $0.02 left over"
    assert not label.get_parse_math()


def test_the_limits_quoted_in_lesson_and_guide_are_the_kits():
    """Hot holding 57 °C in the Food Code, 63 °C by the house's own rule; poultry 74 °C."""
    code = limit("hot holding").temperature
    poultry = limit("poultry").temperature

    assert [say(each) for each in (code, poultry)] == ["57 °C", "74 °C"]
    for name in ("lessons/10-land-the-plate.ipynb", "instructor/guide/10-land-the-plate.md"):
        assert all(say(each) in page(name) for each in (code, poultry))
        assert "63 °C or above" in page(name) and "own rule" in page(name)


@pytest.mark.parametrize(
    ("drill", "numbers", "right"),
    [
        ("latest start", {"roast": 70, "rest": 15, "carve": 15, "plate": 10}, "110 min"),
        ("slack of a task", {"free": 120, "work": 35, "needed": 10}, "75 min"),
        ("hands at a minute", {"rolls": 60, "moment": 43}, "3"),
        ("hands at a minute", {"rolls": 60, "moment": 38}, "1"),
        ("hold limit broken", {"done": 19, "plating": 10, "hold": 6}, "3 min"),
    ],
)
def test_the_drills_of_time_by_hand(drill, numbers, right):
    """70 + 15 + 15 + 10; 120 - 10 - 35; rolls from 60 to 40 before; 19 - 10 - 6."""
    known = {name: Q_(number, "min") for name, number in numbers.items()}

    assert say(DRILLS[drill].question.right(known)) == right


def test_the_drills_of_packs_and_cost_by_hand():
    """24 x 60 g / 0.68 = 2.118 kg, 3 nets; 2.4 L are 3 bottles, 3 x $4 / 24 = $0.50."""
    packs = {"covers": Q_(24, "count"), "portion": Q_(60, "g"), "yield_": Q_(68, "percent")}
    cost = {"need": Q_(2.4, "L"), "price": Q_(4, "dollar"), "covers": Q_(24, "count")}

    assert say(DRILLS["packs for the menu"].question.right(packs)) == "3"
    assert say(DRILLS["cost a cover"].question.right(cost)) == "$0.50"
