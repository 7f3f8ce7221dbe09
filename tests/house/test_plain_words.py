"""Plain kitchen English in what students and instructors read: a second-language reader's."""

import ast
import json
import re
from pathlib import Path

import pytest

KIT = Path(__file__).parents[2]
# Each was stumbled over by a reader; beside it what to write.
ODD = {
    r"\bnoughts?\b": "zero",
    r"\breckon": "work out",
    r"\bhas (?:not )?got\b|\bnot got yet\b": "still has to learn, knows",
    r"\bWho \w+ it so\b": "If you … it like this",
    r"Is there so much\?": "is there that much?",
    r"How many percent\b": "what percentage",
    r"\bstreak\b": "right in a row",
    r"\bso long already\b|\bcore since then\b": "so far",
}


def read_by_people():
    """Lessons' text, guides, pages' templates, and texts in the library and keys, by file."""
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
    """The texts of a Python file, without docstrings."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    silent = {id(each.value) for each in ast.walk(tree) if isinstance(each, ast.Expr)}
    for each in ast.walk(tree):
        if (
            isinstance(each, ast.Constant)
            and isinstance(each.value, str)
            and id(each) not in silent
        ):
            yield each.value


@pytest.mark.parametrize(
    ("file", "text"), [pytest.param(*each, id=each[0].name) for each in read_by_people()]
)
def test_no_odd_phrase_is_read_by_a_cook(file, text):
    found = {found[0]: plain for odd, plain in ODD.items()
             for found in re.finditer(odd, text, re.IGNORECASE)}  # fmt: skip

    assert {} == found, file.relative_to(KIT)
