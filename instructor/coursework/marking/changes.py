"""Whose points are others than at the last marking: told at its end, and listed in a file at once.

After a key was corrected this list says whom to tell. A marking that is stopped has entered some
new points already, and the next one finds nothing to say about them: so each change is in the file
before the record that makes it true.
"""

import csv
import errno
import io
import os
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property

from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError

HEAD = ["time", "student", "question", "before", "after"]


@dataclass(frozen=True)
class Change:
    """A question whose points are others than at the last marking."""

    student: str
    question: str
    before: float | None
    after: float | None

    @property
    def points(self):
        """Before and after, in words."""
        return ["open" if points is None else f"{points:g}" for points in (self.before, self.after)]

    def __str__(self):
        return f"{self.student}, {self.question}: {' → '.join(self.points)}"


def changes(before, record):
    """What differs from an earlier record of the very same hand-in.

    Parameters
    ----------
    before : Record or None
    record : Record

    Returns
    -------
    list of Change
    """
    if before is None or before.sha256 != record.sha256:
        return []  # a first marking, or another hand-in: nothing was changed for anybody
    old, new = ({each.question: each.points for each in of.answered} for of in (before, record))
    return [
        Change(record.student, question, old.get(question), new.get(question))
        for question in sorted({*old, *new})
        if old.get(question) != new.get(question)
    ]


class ChangeList:
    """A set's list of changes, `reports/<set>-changes.csv`, that only ever grows.

    Parameters
    ----------
    course : Course
    set_id : str

    Attributes
    ----------
    place : str
        The file as the instructor finds it, from the class's folder.
    """

    def __init__(self, course, set_id):
        self.file = course.reports / f"{set_id}-changes.csv"
        self.place = self.file.relative_to(course.folder).as_posix()

    def add(self, found, since):
        """Write changes down, a line each, in one step: a kill leaves whole lines.

        Parameters
        ----------
        found : list of Change
        since : float
            When the record was written that they change, in seconds. What stands here since then
            was written by a marker that was killed before it wrote the new record.

        Raises
        ------
        CourseError
            When the file is open in another program, or the disk refuses.
        """
        try:
            last = self._last_since(since)
            now = datetime.now().isoformat(" ", "seconds")
            rows = [[each.student, each.question, *each.points] for each in found]
            rows = [[now, *row] for row in rows if guarded(row) not in last]
            if rows:
                self._append(rows)
        except OSError as error:
            raise CourseError(
                f"{self.place} cannot be written ({error.strerror}). Close it where it is open, "
                "then mark again: nothing is lost."
            ) from None

    def _append(self, rows):
        self.file.parent.mkdir(parents=True, exist_ok=True)
        with self.file.open("ab", buffering=0) as file:
            head = sheet_as_csv([HEAD]).encode("utf-8-sig")
            start = head if file.tell() == 0 else self._mend()
            text = start + sheet_as_csv(rows).encode()
            if file.write(text) < len(text):
                raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    def _last_since(self, since):
        """The last line of each question of each student since a time, without the time."""
        earliest = datetime.fromtimestamp(int(since)).isoformat(" ", "seconds")
        lines = self._earlier_lines
        return list({tuple(row[1:3]): row[1:] for row in lines if row[0] >= earliest}.values())

    @cached_property
    def _earlier_lines(self):
        """The lines of earlier markings: in one marking each hand-in changes once at most."""
        try:
            text = self.file.read_bytes().decode("utf-8-sig", "replace")
        except FileNotFoundError:
            return []
        return [row for row in csv.reader(io.StringIO(text, newline="")) if row]

    def _mend(self):
        """A line end, where a power cut or a full disk left half a line."""
        with self.file.open("rb") as file:
            file.seek(-1, os.SEEK_END)
            return b"" if file.read() == b"\n" else b"\r\n"


def guarded(row):
    """A row as it is read back from a sheet: with what keeps a cell from being a formula."""
    return next(csv.reader([sheet_as_csv([row])]))
