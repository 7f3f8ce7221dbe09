"""A set's file as any editor may have saved it. Expected: the same answers as from our own."""

import json

import pytest
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook

from kitchenmath.errors import Unreadable
from kitchenmath.practice.set_file import asked_in, last_assigned, read_set, student_in

RELEASED = released(key_notebook("04-buy-enough"), "demo")
NOT_THERE = object()


def filled():
    """Set 4 with a student number, q1 and q6, as a notebook's data."""
    texts = {"me": 'student = "BH-1"', "q1-answer": 'q1 = "3 kg"', "q6-answer": "Seventy percent."}
    notebook = json.loads(RELEASED)
    for cell in notebook["cells"]:
        cell["source"] = texts.get(cell["id"], "".join(cell["source"]))
    return notebook


def told(raw):
    """Student number and the states of the six answers."""
    named, _ = read_set(raw)
    return student_in(named), [asked.look().state for asked in asked_in(named)]


def without_ids(notebook):
    for cell in notebook["cells"]:
        del cell["id"]
    return json.dumps(notebook).encode()


def without_nbgrader(notebook):
    for cell in notebook["cells"]:
        cell["metadata"] = {}
    return json.dumps(notebook).encode()


def in_lines(notebook):
    for cell in notebook["cells"]:
        cell["source"] = cell["source"].splitlines(keepends=True)
    return json.dumps(notebook).encode()


def answered_twice(notebook):
    """A cell copied and left empty: the one that is filled in counts."""
    place = next(i for i, cell in enumerate(notebook["cells"]) if cell["id"] == "q1-answer")
    notebook["cells"].insert(place + 1, notebook["cells"][place] | {"source": "  # empty"})
    return json.dumps(notebook).encode()


@pytest.mark.parametrize(
    "saved",
    [
        lambda notebook: json.dumps(notebook).encode("utf-8-sig"),
        lambda notebook: json.dumps(notebook, ensure_ascii=False).encode("utf-16"),
        without_ids,
        without_nbgrader,
        in_lines,
        answered_twice,
    ],
    ids=["with a byte order mark", "UTF-16", "no ids", "no nbgrader", "lines", "a copied cell"],
)
def test_any_editor_s_file_says_the_same(saved):
    there = ["there", "empty", "empty", "empty", "empty", "there"]

    assert told(saved(filled())) == ("BH-1", there)


def test_a_cell_that_is_gone_says_what_to_do():
    """The answer cell of q1 and the check cell of q3 were deleted."""
    notebook = filled()
    notebook["cells"] = [
        cell for cell in notebook["cells"] if cell["id"] not in ("q1-answer", "q3-check")
    ]
    looks = {
        asked.question: asked.look()
        for asked in asked_in(read_set(json.dumps(notebook).encode())[0])
    }

    assert looks["q1"].state == "empty"
    assert (
        'Add a cell in its place. Type it between two quotes: q1 = "4.2 kg".'
        in looks["q1"].sentence
    )
    assert looks["q3"].state == "empty"
    assert "with its unit" in looks["q3"].sentence


def test_an_answer_without_its_check_cell_is_still_read():
    notebook = filled()
    notebook["cells"] = [cell for cell in notebook["cells"] if cell["id"] != "q1-check"]
    (first, *_) = asked_in(read_set(json.dumps(notebook).encode())[0])

    assert "read as 3 kg" in first.look().sentence
    assert not first.written


@pytest.mark.parametrize(
    "raw",
    [
        b"",
        b"celeriac",
        b"[1, 2]",
        b"{}",
        b'{"cells": 3}',
        b'{"cells": [1, null]}',
        b'{"cells": [], "metadata": []}',
        b'{"cells": [{"cell_type": "markdown", "source": "x", "id": "y"}]}',
        b"[" * 100_000,
        b"\xff\xfe\x00",
        '{"cells": "größer"}'.encode("latin-1"),
    ],
)
def test_what_is_no_set_is_refused_as_came(raw):
    with pytest.raises(Unreadable, match="no notebook"):
        read_set(raw)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ('q1 = "3 kg"', "3 kg"),
        ("q1 = -3", -3),
        ("q1 = [1, 2]", [1, 2]),
        ("q1 = q2 = 4", 4),
        ("q1 = one.need / 2", ...),
        ("q1 = {[]: 1}", ...),
        ("q2 = 4", None),
        ("", None),
    ],
)
def test_the_last_plain_value_is_taken(text, value):
    assert last_assigned(text, "q1") == value
