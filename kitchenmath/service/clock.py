"""Clock times of a service, and spans of time as a cook says them.

A moment is a whole number of seconds from the midnight before the service. The kitchen's day
runs from 03:00 to 03:00: "00:30" on the plan of an evening is after that evening's "23:00".
"""

import datetime
import re

from kitchenmath.errors import Unreadable, WrongKind

DAY_S = 24 * 3600
DAY_BEGINS_S = 3 * 3600

_TYPED = re.compile(
    r"\s*(?P<hour>\d{1,2})[:.](?P<minute>\d\d)(?:[:.](?P<second>\d\d))?\s*(?P<half>am|pm)?"
    r"\s*(?:the (?P<one>day before)|(?P<days>\d+) days before)?\s*",
    re.IGNORECASE,
)


def read_clock(time, name):
    """The moment that a clock time means, in seconds from the midnight before the service.

    Parameters
    ----------
    time : str or datetime.time
        "19:30", "7:30 pm", "22:00 the day before", "22:00 2 days before".
    name : str
        The parameter's name, for the error.

    Returns
    -------
    int

    Raises
    ------
    WrongKind
        When no clock time came at all.
    Unreadable
        When the text is no clock time.

    Examples
    --------
    19:30 is 19.5 x 3600 = 70 200 s after midnight; half past midnight belongs to the evening.

    >>> read_clock("19:30", "serve_at"), read_clock("00:30", "serve_at") // 3600
    (70200, 24)
    """
    if isinstance(time, datetime.time):
        time = f"{time:%H:%M:%S}"
    if not isinstance(time, str):
        raise WrongKind(f'{name}: needs a clock time such as "19:30", and {time!r} came.')
    typed = _TYPED.fullmatch(time)
    if not typed:
        raise Unreadable(f'{name}: {time!r} is no clock time; type it as "19:30" or "7:30 pm".')
    hour, minute, second = (int(typed[part] or 0) for part in ("hour", "minute", "second"))
    if typed["half"]:
        if not 1 <= hour <= 12:
            raise Unreadable(f"{name}: {time!r} has no such hour; am and pm go from 1 to 12.")
        hour = hour % 12 + (12 if typed["half"].lower() == "pm" else 0)
    if hour > 23 or minute > 59 or second > 59:
        raise Unreadable(f"{name}: {time!r} is no clock time; they go from 00:00 to 23:59.")
    moment_s = 3600 * hour + 60 * minute + second
    moment_s += DAY_S if moment_s < DAY_BEGINS_S else 0
    return moment_s - DAY_S * (1 if typed["one"] else int(typed["days"] or 0))


def say_clock(moment_s):
    """A moment as `read_clock` reads it: 19:30, or 22:00 the day before; seconds if there are any.

    Examples
    --------
    >>> say_clock(70200), say_clock(22 * 3600 - 24 * 3600)
    ('19:30', '22:00 the day before')
    """
    day = (moment_s - DAY_BEGINS_S) // DAY_S
    hour, rest = divmod(moment_s % DAY_S, 3600)
    text = f"{hour:02d}:{rest // 60:02d}" + (f":{rest % 60:02d}" if rest % 60 else "")
    days = {0: "", -1: " the day before", 1: " the day after"}
    return text + days.get(day, f" {-day} days before")


def say_span(seconds):
    """A span of time: 40 s, 25 min, 1 h 45 min. Seconds only below ten minutes, where they count.

    Examples
    --------
    >>> say_span(40), say_span(90), say_span(6300)
    ('40 s', '1 min 30 s', '1 h 45 min')
    """
    whole = round(seconds) if seconds < 600 else 60 * round(seconds / 60)
    hours, rest = divmod(whole, 3600)
    parts = ((hours, "h"), (rest // 60, "min"), (rest % 60, "s"))
    return " ".join(f"{number} {unit}" for number, unit in parts if number) or "0 s"
