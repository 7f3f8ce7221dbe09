"""What a photo depends on: the pieces, the phone that is held over them, and the lamp."""

from dataclasses import dataclass, field

import numpy as np

COLOURS = {  # sRGB
    "carrot": (232, 128, 42),
    "potato": (236, 218, 158),
    "courgette": (196, 214, 128),
    "beetroot": (116, 22, 52),
    "onion": (240, 238, 222),
}
LEAN_DEGREES, YAW_DEGREES = 0.9, 1.0  # of a side face, out of the upright and out of the square


@dataclass
class Piece:
    """A solid: the points p with normals @ p <= reach, standing at a height over the mat (mm)."""

    x: float
    y: float
    normals: np.ndarray
    reach: np.ndarray
    colour: np.ndarray
    width: float
    length: float
    height: float
    stands_on: float = 0.0


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


def make_piece(dice, x, y, sizes, turn, food, stands_on=0.0):
    """An irregular piece: its side faces lean and its opposite sides are not quite parallel.

    Parameters
    ----------
    dice : numpy Generator
    x, y : float
        Of its middle on the mat [mm].
    sizes : tuple of float
        Width, length and height that were meant [mm].
    turn : float [radian]
    food : str
        A key of `COLOURS`.
    stands_on : float
        How high it lies over the mat, on another piece [mm].

    Returns
    -------
    Piece
        Its true sides are means of opposite sides at half height, worked out on the leaning planes.
    """
    width, length, height = sizes
    normals, reach = _sides(dice, width, length, height, turn)
    true = _true_sides(normals, reach, height)
    upper = np.array([dice.normal(0, 0.02), dice.normal(0, 0.02), 1.0])
    upper /= np.linalg.norm(upper)
    normals = np.column_stack([normals, upper, [0, 0, -1]])
    reach = np.concatenate([reach, [upper[2] * height, 0.0]])
    reach = reach + normals[2] * stands_on
    shade = 1 + dice.normal(0, 0.06)
    colour = np.clip(linear(COLOURS[food]) * shade * (1 + dice.normal(0, 0.03, 3)), 0, 1)
    return Piece(x, y, normals.T, reach, colour, *true, height, stands_on)


def _sides(dice, width, length, height, turn):
    """Planes of the four side faces: outward normals, shape (3, 4), and how far out each lies."""
    lean = np.radians(dice.normal(0, LEAN_DEGREES, 4))
    # A long side that turned as freely as a short one would make a wedge of a stick.
    freely = np.tile([1.0, min(1.0, 2 * width / length)], 2)
    yaw = np.radians(dice.normal(0, YAW_DEGREES, 4)) * freely
    upright = turn + np.arange(4) * np.pi / 2
    normals = np.stack(
        [np.cos(upright + yaw) * np.cos(lean), np.sin(upright + yaw) * np.cos(lean), np.sin(lean)]
    )
    halves = np.array([length, width, length, width]) / 2
    # Each plane is at its half-size where height is half and the middle of the side is.
    points = np.stack([halves * np.cos(upright), halves * np.sin(upright), np.full(4, height / 2)])
    return normals, np.sum(normals * points, axis=0)


def _true_sides(normals, reach, height):
    """Width and length: means of opposite sides of the section at half height."""
    corners = []
    for side in range(4):
        pair = [side, (side + 1) % 4]
        corners.append(
            np.linalg.solve(normals[:2, pair].T, reach[pair] - normals[2, pair] * height / 2)
        )
    around = np.linalg.norm(np.roll(corners, -1, axis=0) - corners, axis=1)
    return sorted([(around[0] + around[2]) / 2, (around[1] + around[3]) / 2])
