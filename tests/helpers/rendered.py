"""Photos of a tray whose truth is known: a small ray caster, for tests and measuring only.

It shares no code with what it judges, and works otherwise on purpose. Its mat is drawn from the
layout written down here anew; its lens is the division model, not Brown's; its tone curve is a
phone's bent S, not sRGB's; its pieces are irregular solids cut by planes, not boxes.
Everything in it is invented; colours of food and mat are rough values by eye.
"""

import io
from dataclasses import dataclass, field
from functools import lru_cache

import cv2
import numpy as np
from PIL import Image

COLOURS = {  # sRGB
    "carrot": (232, 128, 42),
    "potato": (236, 218, 158),
    "courgette": (196, 214, 128),
    "beetroot": (116, 22, 52),
    "onion": (240, 238, 222),
}
FIELD_COLOUR = (60, 105, 190)
PX_PER_MM = 10  # of the mat's drawing
SHEET = (297.0, 210.0)  # A4; the frame lies in its middle
FRAME_CORNER = ((297 - 258) / 2, (210 - 186) / 2)
LIGHTS = 10  # places on a lamp that throw a shadow each


@dataclass
class Piece:
    """A solid: the points p with normals @ p <= reach, standing on the mat (z up, mm)."""

    x: float
    y: float
    normals: np.ndarray
    reach: np.ndarray
    colour: np.ndarray
    width: float
    length: float
    height: float


@dataclass
class Scene:
    """All that a photo depends on. Lengths in mm, angles in degrees."""

    pieces: list = field(default_factory=list)
    distance: float = 370.0
    tilt: float = 8.0
    tilt_towards: float = 40.0
    roll: float = 3.0
    aim: tuple = (129.0, 93.0)
    focal_share: float = 0.78
    lens: float = -0.04  # of the division model, in units of the half diagonal
    lamp: tuple = (-250.0, -350.0, 900.0)
    lamp_size: float = 260.0
    lamp_share: float = 0.65  # of the light on the bare mat; the rest comes from everywhere
    tint: tuple = (1.04, 1.0, 0.92)
    blur_px: float = 0.85
    motion_px: float = 0.0
    noise: float = 0.006
    vignette: float = 0.25
    quality: int = 90
    print_scale: float = 1.0
    ink_mm: float = 0.12  # how far ink spreads over each edge
    curl_mm: float = 0.0
    hidden: tuple = ()
    columns: int = 2016
    rows: int = 1512
    seed: int = 0


def linear(srgb):
    """Colours as light."""
    return (np.asarray(srgb, float) / 255) ** 2.2


def make_piece(dice, x, y, sizes, turn, food):
    """An irregular piece: its side faces lean and its opposite sides are not quite parallel.

    True sides are means of opposite sides at half height, worked out on the leaning planes.
    """
    width, length, height = sizes
    lean = np.radians(dice.normal(0, 0.9, 4))
    # A long side that turned as freely as a short one would make a wedge of a stick.
    yaw = np.radians(dice.normal(0, 1.0, 4)) * np.tile([1.0, min(1.0, 2 * width / length)], 2)
    angles = turn + np.arange(4) * np.pi / 2 + yaw
    normals = np.stack([np.cos(angles) * np.cos(lean), np.sin(angles) * np.cos(lean), np.sin(lean)])
    halves = np.array([length, width, length, width]) / 2
    # Each side plane is at its half-size where height is half and the middle of the side is.
    points = np.stack(
        [halves * np.cos(turn + np.arange(4) * np.pi / 2),
         halves * np.sin(turn + np.arange(4) * np.pi / 2), np.full(4, height / 2)]
    )  # fmt: skip
    reach = np.sum(normals * points, axis=0)
    top = np.array([dice.normal(0, 0.02), dice.normal(0, 0.02), 1.0])
    top /= np.linalg.norm(top)
    normals = np.column_stack([normals, top, [0, 0, -1]])
    reach = np.concatenate([reach, [top[2] * height, 0.0]])
    level = [
        np.linalg.solve(
            normals[:2, [k, (k + 1) % 4]].T,
            reach[[k, (k + 1) % 4]] - normals[2, [k, (k + 1) % 4]] * height / 2,
        )
        for k in range(4)
    ]
    around = np.linalg.norm(np.roll(level, -1, axis=0) - level, axis=1)
    sides = sorted([(around[0] + around[2]) / 2, (around[1] + around[3]) / 2])
    shade = 1 + dice.normal(0, 0.06)
    colour = np.clip(linear(COLOURS[food]) * shade * (1 + dice.normal(0, 0.03, 3)), 0, 1)
    return Piece(x, y, normals.T, reach, colour, sides[0], sides[1], height)


