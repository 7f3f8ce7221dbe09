"""Marking one hand-in: a pure task, bytes in and result out, that any process can run.

The student's cells run in the student's room, another process. Here, in the marking room, only
plain values arrive, and only the key decides.
"""

from dataclasses import fields, replace

from coursework.arriving.reading_in import UnreadableNotebook, read_notebook
from coursework.json_text import json_text
from coursework.marking import words
from coursework.marking.photos_along import photos_along, with_photos
from coursework.marking.pour import pour
from coursework.marking.room.visit import asked_in, visit
from coursework.records.copies import fingerprint
from coursework.records.record import Answered, Record, Written
from coursework.sets.keys import grade_id, load_key, source
from kitchenmath.practice import in_words


def mark(task):
    """Mark one hand-in.

    Parameters
    ----------
    task : dict
        `key`, `released` and `hand_in` (bytes), `term`, `student` (text), `bounds` (dict).

    Returns
    -------
    Record
    str
        Our copy as it was marked, a notebook for a human to read.
    """
    key = load_key(task["key"], task["term"], tried=())  # tried before it came here
    bounds = task["bounds"]
    try:
        read = read_notebook(task["hand_in"], bounds["file_bytes"])
    except UnreadableNotebook as error:
        return _for_a_human(key, task, words.NOT_READ, words.unreadable(error))
    cells, findings = read.cells, read.findings
    poured = pour(task["released"], cells, bounds["answer_bytes"], bounds["own_cells"])
    ran = visit(poured.notebook["cells"], bounds)
    try:
        verdicts = key.sheet.mark(task["student"], ran.answers)
    except Exception as error:
        # Whatever an answer is, it costs its student a look by a person, and the class nothing.
        return _for_a_human(
            key, task, words.NOT_MARKED, "", f"{type(error).__name__}: {error}"[:300]
        )
    verdicts = _with_failures(verdicts, poured, ran)
    photos, unseen = photos_along(read.photos, poured.notebook)
    record = Record(
        key.set_id,
        key.title,
        task["student"],
        _answered(key, task["student"], verdicts),
        _written(key, poured.answers),
        findings=(*findings, *poured.findings, *ran.findings),
        to_do=tuple(unseen),
        photos=tuple(sorted(photos)),
        alike=fingerprint(poured.answers),
    )
    return record, _as_marked(poured.notebook, ran.outputs, verdicts, photos)


def _for_a_human(key, task, note, finding, inside=""):
    """The record of a file that the kit cannot read or judge: all is open until a person marks it.

    `note` and `finding` are for the student; what went wrong `inside` is the instructor's.
    """
    verdicts = {
        question: replace(verdict, outcome="unreadable", points=None, notes=(note,))
        for question, verdict in key.sheet.mark(task["student"], {}).items()
    }
    unread = dict.fromkeys((f"{question}-answer" for question in key.human), words.SEE_THE_FILE)
    record = Record(
        key.set_id,
        key.title,
        task["student"],
        _answered(key, task["student"], verdicts),
        _written(key, unread),
        findings=(finding,) if finding else (),
        to_do=(words.by_hand(task["student"], key.set_id, inside),),
    )
    return record, task["released"].decode()


def _written(key, answers):
    """What waits for a human."""
    return tuple(
        Written(question, key.asked[question], answers.get(f"{question}-answer", ""), points)
        for question, points in key.human.items()
    )


def _with_failures(verdicts, poured, ran):
    """Where an answer cell is filled in and gave nothing: what it holds, and what happened."""
    said = dict(verdicts)
    for place, cell in enumerate(poured.notebook["cells"]):
        question = grade_id(cell).removesuffix("-answer")
        if question not in verdicts or verdicts[question].outcome != "missing":
            continue
        text = poured.answers.get(f"{question}-answer")
        if text and f'{question} = ""' not in source(cell):
            note = words.no_answer(
                question, ran.stopped.get(place), ran.outputs.get(place), place in ran.failed
            )
            said[question] = replace(
                verdicts[question], outcome="unreadable", notes=(note,), answer=text.strip()
            )
    return said


def _answered(key, student, verdicts):
    """Each verdict with what was asked and with the student's numbers."""
    answered = []
    for question in key.sheet.questions.values():
        given = key.sheet.numbers_in_words(question.id, student)
        verdict = verdicts[question.id]
        answered.append(
            Answered(
                asked=key.asked[question.id],
                given=tuple(map(": ".join, given)),
                skill=question.skill,
                lesson=question.lesson,
                **{one.name: getattr(verdict, one.name) for one in fields(verdict)},
            )
        )
    return tuple(answered)


def _as_marked(notebook, outputs, verdicts, photos):
    """Our copy with what its cells printed, the verdict under each check cell, and the photos."""
    for place, cell in enumerate(notebook["cells"]):
        if cell["cell_type"] != "code":
            continue
        text = outputs.get(place, words.NOT_RUN)
        if (asked := asked_in(cell)) in verdicts:
            verdict = verdicts[asked]
            text += f"\n{verdict.points:g} of {verdict.out_of:g} points. {in_words(verdict)}"
        lines = text.splitlines(keepends=True)
        stream = {"name": "stdout", "output_type": "stream", "text": lines}
        cell["outputs"] = [stream] if text.strip() else []
        cell["execution_count"] = None
    with_photos(notebook, photos)
    return json_text(notebook)
