"""The tasks of a service out of a table, and the invented service of Brackwater House."""

import re
from pathlib import Path

from kitchenmath.data.tables import table
from kitchenmath.errors import Unreadable
from kitchenmath.service.tasks import Task
from kitchenmath.typed.numbers import typed_number
from kitchenmath.typed.spreadsheet import read_spreadsheet
from kitchenmath.units.registry import Q_

__all__ = ["read_tasks"]

COLUMNS = {
    "task": ("task", "what"),
    "duration_min": ("duration min", "minutes", "duration", "time min", "min"),
    "hands": ("hands", "cooks"),
    "after": ("after",),
    "rest_min": ("rest min", "rest"),
    "hold_min": ("hold min", "hold", "holds min"),
    "equipment": ("equipment",),
    "cook": ("cook", "who"),
    "early": ("early", "ahead"),
}


def read_tasks(path=None):
    """The tasks of a service from a CSV file; without a path the invented one of Brackwater House.

    Parameters
    ----------
    path : path, optional
        Columns `task, duration_min, hands, after, rest_min, hold_min, equipment, cook, early`; the
        first two must be there. Several names in one field are parted by a semicolon; an empty
        field means none, an empty `hands` means 1; `yes` under `early` is preparation. The table
        may come from a spreadsheet of any country.

    Returns
    -------
    list of Task

    Raises
    ------
    Unreadable
        The line is named by its number.
    WrongKind
    OutOfRange

    Examples
    --------
    >>> [task.name for task in read_tasks()][:3]
    ['birds out of the brine, dried', 'sear the birds', 'roast in the low oven']
    """
    if path is None:
        return [_task(row, f"line {line}") for line, row in enumerate(table("service.csv"), 2)]
    try:
        found = read_spreadsheet(Path(path), COLUMNS, ["task", "duration_min"], ",".join(COLUMNS))
    except Unreadable as error:
        raise Unreadable(f"path: {error}") from None
    return [_task(row, f"line {line}", found.decimal_comma) for line, row in found.rows]


def _task(row, where, decimal_comma=False):
    """One line of a task list."""
    minutes = {
        column: _minutes(row, column, where, decimal_comma)
        for column in ("duration_min", "rest_min", "hold_min")
    }
    if minutes["duration_min"] is None:
        raise Unreadable(f"path: {where}: duration_min is empty.")
    hands = _number(row, "hands", where, decimal_comma)
    return Task(
        name=row["task"].strip(),
        duration=minutes["duration_min"],
        hands=1 if hands is None else int(hands) if hands.is_integer() else hands,
        after=_several(row, "after"),
        hold=minutes["hold_min"],
        rest=minutes["rest_min"],
        equipment=_several(row, "equipment"),
        cook=(row.get("cook") or "").strip() or None,
        early=_yes(row, where),
    )


def _number(row, column, where, decimal_comma):
    text = (row.get(column) or "").strip()
    try:
        return typed_number(text, decimal_comma) if text else None
    except Unreadable as error:
        raise Unreadable(f"path: {where}: {column} {error}.") from None


def _minutes(row, column, where, decimal_comma):
    found = _number(row, column, where, decimal_comma)
    return None if found is None else Q_(found, "min")


def _several(row, column):
    """Names of one field, parted by semicolons or lines."""
    parts = re.split(r"[;\n]", row.get(column) or "")
    return tuple(each.strip() for each in parts if each.strip())


def _yes(row, where):
    """Whether a task is marked as preparation."""
    text = (row.get("early") or "").strip().lower()
    if text not in ("", "no", "yes"):
        raise Unreadable(f"path: {where}: early needs yes or nothing, and {text!r} came.")
    return text == "yes"