@lru_cache(maxsize=4)
def mat_drawing(ink_mm, hidden):
    """The sheet as light, at PX_PER_MM, from its top left corner."""
    wide, high = (int(side * PX_PER_MM) for side in SHEET)
    sheet = np.ones((high, wide, 3), np.float32) * linear((246, 246, 242)).astype(np.float32)
    fill = lambda x, y, w, h, colour: sheet.__setitem__(  # noqa: E731
        (slice(round(y * PX_PER_MM), round((y + h) * PX_PER_MM)),
         slice(round(x * PX_PER_MM), round((x + w) * PX_PER_MM))), linear(colour)
    )  # fmt: skip
    left, top = FRAME_CORNER
    fill(left + 25, top + 25, 208, 136, FIELD_COLOUR)
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    places = [(48 * k, 0) for k in range(6)] + [(240, 56), (240, 112)]
    places += [(240 - 48 * k, 168) for k in range(6)] + [(0, 112), (0, 56)]
    for number, (x, y) in enumerate(places):
        if number in hidden:
            continue
        cells = cv2.aruco.generateImageMarker(dictionary, number, 6) > 0
        for row in range(6):
            for column in range(6):
                if not cells[row, column]:
                    fill(left + x + 3 * column - ink_mm / 2, top + y + 3 * row - ink_mm / 2,
                         3 + ink_mm, 3 + ink_mm, (28, 28, 30))  # fmt: skip
    return sheet


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


def lit_mat(scene):
    """The sheet with the shadows of all pieces."""
    sheet = mat_drawing(round(scene.ink_mm, 1), scene.hidden)
    coarse = 3
    high, wide = int(SHEET[1] * coarse), int(SHEET[0] * coarse)
    seen = np.zeros((high, wide))
    dice = np.random.default_rng(scene.seed + 9)
    spots = np.array(scene.lamp) + scene.lamp_size / 2 * dice.uniform(-1, 1, (LIGHTS, 3)) * [
        1,
        1,
        0,
    ]
    for spot in spots:
        dark = np.zeros((high, wide), bool)
        for piece in scene.pieces:
            lamp = spot - [piece.x, piece.y, 0]
            size = 0.6 * np.hypot(piece.length, piece.width) + 1
            thrown = -1.1 * piece.height * lamp[:2] / lamp[2]
            corner = np.array([piece.x, piece.y]) + FRAME_CORNER
            low, top = corner - size + np.minimum(thrown, 0), corner + size + np.maximum(thrown, 0)
            low = np.maximum((low * coarse).astype(int), 0)
            top = np.minimum((top * coarse).astype(int), [wide, high])
            if (top <= low).any():
                continue
            xs, ys = np.meshgrid(np.arange(low[0], top[0]), np.arange(low[1], top[1]))
            ground = np.stack([(xs + 0.5) / coarse - corner[0], (ys + 0.5) / coarse - corner[1],
                               np.zeros(xs.shape)], axis=-1)  # fmt: skip
            hit, _, _ = strike(piece, ground, lamp - ground)
            dark[low[1] : top[1], low[0] : top[0]] |= hit
        seen += ~dark
    seen = cv2.resize(
        seen / LIGHTS, (sheet.shape[1], sheet.shape[0]), interpolation=cv2.INTER_LINEAR
    )
    return sheet * (1 - scene.lamp_share + scene.lamp_share * seen[..., None]).astype(np.float32)


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


