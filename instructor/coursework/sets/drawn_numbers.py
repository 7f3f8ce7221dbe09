"""What each student was asked, remembered when a set goes out: nothing asks anew in silence.

A key draws a student's numbers through the library. A newer library may draw others from the same
key, or hold another answer for right; another term in the class's file does so too. Work that was
right would then be marked as wrong. So what is drawn now is compared before each marking with what
went out, and only the decision “newer numbers” lets the others count.
"""

import contextlib
import json
from pathlib import Path

from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.json_text import json_text
from coursework.records.reading import usable_records
from coursework.safe_files import digest, write_safely
from coursework.sets.checked_keys import library
from coursework.sets.class_keys import FIRST, class_key
from coursework.sets.keys import load_key
from coursework.words import plural

__all__ = ["asked", "handed_out_numbers", "keep_numbers", "other_numbers", "refuse_other_numbers"]


def asked(key, student):
    """A student's numbers and the right answer, as they are said, by question.

    Parameters
    ----------
    key : Key
    student : str

    Returns
    -------
    dict of str to (tuple of str, str)
    """
    right = {name: verdict.right for name, verdict in key.sheet.mark(student, {}).items()}
    found = {}
    for question in key.sheet.questions:
        given = key.sheet.numbers_in_words(question, student)
        found[question] = tuple(map(": ".join, given)), right[question]
    return found


def handed_out_numbers(course, set_id, holds=None):
    """What the class was asked, as it is remembered.

    Parameters
    ----------
    course : Course
    set_id : str
    holds : Holding, optional
        What is decided, where it is known already.

    Returns
    -------
    dict of str to dict of str to (tuple of str, str)
        As `asked`, by student. For a set that went out before this was remembered, what stands in
        the records of marked work; the right answer is "" there.
    """
    kept = _in_force(course, set_id, holds)
    if not kept.is_file():
        return _in_records(course, set_id) if kept == _numbers_file(course, set_id, FIRST) else {}
    read = json.loads(kept.read_text(encoding="utf-8"))
    return {
        student: {name: (tuple(given), right) for name, (given, right) in those.items()}
        for student, those in read.items()
    }


def other_numbers(course, set_id, holds=None):
    """Whether the kit asks somebody else than what went out; who is new to the list is added.

    Parameters
    ----------
    course : Course
    set_id : str
        One that is handed out.
    holds : Holding, optional

    Returns
    -------
    str
        The SHA-256 of all that is asked now; "" where nothing differs.

    Notes
    -----
    Asking all students takes about a second, so the answer is remembered with all it rests on.
    """
    if not course.key(set_id).is_file():
        return ""  # marking says that the key is missing; what is next in the class is still told
    kept = _in_force(course, set_id, holds)
    key = class_key(course, set_id)
    file = course.release(set_id).with_name(".numbers")
    with contextlib.suppress(OSError, UnicodeDecodeError):
        known, _, found = file.read_text(encoding="utf-8").strip().partition(" ")
        if known == _rests_on(course, key, kept):
            return found
    before, now = handed_out_numbers(course, set_id, holds), _asked_now(course, key)
    found = _sha256(now) if _met(before, now) else ""
    if not found and (now.keys() - before.keys() or not kept.is_file()):
        write_safely(kept, json_text(before | now))
    write_safely(file, f"{_rests_on(course, key, kept)} {found}\n", lasting=False)
    return found


def refuse_other_numbers(course, set_id):
    """Refuse to go on where students would be asked something else than what went out.

    Parameters
    ----------
    course : Course
    set_id : str

    Raises
    ------
    CourseError
        With how many students it meets, and what to do.
    """
    if not other_numbers(course, set_id):
        return
    before, now = handed_out_numbers(course, set_id), _asked_now(course, class_key(course, set_id))
    met = plural(len(_met(before, now)), "student")
    raise CourseError(
        f"“{set_id}”: the kit asks {met} for other numbers, or takes another "
        "answer for right, than when the set went out: the kit is another one since, or the "
        "class's term is. Nothing is marked, and no points are changed. Look whose numbers would "
        "change with the decision “newer numbers”, and take them; or put the kit or the term back "
        "that the set went out with."
    )


def keep_numbers(course, set_id, sha256):
    """Keep what is asked now, before a decision names it.

    Parameters
    ----------
    course : Course
    set_id, sha256 : str
        The digest of what a person looked at.

    Raises
    ------
    CourseError
        When something else is asked by now.
    """
    now = _asked_now(course, class_key(course, set_id))
    if _sha256(now) != sha256:
        raise CourseError(f"“{set_id}”: what the kit asks has changed since. Look again first.")
    write_safely(_numbers_file(course, set_id, sha256), json_text(now))


def _met(before, now):
    """Students who were asked one thing and would be asked another now."""
    return [one for one in now if _differs(before.get(one, {}), now[one])]


def _differs(before, now):
    for question, (given, right) in before.items():
        given_now, right_now = now.get(question, ((), ""))
        if given != given_now or (right and right != right_now):
            return True
    return False


def _in_records(course, set_id):
    try:
        records, _ = usable_records(course, set_id)
    except CourseError:  # nothing is marked yet
        return {}
    return {
        record.student: {one.question: (one.given, "") for one in record.answered}
        for record in records
    }


def _asked_now(course, raw):
    key = load_key(raw, course.term, tried=())
    return {student: asked(key, student) for student in course.roster}


def _sha256(now):
    return digest(json_text(now).encode())


def _in_force(course, set_id, holds=None):
    """The list that holds: of the first key, of a newer one, or of the numbers taken since."""
    holds = holds or holding(decisions_of(course))
    taken = [one[set_id] for one in (holds.newer_keys, holds.newer_numbers) if set_id in one]
    last = max(taken, key=lambda one: one.number, default=None)
    return _numbers_file(course, set_id, last.file if last else FIRST)


def _numbers_file(course, set_id, name):
    return Path(course.folder) / "keys" / set_id / f"{name}.numbers.json"


def _rests_on(course, key, kept):
    """A digest of all that decides whether something else is asked."""
    there = kept.read_bytes() if kept.is_file() else b""
    of_class = "\n".join([course.term, *sorted(course.roster)]).encode()
    return digest(b"\0".join([key, library(), of_class, there]))
