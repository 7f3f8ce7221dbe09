"""Reading a student's notebook as data: any bytes in, plain cells out, and nothing is ever run.

What can be read is read: old and unknown formats, odd encodings, cells without ids, files that
break off. Outputs are stepped over, but for those of a cell that brings a photo. What cannot be
read raises `UnreadableNotebook` with one sentence.
"""

import json
import re
from typing import NamedTuple

from coursework.arriving import words
from coursework.arriving.json_walk import Broken, TooDeep, TooMuch, walk_of
from kitchenmath.errors import KitchenError
from kitchenmath.practice.typed_cells import PHOTO

LONGEST_PHOTO = 700_000  # characters of a photo cell's outputs; beyond, only that it is too long
BOM = b"\xef\xbb\xbf"
ODD_BYTES = re.compile("[\udc80-\udcff]")
HALF_CHARACTERS = re.compile(rb"\xed[\xa0-\xbf][\x80-\xbf]")
READ_OF_A_CELL = ("cell_type", "source", "input", "id", "level")


class UnreadableNotebook(KitchenError):
    """A file that cannot be read as a notebook; the message is a sentence about the file."""


class Cell(NamedTuple):
    """One cell as it came. Nothing else in a cell is trusted, so nothing else is kept.

    Attributes
    ----------
    cell_type : str
        "code", "markdown" or whatever stood there; "code" where nothing stood.
    source : str
    id, grade_id : str or None
        The cell's own id, and nbgrader's in its metadata.
    """

    cell_type: str
    source: str
    id: str | None = None
    grade_id: str | None = None


class Notebook(NamedTuple):
    """What could be read.

    Attributes
    ----------
    cells : tuple of Cell
    kitchen : dict
        The notebook's own metadata under "kitchen": set and term.
    findings : tuple of str
        Odd things met while reading, a sentence each.
    photos : dict of str to str
        Question to the outputs below its photo cell, as JSON; `photos.photo_in` reads them.
    """

    cells: tuple
    kitchen: dict
    findings: tuple
    photos: dict


def read_notebook(raw, limit=None, budget=None):
    """The cells of a notebook file.

    Parameters
    ----------
    raw : bytes
        The file, whatever it is.
    limit : int, optional
        Longest file (bytes) that is read.
    budget : Budget, optional
        What may be spent on it; that of one file by default.

    Returns
    -------
    Notebook

    Raises
    ------
    UnreadableNotebook
        For what is empty, too long, no notebook, nested too deep or broken before its first cell.

    Notes
    -----
    Other outputs, and attachments, are not kept. A file that breaks off gives the cells before the
    break, and a finding says so; only a whole cell counts, never the half of one.

    Examples
    --------
    >>> whole = b'{"cells": [{"cell_type": "markdown", "source": ["Buy ", "enough"]}]}'
    >>> read_notebook(whole).cells[0].source
    'Buy enough'
    """
    if limit is not None and len(raw) > limit:
        raise UnreadableNotebook(
            f"The file is {megabytes(len(raw))} long; at most {megabytes(limit)} is read "
            "(file_bytes)."
        )
    text, findings = text_of(raw)
    walk, reading = walk_of(text, budget), Reading(findings)
    if walk.next_mark() != "{":
        raise UnreadableNotebook("The file is no notebook.")
    findings += _as_far_as_it_goes(walk, reading)
    return reading.notebook()


def _as_far_as_it_goes(walk, reading):
    """Read until the end or a break; a sentence where it ended early."""
    try:
        reading.top(walk)
    except TooDeep:
        raise UnreadableNotebook("The file is nested deeper than any notebook.") from None
    except TooMuch:
        if not reading.cells:
            raise UnreadableNotebook("The file has far more pieces than any notebook.") from None
        return [words.TOO_MANY_PIECES.format(count=len(reading.cells))]
    except Broken:
        if not reading.cells:
            raise UnreadableNotebook("The file is damaged before its first cell.") from None
        return [words.BREAKS_OFF.format(count=len(reading.cells))]
    return []


def megabytes(count):
    """A number of bytes in words: 47 MB, 12 kB."""
    return f"{count / 1e6:.3g} MB" if count >= 1e6 else f"{count / 1e3:.3g} kB"


