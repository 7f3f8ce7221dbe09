"""A checked copy of the gradebook before each marking: nothing that befalls it is final.

A gradebook that lost hand-ins is no good copy: twenty markings of an empty one would push all
good copies out. So it is refused before it is copied, and one copy of each day stays longer.
"""

import errno
import os
import sqlite3
import sys
import time
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from coursework.gradebook.points import all_marks
from coursework.gradebook.words import WAITING
from coursework.safe_files import clear_halves, half_of, write_safely

COPIES = 20  # the newest that are kept,
DAYS = 60  # and the last copy of so many days before them
PATIENCE_S = 30.0  # for another program that holds the gradebook
# Nothing of the kit takes these rows away, but for erasing a student, which takes the copies too.
ROWS = ("student", "submitted_assignment", "grade")
FULL = ("database or disk is full", "disk i/o error")


def copy_gradebook(course, patience_s=PATIENCE_S):
    """Copy the gradebook to `kept/gradebook`, and check the copy.

    An SQLite file is copied page by page, also while something else reads it. Of a database
    server's gradebook every mark is written to a table (CSV): the server has its own backups.

    Parameters
    ----------
    course : Course
    patience_s : float
        How long it waits for another program that holds the gradebook.

    Returns
    -------
    Path
        The copy.

    Raises
    ------
    CourseError
        When the gradebook is damaged or has lost hand-ins (the message names the last good copy),
        when another program does not let go of it, and when the disk is full.
    """
    folder = course.folder / "kept" / "gradebook"
    stamp = datetime.now(UTC).strftime("%Y-%m-%dT%H%M%S.%fZ")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if course.gradebook_file is None:
            file = folder / f"{stamp}.csv"
            write_safely(file, _table(course))
        else:
            file = folder / f"{stamp}.db"
            _copy_file(course.gradebook_file, file, patience_s)
    except OSError as error:
        if error.errno not in (errno.ENOSPC, errno.EDQUOT):
            raise
        raise CourseError(_disk_is_full(folder)) from None
    _thin_out(folder)
    return file


def _copy_file(source, file, patience_s):
    """Copy an SQLite file that is whole, and has lost nothing since the last copy."""
    half = half_of(file)
    try:
        _wait_for(source, patience_s)
        _refuse_shrunken(source, file.parent)
        _copy(source, half)
        half.rename(file)
    except sqlite3.Error as error:
        if any(words in str(error).lower() for words in FULL):
            raise CourseError(_disk_is_full(file.parent)) from None
        raise CourseError(_damaged(file.parent, error)) from None
    finally:
        half.unlink(missing_ok=True)


def _wait_for(source, patience_s):
    """Wait until no other program is writing, and say so once."""
    until, said = time.monotonic() + patience_s, False
    while True:
        try:
            with closing(_open(source, timeout=0.2)) as trial:
                trial.execute("BEGIN IMMEDIATE")
                trial.rollback()
            return
        except sqlite3.OperationalError as error:
            if "locked" not in str(error):
                raise
        if time.monotonic() > until:
            raise CourseError(
                f"another program has held the gradebook for {patience_s:g} s, such as nbgrader's "
                "page in another window. Nothing was marked. Close it, then mark again."
            )
        if not said:
            print(WAITING, file=sys.stderr)
            said = True


def _refuse_shrunken(source, folder):
    """Refuse a gradebook that holds less than its last copy: it is not what was marked."""
    copies = sorted(folder.glob("*.db"))
    if not copies:
        return
    now, before = _counts(source), _counts(copies[-1])
    if all(now[table] >= before[table] for table in ROWS):
        return
    raise CourseError(
        f"gradebook.db holds {now['submitted_assignment']} hand-ins and {now['grade']} marks; its "
        f"last copy holds {before['submitted_assignment']} and {before['grade']}. Nothing was "
        f"marked. Put the copy in its place: kept/gradebook/{copies[-1].name}. If less is right, "
        "move the folder kept/gradebook elsewhere, and mark again."
    )


def _counts(file):
    """How many rows each table has; none where it has no such table, as an emptied file."""
    found = dict.fromkeys(ROWS, 0)
    with closing(_open(file, timeout=PATIENCE_S)) as book:
        there = {row[0] for row in book.execute("SELECT name FROM sqlite_master")}
        for table in there & found.keys():
            found[table] = book.execute(f"SELECT count(*) FROM {table}").fetchone()[0]
    return found


def _open(file, timeout):
    # Not mode=ro: a marker that was killed in a transaction left what SQLite must first undo.
    return sqlite3.connect(f"{Path(file).absolute().as_uri()}?mode=rw", uri=True, timeout=timeout)


def _copy(source, target):
    with closing(_open(source, PATIENCE_S)) as old, closing(sqlite3.connect(target)) as new:
        old.backup(new)
        new.execute("PRAGMA journal_mode=DELETE")
        said = [row[0] for row in new.execute("PRAGMA integrity_check(3)")]
        if said != ["ok"]:
            raise sqlite3.DatabaseError("; ".join(said))


def _disk_is_full(folder):
    free = os.statvfs(folder).f_bavail * os.statvfs(folder).f_frsize if os.name == "posix" else None
    room = f" ({free // 1_000_000} MB are free)" if free is not None else ""
    return (
        f"the disk is full{room}. Nothing was marked, and nothing was lost. Make room, then mark "
        "again."
    )


def _damaged(folder, error):
    copies = sorted(folder.glob("*.db"))
    mend = (
        f"Put the last good copy in its place: kept/gradebook/{copies[-1].name}."
        if copies
        else "There is no copy of it yet."
    )
    return f"gradebook.db cannot be read ({error}). Nothing was marked. {mend}"


def _table(course):
    head = ["set", "student", "cell", "machine", "person", "extra"]
    marks = sorted(all_marks(course), key=lambda row: row[:3])
    rows = [["" if each is None else str(each) for each in row] for row in marks]
    return "\ufeff" + sheet_as_csv([head, *rows])


def _thin_out(folder):
    """Keep the newest copies, and of the time before them the last one of each day."""
    clear_halves(folder)
    copies = sorted(folder.glob("2*"))
    older, newest = copies[:-COPIES], copies[-COPIES:]
    days = {file.name[:10]: file for file in older}
    for file in newest:
        days.pop(file.name[:10], None)
    for old in set(older) - {days[day] for day in sorted(days)[-DAYS:]}:
        old.unlink(missing_ok=True)
