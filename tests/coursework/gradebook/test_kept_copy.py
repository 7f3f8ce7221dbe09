"""The copy of the gradebook that is made and checked before each marking."""

import errno
import os
import shutil
import sqlite3
import threading
from contextlib import closing
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from coursework.classes.course import open_course
from coursework.errors import CourseError
from coursework.gradebook import kept_copy
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


def test_a_class_that_is_named_from_where_one_stands_is_copied_too(
    small_class, tmp_path, monkeypatch
):
    """As `--class classes/autumn` names it, without the folders above."""
    class_copy(small_class, tmp_path / "class")
    monkeypatch.chdir(tmp_path)

    assert copy_gradebook(open_course(Path("class"))).is_file()


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


@pytest.mark.parametrize("harm", ["deleted rows", "new and empty", "no bytes"])
def test_a_gradebook_that_lost_marks_is_no_good_copy(small_class, tmp_path, harm):
    """However often it is marked, the good copy stays, and the sentence names it."""
    course = class_copy(small_class, tmp_path / "class")
    good = copy_gradebook(course)
    kept = sorted(good.parent.iterdir())
    if harm == "deleted rows":
        with closing(sqlite3.connect(course.gradebook_file)) as book, book:
            book.execute("DELETE FROM grade")
    else:
        course.gradebook_file.unlink()
        course.gradebook_file.touch()
    if harm == "new and empty":
        with closing(sqlite3.connect(course.gradebook_file)) as book, book:
            book.execute("CREATE TABLE grade (id)")
    for _ in range(25):
        with pytest.raises(CourseError, match=f"kept/gradebook/{good.name}"):
            copy_gradebook(course)

    assert kept == sorted((course.folder / "kept" / "gradebook").iterdir())

    shutil.copy(good, course.gradebook_file)
    mark_set(course, SET)


def test_of_each_earlier_day_one_copy_stays(small_class, tmp_path):
    """25 copies of one day, and one each of the 70 days before: 20 and 60 are kept, and theirs."""
    course = class_copy(small_class, tmp_path / "class")
    folder = course.folder / "kept" / "gradebook"
    folder.mkdir(parents=True, exist_ok=True)
    first = date(2026, 6, 1)
    for day in range(70):
        for hour in (8, 17):
            name = f"{first + timedelta(days=day)}T{hour:02d}0000.000000Z.db"
            shutil.copy(course.gradebook_file, folder / name)
    for _ in range(25):
        copy_gradebook(course)
    kept = sorted(file.name for file in folder.iterdir())
    days = {name[:10] for name in kept}

    assert 20 == sum(name.startswith(f"{datetime.now(UTC):%Y-%m-%d}") for name in kept)
    assert 61 == len(days)
    assert not any("T08" in name for name in kept if name < "2026-09")


def test_another_program_is_waited_for_with_a_word(small_class, tmp_path, capsys):
    """It lets go after a second; one that does not is named after the bound."""
    course = class_copy(small_class, tmp_path / "class")
    holder = sqlite3.connect(course.gradebook_file, check_same_thread=False)
    holder.execute("BEGIN IMMEDIATE")
    with pytest.raises(CourseError, match=r"0\.5 s.*Nothing was marked"):
        copy_gradebook(course, patience_s=0.5)
    release = threading.Timer(1.0, holder.rollback)
    release.start()

    assert copy_gradebook(course).is_file()
    assert "waiting for it" in capsys.readouterr().err
    release.join()
    holder.close()


def test_a_full_disk_is_not_told_as_a_damaged_gradebook(small_class, tmp_path, monkeypatch):
    """SQLite's own "full", by a copy that may not grow; and the system's, for a file."""
    course = class_copy(small_class, tmp_path / "class")

    class Small(sqlite3.Connection):
        def __init__(self, *args, **more):
            super().__init__(*args, **more)
            self.execute("PRAGMA max_page_count = 2")

    real = sqlite3.connect
    monkeypatch.setattr(
        sqlite3, "connect",
        lambda file, **more: real(file, **more, **({} if "uri" in more else {"factory": Small})),
    )  # fmt: skip
    with pytest.raises(CourseError, match=r"disk is full.*nothing was lost"):
        copy_gradebook(course)
    monkeypatch.undo()

    def refuse(*_, **__):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(kept_copy, "_copy", refuse)
    with pytest.raises(CourseError, match=r"disk is full.*nothing was lost"):
        copy_gradebook(course)

    assert [] == list((course.folder / "kept" / "gradebook").glob("*Z.db*"))[2:]
