"""The notebook that is marked is always ours: only the text of the answers is poured in.

Locked text, check cells, points, order and metadata of a hand-in have nothing to act on. A written
answer stands in it fenced: whoever opens the notebook reads it, and nothing in it is carried out.
"""

import copy
import json
from dataclasses import dataclass

from coursework.marking import words
from coursework.marking.inert import fenced
from coursework.sets.keys import grade_id, source
from kitchenmath.practice.typed_cells import as_code, without_unseen


@dataclass(frozen=True)
class Poured:
    """Our copy with the student's answers.

    cells: list of dict, in order; the student's own extra cells stand where they stood.
    answers: answer text by grade id, "" where nothing was filled in.
    findings: what was odd, in plain words.
    """

    notebook: dict
    answers: dict
    findings: tuple


def pour(released, cells, answer_bytes, own_cells):
    """Pour a student's answers into the released copy.

    Parameters
    ----------
    released : bytes
        The notebook that was handed out.
    cells : list
        The hand-in's cells, with `cell_type`, `source`, `id` and `grade_id`.
    answer_bytes : int
        An answer longer than this is left out, and said so.
    own_cells : int
        Of the student's own code cells so many are taken along, and it is said if there are more.

    Returns
    -------
    Poured
    """
    ours = json.loads(released)
    places = _places(ours["cells"], cells)
    findings, answers = [], {}
    for index, cell in enumerate(ours["cells"]):
        flags = cell.get("metadata", {}).get("nbgrader", {})
        if not flags.get("solution"):
            continue
        text, found = _answer(index, cell, cells, places)
        findings += [f"{flags['grade_id']}: {each}" for each in found]
        if _bytes_in(text) > answer_bytes:
            findings.append(words.too_long(flags["grade_id"], answer_bytes))
            text = ""
        filled = _bare(text) != _bare(source(cell))
        answers[flags["grade_id"]] = text if filled else ""
        if filled and cell["cell_type"] == "code":  # a text that is no Python is a typed answer
            text = as_code(text, flags["grade_id"].removesuffix("-answer"))
        cell["source"] = _shown(cell, text) if filled else source(cell)
    extras, odd = _own_cells(cells, places, answer_bytes, own_cells)
    ours["cells"] = _with_extras(ours["cells"], extras)
    return Poured(ours, answers, (*findings, *odd))


def _own_cells(cells, places, longest, most):
    """The student's own code, by the cell that it follows, and what of it was left out."""
    extras, odd = {}, []
    own = [
        (place.after, cells[position].source)
        for position, place in enumerate(places)
        if place.extra and cells[position].cell_type == "code" and cells[position].source.strip()
    ]
    for after, text in own[:most]:
        if _bytes_in(text) <= longest:
            extras.setdefault(after, []).append(without_unseen(text))
        else:
            odd.append(words.own_too_long(longest))
    if len(own) > most:
        odd.append(words.more_than_run(len(own), most))
    return extras, odd


def _bytes_in(text):
    return len(text.encode("utf-8", "replace"))


@dataclass
class _Place:
    """Where a hand-in's cell belongs: the index of our cell, or after which one it stands."""

    ours: int | None
    after: int
    by: str  # "id", "text" or "place"
    extra: bool = False


def _places(ours, cells):
    """Where each cell of the hand-in belongs: by id, else by locked text, else between."""
    by_id = {cell["id"]: index for index, cell in enumerate(ours) if "id" in cell}
    by_id |= {grade_id(cell): index for index, cell in enumerate(ours) if grade_id(cell)}
    by_text = {_bare(source(cell)): i for i, cell in enumerate(ours) if not _is_answer(cell)}
    places, after = [], -1
    for cell in cells:
        index, by = by_id.get(cell.grade_id, by_id.get(cell.id)), "id"
        if index is None:
            index, by = by_text.get(_bare(cell.source)), "text"
        after = after if index is None else index
        places.append(_Place(index, after, by))
    _fill_by_place(ours, cells, places)
    return places


def _fill_by_place(ours, cells, places):
    """Cells without a name between two named ones are the answer that is missing there."""
    named = {place.ours for place in places if place.ours is not None}
    for position, place in enumerate(places):
        if place.ours is not None:
            continue
        here = place.after + 1
        if (
            here < len(ours)
            and _is_answer(ours[here])
            and here not in named
            and cells[position].source.strip()
        ):
            place.ours, place.by = here, "place"
        else:
            place.extra = True


def _answer(index, ours, cells, places):
    """The answer's text and what was odd: of several copies the last one that is filled in."""
    mine = [(cells[p].source, place.by) for p, place in enumerate(places) if place.ours == index]
    by_place = [text for text, by in mine if by == "place"]
    if by_place:
        return "\n".join(by_place), [words.BY_PLACE]
    filled = [text for text, _ in mine if text.strip() and _bare(text) != _bare(source(ours))]
    found = []
    if len(mine) > 1:
        found.append(words.several_copies(len(mine)))
    if not mine:
        found.append(words.CELL_GONE)
    return (filled[-1] if filled else source(ours)), found


def _shown(cell, text):
    """An answer as it stands in our copy: code to run, or a text that nothing renders."""
    return text if cell["cell_type"] == "code" else fenced(text)


def _with_extras(cells, extras):
    """Our cells with the student's own code cells after the ones they followed."""
    result = []
    for index, cell in enumerate([None, *cells], start=-1):
        if cell is not None:
            result.append(cell)
        for number, text in enumerate(extras.get(index, []), start=1):
            extra = {"cell_type": "code", "execution_count": None, "metadata": {}, "outputs": []}
            result.append(copy.copy(extra) | {"id": f"own-{index + 1}-{number}", "source": text})
    return result


def _is_answer(cell):
    return bool(cell.get("metadata", {}).get("nbgrader", {}).get("solution"))


def _bare(text):
    """Text without the differences that editors make: trailing spaces, line ends."""
    return "\n".join(line.rstrip() for line in text.strip().splitlines())
