"""Erase a student from a class, and look whether anything still names them.

What can be made again without them (mark sheets, the class's pages, copies of the gradebook) is
deleted whole; a list that others stand in too loses their lines only.
"""

import csv
import io
import json
import os
import re
import shutil
import sqlite3
import zipfile
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from coursework.arriving.arrivals import read_list, write_list
from coursework.classes.codes import CODES_FILE
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.classes.roster import read_table, student_on
from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from coursework.gradebook.points import connected
from coursework.json_text import json_text
from coursework.records.trays import TRAYS
from coursework.safe_files import write_safely
from kitchenmath.practice import student_number

# Folders with one folder a student, and those that hold only what is made again from the rest.
OF_STUDENTS = ("submitted", "autograded", "feedback", TRAYS)
MADE_AGAIN = ("reports", "reteach")


@dataclass(frozen=True)
class Erased:
    """What became of a student's data.

    Attributes
    ----------
    student, name : str
    gone : tuple of str
        What was deleted or lost lines, from the class's folder.
    marks : int
        Marks and remarks taken out of the gradebook.
    left : tuple of str
        Files in the class's folder that still name the student.
    """

    student: str
    name: str
    gone: tuple
    marks: int
    left: tuple


def erase_student(course, student):
    """Take a student out of a class: roster, hand-ins, marks, pages, copies, gradebook.

    Parameters
    ----------
    course : Course
    student : str

    Returns
    -------
    Erased

    Raises
    ------
    CourseError
        When nothing in the class is theirs, or another step is at work in it.
    """
    student = student_number(student)
    name = course.roster.get(student, "")
    with one_at_a_time(course, "erasing a student"):
        if not name and not _somewhere(course, student):
            raise CourseError(f"student: nothing in this class is from {student}.")
        gone = _lists(course, student)
        for folder in OF_STUDENTS:
            gone += _delete(course, course.folder / folder / student)
        for file in sorted(course.folder.glob(f"marks/*/{student}.json")):
            gone += _delete(course, file)
        for file in sorted(course.folder.glob(f"marks/*/earlier/{student}.*")):
            gone += _delete(course, file)
        for folder in MADE_AGAIN:
            gone += _made_again(course, folder, student, name)
        marks = _gradebook(course, student)
        gone += _delete(course, course.folder / "kept")  # earlier states of all of the above
    return Erased(student, name, tuple(gone), marks, tuple(still_named(course, student, name)))


def still_named(course, student, name=""):
    """Files in a class's folder that hold a student's number or full name.

    Parameters
    ----------
    course : Course
    student : str
    name : str
        "" looks for the number only.

    Returns
    -------
    list of str
        From the class's folder; also where the file's own name says it.
    """
    words = [re.escape(word) for word in (student, name) if word]
    text = re.compile(rf"(?<![\w.@-])({'|'.join(words)})(?![\w@-])", re.IGNORECASE)
    raw = re.compile(text.pattern.encode(), re.IGNORECASE)
    found = []
    for file in sorted(path for path in course.folder.rglob("*") if path.is_file()):
        place = file.relative_to(course.folder).as_posix()
        if text.search(place) or raw.search(file.read_bytes()) or _packed(file, text, raw):
            found.append(place)
    return found


def _packed(file, text, raw):
    """Whether something packed in a zip, or in a spreadsheet's file, names them."""
    if file.suffix not in (".zip", ".xlsx"):
        return False
    try:
        with zipfile.ZipFile(file) as packed:
            return any(
                text.search(name) or raw.search(packed.read(name)) for name in packed.namelist()
            )
    except (zipfile.BadZipFile, OSError, ValueError, RuntimeError):
        return False


def _somewhere(course, student):
    return any((course.folder / folder / student).exists() for folder in OF_STUDENTS) or any(
        _is_theirs(one, student) for one in read_list(course)
    )


def _is_theirs(arrival, student):
    return student in (arrival.student, arrival.told_student) or (
        not arrival.student and _same(arrival.says_student, student)
    )


def _same(said, student):
    try:
        return bool(said) and student_number(said) == student
    except ValueError:
        return False


def _lists(course, student):
    """Take their lines out of the lists that others stand in too."""
    gone = []
    for name in ("roster.csv", "practical.csv", CODES_FILE):
        gone += _without(course, course.folder / name, student)
    arrivals = read_list(course)
    theirs = [one for one in arrivals if _is_theirs(one, student)]
    rest = [one for one in arrivals if one not in theirs]
    if theirs:
        write_list(course, rest)
        gone += [f"arrived/{name}: their lines" for name in ("list.json", "list.csv")]
        others = {one.kept for one in rest}
        for kept in sorted({one.kept for one in theirs if one.kept} - others):
            gone += _delete(course, course.arrived / kept)
    for file in sorted(course.reports.glob("*-changes.csv")):
        gone += _without_rows(course, file, student)
    asked = sorted(course.folder.glob("keys/*/*.numbers.json"))
    sets = [file.parent.name for file in asked if _without_numbers(file, student)]
    return gone + [f"keys/{set_id}: their numbers" for set_id in dict.fromkeys(sets)]


def _without(course, file, student):
    """A table with a column student_number, without their line."""
    if not file.is_file():
        return []
    table = read_table(file, "student_number,name")
    rows = [cells for line, cells in table.rows if student_on(cells, line)[0] != student]
    if len(rows) == len(table.rows):
        return []
    lines = [[cells.get(head, "") for head in table.heads] for cells in rows]
    write_safely(file, sheet_as_csv([table.heads, *lines]))
    return [f"{file.name}: their line"]


def _without_rows(course, file, student):
    """A list of changes without their lines; the second column says whose a line is."""
    text = file.read_bytes().decode("utf-8-sig", "replace")
    rows = [row for row in csv.reader(io.StringIO(text, newline="")) if row]
    rest = [row for row in rows if len(row) < 2 or row[1] != student]
    if len(rest) == len(rows):
        return []
    write_safely(file, "\ufeff" + sheet_as_csv(rest))
    return [f"reports/{file.name}: their lines"]


def _without_numbers(file, student):
    """Take what they were asked out of a list of numbers; whether they stood in it."""
    read = json.loads(file.read_text(encoding="utf-8"))
    if student not in read:
        return False
    write_safely(file, json_text({one: read[one] for one in read if one != student}))
    return True


def _made_again(course, folder, student, name):
    """Sheets and pages that name them; they are written anew without them."""
    gone = []
    for place in still_named(course, student, name):
        if place.startswith(f"{folder}/"):
            gone += _delete(course, course.folder / place)
    return gone


def _gradebook(course, student):
    """Their rows out of the gradebook, and out of the bytes of its file."""
    if course.gradebook_file is not None and not course.gradebook_file.is_file():
        return 0
    with connected(course) as book:
        count = book.forget(student)
    if course.gradebook_file is not None:
        # A deleted row stays in the file's free pages until it is packed anew.
        with closing(sqlite3.connect(course.gradebook_file)) as packed:
            packed.execute("VACUUM")
    return count


def _delete(course, path: Path):
    """Delete a file or a folder; empty parents go with it."""
    if not os.path.lexists(path):
        return []
    place = path.relative_to(course.folder).as_posix()
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path)
    else:
        path.unlink()
    return [place]
