"""The diagnosis of every set, on 25 played students: the script of 200 in small."""

import pytest
from coursework.sets.key_text import set_ids

from tests.measure.diagnosis import measure, share, table


@pytest.fixture(scope="module", params=set_ids())
def measured(request):
    return request.param, *measure(
        request.param, students=25
    )  # with fewer, chance alone makes more than 1 % of some set


def test_no_right_answer_is_refused_and_slips_are_named(measured):
    """None refused, 97 % of the slips named, 1 % of right answers and noise accused of a slip."""
    _, found, _ = measured

    assert found["right"] > 100
    assert 0 == found["refused"] == found["carried refused"]
    assert share(found, "named", "slip") >= 97
    assert share(found, "accused", "right", "noise") <= 1


def test_whole_hand_ins_are_marked_as_expected(measured):
    """Answers that build on the student's own: 97 % as played."""
    _, found, _ = measured
    ways = [f"hand-in {way}" for way in ("right", "slip", "noise")]

    assert sum(found[way] for way in ways) > 100
    assert share(found, "hand-in as expected", *ways) >= 97


def test_the_table_holds_every_confusion(measured):
    """The rows below the diagonal's total add up to it."""
    set_id, found, confused = measured
    lines = list(table(set_id, found, confused))
    total = next(i for i, line in enumerate(lines) if "off the diagonal" in line)

    assert sum(confused.values()) == sum(int(line.split()[0]) for line in lines[total + 1 :])
