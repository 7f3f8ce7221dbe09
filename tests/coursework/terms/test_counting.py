"""Late work, several attempts and weights, in numbers worked by hand."""

import pytest
from coursework.classes.policy import Policy
from coursework.records.points import Total
from coursework.terms.counting import Attempt, counted, late_days, weighed
from coursework.terms.mark_words import in_words
from hypothesis import given
from hypothesis import strategies as st

from tests.helpers.term import DAY


@pytest.mark.parametrize(
    ("seconds", "due", "days"),
    [(0, 0, 0), (1, 0, 1), (DAY, 0, 1), (DAY + 1, 0, 2), (5, None, 0), (None, 5, 0), (0, 5, 0)],
)
def test_a_day_started_is_a_day_late(seconds, due, days):
    """On the second it is in time; what is not known is in time too."""
    assert days == late_days(seconds, due)


def attempt(place, got, late=0, off=0.0, marked=20.0, open_=()):
    return Attempt(place, Total(got, marked, 20.0, open_), late, off)


@pytest.mark.parametrize(
    ("stated", "tried", "share", "words"),
    [
        ({}, [(1, 16), (2, 10)], 0.5, "Attempt 2, the latest, counts."),
        ({"second_attempt": "best"}, [(1, 16), (2, 10)], 0.8, "Attempt 1, the best, counts."),
        ({"second_attempt": "best"}, [(1, 10), (2, 10)], 0.5, "Attempt 1, the best, counts."),
        ({"second_attempt": "mean"}, [(1, 16), (2, 10)], 0.65, "The mean of 2 counts: 65 %."),
        ({"second_attempt": "first"}, [(1, 10), (2, 16)], 0.5, "Attempt 1, the first, counts."),
        (
            {"second_attempt": "first", "second_attempt_up_to": 60}, [(1, 10), (2, 16)], 0.6,
            "Attempt 1, the first, counts; a later one lifts it to 60 %, and 60 % is the most.",
        ),
        (
            {"second_attempt": "first", "second_attempt_up_to": 60}, [(1, 10), (2, 11)], 0.55,
            "Attempt 1, the first, counts; a later one lifts it to 55 %, and 60 % is the most.",
        ),
        (
            {"second_attempt": "first", "second_attempt_up_to": 60}, [(1, 14), (2, 20)], 0.7,
            "Attempt 1, the first, counts.",
        ),
        # 18 of 20 less 30 % of the points is 12 of 20; the first, 13 of 20, is better.
        ({"second_attempt": "best"}, [(1, 13), (2, 18, 3, 30.0)], 0.65, "Attempt 1, the best,"),
        # Too late is as if it had not come.
        ({"late_days": 2}, [(1, 13), (2, 18, 3)], 0.65, "Attempt 1, the latest, counts."),
        ({"late_days": 3}, [(1, 13), (2, 18, 3)], 0.9, "Attempt 2, the latest, counts."),
        ({"late_days": 2}, [(1, 13, 3)], None, "13 of 20, 3 days late: after 2 it does not count."),
        ({}, [(1, 18, 1)], 0.9, "18 of 20, 1 day late: nothing is taken off."),
        ({}, [(1, 2, 2, 20.0)], 0.0, "which leaves 0, as no mark goes below 0."),
        # Of 10 points marked so far 8 are earned: 0.8 less 0.1.
        ({}, [(1, 8, 1, 10.0, 10.0, ("q6",))], 0.7, "8 of 10, 1 day late: 10 % is taken off, whi"),
    ],
)  # fmt: skip
def test_which_attempt_counts_and_what_being_late_costs(stated, tried, share, words):
    """Shares by hand, of 20 points: 16 is 0.8, 13 is 0.65, 10 is 0.5, and so on."""
    found = counted(Policy(**stated), [attempt(*each) for each in tried])

    assert share == found.share
    assert words in " ".join(in_words(found))


def test_nothing_is_said_of_one_attempt_in_time():
    assert () == in_words(counted(Policy(), [attempt(1, 17.0)]))


def test_an_open_mark_stays_open_whichever_attempt_counts():
    """Best, first and mean may still turn with it; of the latest only its own are open."""
    tried = [attempt(1, 8.0, marked=16.0, open_=("q6",)), attempt(2, 15.0)]
    for way, open_ in (("best", ("q6",)), ("mean", ("q6",)), ("first", ("q6",)), ("latest", ())):
        assert open_ == counted(Policy(second_attempt=way), tried).open


def test_an_attempt_of_which_nothing_is_marked_is_no_nought():
    waits = attempt(1, 0.0, marked=0.0, open_=("q1",))
    for way in ("latest", "best", "mean", "first"):
        found = counted(Policy(second_attempt=way), [waits])

        assert (None, None, ("q1",)) == (found.share, found.points, found.open)


parts = st.tuples(st.integers(0, 9).map(float), st.none() | st.floats(0, 1))


@given(st.lists(parts, max_size=8))
def test_a_total_lies_between_the_lowest_and_the_highest_mark(marks):
    """And takes nothing from what is open or weighs nothing."""
    shares = [share for weight, share in marks if weight and share is not None]
    found = weighed(marks)
    if not shares:
        assert found.percent is None
    else:
        assert 100 * min(shares) - 1e-6 <= found.percent <= 100 * max(shares) + 1e-6