def paint(scene):
    """The picture as light, sampled four times a pixel."""
    sheet = lit_mat(scene)
    place = camera_of(scene)[0].astype(np.float32)
    times = 2
    columns, rows = np.meshgrid(
        ((np.arange(scene.columns * times) + 0.5) / times - 0.5).astype(np.float32),
        ((np.arange(scene.rows * times) + 0.5) / times - 0.5).astype(np.float32),
        sparse=True,
    )
    way = rays(scene, columns, rows)
    along = -place[2] / way[..., 2]
    ground = place + along[..., None] * way
    if scene.curl_mm:
        bow = scene.curl_mm * (2 * (ground[..., 0] - 129) / 258) ** 2
        ground = place + ((bow - place[2]) / way[..., 2])[..., None] * way
    at = (ground[..., :2] / scene.print_scale + FRAME_CORNER) * PX_PER_MM - 0.5
    picture = cv2.remap(
        sheet, at[..., 0].astype(np.float32), at[..., 1].astype(np.float32), cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_CONSTANT, borderValue=tuple(linear((150, 130, 105))),
    )  # fmt: skip
    nearest = np.full(picture.shape[:2], np.inf, np.float32)
    for piece in scene.pieces:
        _paint_piece(scene, picture, nearest, ground, way, place, piece)
    return cv2.resize(picture, (scene.columns, scene.rows), interpolation=cv2.INTER_AREA)


def _paint_piece(scene, picture, nearest, ground, way, place, piece):
    size = np.hypot(piece.length, piece.width) / 2 + 0.5
    reach = size + piece.height * 1.2 * (1 + np.hypot(*(place[:2] - [piece.x, piece.y])) / place[2])
    thin = ground[::16, ::16, :2] - [piece.x, piece.y]
    near = (np.abs(thin) < reach).all(axis=-1)
    if not near.any():
        return
    down, across = np.nonzero(near)
    box = np.s_[
        max(16 * down.min() - 16, 0) : 16 * down.max() + 32,
        max(16 * across.min() - 16, 0) : 16 * across.max() + 32,
    ]
    start = place - [piece.x, piece.y, 0]
    hit, along, face = strike(piece, start, way[box])
    hit &= along < nearest[box]
    lamp = np.array(scene.lamp) - [piece.x, piece.y, 0]
    lamp = lamp / np.linalg.norm(lamp)
    straight = np.maximum(piece.normals @ lamp, 0) / lamp[2]
    # A side face sees half of the sky and half of the mat, which throws some blue back.
    from_around = 0.6 + 0.4 * np.maximum(piece.normals[:, 2], 0)
    strength = scene.lamp_share * straight + (1 - scene.lamp_share) * from_around
    bounced = 0.06 * linear(FIELD_COLOUR) * (1 - np.maximum(piece.normals[:, 2:], 0))
    colours = piece.colour * (strength[:, None] + bounced)
    point = start + along[..., None] * way[box]
    grain = 1 + 0.04 * np.sin(point @ [2.1, 1.3, 0.7]) * np.sin(point @ [-0.9, 2.4, 1.1])
    picture[box][hit] = (colours[face] * grain[..., None])[hit]
    nearest[box][hit] = along[hit]


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
        length = int(scene.motion_px) | 1
        light = cv2.blur(light, (length, 1))
    light += (
        dice.standard_normal(light.shape, np.float32)
        * scene.noise
        * np.sqrt(np.maximum(light, 0.01))
    )
    pixels = np.round(255 * tone(light)).astype(np.uint8)
    file = io.BytesIO()
    Image.fromarray(pixels).save(file, "JPEG", quality=scene.quality, subsampling=2)
    return file.getvalue()
