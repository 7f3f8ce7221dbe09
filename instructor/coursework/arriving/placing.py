"""Putting each hand-in that counts where marking and nbgrader look for it."""

from collections import Counter

from coursework.arriving.states import COUNTS, HAND_INS
from coursework.errors import CourseError
from coursework.safe_files import clear_halves, digest, half_of, keep_earlier, write_safely

# What nbgrader is told where no time is known: it skips a hand-in without any.
NO_TIME = "1980-01-01 00:00:00"


def place_all(course, settled):
    """Put every hand-in that counts where marking looks, with the time for nbgrader.

    A hand-in that replaces another of the same second says a later time by a millionth for each:
    nbgrader skips what is not later than what it has.
    """
    same_time = Counter(
        (one.student, one.set_id, one.seconds) for one in settled if one.became in HAND_INS
    )
    originals = {one.sha256 for one in settled}
    for one in settled:
        if one.became == COUNTS and one.kept:  # else its copy was past its time
            earlier = same_time[one.student, one.set_id, one.seconds] - 1
            stamp = (one.handed_in or NO_TIME) + (f".{earlier:06d}" if earlier else "")
            place(course, one, stamp + "\n", originals)


def original(course, arrival):
    """The bytes that arrived, unchanged."""
    if not arrival.kept:
        raise CourseError(f"the copy of “{arrival.name}” was discarded: it was past its time.")
    file = course.arrived / arrival.kept
    raw = file.read_bytes() if file.is_file() else b""
    if digest(raw) != arrival.sha256:
        raise CourseError(
            f"arrived/{arrival.kept} is gone or was changed: take “{arrival.name}” in again "
            f"from {arrival.place}."
        )
    return raw


def place(course, arrival, stamp, originals):
    """Put one hand-in in its folder; a first one at a stroke, so that marking never meets half."""
    raw = original(course, arrival)
    file = course.submitted(arrival.set_id, arrival.student)
    folder = file.parent
    if not folder.exists():
        half = half_of(folder)
        write_safely(half / file.name, raw)
        write_safely(half / "timestamp.txt", stamp)
        clear_halves(half)
        half.rename(folder)
        return
    clear_halves(folder)
    old = file.read_bytes() if file.is_file() else None
    if old != raw:
        if old is not None and digest(old) not in originals:
            keep_earlier(course.folder, file)
        write_safely(file, raw)
    time = folder / "timestamp.txt"
    if not time.is_file() or time.read_text(encoding="utf-8", errors="replace") != stamp:
        write_safely(time, stamp)
