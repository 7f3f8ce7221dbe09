"""The desk's list of decisions in words of its own, short enough for a phone."""

import shutil

import pytest
from coursework.deciding_commands import COMMANDS
from coursework.desk import desk as desk_module
from coursework.desk.deciding_panel import KINDS
from coursework.desk.desk import Desk
from coursework.sets import key_text
from coursework.sets.class_keys import class_key

from tests.helpers.desk import press, words
from tests.helpers.filled_in import SET

LETTERS = 38  # beside "Decide", on a page of 390 px: as many fit


def test_every_kind_of_decision_is_in_the_list_once():
    assert [kind for _, kind, _, _ in COMMANDS] == list(KINDS)


@pytest.mark.parametrize("said", KINDS.values())
def test_a_decision_fits_a_phone_and_names_no_option_of_a_command(said):
    assert LETTERS >= len(said)
    assert "--" not in said


def test_a_newer_key_is_looked_at_before_it_is_taken(small_class, tmp_path, monkeypatch):
    """Pressed without a look nothing happens; after the look it is in the journal."""
    keys = shutil.copytree(key_text.KEYS, tmp_path / "keys")
    file = keys / f"{SET}.py"
    text = file.read_text(encoding="utf-8").replace("steps(32, 60, 4,", "steps(36, 64, 4,")
    file.write_text(text, encoding="utf-8")
    monkeypatch.setattr(key_text, "KEYS", keys)
    shutil.copytree(small_class.folder, tmp_path / "classes" / "class")
    monkeypatch.setattr(desk_module, "CLASSES", tmp_path / "classes")
    desk = Desk()
    desk.sets.value = SET
    panel = desk.decide()
    panel.kind.value, key = "newer key", class_key(desk.course, SET)

    assert "Buy enough: the kit has a newer key" in words(desk.next)
    assert "Look first whose marks change." in press(panel, "Decide")
    assert key == class_key(desk.course, SET)
    assert "Ada Quill (BH-1001)" in press(panel, "Look whose marks change")
    assert key == class_key(desk.course, SET)
    assert "is in the journal" in press(panel, "Decide")
    assert key != class_key(desk.course, SET)
    assert "the kit has a newer key" not in words(desk.next)
