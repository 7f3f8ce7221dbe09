"""The kit's one reader of tables, whichever program and country they come from.

A title may stand above the heads, and a column may be headed in many ways; `opened` says which
files are read.
"""

import re
import unicodedata
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

from kitchenmath.errors import Unreadable
from kitchenmath.typed.opened import bytes_of, rows_of

__all__ = ["Spreadsheet", "plain_head", "read_spreadsheet"]

SEPARATORS = ",;\t"
TITLE_LINES = 20  # that may stand above the heads
SHOWN = 120  # characters of the file in a sentence about it


@dataclass(frozen=True)
class Spreadsheet:
    """A table as it was read.

    Attributes
    ----------
    file : str
        Its name, for sentences about it.
    heads : tuple of str
        The wanted ones by the names they were asked for, others in small letters as they stand.
    rows : tuple of (int, dict of str to str)
        The line of the file on which each ends, and its cells by head; none is empty. What goes
        on beyond the last head stands under None.
    decimal_comma : bool
        Whether a comma in a number is its decimal sign, as it parts no columns.
    head_line : int
        The line of the file on which the heads stand.
    typed : tuple of str
        The heads as they stand there.
    """

    file: str
    heads: tuple
    rows: tuple
    decimal_comma: bool
    head_line: int = 1
    typed: tuple = ()

    def doubled(self):
        """The wanted heads and others that stand twice."""
        return [head for head in dict.fromkeys(self.heads) if head and self.heads.count(head) > 1]


def read_spreadsheet(file, columns, needed, example):
    """A table with the columns that are asked for.

    Parameters
    ----------
    file : Path, or (str, bytes or str)
        Where it lies, or its name and what is in it.
    columns : dict of str to sequence of str or pattern
        How each column may be headed, the likeliest first; compared as `plain_head` has it.
    needed : sequence of str
        Those without which it is no such table. The first line that has them all is its heads.
    example : str
        What a line of heads may look like, for the sentence where none is found.

    Returns
    -------
    Spreadsheet

    Raises
    ------
    Unreadable
        When it cannot be opened or is no table, or no line holds the needed heads: with what was
        found in their place.

    Examples
    --------
    >>> marks = read_spreadsheet(
    ...     ("marks.csv", "Knife skills, week 3\\nStudent ID;Mark\\nBH-1;12,5".encode("utf-16")),
    ...     {"student_number": ("student number", "student id"), "mark": ("mark",)},
    ...     ["student_number"], "student_number,mark")
    >>> marks.rows, marks.decimal_comma
    (((3, {'student_number': 'BH-1', 'mark': '12,5'}),), True)
    """
    name, raw = file if isinstance(file, tuple) else (Path(file).name, bytes_of(Path(file)))
    tried = [_headed(*one, columns, needed) for one in rows_of(name, raw)]
    found = max((one for one in tried if one), key=lambda one: len(one[1]), default=None)
    if not found:
        raise Unreadable(
            f'{name} needs a line of heads such as "{example}", and a line below it for each row. '
            f"{_what_came(name, raw)}"
        )
    separator, heads, (head_line, typed), below = found
    rows = [
        (line, _by_head(heads, [cell.strip() for cell in cells]))
        for line, cells in below
        if any(cell.strip() for cell in cells)
    ]
    return Spreadsheet(name, tuple(heads), tuple(rows), separator != ",", head_line, tuple(typed))


def plain_head(text):
    """A head as it is compared: small letters and figures, a blank between words.

    Parameters
    ----------
    text : str

    Returns
    -------
    str

    Examples
    --------
    >>> plain_head("Student_Number"), plain_head("studentID"), plain_head("Core (°C)")
    ('student number', 'student id', 'core c')
    """
    apart = "".join(
        one + " " * (one.islower() and other.isupper()) for one, other in pairwise(f"{text} ")
    )
    plain = unicodedata.normalize("NFKC", apart).casefold()
    return " ".join(re.findall(r"[^\W_]+", plain))


def _headed(separator, rows, columns, needed):
    """The first row with all needed heads, by their names, and the rows below it; or None."""
    for place, (line, row) in enumerate(rows[:TITLE_LINES]):
        heads = _named(row, columns)
        if set(needed) <= set(heads):
            return separator, heads, (line, row), rows[place + 1 :]
    return None


def _by_head(heads, cells):
    beyond = {None: " ".join(cells[len(heads) :])} if len(cells) > len(heads) else {}
    return dict(zip(heads, cells, strict=False)) | beyond


def _named(row, columns):
    """Heads by the names that are asked for; of several that would do, the likeliest is taken."""
    plain = [plain_head(cell) for cell in row]
    heads = [" ".join(cell.lower().split()) for cell in row]
    for name, spellings in columns.items():
        fit = next(filter(any, ([_fits(one, each) for one in plain] for each in spellings)), plain)
        heads = [name if fits is True else head for fits, head in zip(fit, heads, strict=True)]
    return heads


def _fits(plain, spelling):
    found = (
        plain_head(spelling) == plain if isinstance(spelling, str) else spelling.fullmatch(plain)
    )
    return bool(found)


def _what_came(name, raw):
    """The first line that holds anything, as it came."""
    _, rows = next(rows_of(name, raw))
    first = next(((line, row) for line, row in rows if any(map(str.strip, row))), None)
    if first is None:
        return "It is empty."
    return f"Line {first[0]} is “{','.join(first[1]).strip()[:SHOWN]}”."
