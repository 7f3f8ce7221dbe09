"""A service plan as plain numbers, a row for each bar of its picture, and the same in words."""

import itertools
from dataclasses import dataclass

from kitchenmath.service.clock import say_clock, say_span
from kitchenmath.units.door import one_of

AT_WORK, ON_ITS_OWN, NOBODY = "at work", "on its own", "nobody is free"


@dataclass(frozen=True)
class PlanRow:
    """One bar: what is done in which lane, when from midnight, and what becomes of it [min]."""

    name: str
    lane: str
    look: str  # AT_WORK, ON_ITS_OWN or NOBODY
    start_min: float
    work_min: float
    rest_min: float = 0.0
    wait_min: float = 0.0

    @property
    def end_min(self):
        """When nothing is left to wait for."""
        return self.start_min + self.work_min + self.rest_min + self.wait_min


@dataclass(frozen=True)
class PlanRows:
    """The bars of a plan, those of one lane together, and the moments it runs between [min]."""

    rows: tuple
    serve_min: float
    opens_min: float | None = None


def plan_rows(plan, by="cook"):
    """The plain numbers that `PlanChart` draws and `plan_in_words` says.

    Parameters
    ----------
    plan : Plan
    by : str
        "cook": a row for each piece of work of each cook, for each pair of hands that is wanted
        and not there, and for what stands on its own.
        "equipment": a row for each use of a piece of equipment.

    Returns
    -------
    PlanRows

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> from kitchenmath.service import Task, plan_back
    >>> from kitchenmath.units import Q_
    >>> plan = plan_back("19:30", [Task("roast", Q_(50, "min"), hands=0, rest=Q_(10, "min"))])
    >>> [(row.lane, row.rest_min) for row in plan_rows(plan).rows]
    [('on its own', 10.0)]
    """
    one_of(by, ("cook", "equipment"), "by")
    spans = _cook_rows(plan) if by == "cook" else _equipment_rows(plan)
    seen, rows = set(), []
    for lane, name, begin_s, end_s in spans:
        done_s, ready_s, used_s = plan.ends_s(name)
        # What becomes of the item is drawn once, behind the piece of work that finishes it.
        last = end_s == done_s and name not in seen
        seen |= {name} if last else set()
        after_min = ((ready_s - done_s) / 60, (used_s - ready_s) / 60) if last else (0.0, 0.0)
        look = AT_WORK if plan.tasks[name].hands else ON_ITS_OWN
        look = NOBODY if lane == NOBODY else look
        rows.append(PlanRow(name, lane, look, begin_s / 60, (end_s - begin_s) / 60, *after_min))
    opens_min = None if plan.opens_s is None else plan.opens_s / 60
    return PlanRows(tuple(rows), plan.serve_s / 60, opens_min)


def plan_in_words(plan):
    """What `PlanChart` draws, in words: a line for each lane.

    Parameters
    ----------
    plan : PlanRows

    Returns
    -------
    str

    Examples
    --------
    >>> foam = PlanRow("foam", "sauce", AT_WORK, 1165.0, 4.0, wait_min=1.0)
    >>> print(plan_in_words(PlanRows((foam,), 1170.0)))
    sauce: foam 19:25–19:29, then waits 1 min.
    Service at 19:30.
    """
    lines = [lane_in_words(lane, rows) for lane, rows in lanes(plan)]
    if plan.opens_min is not None:
        lines.append(f"The kitchen opens at {say_clock(round(60 * plan.opens_min))}.")
    return "\n".join([*lines, f"Service at {say_clock(round(60 * plan.serve_min))}."])


def lanes(plan):
    """Each lane of a plan with its rows.

    Parameters
    ----------
    plan : PlanRows

    Returns
    -------
    list of (str, list of PlanRow)
    """
    grouped = itertools.groupby(plan.rows, lambda row: row.lane)
    return [(lane, list(rows)) for lane, rows in grouped]


def lane_in_words(lane, rows):
    """One lane's work as a line of text.

    Parameters
    ----------
    lane : str
    rows : list of PlanRow

    Returns
    -------
    str
    """
    pieces = []
    for row in rows:
        begin, end = (
            say_clock(round(60 * at)) for at in (row.start_min, row.start_min + row.work_min)
        )
        parts = [f"{row.name} {begin}–{end}"]
        parts += [ON_ITS_OWN] if row.look == ON_ITS_OWN != lane else []
        for verb, length_min in (("rests", row.rest_min), ("waits", row.wait_min)):
            parts += [f"then {verb} {say_span(60 * length_min)}"] if length_min > 0 else []
        pieces.append(", ".join(parts))
    return f"{lane}: {'; '.join(pieces)}."


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
