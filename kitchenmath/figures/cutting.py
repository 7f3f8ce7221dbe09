"""Drawings for cutting: a piece beside the named cut, and ten pieces in their band."""

from matplotlib.patches import Rectangle

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, quiet


def draw_beside(ax, wanted_mm, piece_mm, words):
    """The named cut and a piece beside it, enlarged alike, standing on one line.

    Parameters
    ----------
    ax : matplotlib Axes
    wanted_mm, piece_mm : float
        Edges.
    words : tuple of str
        Below each of the two.

    Returns
    -------
    dict of str to artist
        "wanted", "piece" (squares), "labels" and "ax".
    """
    quiet(ax, keep=())
    ax.set_xticks([])
    ax.set_aspect("equal", adjustable="box", anchor="C")
    wanted = ax.add_patch(Rectangle((0, 0), 1, 1, facecolor=LOST, edgecolor=INK, linewidth=1))
    piece = ax.add_patch(Rectangle((0, 0), 1, 1, facecolor=FOOD, edgecolor=INK, linewidth=1))
    labels = [ax.text(0, 0, "", fontsize=10, color=INK, va="top", ha="center") for _ in words]
    artists = {"ax": ax, "wanted": wanted, "piece": piece, "labels": labels}
    move_beside(artists, wanted_mm, piece_mm, words)
    return artists


def move_beside(artists, wanted_mm, piece_mm, words):
    """Move the squares of `draw_beside` to new sizes; the named cut stays as large on the page.

    Parameters
    ----------
    artists : dict
    wanted_mm, piece_mm : float
    words : tuple of str
    """
    edges = (1.0, piece_mm / wanted_mm)  # in edges of the named cut
    middles = (0.85, 2.6)
    for name, label, middle, edge, text in zip(
        ("wanted", "piece"), artists["labels"], middles, edges, words, strict=True
    ):
        artists[name].set_bounds(middle - edge / 2, 0, edge, edge)
        label.set_position((middle, -0.08))
        label.set_text(text)
    artists["ax"].set(xlim=(0, 3.5), ylim=(-0.35, 1.45))


def draw_tray(ax, sizes_mm, target_mm, tolerance_mm):
    """Ten pieces as points on a line of millimetres, with the band that counts as on size.

    Parameters
    ----------
    ax : matplotlib Axes
    sizes_mm : list of float
    target_mm, tolerance_mm : float

    Returns
    -------
    dict of str to artist
        "band", "target", "on", "off" (points) and "label".
    """
    quiet(ax)
    band = ax.add_patch(Rectangle((0, 0), 1, 10.6, facecolor=LOST, edgecolor="none"))
    target = ax.plot([target_mm, target_mm], [0, 10.6], color=INK, linewidth=1, linestyle="--")[0]
    on = ax.plot([], [], "o", color=FOOD, markersize=7, markeredgecolor=INK)[0]
    off = ax.plot([], [], "X", color=ACCENT, markersize=8, markeredgecolor=INK)[0]
    label = ax.text(target_mm, 10.9, "", fontsize=10, color=INK, ha="center", va="bottom")
    ax.set(xlim=(1, 5), ylim=(0, 12.6))
    ax.set_xlabel("edge in millimetres", color=INK, fontsize=10)
    artists = {"band": band, "target": target, "on": on, "off": off, "label": label}
    move_tray(artists, sizes_mm, target_mm, tolerance_mm)
    return artists


def move_tray(artists, sizes_mm, target_mm, tolerance_mm):
    """Move the points and the band of `draw_tray`.

    Parameters
    ----------
    artists : dict
    sizes_mm : list of float
    target_mm, tolerance_mm : float
    """
    low_mm, high_mm = target_mm - tolerance_mm, target_mm + tolerance_mm
    artists["band"].set_bounds(low_mm, 0, high_mm - low_mm, 10.6)
    rows = list(enumerate(sizes_mm, start=1))
    # A size on the edge of the band counts as on size, as in `judge`.
    within = [abs(size - target_mm) <= tolerance_mm * (1 + 1e-6) for size in sizes_mm]
    for name, wanted in (("on", True), ("off", False)):
        chosen = [(size, row) for (row, size), inside in zip(rows, within, strict=True)
                  if inside is wanted]  # fmt: skip
        artists[name].set_data([s for s, _ in chosen], [r for _, r in chosen])
    artists["label"].set_text(f"band {low_mm:.1f} to {high_mm:.1f} mm; a cross is off size")
