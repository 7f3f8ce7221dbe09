"""What a page makes of a lesson's or a set's words, as far as the words alone tell it."""

import json
import re

import pytest

from tests.helpers.browser import KIT

NOTEBOOKS = [*sorted(KIT.glob("lessons/*.ipynb")), *sorted(KIT.glob("assignments/*/*.ipynb"))]
by_name = {"ids": [file.stem for file in NOTEBOOKS]}


def prose(file):
    """The Markdown cells of a notebook, by their ids, without what stands in back quotes."""
    cells = json.loads(file.read_text(encoding="utf-8"))["cells"]
    return {
        cell["id"]: re.sub(r"`[^`]*`", "", "".join(cell["source"]))
        for cell in cells
        if cell["cell_type"] == "markdown"
    }


@pytest.mark.parametrize("file", NOTEBOOKS, **by_name)
def test_money_is_no_formula(file):
    """Two dollar signs in a paragraph make what stands between them a formula.

    A backslash hides one from the first reader of a notebook, and the second, which looks at the
    page, sees it again; in a span of its own it pairs with no other.
    """
    bare = [cell for cell, text in prose(file).items()
            if "$" in text.replace("<span>\\$</span>", "")]  # fmt: skip

    assert bare == []


@pytest.mark.parametrize("file", NOTEBOOKS, **by_name)
def test_steps_by_hand_stand_one_a_line(file):
    """In what opens on a click, each line is an item of a list: else a page runs them together."""
    loose = [
        (cell, line)
        for cell, text in prose(file).items()
        for hidden in re.findall(r"</summary>(.*?)</details>", text, re.DOTALL)
        for line in hidden.splitlines()
        if line.strip() and not line.startswith("- ")
    ]

    assert loose == []
