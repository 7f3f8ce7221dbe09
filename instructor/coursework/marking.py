"""Marking one hand-in: a pure task, bytes in and result out, that any process can run.

The student's cells run in the student's room, another process. Here, in the marking room, only
plain values arrive, and only the key decides.
"""

import contextlib
import json
import math
import os
import signal
import subprocess
import sys
import tempfile
import threading
from dataclasses import asdict, replace
from pathlib import Path

from coursework.keys import grade_id, load_key, source
from coursework.pour import pour
from coursework.reading_in import UnreadableNotebook, read_notebook
from kitchenmath.practice import beside
from kitchenmath.units.registry import Quantity, registry

KIT = Path(__file__).resolve().parents[2]
ROOM = Path(__file__).with_name("student_room.py")


class Odd:
    """An answer that is no number, text or quantity; it shows as the name of its type."""

    def __init__(self, name):
        self.name = name

    def __repr__(self):
        return f"a “{self.name}”"


def mark(task):
    """Mark one hand-in.

    Parameters
    ----------
    task : dict
        `key`, `released` and `hand_in` (bytes), `term`, `student` (text), `bounds` (dict).

    Returns
    -------
    dict
        The record that marking leaves (see `Records` in the contributor guide), with `notebook`,
        our copy as it was marked, for a human to read.
    """
    key = load_key(task["key"], task["term"])
    bounds = task["bounds"]
    try:
        read = read_notebook(task["hand_in"], bounds["file_bytes"])
        cells, findings = read.cells, read.findings
    except UnreadableNotebook as error:
        cells, findings = (), (f"The file could not be read: {error}.",)
    poured = pour(task["released"], cells, bounds["answer_bytes"])
    ran, stopped = run_in_room(poured.notebook["cells"], bounds)
    verdicts = key.sheet.mark(task["student"], ran["answers"])
    verdicts = _with_failures(verdicts, poured, ran["outputs"])
    return {
        "set": key.set_id,
        "title": key.title,
        "student": task["student"],
        "findings": [*findings, *poured.findings, *stopped],
        "verdicts": _with_question(key, task["student"], verdicts),
        "human": [
            {
                "question": question,
                "asked": key.asked[question],
                "answer": poured.answers.get(f"{question}-answer", ""),
                "out_of": points,
            }
            for question, points in key.human.items()
        ],
        "notebook": _as_marked(poured.notebook, ran["outputs"], verdicts),
    }


def _with_failures(verdicts, poured, outputs):
    """Where an answer cell is filled in and still gave nothing, say what it stopped with."""
    said = dict(verdicts)
    for place, cell in enumerate(poured.notebook["cells"]):
        question = grade_id(cell).removesuffix("-answer")
        if question not in verdicts or verdicts[question].outcome != "missing":
            continue
        if poured.answers.get(f"{question}-answer") and f'{question} = ""' not in source(cell):
            last = (outputs.get(place, "").strip().splitlines() or ["it did not run"])[-1]
            words = f"The cell is filled in, and gave no answer. It ended with: {last[:200]}"
            said[question] = replace(verdicts[question], outcome="unreadable", sentence=words)
    return said


def run_in_room(cells, bounds):
    """Run a notebook's code cells in the student's room.

    Parameters
    ----------
    cells : list of dict
    bounds : dict

    Returns
    -------
    dict
        `outputs`: by place in `cells`, what each printed; `answers`: by question id.
    list of str
        What was stopped, in plain words.
    """
    code = [place for place, cell in enumerate(cells) if cell["cell_type"] == "code"]
    job = {
        "path": [str(KIT)],
        "output_bytes": bounds["output_bytes"],
        "cells": [
            {"source": source(cells[place]), "ask": _asks_for(cells[place])} for place in code
        ],
    }
    raw, stopped = _run(json.dumps(job).encode(), bounds)
    outputs, answers = {}, {}
    for line in raw.split(b"\n"):
        record = _record(line, len(code))
        if record is None:
            continue
        place = code[record["cell"]]
        outputs[place] = str(record.get("output", ""))
        if asked := _asks_for(cells[place]):
            answers[asked] = from_plain(record.get("value"))
    if len(outputs) < len(code) and not stopped:
        stopped = ["The code in this notebook ended the run before its last cell."]
    return {"outputs": outputs, "answers": answers}, stopped


