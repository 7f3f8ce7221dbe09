"""Drawings of a class, as SVG that stands in a page. The only module here that asks for matplotlib.

The same numbers give the same bytes. Colours are left to the page, so that its dark and
high-contrast looks hold inside the drawings too; nothing is told by colour alone.
"""

import io
import re
from collections import Counter

import matplotlib
from matplotlib.figure import Figure

from coursework.reports.picture import DOTS, STEP_PERCENT, percent, signed
from coursework.reports.words import AGREEMENT, EARNED_BY_QUESTION, POINTS_SO_FAR

__all__ = [
    "discrimination_svg",
    "draw_agreement",
    "draw_bars",
    "draw_marks",
    "facility_svg",
    "marks_svg",
    "slips_svg",
]

WIDTH_IN = 3.9  # narrow, so that the text is still readable when a phone shrinks it
DOT_IN = 0.115

# Stand-ins that no drawing uses otherwise; the page's own colours take their place.
INK, QUIET, LINE, ACCENT = "#010203", "#020304", "#030405", "#040506"
COLOURS = {INK: "var(--ink)", QUIET: "var(--quiet)", LINE: "var(--line)", ACCENT: "var(--accent)"}
SETTINGS = {
    "svg.fonttype": "none",
    "svg.hashsalt": "class",
    "font.size": 10,
    "text.color": INK,
    "axes.labelcolor": INK,
    "axes.edgecolor": QUIET,
    "xtick.color": QUIET,
    "xtick.labelcolor": INK,
    "ytick.color": QUIET,
    "ytick.labelcolor": INK,
    "axes.spines.left": False,
    "axes.spines.right": False,
    "axes.spines.top": False,
    "ytick.left": False,
    "ytick.labelleft": False,
    "figure.constrained_layout.use": True,
}


def marks_svg(shares, low):
    """The class's marks, a dot for each student; bars for a large class.

    Parameters
    ----------
    shares : list of float
        Points as a share, 0 to 1.
    low : float
        Where the line for low marks stands.

    Returns
    -------
    str
    """
    rows = max(Counter(_steps(shares)).values())
    height = 2.6 if len(shares) > DOTS else 0.9 + DOT_IN * max(rows, 4)
    return _svg("marks", height, "Marks of the class", draw_marks, shares, low)


def facility_svg(headings, facility, waits):
    """For each question the share of its points that the class earned.

    Parameters
    ----------
    headings : list of str
    facility : list of (float or None)
    waits : list of int
        How many answers to each question are not marked yet.

    Returns
    -------
    str
    """
    words = [
        "not marked yet"
        if share is None
        else percent(share) + (f", {more} to mark" if more else "")
        for share, more in zip(facility, waits, strict=True)
    ]
    lengths = [share or 0 for share in facility]
    return _svg(
        "facility", _tall(headings), EARNED_BY_QUESTION, draw_bars, headings, lengths, words, 1
    )


def discrimination_svg(headings, discrimination):
    """For each question how far it agrees with the others.

    Parameters
    ----------
    headings : list of str
    discrimination : list of (float or None)

    Returns
    -------
    str
    """
    height = _tall(headings) + 0.45
    return _svg("agreement", height, AGREEMENT, draw_agreement, headings, discrimination)


def slips_svg(names, counts):
    """How often each slip was made.

    Parameters
    ----------
    names : list of str
    counts : list of int

    Returns
    -------
    str
    """
    words = [str(count) for count in counts]
    title = "Commonest slips"
    return _svg("slips", _tall(names), title, draw_bars, names, counts, words, max(counts))


def draw_marks(ax, shares, low):
    """Dots, or bars for a large class, over percent of the points.

    Parameters
    ----------
    ax : Axes
    shares : list of float
    low : float

    Returns
    -------
    list of Artist
    """
    stacks = Counter(_steps(shares))
    line = ax.axvline(100 * low, color=QUIET, linewidth=1, linestyle=(0, (4, 3)), zorder=0)
    if len(shares) > DOTS:
        places, heights = zip(*sorted(stacks.items()), strict=True)
        drawn = ax.bar(places, heights, 0.8 * STEP_PERCENT, color=ACCENT)
        ax.tick_params(left=True, labelleft=True)
        ax.set_ylabel("students")
    else:
        dots = [(place, row) for place in sorted(stacks) for row in range(1, stacks[place] + 1)]
        x, y = zip(*dots, strict=True)
        drawn = ax.scatter(x, y, s=(72 * DOT_IN * 0.86) ** 2, color=ACCENT, linewidths=0)
        ax.set_ylim(0.3, max(max(y), 4) + 0.7)
    ax.set_xlim(-3, max(103, *stacks))
    ax.set_xticks(range(0, 101, 20), [percent(tick / 100) for tick in range(0, 101, 20)])
    ax.set_xlabel(POINTS_SO_FAR)
    return [line, drawn]


