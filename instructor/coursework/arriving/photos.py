"""The photo that may come with a hand-in, made inert: only what draws dots is kept of its bytes.

A picture in a notebook is text of a stranger. It is read as data, within bounds, and never opened
here: a JPEG is a row of segments, and all that only speak (where it was taken, by which phone, or
anything hidden behind its end) are left out.
"""

import base64
import binascii
import json

from coursework.arriving.reading_in import LONGEST_PHOTO

__all__ = ["MOST_BYTES", "inert_jpeg", "photo_in"]

MOST_BYTES = 400_000  # twice what the kit's own copy may have
MOST_DOTS = 2_500  # along a side; a small file may claim millions of dots and stop a browser
START, END = b"\xff\xd8", b"\xff\xd9"
FRAMES = (0xC0, 0xC1, 0xC2)  # baseline, extended, progressive
SCAN = 0xDA
DRAW = {*FRAMES, 0xC4, 0xDB, 0xDD, SCAN}  # frames, code tables, quantisation, restarts
SPEAK = {*range(0xE0, 0xF0), 0xFE}  # applications' segments and comments
RESTARTS = {*range(0xD0, 0xD8)}


def photo_in(outputs):
    """The JPEG that stands below a photo cell.

    Parameters
    ----------
    outputs : str
        The cell's outputs, as JSON.

    Returns
    -------
    bytes or None
        None where there is no picture.

    Raises
    ------
    ValueError
        When there is one that cannot be shown; the message is for a person.
    """
    if len(outputs) > LONGEST_PHOTO:
        raise ValueError(f"it is over {MOST_BYTES // 1000} kB")
    found = None
    for output in _listed(outputs):
        data = output.get("data") if isinstance(output, dict) else None
        if isinstance(data, dict) and "image/jpeg" in data:
            found = data["image/jpeg"]
    if found is None:
        return None
    text = "".join(found) if isinstance(found, list) and all(map(_is_text, found)) else found
    if not _is_text(text):
        raise ValueError("it is no picture")
    try:
        raw = base64.b64decode("".join(text.split()), validate=True)
    except (binascii.Error, ValueError):
        raise ValueError("it is no picture") from None
    return inert_jpeg(raw)


def _listed(outputs):
    try:
        found = json.loads(outputs)
    except (ValueError, RecursionError):
        return []
    return found if isinstance(found, list) else []


def _is_text(thing):
    return isinstance(thing, str)


def inert_jpeg(raw):
    """The same picture with nothing in it but what draws its dots.

    Parameters
    ----------
    raw : bytes

    Returns
    -------
    bytes

    Raises
    ------
    ValueError
        For what is too large or no whole JPEG.

    References
    ----------
    ITU-T T.81 (1992), Annex B: markers and segments.
    """
    if len(raw) > MOST_BYTES:
        raise ValueError(f"it is over {MOST_BYTES // 1000} kB")
    if raw[:2] != START:
        raise ValueError("it is no JPEG")
    at, kept, framed = 2, [START], False
    while raw[at : at + 2] != END:
        kind, segment = _segment(raw, at)
        at += len(segment)
        if kind in FRAMES:
            _refuse_large(segment)
            framed = True
        if kind in DRAW:
            kept.append(segment)
        if kind == SCAN:
            dots = _dots(raw, at)
            kept.append(dots)
            at += len(dots)
    if not framed:
        raise ValueError("it is no whole JPEG")
    return b"".join([*kept, END])


def _segment(raw, at):
    """A segment from its marker to its end, and its kind."""
    head = raw[at : at + 4]
    if len(head) < 4 or head[0] != 0xFF or head[1] not in DRAW | SPEAK:
        raise ValueError("it is no whole JPEG")
    segment = raw[at : at + 2 + int.from_bytes(head[2:4])]
    if len(segment) < 4 or len(segment) != 2 + int.from_bytes(head[2:4]):
        raise ValueError("it is no whole JPEG")
    return head[1], segment


def _refuse_large(frame):
    if len(frame) < 10:
        raise ValueError("it is no whole JPEG")
    high, wide = int.from_bytes(frame[5:7]), int.from_bytes(frame[7:9])
    if not 0 < high <= MOST_DOTS or not 0 < wide <= MOST_DOTS:
        raise ValueError(f"it has {wide} by {high} dots")


def _dots(raw, at):
    """The coded dots of a scan: up to the next marker that is no restart."""
    end = at
    while True:
        end = raw.find(b"\xff", end)
        if end < 0 or end + 1 >= len(raw):
            raise ValueError("it is no whole JPEG")
        if raw[end + 1] != 0 and raw[end + 1] not in RESTARTS:
            return raw[at:end]
        end += 2
