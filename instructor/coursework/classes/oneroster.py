"""A roster in the open OneRoster CSV form: read, where a college's office gives one out.

References
----------
1EdTech OneRoster 1.1, CSV binding: `users.csv`, its columns by name and in any order.
"""

import csv
import io
import zipfile

from coursework.classes.roster import read_roster
from coursework.errors import CourseError
from kitchenmath.errors import KitchenError
from kitchenmath.practice import student_number

__all__ = ["NUMBERS", "USERS", "packed_rows", "read_any_roster"]

USERS = "users.csv"
NEEDED = ("sourcedId", "givenName", "familyName")
# What the college prints as a student's number mostly stands in the first of these that is filled.
NUMBERS = ("identifier", "username", "sourcedId")
LARGEST = 20_000_000


def read_any_roster(file):
    """A roster: our own CSV, or OneRoster's users.csv, alone or in its zip.

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
    text = _users_in_zip(file) if zipfile.is_zipfile(file) else _users_alone(file)
    return read_roster(file) if text is None else _roster(text)


def _users_in_zip(file):
    with zipfile.ZipFile(file) as packed:
        if "xl/workbook.xml" in packed.namelist():
            return None  # a spreadsheet's own file is a zip too: the roster's reader says so
        text = _text_in(packed, USERS)
    if text is None:
        raise CourseError(f"{file.name}: there is no {USERS} in it that can be read.")
    return text


def _text_in(packed, name):
    """The text of a file in a zip, by its name in any folder; None where it cannot be read."""
    found = [one for one in packed.namelist() if one.rpartition("/")[2].lower() == name.lower()]
    if not found or packed.getinfo(found[0]).file_size > LARGEST:
        return None
    return packed.read(found[0]).decode("utf-8-sig", "replace")


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
        text = _text_in(packed, name)
    if text is None and optional:
        return []
    if text is None:
        raise CourseError(f"{file.name}: there is no {name} in it that can be read.")
    rows = csv.DictReader(io.StringIO(text, newline=""), restval="")
    missing = [one for one in needed if one not in (rows.fieldnames or ())]
    if missing:
        raise CourseError(f"{name}: the column {', '.join(missing)} is missing.")
    return [(rows.line_num, {key: (cell or "").strip() for key, cell in row.items() if key})
            for row in rows]  # fmt: skip


def _users_alone(file):
    text = file.read_bytes().decode("utf-8-sig", "replace")
    first = next(csv.reader(io.StringIO(text)), [])
    return text if {"sourcedId", "familyName"} <= {one.strip() for one in first} else None


def _roster(text):
    rows = csv.DictReader(io.StringIO(text, newline=""))
    missing = [one for one in NEEDED if one not in (rows.fieldnames or ())]
    if missing:
        raise CourseError(f"{USERS}: the column {', '.join(missing)} is missing.")
    roster, odd = {}, []
    for row in rows:
        if row.get("role", "student") not in ("student", "") or row.get("status") == "tobedeleted":
            continue
        number = next((row[one].strip() for one in NUMBERS if (row.get(one) or "").strip()), "")
        try:
            number = student_number(number)
        except KitchenError as error:
            odd.append(f"line {rows.line_num}: {error}")
            continue
        if number in roster:
            odd.append(f"line {rows.line_num}: {number} stands twice.")
        roster[number] = " ".join(filter(None, (row["givenName"], row["familyName"]))) or number
    if odd or not roster:
        raise CourseError(f"{USERS}: {' '.join(odd) or 'there is no student in it.'}")
    return roster
