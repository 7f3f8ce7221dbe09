"""Times of a log that were read off a clock: on the wall, or a stopwatch.

"18:05", "6.05 pm", "18.05" and 1805 all stand on cooks' papers. What is not said by a colon is told
by its steps: as minutes, 18.00, 18.05, 18.10 would be a log of seconds.
"""

import itertools
import re
import statistics

from kitchenmath.errors import OutOfRange
from kitchenmath.units.registry import Q_, kind_of

DAY_MIN = 24 * 60
COLON = re.compile(
    r"\b(\d{1,2})[:h]([0-5]\d)(?::([0-5]\d))?\b(?:\s?([ap])\.?\s?m\b\.?)?"
    r"|\b(\d{1,2})\.([0-5]\d)()\s?([ap])\.?\s?m\b\.?",
    re.IGNORECASE,
)
SECONDS = 0.5  # minutes from reading to reading: nobody reads a core so often
FIRST_HUNDREDS = 600  # a log that begins at 600 min is none, and 6 o'clock is
HOUR_MIN = 60


def spelled_out(text):
    """A text with its clock times as minutes or seconds of the day, and whether it had any.

    Parameters
    ----------
    text : str

    Returns
    -------
    str
    bool

    Examples
    --------
    >>> spelled_out("18:05 5 °C; 6.10 pm 6 °C")
    ('1085 min 5 °C; 1090 min 6 °C', True)
    """
    return COLON.sub(_spelled, text), bool(COLON.search(text))


def _spelled(found):
    hour, minute, second, half = (one or two for one, two in zip(*_halves(found), strict=True))
    hours = int(hour) % 12 + 12 * (half in "pP") if half else int(hour)
    minutes = HOUR_MIN * hours + int(minute)
    return f"{60 * minutes + int(second)} s" if second else f"{minutes} min"


def _halves(found):
    groups = [group or "" for group in found.groups()]
    return groups[:4], groups[4:]


def since_first(times, by_colon):
    """Times off a clock, counted from the first reading, past midnight too.

    Parameters
    ----------
    times : list of Quantity
        As they came; a bare number is a count.
    by_colon : bool
        Whether a clock was typed as one, and stands here as minutes of the day.

    Returns
    -------
    list of Quantity
        As they came, where no clock was read.
    str
        When the first reading was, "18:05"; "0:00" by a stopwatch; "" where no clock was read.

    Raises
    ------
    OutOfRange
        Where times off a clock stand beside times of another kind.

    Examples
    --------
    >>> times, began = since_first([Q_(18.5, "count"), Q_(18.55, "count"), Q_(19, "count")], False)
    >>> [float(time.magnitude) for time in times], began
    ([0.0, 5.0, 10.0], '18:50')
    """
    if by_colon:
        if not all(time.check("[time]") for time in times):
            raise OutOfRange("some times are a clock's and some are not: type all alike.")
        minutes = [time.to("min").magnitude for time in times]
    else:
        minutes = _steps_like_a_clock(times)
    if not minutes:
        return times, ""
    steps = [after - before for before, after in itertools.pairwise(minutes)]
    hours = max(minutes) >= DAY_MIN or (not minutes[0] and statistics.median(steps) >= HOUR_MIN)
    if by_colon and hours:  # 5:00 and 45:00 are a stopwatch's minutes and seconds
        return [Q_(each / 60, "min") for each in minutes], "0:00"
    began = f"{int(minutes[0]) // HOUR_MIN}:{int(minutes[0]) % HOUR_MIN:02d}"
    return [Q_(_gone(minutes[0], each), "min") for each in minutes], began


def _gone(first, minute):
    gone = minute - first
    return gone + DAY_MIN if gone < -DAY_MIN / 2 else gone


def _steps_like_a_clock(times):
    """Minutes of the day, where bare numbers are 18.05 or 1805 and step like a clock; else []."""
    if len(times) < 3 or any(kind_of(time) != "number" for time in times):
        return []
    typed = [float(time.magnitude) for time in times]
    hundreds = all(each == int(each) for each in typed) and typed[0] >= FIRST_HUNDREDS
    figures = [each if hundreds else 100 * each for each in typed]
    if any(abs(each - round(each)) > 1e-6 for each in figures):
        return []
    parts = [divmod(round(each), 100) for each in figures]
    if any(hour > 23 or minute > 59 for hour, minute in parts):
        return []
    steps = [abs(after - before) for before, after in itertools.pairwise(typed)]
    if not hundreds and statistics.median(steps) >= SECONDS:
        return []
    return [HOUR_MIN * hour + minute for hour, minute in parts]
