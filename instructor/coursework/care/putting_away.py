"""Archive a class at the end of its term: one file, tried by restoring it, then off the list."""

import shutil
import tempfile
from pathlib import Path

from coursework.care.archive import back_up, backed_up, restore
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import all_marks
from coursework.safe_files import half_of
from coursework.sets.hand_out import NBGRADER_FILE

# Files that say where the class lies, and the database: it is compared by what stands in it.
COMPARED_OTHERWISE = (NBGRADER_FILE, "gradebook.db")


def archive(course, target=None, progress=None):
    """Back a class up, restore the file aside and compare, and only then take the class away.

    Parameters
    ----------
    course : Course
    target : Path, optional
        A folder or a file; by default beside the classes.
    progress : callable, optional
        Called with (done, total, text).

    Returns
    -------
    Path
        The file. `restore` brings the class back, here or elsewhere.

    Raises
    ------
    CourseError
        When the class cannot be backed up, or what the file restores is not the same class: then
        nothing is taken away.
    """
    file = back_up(course, target, progress)
    if Path(course.folder).resolve() in file.resolve().parents:
        raise CourseError("to: the file must lie outside of the class's folder.")
    with tempfile.TemporaryDirectory() as aside:
        differs = what_differs(course, restore(file, "again", Path(aside)))
    if differs:
        raise CourseError(
            f"“{file.name}” does not bring back the same class ({differs[0]}): the class stays."
        )
    away = half_of(Path(course.folder))
    Path(course.folder).rename(away)  # off the list in one step
    shutil.rmtree(away)
    return file


def what_differs(course, again):
    """What is not the same in a class and in its restored copy.

    Parameters
    ----------
    course, again : Course

    Returns
    -------
    list of str
        Places in the class's folder, "marks" and "decisions"; empty where all is the same.
    """
    files, others = ({_place(one, path) for path in backed_up(one)} for one in (course, again))
    found = sorted(files ^ others)
    found += [
        place
        for place in sorted(files & others)
        if place not in COMPARED_OTHERWISE
        and (course.folder / place).read_bytes() != (again.folder / place).read_bytes()
    ]
    if course.gradebook_file.is_file() and again.gradebook_file.is_file():
        found += ["marks"] * (sorted(all_marks(course)) != sorted(all_marks(again)))
        found += ["decisions"] * (decisions_of(course) != decisions_of(again))
    return found


def _place(course, path):
    return path.relative_to(course.folder).as_posix()
