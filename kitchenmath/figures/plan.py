"""A service plan as a picture: a bar for each task on a clock axis.

Grouped by cook or by equipment, in greys and hatches that survive a black-and-white printer.
`plan_rows` makes the numbers and `plan_in_words` says them. Needs matplotlib.
"""

from matplotlib.patches import Rectangle

from kitchenmath.figures.frame import FOOD, INK, LOST, PAPER, Words, quiet
from kitchenmath.figures.plan_rows import AT_WORK, NOBODY, ON_ITS_OWN
from kitchenmath.service.clock import say_clock

STEPS_MIN = (5, 10, 15, 30, 60, 120, 240, 480, 1440)
MOST_TICKS = 8
KEY_BELOW_IN = 0.25  # under the clock times
CHARACTER_IN = 0.072  # width of a letter at 9 points, on the generous side
CLEAR = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}  # keeps lines out of the words
WORDS = {"va": "center", "fontsize": 9, "color": INK}
LOOKS = {
    AT_WORK: {"facecolor": FOOD, "hatch": "", "linewidth": 0.6},
    ON_ITS_OWN: {"facecolor": LOST, "hatch": "", "linewidth": 0.6},
    NOBODY: {"facecolor": PAPER, "hatch": "xxxx", "linewidth": 1.8},
    "rests": {"facecolor": PAPER, "hatch": "...", "linewidth": 0.6},
    "waits": {"facecolor": PAPER, "hatch": "////", "linewidth": 0.6},
}


def draw_plan(ax, names, lanes, looks, starts_min, works_min, rests_min, waits_min, serve_min,
              opens_min=None, clock_min=None):  # fmt: skip
    """A bar for each row, its rest dotted and its wait hatched behind it, under the lane's name.

    Parameters
    ----------
    ax : matplotlib Axes
        About 0.27 inch high for each row and each lane, with 0.7 inch below for times and key.
    names, lanes : list of str
        Rows of one lane must stand together.
    looks : list of str
        "at work", "on its own" (nobody is busy with it), "nobody is free" (somebody should be).
    starts_min : list of float
        Minutes from midnight.
    works_min, rests_min, waits_min : list of float
    serve_min : float
    opens_min : float, optional
    clock_min : (float, float), optional
        The ends of the clock axis; by default as far as the rows and the service reach.

    Returns
    -------
    dict of str to artist
        A list of bars for each look, "rests" and "waits"; "labels" and "lanes" (texts), "service"
        and "opens" (lines, the second None without an opening), and "key" (None for an empty
        plan).
    """
    quiet(ax)
    ends_min = [sum(row) for row in zip(starts_min, works_min, rests_min, waits_min, strict=True)]
    reach = (min(starts_min, default=serve_min - 60), max([serve_min, *ends_min]))
    first, last = clock_min or reach
    margin = 0.03 * (last - first)
    ax.set_xlim(first - margin, last + margin)
    _clock_axis(ax, first, last)
    artists = {"axes": ax, "slots": [], "titles": [], "key": None, "opens": None}
    artists["service"] = _moment(ax, "--")
    artists["marks"] = [ax.add_artist(Words(0, -0.75, "", ha="right", **WORDS))]
    if opens_min is not None:
        artists["opens"] = _moment(ax, ":")
        artists["marks"].append(ax.add_artist(Words(0, -0.75, "", ha="left", **WORDS)))
    move_plan(artists, names, lanes, looks, starts_min, works_min, rests_min, waits_min, serve_min,
              opens_min)  # fmt: skip
    return artists


def move_plan(artists, names, lanes, looks, starts_min, works_min, rests_min, waits_min, serve_min,
              opens_min=None):  # fmt: skip
    """Move the bars of `draw_plan` to the rows of another plan; the clock axis stays.

    Parameters
    ----------
    artists : dict
    names, lanes, looks : list of str
    starts_min, works_min, rests_min, waits_min : list of float
    serve_min : float
    opens_min : float, optional
        Needs a plan that was drawn with an opening.
    """
    ax = artists["axes"]
    for part in (*LOOKS, "labels", "lanes"):
        artists[part] = []
    row, lane = 0, None
    for i, name in enumerate(names):
        if lanes[i] != lane:
            lane = lanes[i]
            artists["lanes"].append(_title(artists, row, lane))
            row += 1
        bars, label = _slot(artists, i)
        ends = starts_min[i]
        parts = ((looks[i], works_min[i]), ("rests", rests_min[i]), ("waits", waits_min[i]))
        for bar, (look, length) in zip(bars, parts, strict=True):
            bar.set_visible(length > 0)
            if length > 0:
                bar.set(bounds=(ends, row - 0.3, length, 0.6), **LOOKS[look])
                artists[look].append(bar)
            ends += length
        artists["labels"].append(_put_label(label, row, name, starts_min[i], ends))
        row += 1
    _hide_the_rest(artists)
    ax.set_ylim(max(row, 1) - 0.4, -1.2)
    artists["service"].set_xdata([serve_min, serve_min])
    artists["marks"][0].set(x=serve_min, text=f"service {_clock(serve_min)} ")
    if opens_min is not None:
        artists["opens"].set_xdata([opens_min, opens_min])
        artists["marks"][1].set(x=opens_min, text=f" opens {_clock(opens_min)}")
    artists["labels"] += artists["marks"]
    artists["key"] = _key(ax, artists)


