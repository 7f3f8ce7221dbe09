"""Plans as students type them: right ones, and those that the usual slips lead to."""

import itertools

from kitchenmath.practice.plan_kitchen import Kitchen
from kitchenmath.practice.plan_lines import in_time
from kitchenmath.practice.question_kinds import Played
from kitchenmath.service.clock import say_clock


def played(question, known):
    """Answers as students give them, and what is to be found about each.

    Right are one plan in every spelling, and the same plan with one task as much earlier as its
    slack allows. Two slips are a plan for a kitchen that is wrong in two ways.

    Parameters
    ----------
    question : PlanQuestion
    known : dict of str to Quantity

    Yields
    ------
    Played
    """
    plan, kitchen = question.right(known), question.kitchen_of(known)
    yield from (Played(typed, "right") for typed in _ways(plan.starts))
    for name, room in plan.slack.items():
        earlier = {**plan.starts, name: say_clock(plan.starts_s[name] - int(room.to("s").m))}
        yield Played(as_lines(earlier), "right")
    values = {slip: question.slip_value(slip, known) for slip in question.slips}
    shown = {slip: starts for slip, starts in values.items() if starts}
    for slip, starts in shown.items():
        yield from (Played(typed, "slip", (slip.name,)) for typed in _ways(starts))
    for first, second in itertools.combinations(shown, 2):
        once = first.formula(kitchen)
        if isinstance(once, Kitchen):
            both = starts_of(second.formula(once))
            yield Played(as_lines(both), "two slips", (first.name, second.name))
    for words in ("19:30", "at half past seven", "birds, then the rest"):
        yield Played(words, "noise")


def as_lines(starts):
    """A plan as a student types it.

    Parameters
    ----------
    starts : dict of str to str

    Returns
    -------
    str
    """
    return "\n".join(f"{name} {start}" for name, start in starts.items())


def starts_of(slipped):
    """What a slip leads to, as starts.

    Parameters
    ----------
    slipped : Kitchen, dict of str to str or None

    Returns
    -------
    dict of str to str or None
    """
    return slipped.plan.starts if isinstance(slipped, Kitchen) else slipped


def _ways(starts):
    """One plan as it may be typed: times last or first, by the half day, or as a dict."""
    yield as_lines(starts)
    yield "\n".join(f"{start.replace(':', '.')} - {n.title()}" for n, start in in_time(starts))
    yield "\n".join(f"{name}: {_by_half_day(start)}" for name, start in starts.items())
    yield dict(starts)


def _by_half_day(start):
    hour, minute = int(start[:2]), start[3:5]
    return f"{(hour - 1) % 12 + 1}:{minute} {'pm' if hour >= 12 else 'am'}{start[5:]}"
