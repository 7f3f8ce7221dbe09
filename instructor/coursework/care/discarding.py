"""Copies of students' work past their stated time: which they are, and discarding them.

What was found stays: marks, remarks, mark sheets, the roster, the journal. Nothing goes by itself.
"""

import json
import shutil
import zipfile
from dataclasses import dataclass, replace
from datetime import date

from coursework.arriving.arrivals import NOT_PLACED, WAITS, on_the_clock, read_list, write_list
from coursework.care.archive import ABOUT
from coursework.care.erasing import OF_STUDENTS
from coursework.classes.copy_time import months_after
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import add_decision, decisions_of
from coursework.records.reading import marked_students
from coursework.records.trays import TRAYS
from coursework.terms.term_book import term_book

__all__ = ["CAME", "COPIES", "DAY", "DUE", "Kept", "Past", "Unsettled", "discard", "kept_until",
           "past_their_time"]  # fmt: skip

# Each kind of copy, and where it lies below the class's folder.
COPIES = {
    "arrived": ("arrived/*/*",),
    "submitted": ("submitted/**/*",),
    "autograded": ("autograded/**/*",),
    "feedback": ("feedback/**/*",),
    "trays": (f"{TRAYS}/**/*",),
    "kept": ("kept/**/*",),
    "packed": ("reports/*.zip", "reteach/**/*"),
    "backups": (),  # see `_backups`
}
DUE, DAY, CAME = "due", "day", "came"
DAY_LONG = 10  # characters of a time without its hours


@dataclass(frozen=True)
class Kept:
    """Until when copies are kept.

    Attributes
    ----------
    until : date
        The last day.
    because : str
        "day" (the class's file names it), "due" (so many months after the last due time), "came"
        (no set has a due time: after the last file that came in).
    """

    until: date
    because: str


@dataclass(frozen=True)
class Unsettled:
    """How many files or hand-ins still wait, and cannot be settled without the copies."""

    no_place: int = 0
    your_word: int = 0
    to_mark: int = 0


@dataclass(frozen=True)
class Past:
    """Copies that are past their time.

    Attributes
    ----------
    kept : Kept
    files : tuple of (str, Path)
        The kind and the file.
    unsettled : Unsettled
    """

    kept: Kept
    files: tuple
    unsettled: Unsettled


def kept_until(course):
    """Until when a class keeps copies of its students' work; None where nothing came in yet.

    Parameters
    ----------
    course : Course

    Returns
    -------
    Kept or None
    """
    lines, rules = course.copies, course.policy.sets.values()
    if lines.until:
        return Kept(lines.until, DAY)
    moved = holding(decisions_of(course)).extensions.values()
    due = [time for rule in rules for time in (rule.due, rule.second_due) if time is not None]
    due += [one.seconds for one in moved if due]
    came = [one.taken for one in read_list(course) if one.taken is not None]
    last = max(due or came, default=None)
    if last is None:
        return None
    day = date.fromisoformat(on_the_clock(last)[:DAY_LONG])
    return Kept(months_after(day, lines.months), DUE if due else CAME)


def past_their_time(course, today=None):
    """The copies that are past their time; None where none is.

    Parameters
    ----------
    course : Course
    today : date, optional
        In place of the clock.

    Returns
    -------
    Past or None
    """
    kept = kept_until(course)
    if kept is None or (today or date.today()) <= kept.until:
        return None
    found = [
        (kind, file)
        for kind, places in COPIES.items()
        for place in places
        for file in sorted(course.folder.glob(place))
        if file.is_symlink() or file.is_file()
    ]
    found += [("backups", file) for file in _backups(course)]
    return Past(kept, tuple(found), _unsettled(course)) if found else None


def _backups(course):
    """Backups of this class, in its folder or beside it, that hold copies of students' work."""
    beside = sorted([*course.folder.glob("*.zip"), *course.folder.parent.glob("*.zip")])
    return [file for file in beside if _is_backup(file, course.folder.name)]


def _is_backup(file, name):
    try:
        with zipfile.ZipFile(file) as packed:
            is_ours = json.loads(packed.read(ABOUT))["class"] == name
            work = tuple(f"class/{folder}/" for folder in OF_STUDENTS)
            return is_ours and any(one.startswith(work) for one in packed.namelist())
    except (OSError, zipfile.BadZipFile, KeyError, ValueError, TypeError, RuntimeError):
        return False


def _unsettled(course):
    arrivals = read_list(course)
    return Unsettled(
        no_place=sum(one.became == NOT_PLACED and bool(one.kept) for one in arrivals),
        your_word=sum(one.became == WAITS for one in arrivals),
        to_mark=sum(
            course.submitted(set_id, student).is_file()
            for set_id in course.sets_handed_out()
            for student in set(course.roster) - marked_students(course, set_id)
        ),
    )


def discard(course, seen, why, today=None):
    """Discard the copies that are past their time, with a line in the journal.

    Before that every attempt that the mark book counts is marked, so that its totals stand.

    Parameters
    ----------
    course : Course
    seen : Past
        As a person was shown them.
    why : str
        What goes, for the journal.
    today : date, optional
        In place of the clock.

    Returns
    -------
    Decision
        The journal's line.

    Raises
    ------
    CourseError
        When none is past its time, others than the seen ones are, or another step is at work.
    """
    if course.sets_handed_out():
        term_book(course)  # it marks an earlier attempt when it first asks for it
    with one_at_a_time(course, "discarding copies"):
        past = past_their_time(course, today)
        if past is None:
            raise CourseError("copies: none is past its time. Nothing was discarded.")
        if past != seen:
            raise CourseError("copies: others are past their time now. Look at them first.")
        # The line comes first: a stop half-way loses copies, and never the word that they went.
        line = add_decision(course, "copies discarded", why=why)
        _forget_originals(course)
        for _, file in past.files:
            file.unlink(missing_ok=True)
        _clear_empty_folders(course)
    return line


def _forget_originals(course):
    """The list of what came stays, and says of no file any more where its copy lies."""
    arrivals = read_list(course)
    if arrivals:
        write_list(course, [replace(one, kept="") for one in arrivals])


def _clear_empty_folders(course):
    for place in sum(COPIES.values(), ()):
        for top in {place.split("/")[0]} - {"reports"}:
            folders = [one for one in (course.folder / top).rglob("*") if one.is_dir()]
            for folder in sorted(folders, reverse=True):
                if not any(folder.iterdir()):
                    shutil.rmtree(folder)
