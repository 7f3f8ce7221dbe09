"""A service plan as plain numbers, a row for each bar of its picture, and the same in words."""

import itertools

from kitchenmath.service.clock import say_clock, say_span
from kitchenmath.units.door import one_of

AT_WORK, ON_ITS_OWN, NOBODY = "at work", "on its own", "nobody is free"


def plan_rows(plan, by="cook"):
    """The plain numbers that `draw_plan` draws and `plan_in_words` says.

    Parameters
    ----------
    plan : Plan
    by : str
        "cook": a row for each piece of work of each cook, for each pair of hands that is wanted
        and not there, and for what stands on its own.
        "equipment": a row for each use of a piece of equipment.

    Returns
    -------
    dict
        Keyword arguments of both: lists as long as there are rows, `serve_min`, and `opens_min`,
        which is None where the plan knows no opening.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> from kitchenmath.service import Task, plan_back
    >>> from kitchenmath.units import Q_
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
        look = AT_WORK if plan.tasks[name].hands else ON_ITS_OWN
        look = NOBODY if lane == NOBODY else look
        drawn.append((name, lane, look, begin_s / 60, (end_s - begin_s) / 60, *after))
    columns = ("names", "lanes", "looks", "starts_min", "works_min", "rests_min", "waits_min")
    lists = zip(*drawn, strict=True) if drawn else [()] * len(columns)
    return {
        **{column: list(values) for column, values in zip(columns, lists, strict=True)},
        "serve_min": plan.serve_s / 60,
        "opens_min": None if plan.opens_s is None else plan.opens_s / 60,
    }


def plan_in_words(names, lanes, looks, starts_min, works_min, rests_min, waits_min, serve_min,
                  opens_min=None):  # fmt: skip
    """What `draw_plan` draws, in words: a line for each lane.

    Parameters
    ----------
    names, lanes, looks : list of str
    starts_min, works_min, rests_min, waits_min : list of float
    serve_min : float
    opens_min : float, optional

    Returns
    -------
    str

    Examples
    --------
    >>> print(plan_in_words(["foam"], ["sauce"], ["at work"], [1165.0], [4.0], [0.0], [1.0],
    ...                     1170.0))
    sauce: foam 19:25–19:29, then waits 1 min.
    Service at 19:30.
    """
    lines = {}
    for i, name in enumerate(names):
        begin, end = (
            say_clock(round(60 * at)) for at in (starts_min[i], starts_min[i] + works_min[i])
        )
        parts = [f"{name} {begin}–{end}"]
        parts += [ON_ITS_OWN] if looks[i] == ON_ITS_OWN != lanes[i] else []
        for verb, length_min in (("rests", rests_min[i]), ("waits", waits_min[i])):
            parts += [f"then {verb} {say_span(60 * length_min)}"] if length_min > 0 else []
        lines.setdefault(lanes[i], []).append(", ".join(parts))
    said = [f"{lane}: {'; '.join(pieces)}." for lane, pieces in lines.items()]
    if opens_min is not None:
        said.append(f"The kitchen opens at {say_clock(round(60 * opens_min))}.")
    return "\n".join([*said, f"Service at {say_clock(round(60 * serve_min))}."])


def _cook_rows(plan):
    """(lane, task, begin, end) for each cook's work, for missing hands, and for what needs none."""
    rows = [
        (cook, name, begin_s, end_s)
        for cook, pieces in plan.by_cook.items()
        for begin_s, end_s, name in pieces
    ]
    missing = [(NOBODY, *span) for name in plan.sequence for span in _missing(plan, name, rows)]
    return [*rows, *missing] + [
        (ON_ITS_OWN, name, plan.starts_s[name], plan.ends_s(name)[0])
        for name in plan.sequence
        if not plan.tasks[name].hands
    ]


def _missing(plan, name, rows):
    """(task, begin, end) for each pair of hands that a task wants and does not get."""
    own = [row[2:] for row in rows if row[1] == name]
    ends = {plan.starts_s[name], plan.ends_s(name)[0], *itertools.chain.from_iterable(own)}
    spans, short_before = [], 0
    for begin_s, end_s in itertools.pairwise(sorted(ends)):
        at_it = sum(first_s <= begin_s < last_s for first_s, last_s in own)
        short = plan.tasks[name].hands - at_it
        if short and short == short_before:
            spans = [(*span[:2], end_s) if span[2] == begin_s else span for span in spans]
        else:
            spans += [(name, begin_s, end_s)] * short
        short_before = short
    return spans


def _equipment_rows(plan):
    """(lane, task, begin, end) for each use of each piece of equipment."""
    return [
        (item if number == 1 else f"{item} ({number})", name, plan.starts_s[name],
         plan.ends_s(name)[0])
        for item, number in plan.equipment.items()
        for name in plan.sequence
        if item in plan.tasks[name].equipment
    ]  # fmt: skip
