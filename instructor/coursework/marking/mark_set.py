"""Mark a whole set: hand-ins to whoever can run them, results to one writer.

Nothing here grows with the class but a list of names: hand-ins are read when there is room for
them, and a record goes to disk as soon as it is there. A hand-in whose bytes, key, released copy
and library are those of the last time is not run again, so marking again after a key was
corrected runs only what changed.
"""

import json
import os
from collections import deque
from concurrent.futures import FIRST_COMPLETED, ThreadPoolExecutor, wait
from contextlib import contextmanager
from dataclasses import asdict, dataclass, replace

from coursework.classes.one_at_a_time import one_at_a_time
from coursework.errors import CourseError
from coursework.gradebook.kept_copy import copy_gradebook
from coursework.marking.changes import ChangeList, changes
from coursework.marking.mark_one import mark
from coursework.marking.room.door import warm_up
from coursework.marking.words import CHANGED_BEFORE
from coursework.records.record_file import as_text, read_record
from coursework.safe_files import clear_halves, digest, keep_earlier, write_safely
from coursework.sets.checked_keys import library, refuse_unchecked
from coursework.sets.class_keys import class_key
from coursework.sets.drawn_numbers import refuse_other_numbers
from coursework.sets.hand_out import settle_keys


@dataclass(frozen=True)
class Marked:
    """What a marking did.

    Attributes
    ----------
    students : list of str
        Whose hand-ins are marked now.
    run : int
        How many of them were run this time; the others stood as they were.
    changes : list of Change
    list_of_changes : str
        Where these and all earlier changes stand, in the class's folder.
    """

    set_id: str
    students: list
    run: int
    changes: list
    list_of_changes: str


def mark_set(course, set_id, progress=None, executor=None, workers=None):
    """Mark every hand-in of a set and enter the points in the gradebook.

    Parameters
    ----------
    course : Course
    set_id : str
    progress : callable, optional
        Called with (done, total, text) as each hand-in is finished.
    executor : concurrent.futures.Executor, optional
        Where `mark_one.mark` runs; threads of this process by default, each with a room of its own.
    workers : int, optional
        Hand-ins at a time; as many as there are cores by default.

    Returns
    -------
    Marked

    Raises
    ------
    CourseError
        When the set was not handed out, nothing was handed in, the gradebook is damaged, students
        would be asked for other numbers than went out, or another step is at work in this class.

    Notes
    -----
    Where a marking is stopped after points changed, the error carries a note that says where they
    are listed.
    """
    if executor is None:
        warm_up()
    # It loads the database's library: meanwhile the rooms get warm on another core.
    from coursework.gradebook.writer import GradeWriter

    with one_at_a_time(course, "marking"):
        _released_file(course, set_id)
        copy_gradebook(course)  # first: of a damaged one it says which copy to put in its place
        settle_keys(course)
        tasks = _Tasks(course, set_id)
        writer = GradeWriter(course, set_id)
        changed_here, run = [], 0
        workers = workers or os.cpu_count() or 1
        with _telling(changed_here, tasks.changes.place):
            with _executor(executor, workers) as pool:
                finished = _each(pool, tasks, window=4 * workers)
                for done, (record, changed) in enumerate(finished, start=1):
                    writer.put(record)
                    run += changed is not None
                    changed_here += changed or []
                    if progress:
                        name = course.roster.get(record.student, record.student)
                        progress(done, len(tasks.students), name)
            writer.close()
        found = sorted(changed_here, key=str)
        return Marked(set_id, tasks.students, run, found, tasks.changes.place)


@contextmanager
def _telling(found, place):
    """Where it is stopped, say where the changes so far are listed."""
    try:
        yield
    except BaseException as error:
        if found:
            error.add_note(CHANGED_BEFORE.format(place=place))
        raise


def _executor(given, workers):
    """The given executor, which is its owner's to end, or threads that end here."""
    return _Lent(given) if given else _Threads(workers, thread_name_prefix="marking")


class _Lent:
    def __init__(self, executor):
        self.executor = executor

    def __enter__(self):
        return self.executor

    def __exit__(self, *_):
        pass


