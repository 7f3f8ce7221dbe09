"""Drawings for the whole menu: how long each part waits, and what a cover costs."""

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, quiet


def draw_waits(ax, names, waits_min, holds_min, most_min):
    """A bar for each wait, and a thick upright line where its limit is.

    Parameters
    ----------
    ax : matplotlib Axes
    names : list of str
        From top to bottom.
    waits_min, holds_min : list of float
    most_min : float
        The scale's end; a limit beyond it is only written.

    Returns
    -------
    dict of str to artist
        "bars", "limits", "labels", and "names".
    """
    quiet(ax)
    rows = range(len(names))[::-1]
    bars = ax.barh(list(rows), waits_min, height=0.4, color=FOOD, edgecolor=INK, linewidth=0.6)
    limits = [
        ax.plot([hold, hold], [row - 0.3, row + 0.3], color=ACCENT, linewidth=3)[0]
        for row, hold in zip(rows, holds_min, strict=True)
    ]
    labels = [ax.text(0, row + 0.32, "", fontsize=10, color=INK, va="bottom") for row in rows]
    ax.set(xlim=(0, most_min), ylim=(-0.5, len(names) - 0.1))
    ax.set_xlabel("minutes from ready to the plate; upright line: limit", color=INK, fontsize=10)
    artists = {"bars": bars, "limits": limits, "labels": labels, "names": names}
    move_waits(artists, waits_min, holds_min)
    return artists


def move_waits(artists, waits_min, holds_min):
    """Move the bars of `draw_waits` to new waits.

    Parameters
    ----------
    artists : dict
    waits_min, holds_min : list of float
    """
    rows = zip(
        artists["bars"], artists["labels"], artists["names"], waits_min, holds_min, strict=True
    )
    for bar, label, name, wait, hold in rows:
        broken = wait > hold
        bar.set_width(wait)
        bar.set_hatch("///" if broken else "")
        bar.set_facecolor(LOST if broken else FOOD)
        end = f", {wait - hold:.0f} min too long" if broken else ""
        label.set_text(f"{name}: waits {wait:.0f} of {hold:.0f} min{end}")


def draw_cover_cost(ax, names, used, left_over, most):
    """For each item what is used and, hatched, what is paid for and left over, a cover.

    Parameters
    ----------
    ax : matplotlib Axes
    names : list of str
        From top to bottom.
    used, left_over : list of float
        Dollars a cover.
    most : float
        The scale's end.

    Returns
    -------
    dict of str to artist
        "used", "left" (bars), "labels", and "names".
    """
    quiet(ax)
    rows = list(range(len(names))[::-1])
    edge = {"height": 0.4, "edgecolor": INK, "linewidth": 0.6}
    bars = ax.barh(rows, used, color=FOOD, **edge)
    left = ax.barh(rows, left_over, color=LOST, hatch="///", **edge)
    # A "$" is a dollar here and not the start of a formula.
    words = {"fontsize": 10, "color": INK, "va": "bottom", "parse_math": False}
    labels = [ax.text(0, row + 0.26, "", **words) for row in rows]
    ax.set(xlim=(0, most), ylim=(-0.5, len(names) - 0.1))
    ax.set_xlabel("dollars a cover; hatched: paid for and left over", color=INK, fontsize=10)
    artists = {"used": bars, "left": left, "labels": labels, "names": names}
    move_cover_cost(artists, used, left_over)
    return artists


def move_cover_cost(artists, used, left_over):
    """Move the bars of `draw_cover_cost` to new numbers.

    Parameters
    ----------
    artists : dict
    used, left_over : list of float
        Dollars a cover.
    """
    rows = zip(
        artists["used"], artists["left"], artists["labels"], artists["names"], used, left_over,
        strict=True,
    )  # fmt: skip
    for bar, rest, label, name, spent, spare in rows:
        bar.set_width(spent)
        rest.set_width(spare)
        rest.set_x(spent)
        label.set_text(f"{name}: ${spent:.2f} used, ${spare:.2f} left over")
