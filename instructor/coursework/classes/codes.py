"""A short code for each student, where the course file asks for it: `student_codes = true`.

A number can be typed by anybody; a code is known to its student and the instructor. It is no
password: it stands in the file that is handed in, and says that the file is its student's own.
"""

import re
import secrets

from coursework.classes.roster import read_table, student_on
from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from coursework.safe_files import write_safely

__all__ = ["CODES_FILE", "codes_of", "fits", "make_codes"]

CODES_FILE = "codes.csv"
# Without what is read for something else: I and 1, O and 0, U and V; and no vowel, so no word.
SIGNS = "23456789BCDFGHJKLMNPQRSTVWXZ"
LENGTH = 6


def codes_of(course):
    """The codes that were given out; none where the class works without them.

    Parameters
    ----------
    course : Course

    Returns
    -------
    dict of str to str
        Code by student number.

    Raises
    ------
    CourseError
        When the file was damaged.
    """
    file = course.folder / CODES_FILE
    if not course.student_codes or not file.is_file():
        return {}
    rows = read_table(file, "student_number,name,code").rows
    found = {student_on(cells, line)[0]: cells.get("code", "") for line, cells in rows}
    if not all(found) or not all(found.values()):
        raise CourseError(f"{CODES_FILE}: a line lacks its student number or its code.")
    return found


def make_codes(course):
    """Give each student on the roster who has none a code; the others keep theirs.

    Parameters
    ----------
    course : Course

    Returns
    -------
    Path
        The list for the instructor: number, name, code. It is for nobody else.
    """
    codes = codes_of(course)
    for student in course.roster:
        while student not in codes or [*codes.values()].count(codes[student]) > 1:
            codes[student] = "".join(secrets.choice(SIGNS) for _ in range(LENGTH))
    rows = [[student, course.roster.get(student, ""), code] for student, code in codes.items()]
    file = course.folder / CODES_FILE
    write_safely(file, sheet_as_csv([["student_number", "name", "code"], *rows]))
    return file


def fits(said, code):
    """Whether a typed code is the one that was given out; capitals and spaces do not matter.

    Parameters
    ----------
    said : str or None
    code : str

    Returns
    -------
    bool
    """
    return bool(code) and re.sub(r"[\s-]", "", said or "").upper() == code
