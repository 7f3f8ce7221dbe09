"""Take in: a folder or a zip of hand-ins, as downloaded, to one notebook for each student.

The notebook itself says whose it is and which set. Each step can be stopped and done again:
first the originals are kept, then the list is written, then what counts by the list is placed.
"""

from dataclasses import dataclass
from pathlib import Path

from coursework.arriving.arrivals import (
    AGAIN,
    COUNTS,
    NOT_PLACED,
    REPLACED,
    SET_ASIDE,
    Arrival,
    arrival_of,
    keep,
    read_list,
    said,
    write_list,
)
from coursework.arriving.placing import place_all
from coursework.arriving.settling import earliest, settle
from coursework.arriving.unpacking import Unpacking
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.errors import CourseError

__all__ = ["Arrival", "TakenIn", "take_in"]

OWN_FOLDERS = ("arrived", "autograded", "feedback", "kept", "marks", "release", "reports",
               "source", "submitted")  # fmt: skip

MENDING = (
    "What is not placed is kept. Mend the roster and take it in again, or say whose it is: at the "
    "desk, or with python3 instructor place."
)


@dataclass(frozen=True)
class TakenIn:
    """What one taking-in brought; as text, a few lines for the instructor.

    Attributes
    ----------
    came : tuple of Arrival
        Every file that was found this time, new or not, in order.
    new : tuple of Arrival
        Those that were not in the list before.
    mended : tuple of Arrival
        Those that could not be placed before and now are: on a mended roster, for instance.
    """

    came: tuple
    new: tuple
    mended: tuple

    def __str__(self):
        lines = self.lines_of_new()
        if not self.came:
            lines = ["There is no file to take in."]
        if self.mended:
            lines.append(f"{counted(self.mended)} that had no place before:")
            lines += [f"  {said(one)}" for one in self.mended]
        return "\n".join(lines)

    def lines_of_new(self):
        """What became of the new files, and where there is something to do, what to do."""
        older = counted(self.came[len(self.new) :])
        if not self.new:
            return [f"Nothing new: {older} came before."]
        by = {one: [] for one in (COUNTS, REPLACED, AGAIN, NOT_PLACED, SET_ASIDE)}
        for arrival in self.new:
            by[arrival.became].append(arrival)
        words = {COUNTS: "counts" if len(by[COUNTS]) == 1 else "count"}
        parts = [f"{len(those)} {words.get(one, one)}" for one, those in by.items() if those]
        lines = [f"{counted(self.new)} taken in: {', '.join(parts)}."]
        if len(self.came) > len(self.new):
            lines.append(f"{older} came before.")
        lines += [f"  {said(one)}" for one in by[REPLACED] + by[NOT_PLACED]]
        return lines + ([MENDING] if by[NOT_PLACED] else [])


def counted(those):
    """How many files, in words."""
    return "1 file" if len(those) == 1 else f"{len(those)} files"


def take_in(course, place, progress=None):
    """Take hand-ins in: keep the originals, list them, and place what counts.

    Taking the same in again changes nothing, and neither does a stop half-way: do it again.

    Parameters
    ----------
    course : Course
    place : Path or str, or a list of them
        Folders, zips or single notebooks, whatever the files in them are called.
    progress : callable, optional
        Called with (done, total, text); the total grows when a zip is opened.

    Returns
    -------
    TakenIn

    Raises
    ------
    CourseError
        When a place does not exist or is the class's own folder, the list was damaged, or another
        step is at work in this class.
    """
    places = [Path(one) for one in ([place] if isinstance(place, str | Path) else place)]
    refuse_own(course, places)
    with one_at_a_time(course, "taking in"):
        return _take_in(course, places, progress)


def _take_in(course, places, progress):
    before = {arrival.line: arrival for arrival in read_list(course)}
    listed, came, new = dict(before), [], []
    unpacking = Unpacking(places, course.bounds, leave=[course.folder])
    for done, found in enumerate(unpacking, start=1):
        arrival = arrival_of(found, course.bounds.file_bytes)
        if found.raw is not None:
            keep(course, arrival, found.raw)
        came.append(arrival.line)
        if arrival.line not in listed:
            new.append(arrival.line)
        # A known line is read afresh, as a newer kit may read more; its earliest time stays.
        listed[arrival.line] = earliest(arrival, listed.get(arrival.line, arrival))
        if progress:
            progress(done, unpacking.total, arrival.name)
    settled = settle(course, list(listed.values()))
    if came or settled:
        write_list(course, settled)
        place_all(course, settled)
    now = {arrival.line: arrival for arrival in settled}
    mended = [
        line
        for line, arrival in before.items()
        if arrival.became == NOT_PLACED and now[line].became in (COUNTS, REPLACED)
    ]
    return TakenIn(*(tuple(now[line] for line in lines) for lines in (came, new, mended)))


def refuse_own(course, places):
    """Refuse the class's own folders, where hand-ins would be taken in a second time."""
    own = course.folder.resolve()
    for place in places:
        path = place.expanduser().resolve()
        if path == own or any(path.is_relative_to(own / name) for name in OWN_FOLDERS):
            raise CourseError(
                f"“{place}” is the class's own folder: name the folder or zip that was downloaded."
            )
