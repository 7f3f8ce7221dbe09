"""Drawings for squaring off and for time: the square in the round, and three clocks as bars."""

import math

from matplotlib.patches import Circle, Rectangle

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, quiet


def draw_squared(ax, wide_mm, narrow_mm, side_mm, words):
    """The thick end of a carrot, its thin end, and the square that the whole length gives.

    Parameters
    ----------
    ax : matplotlib Axes
        Of equal scale both ways.
    wide_mm, narrow_mm, side_mm : float
    words : list of str
        Thick end, thin end, square.

    Returns
    -------
    dict of str to artist
        "wide", "narrow" (rounds), "square" and "labels".
    """
    quiet(ax, keep=())
    ax.set_xticks([])
    ax.set_aspect("equal", adjustable="box", anchor="W")
    edge = {"edgecolor": INK, "linewidth": 1}
    wide = ax.add_patch(Circle((0, 0), 1, facecolor=LOST, hatch="///", **edge))
    narrow = ax.add_patch(Circle((0, 0), 1, fill=False, linestyle="--", **edge))
    square = ax.add_patch(Rectangle((0, 0), 1, 1, facecolor=FOOD, **edge))
    labels = [ax.text(36, y, "", fontsize=10, color=INK, va="center") for y in (18, 0, -18)]
    ax.set(xlim=(-32, 98), ylim=(-32, 32))
    artists = {"wide": wide, "narrow": narrow, "square": square, "labels": labels}
    move_squared(artists, wide_mm, narrow_mm, side_mm, words)
    return artists


def move_squared(artists, wide_mm, narrow_mm, side_mm, words):
    """Move the rounds and the square of `draw_squared`.

    Parameters
    ----------
    artists : dict
    wide_mm, narrow_mm, side_mm : float
    words : list of str
    """
    artists["wide"].set_radius(wide_mm / 2)
    artists["narrow"].set_radius(narrow_mm / 2)
    artists["square"].set_bounds(-side_mm / 2, -side_mm / 2, side_mm, side_mm)
    for label, text in zip(artists["labels"], words, strict=True):
        label.set_text(text)


def draw_times(ax, minutes, most_min):
    """Time now, and the two estimates between which the new size lies.

    Parameters
    ----------
    ax : matplotlib Axes
    minutes : tuple of float
        Now, by the square, straight.
    most_min : float
        The least that the scale reaches.

    Returns
    -------
    dict of str to artist
        "bars", "labels", "ax".
    """
    quiet(ax)
    looks = ((INK, ""), (FOOD, ""), (PAPER, "///"))
    bars = [
        ax.barh(row, 0, height=0.45, color=colour, hatch=hatch, edgecolor=ACCENT, linewidth=0.8)[0]
        for row, (colour, hatch) in zip((2, 1, 0), looks, strict=True)
    ]
    labels = [ax.text(0, row + 0.28, "", fontsize=10, color=INK, va="bottom") for row in (2, 1, 0)]
    ax.set(ylim=(-0.4, 2.8))
    ax.set_xlabel("minutes", color=INK, fontsize=10)
    artists = {"bars": bars, "labels": labels, "ax": ax, "most": most_min}
    move_times(artists, minutes)
    return artists


def move_times(artists, minutes):
    """Move the bars of `draw_times`.

    Parameters
    ----------
    artists : dict
    minutes : tuple of float
    """
    names = ("now", "new size, by the square", "new size, straight")
    rows = zip(artists["bars"], artists["labels"], names, minutes, strict=True)
    for bar, label, name, time in rows:
        bar.set_width(time)
        label.set_text(f"{name}: {time:.1f} min")
    # The scale doubles when a bar would leave it, so that small steps do not shake it.
    past = max(minutes) / artists["most"]
    artists["ax"].set_xlim(0, artists["most"] * 2 ** max(0, math.ceil(math.log2(past))))
