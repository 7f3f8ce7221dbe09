"""Mark a whole set: tasks to a pool of clean interpreters, results to one writer.

A hand-in whose bytes, key, released copy and library are those of the last time is not run
again, so marking again after a key was corrected runs only what changed.
"""

import hashlib
import json
import multiprocessing
import os
import threading
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import asdict
from pathlib import Path

import kitchenmath
from coursework.course import CourseError
from coursework.gradebook import record
from coursework.hand_out import for_term
from coursework.keys import digest, key_file, load_key, refuse_collisions
from coursework.marking import mark
from coursework.safe_files import keep_earlier, write_safely
from coursework.take_in import copies


def mark_set(course, set_id, progress=None, workers=None):
    """Mark every hand-in of a set and enter the points in the gradebook.

    Parameters
    ----------
    course : Course
    set_id : str
    progress : callable, optional
        Called with (done, total, text) as each hand-in is finished.
    workers : int, optional
        Hand-ins at a time; as many as there are cores by default.

    Returns
    -------
    list of dict
        The records, by student number.

    Raises
    ------
    CourseError
        When the set was not handed out, or nothing was handed in.
    """
    tasks, alike = _tasks(course, set_id), _alike(course, set_id)
    records, waiting = {}, {}
    for student, task in tasks.items():
        earlier = _earlier(course, set_id, student, task["digest"])
        if earlier:
            records[student] = _with_copies(course, set_id, earlier, alike.get(student, []))
        else:
            waiting[student] = task
    _say(progress, len(records), len(tasks), "")
    # Clean interpreters, started fresh: nothing of this process, or of a student, is in them.
    fresh = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(workers or os.cpu_count(), fresh, _end_with_parent) as pool:
        running = {pool.submit(mark, task): student for student, task in waiting.items()}
        try:
            for future in as_completed(running):
                student = running[future]
                result = future.result() | {"copied": alike.get(student, [])}
                records[student] = _keep(course, set_id, result, tasks[student])
                _say(progress, len(records), len(tasks), course.roster.get(student, student))
        except BaseException:
            pool.shutdown(wait=False, cancel_futures=True)
            raise
    ordered = [records[student] for student in sorted(records)]
    record(course, set_id, ordered)
    return ordered


def _tasks(course, set_id):
    file = course.release(set_id)
    if not file.is_file():
        raise CourseError(f"set {set_id} was not handed out in this class: hand it out first.")
    # The key as it is now, not as it was handed out: a corrected key marks by what is right.
    key, released = for_term(key_file(set_id).read_bytes(), course.term), file.read_bytes()
    refuse_collisions(set_id, load_key(key).sheet, course.roster)
    common = [key, released, _library(), json.dumps(asdict(course.bounds)).encode()]
    tasks = {}
    for folder in sorted((course.folder / "submitted").glob(f"*/{set_id}")):
        student, hand_in = folder.parent.name, (folder / f"{set_id}.ipynb").read_bytes()
        stamp = (folder / "timestamp.txt").read_text(encoding="utf-8").strip()
        tasks[student] = {
            "key": key,
            "released": released,
            "hand_in": hand_in,
            "term": course.term,
            "student": student,
            "bounds": asdict(course.bounds),
            "handed_in": stamp,
            "digest": digest(b"\0".join([*common, stamp.encode(), hand_in])),
        }
    if not tasks:
        raise CourseError(f"nothing is taken in for set {set_id} yet: take hand-ins in first.")
    return tasks


def _library():
    """A digest of the library and of the marking, so that a mended formula marks again."""
    total = hashlib.sha256()
    for folder in (Path(kitchenmath.__file__).parent, Path(__file__).parent):
        for file in sorted(folder.rglob("*")):
            if file.suffix in (".py", ".csv", ".txt"):
                total.update(file.read_bytes())
    return total.digest()


def _earlier(course, set_id, student, task_digest):
    """The record of an earlier run of the very same task, or None."""
    try:
        found = json.loads(course.marks(set_id, student).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return None
    same = found.get("task") == task_digest and course.autograded(set_id, student).is_file()
    return found if same else None


def _with_copies(course, set_id, earlier, copied):
    """An earlier record as it is, or written anew where another hand-in has come to be like it."""
    if earlier.get("copied") != copied:
        earlier["copied"] = copied
        _write_record(course, set_id, earlier)
    return earlier


def _keep(course, set_id, result, task):
    """Write the marked copy and the record; the record last, as it is what says "done"."""
    student = task["student"]
    write_safely(course.autograded(set_id, student), result.pop("notebook"))
    result |= {
        "task": task["digest"],
        "handed_in": task["handed_in"],
        "sha256": digest(task["hand_in"]),
    }
    _write_record(course, set_id, result)
    return result


def _write_record(course, set_id, result):
    file = course.marks(set_id, result["student"])
    text = json.dumps(result, indent=1, ensure_ascii=False, sort_keys=True) + "\n"
    if file.is_file() and file.read_text(encoding="utf-8") != text:
        keep_earlier(course.folder, file, digest(file.read_bytes())[:8])
    write_safely(file, text)


def _alike(course, set_id):
    """By student, who has the same answers and what is the same; the instructor decides."""
    named = {}
    for one, other, reason in copies(course, set_id):
        named.setdefault(one, []).append([other, reason])
        named.setdefault(other, []).append([one, reason])
    return {student: sorted(others) for student, others in named.items()}


def _end_with_parent():
    """In a pool's process: end when the marker was killed, instead of waiting for it for ever."""

    def watch():
        multiprocessing.parent_process().join()
        os._exit(1)

    threading.Thread(target=watch, daemon=True).start()


def _say(progress, done, total, text):
    if progress:
        progress(done, total, text)
