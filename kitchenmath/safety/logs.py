"""A probe's log: times and temperatures, from a file or from a cook's list.

Between two readings the temperature is taken to run straight from one to the other.
"""

from pathlib import Path

import numpy as np

from kitchenmath.errors import KitchenError, OutOfRange, Unreadable, WrongKind
from kitchenmath.typed.log_lines import read_file, read_log_lines
from kitchenmath.typed.opened import bytes_of
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity, kind_of


def read_log(log):
    """The times and the temperatures of a log, each as one array with a unit.

    Parameters
    ----------
    log : path, (times, temperatures), or list of (time, temperature)
        A file has a line of heads with the unit in each, such as `time_min,temperature_C` or
        "Elapsed time (h); Core (°F)"; a title above it and further columns are left alone.
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
    found = _read(log)
    if len(found.pairs) < 2:
        raise OutOfRange(f"log: needs at least two readings, and {len(found.pairs)} came.")
    times = column([time for time, _ in found.pairs], "s", "log, times")
    temperatures = column([core for _, core in found.pairs], "degC", "log, temperatures")
    amount(times, "s", "log, times", many=True)
    # Colder than liquid air or hotter than any oven is a slip of the pen or a broken probe.
    amount(temperatures, "degC", "log, temperatures", least=-200, most=1000, many=True)
    late = np.flatnonzero(np.diff(times.magnitude) <= 0)
    if len(late):
        raise OutOfRange(f"log: {found.places[late[0] + 1]} is not later than the one before it.")
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


def _read(log):
    """The log as it came, with a unit beside each time and each temperature."""
    try:
        if not isinstance(log, str | Path):
            return read_log_lines(log)
        name, raw = Path(log).name, bytes_of(Path(log))
        found = read_file(name, raw)
    except WrongKind:
        raise WrongKind(
            "log: needs a file, or times and temperatures such as "
            '(Q_([0, 60], "min"), Q_([57, 30], "degC")).'
        ) from None
    except KitchenError as error:
        raise type(error)(f"log: {error}") from None
    _units_said(found, name)
    return found


def _units_said(found, name):
    """Refuse a file that leaves open whether minutes or hours, °C or °F are meant."""
    where, came = found.heads_at or name, f", and {found.heads or 'nothing'} came"
    for place, kind in enumerate(("time", "temperature")):
        if not found.pairs or any(kind_of(pair[place]) == "number" for pair in found.pairs):
            example = "time_min" if kind == "time" else "temperature_C"
            raise Unreadable(
                f"log: {where} needs one {kind} column with its unit, such as {example}{came}."
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
