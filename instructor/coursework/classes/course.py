"""A class on disk: its course file, its roster and the folders of its work.

The folders follow nbgrader's layout, so that its own marking page opens on them. What is ours
lies beside them: `arrived` (hand-ins as they came), `marks` (what was found), `reports`.
"""

import json
import tomllib
from dataclasses import dataclass, field, fields
from pathlib import Path

from coursework.classes.college import COLLEGE_LINES, CollegeLines, college_of
from coursework.classes.copy_time import COPY_LINES, CopyLines
from coursework.classes.course_file import (
    AboveZero,
    Country,
    Percent,
    Text,
    Whole,
    YesNo,
    read_settings,
)
from coursework.classes.names import typed_name, typed_term
from coursework.classes.policy import (
    POLICY_LINES,
    MarkBook,
    Policy,
    PracticalLines,
    SetRule,
    policy_of,
)
from coursework.classes.roster import read_roster, refuse_odd_numbers
from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from kitchenmath.conventions import OURS, Conventions
from kitchenmath.practice.own_numbers import STUDENT_NUMBER

__all__ = ["CLASSES", "INSTRUCTOR", "KEYS", "Bounds", "Course", "CourseError", "new_course",
           "open_course", "read_roster"]  # fmt: skip

INSTRUCTOR = Path(__file__).resolve().parents[2]
KEYS = INSTRUCTOR / "keys"
CLASSES = INSTRUCTOR / "classes"


@dataclass(frozen=True)
class Bounds:
    """What one hand-in may use in the student's room. Each names itself when it strikes."""

    seconds: AboveZero = 60.0  # for the whole notebook
    cell_seconds: AboveZero = 15.0
    memory_bytes: Whole = 1_000_000_000
    output_bytes: Whole = 1_000_000
    disk_bytes: Whole = 50_000_000
    files: Whole = 500
    open_files: Whole = 64
    threads: Whole = 32
    figures: Whole = 20  # in one cell
    answer_bytes: Whole = 20_000  # the text of one answer
    own_cells: Whole = 200  # a student's own code cells
    file_bytes: Whole = 60_000_000  # the file that was handed in, with its pictures


@dataclass(frozen=True)
class Settings:
    """The course file: its lines and tables, and no others."""

    name: Text
    term: Text
    gradebook: str = ""
    student_codes: YesNo = False
    country: Country = ""
    numbers_like: str = ""
    college: CollegeLines = field(default_factory=CollegeLines)
    bounds: Bounds = field(default_factory=Bounds)
    mark_book: MarkBook = field(default_factory=MarkBook)
    sets: dict[str, SetRule] = field(default_factory=dict)
    practical: dict[str, PracticalLines] = field(default_factory=dict)
    grades: dict[str, Percent] = field(default_factory=dict)
    copies: CopyLines = field(default_factory=CopyLines)


@dataclass(frozen=True)
class Course:
    """One class.

    Attributes
    ----------
    folder : Path
    name, term : str
        The term goes into every student's numbers: change it and the numbers change.
    roster : dict of str to str
        Student number to name.
    bounds : Bounds
    policy : Policy
        How the term's mark book counts.
    student_codes : bool
        Whether a set asks for a code that each student was given.
    country : str
        Two letters, or "": how tables for the office are written.
    numbers_like : str
        One of the class's student numbers, so that a set can say when one is written otherwise.
    college : Conventions
        By which sets are drawn, limits quoted and prices written.
    copies : CopyLines
        How long copies of students' work are kept.
    """

    folder: Path
    name: str
    term: str
    roster: dict
    bounds: Bounds = field(default_factory=Bounds)
    policy: Policy = field(default_factory=Policy)
    gradebook_address: str = ""
    student_codes: bool = False
    country: str = ""
    numbers_like: str = ""
    college: Conventions = OURS
    copies: CopyLines = field(default_factory=CopyLines)

    @property
    def gradebook(self):
        """The address of nbgrader's gradebook: the course file's, or a file of the class."""
        file = self.gradebook_file
        return f"sqlite:///{file.as_posix()}" if file else self.gradebook_address

    @property
    def gradebook_file(self):
        """The gradebook's file, or None where a database server has it."""
        return None if self.gradebook_address else (self.folder / "gradebook.db").resolve()

    def key(self, set_id):
        """The key as it was when the set was handed out: the one that marks this class."""
        return self.folder / "source" / set_id / f"{set_id}.ipynb"

    def release(self, set_id):
        """The notebook handed out for a set."""
        return self.folder / "release" / set_id / f"{set_id}.ipynb"

    def submitted(self, set_id, student):
        """The hand-in that counts for a student."""
        return self.folder / "submitted" / student / set_id / f"{set_id}.ipynb"

    def autograded(self, set_id, student):
        """Our copy with the student's answers, as it was marked."""
        return self.folder / "autograded" / student / set_id / f"{set_id}.ipynb"

    def feedback(self, set_id, student):
        """The page that goes back to a student."""
        return self.folder / "feedback" / student / set_id / f"{set_id}.html"

    def marks(self, set_id, student):
        """What marking found, as JSON."""
        return self.folder / "marks" / set_id / f"{student}.json"

    @property
    def arrived(self):
        """Hand-ins as they came, and the list of what became of each."""
        return self.folder / "arrived"

    @property
    def reports(self):
        """Mark sheets and class pages."""
        return self.folder / "reports"

    def sets_handed_out(self):
        """Ids of the sets that were handed out, in order."""
        notebooks = self.folder.glob("release/*/*.ipynb")
        return sorted(path.stem for path in notebooks if path.stem == path.parent.name)


