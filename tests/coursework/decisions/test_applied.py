"""Decisions poured into a record: one truth for page, sheet, skills and mark book. Invented."""

import pytest
from coursework.decisions.applied import answer_mark, as_decided, changed_by
from coursework.decisions.holding import Holding, holding
from coursework.decisions.kinds import Decision
from coursework.records.points import earned, total
from coursework.records.record import HumanMark

from tests.helpers.records import SET, record, verdict, written


def holds(kind, why="", **about):
    return holding([Decision(kind, "chef", "2026-10-05T09:00:00Z", why, 1, SET, **about)])


def decided(mine, human=None, after=None):
    """The questions by id, and the points that hold."""
    found, given = as_decided(mine, human or {}, after or Holding())
    asked = {each.question: each for each in [*found.answered, *found.written]}
    return asked, earned(found, given)


def by_hand(points, answer="4.2 kg", question="q1", why=""):
    return holds("points by hand", why, student="BH-1", question=question, points=points,
                 answer=answer_mark(answer))  # fmt: skip


def test_without_a_decision_the_record_stands_as_it_is():
    mine = record("BH-1", verdict("q1", "slip", 1.0), human=[written()])
    human = {("BH-1", "q9"): HumanMark(2.0, "Good."), ("BH-2", "q9"): HumanMark(4.0, "")}

    assert (mine, {("BH-1", "q9"): HumanMark(2.0, "Good.")}) == as_decided(mine, human, Holding())


def test_full_points_by_hand_make_an_unreadable_answer_right():
    """3 of 3 by hand: nothing could not be read any more, and no slip stands there."""
    mine = record("BH-1", verdict("q1", "unreadable", 0.0))
    asked, points = decided(mine, after=by_hand(3.0, why="I see 4.23 kg in the photo."))

    assert ("right", ()) == (asked["q1"].outcome, asked["q1"].slips)
    assert (3.0, "I see 4.23 kg in the photo.") == (points["q1"].points, points["q1"].comment)
    assert "unreadable" == mine.answered[0].outcome


@pytest.mark.parametrize(
    ("points", "before", "after"),
    [(1.5, "slip", "marked"), (1.0, "slip", "slip"), (1.0, "right", "wrong"),
     (0.0, "missing", "missing"), (1.0, "unreadable", "wrong")],
)  # fmt: skip
def test_half_the_points_by_hand_say_that_it_came_right(points, before, after):
    mine = record("BH-1", verdict("q1", before, 1.0, answer="4.2 kg"))
    asked, _ = decided(mine, after=by_hand(points))

    assert after == asked["q1"].outcome
    assert (after == "slip") == bool(asked["q1"].slips)


def test_another_answer_reopens_points_by_hand():
    """The machine's mark stands again; a written answer waits; an empty one has nothing."""
    mine = record("BH-1", verdict("q1", "slip", 1.0, answer="9 kg"), human=[written()])
    human = {
        ("BH-1", "q1"): HumanMark(3.0, "For the first one."),
        ("BH-1", "q9"): HumanMark(4.0, "Good."),
    }

    assert 1.0 == decided(mine, human, by_hand(3.0))[1]["q1"].points
    reread = by_hand(4.0, "I guessed it.", "q9")
    assert decided(mine, human, reread)[1]["q9"].points is None
    empty = record("BH-1", human=[written(answer="")])
    assert 0.0 == decided(empty, human, reread)[1]["q9"].points


def test_spaces_make_no_other_answer():
    mine = record("BH-1", verdict("q1", "slip", 1.0, answer=" 4.2   kg\n"))

    assert 3.0 == decided(mine, after=by_hand(3.0))[1]["q1"].points


def test_back_to_the_machine_is_back_to_the_machines_mark():
    mine = record("BH-1", verdict("q1", "slip", 1.0))
    back = holds("back to the machine", student="BH-1", question="q1")
    asked, points = decided(mine, {("BH-1", "q1"): HumanMark(3.0, "Generous.")}, back)

    assert ("slip", 1.0, "") == (asked["q1"].outcome, points["q1"].points, points["q1"].comment)


def test_a_dropped_question_counts_nowhere():
    """3 of 6 and a dropped 0 of 3: 3 of 3 remain, and q2 is neither asked nor open."""
    mine = record("BH-1", verdict("q1"), verdict("q2", "wrong", 0.0), human=[written()])
    asked, points = decided(mine, after=holds("dropped question", question="q2"))

    assert {"q1", "q9"} == set(asked)
    assert (3.0, 7.0) == (total(points).points, total(points).out_of)


def test_full_marks_go_before_points_by_hand_and_reach_the_written_ones():
    mine = record("BH-1", verdict("q1", "missing", 0.0), human=[written(out_of=4.0)])
    for question, out_of in (("q1", 3.0), ("q9", 4.0)):
        gift = holds("full marks", "The text was wrong.", question=question)
        points = decided(mine, {("BH-1", question): (0.5, "")}, gift)[1]

        assert out_of == points[question].points


@pytest.mark.parametrize(
    ("typed", "about", "right"),
    [("5 kg", {"accepted": "5 kg"}, True), ("5000 g", {"accepted": "5 kg"}, True),
     ("5.1 kg", {"accepted": "5 kg"}, False), ("five", {"accepted": "five"}, True),
     ("4.32 kg", {"step": "100 g"}, True), ("4.34 kg", {"step": "100 g"}, False),
     ("4.40 kg", {"step": "5 %"}, True), ("4.50 kg", {"step": "5 %"}, False),
     ("4.3 L", {"step": "100 g"}, False), ("", {"step": "100 g"}, False)],
)  # fmt: skip
def test_an_answer_or_a_wider_step_is_accepted(typed, about, right):
    """4.23 kg is right; 100 g around it ends at 4.33 kg, 5 % at 4.4415 kg."""
    mine = record("BH-1", verdict("q1", "wrong", 0.0, answer=typed))
    points = decided(mine, after=holds("accept this too", question="q1", **about))[1]

    assert (3.0 if right else 0.0) == points["q1"].points


def test_the_preview_names_whose_points_change_and_nobody_else():
    """Two of three have q1 wrong; the one with points by hand keeps full marks either way."""
    mine = [record("BH-1", verdict("q1", "wrong", 0.0)), record("BH-2", verdict("q1")),
            record("BH-3", verdict("q1", "slip", 1.0))]  # fmt: skip
    found = changed_by(mine, {}, Holding(), holds("full marks", question="q1"))

    assert [("BH-1", 0.0, 3.0), ("BH-3", 1.0, 3.0)] == [
        (one.student, one.before, one.after) for one in found
    ]
    dropped = changed_by(mine, {}, Holding(), holds("dropped question", question="q1"))
    assert [None, None, None] == [one.after for one in dropped]
