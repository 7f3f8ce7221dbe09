"""Drawings for thickening: oil in an emulsion, and gelatin of another strength."""

from kitchenmath.figures.frame import FOOD, INK, LOST, PAPER, quiet

EDGE = {"height": 0.45, "edgecolor": INK, "linewidth": 0.6}


def draw_packing(ax, oil_percent, marks):
    """An emulsion as a bar, oil and the rest, under the marks at which it changes.

    Parameters
    ----------
    ax : matplotlib Axes
    oil_percent : float
        Of the volume.
    marks : dict of str to float
        What happens, and from how many percent on; rising.

    Returns
    -------
    dict of str to artist
        "oil", "rest" (bars) and "label".
    """
    quiet(ax)
    oil = ax.barh(0, 0, color=FOOD, **EDGE)[0]
    rest = ax.barh(0, 0, color=LOST, hatch="///", **EDGE)[0]
    for row, (words, percent) in enumerate(marks.items()):
        top = 0.95 + 0.42 * (row + 1)  # a step up for each, so that no line crosses the words
        ax.plot([percent, percent], [-0.22, top], color=INK, linewidth=0.9)
        ax.text(percent - 0.8, top, f"{words} {percent:.0f} %", fontsize=10, color=INK,
                ha="right", va="top")  # fmt: skip
    label = ax.text(0, 0.27, "", fontsize=10, color=INK, va="bottom")
    ax.set(xlim=(0, 100), ylim=(-0.4, 1.05 + 0.42 * len(marks)))
    ax.set_xlabel("share of the volume (%)", color=INK, fontsize=10)
    artists = {"oil": oil, "rest": rest, "label": label}
    move_packing(artists, oil_percent)
    return artists


def move_packing(artists, oil_percent):
    """Move the bar of `draw_packing` to a new share of oil.

    Parameters
    ----------
    artists : dict
    oil_percent : float
    """
    artists["oil"].set_width(oil_percent)
    artists["rest"].set(x=oil_percent, width=100 - oil_percent)
    artists["label"].set_text(f"oil {oil_percent:.1f} %, the rest {100 - oil_percent:.1f} %")


def draw_gelatin(ax, recipe_g, root_g, straight_g, most_g):
    """The recipe's gelatin, the other one by the root, and what the straight ratio would weigh in.

    Parameters
    ----------
    ax : matplotlib Axes
    recipe_g, root_g, straight_g : float
    most_g : float
        The scale's end.

    Returns
    -------
    dict of str to artist
        "bars" and "labels", from top to bottom.
    """
    quiet(ax)
    rows = (2, 1, 0)
    bars = ax.barh(rows, [0, 0, 0], color=[LOST, FOOD, PAPER], **EDGE)
    bars[2].set_linestyle("--")  # the slip is drawn as an outline
    labels = [ax.text(0, row + 0.27, "", fontsize=10, color=INK, va="bottom") for row in rows]
    ax.set(xlim=(0, most_g), ylim=(-0.4, 2.9))
    ax.set_xlabel("grams of gelatin", color=INK, fontsize=10)
    artists = {"bars": bars, "labels": labels}
    move_gelatin(artists, recipe_g, root_g, straight_g)
    return artists


def move_gelatin(artists, recipe_g, root_g, straight_g):
    """Move the bars of `draw_gelatin` to new numbers.

    Parameters
    ----------
    artists : dict
    recipe_g, root_g, straight_g : float
    """
    grams = (recipe_g, root_g, straight_g)
    names = ("in the recipe", "yours, by the root", "yours, by the straight ratio")
    for bar, label, name, each in zip(
        artists["bars"], artists["labels"], names, grams, strict=True
    ):
        bar.set_width(each)
        label.set_text(f"{name}: {each:.1f} g")
