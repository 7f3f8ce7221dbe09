"""Take in: a folder or a zip of hand-ins, as downloaded, to one notebook for each student.

The notebook itself says whose it is and which set. Each step can be stopped and done again:
first the originals are kept, then the list is written, then what counts by the list is placed.
"""

import time
from dataclasses import replace
from pathlib import Path

from coursework.arriving.arrivals import Arrival, arrival_of, keep, read_list, write_list
from coursework.arriving.clock import by_the_clock, doubted
from coursework.arriving.json_walk import Budget
from coursework.arriving.placing import place_all
from coursework.arriving.settling import settle, with_what_was_told
from coursework.arriving.states import AGAIN, HAND_INS, NOT_PLACED
from coursework.arriving.taken_in import TakenIn
from coursework.arriving.unpacking import Unpacking
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.records.trays import TRAYS

__all__ = ["Arrival", "TakenIn", "take_in"]

OWN_FOLDERS = ("arrived", "autograded", "feedback", "kept", "marks", "release", "reports",
               "source", "submitted", TRAYS)  # fmt: skip


def take_in(course, place, progress=None, now=None):
    """Take hand-ins in: keep the originals, list them, and place what counts.

    Taking the same in again changes nothing, and neither does a stop half-way: do it again.

    Parameters
    ----------
    course : Course
    place : Path or str, or a list of them
        Folders, zips or single notebooks, whatever the files in them are called.
    progress : callable, optional
        Called with (done, total, text); the total grows when a zip is opened.
    now : float, optional
        Seconds since 1970, in place of the clock.

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
        return _take_in(course, places, progress, int(time.time() if now is None else now))


def _take_in(course, places, progress, now):
    before = {arrival.line: arrival for arrival in read_list(course)}
    came = _gathered(course, places, progress, now)
    listed = dict(before)
    for arrival in came:
        listed[arrival.line] = _read_afresh(arrival, listed.get(arrival.line))
    settled = settle(course, list(listed.values()))
    if settled:
        write_list(course, settled)
        place_all(course, settled)
    stands = {arrival.line: arrival for arrival in settled}
    mended = tuple(
        stands[line]
        for line, arrival in before.items()
        if arrival.became == NOT_PLACED and stands[line].became in HAND_INS
    )
    new = tuple(stands[line] for line in dict.fromkeys(one.line for one in came)
                if line not in before)  # fmt: skip
    return TakenIn(
        tuple(stands[one.line] for one in came), new, mended, tuple(_in_doubt(course, new, settled))
    )


def _gathered(course, places, progress, now):
    """What is found in these places, kept, with the times that count."""
    found_now, budgets = [], {}
    unpacking = Unpacking(places, course.bounds, leave=[course.folder])
    for done, found in enumerate(unpacking, start=1):
        budget = budgets.setdefault((found.place, found.outer or found.name), Budget())
        arrival = arrival_of(found, course.bounds.file_bytes, budget)
        if found.raw is not None:
            keep(course, arrival, found.raw)
        found_now.append((arrival, found.archive))
        if progress:
            progress(done, unpacking.total, arrival.name)
    return by_the_clock(found_now, now)


def _in_doubt(course, new, settled):
    """Those among the new ones that are late by the time that counts only."""
    holds = holding(decisions_of(course))
    first = {one.sha256: one for one in reversed(settled)}

    def due(one):
        return holds.due(course.policy.rule(one.set_id), one.set_id, one.student).due

    placed = [one for one in new if one.became in (*HAND_INS, AGAIN)]
    return doubted([(one, first[one.sha256].seconds) for one in placed], due)


def _read_afresh(arrival, known):
    """A line of the list, read again, as a newer kit may read more; its time stays as it was."""
    if known is None:
        return arrival
    arrival = replace(
        arrival, seconds=known.seconds, handed_in=known.handed_in, taken=known.taken,
        says_seconds=known.says_seconds,
    )  # fmt: skip
    return with_what_was_told(arrival, known)


def refuse_own(course, places):
    """Refuse the class's own folders, where hand-ins would be taken in a second time."""
    own = course.folder.resolve()
    for place in places:
        path = place.expanduser().resolve()
        if path == own or any(path.is_relative_to(own / name) for name in OWN_FOLDERS):
            raise CourseError(
                f"“{place}” is the class's own folder: name the folder or zip that was downloaded."
            )
