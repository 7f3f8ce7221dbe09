"""The door to the two libraries that read pictures, and the sentence where they are missing."""

import sys

from kitchenmath.errors import KitchenError

HOW_TO_GET = (
    "Measuring a photo needs two more packages. Close the notebook, type `python3 lessons tray` "
    'once, and open the lesson again. Without the lessons: `pip install "kitchenmath[photo]"`.'
)
IN_THE_BROWSER = (
    "A photo cannot be measured in the browser edition: it needs the kit installed on a computer. "
    "Or give the photo to your instructor, whose desk measures it."
)


class NotHere(KitchenError):
    """What reads pictures is not installed on this machine; the message says how to get it."""


def vision():
    """OpenCV, once it is asked for: nothing of the kit loads it before.

    Returns
    -------
    module

    Raises
    ------
    NotHere
        In the browser edition, or where the packages are missing.
    """
    if sys.platform == "emscripten":
        raise NotHere(IN_THE_BROWSER)
    try:
        import cv2
        import PIL.Image  # noqa: F401 - both or neither
    except ImportError:
        raise NotHere(HOW_TO_GET) from None
    return cv2
