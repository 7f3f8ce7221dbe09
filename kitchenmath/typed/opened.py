"""Files as people save them, as text and as rows.

Commas, semicolons or tabs part the columns. The text is UTF-8, UTF-16 or the Western European code
page, also line by line in turns, as where two files were pasted together. An office's own .xlsx is
read where the library for it is installed.
"""

import csv
import io
import zipfile

from kitchenmath.errors import Unreadable

__all__ = ["as_text", "bytes_of", "decoded", "is_office", "rows_of"]

SEPARATORS = ",;\t"
LARGEST = 20_000_000  # bytes; a class's or a tray's table has a thousandth of it
OFFICE = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")  # how files of an office program begin
UTF_16 = (b"\xff\xfe", b"\xfe\xff")


def bytes_of(file):
    """What is in a file.

    Parameters
    ----------
    file : Path

    Returns
    -------
    bytes

    Raises
    ------
    Unreadable
    """
    try:
        return file.read_bytes()
    except OSError as error:
        raise Unreadable(f"“{file}” cannot be read: {error.strerror or error}.") from None


def is_office(raw):
    """Whether this is a file of an office program, and no text."""
    return isinstance(raw, bytes) and raw.startswith(OFFICE)


def rows_of(name, raw):
    """What is in a file as rows, once for each way to part its columns.

    Parameters
    ----------
    name : str
    raw : bytes or str

    Yields
    ------
    str
        The sign between the columns; "" in an office's own file.
    list of (int, list of str)
        Each row with its line.

    Raises
    ------
    Unreadable
    """
    if len(raw) > LARGEST:
        raise Unreadable(f"{name} has {len(raw)} bytes, which is too much for a table.")
    if is_office(raw):
        yield "", _office_rows(name, raw)
        return
    text = as_text(name, raw) if isinstance(raw, bytes) else raw
    for separator in SEPARATORS:
        if separator in text or separator == ",":
            reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
            try:
                yield separator, [(reader.line_num, row) for row in reader]
            except csv.Error as error:
                raise Unreadable(f"{name}, line {reader.line_num}: {error}.") from None


def as_text(name, raw):
    """What is in a file as text to be looked at in a box; of an office's file with tabs.

    Parameters
    ----------
    name : str
    raw : bytes

    Returns
    -------
    str

    Raises
    ------
    Unreadable
    """
    if is_office(raw):
        return "\n".join("\t".join(row) for _, row in _office_rows(name, raw))
    text = decoded(raw)
    if "\0" in text:
        raise Unreadable(f"{name} is no text: save it as CSV there, and take that.")
    return text


def decoded(raw):
    """The text of a file, whichever program wrote it; no byte is lost without a sign in its place.

    Parameters
    ----------
    raw : bytes

    Returns
    -------
    str

    Examples
    --------
    >>> decoded("Zoë\\n".encode() + "Zoë\\n".encode("cp1252"))
    'Zoë\\nZoë\\n'
    """
    if raw.startswith(UTF_16):
        return raw.decode("utf-16", "replace")
    if raw[1:400:2].count(0) > len(raw[1:400:2]) / 2:  # its mark was cut off
        return raw.decode("utf-16-le", "replace")
    raw = raw.removeprefix(b"\xef\xbb\xbf")
    return "".join(_decoded_line(line) for line in raw.splitlines(keepends=True))


def _decoded_line(line):
    try:
        return line.decode("utf-8")
    except UnicodeDecodeError:
        return line.decode("cp1252", "replace")


def _office_rows(name, raw):
    """The rows of the first sheet of an .xlsx, as text."""
    other = f"{name} is a spreadsheet: save it as CSV there, and take that."
    try:
        from openpyxl import load_workbook
    except ImportError:
        raise Unreadable(other) from None
    try:
        sheet = load_workbook(io.BytesIO(raw), read_only=True, data_only=True).worksheets[0]
        return [
            (line, [_as_text(cell) for cell in row])
            for line, row in enumerate(sheet.iter_rows(values_only=True), start=1)
        ]
    except (zipfile.BadZipFile, KeyError, ValueError, TypeError, IndexError, OSError, EOFError):
        raise Unreadable(other) from None


def _as_text(cell):
    """A cell of an office's file as it would stand in a CSV: 12.5, 7, 2026-10-05."""
    if cell is None:
        return ""
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell)
