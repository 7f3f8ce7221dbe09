"""Drawings of lesson 7: heat inside a piece, thickness against time, and a roast that rests."""

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, quiet

CLEAR = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}  # keeps lines out of the words
SMALL = {"fontsize": 10, "color": INK}


def draw_profile(ax, places_mm, inside_C, bath_C, mean_C):
    """The temperature from face to face of a piece, with the bath and the mean.

    Parameters
    ----------
    ax : matplotlib Axes
    places_mm : sequence of float
        From the centre, negative to the left.
    inside_C : sequence of float
    bath_C, mean_C : float

    Returns
    -------
    dict of str to artist
        "profile", "bath", "mean" (lines), "piece" (band) and "labels".
    """
    quiet(ax, keep=("bottom", "left"))
    piece = ax.axvspan(-1, 1, color=LOST, alpha=0.45, linewidth=0)
    bath = ax.plot([-26, 26], [0, 0], ":", color=INK, linewidth=1.2)[0]
    mean = ax.plot([0, 0], [0, 0], "--", color=ACCENT, linewidth=1.5)[0]
    profile = ax.plot([], [], color=FOOD, linewidth=2.5)[0]
    labels = [
        ax.text(-25.5, 0, "", va="bottom", **SMALL),
        ax.text(0, -6, "", va="top", ha="center", bbox=CLEAR, **SMALL),
    ]
    # The words stand below nought, where no piece ever comes.
    ax.set(xlim=(-26, 26), ylim=(-20, 100), xticks=range(-20, 21, 10), yticks=range(0, 101, 20))
    ax.set_xlabel("millimetres from the middle", **SMALL)
    ax.set_ylabel("°C", **SMALL)
    artists = {"profile": profile, "bath": bath, "mean": mean, "piece": piece, "labels": labels}
    move_profile(artists, places_mm, inside_C, bath_C, mean_C)
    return artists


def move_profile(artists, places_mm, inside_C, bath_C, mean_C):
    """Move the lines of `draw_profile` to new numbers.

    Parameters
    ----------
    artists : dict
    places_mm, inside_C : sequence of float
    bath_C, mean_C : float
    """
    half_mm = places_mm[-1]
    artists["piece"].set_x(-half_mm)
    artists["piece"].set_width(2 * half_mm)
    artists["profile"].set_data(places_mm, inside_C)
    artists["bath"].set_ydata([bath_C, bath_C])
    artists["mean"].set_data([-half_mm, half_mm], [mean_C, mean_C])
    bath, words = artists["labels"]
    bath.set_y(bath_C + 1)
    bath.set_text(f"bath {bath_C:.0f} °C (dotted)")
    words.set_text(f"middle {min(inside_C):.0f} °C, mean {mean_C:.0f} °C (dashed); shaded: fillet")


def draw_square(ax, thick_mm, squared_min, gentle_min, known, new):
    """Time against thickness: by the square, and where the surface passes little heat.

    Parameters
    ----------
    ax : matplotlib Axes
    thick_mm, squared_min, gentle_min : sequence of float
        The two curves.
    known, new : (float, float)
        Thickness and time: the piece that was timed, the piece asked for.

    Returns
    -------
    dict of str to artist
        "squared", "gentle" (lines), "known", "new" (dots), "labels" and "ax".
    """
    quiet(ax, keep=("bottom", "left"))
    squared = ax.plot([], [], color=FOOD, linewidth=2.5)[0]
    gentle = ax.plot([], [], "--", color=INK, linewidth=1.5)[0]
    dots = [ax.plot([0], [0], mark, color=ACCENT, markersize=9)[0] for mark in ("s", "o")]
    lines = [
        ax.text(0.03, height, "", va="top", transform=ax.transAxes, **SMALL)
        for height in (0.99, 0.89, 0.79)
    ]
    lines[2].set_text("line: by the square; dashed: weak surface")
    ax.set_xlim(10, 51)
    ax.set_xlabel("thickness (mm)", **SMALL)
    ax.set_ylabel("minutes", **SMALL)
    artists = {"squared": squared, "gentle": gentle, "known": dots[0], "new": dots[1]}
    artists |= {"labels": lines[:2], "ax": ax}
    move_square(artists, thick_mm, squared_min, gentle_min, known, new)
    return artists


