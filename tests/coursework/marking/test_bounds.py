"""Each bound of the student's room strikes where it is passed, and its finding says its name."""

import json
from dataclasses import fields

import pytest
from coursework.classes.course import Bounds

from tests.helpers.filled_in import (
    ALL,
    NOTHING,
    TYPED,
    code,
    filled,
    honest,
    marked,
    marked_with_copy,
    points,
    raw,
)
from tests.helpers.this_machine import need

THREADS = """
import threading, time
for _ in range(40): threading.Thread(target=time.sleep, args=(1,)).start()
"""
FIGURES = "import matplotlib.pyplot as plt\nfor _ in range(4): plt.figure(figsize=(1, 1))"
WITH = {"q1": TYPED["q1"], "q3": TYPED["q3"]}
# Bound: its value here, what passes it in the answer cell of question 2, what stays below it.
STRIKES = {
    "seconds": (4, "import time\ntime.sleep(60)", "q2 = '2'"),
    "cell_seconds": (2, "while True: pass", "import time\ntime.sleep(0.01)\nq2 = '2'"),
    "memory_bytes": (200_000_000, "x = bytearray(300_000_000)",
                     "x = bytearray(9_000_000)\nq2 = '2'"),
    "output_bytes": (20_000, "print('x' * 30_000)", "print('x' * 9_000)\nq2 = '2'"),
    "disk_bytes": (1_000_000, "open('a', 'wb').write(bytes(2_000_000))",
                   "open('a', 'wb').write(bytes(500_000))\nq2 = '2'"),
    "files": (50, "for n in range(99): open(str(n), 'w').close()",
              "for n in range(20): open(str(n), 'w').close()\nq2 = '2'"),
    "open_files": (32, "kept = [open('/dev/null') for _ in range(40)]",
                   "kept = [open('/dev/null') for _ in range(9)]\nq2 = '2'"),
    "threads": (8, THREADS, THREADS.replace("40", "3") + "\nq2 = '2'"),
    "figures": (3, FIGURES, FIGURES.replace("4", "3") + "\nq2 = '2'"),
    "answer_bytes": (500, "#" * 501 + "\nq2 = '2'", "#" * 400 + "\nq2 = '2'"),
}  # fmt: skip
NEEDS = {"memory_bytes": "memory", "disk_bytes": "disk", "files": "disk"}


def with_bound(name, source):
    """The record of a hand-in whose second answer is this code, with one bound set."""
    need(NEEDS.get(name, "limits"))
    return marked(filled(**WITH, q2=source), **{name: STRIKES[name][0]})


@pytest.mark.parametrize("name", STRIKES)
def test_a_bound_names_itself_when_it_strikes(name):
    """Its value and its name in the course file stand in the finding; the answer above counts."""
    record = with_bound(name, STRIKES[name][1])
    said = [each for each in record.findings if f"({name})" in each]

    assert 1 == len(said), record.findings
    assert f"{STRIKES[name][0]:g}" in said[0] or str(STRIKES[name][0]) in said[0]
    assert 3.0 == points(record)["q1"]


@pytest.mark.parametrize("name", [name for name in STRIKES if name != "seconds"])
def test_a_bound_that_strikes_leaves_the_answers_below_alone(name):
    """By hand: 3 for q1 and 3 for q3; a figure, an output that is cut costs nothing itself."""
    record = with_bound(name, STRIKES[name][1])

    assert 3.0 == points(record)["q3"]


@pytest.mark.parametrize("name", STRIKES)
def test_below_a_bound_nothing_is_said(name):
    record = with_bound(name, STRIKES[name][2])

    assert () == record.findings
    assert NOTHING | {"q1": 3.0, "q2": 2.0, "q3": 3.0} == points(record)


def own_cells(notebook):
    """The texts of the student's own cells in our marked copy."""
    cells = json.loads(notebook)["cells"]
    return [each["source"] for each in cells if each["id"].startswith("own-")]


def test_more_cells_of_ones_own_than_are_run_are_counted_and_left_out():
    book = honest()
    book["cells"] += [code(f"x = {n}", f"x{n}") for n in range(4)]
    few, shown = marked_with_copy(book, own_cells=3)
    every, all_shown = marked_with_copy(book, own_cells=4)

    assert ("4 cells are the student's own; the first 3 were run (own_cells).",) == few.findings
    assert ["x = 0", "x = 1", "x = 2"] == own_cells(shown)
    assert () == every.findings
    assert ["x = 0", "x = 1", "x = 2", "x = 3"] == own_cells(all_shown)


def test_a_long_cell_of_ones_own_is_left_out_and_said():
    """500 bytes are allowed; “é” has two of them, so 499 letters are 500 bytes."""
    book = honest()
    book["cells"] += [code("# é" + "x" * 496, "fits"), code("# é" + "x" * 497, "long")]
    record, notebook = marked_with_copy(book, answer_bytes=500)

    assert [
        "A cell of the student's own is longer than 500 bytes and was left out (answer_bytes)."
    ] == list(record.findings)
    assert ["# é" + "x" * 496] == own_cells(notebook)


def test_a_file_that_is_too_long_waits_for_a_human_and_says_the_bound():
    """Read as no notebook, so every question stays open; one byte less and all is marked."""
    data = raw(honest())
    record = marked(data, file_bytes=len(data) - 1)

    assert dict.fromkeys(ALL) == points(record)
    assert "(file_bytes)" in record.findings[0]
    assert ALL == points(marked(data, file_bytes=len(data)))


def test_every_bound_has_a_test_here():
    """A new one must not come without its finding."""
    here = {*STRIKES, "own_cells", "file_bytes"}

    assert {one.name for one in fields(Bounds)} == here
