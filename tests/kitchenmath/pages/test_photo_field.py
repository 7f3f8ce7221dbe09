"""The photo field of a set's page: asked first, a small copy in the file to hand in, or none."""

import io
import json
import sys
from dataclasses import replace

import pytest

pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")

from coursework.arriving.photos import photo_in
from PIL import Image

from kitchenmath.pages.form import Form
from kitchenmath.pages.talk import Talk
from kitchenmath.pages.writing import set_page
from tests.helpers.browser import KIT
from tests.helpers.rendered import photo
from tests.helpers.trays import tray

SET = "03-cut-to-size"
RAW = (KIT / "assignments" / SET / f"{SET}.ipynb").read_bytes()
LINES = ("100", "100 mm")


def below_photo(saved):
    """What stands below the photo cell of a saved notebook."""
    cells = json.loads(saved)["cells"]
    return next(cell["outputs"] for cell in cells if cell["id"] == "q1-photo")


def jpeg(**saved):
    """A small picture as a page draws it."""
    file = io.BytesIO()
    Image.new("RGB", (60, 40), (60, 105, 190)).save(file, "JPEG", **saved)
    return file.getvalue()


@pytest.fixture(scope="module")
def tray_photo():
    """Six dice of 3 mm, rendered; the file says where it was taken."""
    scene = tray(70_030, "dice 3", "carrot")
    picture = Image.open(io.BytesIO(photo(replace(scene, pieces=scene.pieces[:6]))))
    exif = Image.Exif()
    exif[0x010F] = "a phone of somebody"
    file = io.BytesIO()
    picture.save(file, "JPEG", quality=92, exif=exif)
    return file.getvalue()


def test_a_chosen_photo_is_measured_and_a_small_copy_is_in_the_file(tray_photo):
    """Read back as taking in reads it: under 200 kB, dots only."""
    form = Form(RAW)
    said = form.take_photo("q1", (tray_photo, jpeg()), LINES)
    saved = form.filled({"student": "BH-1007"})
    copy = photo_in(json.dumps(below_photo(saved)))

    assert "6 single pieces" in said and "edge, 3 mm" in said and "brunoise" in said
    assert "your instructor sees it" in said
    assert 1_000 < len(copy) <= 200_000
    assert b"somebody" in tray_photo and b"Exif" not in copy and b"somebody" not in copy
    assert said == Form(saved).photos["q1"]["words"]


def test_a_photo_is_out_again_when_the_tick_is_taken_away():
    form = Form(RAW)
    form.take_photo("q1", (b"no picture", jpeg()), LINES)
    assert [] == below_photo(form.filled({}))

    talk = Talk()
    talk.hear(json.dumps({"do": "open", "notebook": RAW.decode()}))
    heard = talk.hear(json.dumps({"do": "photo", "question": "q1", "lines": LINES}))

    assert {"said": "", "photos": {"q1": {"picture": None, "words": ""}}} == json.loads(heard)


def test_where_nothing_can_be_measured_the_pages_own_copy_goes(monkeypatch):
    """The browser's Python has no OpenCV; the sentence says so, and the photo goes all the same."""
    monkeypatch.setattr(sys, "platform", "emscripten")
    form, small = Form(RAW), jpeg()
    said = form.take_photo("q1", (b"the phone's own file", small), ("", ""))

    assert "cannot be measured in the browser edition" in said
    assert "goes with your hand-in" in said
    assert photo_in(json.dumps(below_photo(form.filled({})))) is not None


def test_only_a_set_with_a_photo_cell_has_the_field_and_it_asks_first():
    other = KIT / "assignments" / "04-buy-enough" / "04-buy-enough.ipynb"
    page = set_page(RAW, version="")

    assert "data-photo" not in set_page(other.read_bytes(), version="")
    assert 'data-photo="q1"' in page and "<div data-asked hidden>" in page
