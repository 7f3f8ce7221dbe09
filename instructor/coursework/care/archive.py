"""A class as one file: backed up, restored on another machine, and a student's own part of it."""

import json
import shutil
import sqlite3
import tempfile
import zipfile
from contextlib import closing, contextmanager
from datetime import datetime
from pathlib import Path

from coursework.arriving.arrivals import read_list
from coursework.classes.course import CLASSES, open_course
from coursework.classes.names import name_for_files
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from coursework.gradebook.points import all_marks
from coursework.records.trays import TRAYS
from coursework.safe_files import HALF, half_of
from coursework.sets.hand_out import NBGRADER_FILE, write_nbgrader_config
from kitchenmath.practice import student_number

KIND, VERSION = "a class of the kitchen teaching kit", 1
ABOUT = "about-this-backup.json"
LEFT_OUT = (".at-work",)  # only says who is at work in it now
GRADEBOOK = "gradebook.db"
MOST_BYTES = 20_000_000_000  # unpacked; a class of 300 with all sets has 2 GB


def back_up(course, target=None, progress=None):
    """Write a whole class into one zip, with a checked copy of its gradebook.

    Parameters
    ----------
    course : Course
    target : Path, optional
        A folder or a file; by default beside the classes, named by class and time.
    progress : callable, optional
        Called with (done, total, text).

    Returns
    -------
    Path

    Raises
    ------
    CourseError
        When another step is at work in the class, the gradebook lies on a database server, or
        the disk refuses.
    """
    if course.gradebook_file is None:
        raise CourseError(
            "the gradebook lies on a database server: back it up there. The class's folder can be "
            "copied as it is."
        )
    stamp = datetime.now().strftime("%Y-%m-%d-%H%M%S")
    target = Path(target) if target else CLASSES
    file = target / f"{course.folder.name}-{stamp}.zip" if target.is_dir() else target
    with (
        _whole(file) as half,
        one_at_a_time(course, "backing up"),
        tempfile.TemporaryDirectory() as aside,
    ):
        _pack(course, half, Path(aside), progress)
    return file


@contextmanager
def _whole(file):
    """A place beside a file to write it at; only what was written whole takes its name."""
    half = half_of(file)
    try:
        yield half
        half.replace(file)
    except OSError as error:
        raise CourseError(f"“{file.name}” cannot be written: {error.strerror or error}.") from None
    finally:
        half.unlink(missing_ok=True)


def _pack(course, half, aside, progress):
    files = backed_up(course)
    copy = _copied(course.gradebook_file, aside / GRADEBOOK)
    about = {"kind": KIND, "version": VERSION, "class": course.folder.name, "files": len(files)}
    with zipfile.ZipFile(half, "w", zipfile.ZIP_DEFLATED, allowZip64=True) as packed:
        packed.writestr(ABOUT, json.dumps(about, indent=1) + "\n")
        for done, path in enumerate(files, start=1):
            place = path.relative_to(course.folder).as_posix()
            packed.write(copy if place == GRADEBOOK and copy else path, f"class/{place}")
            if progress and (done % 50 == 0 or done == len(files)):
                progress(done, len(files), place)


def backed_up(course):
    """The files of a class that go into its backup, in order.

    Parameters
    ----------
    course : Course

    Returns
    -------
    list of Path
    """
    return [path for path in sorted(course.folder.rglob("*")) if _belongs(course, path)]


def _belongs(course, path):
    """What is backed up: regular files, without what is half written and SQLite's own notes."""
    odd = path.is_symlink() or not path.is_file() or path.name.startswith(HALF)
    notes = path.parent == course.folder and path.name.startswith(f"{GRADEBOOK}-")
    return not (odd or notes or path.name in LEFT_OUT)


def _copied(gradebook, target):
    """A copy of the gradebook as it stands, whole; None where there is none yet."""
    if not gradebook.is_file():
        return None
    with (
        closing(sqlite3.connect(f"{gradebook.absolute().as_uri()}?mode=rw", uri=True)) as old,
        closing(sqlite3.connect(target)) as new,
    ):
        old.backup(new)
        new.execute("PRAGMA journal_mode=DELETE")
        said = [row[0] for row in new.execute("PRAGMA integrity_check(3)")]
    if said != ["ok"]:
        raise CourseError(f"gradebook.db is damaged ({'; '.join(said)}): nothing was backed up.")
    return target


