"""The last cell of a set, with what the cells above have made and with what is saved."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from coursework.classes.course import Bounds
from coursework.marking.room.visit import visit
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook, set_ids

from kitchenmath.practice import last_look, open_set, steps
from kitchenmath.practice.before_handing_in import look_at
from kitchenmath.practice.set_file import read_set
from kitchenmath.units import Q_

SET = "04-buy-enough"
RELEASED = released(key_notebook(SET), "demo")
KIT = Path(__file__).parents[3]


def saved(folder, name=f"{SET}.ipynb", **texts):
    """A notebook of set 4 in a folder, with these cells; `me` is the student number's."""
    notebook = json.loads(RELEASED)
    for cell in notebook["cells"]:
        cell["source"] = texts.get(cell["id"].removesuffix("-answer"), "".join(cell["source"]))
    (folder / name).write_text(json.dumps(notebook), encoding="utf-8")


def made(student="BH-1", **answers):
    """What a notebook's cells have made."""
    sheet = open_set(SET, "demo", student)
    sheet.given("q1", need=steps(1, 2, 1, "kg", "need"))
    return {"sheet": sheet, "student": student} | answers


def unfolded(text):
    """What was printed, without the folds that make it fit a phone."""
    return re.sub(r"\n  (?=\S)", " ", text)


@pytest.fixture
def said(tmp_path, monkeypatch, capsys):
    """What the last cell prints for names, run in a folder of its own."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("JPY_SESSION_NAME", raising=False)

    def look(names):
        capsys.readouterr()
        last_look(names)
        return unfolded(capsys.readouterr().out)

    return look


def test_every_answer_is_looked_at_as_it_was_made(said, tmp_path):
    """A computed answer too; q4 was never run, and q5 is out of this world."""
    saved(tmp_path, q1="q1 = one.need * 2", q6="Seventy percent.")
    names = made(q1=Q_(4, "kg"), q2="", q3="lots", q5="$9000", In=["", "q1 = one.need * 2"])

    told = said(names)

    assert "Student number: BH-1" in told
    assert "q1: read as 4 kg. It is a weight, as it should be." in told
    assert "q3: “lots” does not start with a number" in told
    assert "q4: there is no answer yet: run its cell." in told
    assert 'Type it between two quotes: q4 = "$3.48 per kg".' in told
    assert "q5: read as $9000.00. It is money, as it should be. Look again" in told
    assert "q6: written, in the saved file." in told
    assert "2 of 6 answers are there. Still empty: q2, q4. Look again at: q3, q5." in told
    assert f"Then hand in this file: {SET}.ipynb, in the folder {tmp_path.name}." in told
    assert "Whether an answer is right is not said here" in told


def test_a_cell_that_stopped_is_to_be_looked_at_again_and_is_not_empty(said, tmp_path):
    """q1 holds something and q2 as much as when it was handed out; neither made an answer."""
    saved(tmp_path, q1="q1 = lots")
    told = said(made())

    assert "q1: there is no answer yet: run its cell. Where it stops, mend it. Type it" in told
    assert "q2: there is no answer yet" in told
    assert "0 of 6 answers are there. Still empty: q2, q3, q4, q5, q6. Look again at: q1." in told


def test_an_answer_that_is_not_saved_is_named(said, tmp_path):
    """q1 was changed after saving; q2 was computed by another text; q3 is the same."""
    saved(tmp_path, q1='q1 = "3 kg"', q2="q2 = 1 + 1", q3='q3 = "200 g"')
    names = made(q1="4 kg", q2=3, q3="200 g", In=["q2 = 1 + 2"])

    assert "Not the same in the saved file: q1, q2" in said(names)

    names |= {"q1": "3 kg", "In": ["q2 = 1 + 2", "q2 = 1 + 1\n"]}

    assert "Not the same" not in said(names)


def test_the_file_is_found_under_any_name(said, tmp_path, monkeypatch):
    """By the set that it says it is; JupyterLab's own word for it comes first."""
    saved(tmp_path, name="set4 FINAL (2).ipynb")
    (tmp_path / "a lesson.ipynb").write_text('{"cells": []}', encoding="utf-8")

    assert "this file: set4 FINAL (2).ipynb" in said(made())

    saved(tmp_path, name="z.ipynb")
    monkeypatch.setenv("JPY_SESSION_NAME", str(tmp_path / "z.ipynb"))

    assert "this file: z.ipynb" in said(made())


def test_another_set_s_file_is_not_named(said, tmp_path):
    """Only a lesson and another set lie here."""
    raw = released(key_notebook("05-season-and-brine"), "demo")
    (tmp_path / "05.ipynb").write_bytes(raw)

    assert "hand in the file that arrives" in said(made())


def test_without_a_file_it_says_what_it_cannot_see(said, monkeypatch):
    """As in a browser: take the file down. q1 was met; the written answers are anybody's guess."""
    told = said(made(q1="3 kg"))

    assert "q1: read as 3 kg" in told
    assert "Written answers cannot be seen" in told
    assert "take the file down" in told


def test_in_a_browser_the_file_is_taken_down(said, tmp_path, monkeypatch):
    """There a folder's name says nothing, though the file is seen."""
    saved(tmp_path)
    monkeypatch.setattr(sys, "platform", "emscripten")

    assert "take the file down" in said(made())


