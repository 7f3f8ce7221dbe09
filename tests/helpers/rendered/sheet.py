"""The printed sheet as light, and the shadows that the pieces throw on it."""

from functools import lru_cache

import cv2
import numpy as np

from tests.helpers.rendered.scene import linear

FIELD_COLOUR = (60, 105, 190)
PAPER, INK, TABLE = (246, 246, 242), (28, 28, 30), (150, 130, 105)
PX_PER_MM = 10  # of the mat's drawing
SHADOW_PX_PER_MM = 3
SHEET = (297.0, 210.0)  # A4; the frame lies in its middle
FRAME_CORNER = ((297 - 258) / 2, (210 - 186) / 2)
LIGHTS = 10  # places on a lamp that throw a shadow each


@lru_cache(maxsize=4)
def mat_drawing(ink_mm, hidden):
    """The sheet as light, at PX_PER_MM, from its top left corner."""
    wide, high = (int(side * PX_PER_MM) for side in SHEET)
    sheet = np.ones((high, wide, 3), np.float32) * linear(PAPER).astype(np.float32)
    left, top = FRAME_CORNER
    _fill(sheet, left + 25, top + 25, 208, 136, FIELD_COLOUR)
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    places = [(48 * k, 0) for k in range(6)] + [(240, 56), (240, 112)]
    places += [(240 - 48 * k, 168) for k in range(6)] + [(0, 112), (0, 56)]
    for number, (x, y) in enumerate(places):
        if number not in hidden:
            cells = cv2.aruco.generateImageMarker(dictionary, number, 6) > 0
            _marker(sheet, left + x, top + y, cells, ink_mm)
    return sheet


def _marker(sheet, x, y, cells, ink_mm):
    for row, column in np.argwhere(~cells):
        _fill(sheet, x + 3 * column - ink_mm / 2, y + 3 * row - ink_mm / 2,
              3 + ink_mm, 3 + ink_mm, INK)  # fmt: skip


def _fill(sheet, x, y, wide, high, colour):
    columns, rows = ((start, start + size) for start, size in ((x, wide), (y, high)))
    left, right, top, bottom = (round(each * PX_PER_MM) for each in (*columns, *rows))
    sheet[top:bottom, left:right] = linear(colour)


def lit_mat(scene):
    """The sheet with the shadows of all pieces."""
    sheet = mat_drawing(round(scene.ink_mm, 1), scene.hidden)
    high, wide = (int(side * SHADOW_PX_PER_MM) for side in SHEET[::-1])
    dice = np.random.default_rng(scene.seed + 9)
    spread = scene.lamp_size / 2 * dice.uniform(-1, 1, (LIGHTS, 3)) * [1, 1, 0]
    lit = np.zeros((high, wide))
    for spot in np.array(scene.lamp) + spread:
        dark = np.zeros((high, wide), bool)
        for piece in scene.pieces:
            _throw_shadow(dark, piece, spot)
        lit += ~dark
    lit = cv2.resize(lit / LIGHTS, sheet.shape[1::-1], interpolation=cv2.INTER_LINEAR)
    return sheet * (1 - scene.lamp_share + scene.lamp_share * lit[..., None]).astype(np.float32)


def _throw_shadow(dark, piece, spot):
    """Mark where a piece hides one place of the lamp; only the mat around it is looked at."""
    lamp = spot - [piece.x, piece.y, 0]
    size = 0.6 * np.hypot(piece.length, piece.width) + 1
    thrown = -1.1 * (piece.stands_on + piece.height) * lamp[:2] / lamp[2]
    corner = np.array([piece.x, piece.y]) + FRAME_CORNER
    low, top = corner - size + np.minimum(thrown, 0), corner + size + np.maximum(thrown, 0)
    low = np.maximum((low * SHADOW_PX_PER_MM).astype(int), 0)
    top = np.minimum((top * SHADOW_PX_PER_MM).astype(int), dark.shape[::-1])
    if (top <= low).any():
        return
    xs, ys = np.meshgrid(np.arange(low[0], top[0]), np.arange(low[1], top[1]))
    ground = np.stack([(xs + 0.5) / SHADOW_PX_PER_MM - corner[0],
                       (ys + 0.5) / SHADOW_PX_PER_MM - corner[1], np.zeros(xs.shape)],
                      axis=-1)  # fmt: skip
    hit, _, _ = strike(piece, ground, lamp - ground)
    dark[low[1] : top[1], low[0] : top[0]] |= hit


def strike(piece, start, direction):
    """Whether rays meet a solid, how far along, and which of its planes they enter by."""
    normals = piece.normals.T.astype(np.float32)
    speed = direction.astype(np.float32) @ normals
    room = (piece.reach - start @ normals).astype(np.float32)
    with np.errstate(divide="ignore", invalid="ignore"):
        along = room / speed
    enters = np.where(speed < 0, along, -np.inf)
    leaves = np.where(speed > 0, along, np.inf)
    enter, leave = enters.max(axis=-1), leaves.min(axis=-1)
    return (enter < leave) & (leave > 1e-9), enter, enters.argmax(axis=-1)
