"""A photo that goes along with a set's notebook: below which cell, and putting it there."""

import ast
import contextlib
import json

from kitchenmath.practice.typed_cells import PHOTO

__all__ = ["photo_cells", "photos_of", "with_photo"]


def photo_cells(cells):
    """The questions that a photo may go along with.

    Parameters
    ----------
    cells : dict of str to (str, str)
        As from `read_set`.

    Returns
    -------
    dict of str to (str or None)
        By question, the named cut that its tray is judged against.
    """
    found = {name: text for name, (_, text) in cells.items() if name.endswith(PHOTO)}
    return {name.removesuffix(PHOTO): _cut(text) for name, text in found.items()}


def _cut(text):
    with contextlib.suppress(SyntaxError, ValueError, RecursionError, MemoryError):
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.keyword) and node.arg == "cut":
                return ast.literal_eval(node.value)
    return None


def with_photo(raw, question, tray):
    """A notebook with a photo below its cell, and nothing else of that cell's outputs.

    Parameters
    ----------
    raw : bytes
    question : str
    tray : TrayForHandIn or None
        None takes the photo out.

    Returns
    -------
    bytes
    """
    notebook = json.loads(raw)
    for cell in notebook["cells"]:
        if cell.get("id") == f"{question}{PHOTO}":
            shown = tray and tray.picture_jpeg and tray._repr_mimebundle_()
            output = {"output_type": "display_data", "metadata": {}, "data": shown}
            cell["outputs"] = [output] if shown else []
    return (json.dumps(notebook, indent=1, ensure_ascii=False) + "\n").encode()


def photos_of(raw):
    """The photos that stand in a notebook.

    Parameters
    ----------
    raw : bytes

    Returns
    -------
    dict of str to dict
        By question: "picture" (a JPEG in base64; None where none goes) and "words".
    """
    found = {}
    for cell in json.loads(raw)["cells"]:
        name = str(cell.get("id"))
        if not name.endswith(PHOTO):
            continue
        data = [output.get("data", {}) for output in cell.get("outputs", ())]
        shown = next((each for each in data if "image/jpeg" in each), {})
        found[name.removesuffix(PHOTO)] = {
            "picture": "".join(shown["image/jpeg"]) if shown else None,
            "words": "".join(shown.get("text/plain", "")),
        }
    return found
