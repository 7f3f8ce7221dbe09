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

__all__ = ["read_any_roster"]

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
        names = packed.namelist()
        users = [one for one in names if one.rpartition("/")[2].lower() == USERS]
        if not users and "xl/workbook.xml" in names:
            return None  # a spreadsheet's own file is a zip too: the roster's reader says so
        if not users or packed.getinfo(users[0]).file_size > LARGEST:
            raise CourseError(f"{file.name}: there is no {USERS} in it that can be read.")
        return packed.read(users[0]).decode("utf-8-sig", "replace")


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
