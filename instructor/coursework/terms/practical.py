"""Practical marks: what the instructor gave at the stove and the board, from a CSV.

A line or a mark that is odd is named and left open; it holds up nobody else's.
"""

from collections import Counter
from dataclasses import dataclass

from coursework.arriving.proposals import same_name, without_zeros
from coursework.classes.roster import COLUMNS, read_table, student_on
from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from coursework.safe_files import keep_earlier, write_safely
from coursework.terms import practical_words as words
from coursework.words import number
from kitchenmath.errors import Unreadable
from kitchenmath.typed.numbers import typed_number
from kitchenmath.typed.opened import is_office, rows_of

__all__ = [
    "NAME",
    "Practicals",
    "enter_practicals",
    "give_practical",
    "practical_marks",
    "take_practical",
]

NAME = "practical.csv"
SHOWN = 40  # characters of a cell in a sentence about it


@dataclass(frozen=True)
class Practicals:
    """What a CSV of practical marks says.

    Attributes
    ----------
    marks : dict of (str, str) to float
        By student and name of the practical mark; what is open is not in it.
    odd : tuple of str
        What to look at, a sentence each.
    """

    marks: dict
    odd: tuple


def take_practical(course, file):
    """Keep a CSV of practical marks with the class; an earlier one goes to `kept`.

    A mark that was there before stays, where the table has no line for its student or no column
    for it: a table of one group takes nothing from another, nor from what was typed at the desk.

    Parameters
    ----------
    course : Course
    file : Path

    Returns
    -------
    Practicals

    Raises
    ------
    CourseError
        When the file is no CSV with a column student_number, or the course file states no
        practical marks.
    """
    names = ", ".join(course.policy.practical)
    if not names:
        raise CourseError(
            "course.toml states no practical marks: write a section for each, such as "
            '[practical."knife skills"] with a line out_of = 20.'
        )
    before = practical_marks(course).marks
    found, target = _read(course, file, before), course.folder / NAME
    raw = _as_kept(file)
    if not target.is_file() or target.read_bytes() != raw:
        if target.is_file():
            keep_earlier(course.folder, target)
        write_safely(target, raw)
    if found.marks != _read(course, target).marks:
        _write(course, found.marks)  # and the table as it came goes to `kept`
    return found


def give_practical(course, name, typed):
    """Enter one practical mark for many students, as typed at the desk; the others stay.

    Parameters
    ----------
    course : Course
    name : str
        Of the practical mark.
    typed : dict of str to str
        By student; "" leaves the mark open.

    Returns
    -------
    int
        How many have this mark now.

    Raises
    ------
    CourseError
        Naming each student whose mark is odd; then nothing is entered.
    """
    practical = course.policy.practical
    if name not in practical:
        raise CourseError(f"practical mark: there is no “{name}” in the course file.")
    marks, odd = dict(practical_marks(course).marks), []
    for student, text in typed.items():
        mark, remark = _mark(text.strip(), practical[name].out_of)
        if mark is None and text.strip():
            odd.append(f"{_named(course, student)}: {remark}")
        marks[student, name] = mark
    if odd:
        raise CourseError(" ".join(odd))
    _write(course, marks)
    return sum(marks.get((student, name)) is not None for student in course.roster)


def enter_practicals(course, marks):
    """Enter practical marks that are known to be sound; all others stay.

    Parameters
    ----------
    course : Course
    marks : dict of (str, str) to float
        By student and name of the practical mark.
    """
    _write(course, practical_marks(course).marks | marks)


def _write(course, marks):
    practical, target = course.policy.practical, course.folder / NAME
    rows = [["student_number", "name", *practical]]
    for student, named in course.roster.items():
        cells = [marks.get((student, each)) for each in practical]
        rows.append([student, named, *("" if one is None else number(one) for one in cells)])
    keep_earlier(course.folder, target)
    write_safely(target, sheet_as_csv(rows))


def practical_marks(course):
    """The practical marks as they were taken last.

    Parameters
    ----------
    course : Course

    Returns
    -------
    Practicals

    Raises
    ------
    CourseError
        When the kept file cannot be read any more.
    """
    file = course.folder / NAME
    if file.is_file() and course.policy.practical:
        return _read(course, file)
    odd = (words.NONE_CAME,) if course.policy.practical else ()
    return Practicals({}, odd)


