"""A checked copy of the gradebook before each marking: nothing that befalls it is final."""

import sqlite3
from contextlib import closing
from datetime import UTC, datetime

from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from coursework.gradebook.points import all_marks
from coursework.safe_files import clear_halves, half_of, write_safely

COPIES = 20  # the newest that are kept


def copy_gradebook(course):
    """Copy the gradebook to `kept/gradebook`, and check the copy.

    An SQLite file is copied page by page, also while something else reads it. Of a database
    server's gradebook every mark is written to a table (CSV): the server has its own backups.

    Parameters
    ----------
    course : Course

    Returns
    -------
    Path
        The copy.

    Raises
    ------
    CourseError
        When the gradebook is damaged; the message names the last good copy.
    """
    folder = course.folder / "kept" / "gradebook"
    folder.mkdir(parents=True, exist_ok=True)
    stamp = datetime.now(UTC).strftime("%Y-%m-%dT%H%M%S.%fZ")
    if course.gradebook_file is None:
        file = folder / f"{stamp}.csv"
        write_safely(file, _table(course))
    else:
        file = folder / f"{stamp}.db"
        half = half_of(file)
        try:
            _copy(course.gradebook_file, half)
            half.rename(file)
        except sqlite3.Error as error:
            half.unlink(missing_ok=True)
            raise CourseError(_damaged(folder, error)) from None
    _thin_out(folder)
    return file


def _copy(source, target):
    # Not mode=ro: a marker that was killed in a transaction left what SQLite must first undo.
    address = f"{source.as_uri()}?mode=rw"
    with (
        closing(sqlite3.connect(address, uri=True)) as old,
        closing(sqlite3.connect(target)) as new,
    ):
        old.backup(new)
        new.execute("PRAGMA journal_mode=DELETE")
        said = [row[0] for row in new.execute("PRAGMA integrity_check(3)")]
        if said != ["ok"]:
            raise sqlite3.DatabaseError("; ".join(said))


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
    clear_halves(folder)
    for old in sorted(folder.glob("2*"))[:-COPIES]:
        old.unlink(missing_ok=True)
