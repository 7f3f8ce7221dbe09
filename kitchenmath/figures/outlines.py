"""The outlines of things in a kitchen: numbers in, corners out, nothing drawn.

All lengths are in the units of the picture, counted from its lower left corner. An outline is
an array of corners (x, y); where a thing is open on top, as a pot is, the outline is its wall.
"""

import numpy as np

TURN = np.linspace(0, 2 * np.pi, 61)


def box(left, bottom, width, height):
    """A pack, a leaf, what stands in a straight vessel."""
    right, top = left + width, bottom + height
    return np.array([(left, bottom), (right, bottom), (right, top), (left, top)])


def disc(x, y, across, high=None):
    """A round, or a round seen from the side."""
    high = across if high is None else high
    return np.column_stack([x + across / 2 * np.cos(TURN), y + high / 2 * np.sin(TURN)])


def heap(x, bottom, area):
    """A heap of salt or flour, twice as wide as high, of so much area seen from the side."""
    high = np.sqrt(area * np.pi) / 2  # below half a wave lies 2 / pi of its box
    across = np.linspace(-1, 1, 31)
    return np.column_stack([x + high * across, bottom + high * np.cos(across * np.pi / 2)])


def bowl(x, bottom, area):
    """A bowl full to the rim: half a round of so much area."""
    across = np.sqrt(8 * area / np.pi)
    turn = np.linspace(np.pi, 2 * np.pi, 31)
    return np.column_stack(
        [x + across / 2 * np.cos(turn), bottom + across / 2 + across / 2 * np.sin(turn)]
    )


def wall(left, bottom, width, height):
    """The wall of a vessel that is open on top."""
    return box(left, bottom, width, height)[[3, 0, 1, 2]]


def jug(left, bottom, width, height):
    """The wall of a jug, with its lip to the left."""
    corners = [(left - 0.08 * width, bottom + 1.04 * height), *wall(left, bottom, width, height)]
    return np.array(corners)


def handle(right, top, width):
    """The handle of a pan, from its rim outwards."""
    return np.array([(right, top - 1.2), (right + width, top)])


def carrot(left, y, length, thick, thin):
    """A carrot from the side, its thick end to the left."""
    along = np.linspace(0, 1, 12)
    half = (thick + (thin - thick) * along) / 2
    # Both ends are rounded off by a little, so that it looks grown and not turned.
    half[0], half[-1] = 0.86 * half[0], 0.8 * half[-1]
    x = left + length * along
    return np.column_stack([np.r_[x, x[::-1]], np.r_[y + half, y - half[::-1]]])


def wedge(x, y, across, share):
    """A slice of a clock's face, from twelve clockwise; a share of 1 or more is all of it."""
    turn = np.pi / 2 - 2 * np.pi * np.linspace(0, min(share, 1), 61)
    face = np.column_stack([x + across / 2 * np.cos(turn), y + across / 2 * np.sin(turn)])
    return face if share >= 1 else np.vstack([(x, y), face])


def dice(left, bottom, edge):
    """A cube seen from a corner above: its front, its top and its side."""
    deep = 0.35 * edge
    front = box(left, bottom, edge, edge)
    back = np.array([deep, deep * 0.8])
    top = np.array([front[3], front[2], front[2] + back, front[3] + back])
    side = np.array([front[1], front[2], front[2] + back, front[1] + back])
    return front, top, side


def breast(x, y, area):
    """A breast of a bird: round at the neck, pointed at the tail."""
    size = np.sqrt(area / 2.36)
    return np.column_stack(
        [x + size * np.cos(TURN) * (1 - 0.25 * np.sin(TURN)), y - size * 0.75 * np.sin(TURN)]
    )


def leg(x, y, area):
    """A leg of a bird: the thigh, and the bone that sticks out of it."""
    size = np.sqrt(area / 2.1)
    bone = np.array([(1.0, 0.16), (1.75, 0.1), (1.85, 0.28), (1.98, 0.0), (1.85, -0.28),
                     (1.75, -0.1), (1.0, -0.16)])  # fmt: skip
    turn = np.linspace(0.18, 2 * np.pi - 0.18, 41)
    thigh = np.column_stack([np.cos(turn), 0.62 * np.sin(turn)])
    return np.vstack([thigh, bone[::-1]]) * size + (x - 0.4 * size, y)


def carcass(x, y, area):
    """The frame of a bird: ribs and back, notched."""
    size = np.sqrt(area / 1.9)
    notched = 1 - 0.12 * (np.sin(6 * TURN) > 0.3)
    return np.column_stack(
        [x + size * np.cos(TURN) * notched, y + 0.72 * size * np.sin(TURN) * notched]
    )
