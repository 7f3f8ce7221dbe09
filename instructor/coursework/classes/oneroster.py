"""A roster in the open OneRoster CSV form: read, where a college's office gives one out.

References
----------
1EdTech OneRoster 1.1, CSV binding: `users.csv`, its columns by name and in any order.
"""

import zipfile

from coursework.classes.roster import read_roster, roster_of
from coursework.errors import CourseError
from kitchenmath.errors import Unreadable
from kitchenmath.typed.spreadsheet import read_spreadsheet

__all__ = ["NUMBERS", "USERS", "packed_rows", "read_any_roster"]

USERS = "users.csv"
NEEDED = ("sourcedId", "givenName", "familyName")
# What the college prints as a student's number mostly stands in the first of these that is filled.
NUMBERS = ("identifier", "username", "sourcedId")
COLUMNS = {
    one: (one,)
    for one in (*NEEDED, *NUMBERS, "role", "status", "title", "lineItemSourcedId",
                "studentSourcedId", "score", "scoreStatus", "resultValueMin", "resultValueMax")
}  # fmt: skip
LARGEST = 20_000_000


def read_any_roster(file):
    """A roster: our own table, or OneRoster's users.csv, alone or in its zip.

    Parameters
    ----------
    file : Path

    Returns
    -------
    dict of str to str
        Student number to name.

    Raises
    ------
    CourseError
        Naming what is missing or odd.
    """
    if not file.is_file():
        return read_roster(file)
    raw = _users_in_zip(file) if zipfile.is_zipfile(file) else file.read_bytes()
    table = _table(USERS, raw, ("sourcedId", "familyName"))
    if not table:
        return read_roster(file)
    people = _rows(table, NEEDED)
    return roster_of(USERS, ((line, _person(cells)) for line, cells in people if _here(cells)))


def packed_rows(file, name, needed, optional=False):
    """The rows of one file of a OneRoster zip.

    Parameters
    ----------
    file : Path
    name : str
        As the standard calls it, such as "results.csv".
    needed : sequence of str
        Columns that must be there.
    optional : bool
        Whether the file may be missing; then there are no rows.

    Returns
    -------
    list of (int, dict)
        The line on which a row ends, and its cells by column.

    Raises
    ------
    CourseError
        When it is no such zip, or it lacks the file or a column.
    """
    if not zipfile.is_zipfile(file):
        raise CourseError(f"{file.name} is no zip of OneRoster files.")
    with zipfile.ZipFile(file) as packed:
        raw = _in_zip(packed, name)
    if raw is None and optional:
        return []
    if raw is None:
        raise CourseError(f"{file.name}: there is no {name} in it that can be read.")
    table = next(filter(None, (_table(name, raw, [one]) for one in needed)), None)
    if table is None:
        raise CourseError(f"{name}: the column {', '.join(needed)} is missing.")
    return _rows(table, needed)


def _users_in_zip(file):
    """The bytes of users.csv; of an office's own file, which is a zip too, its own."""
    with zipfile.ZipFile(file) as packed:
        if "xl/workbook.xml" in packed.namelist():
            return file.read_bytes()
        raw = _in_zip(packed, USERS)
    if raw is None:
        raise CourseError(f"{file.name}: there is no {USERS} in it that can be read.")
    return raw


def _in_zip(packed, name):
    """A file in a zip, by its name in any folder; None where it cannot be read."""
    found = [one for one in packed.namelist() if one.rpartition("/")[2].lower() == name.lower()]
    if not found or packed.getinfo(found[0]).file_size > LARGEST:
        return None
    return packed.read(found[0])


def _table(name, raw, marked):
    """The table, where its heads have what marks it; else None."""
    try:
        return read_spreadsheet((name, raw), COLUMNS, marked, ",".join(NEEDED))
    except Unreadable:
        return None


def _rows(table, needed):
    missing = [one for one in needed if one not in table.heads]
    if missing:
        raise CourseError(f"{table.file}: the column {', '.join(missing)} is missing.")
    return [(line, dict.fromkeys(needed, "") | cells) for line, cells in table.rows]


def _here(cells):
    """Whether a line is a student's who has not left."""
    student = cells.get("role", "student") in ("student", "")
    return student and cells.get("status") != "tobedeleted"


def _person(cells):
    return {
        "student_number": next(filter(None, (cells.get(one) for one in NUMBERS)), ""),
        "given name": cells["givenName"],
        "family name": cells["familyName"],
    }
