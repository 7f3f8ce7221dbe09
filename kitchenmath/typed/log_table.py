"""A probe's log as its program writes it: a column of times and one of temperatures."""

import re

from kitchenmath.errors import Unreadable
from kitchenmath.typed.lists import amounts_in, quantity_of
from kitchenmath.typed.log_clock import spelled_out
from kitchenmath.typed.numbers import typed_number
from kitchenmath.typed.spreadsheet import plain_head, read_spreadsheet
from kitchenmath.units.registry import Q_

__all__ = ["log_table", "readings"]

UNITS = {
    **dict.fromkeys(("s", "sec", "second", "seconds"), "s"),
    **dict.fromkeys(("min", "minute", "minutes"), "min"),
    **dict.fromkeys(("h", "hour", "hours"), "h"),
    **dict.fromkeys(("c", "celsius"), "degC"),
    **dict.fromkeys(("f", "fahrenheit"), "degF"),
}
HEADS = {
    "time": (re.compile(r"(?:.* )?(?:time|elapsed)(?: .*)?|s|sec|seconds?|min|minutes?|h|hours?"),),
    "temperature": (
        re.compile(r"(?:.* )?(?:temperature|temp|core)(?: .*)?|c|celsius|f|fahrenheit"),
    ),
}
DATE = re.compile(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}[ T]+(?=\d{1,2}:)")  # of the clock behind it


def log_table(name, raw):
    """The readings in a table, or None where no line of it heads times and temperatures.

    Parameters
    ----------
    name : str
        Of the file, for sentences.
    raw : bytes or str

    Returns
    -------
    Spreadsheet or None
        Its rows; `readings` makes amounts of them.

    Raises
    ------
    Unreadable
        When two columns may be meant.
    """
    try:
        table = read_spreadsheet((name, raw), HEADS, list(HEADS), "time_min,temperature_C")
    except Unreadable:
        return None
    doubled = [head for head in table.doubled() if head in HEADS]
    if doubled:
        raise Unreadable(
            f"{name}, line {table.head_line} needs one {doubled[0]} column, and "
            f"{', '.join(map(str.strip, table.typed))} came."
        )
    # "10,18,5" below "time,core" is ten minutes and 18.5: no table, though it looks like one.
    return None if any(None in cells for _, cells in table.rows) else table


def readings(table):
    """The time and the temperature of each line of such a table.

    Parameters
    ----------
    table : Spreadsheet

    Returns
    -------
    list of (Quantity, Quantity)
        A number whose head says no unit is a count.
    list of str
        Where each stands.
    bool
        Whether times were typed off a clock.

    Raises
    ------
    Unreadable
        Naming the line.
    """
    found, places, by_clock = [], [], False
    units = {head: _unit(table, head) for head in HEADS}
    for line, cells in table.rows:
        place = f"{table.file}, line {line}"
        when, clock = spelled_out(DATE.sub("", cells.get("time", "")))
        core = cells.get("temperature", "")
        pair = [
            _amount(text, units[head], table.decimal_comma, f"{place}: the {head}")
            for head, text in (("time", when), ("temperature", core))
        ]
        found.append(tuple(pair))
        places.append(place)
        by_clock = by_clock or clock
    return found, places, by_clock


def _unit(table, head):
    """The unit that a head says, or "count"."""
    words = plain_head(table.typed[table.heads.index(head)]).split()
    return UNITS.get(words[-1], "count")


def _amount(text, unit, decimal_comma, whose):
    """One cell: a number of the head's unit, or an amount with its own."""
    try:
        return Q_(typed_number(text, decimal_comma), unit)
    except Unreadable as error:
        amounts = _amounts(text)
        if len(amounts) != 1 or not amounts[0][1]:
            raise Unreadable(f"{whose} {error}.") from None
        return quantity_of(*amounts[0], whose)


def _amounts(text):
    try:
        return amounts_in(text)
    except Unreadable:
        return []
