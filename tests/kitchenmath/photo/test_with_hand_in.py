"""A photo on its way with a hand-in: only if it was named, small, and nothing but its dots."""

import base64
import io
from dataclasses import replace

import pytest

pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")

from PIL import Image

from kitchenmath.errors import OutOfRange
from kitchenmath.photo import measure_board, tray_for_hand_in
from kitchenmath.photo.picture import MOST_BYTES, small_copy
from kitchenmath.practice.readings import ReadingsKind
from tests.helpers.rendered import photo
from tests.helpers.trays import tray


@pytest.fixture(scope="module")
def file(tmp_path_factory):
    """A photo of twelve dice of 3 mm, with a remark in its EXIF."""
    scene = tray(70_030, "dice 3", "carrot")
    path = tmp_path_factory.mktemp("photo") / "tray.jpg"
    exif = Image.Exif()
    exif[0x010E] = "taken at home"
    said = exif.tobytes()
    raw = photo(replace(scene, pieces=scene.pieces[:12]))
    # EXIF is one more segment behind the first two bytes of the file (CIPA DC-008, 4.5.4).
    path.write_bytes(raw[:2] + b"\xff\xe1" + (len(said) + 2).to_bytes(2) + said + raw[2:])
    return path


def test_a_named_photo_leaves_a_small_copy_and_readings(file):
    """Twelve pieces; under 200 kB; the sizes can be typed as the readings of question 1."""
    shown = tray_for_hand_in(str(file), "100 mm", "99.8", "brunoise")._repr_mimebundle_()
    raw = base64.b64decode(shown["image/jpeg"])
    readings = shown["text/plain"].split("to copy: ")[1].splitlines()[0]

    assert "12 single pieces" in shown["text/plain"]
    assert 12 == len(ReadingsKind().read(readings))
    assert len(raw) <= MOST_BYTES
    assert "JPEG" == Image.open(io.BytesIO(raw)).format
    assert b"taken at home" in file.read_bytes()
    assert b"taken at home" not in raw


def test_no_name_brings_no_photo():
    """Nothing typed is an answer too: the cell says that it is fine."""
    assert {"text/plain"} == set(tray_for_hand_in()._repr_mimebundle_())


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        (("none.jpg",), "cannot be read"),
        (("none.jpg", "99.5"), "line_down"),
        (("none.jpg", "3 g", "3 g"), "line_across"),
    ],
)
def test_what_goes_wrong_is_said_and_stops_no_cell_below(typed, words):
    """A traceback here would leave the question after it without its numbers."""
    shown = tray_for_hand_in(*typed)

    assert words in shown.words
    assert shown.picture_jpeg is None


def test_a_copy_grows_smaller_until_it_fits_or_says_that_it_cannot(file):
    board = measure_board(file)
    whole = small_copy(board)

    assert len(small_copy(board, len(whole) - 1)) < len(whole)
    with pytest.raises(OutOfRange, match="no copy"):
        small_copy(board, 1_000)
