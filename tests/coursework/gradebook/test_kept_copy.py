"""The copy of the gradebook that is made and checked before each marking."""

import os
import shutil

import pytest
from coursework.errors import CourseError
from coursework.gradebook.kept_copy import copy_gradebook
from coursework.gradebook.points import all_marks
from coursework.marking.mark_set import mark_set

from tests.helpers.filled_in import SET, class_copy


def test_the_gradebook_is_copied_and_the_copy_is_whole(small_class, tmp_path):
    """SQLite finds the copy sound; it holds every mark of before, and twenty are kept at most."""
    course = class_copy(small_class, tmp_path / "class")
    before = sorted(all_marks(course), key=str)
    copies = [copy_gradebook(course) for _ in range(22)]
    kept = sorted((course.folder / "kept" / "gradebook").iterdir())
    shutil.copy(copies[-1], tmp_path / "class" / "gradebook.db")

    assert copies[-20:] == kept
    assert before == sorted(all_marks(course), key=str)


@pytest.mark.parametrize("damage", ["in the middle", "at its head"])
def test_a_damaged_gradebook_is_refused_and_the_last_good_copy_named(small_class, tmp_path, damage):
    """Bytes are overwritten as a bad disk does it; put the copy back, and marking goes on."""
    course = class_copy(small_class, tmp_path / "class")
    good = copy_gradebook(course)
    file = course.gradebook_file
    raw = bytearray(file.read_bytes())
    start = 0 if damage == "at its head" else 4096
    raw[start : len(raw) // 2 if start else 64] = os.urandom(
        (len(raw) // 2 if start else 64) - start
    )
    file.write_bytes(raw)
    with pytest.raises(CourseError) as told:
        mark_set(course, SET)
    shutil.copy(good, file)
    mark_set(course, SET)

    assert str(told.value).startswith("gradebook.db cannot be read (")
    assert str(told.value).endswith(
        f"Nothing was marked. Put the last good copy in its place: kept/gradebook/{good.name}."
    )