def _moment(ax, style):
    """An upright line for one moment."""
    return ax.axvline(0, color=INK, linestyle=style, linewidth=1)


def _slot(artists, number):
    """Three bars and a label for a row: work, rest and wait. Made when first wanted."""
    while len(artists["slots"]) <= number:
        ax = artists["axes"]
        bars = [ax.add_artist(Rectangle((0, 0), 1, 1, edgecolor=INK)) for _ in range(3)]
        artists["slots"].append((bars, ax.add_artist(Words(0, 0, "", **WORDS))))
    bars, label = artists["slots"][number]
    label.set_visible(True)
    return bars, label


def _title(artists, row, lane):
    """The lane's name in a row of its own, over a thin line."""
    number = len(artists["lanes"])
    while len(artists["titles"]) <= number:
        ax = artists["axes"]
        text = Words(0.005, 0, "", transform=ax.get_yaxis_transform(), ha="left",
                     fontweight="bold", bbox=CLEAR, **WORDS)  # fmt: skip
        ax.add_artist(text)
        artists["titles"].append((text, ax.axhline(0, color=INK, linewidth=0.4)))
    text, line = artists["titles"][number]
    text.set(y=row, text=lane, visible=True)
    line.set(ydata=[row - 0.5, row - 0.5], visible=row > 0)
    return text


def _hide_the_rest(artists):
    """What an earlier, longer plan needed and this one does not."""
    for bars, label in artists["slots"][len(artists["labels"]):]:  # fmt: skip
        for part in (*bars, label):
            part.set_visible(False)
    for text, line in artists["titles"][len(artists["lanes"]):]:  # fmt: skip
        text.set_visible(False)
        line.set_visible(False)


def _put_label(label, row, name, start, end):
    """The task's name on the roomier side of its bar, or on the bar where neither has room."""
    ax = label.axes
    low, high = ax.get_xlim()
    width_in = ax.get_position().width * ax.figure.get_figwidth()
    needed = CHARACTER_IN * (len(name) + 1) * (high - low) / width_in
    label.set_bbox(None)
    if max(start - low, high - end) < needed:
        label.set(x=(start + end) / 2, y=row, text=name, ha="center")
        label.set_bbox(CLEAR)
    elif start - low > high - end:
        label.set(x=start, y=row, text=f"{name} ", ha="right")
    else:
        label.set(x=end, y=row, text=f" {name}", ha="left")
    return label


def _clock_axis(ax, first, last):
    """Ticks at whole steps of the clock, at most eight or so."""
    fitting = [step for step in STEPS_MIN if (last - first) / step <= MOST_TICKS]
    step = fitting[0] if fitting else STEPS_MIN[-1]
    ticks = [step * n for n in range(int(first // step), int(last // step) + 1)]
    ticks = [tick for tick in ticks if tick >= first]
    ax.set_xticks(ticks, [_clock(tick) for tick in ticks])


def _key(ax, artists):
    """What the greys and hatches mean, for those that occur; made anew only when these change."""
    shown = [look for look in LOOKS if artists[look]]
    key = artists["key"]
    if key is not None and [text.get_text() for text in key.get_texts()] == shown:
        return key
    if key is not None:
        key.remove()
    if not shown:
        return None
    height_in = ax.get_position().height * ax.figure.get_figheight()
    samples = [Rectangle((0, 0), 1, 1, edgecolor=INK, **LOOKS[look]) for look in shown]
    return ax.legend(samples, shown, loc="upper center", ncols=len(shown) if len(shown) < 5 else 3,
                     bbox_to_anchor=(0.5, -KEY_BELOW_IN / height_in), frameon=False,
                     fontsize=9)  # fmt: skip


def _clock(minutes):
    """The clock time without the day: the axis shows which comes first."""
    return say_clock(round(60 * minutes)).split(" ")[0]
