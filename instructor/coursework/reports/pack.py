"""Hand back as one file: a zip with a page for each student, named by number and name."""

import zipfile
from dataclasses import dataclass
from pathlib import Path

from coursework.classes.names import name_for_files
from coursework.gradebook.waiting import waiting_count
from coursework.reports.hand_back import hand_back
from coursework.safe_files import half_of
from coursework.sets.key_text import set_titles

__all__ = ["Packed", "pack"]


@dataclass(frozen=True)
class Packed:
    """What was packed.

    Attributes
    ----------
    file : Path
    pages : int
    waiting : int
        Answers that still wait for a person's marks.
    title : str
        Of the set.
    without : tuple of str
        Students on the roster for whom there is no page, by name.
    """

    file: Path
    pages: int
    waiting: int
    title: str
    without: tuple


def pack(course, set_id, folders=False, progress=None):
    """Write all pages of a set anew, and pack them in one zip.

    Parameters
    ----------
    course : Course
    set_id : str
    folders : bool
        A folder for each student, for platforms that take it that way.
    progress : callable, optional

    Returns
    -------
    Packed

    Raises
    ------
    CourseError
        When nothing is marked, or a page cannot be written.
    """
    pages = hand_back(course, set_id, progress)
    file = course.reports / f"{set_id}-pages.zip"
    file.parent.mkdir(parents=True, exist_ok=True)
    half = half_of(file)
    with zipfile.ZipFile(half, "w", zipfile.ZIP_DEFLATED) as packed:
        for page in pages:
            student = page.parent.parent.name
            named = file_name(student, course.roster.get(student, ""))
            packed.write(page, f"{named}/{set_id}.html" if folders else f"{named}.html")
    half.replace(file)
    there = {page.parent.parent.name for page in pages}
    without = tuple(name for number, name in course.roster.items() if number not in there)
    title = set_titles().get(set_id, set_id)
    return Packed(file, len(pages), waiting_count(course, set_id), title, without)


def file_name(student, name):
    """Number and name as a file's name that every system takes.

    Parameters
    ----------
    student, name : str

    Returns
    -------
    str

    Examples
    --------
    >>> file_name("BH-7", "Ada / Quill.")
    'BH-7 Ada - Quill'
    """
    return name_for_files(f"{student} {name}" if name and name != student else student)
