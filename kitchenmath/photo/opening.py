"""A photo as it comes from a phone, turned upright, as light.

Sizes are taken where the light falls to half. The numbers in a file are not light: they are bent
so that dark tones get more of them, and half-way between two of them is not half the light.
"""

import io
import os
from pathlib import Path

import numpy as np

from kitchenmath.errors import OutOfRange, Unreadable, WrongKind
from kitchenmath.photo.vision import vision

LARGEST_BYTES = 9_000_000  # a notebook's server takes 10 MiB in one message, wrapping and all
MOST_PIXELS = 130_000_000  # no phone makes more, and a small file can claim any number
LONG_SIDE_PX = 2100  # three megapixels measure as well as twelve
UPRIGHT = {  # what the EXIF tag "orientation" asks for (CIPA DC-008, 4.6.5)
    1: lambda pixels: pixels,
    2: lambda pixels: pixels[:, ::-1],
    3: lambda pixels: pixels[::-1, ::-1],
    4: lambda pixels: pixels[::-1],
    5: lambda pixels: pixels.swapaxes(0, 1),
    6: lambda pixels: np.rot90(pixels, -1),
    7: lambda pixels: np.rot90(pixels, 2).swapaxes(0, 1),
    8: lambda pixels: np.rot90(pixels, 1),
}
ORIENTATION = 0x0112


def opened(photo):
    """The pixels of a photo, upright, not larger than needed.

    Parameters
    ----------
    photo : bytes, str or Path
        A JPEG or PNG file, or where it lies.

    Returns
    -------
    array of uint8, shape (rows, columns, 3)
        Red, green, blue in sRGB.

    Raises
    ------
    Unreadable
        When it is no picture, is HEIC, or is cut off.
    OutOfRange
        When the file or the picture is larger than any phone's.
    WrongKind
    NotHere
    """
    vision()
    from PIL import Image

    data = _bytes(photo)
    _refuse_heic(data)
    try:
        picture = Image.open(io.BytesIO(data), formats=("JPEG", "PNG"))
        if picture.width * picture.height > MOST_PIXELS:
            raise OutOfRange(f"photo: {picture.width} by {picture.height} dots are too many.")
        turn = picture.getexif().get(ORIENTATION, 1)
        picture.draft("RGB", (LONG_SIDE_PX, LONG_SIDE_PX))
        picture = picture.convert("RGB")
    except OutOfRange:
        raise
    except Exception as error:  # a broken file may raise anything in the reader
        raise Unreadable(
            "photo: this file cannot be read as a picture. Send the photo again, as JPEG."
        ) from error
    picture.thumbnail((LONG_SIDE_PX, LONG_SIDE_PX), Image.Resampling.LANCZOS)
    return np.ascontiguousarray(UPRIGHT.get(turn, UPRIGHT[1])(np.asarray(picture)))


def _bytes(photo):
    if isinstance(photo, bytes | bytearray | memoryview):
        data = bytes(photo)
    elif isinstance(photo, str | os.PathLike):
        try:
            data = Path(photo).expanduser().read_bytes()
        except OSError as error:
            raise Unreadable(f"photo: {photo} cannot be read: {error.strerror}.") from None
    else:
        raise WrongKind(f"photo: needs a file, and {photo!r} came; type its path.")
    if len(data) > 8 * LARGEST_BYTES:
        raise OutOfRange(f"photo: {len(data) / 1e6:.0f} MB are too many; send one photo, as JPEG.")
    return data


def _refuse_heic(data):
    """HEIC is said plainly: most phones write JPEG when they are asked to."""
    if data[4:8] == b"ftyp" and data[8:12] in (b"heic", b"heix", b"hevc", b"mif1", b"msf1"):
        raise Unreadable(
            "photo: this is a HEIC file, which the kit cannot read. Set the phone's camera to "
            "JPEG and take the photo again, or save it as JPEG and send that."
        )


def light(pixels):
    """The light behind sRGB numbers, from 0 to 1.

    Parameters
    ----------
    pixels : array of uint8

    Returns
    -------
    array of float32

    Examples
    --------
    In sRGB the middle number 128 is 21.6 % of the light: ((128/255 + 0.055) / 1.055) ** 2.4.

    >>> round(float(light(np.array([128], np.uint8))[0]), 3)
    0.216

    References
    ----------
    IEC 61966-2-1 (sRGB).
    """
    share = np.arange(256) / 255
    table = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    return table.astype(np.float32)[pixels]
