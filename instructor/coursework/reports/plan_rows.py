"""A plan's chart as the page draws it: a row for each task, bars and marks in percent of the width.

Numbers and words only; the template escapes every word, so a task may be called what it likes.
"""

from kitchenmath.practice.chart_words import (
    bar_in_words,
    clock,
    marks_in_words,
    move_in_words,
    quality_in_words,
)

__all__ = ["shown_chart"]

STEPS_MIN = (15, 30, 60, 120, 240, 480, 1440)
MOST_TICKS = 5  # clock times beside each other on a phone
NARROWEST = 0.8  # percent of the width; a mark of one minute is still seen


def shown_chart(chart):
    """What the template shows of a chart.

    Parameters
    ----------
    chart : PlanChart or None

    Returns
    -------
    dict or None
        "rows", each with "task", "words", "marks" in words, "bars" (look, left, width) and
        "broken" (left, width); "ticks" and "moments" (left, words); "move" and "quality" in words.
    """
    if chart is None:
        return None
    first = min([bar.start_min for bar in chart.bars], default=chart.serve_min)
    last = max([chart.serve_min, *(bar.end_min for bar in chart.bars)])
    moments = [("service", chart.serve_min)]
    if chart.opens_min is not None:
        moments.insert(0, ("opens", chart.opens_min))
        first = min(first, chart.opens_min)

    def left(moment_min):
        return round(100 * (moment_min - first) / ((last - first) or 1), 2)

    def stretch(begin_min, end_min):
        width = max(NARROWEST, left(end_min) - left(begin_min))
        return {"left": min(left(begin_min), 100 - NARROWEST), "width": round(width, 2)}

    return {
        "rows": [_row(chart, bar, stretch) for bar in chart.bars],
        "ticks": [{"left": left(tick), "words": clock(tick)} for tick in _ticks(first, last)],
        "moments": [
            {"left": left(at_min), "words": f"{name} {clock(at_min)}"} for name, at_min in moments
        ],
        "move": move_in_words(chart.move) if chart.move else "",
        "quality": quality_in_words(chart.quality) if chart.quality else "",
    }


def _row(chart, bar, stretch):
    rested_min = bar.done_min + bar.rest_min
    spans = [("work", bar.start_min, bar.done_min), ("rest", bar.done_min, rested_min),
             ("wait", rested_min, bar.end_min)]  # fmt: skip
    return {
        "task": bar.task,
        "words": bar_in_words(bar),
        "marks": marks_in_words(chart, bar.task),
        "bars": [{"look": look, **stretch(*ends)} for look, *ends in spans if ends[0] < ends[1]],
        "broken": [
            stretch(each.begin_min, each.end_min) for each in chart.broken if bar.task in each.tasks
        ],
    }


def _ticks(first, last):
    """Whole steps of the clock inside, a few."""
    step = next((each for each in STEPS_MIN if (last - first) / each <= MOST_TICKS), STEPS_MIN[-1])
    return [step * n for n in range(int(first // step) + 1, int(last // step) + 1)]
