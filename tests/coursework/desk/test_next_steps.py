"""What the desk says is next, by hand. The class is invented."""

from datetime import datetime

import pytest
from coursework.arriving.arrivals import Arrival
from coursework.arriving.doubts import Doubt
from coursework.desk.next_steps import ClassState, SetState, in_words

ROSTER = {
    "BH-1": "Ada Quill",
    "BH-2": "Bram Oakes",
    "BH-3": "Chidi Morrow",
    "BH-4": "Dora Finch",
    "BH-5": "Ewan Pike",
    "BH-6": "Fay Lowe",
}
NOON = datetime(2026, 10, 5, 12, 0).timestamp()
DAY = 86_400


def words(*sets, **state):
    return in_words(ClassState(sets, **state), ROSTER, NOON)


def test_nothing_waits_where_all_is_done():
    """And the next set is named, where there is one."""
    done = SetState("04-buy-enough", "Buy enough", due=NOON - DAY)

    assert ["Nothing waits."] == words(done)
    assert ["Nothing waits. Next to hand out: Foam."] == words(done, not_out=("Foam",))


def test_files_without_a_place_come_first():
    one = SetState("04-buy-enough", "Buy enough", to_read=1)

    assert [
        "2 files have no place: say whose, or set aside.",
        "Buy enough: 1 answer waits for you.",
    ] == words(one, unplaced=2)


def test_a_later_file_that_would_take_a_marked_ones_place_is_said_before_all_else():
    """Both files, with their times and senders."""
    stands = Arrival("post", "w.ipynb", "1", handed_in="2026-10-01 18:00:00", sender="BH-1")
    later = Arrival("post", "x.ipynb", "2", handed_in="2026-10-02 18:00:00")
    doubt = Doubt("BH-1", "04-buy-enough", stands, (later,))

    assert [
        "Ada Quill, Buy enough: say in the inbox which file counts. “w.ipynb”, 2026-10-01 18:00, "
        "sent by Ada Quill (BH-1): it is marked; “x.ipynb”, 2026-10-02 18:00, no sender is known: "
        "it waits.",
        "1 file has no place: say whose, or set aside.",
    ] == words(doubts=(("Buy enough", doubt),), unplaced=1)


def test_a_set_says_all_that_waits_in_it():
    """Two of six have not handed in, one is not marked, three answers and four pages wait."""
    one = SetState("x", "Buy enough", ("BH-5", "BH-6"), ("BH-1",), 3, 4, NOON + 2.5 * DAY)

    assert [
        "Buy enough: due 8 October, 00:00, in 2 days; Ada Quill to mark; "
        "3 answers wait for you; 4 to hand back; not handed in: Ewan Pike, Fay Lowe."
    ] == words(one)


def test_of_many_students_four_are_named():
    assert "Chidi Morrow, Dora Finch and 1 more" in words(
        SetState("x", "Buy enough", tuple(ROSTER)[:5])
    )[0]  # fmt: skip


def test_where_nobody_has_handed_in_no_list_is_read_out():
    assert ["Buy enough: nobody has handed in yet."] == words(
        SetState("x", "Buy enough", tuple(ROSTER))
    )


@pytest.mark.parametrize(("away", "said"), [
    (-1, "was due 5 October, 11:59"),
    (3600, "due 5 October, 13:00, today"),
    (1.5 * DAY, "due 7 October, 00:00, in a day"),
    (9 * DAY, "due 14 October, 12:00, in 9 days"),
])  # fmt: skip
def test_the_due_time_is_said_as_one_says_it(away, said):
    assert said in words(SetState("x", "Buy enough", ("BH-1",), due=NOON + away))[0]
