"""Lines of the course file changed by a form: its comments and its order stay as they are.

What a form types goes through the same reading as the file. A line that is wrong changes nothing,
and is said by its name with what to write.
"""

import re
import tomllib

import tomlkit

from coursework.classes.course import open_course
from coursework.classes.names import typed_name
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.classes.roster import refuse_odd_numbers
from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from coursework.safe_files import keep_earlier, write_safely
from kitchenmath.errors import Unreadable
from kitchenmath.practice import student_number
from kitchenmath.typed.numbers import typed_number

__all__ = ["add_student", "change_lines", "remove_student", "rename_student", "typed_grades",
           "typed_value", "written_lines"]  # fmt: skip

GRADE = re.compile(r"(?P<name>[^=;]+)=\s*(?P<percent>[0-9]+([.,][0-9]+)?)\s*([;,]\s*|$)")
WORDS = {"true": True, "false": False, "yes": True, "no": False}


def typed_value(text):
    """What was typed into a form, as the course file has it; None takes the line out.

    Parameters
    ----------
    text : str

    Returns
    -------
    None, bool, int, float or str

    Examples
    --------
    >>> [typed_value(one) for one in ("", "2,5", "7", "yes", "2026-10-05 09:00")]
    [None, 2.5, 7, True, '2026-10-05 09:00']
    """
    text = text.strip()
    if not text:
        return None
    try:
        value = typed_number(text)
    except Unreadable:
        return WORDS.get(text.lower(), text)
    return int(value) if value.is_integer() else value


def typed_grades(text):
    """A class's grades as typed into a form: a name and a percent each.

    Parameters
    ----------
    text : str

    Returns
    -------
    dict of str to float
        For the course file's table `grades`; empty where nothing is typed.

    Raises
    ------
    CourseError

    Examples
    --------
    >>> typed_grades("A = 80, B+ = 67,5")
    {'A': 80, 'B+': 67.5}
    >>> typed_grades("1,3 = 90; 2,0 = 75")
    {'1,3': 90, '2,0': 75}
    """
    found, rest = {}, text.strip()
    while rest:
        one = GRADE.match(rest)
        if one is None or one["name"].strip() in found:
            raise CourseError(
                f"grades: type each once, with the percent from which on it is given, as in "
                f"A = 80; B = 65; C = 40. “{rest}” came."
            )
        found[one["name"].strip()] = typed_value(one["percent"])
        rest = rest[one.end() :]
    return found


def written_lines(course, table):
    """What the course file itself says in one table, without what is usual.

    Parameters
    ----------
    course : Course
    table : tuple of str
        Its names, as for `change_lines`.

    Returns
    -------
    dict
        Value by line; empty where there is no such table.
    """
    lines = tomllib.loads((course.folder / "course.toml").read_text(encoding="utf-8-sig"))
    for name in table:
        lines = lines.get(name, {})
    return lines


def change_lines(course, tables):
    """Change, add or take out lines of the course file: all of them, or none.

    Parameters
    ----------
    course : Course
    tables : dict of tuple to dict
        By the names of a table, as ("sets", "04-buy-enough"), () for the top: a value by line;
        None takes a line out, so that the usual holds.

    Returns
    -------
    Course
        As it is then.

    Raises
    ------
    CourseError
        When a value is odd, or another step is at work; then nothing is changed.
    """
    with one_at_a_time(course, "changing the course file"):
        file = course.folder / "course.toml"
        document = tomlkit.parse(file.read_text(encoding="utf-8-sig"))
        for table, values in tables.items():
            _change_table(document, table, values)
        text = tomlkit.dumps(document)
        changed = open_course(course.folder, text)
        keep_earlier(course.folder, file)
        write_safely(file, text)
        return changed


def _change_table(document, table, values):
    lines = _table(document, table, any(one is not None for one in values.values()))
    for name, value in values.items():
        if value is not None:
            lines[name] = value
        elif name in lines:
            lines.remove(name)


def _table(document, names, make):
    """A table of the file, made where it is wanted and not there yet."""
    here = document
    for place, name in enumerate(names):
        if name not in here:
            if not make:
                return {}
            here[name] = tomlkit.table(is_super_table=place < len(names) - 1)
        here = here[name]
    return here


def add_student(course, number, name):
    """Put a student on the roster: a late joiner, too.

    Parameters
    ----------
    course : Course
    number, name : str

    Raises
    ------
    CourseError
        When the number is odd or taken, or the name is empty.
    """
    number = student_number(number)
    if number in course.roster:
        raise CourseError(f"student number: {number} is {course.roster[number]}'s already.")
    _write_roster(course, {**course.roster, number: typed_name(name, "the student's name")})


def rename_student(course, number, name):
    """Give a student on the roster another name; the number stays.

    Parameters
    ----------
    course : Course
    number, name : str

    Raises
    ------
    CourseError
    """
    if number not in course.roster:
        raise CourseError(f"student number: {number} is not on the roster.")
    _write_roster(course, {**course.roster, number: typed_name(name, "the student's name")})


def remove_student(course, number):
    """Take a student off the roster who has handed in nothing.

    Parameters
    ----------
    course : Course
    number : str

    Raises
    ------
    CourseError
        When work of theirs is there: then only erasing takes all of it.
    """
    if number not in course.roster:
        raise CourseError(f"student number: {number} is not on the roster.")
    if (course.folder / "submitted" / number).exists() or _is_marked(course, number):
        raise CourseError(
            f"{course.roster[number]} ({number}) has handed in work. To take all of it away, erase "
            "the student."
        )
    _write_roster(course, {who: name for who, name in course.roster.items() if who != number})


def _is_marked(course, number):
    """Whether marks of theirs are there; they stay where the copies of their work are gone."""
    return any(course.folder.glob(f"marks/*/{number}.json"))


def _write_roster(course, roster):
    refuse_odd_numbers(roster)
    with one_at_a_time(course, "changing the roster"):
        file = course.folder / "roster.csv"
        keep_earlier(course.folder, file)
        rows = [["student_number", "name"], *map(list, roster.items())]
        write_safely(file, sheet_as_csv(rows))
