"""One hand-in's visit to the student's room: its cells go in, plain answers come out.

A cell that ends the room, by itself or by a bound, is left out, and the rest is run again without
it: one endless loop must not cost a student the answers below it.
"""

import json
from dataclasses import dataclass, field

from coursework.marking.room import words
from coursework.marking.room.door import NoRoom, new_rooms, rooms
from coursework.marking.room.plain import from_plain, whole
from coursework.sets.keys import grade_id, source

MOST_VISITS = 4  # the last one without every cell that ended one before
MOST_VALUE = 100_000  # bytes of a line besides what was printed


@dataclass
class Visit:
    """What came of a visit.

    Attributes
    ----------
    outputs : dict of int to str
        By place in the notebook, what each cell printed.
    answers : dict of str to value
        By question id.
    failed : set of int
        Places of the cells that ended with an error.
    stopped : dict of int to str
        By place, what stopped a cell that did not run to its end: "ran longer than …".
    findings : list of str
        Which bounds struck, and what was left out.
    """

    outputs: dict = field(default_factory=dict)
    answers: dict = field(default_factory=dict)
    failed: set = field(default_factory=set)
    stopped: dict = field(default_factory=dict)
    findings: list = field(default_factory=list)


def visit(cells, bounds):
    """Run a notebook's code cells in the student's room.

    Parameters
    ----------
    cells : list of dict
        Of the notebook, code and text.
    bounds : dict
        See `Bounds`.

    Returns
    -------
    Visit
    """
    asks = {place: asked_in(cell) for place, cell in enumerate(cells) if _is_code(cell)}
    left_out, findings, found = {}, [], _Found()
    total = left = bounds["seconds"]  # for all visits together
    for _ in range(MOST_VISITS):
        work = _work(cells, asks, left_out, bounds)
        came = _run(work, bounds, left)
        left -= came.seconds
        found = _read(came.raw, asks, bounds, cells).after(found)
        if found.finished and not came.why:
            break
        stopped = found.stopped_in
        if came.why == "seconds":
            findings.append(words.TOO_LONG.format(seconds=total))
            if stopped is not None:
                left_out[stopped] = words.CUT_OFF.format(seconds=total)
            break
        if stopped is None or stopped in left_out:
            findings.append(words.ENDED_ALL)
            break
        left_out[stopped] = _why(came.why, bounds)
        cell = _named(cells, stopped)
        findings.append(words.LEFT_OUT.format(cell=cell, why=left_out[stopped]))
    # Run again as an empty cell, it printed nothing; why it was left out is what there is to say.
    outputs = found.outputs | {place: f"This cell {why}." for place, why in left_out.items()}
    return Visit(outputs, found.answers, found.failed, left_out, findings + found.struck)


def asked_in(cell):
    """The answer that a check cell asks for: "q1-check" asks for q1; None in other cells."""
    name = grade_id(cell)
    return name.removesuffix("-check") if name.endswith("-check") else None


def _work(cells, asks, left_out, bounds):
    """The job: a cell that is left out stays as an empty one, so that its answer is asked for."""
    return {
        "cells": [
            {
                "place": place,
                "source": "" if place in left_out else source(cells[place]),
                "ask": ask,
            }
            for place, ask in asks.items()
        ],
        "bounds": bounds,
        "cell_seconds": bounds["cell_seconds"],
        "output_bytes": bounds["output_bytes"],
        "figures": bounds["figures"],
    }


def _run(work, bounds, seconds):
    most = 6 * bounds["output_bytes"] + MOST_VALUE * (1 + len(work["cells"]))
    here, code = rooms(), "\n".join(cell["source"] for cell in work["cells"])
    try:
        for slow, word in SLOW_WORDS.items():
            if word in code:
                here.load(slow)
        return here.run(work, most, seconds)
    except NoRoom:  # once more, with a new door
        return new_rooms(here).run(work, most, seconds)


SLOW_WORDS = {
    "matplotlib.pyplot": "matplotlib",
    "kitchenmath.figures": "kitchenmath.figures",
    "kitchenmath.panels": "kitchenmath.panels",
}


@dataclass
class _Found:
    """What one visit's lines say."""

    outputs: dict = field(default_factory=dict)
    answers: dict = field(default_factory=dict)
    failed: set = field(default_factory=set)
    struck: list = field(default_factory=list)
    finished: bool = False
    stopped_in: int | None = None

    def after(self, earlier):
        """The same, with what an earlier visit said of cells that this one did not reach."""
        self.failed |= earlier.failed - set(self.outputs)
        self.outputs = earlier.outputs | self.outputs
        self.answers = earlier.answers | self.answers
        return self


def _read(raw, asks, bounds, cells):
    """The lines of a room, each read as hostile; what is none of its records is passed by."""
    found = _Found()
    for line in raw.split(b"\n"):
        record = _record(line)
        if record.get("done") is True:
            found.finished = True
        place = record.get("began")
        if type(place) is int and place in asks:
            found.stopped_in = place
        place = record.get("cell")
        if type(place) is not int or place not in asks:
            continue
        found.stopped_in = None
        output = record.get("output")
        found.outputs[place] = whole(output) if isinstance(output, str) else ""
        if record.get("failed") is True:
            found.failed.add(place)
        if asks[place]:
            found.answers[asks[place]] = from_plain(record.get("value"))
        for said in _struck(record.get("struck"), _named(cells, place), bounds):
            if said not in found.struck:
                found.struck.append(said)
    return found


def _struck(names, cell, bounds):
    """Which bounds struck in a cell, a sentence each; the list itself may be anything."""
    for name in names if isinstance(names, list) else ():
        if isinstance(name, str) and name in words.STRUCK:
            yield f"{cell} {words.STRUCK[name].format(**bounds)} ({name})."


def _record(line):
    try:
        record = json.loads(line)
    except (ValueError, RecursionError):
        return {}
    return record if isinstance(record, dict) else {}


def _why(why, bounds):
    if why == "cell_seconds":
        return words.STRUCK[why].format(**bounds) + " (cell_seconds)"
    if why == "output":
        return words.STRUCK["output_bytes"].format(**bounds) + " (output_bytes)"
    return words.ENDED_ROOM


def _named(cells, place):
    """A cell as the instructor finds it: by its name in the set, or by its place."""
    name = grade_id(cells[place])
    return f"Cell {name}" if name else words.OWN_CELL.format(place=place + 1)


def _is_code(cell):
    return cell["cell_type"] == "code"
