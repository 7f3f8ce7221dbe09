"""What students and instructors read in the kit, file by file."""

import ast
import json
from pathlib import Path

KIT = Path(__file__).parents[2]


def read_by_people():
    """Lessons' text, guides, pages' templates, and texts in the library and keys, by file.

    Yields
    ------
    tuple of (Path, str)
    """
    for file in sorted(KIT.glob("lessons/*.ipynb")):
        cells = json.loads(file.read_text(encoding="utf-8"))["cells"]
        yield file, "\n".join("".join(c["source"]) for c in cells if c["cell_type"] == "markdown")
    for pattern in ("instructor/guide/*.md", "instructor/coursework/**/*.html"):
        for file in sorted(KIT.glob(pattern)):
            yield file, file.read_text(encoding="utf-8")
    for pattern in ("kitchenmath/**/*.py", "instructor/keys/*.py"):
        for file in sorted(KIT.glob(pattern)):
            yield file, "\n".join(texts_in(file))


def texts_in(file):
    """The texts of a Python file, without docstrings.

    Parameters
    ----------
    file : Path

    Yields
    ------
    str
    """
    tree = ast.parse(file.read_text(encoding="utf-8"))
    silent = {id(each.value) for each in ast.walk(tree) if isinstance(each, ast.Expr)}
    for each in ast.walk(tree):
        if (
            isinstance(each, ast.Constant)
            and isinstance(each.value, str)
            and id(each) not in silent
        ):
            yield each.value
