"""The outlines of cuts in millimetres, as a cut card shows them: numbers only, nothing drawn.

An outline is a list of corners (x, y), counted from the top left corner of its view.
"""

import math
from dataclasses import dataclass

from kitchenmath.cuts.named import SHAPES
from kitchenmath.errors import OutOfRange
from kitchenmath.units.saying import figures

# Sizes that the convention leaves open are drawn as common vegetables have them.
OPEN_LENGTH_MM, OPEN_WIDTH_MM = 25, 18
MM_PER_INCH = 25.4


@dataclass(frozen=True)
class View:
    """One side of a piece: its caption, how wide and high it is, and its outlines."""

    caption: str
    width_mm: float
    height_mm: float
    outlines: tuple


def views_of(cut):
    """What a card shows of a cut: from above, then from the side or the end.

    Raises
    ------
    OutOfRange
        For a cut that lacks a size which no vegetable gives it.
    """
    size = _sizes_mm(cut)
    length = size.get("length", OPEN_LENGTH_MM)
    along = _box if "length" in size else _torn
    if cut.shape == "cube":
        return tuple(_box(side, size["edge"], size["edge"]) for side in ("above", "side"))
    if cut.shape == "stick":
        return along("above", length, size["side"]), _box("end", size["side"], size["side"])
    if cut.shape == "flat":
        wide = size["width"]
        return _box("above", wide, wide), _box("side", wide, size["thickness"])
    if cut.shape == "slice":
        side = _box("side", OPEN_WIDTH_MM, size["thickness"])
        return _polygon("above", OPEN_WIDTH_MM, 180), side
    if cut.shape == "shred":
        return (_torn("above", OPEN_LENGTH_MM, size["width"]),)
    return _barrel("side", length), _polygon("end", OPEN_WIDTH_MM, round(size["faces"]))


def words_of(cut):
    """The sizes of a cut in lines of text: mm, inches, and what is open.

    Raises
    ------
    OutOfRange
    """
    size = _sizes_mm(cut)
    sides = {"stick": ("side", "side", "length"), "flat": ("width", "width", "thickness")}
    keys = sides.get(cut.shape, SHAPES[cut.shape][:1])
    fixed = [size[key] for key in keys if key in size]
    in_mm = " × ".join(figures(each) for each in fixed) + " mm"
    in_inches = " × ".join(f"{each / MM_PER_INCH:.2f}" for each in fixed) + " in"
    sizes = [f"{in_mm} ({in_inches})"] if len(fixed) == 1 else [in_mm, in_inches]
    return [*sizes, *_open_words(cut.shape, size)]


def _open_words(shape, size):
    """What the convention leaves to the vegetable, in words."""
    if "length" in SHAPES[shape] and "length" not in size:
        return ["as long as the vegetable"]
    words = {"slice": "as wide as the vegetable", "shred": "as long as the leaf"}
    if shape == "turned":
        return [f"{size['faces']:.0f} faces, as thick as the vegetable"]
    return [words[shape]] if shape in words else []


def _sizes_mm(cut):
    """The fixed sizes of a cut as plain numbers."""
    size = {
        key: value.to("count" if key == "faces" else "mm").magnitude
        for key, value in cut.dimensions.items()
    }
    for key in SHAPES[cut.shape]:
        if key not in size and key != "length":
            raise OutOfRange(f"cuts: {cut.name} cannot be drawn without its {key}.")
    return size


def _box(caption, width_mm, height_mm):
    corners = [(0, 0), (width_mm, 0), (width_mm, height_mm), (0, height_mm)]
    return View(caption, width_mm, height_mm, (corners,))


def _torn(caption, width_mm, height_mm):
    """A strip whose length is open: its right end is torn off."""
    teeth = [(width_mm - i % 2, height_mm * i / 6) for i in range(7)]
    return View(caption, width_mm, height_mm, ([(0, 0), *teeth, (0, height_mm)],))


def _polygon(caption, width_mm, faces):
    """A regular polygon, point up; with many faces a round."""
    radius = width_mm / 2
    turns = [2 * math.pi * i / faces for i in range(faces)]
    corners = [(radius + radius * math.sin(t), radius - radius * math.cos(t)) for t in turns]
    return View(caption, width_mm, width_mm, (corners,))


def _barrel(caption, length_mm):
    """The side of a turned cut, thickest in the middle: three faces with a line between them."""
    across = [length_mm * i / 40 for i in range(41)]
    swell = [OPEN_WIDTH_MM / 2 * (1 - 0.6 * (2 * i / 40 - 1) ** 2) for i in range(41)]

    def face(low, high):
        """A band between two parts of the half thickness, from -1 (top) to 1."""
        upper = [(x, OPEN_WIDTH_MM / 2 + low * half) for x, half in zip(across, swell, strict=True)]
        lower = [
            (x, OPEN_WIDTH_MM / 2 + high * half) for x, half in zip(across, swell, strict=True)
        ]
        return upper + lower[::-1]

    faces = (face(-1, -0.36), face(-0.33, 0.33), face(0.36, 1))
    return View(caption, length_mm, OPEN_WIDTH_MM, faces)
