"""Which key marks a class: the one its set was handed out with, until a person takes a newer one.

A newer kit may draw other numbers; then every answer given so far would be wrong. So the kit's own
key is seen and offered, and taken by a decision only. A key that was once in use stays in the
class's folder `keys`, so that taking back finds it.
"""

import contextlib
import json
from pathlib import Path

from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.safe_files import digest, write_safely
from coursework.sets.checked_keys import library
from coursework.sets.key_text import key_notebook, keys_digest, set_ids
from coursework.sets.keys import source, with_term

FIRST = "as-handed-out"
CODE_TEXT = "\nBelow it, **your code**: your instructor gave it to you, and nobody else has it."


def class_key(course, set_id):
    """The key that marks a class.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    bytes

    Raises
    ------
    CourseError
        When the set is not handed out.
    """
    file = course.key(set_id)
    if not file.is_file():
        raise CourseError(f"“{set_id}” is not handed out to this class yet: hand it out first.")
    return file.read_bytes()


def kits_key(course, set_id):
    """The kit's own key as this class would get it today, with its term and conventions.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    bytes

    Raises
    ------
    CourseError
        When there is no such set.
    """
    raw = key_notebook(set_id, course.college)
    if course.student_codes:
        raw = with_code(raw)
    if course.numbers_like:
        raw = with_numbers_like(raw, course.numbers_like)
    return for_term(raw, course.term)


def newer_key(course, set_id, holds=None):
    """The kit's key as it is offered: nobody took it yet, and nobody declined it.

    Parameters
    ----------
    course : Course
    set_id : str
    holds : Holding, optional
        What is decided, where it is known already.

    Returns
    -------
    str
        Its SHA-256; "" where nothing is to be offered.
    """
    found = other_key(course, set_id)
    if not found:
        return ""
    holds = holds or holding(decisions_of(course))
    return "" if (set_id, found) in holds.declined_keys else found


def other_key(course, set_id):
    """The SHA-256 of the kit's key, where it is another than the class's.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    str
        "" where they are the same, and for a set of which the kit has no key any more.
    """
    if not course.key(set_id).is_file() or set_id not in set_ids():
        return ""
    kits = _kits_digest(course, set_id)
    return "" if kits == digest(class_key(course, set_id)) else kits


def _kits_digest(course, set_id):
    """The digest of the kit's key, remembered by all that it is made from: reading a key takes two
    seconds at first, and the desk asks after each step."""
    of_class = repr((course.college, course.student_codes, course.numbers_like, course.term))
    made_from = digest(b"\0".join([keys_digest().encode(), library(), of_class.encode()]))
    file = course.release(set_id).with_name(".kits-key")
    known = ""
    with contextlib.suppress(OSError, UnicodeDecodeError):
        known, _, found = file.read_text(encoding="utf-8").strip().partition(" ")
    if known != made_from:
        found = digest(kits_key(course, set_id))
        write_safely(file, f"{made_from} {found}\n", lasting=False)
    return found


def keep_keys(course, set_id, sha256):
    """Keep the class's key and the kit's, before a decision names the kit's.

    Parameters
    ----------
    course : Course
    set_id, sha256 : str
        The digest of the key that a person looked at.

    Returns
    -------
    bytes
        The kit's key.

    Raises
    ------
    CourseError
        When the kit's key is no longer the one that was looked at.
    """
    key = kits_key(course, set_id)
    if digest(key) != sha256:
        raise CourseError(f"“{set_id}”: the kit's key has changed since. Look again first.")
    if not (first := kept_key(course, set_id, FIRST)).is_file():
        write_safely(first, class_key(course, set_id))
    write_safely(kept_key(course, set_id, sha256), key)
    return key


def kept_key(course, set_id, name):
    """Where a class keeps a key that was or is in use.

    Parameters
    ----------
    course : Course
    set_id : str
    name : str
        Its SHA-256, or `FIRST`.

    Returns
    -------
    Path
    """
    return Path(course.folder) / "keys" / set_id / f"{name}.ipynb"


def for_term(raw, term):
    """The key with the class's term in the cell that opens the set, and in the metadata."""
    notebook = json.loads(raw)
    for cell in notebook["cells"]:
        if cell.get("id") == "open-set":
            cell["source"] = with_term(source(cell), term).splitlines(keepends=True)
    notebook["metadata"]["kitchen"]["term"] = term
    return (json.dumps(notebook, indent=1, ensure_ascii=False, sort_keys=True) + "\n").encode()


def with_code(raw):
    """The key with a line for the student's code in the first cell that a student fills in."""
    notebook = json.loads(raw)
    for cell in notebook["cells"]:
        if cell.get("id") == "me-text":
            cell["source"] = (source(cell) + CODE_TEXT).splitlines(keepends=True)
        if cell.get("id") == "me":
            first, _, rest = source(cell).partition("\n")
            cell["source"] = f'{first}\ncode = ""\n{rest}'.splitlines(keepends=True)
    return json.dumps(notebook, ensure_ascii=False).encode()


def with_numbers_like(raw, example):
    """The key with one of the class's numbers in the cell that opens the set."""
    notebook = json.loads(raw)
    for cell in notebook["cells"]:
        if cell.get("id") == "open-set":
            like = f'student=student, like="{example}"'
            text = source(cell).replace("student=student", like, 1)
            cell["source"] = text.splitlines(keepends=True)
    return json.dumps(notebook, ensure_ascii=False).encode()
