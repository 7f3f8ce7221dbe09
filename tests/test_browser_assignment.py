"""A set in a real browser, as a student fills it in: no number, then a number, then answers."""

import json

import pytest

from kitchenmath.practice.handin import look_at
from tests.browser import NEEDS_CHROMIUM, open_lab

pytestmark = NEEDS_CHROMIUM

SET = "04-buy-enough"
FILE = f"assignments/{SET}/{SET}.ipynb"
STUDENT = "BH-1001"


@pytest.fixture(scope="module")
def lab(tmp_path_factory):
    with open_lab(tmp_path_factory.mktemp("lab")) as lab:
        yield lab


def test_a_set_tells_a_student_what_to_do_next(lab):
    """Run too early, then filled in by keyboard: each sentence says what is missing."""
    with lab.notebook(FILE) as notebook:
        assert notebook.run_all() == []
        assert notebook.said("open-set").startswith("Stop here: there is no student number yet")
        assert "once your student number is in" in notebook.said("q1-given")
        notebook.picture("no-number", notebook.cell("open-set"))

        notebook.type_between_quotes("me", STUDENT)
        notebook.type_between_quotes("q1-answer", "3.9 kg")
        notebook.type_between_quotes("q2-answer", "2")
        notebook.type_between_quotes("q3-answer", "185")
        notebook.type_between_quotes("q5-answer", "$3000")
        notebook.type_between_quotes("q1-check", "a locked cell takes no key")
        assert notebook.run_all() == []

        assert notebook.said("open-set") == f"Set {SET}, term demo, student {STUDENT}."
        assert "brunoise for each cover, trimmed: " in notebook.said("q1-given")
        assert "q1: read as 3.9 kg. It is a weight, as it should be." in notebook.said("q1-check")
        assert "q2: read as 2. It is a count, as it should be." in notebook.said("q2-check")
        assert "q3: 185 has no unit: type the unit too" in notebook.said("q3-check")
        assert "q4: nothing is typed yet" in notebook.said("q4-check")
        assert "hard to believe in a kitchen" in notebook.said("q5-check")
        for cell in ("q1-answer", "q3-check"):
            notebook.cell(cell).scroll_into_view_if_needed()
            notebook.picture(cell)
        notebook.save()

    lines = look_at(json.loads((lab.kit / FILE).read_text(encoding="utf-8")))
    assert lines[0] == f"Student number: {STUDENT}"
    assert lines[1].startswith("q1: read as 3.9 kg.")
    assert lines[-1] == "q6: nothing is written yet."
