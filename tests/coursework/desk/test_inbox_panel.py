"""The inbox at the desk, without a browser. The class is invented."""

import shutil
from pathlib import Path
from types import SimpleNamespace

import pytest
from coursework.arriving.inbox import inbox
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course, open_course
from coursework.desk import desk as desk_module
from coursework.desk import inbox_panel
from coursework.desk.desk import Desk
from coursework.desk.file_view import file_as_html, kind_of
from coursework.desk.showing import KIT
from coursework.desk.steps_panel import _of_other_sets
from coursework.sets.hand_out import hand_out

from tests.helpers.desk import press, words
from tests.helpers.folders import put

SET = "04-buy-enough"
ROSTER = {"BH-1001": "Ada Quill", "BH-1002": "Bram Oakes", "BH-1003": "Zoë Ferny"}
HOSTILE = b"<script>alert(1)</script> 3 kg"
PLACE, ASIDE = "Place those ticked", "Set those ticked aside"


@pytest.fixture(scope="module")
def handed_out(tmp_path_factory):
    """The class with its set, made once: each test has a copy."""
    course = new_course(tmp_path_factory.mktemp("made") / "class", "Class", "demo", ROSTER)
    hand_out(course, SET)
    return course.folder


@pytest.fixture
def desk(handed_out, tmp_path, monkeypatch):
    """A class with three files without a place; two folders are named after students."""
    monkeypatch.setattr(desk_module, "CLASSES", tmp_path)
    course = open_course(shutil.copytree(handed_out, tmp_path / "class"))
    files = {"Quill Ada_1/work.pdf": b"%PDF-1", "BH-1002/notes.txt": HOSTILE, "scan.txt": b"x"}
    take_in(course, put(tmp_path / "post", files))
    shown = Desk()
    shown.sets.value = SET
    return shown


@pytest.fixture
def panel(desk):
    panel = desk.unplaced()
    assert "3 files have no place." in press(panel, "Show the inbox")
    return panel


def test_all_that_is_sure_is_ticked_and_placed_at_once(desk, panel):
    assert "2 files are ticked" in press(panel, "Tick all that are sure")

    said = press(panel, PLACE)

    assert "2 files are placed. Mark again." in said and "1 file has no place." in said
    assert b"%PDF-1" == desk.course.submitted(SET, "BH-1001").read_bytes()


def test_nothing_is_chosen_for_a_file_of_which_nothing_is_known(panel):
    """Nobody is placed by a slip of the hand: the row says what to choose."""
    row = next(row for row in panel.rows.children if row.tick.description == "scan.txt")
    row.tick.value = True

    assert ("", SET) == (row.student.value, row.set.value)
    assert "“scan.txt”: choose whose it is" in press(panel, PLACE)


def test_a_second_hand_in_of_a_student_is_asked_about_first(desk, panel):
    """And asked anew when something else is ticked then."""
    for row in panel.rows.children:
        row.tick.value, row.student.value = True, "BH-1003"

    assert "Nothing is placed yet." in press(panel, PLACE)

    panel.rows.children[0].tick.value = False

    assert "has handed in “4. Buy enough” already" in press(panel, PLACE)
    assert 3 == len(inbox(desk.course))
    assert "2 files are placed" in press(panel, PLACE)


def test_the_files_to_decide_about_are_those_that_came_by_now(desk, panel, tmp_path):
    """A file that is taken in later is in the list too; the chosen one and the student stay."""
    decide, steps = desk.decide(), desk.steps()
    decide.file.value, decide.student.value = decide.file.options[2][1], "BH-1002"
    chosen = decide.file.value
    steps.place.value = str(put(tmp_path / "more", {"late.txt": b"late"}))
    press(steps, "Take in")

    assert 4 == sum(bool(sha) for _, sha in decide.file.options)
    assert any("late.txt" in words and "not placed" in words for words, _ in decide.file.options)
    assert (chosen, "BH-1002") == (decide.file.value, decide.student.value)

    decide.kind.value = "set aside"
    press(decide, "Decide")

    assert any("set aside" in words for words, sha in decide.file.options if sha == chosen)


def test_a_decision_about_a_file_needs_one(desk):
    decide = desk.decide()
    decide.kind.value = "set aside"

    assert "Choose the file." in press(decide, "Decide")


def test_a_set_is_called_the_same_in_the_inbox_and_at_the_desk(desk, panel):
    row = panel.rows.children[0]

    assert row.set.options[1] in desk.sets.options


def test_many_are_set_aside_with_one_reason(desk, panel):
    for row in panel.rows.children:
        row.tick.value = True
    panel.why.value = "Not for this class."

    assert "3 files are set aside" in press(panel, ASIDE)
    assert "" == panel.why.value
    assert "Tick a file first" in press(panel, ASIDE)


def test_a_file_is_seen_as_typed_and_saved_under_its_own_name(panel):
    """The script in it is letters; the link keeps name and ending."""
    row = next(row for row in panel.rows.children if "notes" in row.tick.description)
    row.look.see.value = True

    assert "<script>alert(1)</script> 3 kg" in words(row.look.shown)
    assert "<script>" not in row.look.shown.value
    assert 'download="notes.txt"' in row.look.shown.value

    row.look.see.value = False

    assert "" == row.look.shown.value


@pytest.mark.parametrize(("raw", "kind"), [
    (b"\x89PNG\r\n\x1a\n", "picture"),
    (b"%PDF-1.7", "other"),
    (b"celeriac", "text"),
    (b"\x00\x01", "other"),
    (b'{"cells": [{"cell_type": "code", "source": "x"}]}', "notebook"),
])  # fmt: skip
def test_a_file_is_told_by_its_bytes(raw, kind):
    assert kind == kind_of(raw)


def test_a_name_with_markup_stays_a_name():
    shown = file_as_html(b"\x89PNG\r\n", 'a/"><img onerror=x>.png', Path("x"))

    assert "<img onerror" not in shown and 'download="__' in shown


def test_a_long_file_is_saved_from_where_it_lies():
    """21 MB are not put into the page; outside of the kit's folder the place is said."""
    raw, served = b"%PDF" + bytes(21_000_000), KIT / "instructor" / "classes" / "c" / "ab.bin"

    assert 'download="menu.pdf" href="/files/instructor/classes/c/ab.bin"' in file_as_html(
        raw, "menu.pdf", served
    )
    assert "It is long (21 MB). It lies in /elsewhere/ab.bin." in file_as_html(
        raw, "menu.pdf", Path("/elsewhere/ab.bin")
    )


def test_the_keys_titles_are_read_once_for_all_rows(desk, panel, monkeypatch):
    """Each reading opens every key: once, not once for each of three files."""
    asked = []
    monkeypatch.setattr(inbox_panel, "set_labels", lambda: asked.append(1) or {SET: "4. Buy it"})
    press(panel, "Show the inbox")

    assert 3 == len(panel.rows.children)
    assert ("4. Buy it", SET) == panel.rows.children[2].set.options[1]
    assert [1] == asked


def test_a_file_of_another_set_is_said_aloud_when_it_is_taken_in():
    """A set-1 file in a folder for set 4 goes to set 1, and not in silence."""
    one = SimpleNamespace(name="a.ipynb", set_id="01-measure-and-scale", student="BH-1001")
    taken = SimpleNamespace(new=(one,))

    assert [] == _of_other_sets(taken, "01-measure-and-scale")
    assert [
        "Another set: a.ipynb says “1. Measure and scale”. It is placed there, with BH-1001."
    ] == (_of_other_sets(taken, SET))
