"""A plan's chart in words: what each bar is, what is broken, one start that works, quality."""

from kitchenmath.service.clock import say_clock, say_span

__all__ = ["bar_in_words", "clock", "marks_in_words", "move_in_words", "quality_in_words"]

BROKEN = {
    "late": "after the service",
    "order": "begins before what it waits for is done",
    "rest": "the rest is not over",
    "hold": "waits too long",
    "opening": "before the kitchen opens",
    "cook": "one cook in two places",
    "hands": "more hands than there are",
    "equipment": "more equipment than there is",
}


def clock(moment_min):
    """A moment of the chart as a clock time.

    Parameters
    ----------
    moment_min : float

    Returns
    -------
    str

    Examples
    --------
    >>> clock(1145.0)
    '19:05'
    """
    return say_clock(round(60 * moment_min))


def bar_in_words(bar):
    """One task: when it is worked at, and what becomes of it.

    Parameters
    ----------
    bar : PlanBar

    Returns
    -------
    str

    Examples
    --------
    >>> from kitchenmath.practice.plan_chart import PlanBar
    >>> bar_in_words(PlanBar("bake the rolls", 1000.0, 21.0, rest_min=20.0, wait_min=89.0))
    '16:40–17:01, then rests 20 min, then waits 1 h 29 min'
    """
    parts = [f"{clock(bar.start_min)}–{clock(bar.done_min)}"]
    for verb, length_min in (("rests", bar.rest_min), ("waits", bar.wait_min)):
        parts += [f"then {verb} {say_span(60 * length_min)}"] if length_min > 0 else []
    return ", ".join(parts)


def marks_in_words(chart, task):
    """What is broken in one task's row; "" where nothing is.

    Parameters
    ----------
    chart : PlanChart
    task : str

    Returns
    -------
    str
    """
    return "; ".join(
        f"{clock(each.begin_min)}–{clock(each.end_min)} {BROKEN[each.rule]}"
        for each in chart.broken
        if task in each.tasks
    )


def move_in_words(move):
    """One start that works.

    Parameters
    ----------
    move : Move

    Returns
    -------
    str

    Examples
    --------
    >>> from kitchenmath.practice.plan_chart import Move
    >>> move_in_words(Move("carve the birds", 1129.0, alone=True))
    'One start that works: “carve the birds” at 18:49. With it this one limit is kept, and all \
else stays as you have it.'
    """
    start = f"One start that works: “{move.task}” at {clock(move.start_min)}."
    if move.alone:
        return f"{start} With it this one limit is kept, and all else stays as you have it."
    return f"{start} Others have to move with it: it is the start in the plan below."


def quality_in_words(waits):
    """What is good or not so good about a plan beyond its limits.

    Parameters
    ----------
    waits : Waits

    Returns
    -------
    str

    Examples
    --------
    >>> from kitchenmath.practice.plan_chart import Waits
    >>> quality_in_words(Waits("cook the velouté", "plate", 90.0, 120.0, True, later_min=1094.0))
    'Beyond the limits: “cook the velouté” waits 1 h 30 min of the 2 h that it may, and every \
minute less is better on the plate; it can begin at 18:14.'
    >>> quality_in_words(Waits("carve the birds", "plate", 0.0, 4.0, False))
    'Beyond the limits: between “carve the birds” and “plate” no minute is to spare, so what runs \
late there makes the service late.'
    """
    if waits.long:
        later = (
            "here no later start of it alone keeps every limit"
            if waits.later_min is None
            else f"it can begin at {clock(waits.later_min)}"
        )
        may, wait = (say_span(60 * length) for length in (waits.may_min, waits.wait_min))
        return (
            f"Beyond the limits: “{waits.task}” waits {wait} of the {may} that it may, and every "
            f"minute less is better on the plate; {later}."
        )
    spare = "no minute is" if waits.wait_min == 0 else f"{say_span(60 * waits.wait_min)} are"
    return (
        f"Beyond the limits: between “{waits.task}” and “{waits.until}” {spare} to spare, "
        "so what runs late there makes the service late."
    )
