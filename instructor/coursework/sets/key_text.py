"""A key as its author writes it: a text file in the percent format, read with jupytext.

The name of a cell says what it is, and everything that nbgrader wants to know of it follows from
the name, so no key carries metadata:

| name | what it is |
|---|---|
| `title`, `me-text`, `q1-text`, `hand-in` | text; the heading of a question says its points |
| `me`, `q1-answer` | what the student fills in; an answer in text is marked by a person |
| `q1-photo` | code that students may change and that is not marked: a photo goes along with it |
| `q1-given`, `mine`, `open-set`, `last-look` | code that students run and do not change |
| `q1-check` | looks at the answer; below "### BEGIN HIDDEN TESTS" it is marked |
| `q1-again` | names a question of another set, which stands here (`earlier_questions.py`) |
"""

import json
import re
from functools import lru_cache, partial

from coursework.classes.college import college_text
from coursework.classes.course import KEYS
from coursework.errors import CourseError
from coursework.safe_files import digest
from coursework.sets.earlier_questions import with_earlier
from kitchenmath.conventions import OURS, conventions_of
from kitchenmath.conventions.in_words import filled
from kitchenmath.practice.typed_cells import PHOTO

KERNEL = {"display_name": "Python 3", "language": "python", "name": "python3"}
# A question's heading ends in its points: "## 6. From your bench (4 points, marked by …)".
POINTS = re.compile(r"^## .*\((?P<points>\d+(?:\.\d+)?) points?\b", re.MULTILINE)
TITLE = re.compile(r"# (?P<place>(?:Set|Review) \d+): (?P<title>.+)")
TERM = re.compile(r'term="(?P<term>[^"]*)"')
NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
GIVEN, ANSWER, CHECK, WITH_PHOTO = "given", "answer", "check", PHOTO.removeprefix("-")
FOLDED = (GIVEN, CHECK)  # what a student need not read lies folded


def key_file(set_id):
    """Where the key of a set lies.

    Raises
    ------
    CourseError
        When there is none; the message lists those there are.
    """
    file = KEYS / f"{set_id}.py"
    if not file.is_file():
        raise CourseError(f"there is no set “{set_id}”. There are: {', '.join(set_ids())}.")
    return file


def set_ids():
    """Ids of all sets that have a key, in order."""
    return sorted(path.stem for path in KEYS.glob("*.py"))


def keys_digest():
    """One digest of the texts of all keys, for a review asks questions of others.

    The desk asks for it with each set after each step, so they are read anew only where one of
    them changed.

    Returns
    -------
    str
    """
    files = ((path, path.stat()) for path in sorted(KEYS.glob("*.py")))
    return _digest_of(tuple((path, it.st_mtime_ns, it.st_size) for path, it in files))


@lru_cache(maxsize=1)
def _digest_of(stamped):
    return digest(b"\0".join(path.read_bytes() for path, *_ in stamped))


@lru_cache(maxsize=1)
def set_titles():
    """The title of each set, by its id and in order: "Buy enough".

    Returns
    -------
    dict of str to str
        The id where a key does not say its title.
    """
    found = {}
    for set_id in set_ids():
        title = TITLE.search(key_file(set_id).read_text(encoding="utf-8"))
        found[set_id] = title["title"] if title else set_id
    return found


def set_labels():
    """What each set is called where one is chosen: "4. Buy enough", "Review 1. Back over …".

    Returns
    -------
    dict of str to str
    """
    labels = {}
    for set_id, title in set_titles().items():
        place = TITLE.search(key_file(set_id).read_text(encoding="utf-8"))
        called = place["place"].removeprefix("Set ") if place else set_id
        labels[set_id] = f"{called}. {title}"
    return labels


