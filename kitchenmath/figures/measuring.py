"""Drawings for measuring and scaling: bars to compare, and two pans side by side."""

from matplotlib.patches import Rectangle

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, quiet


def draw_bars(ax, words, lengths, marked):
    """Bars from the left, each with its words above it; one of them is marked.

    Parameters
    ----------
    ax : matplotlib Axes
    words : list of str
        From top to bottom, each with its number and unit: the bars need no scale.
    lengths : list of float
        In any unit, not below nought; the longest fills the picture.
    marked : int
        Which bar is dark.

    Returns
    -------
    dict of str to artist
        "bars", "labels"
    """
    quiet(ax, keep=())
    ax.set_xticks([])
    rows = range(len(words))[::-1]
    bars = ax.barh(list(rows), [0.0] * len(words), height=0.42, edgecolor=INK, linewidth=0.6)
    labels = [ax.text(0, row + 0.27, "", fontsize=10, color=INK, va="bottom") for row in rows]
    ax.set(xlim=(0, 1.01), ylim=(-0.4, len(words) - 0.2))
    artists = {"bars": list(bars), "labels": labels}
    move_bars(artists, words, lengths, marked)
    return artists


def move_bars(artists, words, lengths, marked):
    """Move the bars of `draw_bars` to new numbers.

    Parameters
    ----------
    artists : dict
    words : list of str
    lengths : list of float
    marked : int
    """
    longest = max(lengths) or 1.0
    rows = zip(artists["bars"], artists["labels"], words, lengths, strict=True)
    for row, (bar, label, text, length) in enumerate(rows):
        bar.set_width(length / longest)
        bar.set_facecolor(FOOD if row == marked else LOST)
        label.set_text(text)
        label.set_fontweight("bold" if row == marked else "normal")


def draw_pans(ax, captions, widths_cm, depths_cm, most_cm):
    """Pans cut through the middle, side by side and to scale, with what stands in them.

    Parameters
    ----------
    ax : matplotlib Axes
    captions : list of str
        Under each pan, in three short lines.
    widths_cm, depths_cm : list of float
        Across, and how deep the liquid stands.
    most_cm : tuple of float
        Width and height of the picture.

    Returns
    -------
    dict of str to artist
        "liquids", "walls", "labels", "captions"
    """
    quiet(ax, keep=())
    ax.set_xticks([])
    ax.set(xlim=(-1, most_cm[0]), ylim=(-8.5, most_cm[1]), aspect="equal", anchor="SW")
    liquids = [ax.add_patch(Rectangle((0, 0), 1, 1, color=FOOD)) for _ in captions]
    walls = [ax.plot([], [], color=INK, linewidth=2)[0] for _ in captions]
    labels = [
        ax.text(0, 0, "", fontsize=10, color=ACCENT, ha="left", va="bottom") for _ in captions
    ]
    under = [ax.text(0, 0, "", fontsize=10, color=INK, ha="left", va="top") for _ in captions]
    for label in labels:
        label.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 1})
    artists = {"liquids": liquids, "walls": walls, "labels": labels, "captions": under}
    move_pans(artists, captions, widths_cm, depths_cm)
    return artists


def move_pans(artists, captions, widths_cm, depths_cm):
    """Move the pans of `draw_pans` to new numbers.

    Parameters
    ----------
    artists : dict
    captions : list of str
    widths_cm, depths_cm : list of float
    """
    left_cm = 0.0
    parts = zip(
        *(artists[each] for each in ("liquids", "walls", "labels", "captions")), strict=True
    )
    for part, caption, width, depth in zip(parts, captions, widths_cm, depths_cm, strict=True):
        liquid, wall, label, under = part
        right, rim = left_cm + width, max(depth + 1, width / 2)
        liquid.set_bounds(left_cm, 0, width, depth)
        wall.set_data([left_cm, left_cm, right, right], [rim, 0, 0, rim])
        label.set_position((left_cm + 0.8, depth + 0.4))
        label.set_text(f"{depth:.1f} cm deep")
        under.set_position((left_cm, -0.8))
        under.set_text(caption)
        left_cm = right + 6.0
