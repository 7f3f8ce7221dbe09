"""Measured pieces, as a class hands them in: a list, an array, or a column of a CSV file."""

import csv
import os
from pathlib import Path

import numpy as np

from kitchenmath.errors import OutOfRange, UnknownName, Unreadable, WrongKind
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
    UnknownName
        When the file has no such column.
    Unreadable
        When the file or a cell of it cannot be read.
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
    """The lengths in one column of a CSV file."""
    if column is None or unit is None:
        raise WrongKind('column, unit: a CSV file needs both, as in column="edge", unit="mm".')
    rows, decimal_comma = _rows(path)
    names = [name.strip() for name in rows[0]]
    if column not in names:
        raise UnknownName(f"column: {path.name} has no {column!r}; it has {', '.join(names)}.")
    place = names.index(column)
    cells = [(line, row[place].strip()) for line, row in enumerate(rows, 1) if place < len(row)]
    return [
        _length(
            cell.replace(",", ".") if decimal_comma else cell, unit, f"{path.name}, line {line}"
        )
        for line, cell in cells[1:]
        if cell
    ]


def _rows(path):
    """The rows of a CSV file, and whether a comma is its decimal sign.

    Spreadsheets write a semicolon between cells where the comma is the decimal sign.
    """
    try:
        data = path.read_bytes()
    except OSError as error:
        raise Unreadable(f"measurements: {path} cannot be read: {error.strerror}.") from None
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")
    lines = text.splitlines()
    if not any(line.strip() for line in lines):
        raise Unreadable(f"measurements: {path.name} is empty.")
    between = next((sign for sign in ";\t" if sign in lines[0]), ",")
    return list(csv.reader(lines, delimiter=between)), between != ","


def _length(cell, unit, place):
    """One cell: a plain number of `unit`, or a length with its own unit."""
    try:
        length = read(cell)
    except Unreadable as error:
        raise Unreadable(f"measurements: {place}: {error}") from None
    return Q_(length.magnitude, unit) if kind_of(length) == "number" else length
