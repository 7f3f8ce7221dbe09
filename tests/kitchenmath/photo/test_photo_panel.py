"""The panel of lesson 3 on a photo, operated without a browser. Its photo is rendered."""

import sys

import pytest

pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")

from dataclasses import replace

from kitchenmath.errors import Unreadable
from kitchenmath.panels.photo import ruled, tray_photo_panel
from kitchenmath.practice.readings import ReadingsKind
from tests.helpers.rendered import photo
from tests.helpers.trays import tray


@pytest.fixture(scope="module")
def file(tmp_path_factory):
    """A photo of twelve dice of 3 mm."""
    scene = tray(70_020, "dice 3", "carrot")
    path = tmp_path_factory.mktemp("photo") / "tray.jpg"
    path.write_bytes(photo(replace(scene, pieces=scene.pieces[:12])))
    return path


def test_a_photo_at_a_path_is_measured_judged_and_drawn(file):
    """Twelve pieces, a verdict on brunoise, two pictures, and readings that set 3 can read."""
    panel = tray_photo_panel()
    panel.controls["path"].value = str(file)
    panel.controls["lines"].value = "100, 100"
    panel.measure.click()
    readings = panel.words.value.split("to copy: ")[1].split("</div>")[0].replace("\u00a0", " ")

    assert "12 single pieces" in panel.words.value.replace("\u00a0", " ")
    assert panel.picture.value[:4] == panel.sizes.value[:4] == b"\x89PNG"
    assert 13 == len(panel.table.value.splitlines())
    assert 12 == len(ReadingsKind().read(readings))


def test_what_is_missing_is_said_and_no_old_picture_stays(file):
    """Nothing chosen; then a file that is none."""
    panel = tray_photo_panel()
    panel.measure.click()

    assert "choose one" in panel.words.value
    panel.controls["path"].value = str(file.with_name("none.jpg"))
    panel.measure.click()

    assert "cannot be read" in panel.words.value
    assert "none" == panel.picture.layout.display


def test_the_two_lines_are_read_as_typed():
    """In millimetres only; inches would be a scale of 4."""
    assert (100.0, 99.5) == ruled("100, 99.5 mm")
    for typed in ("100", "4 in, 4 in", "1, 2, 3"):
        with pytest.raises(Unreadable, match="millimetres"):
            ruled(typed)


def test_in_the_browser_edition_the_panel_is_one_sentence(monkeypatch):
    """Its Python calls itself emscripten."""
    monkeypatch.setattr(sys, "platform", "emscripten")
    panel = tray_photo_panel()

    assert "instructor" in panel.children[-1].value


def test_readings_from_a_photo_keep_how_far_each_may_be_off():
    """By hand: two lengths, and ± 0.2 mm; a bare number after ± is millimetres as well."""
    for typed in ("3.1, 2.9 mm ± 0.2 mm", "3,1; 2,9 mm ± 0,2"):
        read = ReadingsKind().read(typed)

        assert [3.1, 2.9] == pytest.approx(list(read.lengths.magnitude))
        assert 0.2 == pytest.approx(read.within.magnitude)
    assert ReadingsKind().read("3.1, 2.9 mm").within is None
    with pytest.raises(Unreadable):
        ReadingsKind().read("3.1, 2.9 mm ± some")