def from_plain(value):
    """A plain value as it crossed the wall: text, number or quantity; anything odd is refused."""
    if not isinstance(value, dict):
        return None
    if isinstance(value.get("text"), str):
        return value["text"]
    number = value.get("number")
    if isinstance(number, int | float) and not isinstance(number, bool) and math.isfinite(number):
        return number if "units" not in value else _quantity(number, value["units"])
    return Odd(str(value.get("type", "thing"))[:60])


def _quantity(number, units):
    """A quantity from unit names and powers, each of which must be a unit of the kit."""
    known = isinstance(units, dict) and len(units) <= 8
    if not known or not all(
        name in registry._units and isinstance(power, int | float) and abs(power) <= 6
        for name, power in units.items()
    ):
        return Odd("quantity in unknown units")
    return Quantity(number, registry.UnitsContainer(units))


def _run(job, bounds):
    """The room's bytes, at most so many, and what was stopped."""
    with tempfile.TemporaryDirectory(prefix="room-") as folder:
        process = subprocess.Popen(
            [sys.executable, "-I", str(ROOM)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            cwd=folder,
            env=_environment(folder),
            start_new_session=True,
        )
        got, most = [], 4 * bounds["output_bytes"]
        reader = threading.Thread(target=_read, args=(process.stdout, got, most), daemon=True)
        reader.start()
        with contextlib.suppress(BrokenPipeError, OSError):
            process.stdin.write(job)
            process.stdin.close()
        reader.join(bounds["seconds"])
        late, full = reader.is_alive(), sum(map(len, got)) >= most
        _end(process)
        reader.join(5)
        process.stdout.close()
    if late:
        seconds = f"{bounds['seconds']:g}"
        return b"".join(got), [f"The code in this notebook was stopped after {seconds} seconds."]
    if full:
        return b"".join(got), ["The code in this notebook printed too much and was stopped."]
    return b"".join(got), []


def _read(stream, got, most):
    while most > 0 and (chunk := stream.read1(65536)):
        got.append(chunk)
        most -= len(chunk)


def _end(process):
    """End the room and whatever it started."""
    if os.name == "posix":
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(process.pid, signal.SIGKILL)
    else:
        process.kill()
    process.wait()


def _environment(folder):
    """Nothing of the instructor's own environment but what a process needs to start."""
    keep = {name: os.environ[name] for name in ("PATH", "SYSTEMROOT") if name in os.environ}
    return keep | {
        "HOME": folder,
        "IPYTHONDIR": folder,
        "MPLCONFIGDIR": folder,
        "MPLBACKEND": "agg",
        "PYTHONDONTWRITEBYTECODE": "1",
        "PYTHONUTF8": "1",
    }


def _record(line, cells):
    """One line of the room, read as hostile; None for whatever is not one of its records."""
    try:
        record = json.loads(line)
    except (ValueError, RecursionError):
        return None
    if not isinstance(record, dict) or type(record.get("cell")) is not int:
        return None
    return record if 0 <= record["cell"] < cells else None


def _asks_for(cell):
    """The answer that a check cell asks for: "q1-check" asks for q1."""
    name = grade_id(cell)
    return name.removesuffix("-check") if name.endswith("-check") else None


def _with_question(key, student, verdicts):
    """Each verdict as a record, with what was asked and with the student's numbers."""
    records = []
    for question, known in key.sheet.known(student):
        choices = key.sheet.choices.get(question.id, {})
        given = [f"{choice.label}: {beside(known[name])}" for name, choice in choices.items()]
        records.append(
            asdict(verdicts[question.id])
            | {
                "asked": key.asked[question.id],
                "given": given,
                "skill": question.skill,
                "lesson": question.lesson,
            }
        )
    return records


def _as_marked(notebook, outputs, verdicts):
    """Our copy with what its cells printed, and the verdict under each check cell."""
    for place, cell in enumerate(notebook["cells"]):
        if cell["cell_type"] != "code":
            continue
        text = outputs.get(place, "This cell did not run.")
        if (asked := _asks_for(cell)) in verdicts:
            verdict = verdicts[asked]
            text += f"\n{verdict.points:g} of {verdict.out_of:g} points. {verdict.sentence}"
        lines = text.splitlines(keepends=True)
        stream = {"name": "stdout", "output_type": "stream", "text": lines}
        cell["outputs"] = [stream] if text.strip() else []
        cell["execution_count"] = None
    return json.dumps(notebook, indent=1, ensure_ascii=False, sort_keys=True) + "\n"
