"""Photos that came with a hand-in, as our marked copy holds them; marking made them inert."""

import json
import re

from kitchenmath.practice.typed_cells import PHOTO

__all__ = ["photos_of"]

LETTERS = re.compile(r"[A-Za-z0-9+/]+={0,2}")  # base64: nothing in it can end an attribute


def photos_of(course, record):
    """The photos that came with a marked hand-in.

    Parameters
    ----------
    course : Course
    record : Record

    Returns
    -------
    dict of str to str
        By question, the picture as a `data:` address for a page.
    """
    if not record.photos:
        return {}
    try:
        notebook = json.loads(course.autograded(record.set_id, record.student).read_bytes())
        cells = {cell.get("id"): cell for cell in notebook["cells"]}
        found = {each: _address(cells[f"{each}{PHOTO}"]) for each in record.photos}
    except (OSError, ValueError, KeyError, TypeError, IndexError):
        return {}  # the copy is gone or half written: marking again makes it
    return {question: address for question, address in found.items() if address}


def _address(cell):
    text = cell["outputs"][0]["data"]["image/jpeg"]
    return f"data:image/jpeg;base64,{text}" if LETTERS.fullmatch(text) else ""