def move_square(artists, thick_mm, squared_min, gentle_min, known, new):
    """Move curves and dots of `draw_square` to new numbers.

    Parameters
    ----------
    artists : dict
    thick_mm, squared_min, gentle_min : sequence of float
    known, new : (float, float)
    """
    artists["squared"].set_data(thick_mm, squared_min)
    artists["gentle"].set_data(thick_mm, gentle_min)
    for name, (thickness, minutes) in (("known", known), ("new", new)):
        artists[name].set_data([thickness], [minutes])
    words = (
        f"timed (square): {known[0]:.0f} mm, {known[1]:.0f} min",
        f"asked (dot): {new[0]:.0f} mm, {new[1]:.0f} min",
    )
    for label, text in zip(artists["labels"], words, strict=True):
        label.set_text(text)
    # The scale doubles when the curve would leave it, so that small steps do not shake it.
    most = 60 if max(squared_min) <= 60 else 120 if max(squared_min) <= 120 else 180
    artists["ax"].set(ylim=(0, most), yticks=range(0, most + 1, most // 6))


def draw_roast(ax, minutes, core_C, mean_C, surface_C, pulled_min, oven_C):
    """Core, mean and surface of a roast through oven and rest.

    Parameters
    ----------
    ax : matplotlib Axes
    minutes, core_C, mean_C, surface_C : sequence of float
    pulled_min : float
        When it leaves the oven.
    oven_C : float

    Returns
    -------
    dict of str to artist
        "core", "mean", "surface" (lines), "pulled" (line) and "labels".
    """
    quiet(ax, keep=("bottom", "left"))
    styles = {"surface": (INK, ":", 2), "mean": (ACCENT, "--", 1.5), "core": (FOOD, "-", 2.5)}
    artists = {
        name: ax.plot([], [], style, color=color, linewidth=width)[0]
        for name, (color, style, width) in styles.items()
    }
    artists["pulled"] = ax.plot([0, 0], [0, 85], color=INK, linewidth=0.8)[0]
    artists["labels"] = [ax.text(0, 88, "", ha="center", **SMALL)]
    for row, (name, (_, style, _)) in enumerate(styles.items()):
        line = {":": "dotted", "--": "dashed", "-": "full"}[style]
        ax.text(249, 22 - 9 * row, f"{name} ({line})", ha="right", bbox=CLEAR, **SMALL)
    ax.set(xlim=(0, 250), ylim=(0, 100), xticks=range(0, 241, 30))
    ax.set_xlabel("minutes", **SMALL)
    ax.set_ylabel("°C", **SMALL)
    move_roast(artists, minutes, core_C, mean_C, surface_C, pulled_min, oven_C)
    return artists


def move_roast(artists, minutes, core_C, mean_C, surface_C, pulled_min, oven_C):
    """Move the lines of `draw_roast` to new numbers.

    Parameters
    ----------
    artists : dict
    minutes, core_C, mean_C, surface_C : sequence of float
    pulled_min, oven_C : float
    """
    for name, values in (("core", core_C), ("mean", mean_C), ("surface", surface_C)):
        artists[name].set_data(minutes, values)
    artists["pulled"].set_xdata([pulled_min, pulled_min])
    label = artists["labels"][0]
    label.set_x(min(max(pulled_min, 88), 162))
    out = f"out at {pulled_min:.0f} min | rest"
    if minutes[-1] <= pulled_min:
        out = f"still in at {pulled_min:.0f} min"
    label.set_text(f"oven {oven_C:.0f} °C | {out}")
