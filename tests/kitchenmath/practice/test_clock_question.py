"""Answers that are clock times: read in every form that people write, and judged by the minute."""

import pytest

from kitchenmath.drills import Drill, Round
from kitchenmath.errors import Unreadable
from kitchenmath.practice import ClockQuestion, Slip, in_words, steps
from kitchenmath.practice.answer_look import look_over
from kitchenmath.practice.clock_question import ClockKind, ClockTime, clock_time
from kitchenmath.practice.words import WRONG_SIDE
from kitchenmath.units import Q_


def question(earlier_min=0):
    """When a pot must be cold that fell through 57 °C at 19:40: six hours later, at 01:40."""
    return ClockQuestion(
        "q1",
        3,
        lambda fell: fell.magnitude + 360,
        (
            Slip("six hours more", lambda fell: fell.magnitude + 480, "Six in all.", worth=1),
            Slip("two hours", lambda fell: fell.magnitude + 120, "That is the first stage."),
            Slip("makes no difference", lambda fell: None, "Never."),
        ),
        earlier_min=earlier_min,
        working=("{fell} + 6 h = {answer}",),
    )


FELL = {"fell": Q_(19 * 60 + 40, "min")}


@pytest.mark.parametrize(
    "typed",
    ["18:45", "18.45", "1845", "18h45", "18:45 h", "6:45 pm", "6.45 p.m.", " since 6:45PM", "6:45"],
)
def test_a_quarter_to_seven_in_the_evening_in_every_form(typed):
    """18 x 60 + 45 = 1125 minutes after midnight; "6:45" alone may be the evening's."""
    assert 0 == ClockKind().read(typed).after(ClockTime(1125))


@pytest.mark.parametrize("typed", ["06:45", "6:45 am", "0:45", "12:45 am", "19:45"])
def test_a_time_whose_half_of_the_day_is_said_is_no_other(typed):
    assert ClockKind().read(typed).half_said
    assert 0 != ClockKind().read(typed).after(ClockTime(1125))


@pytest.mark.parametrize("typed", ["soon", "7", "25:10", "13:00 pm", "18:75", "63 °C", "0:30 am"])
def test_what_is_no_clock_time_is_refused_with_what_to_type(typed):
    with pytest.raises(Unreadable, match=r"18:45|no such hour"):
        ClockKind().read(typed)


def test_midnight_comes_between_and_the_shorter_way_counts():
    """From 23:50 to 00:10 are 20 minutes, and back as many before."""
    before, after = clock_time(23 * 60 + 50), clock_time(24 * 60 + 10)

    assert (20, -20) == (after.after(before), before.after(after))
    assert "00:10" == str(after)


def test_a_moment_outside_the_log_is_looked_at_again():
    """The log goes from 22:00 to 05:00; 02:30 is in it, 14:00 is not, 2:30 may be the night's."""
    span = ("22:00", "05:00")

    assert ["there", "there", "doubtful"] == [
        look_over(typed, "clock time", span).state for typed in ("02:30", "2:30", "14:00")
    ]
    assert "something from 22:00 to 05:00" in look_over("14:00", "clock time", span).sentence


def test_right_slip_and_wrong_by_hand():
    """19:40 and six hours are 01:40; six more after the first two are 03:40."""
    asked = question()
    verdicts = [asked.judge(typed, FELL) for typed in ("01:40", "3:41 am", "01:30", "", "late")]

    assert ["right", "slip", "wrong", "missing", "unreadable"] == [v.outcome for v in verdicts]
    assert [3, 1, 0, 0, 0] == [verdict.points for verdict in verdicts]
    assert ("six hours more",) == verdicts[1].slips
    assert verdicts[0].working == ("1180 min + 6 h = 01:40",)


def test_a_limit_may_be_rounded_to_the_earlier_side_and_never_to_the_later():
    """Up to a quarter of an hour earlier is right; as much later is the wrong side, for half."""
    asked = question(earlier_min=15)

    assert ["right", "right", "wrong"] == [
        asked.judge(typed, FELL).outcome for typed in ("01:30", "01:25", "01:20")
    ]
    late = asked.judge("01:45", FELL)
    assert ((WRONG_SIDE,), 1.5) == (late.slips, late.points)


def test_what_is_played_comes_out_as_it_was_meant():
    asked = question(earlier_min=15)
    for answer, way, slips in asked.played(FELL):
        if way != "noise":
            verdict = asked.judge(answer, FELL)
            assert (way, slips) == (verdict.outcome, verdict.slips)
    assert [] == asked.collisions(FELL)


def test_a_drill_may_ask_for_a_moment():
    """What is wrong without a slip is told so, and is never taken for a slipped point."""
    fell = steps(1180, 1180, 5, "min", "fell through 57 °C, minutes after midnight")
    turn = Round(Drill(question(), "When?", "Six hours in all.", {"fell": fell}))

    assert "right" == turn.answer("01:40").outcome
    assert "none of the usual slips" in in_words(turn.answer("05:00"))
