"""A service plan as a picture: a bar for each task on a clock axis, and the same in words.

Grouped by cook or by equipment, in greys and hatches that survive a black-and-white printer.
Needs matplotlib.
"""

from kitchenmath.figures.frame import FOOD, INK, LOST, PAPER, quiet
from kitchenmath.service.clock import say_clock, say_span
from kitchenmath.units.door import one_of

STEPS_MIN = (5, 10, 15, 30, 60, 120, 240, 480, 1440)
MOST_TICKS = 8
KEY_BELOW_IN = 0.25  # under the clock times
CHARACTER_IN = 0.072  # width of a letter at 9 points, on the generous side
LOOKS = {
    "at work": {"facecolor": FOOD},
    "on its own": {"facecolor": LOST},
    "rests": {"facecolor": PAPER, "hatch": "..."},
    "waits": {"facecolor": PAPER, "hatch": "////"},
}


def plan_rows(plan, by="cook"):
    """The plain numbers that `draw_plan` draws and `plan_in_words` says.

    Parameters
    ----------
    plan : Plan
    by : str
        "cook": a row for each piece of work of each cook, and what stands on its own.
        "equipment": a row for each use of a piece of equipment.

    Returns
    -------
    dict
        Keyword arguments of both: lists as long as there are rows, and `serve_min`.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> from kitchenmath.service import Task, plan_back
    >>> plan = plan_back("19:30", [Task("roast", Q_(50, "min"), hands=0, rest=Q_(10, "min"))])
    >>> plan_rows(plan)["lanes"], plan_rows(plan)["rests_min"]
    (['on its own'], [10.0])
    """
    one_of(by, ("cook", "equipment"), "by")
    rows = _cook_rows(plan) if by == "cook" else _equipment_rows(plan)
    seen, drawn = set(), []
    for lane, name, begin_s, end_s in rows:
        done_s, ready_s, used_s = plan.ends_s(name)
        # What becomes of the item is drawn once, behind the piece of work that finishes it.
        last = end_s == done_s and name not in seen
        seen |= {name} if last else set()
        after = ((ready_s - done_s) / 60, (used_s - ready_s) / 60) if last else (0.0, 0.0)
        by_hand = plan.tasks[name].hands > 0
        drawn.append((name, lane, begin_s / 60, (end_s - begin_s) / 60, *after, by_hand))
    columns = ("names", "lanes", "starts_min", "works_min", "rests_min", "waits_min", "by_hand")
    lists = zip(*drawn, strict=True) if drawn else [()] * len(columns)
    return {**{c: list(v) for c, v in zip(columns, lists, strict=True)},
            "serve_min": plan.serve_s / 60}  # fmt: skip


def draw_plan(ax, names, lanes, starts_min, works_min, rests_min, waits_min, by_hand, serve_min):
    """A bar for each row, its rest dotted and its wait hatched behind it, under the lane's name.

    Parameters
    ----------
    ax : matplotlib Axes
        About 0.27 inch high for each row and each lane, with 0.7 inch below for times and key.
    names, lanes : list of str
        Rows of one lane must stand together.
    starts_min : list of float
        Minutes from midnight.
    works_min, rests_min, waits_min : list of float
    by_hand : list of bool
        False where nobody is busy with it.
    serve_min : float

    Returns
    -------
    dict of str to artist
        "at work", "on its own", "rests", "waits" (lists of bars), "labels", "lanes" (texts),
        "service" (a line) and "key" (None for an empty plan).
    """
    quiet(ax)
    first = min(starts_min, default=serve_min - 60)
    last = max([serve_min, *(sum(row) for row in zip(starts_min, works_min, rests_min, waits_min,
                                                     strict=True))])  # fmt: skip
    margin = 0.03 * (last - first)
    ax.set_xlim(first - margin, last + margin)
    artists = {look: [] for look in LOOKS} | {"labels": [], "lanes": []}
    row, lane = 0, None
    for i, name in enumerate(names):
        if lanes[i] != lane:
            lane = lanes[i]
            artists["lanes"].append(_lane(ax, row, lane))
            row += 1
        start = starts_min[i]
        ends = start
        for look, length in (
            ("at work" if by_hand[i] else "on its own", works_min[i]),
            ("rests", rests_min[i]),
            ("waits", waits_min[i]),
        ):
            if length > 0:
                artists[look] += ax.barh(row, length, left=ends, height=0.6, edgecolor=INK,
                                         linewidth=0.6, **LOOKS[look])  # fmt: skip
            ends += length
        artists["labels"].append(_label(ax, row, name, start, ends))
        row += 1
    ax.set_ylim(max(row, 1) - 0.4, -1.2)
    artists["service"] = ax.axvline(serve_min, color=INK, linestyle="--", linewidth=1)
    artists["labels"].append(
        ax.text(serve_min, -0.75, f"service {_clock(serve_min)} ", ha="right", va="center",
                fontsize=9, color=INK)
    )  # fmt: skip
    _clock_axis(ax, first, last)
    artists["key"] = _key(ax, artists)
    return artists


