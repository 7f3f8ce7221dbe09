"""Drawings for mixing: a dough in the bowl, parts of a whole, and the sum that makes the water."""

from kitchenmath.figures.frame import ACCENT, FOOD, INK, LOST, PAPER, quiet

PER_LETTER, AROUND = 0.017, 0.02  # of the axis, at 10 points: what a word needs to fit a piece


def draw_pieces(ax, rows, names, unit, most, outlined=None):
    """Rows of pieces laid end to end, each row with a line above it that says what it is.

    Parameters
    ----------
    ax : matplotlib Axes
    rows : list of list of float
        From top to bottom; the pieces of a row from the left. All rows have the same number.
    names : list of list of str or tuple of str
        What each piece is called; an empty name leaves it bare. Of several the first that fits.
    unit : str
        Written below the axis.
    most : float
        The scale's end, so that rows can be compared while a slider moves.
    outlined : dict of int to str, optional
        Rows drawn as outlines, with the line's style: "--" for what a slip makes.

    Returns
    -------
    dict of str to artist
        "pieces", "words" (both by row) and "labels"; and the scale's end.
    """
    quiet(ax)
    outlined = outlined or {}
    looks = ((FOOD, ""), (LOST, "///"), (ACCENT, ""), (PAPER, "..."))
    artists = {"pieces": [], "words": [], "labels": [], "most": most}
    for place, row in enumerate(rows):
        height = len(rows) - 1 - place
        pieces, words = [], []
        for index in range(len(row)):
            colour, hatch = (PAPER, "") if place in outlined else looks[index]
            look = {"color": colour, "hatch": hatch, "linestyle": outlined.get(place, "-")}
            bar = ax.barh(height, 0, height=0.42, edgecolor=INK, linewidth=0.6, **look)[0]
            pieces.append(bar)
            words.append(_word_on(ax, height, dark=colour in (FOOD, ACCENT)))
        artists["pieces"].append(pieces)
        artists["words"].append(words)
        artists["labels"].append(ax.text(0, height + 0.26, "", fontsize=10, color=INK, va="bottom"))
    ax.set(xlim=(0, most), ylim=(-0.35, len(rows) - 0.3))
    ax.set_xlabel(unit, color=INK, fontsize=10)
    move_pieces(artists, rows, names, [""] * len(rows))
    return artists


def _word_on(ax, height, dark):
    """A word in the middle of a piece, readable on colour and on hatching."""
    box = {"facecolor": PAPER, "edgecolor": "none", "pad": 1.2}
    return ax.text(0, height, "", fontsize=10, ha="center", va="center", clip_on=True,
                   color=PAPER if dark else INK, bbox=None if dark else box)  # fmt: skip


def move_pieces(artists, rows, names, labels):
    """Move the pieces of `draw_pieces` to new numbers, and write the lines above them.

    Parameters
    ----------
    artists : dict
    rows : list of list of float
    names : list of list of str or tuple of str
    labels : list of str
        One line for each row.
    """
    for pieces, words, row, named in zip(
        artists["pieces"], artists["words"], rows, names, strict=True
    ):
        left = 0.0
        for piece, word, width, name in zip(pieces, words, row, named, strict=True):
            piece.set_x(left)
            piece.set_width(width)
            word.set_x(left + width / 2)
            word.set_text(_that_fits(name, width / artists["most"]))
            left += width
    for label, text in zip(artists["labels"], labels, strict=True):
        label.set_text(text)


def _that_fits(names, room):
    """The first of some names that fits into a piece, given as a share of the axis; or none."""
    names = (names,) if isinstance(names, str) else names
    fitting = (name for name in names if room > AROUND + PER_LETTER * len(name))
    return next(fitting, "")
