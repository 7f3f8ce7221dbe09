"""A plan by the twelve-hour clock: which starts are moved to the evening, to the minute."""

import pytest

from kitchenmath.practice.plan_evening import in_the_evening, said_of_the_evening
from kitchenmath.practice.plan_kitchen import Kitchen
from kitchenmath.practice.plan_lines import TypedPlan

OPEN = Kitchen(serve_at="19:00", tasks=(), opens="15:30")


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("3:30", "15:30"),  # when the kitchen opens
        ("7:08", "19:08"),
        ("8:00", "20:00"),  # plates go out for an hour after the service begins
        ("3:29", "3:29"),  # twelve hours later the kitchen is closed still
        ("8:01", "8:01"),  # twelve hours later the service is over
        ("12:00", "12:00"),  # noon is no morning
        ("16:00", "16:00"),
    ],
)
def test_a_start_is_moved_where_the_evening_fits_and_nowhere_else(typed, read):
    starts, told = in_the_evening(TypedPlan({"plate": typed}), OPEN)

    assert {"plate": read} == starts
    assert (typed != read) is bool(told)


def test_a_start_with_am_and_a_kitchen_without_hours_are_left_alone():
    said = TypedPlan({"plate": "7:08"}, morning_said=True)
    no_hours = Kitchen(serve_at="19:00", tasks=())

    assert ({"plate": "7:08"}, ()) == in_the_evening(said, OPEN)
    assert ({"plate": "7:08"}, ()) == in_the_evening(TypedPlan({"plate": "7:08"}), no_hours)


def test_only_what_is_before_noon_is_said_of_the_evening():
    assert [] == said_of_the_evening({"plate": "12:00", "foam": "19:14"})
    assert "11:59 is read as 23:59 (plate)" in said_of_the_evening({"plate": "11:59"})[0]
