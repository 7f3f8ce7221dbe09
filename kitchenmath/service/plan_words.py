"""A plan as text: the running sheet, and the list for each cook."""

from kitchenmath.service.clock import say_clock, say_span
from kitchenmath.service.crew import hand_out

CAUTION = (
    "Times are estimates: a probe decides when food is done, "
    "and the local food code how it is kept hot or cold."
)


def running_sheet(plan):
    """All tasks by start, the chain that fixes the beginning, and what is wrong, if anything."""
    handed = hand_out(plan.tasks, plan.starts_s, plan.crew)
    rows = [_row(plan, name, handed[name]) for name in plan.sequence]
    widths = [max(len(row[column]) for row in rows) for column in range(3)]
    lines = [
        "  ".join([*(cell.ljust(width) for cell, width in zip(row, widths, strict=False)), row[3]])
        for row in rows
    ]
    conflicts = ["Conflicts:", *(f"- {each}" for each in plan.conflicts)]
    return "\n".join(
        [
            f"Service at {plan.serve_at}; work begins at {plan.starts[plan.sequence[0]]}.",
            *(line.rstrip() for line in lines),
            f"What fixes the beginning: {' > '.join(plan.critical_chain)} > service.",
            *(conflicts if plan.conflicts else ["Every limit is kept."]),
            *([] if plan.tried_all else [_untried(plan)]),
            CAUTION,
        ]
    )


def cook_lists(plan):
    """For each cook what to do, in order, and what stands without hands."""
    lines = []
    for cook, pieces in plan.by_cook.items():
        lines.append(f"{cook}:")
        lines += [
            f"  {say_clock(begin_s)}–{say_clock(end_s)}  {name}{_with(plan, name)}"
            for begin_s, end_s, name in pieces
        ] or ["  nothing"]
    unwatched = [name for name in plan.sequence if not plan.tasks[name].hands]
    if unwatched:
        lines.append("on its own:")
        lines += [
            f"  {plan.starts[name]}–{say_clock(plan.ends_s(name)[0])}  {name}{_with(plan, name)}"
            for name in unwatched
        ]
    return "\n".join(lines)


def _row(plan, name, pieces):
    """Times, task, cooks, and what becomes of it."""
    done_s, ready_s, used_s = plan.ends_s(name)
    task = plan.tasks[name]
    cooks = list(dict.fromkeys(cook for cook, _, _ in sorted(pieces, key=lambda piece: piece[1])))
    notes = [*task.equipment]
    if task.rest_s:
        notes.append(f"rests until {say_clock(ready_s)}")
    if used_s > ready_s:
        most = "" if task.hold is None else f" of {say_span(task.hold_s)}"
        notes.append(f"waits {say_span(used_s - ready_s)}{most}")
    slack_s = plan.slack[name].to("s").magnitude
    notes.append(f"slack {say_span(slack_s)}" if slack_s else "no slack")
    times = f"{plan.starts[name]}–{say_clock(done_s)}"
    return times, name, ", ".join(cooks), "; ".join(notes)


def _with(plan, name):
    equipment = plan.tasks[name].equipment
    return f" ({', '.join(equipment)})" if equipment else ""


def _untried(plan):
    if plan.feasible:
        return "Not every order of work was tried: a later plan may exist."
    return "Not every order of work was tried: a plan without conflict may exist."