def test_numbers_of_another_student_are_found_out(said):
    """The number was changed, and the cells below were not run again."""
    names = made("BH-1") | {"student": "bh-2"}

    assert "BH-2. The numbers above belong to another" in said(names)


@pytest.mark.parametrize(
    "names",
    [
        {},
        {"student": None},
        {"student": 3, "sheet": "paper"},
        {"student": "", "sheet": open_set(SET, "demo", "")},
        {"student": ["BH-1"], "In": 3},
        {"student": "Ann Marie", "sheet": open_set(SET, "demo", "Ann Marie"), "q1": object()},
    ],
)
@pytest.mark.parametrize("is_saved", [True, False])
def test_it_speaks_whatever_failed_above(said, tmp_path, names, is_saved):
    """No cell was run, or odd things stand under the names."""
    if is_saved:
        saved(tmp_path)

    told = said(names)

    assert told.startswith("Student number: ")
    assert "Save this notebook" in told


def test_no_line_is_broken_within_a_word_on_a_phone(tmp_path, monkeypatch, capsys):
    """42 letters fit; a file's name may be longer."""
    monkeypatch.chdir(tmp_path)
    last_look(made(q1="lots"))

    assert max(map(len, capsys.readouterr().out.splitlines())) <= 42


def test_an_accident_of_its_own_is_no_traceback(said, monkeypatch):
    """Whatever happens, the student is told to hand in."""
    monkeypatch.setattr(last_look.__globals__["Path"], "cwd", lambda: 1 / 0)

    assert "could not be looked at" in said(made())


@pytest.mark.parametrize("set_id", set_ids())
def test_every_set_ends_with_it_and_it_runs_in_the_student_s_room(set_id):
    """Untouched, as in marking: locked, not graded, and every question is spoken of."""
    notebook = json.loads(released(key_notebook(set_id), "demo"))
    *_, last = notebook["cells"]
    flags = last["metadata"]["nbgrader"]

    ran = visit(notebook["cells"], vars(Bounds()))
    told = unfolded(ran.outputs[len(notebook["cells"]) - 1])

    assert last["id"] == flags["grade_id"] == "last-look"
    assert flags["locked"] and not flags["grade"]
    assert ran.findings == []
    assert "there is no student number yet" in told
    assert re.search(r"\d of \d answers", told)
    assert not any("last-look" in question for question in ran.answers)


@pytest.mark.parametrize("set_id", set_ids())
def test_nothing_counts_as_there_in_a_set_as_it_was_handed_out(set_id):
    """No answer is typed, so none is there; the sheet of set 10 holds its tasks without a time.

    In the room no file is seen, and so no written answer; the command sees it.
    """
    notebook = json.loads(released(key_notebook(set_id), "demo"))
    for cell in notebook["cells"]:
        if cell["id"] == "me":
            cell["source"] = 'student = "BH-1"'
    told = unfolded(visit(notebook["cells"], vars(Bounds())).outputs[len(notebook["cells"]) - 1])
    by_command = look_at(read_set(json.dumps(notebook).encode())[0])[-1]
    nothing = r"0 of \d answers are there\. Still empty: [q\d, ]+\."

    assert re.search(f"^{nothing}$", told, re.MULTILINE)
    assert re.fullmatch(nothing, by_command)


@pytest.mark.parametrize("set_id", set_ids())
def test_numbers_are_shown_with_the_name_that_the_cell_gives_them(set_id):
    """`one = sheet.given("q1", …)`: who computes reads one.covers below the numbers."""
    notebook = json.loads(released(key_notebook(set_id), "demo"))
    for cell in notebook["cells"]:
        if cell["id"] == "me":
            cell["source"] = 'student = "BH-1"'
    outputs = visit(notebook["cells"], vars(Bounds())).outputs
    for place, cell in enumerate(notebook["cells"]):
        text = "".join(cell["source"])
        if cell["id"].endswith("-given"):
            assert f"To compute with them: {text.splitlines()[-1]}." in outputs[place]
            hidden = cell["metadata"].get("jupyter", {}).get("source_hidden", False)
            assert hidden or len(text.splitlines()) <= 3


def test_it_runs_in_a_real_kernel_s_shell(tmp_path):
    """With globals() and In of an IPython shell, which hold more than a student's names."""
    saved(tmp_path, me='student = "BH-1"', q2='q2 = "2"')
    cells = [
        'student = "BH-1"',
        f'from kitchenmath.practice import open_set; sheet = open_set("{SET}", "demo", student)',
        'q2 = "2"',
        "from kitchenmath.practice import last_look\n\nlast_look(globals())",
    ]
    code = (
        "from IPython.core.interactiveshell import InteractiveShell as S\n"
        f"s = S.instance(colors='NoColor')\nfor text in {cells!r}: s.run_cell(text, True)"
    )
    path = os.pathsep.join([str(KIT), *filter(None, sys.path)])
    env = {"PYTHONPATH": path, "HOME": str(tmp_path), "IPYTHONDIR": str(tmp_path / "i")}
    ran = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env=env,
        check=True,
    )

    assert "q2: read as 2. It is a count" in unfolded(ran.stdout)
    assert "1 of 6 answers is there." in unfolded(ran.stdout)
    assert "Not the same" not in unfolded(ran.stdout)


def test_without_a_student_number_it_says_what_to_type(said):
    assert 'it is not in yet. Type student = "BH-1007" with your own number' in said({})
