"""Drawings for seasoning: salt in grams, a hydrometer's stem, and where the salt ends up."""

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, quiet

SEA_PERCENT = 3.5  # salts in sea water, the 35 g in a kilo of UNESCO Technical Paper 44 (1983)


def draw_rows(ax, names, values, unit, most):
    """Bars from the left, one a row, each with its name and its number above it.

    Parameters
    ----------
    ax : matplotlib Axes
    names : list of str
        From top to bottom.
    values : list of float
    unit : str
        Of the values, written behind each.
    most : float
        The scale's end, so that bars can be compared while a slider moves.

    Returns
    -------
    dict of str to artist
        "bars", "labels"; and the words that `move_rows` needs again.
    """
    quiet(ax)
    rows = range(len(names))[::-1]
    colours = [FOOD, ACCENT, PAPER, PAPER][: len(names)]
    bars = ax.barh(list(rows), values, height=0.45, color=colours, edgecolor=INK, linewidth=0.6)
    for bar in bars[2:]:  # the slips are drawn as outlines
        bar.set_linestyle("--")
    labels = [ax.text(0, row + 0.27, "", fontsize=10, color=INK, va="bottom") for row in rows]
    ax.set(xlim=(0, most), ylim=(-0.4, len(names) - 0.1))
    artists = {"bars": bars, "labels": labels, "names": names, "unit": unit}
    move_rows(artists, values)
    return artists


def move_rows(artists, values):
    """Move the bars of `draw_rows` to new numbers.

    Parameters
    ----------
    artists : dict
    values : list of float
    """
    rows = zip(artists["bars"], artists["labels"], artists["names"], values, strict=True)
    for bar, label, name, value in rows:
        bar.set_width(value)
        label.set_text(f"{name}: {_fine(value)} {artists['unit']}")


def _fine(value):
    """Three figures, and below one two: no scale for salt shows more."""
    return f"{value:.3g}" if value >= 1 else f"{value:.2g}"


def draw_salt(ax, right_g, slip_g, most_g):
    """The salt that a strength asks for, and what a percent of the water gives; the gap hatched.

    Parameters
    ----------
    ax : matplotlib Axes
    right_g, slip_g : float
    most_g : float
        The scale's end.

    Returns
    -------
    dict of str to artist
        "right", "slip", "missing" (bars) and "labels".
    """
    quiet(ax)
    edge = {"height": 0.45, "edgecolor": INK, "linewidth": 0.6}
    right = ax.barh(1, right_g, color=FOOD, **edge)[0]
    slip = ax.barh(0, slip_g, color=PAPER, linestyle="--", **edge)[0]
    missing = ax.barh(0, 0, color=LOST, hatch="///", **edge)[0]
    labels = [ax.text(0, row + 0.27, "", fontsize=10, color=INK, va="bottom") for row in (1, 0)]
    ax.set(xlim=(0, most_g), ylim=(-0.4, 1.9))
    ax.set_xlabel("grams of salt", color=INK, fontsize=10)
    artists = {"right": right, "slip": slip, "missing": missing, "labels": labels}
    move_salt(artists, right_g, slip_g)
    return artists


def move_salt(artists, right_g, slip_g):
    """Move the bars of `draw_salt` to new numbers.

    Parameters
    ----------
    artists : dict
    right_g, slip_g : float
    """
    artists["right"].set_width(right_g)
    artists["slip"].set_width(slip_g)
    artists["missing"].set_width(right_g - slip_g)
    artists["missing"].set_x(slip_g)
    words = (
        f"percent of the brine: {right_g:.0f} g",
        f"percent of the water: {slip_g:.0f} g, {right_g - slip_g:.0f} g missing (hatched)",
    )
    for label, text in zip(artists["labels"], words, strict=True):
        label.set_text(text)