class _Threads(ThreadPoolExecutor):
    """Threads that drop what waits when the marking is stopped."""

    def __exit__(self, error, *rest):
        self.shutdown(wait=True, cancel_futures=error is not None)


def _each(pool, tasks, window):
    """Each hand-in's record, as it is finished, and what changed in it; None if it was not run."""
    running, waiting = {}, deque(tasks.students)
    while running or waiting:
        while waiting and len(running) < window:
            student = waiting.popleft()
            task = tasks.of(student)
            if earlier := tasks.earlier(student, task):
                yield earlier, None
            else:
                running[pool.submit(mark, task)] = task
        if running:
            for future in wait(running, return_when=FIRST_COMPLETED).done:
                yield tasks.keep(running.pop(future), future.result())


def task_of(course, set_id, student, key, released):
    """One hand-in as a task of `mark_one.mark`: bytes and plain values, for any process.

    Parameters
    ----------
    course : Course
    set_id, student : str
    key, released : bytes

    Returns
    -------
    dict
    """
    file = course.submitted(set_id, student)
    return {
        "key": key,
        "released": released,
        "hand_in": file.read_bytes(),
        "term": course.term,
        "student": student,
        "bounds": asdict(course.bounds),
        "handed_in": (file.parent / "timestamp.txt").read_text(encoding="utf-8").strip(),
    }


def _released_file(course, set_id):
    """The students' notebook of a set that was handed out."""
    file = course.release(set_id)
    if not file.is_file():
        raise CourseError(f"set {set_id} was not handed out in this class: hand it out first.")
    return file


class _Tasks:
    """The hand-ins of a set as pure tasks, and their records on disk."""

    def __init__(self, course, set_id):
        file = _released_file(course, set_id)
        self.course, self.set_id = course, set_id
        self.changes = ChangeList(course, set_id)
        self.key, self.released = class_key(course, set_id), file.read_bytes()
        refuse_unchecked(course, set_id, self.key, library())
        refuse_other_numbers(course, set_id)
        bounds = json.dumps(asdict(course.bounds)).encode()
        self._common = digest(b"\0".join([self.key, self.released, library(), bounds])).encode()
        folders = (course.folder / "submitted").glob(f"*/{set_id}")
        self.students = sorted(
            folder.parent.name for folder in folders if (folder / f"{set_id}.ipynb").is_file()
        )
        if not self.students:
            raise CourseError(f"nothing is taken in for set {set_id} yet: take hand-ins in first.")
        clear_halves(course.marks(set_id, "any").parent)  # of a marker that was killed
        for student in self.students:
            clear_halves(course.autograded(set_id, student).parent)

    def of(self, student):
        """One hand-in's task, with the digest of all that it is made of."""
        task = task_of(self.course, self.set_id, student, self.key, self.released)
        made_of = [self._common, task["handed_in"].encode(), task["hand_in"]]
        return task | {"digest": digest(b"\0".join(made_of))}

    def earlier(self, student, task):
        """The record of an earlier run of the very same task, or None."""
        found = read_record(self.course.marks(self.set_id, student))
        marked = self.course.autograded(self.set_id, student).is_file()
        return found if found and found.task == task["digest"] and marked else None

    def keep(self, task, result):
        """Write the marked copy and the record; the record last, as it is what says "done".

        Returns
        -------
        Record
        list of Change
        """
        record, notebook = result
        student = task["student"]
        file = self.course.marks(self.set_id, student)
        before = read_record(file)
        copy = self.course.autograded(self.set_id, student)
        write_safely(copy, notebook, lasting=False)
        sha256 = digest(task["hand_in"])
        record = replace(record, task=task["digest"], handed_in=task["handed_in"], sha256=sha256)
        if found := changes(before, record):
            self.changes.add(found, since=file.stat().st_mtime)
        self._write(file, record)
        return record, found

    def _write(self, file, record):
        text = as_text(record)
        if file.is_file() and file.read_text(encoding="utf-8") != text:
            keep_earlier(self.course.folder, file)
        write_safely(file, text, lasting=False)  # an empty one is marked again
