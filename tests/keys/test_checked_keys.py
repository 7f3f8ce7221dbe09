"""A key is tried with the class's own numbers before it marks, and again when one changes."""

import pytest
from coursework.classes.course import new_course
from coursework.errors import CourseError
from coursework.sets import checked_keys
from coursework.sets.checked_keys import refuse_unchecked
from coursework.sets.keys import load_key

from tests.helpers.filled_in import KEY, SET

# By hand, BH-1003 needs 32 x 60 g / 0.70 = 2742.857 g; of the hundred students that every key is
# tried with, nobody does. In this key “forgot the trim” gives the right answer for such a weight.
COLLIDES = KEY.replace(
    b"lambda covers, portion: covers * portion,",
    b"lambda covers, portion, yield_: covers * portion / (yield_ if "
    b"abs((covers * portion / yield_).m_as('g') - 2742.857) < 0.001 else 1),",
)


def class_of(folder, *students):
    return new_course(folder / "class", "Class", "demo", dict.fromkeys(students, "Student"))


def test_a_slip_that_is_right_with_one_students_numbers_is_refused_by_name(tmp_path):
    """The hundred tried students do not show it; the roster does."""
    load_key(COLLIDES, "demo")

    with pytest.raises(CourseError, match=r"“forgot the trim” gives the right .* of BH-1003"):
        refuse_unchecked(class_of(tmp_path, "BH-1008", "BH-1003"), SET, COLLIDES, b"kit")


def test_what_was_tried_is_tried_again_only_when_key_roster_or_kit_change(tmp_path, monkeypatch):
    tried = []
    monkeypatch.setattr(checked_keys, "refuse_collisions", lambda *_: tried.append(1))
    first, second = class_of(tmp_path, "BH-1008"), class_of(tmp_path / "other", "BH-1009")
    for _ in range(2):
        refuse_unchecked(first, SET, KEY, b"kit")
    assert 1 == len(tried)
    refuse_unchecked(first, SET, KEY, b"a newer kit")
    refuse_unchecked(first, SET, COLLIDES, b"a newer kit")
    assert 3 == len(tried)

    other = (first.folder / "release" / SET / ".checked").read_bytes()
    (second.folder / "release" / SET).mkdir(parents=True)
    (second.folder / "release" / SET / ".checked").write_bytes(other)
    refuse_unchecked(second, SET, COLLIDES, b"a newer kit")
    assert 4 == len(tried)