def draw_bars(ax, labels, lengths, words, longest):
    """A bar below each label, with its number in words at the end.

    Parameters
    ----------
    ax : Axes
    labels : list of str
    lengths : list of float
    words : list of str
    longest : float
        What a full bar means.

    Returns
    -------
    BarContainer
    """
    places = range(len(labels))
    for place, label, length, word in zip(places, labels, lengths, words, strict=True):
        ax.text(0, place - 0.3, label, va="bottom", parse_math=False)
        ax.text(length + 0.015 * longest, place, word, va="center")
    bars = ax.barh(places, lengths, height=0.36, color=ACCENT)
    ax.set_xlim(0, 1.15 * longest)
    ax.set_ylim(len(labels) - 0.7, -0.8)
    ax.spines.bottom.set_visible(False)
    ax.set_xticks([])
    return bars


def draw_agreement(ax, labels, values):
    """A dot on a line from -1 to 1 below each label; none where there is no number.

    Parameters
    ----------
    ax : Axes
    labels : list of str
    values : list of (float or None)

    Returns
    -------
    list of Artist
    """
    drawn = []
    for place, (label, value) in enumerate(zip(labels, values, strict=True)):
        ax.text(-1, place - 0.22, label, va="bottom", parse_math=False)
        ax.text(1.1, place, "–" if value is None else signed(value), va="center")
        ax.plot([-1, 1], [place, place], color=LINE, linewidth=1, zorder=0)
        ax.plot([0, 0], [place - 0.12, place + 0.12], color=QUIET, linewidth=1)
        if value is not None:
            drawn += ax.plot([0, value], [place, place], color=ACCENT, linewidth=3)
            drawn += ax.plot([value], [place], "o", color=ACCENT, markersize=8)
    ax.set_xlim(-1.02, 1.32)
    ax.set_ylim(len(labels) - 0.5, -0.8)
    ax.set_xticks([-1, 0, 1], ["−1\nagainst the rest", "0\nno link", "1\nwith the rest"])
    for label, side in zip(ax.get_xticklabels(), ("left", "center", "center"), strict=True):
        label.set_horizontalalignment(side)
    return drawn


def _steps(shares):
    """Each share as the percent of its nearest step."""
    return [round(100 * share / STEP_PERCENT) * STEP_PERCENT for share in shares]


def _tall(labels):
    return 0.1 + 0.52 * len(labels)


def _svg(name, height, title, draw, *numbers):
    """One drawing as inline SVG, with ids of its own and the page's colours."""
    # Whatever a notebook or a settings file changed is set back for the drawing, and only for it.
    with matplotlib.rc_context():
        matplotlib.rcdefaults()
        matplotlib.rcParams.update(SETTINGS)
        figure = Figure(figsize=(WIDTH_IN, height))
        draw(figure.subplots(), *numbers)
        text = io.StringIO()
        nothing = dict.fromkeys(("Date", "Creator", "Format", "Type"))
        figure.savefig(text, format="svg", transparent=True, metadata=nothing)
    svg = text.getvalue()
    svg = svg[svg.index("<svg") :]
    # matplotlib's style sheet would reach the whole page; the page has the same two lines.
    svg = re.sub(r"\s*<defs>\s*<style.*?</style>\s*</defs>", "", svg, flags=re.DOTALL)
    svg = re.sub(r'((?: id="|href="#|url\(#))', rf"\g<1>{name}-", svg)
    for stand_in, colour in COLOURS.items():
        svg = svg.replace(stand_in, colour)
    return svg.replace("<svg ", f'<svg role="img" aria-label="{title}" ', 1)
