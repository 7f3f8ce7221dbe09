"""The photo with what was measured drawn over it."""

import io

import numpy as np

from kitchenmath.errors import OutOfRange
from kitchenmath.photo.layout import FIELD_MM
from kitchenmath.photo.vision import vision

TRUSTED, DOUBTED = (255, 255, 255), (255, 214, 0)
DARK = (20, 20, 20)
RIM_MM = 6.0  # left around the blue field, so that a piece at its edge is seen whole
SMALL_MM = 6.0  # below it a piece gets a thinner line, which would cover it else
MOST_BYTES = 200_000  # of a copy that goes with a hand-in
WIDTHS, QUALITY = (1200, 900, 600, 400), 75  # of the copy, tried in this order


def outlined(board):
    """The photo as PNG: a box and a number on each piece, a cross on each that is not counted.

    Parameters
    ----------
    board : BoardPhoto

    Returns
    -------
    bytes

    Raises
    ------
    NotHere
    """
    return _file(_drawn(board), "PNG")


def small_copy(board, most_bytes=MOST_BYTES):
    """The same picture as a JPEG that is small enough to travel, made of its dots alone.

    Nothing else of the photo's file is in it: no place, no time, no phone's name.

    Parameters
    ----------
    board : BoardPhoto
    most_bytes : int

    Returns
    -------
    bytes

    Raises
    ------
    NotHere
    OutOfRange
        When not even the smallest copy is small enough.
    """
    vision()
    from PIL import Image

    whole = Image.fromarray(_drawn(board))
    for width in WIDTHS:
        copy = whole.copy()
        copy.thumbnail((width, width), Image.Resampling.LANCZOS)
        file = _file(np.asarray(copy), "JPEG", quality=QUALITY)
        if len(file) <= most_bytes:
            return file
    raise OutOfRange(f"photo: no copy of it is under {most_bytes / 1e3:.0f} kB.")


def _file(pixels, kind, **how):
    from PIL import Image

    file = io.BytesIO()
    Image.fromarray(pixels).save(file, kind, **how)
    return file.getvalue()


def _drawn(board):
    """The dots of the blue field, with a ring and a number on each piece."""
    cv2 = vision()
    pixels = np.ascontiguousarray(board.pixels.copy())
    for piece in board.pieces:
        base = board.camera.pixels_of(piece.box.corners_mm())
        upper = board.camera.pixels_of(piece.box.upper_mm(board.camera.place_mm))
        hull = cv2.convexHull(np.concatenate([base, upper]).astype(np.float32)).reshape(-1, 2)
        thin = piece.width_mm < SMALL_MM
        _ring(cv2, pixels, hull, DOUBTED if piece.doubts else TRUSTED, thin)
        if piece.doubts:
            _cross(cv2, pixels, hull)
        _number(cv2, pixels, hull, piece.number)
    return _field_only(board, pixels)


def _field_only(board, pixels):
    """The part of the photo where food may lie; all around it only makes the outlines small.

    A photo that is refused is shown whole: what is wrong with it may lie outside.
    """
    if board.camera is None or board.refused:
        return pixels
    left, top, right, bottom = np.array(FIELD_MM) + RIM_MM * np.array([-1, -1, 1, 1])
    frame = board.camera.pixels_of(
        np.array([(left, top), (right, top), (right, bottom), (left, bottom)])
    )
    limits = np.array(pixels.shape[1::-1])
    low = np.clip(np.floor(frame.min(axis=0)), 0, limits - 1).astype(int)
    high = np.clip(np.ceil(frame.max(axis=0)), low + 1, limits).astype(int)
    return np.ascontiguousarray(pixels[low[1] : high[1], low[0] : high[0]])


def _ring(cv2, pixels, hull, colour, thin):
    """A light line on a dark one: seen on pale food and on the blue alike."""
    dark, bright = (2, 1) if thin else (4, 2)
    ring = np.round(hull * 16).astype(np.int32)
    cv2.polylines(pixels, [ring], True, DARK, dark, cv2.LINE_AA, 4)
    cv2.polylines(pixels, [ring], True, colour, bright, cv2.LINE_AA, 4)


def _cross(cv2, pixels, hull):
    (left, top), (right, bottom) = hull.min(axis=0).astype(int), hull.max(axis=0).astype(int)
    for ends in (((left, top), (right, bottom)), ((left, bottom), (right, top))):
        start, end = (tuple(int(each) for each in point) for point in ends)
        cv2.line(pixels, start, end, DOUBTED, 2, cv2.LINE_AA)


def _number(cv2, pixels, hull, number):
    at = (int(hull[:, 0].max()) + 4, int(hull[:, 1].min()) - 2)
    for colour, thick in ((DARK, 5), (TRUSTED, 2)):
        cv2.putText(
            pixels, str(number), at, cv2.FONT_HERSHEY_SIMPLEX, 0.75, colour, thick, cv2.LINE_AA
        )