def text_of(raw):
    """A file's text, and what was odd about its bytes.

    UTF-8 is tried character by character: a byte that does not fit is a letter of the Western
    European code page, so one bad byte does not spoil the °C and ½ of the rest.

    Parameters
    ----------
    raw : bytes

    Returns
    -------
    (str, list of str)

    Raises
    ------
    UnreadableNotebook
        For an empty file and for well-known files of another kind.
    """
    if not raw.strip(b"\0\t\r\n "):
        raise UnreadableNotebook("The file is empty.")
    beginning = raw[:200].removeprefix(BOM).lstrip()
    for mark, kind in words.OTHER_KINDS.items():
        if beginning.startswith(mark):
            raise UnreadableNotebook(f"The file is {kind} and no notebook.")
    code = json.detect_encoding(raw)
    if code.startswith(("utf-16", "utf-32")):
        return raw.decode(code, "replace").lstrip("\ufeff"), []
    try:
        return raw.decode("utf-8-sig"), []
    except UnicodeDecodeError:
        text = HALF_CHARACTERS.sub("�".encode(), raw).decode("utf-8-sig", "surrogateescape")
    return ODD_BYTES.sub(western, text), [words.ODD_BYTES]


def western(found):
    """The letter of the Western European code page for one byte that is no UTF-8."""
    byte = bytes([ord(found.group()) - 0xDC00])
    try:
        return byte.decode("cp1252")
    except UnicodeDecodeError:
        return byte.decode("latin-1")


class Reading:
    """What has been read so far, so that it stays when the file breaks off."""

    def __init__(self, findings):
        self.findings, self.cells, self.left_out = findings, [], []
        self.kitchen, self.has_cells, self.replaced = {}, False, False
        self.photos = {}

    def top(self, walk):
        """The whole notebook; format 3 and older keep their cells in worksheets."""
        for name in walk.members():
            if name == "cells":
                self.cells_of(walk)
            elif name == "worksheets" and walk.next_mark() == "[":
                self.worksheets(walk)
            elif name == "metadata":
                self.kitchen = one_member(walk, "kitchen")

    def worksheets(self, walk):
        """The cells of each worksheet, one after the other."""
        for _ in walk.elements():
            if walk.next_mark() == "{":
                for name in walk.members():
                    if name == "cells":
                        self.cells_of(walk)

    def cells_of(self, walk):
        """All cells of one list."""
        if walk.next_mark() != "[":
            return
        self.has_cells = True
        for place in walk.elements():
            cell = self.cell(walk) if walk.next_mark() == "{" else None
            if cell:
                self.cells.append(cell)
            else:
                self.left_out.append(place)

    def cell(self, walk):
        """One cell, or None where its text cannot be read."""
        held, grader, outputs = {}, {}, None
        for name in walk.members():
            if name == "metadata":
                grader = one_member(walk, "nbgrader")
            elif name == "outputs":
                outputs = walk.passed()
            elif name in READ_OF_A_CELL:
                held[name] = walk.value()
        source = held.get("source", held.get("input"))
        if isinstance(source, list) and all(isinstance(line, str) for line in source):
            source = "".join(source)
        if not isinstance(source, str):
            return None
        kind = held.get("cell_type")
        if kind == "heading":  # format 3
            level = held.get("level")
            kind, source = "markdown", f"{'#' * (level if level in range(1, 7) else 1)} {source}"
        parts = (kind or "code", source, held.get("id"), grader.get("grade_id"))
        name = parts[3] or parts[2]
        if isinstance(name, str) and name.endswith(PHOTO):
            photo = "" if outputs is None else walk.text_of(outputs, LONGEST_PHOTO + 1)
            self.photos[self.whole(name.removesuffix(PHOTO))] = photo
        return Cell(*(self.whole(part) if isinstance(part, str) else None for part in parts))

    def whole(self, text):
        """Text without half characters (lone surrogates), which no file could be written with."""
        try:
            text.encode()
        except UnicodeEncodeError:
            self.replaced = True
            return text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
        return text

    def notebook(self):
        """What was read, with the findings."""
        if not self.has_cells:
            raise UnreadableNotebook("The file is no notebook: there is no list of cells in it.")
        if self.left_out:
            places = ", ".join(map(str, self.left_out[:5]))
            places += " and more" if len(self.left_out) > 5 else ""
            self.findings.append(words.LEFT_OUT.format(places=places))
        if not self.cells:
            raise UnreadableNotebook("The file is a notebook without any text.")
        if self.replaced:
            self.findings.append(words.REPLACED)
        return Notebook(tuple(self.cells), self.kitchen, tuple(self.findings), self.photos)


def one_member(walk, wanted):
    """The object under one name of the next object; empty when there is none."""
    held = {}
    if walk.next_mark() == "{":
        for name in walk.members():
            if name == wanted:
                value = walk.value()
                held = value if isinstance(value, dict) else {}
    return held