def draw_stem(ax, shown_degrees, percent, full_percent):
    """A salometer's scale above a scale of percent, and the line that leads from one to the other.

    Parameters
    ----------
    ax : matplotlib Axes
    shown_degrees : float
        Where the brine's surface meets the stem.
    percent : float
        The strength that this means.
    full_percent : float
        What 100° stands for; both scales end there.

    Returns
    -------
    dict of str to artist
        "line", "marks" and "labels".
    """
    quiet(ax, keep=())
    ax.set_xticks([])
    for row, step, end in ((1, 10, 100), (0, 2, full_percent)):
        ax.plot([0, 100], [row, row], color=INK, linewidth=1.2)
        side = 1 if row else -1
        for mark in range(0, int(end) + 1, step):
            place = 100 * mark / end
            ax.plot([place, place], [row, row + side * 0.12], color=INK, linewidth=0.8)
            ax.text(place, row + side * 0.16, f"{mark}", fontsize=10, color=INK, ha="center",
                    va="bottom" if row else "top")  # fmt: skip
    ax.text(0, 1.62, "the stem shows degrees (°)", fontsize=10, color=INK, va="bottom")
    ax.text(0, -0.66, "the brine holds percent of salt (%)", fontsize=10, color=INK, va="top")
    line = ax.plot([0, 0], [1, 0], color=ACCENT, linewidth=2)[0]
    marks = ax.plot([0, 0], [1, 0], "o", color=ACCENT, markersize=8)[0]
    labels = [
        ax.text(0, 0.5, "", fontsize=11, color=ACCENT, va="center", weight="bold") for _ in "ab"
    ]
    ax.set(xlim=(-2, 102), ylim=(-1.0, 2.0))
    artists = {"line": line, "marks": marks, "labels": labels, "full_percent": full_percent}
    move_stem(artists, shown_degrees, percent)
    return artists


def move_stem(artists, shown_degrees, percent):
    """Move the line of `draw_stem` to another reading.

    Parameters
    ----------
    artists : dict
    shown_degrees, percent : float
    """
    places = [shown_degrees, 100 * percent / artists["full_percent"]]
    artists["line"].set_xdata(places)
    artists["marks"].set_xdata(places)
    # On the side where there is room; both labels side by side would run into the line.
    left_half = shown_degrees < 50
    for label, text, row in zip(
        artists["labels"], (f"{shown_degrees:g}° read", f"{percent:.1f} % salt"), (0.72, 0.28),
        strict=True,
    ):  # fmt: skip
        label.set(
            text=text,
            x=max(places) + 2 if left_half else min(places) - 2,
            y=row,
            ha="left" if left_half else "right",
        )


def draw_reduction(ax, left_percents, most_percent, **now):
    """How salty a broth gets while it reduces: salted first, and salted last.

    Parameters
    ----------
    ax : matplotlib Axes
    left_percents : sequence of float
        What is left in the pan, from 100 down.
    most_percent : float
        The scale's end.
    **now : float and sequence of float
        What `move_reduction` takes.

    Returns
    -------
    dict of str to artist
        "first", "last" (lines), "dot", "labels".
    """
    quiet(ax, keep=("bottom", "left"))
    first = ax.plot(left_percents, now["first_percents"], color=FOOD, linewidth=2)[0]
    last = ax.plot(left_percents, now["first_percents"], "--", color=ACCENT, linewidth=2)[0]
    dot = ax.plot([0], [0], "o", color=FOOD, markersize=9)[0]
    clear = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}  # keeps lines out of the words
    labels = [ax.text(0, 0, "", fontsize=10, color=INK, bbox=clear) for _ in "ab"]
    ax.axhline(SEA_PERCENT, color=INK, linewidth=0.6, linestyle=":")
    ax.text(99, SEA_PERCENT + 0.08, f"sea water, about {SEA_PERCENT} %", fontsize=10, color=INK,
            va="bottom")  # fmt: skip
    ax.set(xlim=(100, 18), ylim=(0, most_percent))  # reducing runs from left to right
    ax.set_xlabel("left in the pan (% of the start)", color=INK, fontsize=10)
    ax.set_ylabel("salt (%)", color=INK, fontsize=10)
    artists = {"first": first, "last": last, "dot": dot, "labels": labels}
    move_reduction(artists, **now)
    return artists


def move_reduction(artists, first_percents, last_percent, left_now, first_g, last_g):
    """Move the lines of `draw_reduction` to new numbers.

    Parameters
    ----------
    artists : dict
    first_percents : sequence of float
        The strength at each of the drawn places when it was salted first.
    last_percent : float
        The strength when it is salted last.
    left_now : float
        Where the reducing stops, in percent of the start.
    first_g, last_g : float
        The salt that goes in, first or last.
    """
    artists["first"].set_ydata(first_percents)
    artists["last"].set_ydata([last_percent] * len(first_percents))
    now = last_percent * 100 / left_now
    artists["dot"].set_data([left_now], [now])
    salted_first, salted_last = artists["labels"]
    early = left_now > 65  # no room to the left of the dot: to its right, above the curve
    salted_first.set(
        text=f"{first_g:.3g} g salted first: {now:.3g} %",
        x=left_now + (-1 if early else 1.5),
        y=now + (1.5 if early else 0.12),
        ha="left" if early else "right",
        va="bottom",
    )
    words = f"{last_g:.3g} g salted last: {last_percent:.3g} %"
    salted_last.set(text=words, x=99, y=last_percent - 0.1, va="top")
