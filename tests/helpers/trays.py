"""Invented trays for the renderer: cuts laid on a grid, under a phone that is never the same."""

from dataclasses import replace

import numpy as np

from tests.helpers.rendered import Scene, make_piece

CUTS = {  # width, length, height in mm; how many across and down; the pitch in mm
    "dice 3": ((3, 3, 3), (6, 4), (30, 30)),
    "dice 5": ((5, 5, 5), (6, 4), (30, 30)),
    "dice 10": ((10, 10, 10), (6, 4), (32, 31)),
    "dice 20": ((20, 20, 20), (4, 3), (48, 42)),
    "stick 3 x 50": ((3, 50, 3), (3, 6), (66, 20)),
    "stick 5 x 50": ((5, 50, 5), (3, 6), (66, 20)),
}
GOOD_LIGHT = {"lamp_size": 420.0, "lamp_share": 0.5}
HARD_LIGHT = {"lamp_size": 30.0, "lamp_share": 0.85, "lamp": (-300.0, -260.0, 420.0)}


def sizes(dice, cut):
    """One piece's width, length and height, each off by itself: a hand errs by a fifth of a
    millimetre on a small piece (7 % of 3 mm), by less of a large one (4 % of 20 mm)."""
    wanted = np.array(CUTS[cut][0], float)
    return wanted + dice.normal(size=3) * (0.1 + 0.035 * wanted)


def tray(seed, cut, food, **scene):
    """A scene with a cut laid apart on the mat, seen by a phone held as people do."""
    dice = np.random.default_rng(seed)
    _, (across, down), (step_x, step_y) = CUTS[cut]
    pieces = []
    for column in range(across):
        for row in range(down):
            x = 129 + (column - (across - 1) / 2) * step_x + dice.uniform(-1, 1) * 3
            y = 93 + (row - (down - 1) / 2) * step_y + dice.uniform(-1, 1) * 3
            long = "stick" in cut
            turn = dice.normal(0, 0.12) if long else dice.uniform(0, np.pi)
            y = 93 + (row - (down - 1) / 2) * step_y + dice.uniform(-1, 1) * (1 if long else 3)
            pieces.append(make_piece(dice, x, y, sizes(dice, cut), turn, food))
    return replace(held(seed), pieces=pieces, **{**GOOD_LIGHT, **scene})


def held(seed, tilt=(0, 15)):
    """A phone held by a cook: 300 to 450 mm away, tilted between two bounds in degrees."""
    dice = np.random.default_rng(seed + 100_000)
    return Scene(
        distance=dice.uniform(300, 450),
        tilt=dice.uniform(*tilt),
        tilt_towards=dice.uniform(0, 360),
        roll=dice.normal(0, 4),
        aim=(129 + dice.normal(0, 5), 93 + dice.normal(0, 5)),
        focal_share=dice.uniform(0.74, 0.84),
        lens=dice.normal(0, 0.03),
        lamp=(dice.uniform(-500, 700), dice.uniform(-500, 100), dice.uniform(700, 1400)),
        tint=tuple(1 + dice.normal(0, 0.05, 3)),
        blur_px=dice.uniform(0.4, 0.6),
        noise=dice.uniform(0.003, 0.012),
        vignette=dice.uniform(0.1, 0.35),
        quality=int(dice.integers(82, 95)),
        ink_mm=dice.uniform(0, 0.25),
        seed=seed,
    )


def close_together(seed, cut, food, gap):
    """A scene of pieces with the same turn, every two neighbours a gap apart (mm)."""
    dice = np.random.default_rng(seed)
    (width, length, _), _, _ = CUTS[cut]
    turn = dice.normal(0, 0.3)
    along, beside = np.array([np.cos(turn), np.sin(turn)]), np.array([-np.sin(turn), np.cos(turn)])
    across, down = (2, 4) if length > 2 * width else (4, 3)
    pieces = []
    for column in range(across):
        for row in range(down):
            middle = np.array([129, 93]) + (column - (across - 1) / 2) * (length + gap) * along
            middle = middle + (row - (down - 1) / 2) * (width + gap) * beside
            # Sizes differ by less than the gap is wide; no piece may eat a part of it.
            made = np.minimum(sizes(dice, cut), CUTS[cut][0])
            pieces.append(make_piece(dice, *middle, made, turn, food))
    return replace(held(seed), pieces=pieces, **GOOD_LIGHT)


def pairs(seed, cut, food, kind, gap=0.0):
    """A scene of pairs that touch: "flush", "offset", "corner", or one "stacked" on the other."""
    dice = np.random.default_rng(seed)
    _, (across, down), (step_x, step_y) = CUTS[cut]
    pieces = []
    for column in range(across):
        for row in range(down):
            x = 129 + (column - (across - 1) / 2) * step_x
            y = 93 + (row - (down - 1) / 2) * step_y
            pieces += _pair(dice, x, y, cut, food, kind, gap)
    return replace(held(seed), pieces=pieces, **GOOD_LIGHT)


def _pair(dice, x, y, cut, food, kind, gap):
    width, length, height = sizes(dice, cut)
    turn = dice.normal(0, 0.12) if length > 2 * width else dice.uniform(0, np.pi)
    beside = np.array([-np.sin(turn), np.cos(turn)])
    along = np.array([np.cos(turn), np.sin(turn)])
    if kind == "stacked":
        return _stacked(dice, x, y, cut, food, turn)
    if kind == "flush":
        shift, more = (width + gap) * beside, 0.0
    elif kind == "offset":
        shift, more = (width + gap) * beside + dice.uniform(0.3, 0.6) * length * along, 0.0
    else:  # the corner of one against a side of the other
        shift, more = (0.5 + 0.70) * width * beside + 0.3 * length * along, np.pi / 4
    first = make_piece(
        dice, x - shift[0] / 2, y - shift[1] / 2, (width, length, height), turn, food
    )
    other = sizes(dice, cut) if kind != "flush" else (width, length, height)
    second = make_piece(dice, x + shift[0] / 2, y + shift[1] / 2, other, turn + more, food)
    return [first, second]


def _stacked(dice, x, y, cut, food, turn):
    """One piece lies across another, a third of a width off its middle."""
    below = make_piece(dice, x, y, sizes(dice, cut), turn, food)
    away = dice.uniform(0, 2 * np.pi)
    off = below.width / 3 * np.array([np.cos(away), np.sin(away)])
    turned = turn + dice.uniform(0.3, 1.2)
    above = make_piece(
        dice, x + off[0], y + off[1], sizes(dice, cut), turned, food, stands_on=below.height
    )
    return [below, above]