def plan_in_words(names, lanes, starts_min, works_min, rests_min, waits_min, by_hand, serve_min):
    """What `draw_plan` draws, in words: a line for each lane.

    Parameters
    ----------
    names, lanes : list of str
    starts_min, works_min, rests_min, waits_min : list of float
    by_hand : list of bool
    serve_min : float

    Returns
    -------
    str

    Examples
    --------
    >>> print(plan_in_words(["foam"], ["sauce"], [1165.0], [4.0], [0.0], [1.0], [True], 1170.0))
    sauce: foam 19:25–19:29, then waits 1 min.
    Service at 19:30.
    """
    lines = {}
    for i, name in enumerate(names):
        begin, end = (
            say_clock(round(60 * at)) for at in (starts_min[i], starts_min[i] + works_min[i])
        )
        parts = [f"{name} {begin}–{end}"]
        parts += [] if by_hand[i] or lanes[i] == "on its own" else ["on its own"]
        for verb, length_min in (("rests", rests_min[i]), ("waits", waits_min[i])):
            parts += [f"then {verb} {say_span(60 * length_min)}"] if length_min > 0 else []
        lines.setdefault(lanes[i], []).append(", ".join(parts))
    said = [f"{lane}: {'; '.join(pieces)}." for lane, pieces in lines.items()]
    return "\n".join([*said, f"Service at {say_clock(round(60 * serve_min))}."])


def _cook_rows(plan):
    """(lane, task, begin, end) for each piece of each cook's work, and for what needs no hands."""
    rows = [
        (cook, name, begin_s, end_s)
        for cook, pieces in plan.by_cook.items()
        for begin_s, end_s, name in pieces
    ]
    return rows + [
        ("on its own", name, plan.starts_s[name], plan.ends_s(name)[0])
        for name in plan.sequence
        if not plan.tasks[name].hands
    ]


def _equipment_rows(plan):
    """(lane, task, begin, end) for each use of each piece of equipment."""
    return [
        (item if number == 1 else f"{item} ({number})", name, plan.starts_s[name],
         plan.ends_s(name)[0])
        for item, number in plan.equipment.items()
        for name in plan.sequence
        if item in plan.tasks[name].equipment
    ]  # fmt: skip


def _lane(ax, row, lane):
    """The lane's name in a row of its own, over a thin line."""
    if row:
        ax.axhline(row - 0.5, color=INK, linewidth=0.4)
    return ax.text(0.005, row, lane, transform=ax.get_yaxis_transform(), ha="left", va="center",
                   fontsize=9, fontweight="bold", color=INK)  # fmt: skip


def _label(ax, row, name, start, end):
    """The task's name on the roomier side of its bar, or on the bar where neither has room."""
    low, high = ax.get_xlim()
    width_in = ax.get_position().width * ax.figure.get_figwidth()
    needed = CHARACTER_IN * (len(name) + 1) * (high - low) / width_in
    words = {"va": "center", "fontsize": 9, "color": INK}
    if max(start - low, high - end) < needed:
        box = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}
        return ax.text((start + end) / 2, row, name, ha="center", bbox=box, **words)
    if start - low > high - end:
        return ax.text(start, row, f"{name} ", ha="right", **words)
    return ax.text(end, row, f" {name}", ha="left", **words)


def _clock_axis(ax, first, last):
    """Ticks at whole steps of the clock, at most eight or so."""
    fitting = [step for step in STEPS_MIN if (last - first) / step <= MOST_TICKS]
    step = fitting[0] if fitting else STEPS_MIN[-1]
    ticks = [step * n for n in range(int(first // step), int(last // step) + 1)]
    ticks = [tick for tick in ticks if tick >= first]
    ax.set_xticks(ticks, [_clock(tick) for tick in ticks])


def _key(ax, artists):
    """What the greys and hatches mean, for those that occur."""
    shown = {look: artists[look][0] for look in LOOKS if artists[look]}
    if not shown:
        return None
    height_in = ax.get_position().height * ax.figure.get_figheight()
    return ax.legend(shown.values(), shown.keys(), loc="upper center", ncols=len(shown),
                     bbox_to_anchor=(0.5, -KEY_BELOW_IN / height_in), frameon=False,
                     fontsize=9)  # fmt: skip


def _clock(minutes):
    """The clock time without the day: the axis shows which comes first."""
    return say_clock(round(60 * minutes)).split(" ")[0]
