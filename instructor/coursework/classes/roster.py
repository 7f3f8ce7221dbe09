"""Tables of an instructor: the roster, and any other table with a column for student numbers."""

from dataclasses import replace

from coursework.classes.names import typed_name
from coursework.classes.words import NO_NUMBER
from coursework.csv_sheets import unguarded
from coursework.errors import CourseError
from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.practice import student_number
from kitchenmath.typed.spreadsheet import read_spreadsheet

__all__ = ["read_roster", "read_table", "refuse_odd_numbers", "roster_of", "student_on"]

# How colleges head these columns. "No." and "number" count lines as often as students.
COLUMNS = {
    "student_number": ("student number", "student no", "student id", "student nr", "student code",
                       "learner number", "learner id", "matriculation number", "matric no",
                       "registration number", "id number", "id"),
    "name": ("name", "full name", "student name", "student", "learner"),
    "given name": ("given name", "given names", "first name", "first names", "forename"),
    "family name": ("family name", "last name", "surname"),
}  # fmt: skip


def read_roster(file):
    """The roster: a table with a column for student numbers, and one or two for names.

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
    return roster_of(file.name, read_table(file, "student_number,name").rows)


def roster_of(file_name, rows):
    """The roster that the rows of a table make.

    Parameters
    ----------
    file_name : str
    rows : iterable of (int, dict of str to str)
        Each with its line; cells by the names of `COLUMNS`.

    Returns
    -------
    dict of str to str

    Raises
    ------
    CourseError
        Naming every line that is odd.
    """
    roster, odd = {}, []
    for line, person in rows:
        odd += _add_to_roster(roster, person, line)
    if odd:
        raise CourseError(f"{file_name}: " + " ".join(odd))
    if not roster:
        raise CourseError(f"{file_name} has no line for a student below its heads.")
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


def read_table(file, heads, columns=()):
    """A table with a column for student numbers, whichever program wrote it.

    Parameters
    ----------
    file : Path, or (str, bytes)
        Or its name and what is in it.
    heads : str
        What the line of heads may look like, for the sentence where it is missing.
    columns : iterable of str
        Further ones, to be found however they are spelled.

    Returns
    -------
    Spreadsheet

    Raises
    ------
    CourseError
        When the file is no table, or the column is missing.
    """
    asked = COLUMNS | {name: (name,) for name in columns}
    try:
        table = read_spreadsheet(file, asked, ["student_number"], heads)
    except Unreadable as error:
        raise CourseError(str(error)) from None
    bare = [
        (line, {head: unguarded(cell) for head, cell in cells.items()})
        for line, cells in table.rows
    ]
    return replace(table, rows=tuple(bare))


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
        return "", NO_NUMBER.format(line=line)
    try:
        return student_number(cells["student_number"]), ""
    except KitchenError as error:
        return "", f"line {line}: {error}"


def _add_to_roster(roster, person, line):
    """Put one line on the roster; what is odd about it, in a list of sentences."""
    number, odd = student_on(person, line)
    if odd:
        return [odd]
    if number in roster:
        return [f"line {line}: {number} stands twice."]
    two = [person.get(one, "") for one in ("given name", "family name")]
    name = person.get("name") or " ".join(filter(None, two)) or number
    try:
        roster[number] = typed_name(name)
    except CourseError as error:
        return [f"line {line}: {error}"]
    return []