def _as_kept(file):
    """The table as it came; an office's own file as the CSV that it would be saved as."""
    raw = file.read_bytes()
    if not is_office(raw):
        return raw
    (_, rows), *_ = rows_of(file.name, raw)
    return sheet_as_csv([row for _, row in rows]).encode("utf-8-sig")


def _read(course, file, before=()):
    """A table's marks, and those of before that it says nothing about."""
    practical = course.policy.practical
    table = read_table(file, ",".join(["student_number", *practical]), practical)
    doubled = [head for head in table.doubled() if head in practical]
    if doubled:
        raise CourseError(f"{file.name}: the column “{doubled[0]}” stands twice. Take one out.")
    students, odd_lines = _students(course, table)
    marks, odd_marks = _marks(students, practical, table.heads)
    stay = {
        (student, name): before[student, name]
        for student, name in before
        if student in course.roster and (student not in students or name not in table.heads)
    }
    odd = _odd_columns(practical, table.heads) + odd_lines + odd_marks
    odd += _without_line(course, students, {student for student, _ in stay})
    return Practicals(stay | marks, tuple(words.OF_TABLE.format(each=each) for each in odd))


def _marks(students, practical, heads):
    """The marks of each line, and what is odd about one, said once for all its lines."""
    marks, remarks = {}, {}
    for student, (line, cells) in students.items():
        for name in filter(heads.count, practical):
            mark, remark = _mark(cells.get(name, ""), practical[name].out_of)
            if mark is not None:
                marks[student, name] = mark
            if remark:
                remarks.setdefault((name, remark), []).append(line)
    odd = [f"{name}, {_lines(lines)}: {remark}" for (name, remark), lines in remarks.items()]
    return marks, odd


def _without_line(course, students, there):
    """Who has no line that counts: their marks are open, or stay where they were there before."""
    missing, odd = [student for student in course.roster if student not in students], []
    for stands, those in (("open", there.isdisjoint), ("as they were", there.issuperset)):
        names = ", ".join(_named(course, one) for one in missing if those([one]))
        odd += [words.NO_LINE.format(words=stands, names=names)] if names else []
    return odd


def _students(course, table):
    """Each student's line and cells, and what is odd about whose lines they are."""
    found, odd, of_each = {}, [], Counter()
    for line, cells in table.rows:
        student, trouble = student_on(cells, line)
        meant = _lost_its_zeros(course.roster, student, cells.get("name", ""))
        if meant:
            name = course.roster[meant]
            odd.append(words.LOST_ZEROS.format(line=line, student=student, name=name, meant=meant))
            student = meant
        if trouble:
            odd.append(trouble)
        elif student not in course.roster:
            name = f" ({cells['name'][:SHOWN]})" if cells.get("name") else ""
            odd.append(words.STRANGER.format(line=line, student=f"{student}{name}"))
        else:
            of_each[student] += 1
            if of_each[student] > 1:
                odd.append(words.DOUBLED.format(line=line, student=student))
            found[student] = line, cells
    return {who: found[who] for who in found if of_each[who] == 1}, odd


def _lost_its_zeros(roster, student, name):
    """The student on the roster whose number this is without its zeros, by the same name; or ""."""
    if not student or student in roster:
        return ""
    meant = [
        one
        for one, named in roster.items()
        if without_zeros(one) == without_zeros(student) and same_name(named, name)
    ]
    return meant[0] if len(meant) == 1 else ""


def _odd_columns(practical, heads):
    """Columns that are missing, and those that nobody asked for."""
    odd = [words.NO_COLUMN.format(name=name) for name in practical if name not in heads]
    known = {"", *COLUMNS, *practical}
    odd += [
        words.UNKNOWN_COLUMN.format(head=head[:SHOWN])
        for head in dict.fromkeys(heads)
        if head not in known
    ]
    return odd


def _mark(text, out_of):
    """A mark, or None where it is open; and what is odd about it, or nothing."""
    if not text:
        return None, words.BLANK
    try:
        mark = typed_number(text)
    except Unreadable as error:
        return None, words.LEFT_OPEN.format(why=error)
    if mark < 0:
        return None, words.BELOW.format(text=text[:SHOWN])
    if mark > out_of:
        return None, words.ABOVE.format(text=text[:SHOWN], out_of=number(out_of))
    return mark, words.COMMA if "," in text else ""


def _lines(lines):
    *others, last = map(str, lines)
    return f"lines {', '.join(others)} and {last}" if others else f"line {last}"


def _named(course, student):
    name = course.roster[student]
    return student if name == student else f"{name} ({student})"
