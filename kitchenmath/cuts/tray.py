"""Measured pieces, as a class hands them in: a list, an array, or a column of a CSV file."""

import os
from pathlib import Path

import numpy as np

from kitchenmath.errors import OutOfRange, Unreadable, WrongKind
from kitchenmath.typed.spreadsheet import read_spreadsheet
from kitchenmath.units.door import amount
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_, Quantity, kind_of

MOST_PIECES = 100_000  # more is no tray but a wrong file


def measured_mm(measurements, column=None, unit=None):
    """Measurements in mm as a list of floats, in the order they came.

    Parameters
    ----------
    measurements : sequence of Quantity [length], array Quantity [length], or path of a CSV file
    column : str, optional
        For a CSV file: the column to read.
    unit : str, optional
        For a CSV file: the unit of its plain numbers, such as "mm". A cell may also carry its
        own, such as "1/8 in". Empty cells are pieces that were not measured.

    Returns
    -------
    list of float

    Raises
    ------
    WrongKind
        For bare numbers, or lengths that are none.
    OutOfRange
        Unless every length is above nought.
    Unreadable
        When the file or a cell of it cannot be read, or it has no such column.
    """
    if isinstance(measurements, str | os.PathLike):
        measurements = _column(Path(measurements), column, unit)
    elif column is not None or unit is not None:
        raise WrongKind("column, unit: are for a CSV file, and quantities came, which have a unit.")
    pieces = _listed(measurements)
    if not 0 < len(pieces) <= MOST_PIECES:
        raise OutOfRange(f"measurements: needs 1 to {MOST_PIECES} pieces, and {len(pieces)} came.")
    if isinstance(measurements, Quantity):
        return [
            float(each)
            for each in np.ravel(amount(measurements, "mm", "measurements", above=0, many=True))
        ]
    return [
        float(amount(each, "mm", f"measurements, piece {number}", above=0))
        for number, each in enumerate(pieces, start=1)
    ]


def _listed(measurements):
    """The measurements as a list; a bare number has no pieces in it."""
    try:
        return list(measurements)
    except TypeError:
        raise WrongKind(
            f"measurements: needs a list of lengths, and {measurements!r} came; "
            'type them as Q_([3.1, 2.8, 3.4], "mm").'
        ) from None


def _column(path, column, unit):
    """The lengths in one column of a table."""
    if column is None or unit is None:
        raise WrongKind('column, unit: a CSV file needs both, as in column="edge", unit="mm".')
    try:
        table = read_spreadsheet(path, {column: (column,)}, [column], f"piece,{column}")
    except Unreadable as error:
        raise Unreadable(f"measurements: {error}") from None
    return [
        _length(cells[column], table.decimal_comma, unit, f"{table.file}, line {line}")
        for line, cells in table.rows
        if cells.get(column)
    ]


def _length(cell, decimal_comma, unit, place):
    """One cell: a plain number of `unit`, or a length with its own unit."""
    try:
        length = read(cell.replace(",", ".") if decimal_comma else cell)
    except Unreadable as error:
        raise Unreadable(f"measurements: {place}: {error}") from None
    return Q_(length.magnitude, unit) if kind_of(length) == "number" else length