def restore(file, name=None, classes=CLASSES, progress=None):
    """Unpack a class that was backed up, on this machine or another.

    Parameters
    ----------
    file : Path
    name : str, optional
        The folder of the restored class; the one it had by default.
    classes : Path
        The folder of all classes.
    progress : callable, optional

    Returns
    -------
    Course

    Raises
    ------
    CourseError
        When the file is no backup of the kit, is damaged, or the class is there already: a class
        is never written over.
    """
    try:
        with zipfile.ZipFile(file) as packed:
            about = _about(packed, file)
            target = Path(classes) / name_for_files(name or about["class"])
            if target.exists():
                raise CourseError(
                    f"“{target.name}” is there already, and a class is never written over. "
                    "Restore it under another name."
                )
            half = half_of(target)
            shutil.rmtree(half, ignore_errors=True)
            _unpack(packed, half, progress)
            open_course(half)  # it must open before it takes its place
            half.rename(target)
    except (OSError, zipfile.BadZipFile, RuntimeError, ValueError) as error:
        if isinstance(error, CourseError):
            raise
        raise CourseError(f"“{Path(file).name}” cannot be read: {error}.") from None
    course = open_course(target)
    if (target / NBGRADER_FILE).is_file():
        write_nbgrader_config(course)  # it names the folder, which is another one here
    return course


def _about(packed, file):
    try:
        about = json.loads(packed.read(ABOUT))
        known = about["kind"] == KIND and str(about["class"])
    except (KeyError, ValueError, TypeError):
        known = False
    if not known:
        raise CourseError(f"“{Path(file).name}” is no backup of a class.")
    if about.get("version") != VERSION:
        raise CourseError(
            f"“{Path(file).name}” was made by another version of the kit "
            f"({about.get('version')}): restore it with that one."
        )
    if Path(about["class"]).name != about["class"] or about["class"] in ("", ".", ".."):
        raise CourseError(f"“{Path(file).name}” names no folder for its class.")
    return about


def _unpack(packed, folder, progress):
    """Every file below class/, none outside of the folder, and never more than fits a class."""
    members = [one for one in packed.infolist() if one.filename.startswith("class/")]
    if sum(one.file_size for one in members) > MOST_BYTES:
        raise CourseError("this backup unpacks to more than any class holds.")
    for done, one in enumerate(members, start=1):
        place = folder / one.filename.removeprefix("class/")
        if not place.resolve().is_relative_to(folder.resolve()):
            raise CourseError(f"this backup holds a file outside of its class: {one.filename}.")
        place.parent.mkdir(parents=True, exist_ok=True)
        with packed.open(one) as source, place.open("wb") as target:
            shutil.copyfileobj(source, target)
        if progress and (done % 50 == 0 or done == len(members)):
            progress(done, len(members), place.name)


def export_student(course, student, target=None):
    """All that a class holds of one student, in one zip for them to take along.

    Parameters
    ----------
    course : Course
    student : str
    target : Path, optional
        A folder or a file; the class's reports by default.

    Returns
    -------
    Path

    Raises
    ------
    CourseError
        When the student is not on the roster, or the disk refuses.
    """
    student = student_number(student)
    if student not in course.roster:
        raise CourseError(f"student: {student} is not on the roster.")
    target = Path(target) if target else course.reports
    if target == course.reports:
        target.mkdir(parents=True, exist_ok=True)
    file = target / f"{student}.zip" if target.is_dir() else target
    with (
        _whole(file) as half,
        one_at_a_time(course, "exporting a student"),
        zipfile.ZipFile(half, "w", zipfile.ZIP_DEFLATED) as packed,
    ):
        _student_into(packed, course, student)
    return file


def _student_into(packed, course, student):
    head = ["set", "cell", "points by machine", "points by a person", "extra points"]
    marks = [row for row in _marks(course) if row[1] == student]
    rows = [[row[0], *("" if each is None else str(each) for each in row[2:])] for row in marks]
    person = [["student_number", "name"], [student, course.roster[student]]]
    packed.writestr("person.csv", "\ufeff" + sheet_as_csv(person))
    packed.writestr("marks.csv", "\ufeff" + sheet_as_csv([head, *sorted(rows)]))
    for one in read_list(course):
        if one.student == student and one.kept and (course.arrived / one.kept).is_file():
            ending = Path(one.name).suffix or ".ipynb"
            place = f"handed-in/{one.set_id}/{one.sha256[:12]}{ending}"
            if place not in packed.namelist():
                packed.write(course.arrived / one.kept, place)
    for folder, ending in (("feedback", "html"), ("autograded", "ipynb")):
        for path in sorted((course.folder / folder / student).glob(f"*/*.{ending}")):
            packed.write(path, f"{folder}/{path.name}")
    for path in sorted((course.folder / TRAYS / student).glob("*.*")):
        packed.write(path, f"trays/{path.name}")
    for path in sorted(course.folder.glob(f"marks/*/{student}.json")):
        packed.write(path, f"marks/{path.parent.name}.json")


def _marks(course):
    if course.gradebook_file is not None and not course.gradebook_file.is_file():
        return []
    return all_marks(course)
