"""One at a time: two markers, or two take-ins, in one class would undo each other's work."""

import json
import os
from contextlib import contextmanager
from datetime import datetime

from coursework.errors import CourseError

# Far behind what is written, so that a system that locks bytes against reading leaves that alone.
FAR = 1 << 30


@contextmanager
def one_at_a_time(course, doing):
    """Hold the class for one step; the system lets go of it however the process ends.

    Parameters
    ----------
    course : Course
    doing : str
        For the other one to read: "marking".

    Raises
    ------
    CourseError
        When another step is at work in this class.
    """
    course.folder.mkdir(parents=True, exist_ok=True)
    with (course.folder / ".at-work").open("a+b") as file:
        try:
            _lock(file)
        except OSError:
            raise CourseError(f"{_who(file)} Wait until it ends, then try again.") from None
        file.truncate(0)
        since = datetime.now().strftime("%H:%M:%S")
        file.write(json.dumps({"doing": doing, "process": os.getpid(), "since": since}).encode())
        file.flush()
        try:
            yield
        finally:
            file.truncate(0)


def _lock(file):
    if os.name == "nt":
        import msvcrt

        file.seek(FAR)
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
    else:
        import fcntl

        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)


def _who(file):
    try:
        file.seek(0)
        told = json.loads(file.read())
        here = told["process"] == os.getpid()
        return (
            f"{'this' if here else 'another'} window is at work in this class: {told['doing']} "
            f"since {told['since']}."
        )
    except (OSError, ValueError, KeyError, TypeError):
        return "another window is at work in this class."
