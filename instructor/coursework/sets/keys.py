"""Keys: one a set, with text, answers and marking. The only source of an assignment.

A key is run once when it is loaded. Running it fills its sheet with the questions, so judging a
student later is a call on plain values; and it proves that the key can be trusted: the model
answers earn all the points, and no slip passes for the right answer.
"""

import contextlib
import io
import json
import re
import threading
from dataclasses import dataclass
from functools import lru_cache

from coursework.errors import CourseError
from kitchenmath.practice import Sheet

# Numbers drawn beside the roster's own when slips are tried against the right answer.
TRIED = tuple(f"TRIED-{i:03d}" for i in range(100))

# Running a key turns this process's output aside for a moment: one thread at a time.
_ONE_KEY = threading.Lock()


@dataclass(frozen=True)
class Key:
    """A key that was loaded and found good.

    Attributes
    ----------
    set_id, title : str
    cells : tuple of dict
        As in the file.
    sheet : Sheet
        With every question that is marked by its number.
    asked : dict of str to str
        Question id to its text (markdown).
    human : dict of str to float
        Question id to points, for the cells that a human marks.
    points : dict of str to float
        Question id to points, for all.
    """

    set_id: str
    title: str
    cells: tuple
    sheet: Sheet
    asked: dict
    human: dict
    points: dict

    def scheme(self, question):
        """The mark scheme of a written question, as it stands in the key's answer cell."""
        return _scheme(self.cells, question)


def scheme_in(raw, question):
    """The mark scheme of a written question, out of a key's bytes; nothing in it is run.

    Parameters
    ----------
    raw : bytes
    question : str

    Returns
    -------
    str
    """
    return _scheme(json.loads(raw)["cells"], question)


def _scheme(cells, question):
    return next(source(cell) for cell in cells if cell.get("id") == f"{question}-answer")


def load_key(raw, term=None, tried=TRIED):
    """The key in a notebook's bytes, run and checked.

    Parameters
    ----------
    raw : bytes
    term : str, optional
        The class's term, where it is not the one written in the key.
    tried : tuple of str
        Students with whose numbers every slip is tried against the right answer; none where that
        was done before.

    Returns
    -------
    Key

    Raises
    ------
    CourseError
        When two questions share an id, a model answer does not earn all its points, a slip passes
        for the right answer, or a cell of the key fails.
    """
    with _ONE_KEY:
        return _loaded(bytes(raw), term, tuple(tried))


@lru_cache(maxsize=16)
def _loaded(raw, term, tried):
    try:
        notebook = json.loads(raw)
        cells = tuple(notebook["cells"])
        kitchen = notebook["metadata"]["kitchen"]
    except (ValueError, KeyError, TypeError) as error:
        raise CourseError(f"this key is no notebook of the kit ({error}).") from None
    set_id = kitchen["set"]
    _refuse_doubled(set_id, cells)
    points = {_question(cell): float(_flags(cell)["points"]) for cell in cells if _graded(cell)}
    sheet = _run(set_id, cells, term or kitchen["term"])
    _refuse_bad_answers(set_id, sheet, cells, points)
    refuse_collisions(set_id, sheet, tried)
    human = {_question(cell): points[_question(cell)] for cell in cells if _human(cell)}
    texts = {cell.get("id", ""): "".join(cell["source"]) for cell in cells}
    asked = {question: texts.get(f"{question}-text", "") for question in points}
    return Key(set_id, kitchen["title"], cells, sheet, asked, human, points)


def refuse_collisions(set_id, sheet, students):
    """Refuse a key with which some student's slip would pass for the right answer.

    Raises
    ------
    CourseError
    """
    found = sheet.collisions(students)
    if found:
        student, question, slip = found[0]
        raise CourseError(
            f"key {set_id}, {question}: the slip “{slip}” gives the right answer with the numbers "
            f"of {student}. Make the tolerance smaller, change the steps, or let the slip's "
            "formula return None where it makes no difference."
        )


def source(cell):
    """A cell's text; files hold it in lines."""
    return cell["source"] if isinstance(cell["source"], str) else "".join(cell["source"])


def grade_id(cell):
    """The name under which nbgrader knows a cell: "q1-answer", "q1-check"; "" where it has none."""
    return _flags(cell).get("grade_id", "")


def _flags(cell):
    return cell.get("metadata", {}).get("nbgrader", {})


def _graded(cell):
    return _flags(cell).get("grade", False)


def _human(cell):
    return _graded(cell) and _flags(cell).get("solution", False)


def _question(cell):
    """Question id of a graded cell: "q1-check" and "q6-answer" belong to q1 and q6."""
    return _flags(cell)["grade_id"].rpartition("-")[0]


def _refuse_doubled(set_id, cells):
    names = [_flags(cell)["grade_id"] for cell in cells if "grade_id" in _flags(cell)]
    ids = [cell["id"] for cell in cells if "id" in cell]
    doubled = sorted({each for each in names if names.count(each) > 1})
    doubled = doubled or sorted({each for each in ids if ids.count(each) > 1})
    if doubled:
        raise CourseError(f"key {set_id}: two cells share the id {', '.join(doubled)}.")


def _run(set_id, cells, term):
    """The key's sheet after its code ran from top to bottom; what it prints is not wanted here."""
    space = {"__name__": "key"}
    for cell in cells:
        if cell["cell_type"] != "code":
            continue
        text = with_term(source(cell), term) if cell.get("id") == "open-set" else source(cell)
        try:
            with contextlib.redirect_stdout(io.StringIO()):
                exec(compile(text, f"key {set_id}, cell {cell.get('id')}", "exec"), space)
        except Exception as error:
            where = f"key {set_id}, cell {cell.get('id')}"
            raise CourseError(f"{where}: {type(error).__name__}: {error}") from error
    if not isinstance(space.get("sheet"), Sheet):
        raise CourseError(f"key {set_id}: no cell makes “sheet” with open_set.")
    return space["sheet"]


def with_term(text, term):
    """The cell that opens a set, for another term."""
    changed, count = re.subn(r'term="[^"]*"', f'term="{term}"', text)
    if count != 1:
        raise CourseError('the cell that opens a set must say term="…" exactly once.')
    return changed


def _refuse_bad_answers(set_id, sheet, cells, points):
    checked = {_question(cell) for cell in cells if _graded(cell) and not _human(cell)}
    if checked != sheet.questions.keys():
        odd = ", ".join(sorted(checked ^ sheet.questions.keys()))
        raise CourseError(f"key {set_id}: check cells and awarded questions differ in {odd}.")
    for question, verdict in sheet.mark(sheet.student, sheet.answers).items():
        if verdict.points != points[question] or verdict.out_of != points[question]:
            raise CourseError(
                f"key {set_id}, {question}: the model answer {verdict.answer} earns "
                f"{verdict.points:g} of {points[question]:g}; the formula says {verdict.right}."
            )
