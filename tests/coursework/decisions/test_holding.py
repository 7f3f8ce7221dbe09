"""What holds after a list of decisions. Everything here is invented."""

import pytest
from coursework.arriving.arrivals import Arrival
from coursework.classes.policy import SetRule
from coursework.decisions.holding import holding, live
from coursework.decisions.kinds import KINDS, Decision, refuse_odd
from coursework.errors import CourseError

SET = "04-buy-enough"
HOUR = 3600.0


def lines(*said):
    """Decisions with their numbers, in order."""
    return [
        Decision(kind, "chef", "2026-10-05T09:00:00Z", number=number, **about)
        for number, (kind, about) in enumerate(said, start=1)
    ]


def excused(student="BH-1"):
    return "excused", {"set_id": SET, "student": student}


def test_the_last_of_two_decisions_about_the_same_thing_holds():
    by_hand = {"set_id": SET, "student": "BH-1", "question": "q1"}
    said = lines(
        ("points by hand", by_hand | {"points": 1.0}), ("points by hand", by_hand | {"points": 2.0})
    )

    assert 2.0 == holding(said).points[SET, "BH-1", "q1"].points


def test_a_line_that_was_taken_back_never_was_and_the_one_before_it_holds_again():
    place = {"file": "a" * 64, "set_id": SET}
    said = lines(
        ("place", place | {"student": "BH-1"}),
        ("place", place | {"student": "BH-2"}),
        ("take back", {"line": 2}),
    )

    assert "BH-1" == holding(said).files["a" * 64].student
    assert frozenset({"a" * 64}) == holding(said).ever_placed


def test_taking_a_taking_back_back_lets_the_line_hold_again():
    """1 is taken back by 2, 2 by 3; then 4 takes 3 back, and 1 is gone again."""
    said = lines(excused(), ("take back", {"line": 1}), ("take back", {"line": 2}))

    assert [1] == [one.number for one in live(said)]
    said = lines(
        excused(),
        ("take back", {"line": 1}),
        ("take back", {"line": 2}),
        ("take back", {"line": 3}),
    )
    assert [] == live(said)


def test_a_students_extension_goes_before_the_classes_also_where_it_is_shorter():
    rule = SetRule(due=0.0, second_due=2 * HOUR)
    holds = holding(
        lines(
            ("extension", {"set_id": SET, "seconds": 10 * HOUR}),
            ("extension", {"set_id": SET, "student": "BH-1", "seconds": HOUR}),
        )
    )

    assert HOUR == holds.due(rule, SET, "BH-1").due
    assert 10 * HOUR == holds.due(rule, SET, "BH-2").due == holds.due(rule, SET, "BH-2").second_due
    assert 2 * HOUR == holds.due(rule, SET, "BH-1").second_due
    assert rule == holds.due(rule, "05-season-and-brine", "BH-1")
    assert SetRule() == holds.due(SetRule(), SET, "BH-1")


def test_a_time_by_hand_counts_before_the_files_own_and_orders_attempts():
    first, second = (
        Arrival("post", name, sha256=name, seconds=seconds, student="BH-1", set_id=SET)
        for name, seconds in (("first", 100), ("second", 200))
    )
    said = {"file": "second", "student": "BH-1", "set_id": SET, "seconds": 50.0}
    holds = holding(lines(("handed in at", said)))

    assert [50.0, 100] == [one.seconds for one in holds.timed([first, second])]


@pytest.mark.parametrize("kind", sorted(kind for kind, needs in KINDS.items() if needs))
def test_a_line_that_lacks_what_its_kind_needs_is_refused(kind):
    with pytest.raises(CourseError, match=r"is missing|name an answer"):
        refuse_odd(Decision(kind, "chef", "2026-10-05T09:00:00Z"))


def test_an_unknown_kind_is_refused_as_came():
    with pytest.raises(CourseError, match="“forgiven” is none of"):
        refuse_odd(Decision("forgiven", "chef", "2026-10-05T09:00:00Z"))


@pytest.mark.parametrize(("points", "out_of"), [(-1.0, 4.0), (5.0, 4.0), (0.0, 0.0)])
def test_points_that_cannot_be_are_refused(points, out_of):
    decision = Decision("on paper", "chef", "", set_id=SET, student="BH-1", points=points,
                        out_of=out_of)  # fmt: skip
    with pytest.raises(CourseError, match="points: "):
        refuse_odd(decision)
