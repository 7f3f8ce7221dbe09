"""A probe's log: times and temperatures, from a file or from a cook's list.

Between two readings the temperature is taken to run straight from one to the other.
"""

import csv
import re
from pathlib import Path

import numpy as np

from kitchenmath.errors import OutOfRange, Unreadable, WrongKind
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity, same_kind

_UNITS = {"s": "s", "min": "min", "h": "h", "c": "degC", "f": "degF"}
_HEADS = {
    "time": re.compile(r"time(?:_\w+)?_(s|min|h)", re.IGNORECASE),
    "temperature": re.compile(r"temperature(?:_\w+)?_(c|f)", re.IGNORECASE),
}


def read_log(log):
    """The times and the temperatures of a log, each as one array with a unit.

    Parameters
    ----------
    log : path, (times, temperatures), or list of (time, temperature)
        A CSV file has one heading line with the unit in each name, such as
        `time_min,temperature_C` or `time_h,temperature_F`; further columns are left alone.
        Times and temperatures are arrays with a unit, or lists of quantities.

    Returns
    -------
    times, temperatures : Quantity [time], Quantity [temperature]
        Arrays in the units that came.

    Raises
    ------
    Unreadable
        For a file, a heading or a line that cannot be read; the line is named by its number.
    WrongKind
        For bare numbers, or a time where a temperature belongs.
    OutOfRange
        With fewer than two readings, and when a reading is not later than the one before it.

    Examples
    --------
    >>> times, temperatures = read_log([(Q_(0, "min"), Q_(57, "degC")),
    ...                                 (Q_(2, "h"), Q_(21, "degC"))])
    >>> say(times[-1]), say(temperatures[-1])
    ('120 min', '21 °C')
    """
    if isinstance(log, str | Path):
        times, temperatures, places = _from_file(Path(log))
    else:
        times, temperatures = _columns(log)
        times = column(times, "s", "log, times")
        temperatures = column(temperatures, "degC", "log, temperatures")
        places = [f"reading {number}" for number in range(1, 1 + len(times))]
    if len(times) != len(temperatures):
        raise OutOfRange(
            f"log: {len(times)} times and {len(temperatures)} temperatures came; "
            "each reading needs both."
        )
    if len(times) < 2:
        raise OutOfRange(f"log: needs at least two readings, and {len(times)} came.")
    amount(times, "s", "log, times", many=True)
    # Colder than liquid air or hotter than any oven is a slip of the pen or a broken probe.
    amount(temperatures, "degC", "log, temperatures", least=-200, most=1000, many=True)
    late = np.flatnonzero(np.diff(times.magnitude) <= 0)
    if len(late):
        raise OutOfRange(f"log: {places[late[0] + 1]} is not later than the one before it.")
    return times, temperatures


def time_at_or_above(log, temperature):
    """The longest unbroken stretch of a log at or above a temperature.

    Parameters
    ----------
    log : path, or times and temperatures
        As `read_log` takes it.
    temperature : Quantity [temperature]

    Returns
    -------
    Quantity [time]
        In the log's unit; 0 where the log never gets there.

    Raises
    ------
    Unreadable
    WrongKind
    OutOfRange

    Examples
    --------
    From 50 to 60 °C in 20 min, then 60 °C for 12 min: it passes 55 °C after 10 min, 22 min remain.

    >>> log = (Q_([0, 20, 32], "min"), Q_([50, 60, 60], "degC"))
    >>> print(say(time_at_or_above(log, Q_(55, "degC"))))
    22 min
    """
    times, temperatures = read_log(log)
    unit = str(temperatures.units)
    level = amount(temperature, unit, "temperature")
    longest = stretch = 0.0
    moments, values = times.magnitude, temperatures.magnitude
    for span, before, after in zip(np.diff(moments), values, values[1:], strict=False):
        part = span * share_at_or_above(before, after, level)
        # A stretch goes on only from a reading that was itself at or above the level.
        stretch = stretch + part if before >= level else part
        longest = max(longest, stretch)
    return Q_(float(longest), str(times.units))