COURSE_FILE = """\
# The course file of one class. Change a line, save, and run the desk again.
name = {name}
# The term is part of every student's numbers. Do not change it once a set is handed out.
term = "{term}"
# With true, a set asks each student for a code of their own: see codes.csv after handing out.
# student_codes = false
# The class's country in two letters: tables for the office are written in its way, in Germany
# (DE) with semicolons and decimal commas. Without this line: commas, and decimal points.
# country = "GB"
# One of your student numbers; then a set's first cell says when a number is written otherwise.
# numbers_like = "AB-1234"

# What one hand-in may use while the student's own cells run. Leave a line out for the usual.
# There are: {bounds}.
[bounds]
seconds = 60
cell_seconds = 15
"""


BOUNDS = ", ".join(one.name for one in fields(Bounds))


def new_course(folder, name, term, roster):
    """Make a class's folder with its course file and a copy of the roster.

    Parameters
    ----------
    folder : Path
        Must not hold a class yet.
    name, term : str
    roster : dict of str to str
        Student number to name.

    Returns
    -------
    Course

    Raises
    ------
    CourseError
    """
    folder = Path(folder)
    if (folder / "course.toml").exists():
        raise CourseError(
            f"“{folder.name}” already holds a class: open it, or name another folder."
        )
    name, term = typed_name(name), typed_term(term)
    refuse_odd_numbers(roster)
    folder.mkdir(parents=True, exist_ok=True)
    rows = [["student_number", "name"], *map(list, roster.items())]
    (folder / "roster.csv").write_text(sheet_as_csv(rows), encoding="utf-8", newline="")
    quoted = json.dumps(name, ensure_ascii=False)  # a basic string of TOML too
    lines = COURSE_FILE.format(name=quoted, term=term, bounds=BOUNDS) + COLLEGE_LINES
    lines += POLICY_LINES + COPY_LINES
    (folder / "course.toml").write_text(lines, encoding="utf-8")
    return open_course(folder)


def open_course(folder, text=None):
    """The class in a folder.

    Parameters
    ----------
    folder : Path
    text : str, optional
        Of a course file, in place of the one that lies there: to try a change before it is made.

    Returns
    -------
    Course

    Raises
    ------
    CourseError
        With what is missing or odd in course file or roster, and how to mend it.
    """
    folder = Path(folder)
    settings = read_settings(_lines(folder, text), Settings)
    name = typed_name(settings.name, "course.toml: name")
    term = typed_term(settings.term, "course.toml: term")
    if settings.numbers_like and not STUDENT_NUMBER.fullmatch(settings.numbers_like):
        raise CourseError(f"course.toml: numbers_like: “{settings.numbers_like}” is no student "
                          'number: type one of your class, as in "BH-1001".')  # fmt: skip
    if settings.gradebook and "://" not in settings.gradebook:
        raise CourseError(
            'course.toml: gradebook needs an address, as in "postgresql+psycopg://host/marks".'
        )
    return Course(
        folder,
        name,
        term,
        read_roster(folder / "roster.csv"),
        settings.bounds,
        policy_of(settings.mark_book, settings.sets, settings.practical, settings.grades),
        settings.gradebook,
        settings.student_codes,
        settings.country,
        settings.numbers_like,
        college_of(settings.college, settings.country),
        settings.copies,
    )


def _lines(folder, text):
    """What stands in the course file, as TOML has it."""
    file = folder / "course.toml"
    if not file.is_file():
        raise CourseError(f"“{folder}” holds no class: there is no course.toml in it.")
    try:
        return tomllib.loads(file.read_text(encoding="utf-8-sig") if text is None else text)
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise CourseError(f"course.toml cannot be read: {error}.") from None
