"""The chart of a typed plan: bars, broken stretches, one start that works, and its quality.

The kitchen of `test_planned`, worked by hand at the top of that page: service 19:30, plate 19:20,
foam 19:15, carve 19:10, roast 17:55 with 15 min of rest, bread 17:35 cool at 18:05.
"""

from types import SimpleNamespace

import pytest

from kitchenmath.practice.chart_words import (
    clock,
    marks_in_words,
    move_in_words,
    quality_in_words,
)
from kitchenmath.practice.plan_moves import _long_wait, chart_of
from tests.helpers.plans import BY_HAND, judged, kitchen, minutes, typed


def chart(**moved):
    starts = BY_HAND | {name.replace("_", " "): start for name, start in moved.items()}
    return judged(typed(starts)).chart


def test_bars_are_work_rest_and_wait_in_the_order_of_starting():
    """Bread 17:35 to 17:55, 10 min of rest, and 19:20 - 18:05 = 75 min of waiting."""
    bars = chart().bars

    assert ["bake the bread", "roast the birds"] == [bar.task for bar in bars[:2]]
    assert ("17:35", 20, 10, 75) == (
        clock(bars[0].start_min), bars[0].work_min, bars[0].rest_min, bars[0].wait_min
    )  # fmt: skip
    assert "19:20" == clock(bars[0].end_min)


def test_a_plan_that_works_has_no_broken_stretch_and_no_move():
    right = chart()

    assert ((), None) == (right.broken, right.move)


@pytest.mark.parametrize(
    ("moved", "rule", "tasks", "ends", "start"),
    [
        # Foam at 19:05 is done at 19:10 and may stand until 19:16: broken from there to 19:20.
        ({"whip_the_foam": "19:05"}, "hold", ("whip the foam",), "19:16–19:20", "19:09"),
        # Bread at 18:50 while the birds are in the oven until 18:55; at 17:35 it is free.
        ({"bake_the_bread": "18:50"}, "equipment", ("roast the birds", "bake the bread"),
         "18:50–18:55", "17:50"),
        # Carving at 19:05: the birds rest until 19:10, so those five minutes are broken.
        ({"carve_the_birds": "19:05"}, "rest", ("roast the birds", "carve the birds"),
         "19:05–19:10", "19:10"),
        # Bread at 16:50, the kitchen opens at 17:00.
        ({"bake_the_bread": "16:50"}, "opening", ("bake the bread",), "16:50–17:00", "17:20"),
    ],
    ids=["hold", "equipment", "rest", "opening"],
)  # fmt: skip
def test_a_broken_stretch_lies_where_the_rule_is_broken(moved, rule, tasks, ends, start):
    """Worked by hand in the line above each."""
    seen = chart(**moved)

    found = next(each for each in seen.broken if each.rule == rule)

    assert tasks == found.tasks
    assert ends == f"{clock(found.begin_min)}–{clock(found.end_min)}"
    assert ends in marks_in_words(seen, tasks[-1])
    assert seen.move.alone
    mended = BY_HAND | {name.replace("_", " "): at for name, at in moved.items()}
    mended |= {seen.move.task: clock(seen.move.start_min)}
    assert "right" == judged(typed(mended)).outcome, (start, seen.move)


def test_a_plate_that_is_late_is_broken_after_the_service():
    """Plate at 19:25 takes ten minutes: 19:30 to 19:35."""
    late = next(each for each in chart(plate="19:25").broken if each.rule == "late")

    assert ("19:30", "19:35") == (clock(late.begin_min), clock(late.end_min))


def test_one_cook_in_two_places_is_broken_where_both_tasks_run():
    """Foam at 19:17 runs to 19:22; cook B plates from 19:20."""
    ends = {
        (each.rule, clock(each.begin_min), clock(each.end_min))
        for each in chart(whip_the_foam="19:17").broken
    }

    assert ("order", "19:20", "19:22") in ends
    assert ("hands", "19:20", "19:22") in ends


def test_where_no_task_alone_can_mend_it_the_start_is_that_of_the_plan_that_works():
    """All of it 15 min early. Plated later by itself, the slices would wait longer than 5 min."""
    early = {name: earlier(start) for name, start in BY_HAND.items()}
    move = judged(typed(early)).chart.move

    assert ("plate", "19:20", False) == (move.task, clock(move.start_min), move.alone)
    assert "Others have to move with it" in move_in_words(move)


def earlier(start):
    hour, minute = map(int, start.split(":"))
    """A clock time a quarter of an hour before."""
    return clock(60 * hour + minute - 15)


def test_a_long_wait_within_its_limit_is_said_with_a_later_start_where_there_is_one():
    """Bread waits 75 of 120 min; with the birds in the oven from 17:55 to 18:55 it cannot bake
    later, for at 18:55 it would be cool at 19:25. At 17:20 it waits 90, and 17:35 is later."""
    by_hand, sooner = chart().quality, chart(bake_the_bread="17:20").quality

    assert ("bake the bread", 75, 120, None) == (
        by_hand.task, by_hand.wait_min, by_hand.may_min, by_hand.later_min
    )  # fmt: skip
    assert (90, "17:35") == (sooner.wait_min, clock(sooner.later_min))
    assert "waits 1 h 15 min of the 2 h" in quality_in_words(by_hand)
    assert "it can begin at 17:35" in quality_in_words(sooner)


def test_of_two_long_waits_the_one_is_said_that_takes_more_of_what_it_may():
    """Foam 30 of 40 min is three quarters; bread 80 of 120 is longer, and two thirds."""
    waits_min, may_min = {"bread": 80, "foam": 30}, {"bread": 120, "foam": 40}
    plan = SimpleNamespace(
        starts_s=dict.fromkeys(waits_min, 0),
        caught=(),
        tasks={name: SimpleNamespace(hold_s=60 * hold) for name, hold in may_min.items()},
        wait_s=lambda name: 60 * waits_min[name],
        moments_s=lambda name: (),
        use=lambda name: (None, "plates"),
    )
    found = _long_wait(plan)

    assert ("foam", 30, 40) == (found.task, found.wait_min, found.may_min)


def test_without_a_long_wait_the_fewest_spare_minutes_are_said():
    """A bread that may wait 4 h waits no long share: foam and carving are ready as plating begins,
    and carving comes first by name."""
    roomy = kitchen(minutes(60)).with_task("bake the bread", hold=minutes(240))

    quality = chart_of(roomy, BY_HAND, roomy.findings(BY_HAND)).quality

    assert ("carve the birds", "plate", 0, False) == (
        quality.task, quality.until, quality.wait_min, quality.long
    )  # fmt: skip
    assert "no minute is to spare" in quality_in_words(quality)


def test_a_task_without_a_start_has_no_bar_and_is_the_one_to_add():
    without = {name: start for name, start in BY_HAND.items() if name != "whip the foam"}
    seen = judged(typed(without)).chart

    assert "whip the foam" not in [bar.task for bar in seen.bars]
    assert ("whip the foam", "19:15") == (seen.move.task, clock(seen.move.start_min))


def test_what_cannot_be_read_has_no_chart():
    assert judged("soon").chart is None
