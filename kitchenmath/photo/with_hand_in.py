"""A photo of a tray that goes with a hand-in: a small copy in the notebook, if its cook says so."""

import base64
from dataclasses import dataclass

from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.photo.evidence import board_evidence
from kitchenmath.photo.picture import MOST_BYTES
from kitchenmath.photo.vision import NotHere
from kitchenmath.units.door import amount
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_, kind_of

NONE_GOES = "No photo goes with this set. That is fine: your readings are enough."
IT_GOES = (
    "This picture is in the notebook now. Save, and it goes with your hand-in; your instructor "
    "sees it. It holds no place and no time. A face, a hand or a name in it? Take the photo's "
    "name out above, run this cell again, and save."
)
GOES_FROM_A_PAGE = (
    "This picture goes with your hand-in; your instructor sees it. It holds no place and no time. "
    "A face, a hand or a name in it? Take the tick away, and it is out again."
)
SIDE_BY_SIDE = "Sizes of the single pieces, to copy: "


@dataclass(frozen=True)
class TrayForHandIn:
    """What stands below a set's photo cell.

    Attributes
    ----------
    words : str
    picture_jpeg : bytes or None
        The photo with its outlines, made small; None where none goes.
    """

    words: str
    picture_jpeg: bytes | None = None

    def __repr__(self):
        return self.words

    def _repr_mimebundle_(self, include=None, exclude=None):
        shown = {"text/plain": self.words}
        if self.picture_jpeg:
            shown["image/jpeg"] = base64.b64encode(self.picture_jpeg).decode()
        return shown


def tray_for_hand_in(photo="", line_across="", line_down="", cut=None):
    """Measure a photo and leave a small copy of it, with outlines, in the notebook.

    Nothing of it leaves this computer before the notebook is handed in.

    Parameters
    ----------
    photo : str
        Where it lies, from this notebook: "tray.jpg". Empty, and none goes along.
    line_across, line_down : str
        The mat's two lines as a ruler shows them, such as "99.5 mm"; both empty when nobody
        measured them.
    cut : str, optional
        A named cut to judge against.

    Returns
    -------
    TrayForHandIn
        With no picture, and the reason in words, where the photo cannot be measured.

    Examples
    --------
    >>> tray_for_hand_in()
    No photo goes with this set. That is fine: your readings are enough.
    """
    if not photo.strip():
        return TrayForHandIn(NONE_GOES)
    try:
        return _measured(photo.strip(), (line_across, line_down), cut, IT_GOES)
    except KitchenError as error:  # the cells below must run all the same
        return TrayForHandIn(f"{error} No photo goes with this set.")


def tray_from_page(photo, small_jpeg, lines=("", ""), cut=None):
    """The same for a photo that was chosen on a page.

    Parameters
    ----------
    photo : bytes
        The file as the phone made it.
    small_jpeg : bytes
        Its dots alone, as the page drew them: what goes where nothing can be measured.
    lines : tuple of str
        The mat's two lines, across and down, as a ruler shows them.
    cut : str, optional
        A named cut to judge against.

    Returns
    -------
    TrayForHandIn
    """
    try:
        return _measured(photo, lines, cut, GOES_FROM_A_PAGE)
    except NotHere as why:
        if len(small_jpeg) <= MOST_BYTES:
            return TrayForHandIn(f"{why}\n{GOES_FROM_A_PAGE}", small_jpeg)
        return TrayForHandIn(f"{why} The photo is too large to go along.")
    except KitchenError as error:
        return TrayForHandIn(f"{error} No photo goes with this set.")


def _measured(photo, lines, cut, last):
    """What a photo shows, with a small copy of it; the last sentence says where that goes."""
    found = board_evidence(photo, cut, ruler_mm=_ruled(*lines))
    words = [*found.sentences]
    if found.verdict:
        words.append(f"{SIDE_BY_SIDE}{found.verdict.readings}")
    return TrayForHandIn("\n".join([*words, last]), found.small_jpeg)


def _ruled(line_across, line_down):
    """Both lines [mm], or None where neither was measured."""
    if not line_across.strip() and not line_down.strip():
        return None
    typed = {"line_across": line_across, "line_down": line_down}
    return tuple(_in_mm(text, name) for name, text in typed.items())


def _in_mm(text, name):
    """One line's length; a bare number is millimetres, as the mat says beside it."""
    if not text.strip():
        raise Unreadable(f'{name}: type both of the mat\'s lines as a ruler shows them: "99.5 mm".')
    found = read(text)
    if kind_of(found) == "number":
        found = Q_(found.magnitude, "mm")
    return amount(found, "mm", name, above=0)
