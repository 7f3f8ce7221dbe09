"""The picture: a ray through each dot, what it meets, and what lens and phone make of the light."""

import io

import cv2
import numpy as np
from PIL import Image

from tests.helpers.rendered.scene import linear
from tests.helpers.rendered.sheet import (
    FIELD_COLOUR,
    FRAME_CORNER,
    PX_PER_MM,
    TABLE,
    lit_mat,
    strike,
)

SAMPLES = 2  # along each side of a dot
STRIP = 72  # rows at a time


def camera_of(scene):
    """Place and the three directions (right, down, forward) of the camera; z is up."""
    tilt, towards, roll = np.radians([scene.tilt, scene.tilt_towards, scene.roll])
    away = np.array([np.sin(tilt) * np.cos(towards), np.sin(tilt) * np.sin(towards), np.cos(tilt)])
    place = np.array([*scene.aim, 0.0]) + scene.distance * away
    forward = -away
    right = np.array([1.0, 0, 0]) - forward * forward[0]
    right /= np.linalg.norm(right)
    down = np.cross(forward, right)
    down = -down if down[1] < 0 else down
    right, down = (
        right * np.cos(roll) + down * np.sin(roll),
        down * np.cos(roll) - right * np.sin(roll),
    )
    return place, np.array([right, down, forward])


def rays(scene, columns, rows):
    """A direction for each pixel; the lens bends it by the division model, in closed form."""
    focal = scene.focal_share * scene.columns
    x = columns - (scene.columns - 1) / 2
    y = rows - (scene.rows - 1) / 2
    half_diagonal = np.hypot(scene.columns, scene.rows) / 2
    straight = 1 + scene.lens * (x**2 + y**2) / half_diagonal**2
    _, axes = camera_of(scene)
    axes = axes.astype(np.float32)
    way = (x / straight / focal)[..., None] * axes[0] + axes[2]
    way += (y / straight / focal)[..., None] * axes[1]
    return way


def paint(scene):
    """The picture as light, sampled four times a dot, strip by strip: a whole one fills memory."""
    sheet = lit_mat(scene)
    strips = [
        _strip(scene, sheet, range(top, min(top + STRIP, scene.rows)))
        for top in range(0, scene.rows, STRIP)
    ]
    return np.concatenate(strips)


def _strip(scene, sheet, of_rows):
    place = camera_of(scene)[0].astype(np.float32)
    columns, rows = np.meshgrid(
        _samples(0, scene.columns), _samples(of_rows.start, of_rows.stop), sparse=True
    )
    way = rays(scene, columns, rows)
    ground = place + (-place[2] / way[..., 2])[..., None] * way
    if scene.curl_mm:
        bow = scene.curl_mm * (2 * (ground[..., 0] - 129) / 258) ** 2
        ground = place + ((bow - place[2]) / way[..., 2])[..., None] * way
    corner = np.array(FRAME_CORNER, np.float32)
    at = (ground[..., :2] * np.float32(1 / scene.print_scale) + corner) * PX_PER_MM - 0.5
    picture = cv2.remap(
        sheet, at.astype(np.float32), None, cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_CONSTANT, borderValue=tuple(linear(TABLE)),
    )  # fmt: skip
    nearest = np.full(picture.shape[:2], np.inf, np.float32)
    for piece in scene.pieces:
        _paint_piece(scene, picture, nearest, ground, way, place, piece)
    return cv2.resize(picture, (scene.columns, len(of_rows)), interpolation=cv2.INTER_AREA)


def _samples(first, end):
    return ((np.arange((end - first) * SAMPLES) + 0.5) / SAMPLES - 0.5 + first).astype(np.float32)


def _paint_piece(scene, picture, nearest, ground, way, place, piece):
    box = _window(ground, place, piece)
    if box is None:
        return
    start = place - [piece.x, piece.y, 0]
    hit, along, face = strike(piece, start, way[box])
    hit &= along < nearest[box]
    point = start + along[..., None] * way[box]
    grain = 1 + 0.04 * np.sin(point @ [2.1, 1.3, 0.7]) * np.sin(point @ [-0.9, 2.4, 1.1])
    picture[box][hit] = (_faces(scene, piece)[face] * grain[..., None])[hit]
    nearest[box][hit] = along[hit]


def _window(ground, place, piece):
    """The part of the picture in which a piece may be seen, or None."""
    size = np.hypot(piece.length, piece.width) / 2 + 0.5
    away = np.hypot(*(place[:2] - [piece.x, piece.y])) / place[2]
    reach = size + 1.2 * (piece.stands_on + piece.height) * (1 + away)
    thin = ground[::16, ::16, :2] - [piece.x, piece.y]
    near = (np.abs(thin) < reach).all(axis=-1)
    if not near.any():
        return None
    down, across = np.nonzero(near)
    return np.s_[
        max(16 * down.min() - 16, 0) : 16 * down.max() + 32,
        max(16 * across.min() - 16, 0) : 16 * across.max() + 32,
    ]


def _faces(scene, piece):
    """The light that each of a piece's planes sends back, shape (planes, 3)."""
    lamp = np.array(scene.lamp) - [piece.x, piece.y, 0]
    lamp = lamp / np.linalg.norm(lamp)
    straight = np.maximum(piece.normals @ lamp, 0) / lamp[2]
    # A side face sees half of the sky and half of the mat, which throws some blue back.
    from_around = 0.6 + 0.4 * np.maximum(piece.normals[:, 2], 0)
    strength = scene.lamp_share * straight + (1 - scene.lamp_share) * from_around
    bounced = 0.06 * linear(FIELD_COLOUR) * (1 - np.maximum(piece.normals[:, 2:], 0))
    return piece.colour * (strength[:, None] + bounced)


def tone(light):
    """A phone's curve: a bent S, which is not sRGB's."""
    bent = np.clip(light, 0, 1) ** (1 / 2.15)
    return 0.94 * bent + 0.06 * (3 * bent**2 - 2 * bent**3)


def photo(scene):
    """A JPEG file of the scene.

    Parameters
    ----------
    scene : Scene

    Returns
    -------
    bytes
    """
    dice = np.random.default_rng(scene.seed + 5)
    light = paint(scene) * np.array(scene.tint, np.float32) * np.float32(0.82)
    x = np.linspace(-1, 1, scene.columns, dtype=np.float32) ** 2
    y = np.linspace(-1, 1, scene.rows, dtype=np.float32)[:, None] ** 2
    light = light * (1 - scene.vignette * (x + y) / 2)[..., None]
    light = cv2.GaussianBlur(light, (0, 0), scene.blur_px)
    if scene.motion_px:
        light = cv2.blur(light, (int(scene.motion_px) | 1, 1))
    grains = dice.standard_normal(light.shape, np.float32)
    light += grains * scene.noise * np.sqrt(np.maximum(light, 0.01))
    pixels = np.round(255 * tone(light)).astype(np.uint8)
    file = io.BytesIO()
    Image.fromarray(pixels).save(file, "JPEG", quality=scene.quality, subsampling=2)
    return file.getvalue()