def key_notebook(set_id, college=OURS):
    """A set's key as the notebook that hands out and marks.

    Parameters
    ----------
    set_id : str
    college : Conventions
        Whose prices, cuts and limits its places such as {{ money: 3.48 }} show; they stand in the
        cell that opens the set, where the library reads them.

    Returns
    -------
    bytes
        The same text gives the same bytes.

    Raises
    ------
    CourseError
        When there is no such set, or its text is no key.
    """
    text = key_file(set_id).read_text(encoding="utf-8")
    return notebook_of(set_id, text, college_text(college))


def notebook_of(set_id, text, college=""):
    """A key's text as a notebook with nbgrader's flags.

    Parameters
    ----------
    set_id : str
    text : str
    college : str
        As `conventions_of` reads it.

    Returns
    -------
    bytes

    Raises
    ------
    CourseError
        When a cell has no name, or title, term or points are not said.
    """
    shown = conventions_of(college)
    text = filled(text, shown)
    if college:
        text = text.replace("student=student", f'student=student, college="{college}"', 1)
    cells = with_earlier(set_id, _cells(set_id, text), partial(_cells_of, shown))
    texts = {cell["id"]: cell["source"] for cell in cells}
    for cell in cells:
        cell["metadata"] = _flags(set_id, cell, texts)
    kitchen = {
        "set": set_id,
        "title": _said(TITLE, texts.get("title", ""), set_id, "title", "# Set 4: Buy enough"),
        "term": _said(TERM, texts.get("open-set", ""), set_id, "open-set", 'term="demo"'),
    }
    kitchen |= {"college": college} if college else {}
    notebook = {"cells": cells, "metadata": {"kernelspec": KERNEL, "kitchen": kitchen},
                "nbformat": 4, "nbformat_minor": 5}  # fmt: skip
    return (json.dumps(notebook, indent=1, ensure_ascii=False, sort_keys=True) + "\n").encode()


def _cells_of(shown, set_id):
    """The cells of another set's key, with the same college's prices, cuts and limits."""
    return _cells(set_id, filled(key_file(set_id).read_text(encoding="utf-8"), shown))


def _cells(set_id, text):
    return [dict(cell) for cell in _parsed(set_id, text)]


@lru_cache(maxsize=64)
def _parsed(set_id, text):
    import jupytext  # takes two seconds to load, and a class marks with the key that it keeps

    return [_cell(set_id, cell) for cell in jupytext.reads(text, fmt="py:percent").cells]


def _cell(set_id, read):
    """A cell of a notebook, named by the title that stands behind its "# %%"."""
    name = read.metadata.get("title", "")
    if not NAME.fullmatch(name):
        first = read.source.partition("\n")[0]
        raise CourseError(
            f"key {set_id}: the cell “{first}” has no name; write one behind “# %%”, as in "
            "“# %% q1-given”."
        )
    # Blank lines that layout wants before a comment would stay in the student's cell.
    text = re.sub(r"\n{2,}(?=### BEGIN )", "\n", read.source)
    cell = {"cell_type": read.cell_type, "id": name, "source": text}
    code = {"execution_count": None, "outputs": []} if read.cell_type == "code" else {}
    return cell | code


def _flags(set_id, cell, texts):
    """What nbgrader wants to know of a cell, from its name alone."""
    name = cell["id"]
    question, _, part = name.rpartition("-")
    answer = part == ANSWER or name == "me"
    by_hand = part == ANSWER and cell["cell_type"] == "markdown"
    graded, open_ = part == CHECK or by_hand, answer or part == WITH_PHOTO
    flags = {"grade": graded, "grade_id": name, "locked": not open_, "schema_version": 3,
             "solution": answer, "task": False}  # fmt: skip
    if graded:
        heading = f"{question}-text"
        points = _said(POINTS, texts.get(heading, ""), set_id, heading, "## 1. … (3 points)")
        flags["points"] = float(points) if "." in points else int(points)
    folded = {"jupyter": {"source_hidden": True}} if part in FOLDED else {}
    return folded | {"nbgrader": flags}


def _said(what, text, set_id, name, example):
    found = what.search(text)
    if not found:
        raise CourseError(f"key {set_id}: the cell “{name}” must say “{example}”.")
    return found[found.lastindex]
