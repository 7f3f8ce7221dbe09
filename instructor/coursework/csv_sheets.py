"""The one writer of tables: rows as CSV that no spreadsheet takes for formulas."""

import csv
import io
import re

__all__ = ["sheet_as_csv", "unguarded"]

# A spreadsheet runs a cell that begins with one of these (full-width ones too), also behind
# blanks, and after a semicolon where that parts columns.
FORMULA = re.compile(r"(^|[;\t\r\n])(?=\s*[=+\-@＝＋－＠])")
GUARD = re.compile(r"(^|[;\t\r\n])'(?=\s*[=+\-@＝＋－＠])")
PLAIN_NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")


def sheet_as_csv(rows):
    """Rows as CSV text that a spreadsheet opens as text and numbers, never as formulas.

    Parameters
    ----------
    rows : list of list of str

    Returns
    -------
    str
    """
    text = io.StringIO()
    csv.writer(text).writerows([[_guarded(cell) for cell in row] for row in rows])
    return text.getvalue()


def _guarded(cell):
    return cell if PLAIN_NUMBER.fullmatch(cell) else FORMULA.sub(r"\1'", cell)


def unguarded(cell):
    """A cell of a sheet that the kit wrote, as it was before it was kept from being a formula.

    Parameters
    ----------
    cell : str

    Returns
    -------
    str
    """
    before = None
    while before != cell:  # a blank before it may carry a guard of its own
        before, cell = cell, GUARD.sub(r"\1", cell)
    return cell
