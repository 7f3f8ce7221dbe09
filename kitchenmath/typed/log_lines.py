"""The one reader of probe logs: lines as a cook types them, columns, and a probe's own file."""

import re
from dataclasses import dataclass, replace

import numpy as np

from kitchenmath.errors import OutOfRange, Unreadable, WrongKind
from kitchenmath.typed.lists import amounts_in, plain_quantity, quantity_of
from kitchenmath.typed.log_clock import since_first, spelled_out
from kitchenmath.typed.log_table import log_table, readings
from kitchenmath.typed.opened import as_text
from kitchenmath.units.registry import Quantity
from kitchenmath.units.saying import as_came

COLUMN = (list, tuple, np.ndarray, Quantity)
FAHRENHEIT = re.compile(r"(?:\b|_)(?:f|fahrenheit)\b", re.IGNORECASE)
CELSIUS = re.compile(r"(?:\b|_)(?:c|celsius)\b", re.IGNORECASE)


@dataclass(frozen=True)
class LogRead:
    """A log as it came.

    Attributes
    ----------
    pairs : list of (Quantity, Quantity)
        Time and temperature; a bare number is a count.
    began : str
        When the first reading was, where the times are a clock's; else "".
    places : list of str
        Where each reading stands, for sentences: "reading 3", "pot.csv, line 4".
    heads, heads_at : str
        How its columns are headed, and where; "" where nothing heads them.
    """

    pairs: list
    began: str
    places: list
    heads: str = ""
    heads_at: str = ""


def read_file(name, raw):
    """A log out of a probe's file, or out of any text or table with a line for each reading.

    Parameters
    ----------
    name : str
    raw : bytes or str

    Returns
    -------
    LogRead

    Raises
    ------
    Unreadable
    OutOfRange
    """
    table = log_table(name, raw)
    if table is None:
        text = as_text(name, raw) if isinstance(raw, bytes) else raw
        return _counted(*_from_lines(text))
    pairs, places, by_clock = readings(table)
    heads, at = ", ".join(map(str.strip, table.typed)), f"{name}, line {table.head_line}"
    return replace(_counted(pairs, by_clock), places=places, heads=heads, heads_at=at)


def read_log_lines(answer):
    """The readings of a log, from everything that it may be typed as.

    Times off the clock on the wall are counted from the first reading.

    Parameters
    ----------
    answer : str, dict, or sequence
        As `ProbeLogKind.read` takes it.

    Returns
    -------
    LogRead

    Raises
    ------
    Unreadable
    WrongKind
    OutOfRange

    Examples
    --------
    >>> log = read_log_lines("18.00 5 °C; 18.05 6.5 °C; 18.10 9 °C")
    >>> [(say(time), say(core)) for time, core in log.pairs], log.began
    ([('0 min', '5 °C'), ('5 min', '6.5 °C'), ('10 min', '9 °C')], '18:00')
    """
    if isinstance(answer, str):
        return read_file("line of heads", answer)
    return _counted(*_pairs_in(answer))


def _counted(pairs, by_clock):
    """Pairs with their times counted from the first, where they are a clock's."""
    times, began = since_first([time for time, _ in pairs], by_clock)
    counted = [(time, core) for time, (_, core) in zip(times, pairs, strict=True)]
    return LogRead(counted, began, [f"reading {place}" for place in range(1, len(counted) + 1)])


def _pairs_in(answer):
    """The readings as they came, and whether their times were typed off a clock."""
    if isinstance(answer, dict):
        values = list(answer.values())
        columns = len(values) == 2 and all(isinstance(each, COLUMN) for each in values)
        return _from_columns(*values) if columns else _from_rows(answer.items())
    if not isinstance(answer, COLUMN):
        raise WrongKind(f"{as_came(answer)} is no log.")
    rows = _column(answer)
    if rows and all(isinstance(row, str) for row in rows):
        return _from_lines("\n".join(rows))
    return _from_columns(*rows) if _are_columns(rows) else _from_rows(rows)


