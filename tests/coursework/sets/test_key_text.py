"""Keys as texts: all of them under one digest."""

from pathlib import Path

from coursework.sets import key_text
from coursework.sets.key_text import keys_digest


def test_all_keys_are_read_once_however_often_the_desk_asks(monkeypatch, tmp_path):
    """Two keys, three questions after them: two files are read."""
    monkeypatch.setattr(key_text, "KEYS", _two_keys(tmp_path))
    read, as_usual = [], Path.read_bytes
    monkeypatch.setattr(Path, "read_bytes", lambda path: read.append(path.name) or as_usual(path))

    assert 1 == len({keys_digest() for _ in range(3)})
    assert ["01-measure.py", "02-mix.py"] == read


def test_a_key_that_changed_is_read_anew(monkeypatch, tmp_path):
    """One more letter, or one key more, is another digest."""
    folder = _two_keys(tmp_path)
    monkeypatch.setattr(key_text, "KEYS", folder)
    found = [keys_digest()]
    (folder / "02-mix.py").write_text("by parts!")
    found.append(keys_digest())
    (folder / "03-cut.py").write_text("to size")
    found.append(keys_digest())

    assert 3 == len(set(found))


def _two_keys(folder):
    (folder / "01-measure.py").write_text("by weight")
    (folder / "02-mix.py").write_text("by parts")
    return folder
