"""What each panel of a lesson shows at its start, as a picture: it stands in the page until the
panel is live.

    python -m kitchenmath.pages.pictures lessons

It runs the lessons, so it is a process of its own; it prints JSON, by "<lesson>/<cell>" a picture
in base64.
"""

import base64
import json
import os
import shutil
import sys
import tempfile
from pathlib import Path

from kitchenmath.pages.live import Lesson

__all__ = ["drawn"]


def drawn(file):
    """The pictures of one lesson's panels, as they are before anything is moved.

    Parameters
    ----------
    file : Path
        The lesson's notebook.

    Returns
    -------
    dict of str to bytes
        By cell, a PNG.
    """
    live, found = Lesson(lambda message, buffers: None), {}
    for cell in json.loads(file.read_bytes())["cells"]:
        if cell["cell_type"] == "code":
            live.run("".join(cell["source"]))
            drawing = getattr(live.value, "drawing", None)
            if hasattr(drawing, "png"):
                found[cell["id"]] = drawing.png()
    return found


def main(folder):
    """Print the pictures of every lesson in a folder; its data is read from a copy.

    Parameters
    ----------
    folder : Path
    """
    found = {}
    files = sorted(folder.resolve().glob("*.ipynb"))
    with tempfile.TemporaryDirectory() as copy:  # a lesson may write, too
        shutil.copytree(folder / "data", Path(copy) / "data")
        before = os.getcwd()
        os.chdir(copy)
        try:
            for file in files:
                for cell, raw in drawn(file).items():
                    found[f"{file.stem}/{cell}"] = base64.b64encode(raw).decode()
        finally:
            os.chdir(before)
    sys.__stdout__.write(json.dumps(found))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
