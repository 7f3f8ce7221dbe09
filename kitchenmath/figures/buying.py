"""Drawings for buying: what is bought and what is left, and what carries the cost."""

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, quiet


def draw_purchase(ax, bought_kg, left_kg, slip_kg, most_kg):
    """What is bought, what of it is served, and what multiplying by the yield would buy.

    Parameters
    ----------
    ax : matplotlib Axes
    bought_kg, left_kg, slip_kg : float
    most_kg : float
        The scale's end, so that bars can be compared while a slider moves.

    Returns
    -------
    dict of str to artist
        "kept", "lost", "served", "slip" (bars) and "labels".
    """
    quiet(ax)
    edge = {"height": 0.5, "edgecolor": INK, "linewidth": 0.6}
    kept = ax.barh(2, left_kg, color=FOOD, **edge)[0]
    lost = ax.barh(2, 0, color=LOST, hatch="///", **edge)[0]
    served = ax.barh(1, left_kg, color=FOOD, **edge)[0]
    slip = ax.barh(0, slip_kg, color=PAPER, linestyle="--", **edge)[0]
    labels = [ax.text(0, row + 0.3, "", fontsize=10, color=INK, va="bottom") for row in (2, 1, 0)]
    ax.set(xlim=(0, most_kg), ylim=(-0.5, 2.9))
    ax.set_xlabel("kilograms", color=INK, fontsize=10)
    artists = {"kept": kept, "lost": lost, "served": served, "slip": slip, "labels": labels}
    move_purchase(artists, bought_kg, left_kg, slip_kg)
    return artists


def move_purchase(artists, bought_kg, left_kg, slip_kg):
    """Move the bars of `draw_purchase` to new numbers.

    Parameters
    ----------
    artists : dict
    bought_kg, left_kg, slip_kg : float
    """
    for name, width in (
        ("kept", left_kg), ("lost", bought_kg - left_kg), ("served", left_kg), ("slip", slip_kg),
    ):  # fmt: skip
        artists[name].set_width(width)
    artists["lost"].set_x(left_kg)
    words = (
        f"bought: {bought_kg:.2f} kg, of it {bought_kg - left_kg:.2f} kg trim (hatched)",
        f"served: {left_kg:.2f} kg",
        f"bought by multiplying: {slip_kg:.2f} kg, too little",
    )
    for label, text in zip(artists["labels"], words, strict=True):
        label.set_text(text)


def draw_prices(ax, names, dollars_per_kg, most):
    """Prices of a kilo as bars from the left, each with its name and number.

    Parameters
    ----------
    ax : matplotlib Axes
    names : list of str
        From top to bottom.
    dollars_per_kg : list of float
    most : float
        The scale's end.

    Returns
    -------
    dict of str to artist
        "bars", "labels"
    """
    quiet(ax)
    rows = range(len(names))[::-1]
    colours = [LOST, FOOD, ACCENT, INK][: len(names)]
    bars = ax.barh(list(rows), dollars_per_kg, height=0.5, color=colours, edgecolor=INK,
                   linewidth=0.6)  # fmt: skip
    labels = [ax.text(0, row + 0.3, "", fontsize=10, color=INK, va="bottom") for row in rows]
    ax.set(xlim=(0, most), ylim=(-0.5, len(names) - 0.1))
    ax.set_xlabel("dollars a kilo", color=INK, fontsize=10)
    artists = {"bars": bars, "labels": labels, "names": names}
    move_prices(artists, dollars_per_kg)
    return artists


def move_prices(artists, dollars_per_kg):
    """Move the bars of `draw_prices` to new numbers.

    Parameters
    ----------
    artists : dict
    dollars_per_kg : list of float
    """
    rows = zip(artists["bars"], artists["labels"], artists["names"], dollars_per_kg, strict=True)
    for bar, label, name, price in rows:
        bar.set_width(price)
        label.set_text(f"{name}: ${price:.2f}")
