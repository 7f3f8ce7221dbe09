"""The one writer of tables: rows as CSV that no spreadsheet takes for formulas."""

import csv
import io
import re

__all__ = ["PLAIN_NUMBER", "sheet_as_csv", "unguarded"]

# A spreadsheet runs a cell that begins with one of these (full-width ones too), also behind
# blanks, and after a semicolon where that parts columns.
FORMULA = re.compile(r"(^|[;\t\r\n])(?=\s*[=+\-@＝＋－＠])")
GUARD = re.compile(r"(^|[;\t\r\n])'(?=\s*[=+\-@＝＋－＠])")
PLAIN_NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")
# What a spreadsheet would take for a number and change: leading zeros, many figures, 4E21, 3-4.
LOSES = re.compile(r"0[0-9]+|[0-9]{12,}|[0-9]+[eE][0-9]+|[0-9]{1,4}[-/][0-9]{1,4}([-/][0-9]{1,4})?")
KEPT = re.compile(r'="([^"]*)"')


def sheet_as_csv(rows, separator=",", decimal=".", keep_text=False):
    """Rows as CSV text that a spreadsheet opens as text and numbers, never as formulas.

    Parameters
    ----------
    rows : list of list of str
    separator, decimal : str
        Of the country where it is opened.
    keep_text : bool
        Whether what a spreadsheet would change, such as 004238, is written ="004238": the one
        formula that the kit writes, which says that the figures are text.

    Returns
    -------
    str
    """
    text = io.StringIO()
    writer = csv.writer(text, delimiter=separator)
    writer.writerows([[_guarded(cell, decimal, keep_text) for cell in row] for row in rows])
    return text.getvalue()


def _guarded(cell, decimal, keep_text):
    if keep_text and LOSES.fullmatch(cell):
        return f'="{cell}"'
    if PLAIN_NUMBER.fullmatch(cell):
        return cell.replace(".", decimal)
    return FORMULA.sub(r"\1'", cell)


def unguarded(cell):
    """A cell of a sheet that the kit wrote, as it was before it was kept from being a formula.

    Parameters
    ----------
    cell : str

    Returns
    -------
    str
    """
    kept = KEPT.fullmatch(cell)
    if kept and LOSES.fullmatch(kept[1]):
        return kept[1]
    before = None
    while before != cell:  # a blank before it may carry a guard of its own
        before, cell = cell, GUARD.sub(r"\1", cell)
    return cell
