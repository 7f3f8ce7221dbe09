"""What another key or library would change in a class: numbers, right answers, points given.

It is worked out before a person takes a newer key. Nothing of the class is written.
"""

import os
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace

from coursework.errors import CourseError
from coursework.marking.changes import changes
from coursework.marking.mark_one import mark
from coursework.marking.mark_set import task_of
from coursework.marking.room.door import warm_up
from coursework.records.reading import handed_in, usable_records
from coursework.safe_files import digest
from coursework.sets.class_keys import class_key
from coursework.sets.drawn_numbers import asked, handed_out_numbers
from coursework.sets.hand_out import released
from coursework.sets.keys import load_key

__all__ = ["Moved", "Other", "what_changes", "what_numbers_change"]


@dataclass(frozen=True)
class Moved:
    """One question of one student, with the class's key and with the other one.

    Attributes
    ----------
    question : str
    given : tuple of (tuple of str, tuple of str)
        The student's numbers before and after, each with its label; () where it is not asked.
    right : tuple of (str, str)
        The right answer before and after.
    points : tuple of (float or None, float or None)
        The machine's points before and after; None where nothing is marked.
    """

    question: str
    given: tuple = ((), ())
    right: tuple = ("", "")
    points: tuple = (None, None)

    @property
    def numbers_differ(self):
        """Whether other numbers would be drawn."""
        return self.given[0] != self.given[1]

    @property
    def right_differs(self):
        """Whether another answer would be right."""
        return self.right[0] != self.right[1]

    @property
    def points_differ(self):
        """Whether what is marked would earn other points."""
        return self.points[0] != self.points[1]


@dataclass(frozen=True)
class Other:
    """What the other key would change.

    Attributes
    ----------
    set_id : str
    moved : dict of str to tuple of Moved
        By student on the roster: the questions in which something differs.
    handed_in, marked : frozenset of str
        Students whose work is here, and those whose work is marked.
    texts : tuple of str
        Questions whose own cells say something else: words, tolerance, points or slips.
    """

    set_id: str
    moved: dict
    handed_in: frozenset
    marked: frozenset
    texts: tuple


def what_changes(course, set_id, key, progress=None):
    """Compare another key with the class's own, student by student.

    Work that is marked is marked once more with the other key, in its room as always, so that the
    points it would get are known and not guessed; where its copy was discarded, they stay.

    Parameters
    ----------
    course : Course
    set_id : str
    key : bytes
        The other key, for this class's term.
    progress : callable, optional
        Called with (done, total, text).

    Returns
    -------
    Other

    Raises
    ------
    CourseError
        When the set is not handed out, or one of the keys is refused.
    """
    own = load_key(class_key(course, set_id), course.term, tried=())
    before = {student: asked(own, student) for student in course.roster}
    return _compared(course, set_id, before, key, progress)


def what_numbers_change(course, set_id, progress=None):
    """Compare what the class is asked now, by its own key, with what went out.

    Parameters
    ----------
    course : Course
    set_id : str
    progress : callable, optional
        Called with (done, total, text).

    Returns
    -------
    Other
    """
    before = handed_out_numbers(course, set_id)
    return _compared(course, set_id, before, class_key(course, set_id), progress)


def _compared(course, set_id, before, key, progress):
    """What was asked before, against what a key asks now; marked work is marked once more."""
    own, other = (load_key(raw, course.term, tried=()) for raw in (class_key(course, set_id), key))
    records = _records(course, set_id)
    still_here = {
        one: record for one, record in records.items() if course.submitted(set_id, one).is_file()
    }
    points = _points(course, set_id, key, still_here, progress)
    moved = {
        student: _moved(before.get(student), asked(other, student), points.get(student, {}))
        for student in course.roster
    }
    moved = {student: those for student, those in moved.items() if those}
    came = frozenset(handed_in(course, set_id)) & frozenset(course.roster)
    return Other(set_id, moved, came, came & records.keys(), _texts(own, other))


def _records(course, set_id):
    try:
        found, _ = usable_records(course, set_id)
    except CourseError:  # nothing is marked yet
        return {}
    return {record.student: record for record in found}


def _moved(before, after, points):
    """The questions in which something differs for a student; who is new was asked nothing else."""
    before = after if before is None else before
    nothing = (), ""
    found = []
    for question in {**before, **after}:
        given, right = zip(before.get(question, nothing), after.get(question, nothing), strict=True)
        one = Moved(question, given, right, points.get(question, (None, None)))
        if one.numbers_differ or one.right_differs or one.points_differ:
            found.append(one)
    return tuple(found)


def _points(course, set_id, key, records, progress):
    """The machine's points that would be others, by student and question: before and after."""
    if not records:
        return {}
    warm_up()
    notebook, found = released(key, course.term), {}

    def again(student):
        task = task_of(course, set_id, student, key, notebook)
        record, _ = mark(task)
        return student, replace(record, sha256=digest(task["hand_in"]))

    with ThreadPoolExecutor(os.cpu_count() or 1, thread_name_prefix="looking") as pool:
        for done, (student, record) in enumerate(pool.map(again, records), start=1):
            differ = changes(records[student], record)
            found[student] = {one.question: (one.before, one.after) for one in differ}
            if progress:
                progress(done, len(records), course.roster.get(student, student))
    return found


def _texts(own, other):
    """Questions of which a cell differs, in the order of the other key."""
    before, after = (
        Counter((cell["id"], "".join(cell["source"])) for cell in key.cells) for key in (own, other)
    )
    differ = {name for name, _ in (before - after) + (after - before)}
    asked = dict.fromkeys([*other.points, *own.points])
    return tuple(one for one in asked if any(name.startswith(f"{one}-") for name in differ))
