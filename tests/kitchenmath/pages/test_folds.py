"""What lies folded on a lesson's page: no cell is lost, and a row of one tag is one press."""

import json
import re
from pathlib import Path

import pytest

from kitchenmath.pages.folds import FOLDS, fold_of, in_folds
from kitchenmath.pages.writing import lesson_page

KIT = Path(__file__).parents[3]
LESSONS = sorted(KIT.glob("lessons/*.ipynb"))
by_lesson = {"ids": [file.stem for file in LESSONS]}


def test_cells_of_one_tag_in_a_row_go_under_one_line():
    """Open, two drills folded, one for the curious, open again: four parts, in their order."""
    folds = ["", "more-drills", "more-drills", "curious", ""]
    cells = [{"id": place, "fold": fold} for place, fold in enumerate(folds)]
    shown = in_folds(cells)
    lines = [part["line"] for part in shown]

    assert ["", "More drills: 2", "For whoever wants to know", ""] == lines
    assert cells == [cell for part in shown for cell in part["cells"]]


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_at_most_five_drills_stand_open(file):
    """The others are one press away, so a lesson is no pile of sums."""
    cells = json.loads(file.read_text(encoding="utf-8"))["cells"]
    drills = [cell for cell in cells if "".join(cell["source"]).startswith("drill_panel(")]
    folded = [fold_of(cell) for cell in drills]

    assert 2 <= folded.count("") <= 5
    assert {"", "more-drills"} >= set(folded)


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_a_page_shows_every_cell_and_closes_every_fold(file):
    page = lesson_page(file.read_bytes(), file.stem, version="")
    cells = json.loads(file.read_text(encoding="utf-8"))["cells"]
    ids = [cell["id"] for cell in cells if cell["id"] != "run-me"]

    assert ids == re.findall(r'<div class="(?:text|shown)" id="([\w-]+)"', page)
    assert page.count("<details") == page.count("</details>")
    assert page.count('<details class="fold">') >= 1
    assert set(map(fold_of, cells)) <= {"", *FOLDS}