def share_at_or_above(before, after, level):
    """How much of the way between two readings lies at or above a level: 0 to 1."""
    low, high = min(before, after), max(before, after)
    if low >= level:
        return 1.0
    return 0.0 if high < level else (high - level) / (high - low)


def _columns(log):
    """Times and temperatures, out of two columns or out of a list of readings."""
    try:
        if len(log) == 2 and not _is_reading(log[0]):
            return log
        times, temperatures = zip(*log, strict=True)
        return list(times), list(temperatures)
    except (TypeError, ValueError, IndexError):
        raise WrongKind(
            "log: needs a file, or times and temperatures such as "
            '(Q_([0, 60], "min"), Q_([57, 30], "degC")).'
        ) from None


def _is_reading(pair):
    """Whether this is one (time, temperature), and not a column of times."""
    if isinstance(pair, Quantity) or not isinstance(pair, list | tuple) or len(pair) != 2:
        return False
    return (
        all(isinstance(each, Quantity) and np.ndim(each.magnitude) == 0 for each in pair)
        and same_kind(pair[0], "s")
        and same_kind(pair[1], "degC")
    )


def column(values, unit, name):
    """An array with a unit, or a list of quantities, as one array in the first one's unit.

    Raises
    ------
    WrongKind
    OutOfRange
    """
    if isinstance(values, Quantity):
        amount(values, unit, name, many=True)
        return Q_(np.atleast_1d(values.magnitude).astype(float), str(values.units))
    if not isinstance(values, list | tuple) or not len(values):
        raise WrongKind(f'{name}: needs a list such as Q_([0, 60], "{unit}"), and {values!r} came.')
    for number, each in enumerate(values, 1):
        amount(each, unit, f"{name}, reading {number}")
    first = str(values[0].units)
    # Straight into the first one's unit: by way of another, 135 °F would be 135.00000000000006.
    return Q_(np.array([each.to(first).magnitude for each in values], dtype=float), first)


def _from_file(path):
    """Times, temperatures and where each reading stands, from a CSV file."""
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            lines = csv.reader(file)
            head = [cell.strip() for cell in next(lines, [])]
            columns = {kind: _place(head, kind, path.name) for kind in _HEADS}
            rows = [(lines.line_num, row) for row in lines if any(cell.strip() for cell in row)]
    except OSError as problem:
        raise Unreadable(f"log: {str(path)!r} cannot be opened ({problem.strerror}).") from None
    except UnicodeDecodeError:
        raise Unreadable(f"log: {path.name} is not saved as UTF-8 text; save it as CSV.") from None
    read = {
        kind: Q_(np.array([_number(row, place, kind, f"{path.name}, line {line}")
                           for line, row in rows], dtype=float), unit)
        for kind, (place, unit) in columns.items()
    }  # fmt: skip
    return read["time"], read["temperature"], [f"{path.name}, line {line}" for line, _ in rows]


def _place(head, kind, file_name):
    """Which column holds this kind, and its unit, from the headings."""
    found = [(n, _HEADS[kind].fullmatch(cell)) for n, cell in enumerate(head)]
    found = [(n, _UNITS[match[1].lower()]) for n, match in found if match]
    if len(found) != 1:
        example = "time_min" if kind == "time" else "temperature_C"
        raise Unreadable(
            f"log: {file_name}, line 1 needs one {kind} column with its unit, such as {example}, "
            f"and {', '.join(head) or 'nothing'} came."
        )
    return found[0]


def _number(row, place, kind, where):
    text = row[place].strip() if place < len(row) else ""
    try:
        number = float(text)
    except ValueError:
        number = np.nan
    if not np.isfinite(number):
        raise Unreadable(f"log: {where}: the {kind} {text!r} is no number.")
    return number
