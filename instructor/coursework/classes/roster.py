"""Tables of an instructor: the roster, and any other CSV with a column student_number.

They may come from a spreadsheet of any country: commas, semicolons or tabs between columns,
UTF-8, UTF-16 or the Western European code page.
"""

import csv
import io
from dataclasses import dataclass

from coursework.csv_sheets import unguarded
from coursework.errors import CourseError
from kitchenmath.errors import KitchenError
from kitchenmath.practice import student_number

__all__ = ["Table", "read_roster", "read_table", "refuse_odd_numbers", "student_on"]


@dataclass(frozen=True)
class Table:
    """A CSV as it was read.

    Attributes
    ----------
    columns : list of str
        In small letters.
    rows : list of (int, dict)
        The line of the file on which a row ends, and its cells by column.
    """

    columns: list
    rows: list


def read_roster(file):
    """The roster: a CSV with the columns student_number and name.

    Parameters
    ----------
    file : Path

    Returns
    -------
    dict of str to str
        Student number (in its one spelling) to name.

    Raises
    ------
    CourseError
        Naming every line that is odd, so that all can be mended at once.
    """
    if not file.is_file():
        raise CourseError(f"there is no roster: put {file.name} into “{file.parent.name}”.")
    roster, odd = {}, []
    for line, person in read_table(file, "student_number,name").rows:
        odd += _add_to_roster(roster, person, line)
    if odd:
        raise CourseError(f"{file.name}: " + " ".join(odd))
    if not roster:
        raise CourseError(f"{file.name} has no line for a student below its first line.")
    return roster


def refuse_odd_numbers(roster):
    """Refuse a roster before anything is written, so that trying again starts from nothing.

    Parameters
    ----------
    roster : dict of str to str

    Raises
    ------
    CourseError
    """
    if not roster:
        raise CourseError("roster: there is no student on it.")
    for number in roster:
        if student_number(number) != number:
            raise CourseError(f"roster: write “{number}” as {student_number(number)}.")


def read_table(file, first_line):
    """A CSV with a column student_number, whichever program wrote it.

    Parameters
    ----------
    file : Path
    first_line : str
        What a first line may look like, for the sentence where it is missing.

    Returns
    -------
    Table
        Without its empty lines.

    Raises
    ------
    CourseError
        When the file is no CSV, or the column is missing.
    """
    try:
        raw = file.read_bytes()
    except OSError as error:
        raise CourseError(f"“{file}” cannot be read: {error.strerror or error}.") from None
    if raw.startswith((b"PK\x03\x04", b"\xd0\xcf\x11\xe0")):
        raise CourseError(f"{file.name} is a spreadsheet: save it as CSV there, and take that.")
    text = _text_of(raw)
    first = text.partition("\n")[0]
    delimiter = max(",;\t", key=first.count)
    rows = []
    try:
        reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
        columns = [column.strip().lower() for column in next(reader, [])]
        if "student_number" not in columns:
            raise CourseError(
                f'{file.name} needs a first line "{first_line}" and a line for each student.'
            )
        for row in reader:
            if any(cell.strip() for cell in row):
                typed = [unguarded(cell.strip()) for cell in row]
                cells = dict(zip(columns, typed, strict=False))
                rows.append((reader.line_num, cells))
    except csv.Error as error:
        raise CourseError(f"{file.name}, line {reader.line_num}: {error}.") from None
    return Table(columns, rows)


def student_on(cells, line):
    """Whose line of a table it is.

    Parameters
    ----------
    cells : dict of str to str
    line : int

    Returns
    -------
    str
        The student number in its one spelling; empty where there is none.
    str
        What is odd about it, as a sentence; empty where nothing is.
    """
    if not cells.get("student_number"):
        return "", f"line {line}: the student number is missing."
    try:
        return student_number(cells["student_number"]), ""
    except KitchenError as error:
        return "", f"line {line}: {error}"


def _text_of(raw):
    """The text of a table, whichever program wrote it."""
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return raw.decode("utf-16", "replace")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return raw.decode("cp1252", "replace")


def _add_to_roster(roster, person, line):
    """Put one line on the roster; what is odd about it, in a list of sentences."""
    number, odd = student_on(person, line)
    if odd:
        return [odd]
    if number in roster:
        return [f"line {line}: {number} stands twice."]
    roster[number] = person.get("name") or number
    return []
