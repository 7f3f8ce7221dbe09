"""Tables for the office: as CSV in the way of the class's country, and as a spreadsheet's file."""

import io

from coursework.classes.countries import style_of
from coursework.csv_sheets import PLAIN_NUMBER, sheet_as_csv
from coursework.safe_files import write_safely

__all__ = ["as_csv", "as_xlsx", "save_xlsx"]

HEAD_ROW = 1
TEXT = "@"  # a spreadsheet's own sign for a cell of text: 004238 keeps its zeros
WIDEST = 60  # characters of a column


def as_csv(rows, country=""):
    """Rows as CSV with the separator and decimal sign of a country, student numbers as text.

    Parameters
    ----------
    rows : list of list of str
    country : str

    Returns
    -------
    str
    """
    style = style_of(country)
    return sheet_as_csv(rows, style.separator, style.decimal, keep_text=True)


def as_xlsx(rows, title):
    """Rows as a workbook: points are numbers, all else is text and never a formula.

    Parameters
    ----------
    rows : list of list of str
        The first holds the heads; the first column is the student number.
    title : str
        Of the sheet.

    Returns
    -------
    bytes
    """
    from openpyxl import Workbook
    from openpyxl.styles import Font
    from openpyxl.utils import get_column_letter

    book = Workbook()
    sheet = book.active
    sheet.title = title[:31]
    for line, row in enumerate(rows, start=HEAD_ROW):
        for column, text in enumerate(row, start=1):
            _fill(sheet.cell(line, column), text, line != HEAD_ROW and column > 1)
    for cell in sheet[HEAD_ROW]:
        cell.font = Font(bold=True)
    sheet.freeze_panes = "C2"
    for column in range(1, len(rows[0]) + 1):
        longest = max(len(row[column - 1]) for row in rows)
        sheet.column_dimensions[get_column_letter(column)].width = min(longest + 2, WIDEST)
    raw = io.BytesIO()
    book.save(raw)
    return raw.getvalue()


def _fill(cell, text, may_be_number):
    """One cell: a number where it reads as one, else text that nothing runs."""
    if may_be_number and PLAIN_NUMBER.fullmatch(text):
        cell.value = float(text)
        return
    cell.value = "".join(one for one in text if one.isprintable() or one == "\n")
    cell.data_type = "s"
    cell.number_format = TEXT


def save_xlsx(file, rows, title):
    """Write a workbook beside a sheet.

    Parameters
    ----------
    file : Path
        The sheet's; its ending is replaced.
    rows : list of list of str
    title : str

    Returns
    -------
    Path
    """
    target = file.with_suffix(".xlsx")
    write_safely(target, as_xlsx(rows, title))
    return target