def _are_columns(rows):
    """Whether two lists are a column of times and one of temperatures, and not two readings."""
    if len(rows) != 2 or not all(isinstance(row, COLUMN) for row in rows):
        return False
    first = _column(rows[0])
    return len(first) != 2 or all(
        isinstance(each, Quantity) and each.check("[time]") for each in first
    )


def _from_lines(text):
    """A reading a line; or all on one line, two amounts each."""
    text, by_colon = spelled_out(text)
    lines = [line for line in re.split(r"[\r\n]+", text) if line.strip()]
    heading = lines.pop(0) if len(lines) > 1 and not re.search(r"\d", lines[0]) else ""
    amounts = [_two(line) for line in lines] if len(lines) > 1 else _by_twos("".join(lines))
    scale = "°F" if FAHRENHEIT.search(heading) else "°C" if CELSIUS.search(heading) else ""
    pairs = [
        (_time(*time, place), _core(core[0], core[1] or scale, place))
        for place, (time, core) in enumerate(amounts, 1)
    ]
    return pairs, by_colon


def _two(line):
    """The two amounts of a line; "10,18" and "10,18,5" are ten minutes and a temperature.

    In "18.05 12,5" the comma is a decimal one, though a point stands on the clock.
    """
    found = amounts_in(line)
    if len(found) != 2 and "," in line:
        found = amounts_in(line.replace(",", " ; ", 1))
    if len(found) != 2 and "," in line:
        found = amounts_in(re.sub(r"(?<=\d),(?=\d)", ".", line))
    if len(found) != 2:
        raise Unreadable(
            f"“{line.strip()[:40]}” has {len(found)} amounts: a line holds a time and a "
            "temperature."
        )
    return found


def _by_twos(line):
    found = amounts_in(line)
    if len(found) % 2:
        raise Unreadable(f"{len(found)} amounts came: each reading needs a time and a temperature.")
    return list(zip(found[::2], found[1::2], strict=True))


def _from_columns(times, cores):
    times, cores = _column(times), _column(cores)
    if len(times) != len(cores):
        raise OutOfRange(
            f"{len(times)} times and {len(cores)} temperatures came; each reading needs both."
        )
    return _from_rows(zip(times, cores, strict=True))


def _column(values):
    """An array with a unit as a list of quantities."""
    if not isinstance(values, Quantity):
        return list(values) if isinstance(values, list | tuple) else list(np.atleast_1d(values))
    return [Quantity(float(each), values.units) for each in np.ravel(values.magnitude)]


def _from_rows(rows):
    pairs, by_colon = [], False
    for place, row in enumerate(rows, 1):
        if isinstance(row, str):
            row, clock = spelled_out(row)
            time, core = _two(row)
            pairs.append((_time(*time, place), _core(*core, place)))
        else:
            two = _column(row) if isinstance(row, COLUMN) else []
            if len(two) != 2:
                raise WrongKind(f"reading {place}: {as_came(row)} is no time with a temperature.")
            when, clock = spelled_out(two[0]) if isinstance(two[0], str) else (two[0], False)
            pairs.append((_one(when, _time, place), _one(two[1], _core, place)))
        by_colon = by_colon or clock
    return pairs, by_colon


def _one(thing, as_typed, place):
    """One amount of a pair, typed or computed."""
    if not isinstance(thing, str):
        return plain_quantity(thing, f"reading {place}")
    found = amounts_in(thing)
    if len(found) != 1:
        raise Unreadable(f"reading {place}: “{thing[:40]}” is not one amount.")
    return as_typed(*found[0], place)


def _time(number, unit, place):
    minutes = unit.casefold() in ("m", "'", "′")
    return quantity_of(number, "min" if minutes else unit, f"reading {place}")


def _core(number, unit, place):
    typed = {"c": "°C", "°": "", "deg": "", "degrees": ""}.get(unit.casefold(), unit)
    return quantity_of(number, typed, f"reading {place}")
