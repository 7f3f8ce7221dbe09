"""The re-teach sheet as a notebook: what it says, in which order, and how it is stored."""

import json
import re
from dataclasses import dataclass

from coursework.sets.notebooks import KERNEL, NOT_STORED
from coursework.skills.fresh import Fresh
from coursework.skills.go_back import lesson_name, places

__all__ = ["Part", "as_text", "practice_notebook"]

STUB = "# Type your answer between the quotes, then press Shift + Enter."
INTRODUCTION = """\
# Practise again

For {whom}.
These questions train what has not come right yet.
**Nothing here is graded, and nothing is handed in.**
The numbers are drawn afresh, for practice only.

Run each cell from the top down with Shift + Enter.
Type each answer between the quotes, as you would write it on a card:
`"4.2 kg"`, `"9 lb 4 oz"`, `"63 °C"`.
The cell below it says at once what happened. Mend the answer, and run both again.
Stuck? Type `"hint"` or `"working"` between the quotes.

To open this sheet, put it into the folder `lessons` of your kit and type `python3 lessons`.
The kitchen and its numbers are invented."""
OPEN = """\
# Leave this cell as it is: it holds the answers, and reading it spoils the practice.
from kitchenmath.practice.practice_sheet import open_practice

sheet = open_practice([
{answers}
])
sheet"""
DRILL = """\
from kitchenmath.drills import {drills}
from kitchenmath.panels.drilling import drill_panel

drill_panel({drills}.DRILLS[{name}])"""
END = """\
## When all is right

Close this sheet, and do its drills once more tomorrow.
If one question does not come right: bring it to the next session, with what you typed."""


@dataclass(frozen=True)
class Part:
    """One skill of a sheet.

    Attributes
    ----------
    skill, lesson, set_title : str
    fresh : Fresh or None
        None where the skill has its drill only.
    """

    skill: str
    lesson: str
    set_title: str
    fresh: Fresh | None


def practice_notebook(whom, round_, parts):
    """The sheet's text: the same parts give the same bytes.

    Parameters
    ----------
    whom : str
        As markdown.
    round_ : int
    parts : list of Part

    Returns
    -------
    str
    """
    answers = [part.fresh.answers | {"hint": _hint(part)} for part in parts if part.fresh]
    # The cell is Python: its own way of writing what is not there, or true, is not JSON's.
    lines = ",\n".join(f"    {each!r}" for each in answers)
    cells = [_words("title", INTRODUCTION.format(whom=whom))]
    if answers:
        cells.append(_code("open-practice", OPEN.format(answers=lines), {"source_hidden": True}))
    number = 0
    for place, part in enumerate(parts, start=1):
        number += bool(part.fresh)
        cells += _cells(place, number, part)
    cells.append(_words("end", END))
    kitchen = {"practice": "re-teach", "round": round_}
    notebook = {
        "cells": cells,
        "metadata": {"kernelspec": KERNEL, "kitchen": kitchen},
        "nbformat": 4,
        "nbformat_minor": 5,
    }
    return json.dumps(notebook, indent=1, ensure_ascii=False, sort_keys=True) + "\n"


def as_text(name):
    """A name from a roster as plain text in markdown."""
    return re.sub(r"([\\`*_{}\[\]()#+!|<>~$&-])", r"\\\1", " ".join(name.split()))


def _hint(part):
    """The first step of the working; where that is all of it, what the nearest drill hints at."""
    first, *more = part.fresh.answers["working"] or [""]
    if more:
        return f"Start here: {first}."
    near = places(part.skill)
    return near[0].drill.hint if near else "Run the worked cells of the lesson again."


def _cells(place, number, part):
    """Question, answer, check and drill of one skill."""
    heading = f"## {place}. {part.skill[0].upper()}{part.skill[1:]}"
    near = places(part.skill)
    more = [_words(f"skill-{place}-more", _more(part, near))]
    if near:
        code = DRILL.format(
            drills=near[0].drills, name=json.dumps(near[0].name, ensure_ascii=False)
        )
        more.append(_code(f"skill-{place}-drill", code, {"source_hidden": True}, [NOT_STORED]))
    if not part.fresh:
        return [_words(f"skill-{place}-text", heading), *more]
    answer = f"answer_{number}"
    return [
        _words(f"skill-{place}-text", "\n".join([heading, "", *_question(part)])),
        _code(f"skill-{place}-answer", f'{answer} = ""\n{STUB}'),
        _code(f"skill-{place}-check", f"sheet.check({number}, {answer})"),
        *more,
    ]


def _question(part):
    """The question in words, its numbers, and what it takes from earlier ones."""
    fresh = part.fresh
    lines = [f"*From the set “{part.set_title}”, question {fresh.heading}.*", "", fresh.text]
    if fresh.numbers:
        lines += ["", "**Your numbers**", "", *(f"- {each}" for each in fresh.numbers)]
    for one in fresh.earlier:
        lines += ["", f"**Taken from question {one.heading}**", ""]
        lines += [*(f"- {each}" for each in one.numbers), f"- right answer there: **{one.right}**"]
    return lines


def _more(part, near):
    """Where to go back to, and what stands below."""
    lesson = lesson_name(near[0].lesson if near else part.lesson) or "your lesson"
    if not near:
        return f"**More of it:** go back to {lesson}."
    start = "**More of it:**" if part.fresh else "**Practise this one in its drill:**"
    words = f"{start} below is “{near[0].name}” of {lesson}. "
    words += "It gives fresh numbers as often as you like."
    others = " and ".join(f"“{one.name}” in {lesson_name(one.lesson)}" for one in near[1:])
    return f"{words} See also {others}." if others else words


def _words(name, text):
    return {"cell_type": "markdown", "id": name, "metadata": {}, "source": text.splitlines(True)}


def _code(name, text, look=None, tags=()):
    metadata = {"jupyter": look} if look else {}
    metadata |= {"tags": list(tags)} if tags else {}
    return {
        "cell_type": "code",
        "execution_count": None,
        "id": name,
        "metadata": metadata,
        "outputs": [],
        "source": text.splitlines(True),
    }
