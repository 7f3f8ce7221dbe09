"""A photo in a hand-in, made inert. Referee: Pillow, which wrote the pictures and reads them back.

What a JPEG is made of is in ITU-T T.81 (1992), Annex B; where its EXIF lies in CIPA DC-008, 4.7.
"""

import base64
import io
import json

import pytest

pytest.importorskip("PIL", reason="Pillow is not installed: the extra photo brings it")

import numpy as np
from coursework.arriving.photos import MOST_BYTES, inert_jpeg, photo_in
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

SECRET = b"<script>alert(1)</script>"
PIXELS = np.random.default_rng(5).integers(0, 255, (40, 60, 3), np.uint8)


def jpeg(pixels=PIXELS, **how):
    file = io.BytesIO()
    Image.fromarray(pixels).save(file, "JPEG", **how)
    return file.getvalue()


def talking():
    """A JPEG that says where it was taken, holds a comment, and has a page behind its end."""
    exif = Image.Exif()
    exif[0x010E] = SECRET.decode()
    return jpeg(exif=exif, comment=SECRET, progressive=True) + SECRET


def dots(raw):
    return np.asarray(Image.open(io.BytesIO(raw)))


def outputs(data):
    return json.dumps([{"output_type": "display_data", "data": {"image/jpeg": data}}])


def test_the_dots_stay_and_all_that_speaks_goes():
    raw = talking()
    quiet = inert_jpeg(raw)

    assert SECRET in raw
    assert SECRET not in quiet
    assert np.array_equal(dots(raw), dots(quiet))
    assert not Image.open(io.BytesIO(quiet)).getexif()


def test_a_quiet_picture_stays_as_it_is():
    quiet = inert_jpeg(jpeg())

    assert quiet == inert_jpeg(quiet)


def test_a_notebook_may_hold_it_in_one_piece_or_in_lines():
    """nbformat 4.5: a MIME bundle's text is a string or a list of strings."""
    text = base64.encodebytes(jpeg()).decode()

    for way in (text, text.splitlines(keepends=True), text.replace("\n", "")):
        assert inert_jpeg(jpeg()) == photo_in(outputs(way))


@pytest.mark.parametrize("nothing", ["", "[]", "{}", "7", "[{}]", '[{"data": 3}]', "[" * 100_000])
def test_where_there_is_no_picture_there_is_none(nothing):
    assert photo_in(nothing) is None


def too_many_dots():
    """By hand: the frame's height is its bytes 3 and 4 after the length; 65,535 dots high."""
    raw = bytearray(jpeg())
    place = raw.index(b"\xff\xc0") + 5
    raw[place : place + 2] = b"\xff\xff"
    return bytes(raw)


@pytest.mark.parametrize(
    ("data", "why"),
    [
        ("%%%", "no picture"),
        (5, "no picture"),
        (base64.b64encode(b"GIF89a").decode(), "no JPEG"),
        (base64.b64encode(b"<svg onload=alert(1)>").decode(), "no JPEG"),
        (base64.b64encode(jpeg()[:-2]).decode(), "no whole JPEG"),
        (base64.b64encode(jpeg()[:300]).decode(), "no whole JPEG"),
        (base64.b64encode(too_many_dots()).decode(), "65535"),
        (base64.b64encode(b"\xff\xd8\xff\xd9").decode(), "no whole JPEG"),
        ("A" * (2 * MOST_BYTES), "over 400 kB"),
    ],
)
def test_what_cannot_be_shown_is_refused_with_a_reason(data, why):
    with pytest.raises(ValueError, match=why):
        photo_in(outputs(data))


@given(st.binary(max_size=200), st.integers(2, 600), st.integers(0, 255))
def test_any_bytes_give_a_picture_or_a_reason(junk, place, byte):
    """Never another error: a stranger's bytes alone, and in place of a JPEG's own."""
    raw = bytearray(jpeg())
    raw[place] = byte
    for data in (junk, bytes(raw), bytes(raw[:place]) + junk):
        try:
            assert inert_jpeg(data)[:2] == b"\xff\xd8"
        except ValueError as reason:
            assert str(reason).startswith("it ")
