"""Every step that a set marks is taught in its lesson, and has a drill that practises that step."""

import csv
import json
import re

import pytest
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key
from coursework.skills.go_back import TABLE, places

from tests.helpers.browser import KIT

ROWS = list(csv.DictReader(TABLE.read_text(encoding="utf-8").splitlines()))
# Where the nearest drill answers in another kind than the question, and what it practises of it.
ANOTHER_KIND = {
    "measuring pieces": "one's own readings are judged by how they were taken",
    "whole dice from a round": "it asks for a share, and both drills are named",
    "keeping a probe log": "a log of one's own is judged by how it was kept",
    "reading a probe log": "the moment lies at a share of the way, which the drill asks for",
    "order quantity before a reduction": "it asks for a volume, and the drill for whole packs",
    "a whole service plan": "a plan is judged by all its parts, and each drill has one of them",
    "a cooling log in two stages": "both drills are named: what goes, and by when",
}
SMALL = {"what", "that", "this", "with", "have", "from", "much", "many", "your", "then", "than"}


def lesson(name):
    return json.loads((KIT / "lessons" / name).read_bytes())["cells"]


def content(text):
    """Words of four letters and more, without those that every text has."""
    return set(re.findall(r"[^\W\d_]{4,}", text.casefold())) - SMALL


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['skill']}: {row['drill']}")
def test_the_step_is_taught_in_a_text_of_its_lesson(row):
    """A text of twenty words or more, which speaks of what the drill asks."""
    [cell] = [cell for cell in lesson(row["lesson"]) if cell["id"] == row["taught"]]
    text = "".join(cell["source"])
    drill = next(each for each in places(row["skill"]) if each.name == row["drill"]).drill

    assert "markdown" == cell["cell_type"]
    assert len(text.split()) >= 20
    assert len(content(text) & content(f"{row['skill']} {drill.text} {drill.hint}")) >= 1


@pytest.mark.parametrize("set_id", set_ids())
def test_a_drill_answers_in_the_kind_of_the_step_that_is_marked(set_id):
    """Who is marked on a weight practises a weight; the others are listed with the reason."""
    for question in load_key(key_notebook(set_id), tried=()).sheet.questions.values():
        drills = [place.drill for place in places(question.skill)]

        assert drills, question.skill
        if question.skill not in ANOTHER_KIND:
            assert question.kind in {drill.question.kind for drill in drills}, question.skill
