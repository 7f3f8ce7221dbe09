"""Drawings for foams: the parts of a base, how it swells, and how it drains."""

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, quiet

EDGE = {"height": 0.45, "edgecolor": INK, "linewidth": 0.6}
CLEAR = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}  # keeps lines out of the words


def draw_parts(ax, volume_g, weight_g, most_g):
    """The same parts read as volumes and as weights: two bars, the sugar hatched.

    Parameters
    ----------
    ax : matplotlib Axes
    volume_g, weight_g : (float, float)
        Grams of cider and of sugar, by volume and by weight.
    most_g : float
        The scale's end.

    Returns
    -------
    dict of str to artist
        "cider", "sugar" (bars, by volume first) and "labels".
    """
    quiet(ax)
    rows = (1, 0)
    cider = [ax.barh(row, 0, color=FOOD, **EDGE)[0] for row in rows]
    sugar = [ax.barh(row, 0, color=LOST, hatch="///", **EDGE)[0] for row in rows]
    labels = [ax.text(0, row + 0.27, "", fontsize=10, color=INK, va="bottom") for row in rows]
    ax.set(xlim=(0, most_g), ylim=(-0.4, 1.9))
    ax.set_xlabel("grams", color=INK, fontsize=10)
    artists = {"cider": cider, "sugar": sugar, "labels": labels}
    move_parts(artists, volume_g, weight_g)
    return artists


def move_parts(artists, volume_g, weight_g):
    """Move the bars of `draw_parts` to new numbers.

    Parameters
    ----------
    artists : dict
    volume_g, weight_g : (float, float)
    """
    bars = zip(artists["cider"], artists["sugar"], artists["labels"], strict=True)
    readings = (("by volume", volume_g), ("by weight", weight_g))
    for (cider, sugar, label), (name, (cider_g, sugar_g)) in zip(bars, readings, strict=True):
        cider.set_width(cider_g)
        sugar.set_width(sugar_g)
        sugar.set_x(cider_g)
        label.set_text(f"{name}: cider {cider_g:.0f} g, sugar {sugar_g:.0f} g (hatched)")


def draw_swelling(ax, base_ml, foam_ml, most_ml):
    """The base, and the foam that it becomes: liquid and gas, the gas hatched.

    Parameters
    ----------
    ax : matplotlib Axes
    base_ml, foam_ml : float
    most_ml : float
        The scale's end.

    Returns
    -------
    dict of str to artist
        "base", "liquid", "gas" (bars) and "labels".
    """
    quiet(ax)
    base, liquid = (ax.barh(row, 0, color=FOOD, **EDGE)[0] for row in (1, 0))
    gas = ax.barh(0, 0, color=LOST, hatch="///", **EDGE)[0]
    labels = [ax.text(0, row + 0.27, "", fontsize=10, color=INK, va="bottom") for row in (1, 0)]
    ax.set(xlim=(0, most_ml), ylim=(-0.4, 1.9))
    ax.set_xlabel("millilitres", color=INK, fontsize=10)
    artists = {"base": base, "liquid": liquid, "gas": gas, "labels": labels}
    move_swelling(artists, base_ml, foam_ml)
    return artists


def move_swelling(artists, base_ml, foam_ml):
    """Move the bars of `draw_swelling` to new numbers.

    Parameters
    ----------
    artists : dict
    base_ml, foam_ml : float
    """
    for name in ("base", "liquid"):
        artists[name].set_width(base_ml)
    artists["gas"].set(x=base_ml, width=foam_ml - base_ml)
    words = (
        f"base to whip: {base_ml:.0f} mL",
        f"foam on the plates: {foam_ml:.0f} mL, of it {foam_ml - base_ml:.0f} mL gas (hatched)",
    )
    for label, text in zip(artists["labels"], words, strict=True):
        label.set_text(text)


def draw_drainage(ax, minutes, drained_percents, half_min, at_min, at_percent, puddle_ml):
    """How much of the liquid has drained, where half of it is out, and where the plate is eaten.

    Parameters
    ----------
    ax : matplotlib Axes
    minutes : sequence of float
        Where the curve is drawn.
    drained_percents : sequence of float
        Of the liquid, at each of them.
    half_min : float
    at_min, at_percent, puddle_ml : float
        When the plate is eaten, and how much has drained by then.

    Returns
    -------
    dict of str to artist
        "curve", "half" (line), "dot" and "labels".
    """
    quiet(ax, keep=("bottom", "left"))
    ax.axhline(50, color=INK, linewidth=0.6, linestyle=":")
    curve = ax.plot(minutes, drained_percents, color=FOOD, linewidth=2)[0]
    half = ax.plot([0, 0], [0, 50], "--", color=INK, linewidth=1)[0]
    dot = ax.plot([0], [0], "o", color=ACCENT, markersize=9)[0]
    # The curve never comes down to the lower right corner, so the words stay there.
    labels = [
        ax.text(minutes[-1] - 0.2, height, "", fontsize=10, color=INK, ha="right", bbox=CLEAR)
        for height in (20, 12, 4)
    ]
    ax.set(xlim=(0, minutes[-1]), ylim=(0, 100), xticks=range(0, int(minutes[-1]) + 1, 5))
    ax.set_xlabel("minutes after whipping", color=INK, fontsize=10)
    ax.set_ylabel("drained (% of the base)", color=INK, fontsize=10)
    artists = {"curve": curve, "half": half, "dot": dot, "labels": labels}
    move_drainage(artists, drained_percents, half_min, at_min, at_percent, puddle_ml)
    return artists


def move_drainage(artists, drained_percents, half_min, at_min, at_percent, puddle_ml):
    """Move curve, line and dot of `draw_drainage` to new numbers.

    Parameters
    ----------
    artists : dict
    drained_percents : sequence of float
    half_min, at_min, at_percent, puddle_ml : float
    """
    artists["curve"].set_ydata(drained_percents)
    artists["half"].set_xdata([half_min, half_min])
    artists["dot"].set_data([at_min], [at_percent])
    words = (
        f"eaten at {at_min:g} min (dot): {at_percent:.0f} %",
        f"puddle: {puddle_ml:.1f} mL a spoon",
        f"half is out at {half_min:g} min (dashed)",
    )
    for label, text in zip(artists["labels"], words, strict=True):
        label.set_text(text)
