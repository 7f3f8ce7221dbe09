"""A set in a real browser, as a student fills it in: no number, then a number, then answers."""

import pytest

from kitchenmath.practice.before_handing_in import look_at
from kitchenmath.practice.set_file import read_set
from tests.helpers.browser import NEEDS_CHROMIUM, PHONE, open_lab

pytestmark = NEEDS_CHROMIUM

SET = "04-buy-enough"
FILE = f"assignments/{SET}/{SET}.ipynb"
STUDENT = "BH-1001"


@pytest.fixture(scope="module")
def opened(tmp_path_factory):
    with open_lab(tmp_path_factory.mktemp("lab")) as lab:
        yield lab, (lab.kit / FILE).read_bytes()


@pytest.fixture
def lab(opened):
    """The lab, with the set as it was given: what another test saved there is gone."""
    lab, given = opened
    (lab.kit / FILE).write_bytes(given)
    return lab


def last_words(notebook):
    """What the last cell says, in one line."""
    return " ".join(notebook.said("last-look").split())


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
        assert notebook.run_all() == []

        assert notebook.said("open-set") == f"Set {SET}, term demo, student {STUDENT}."
        assert "brunoise for each cover, trimmed: " in notebook.said("q1-given")
        assert "q1: read as 3.9 kg. It is a weight, as it should be." in notebook.said("q1-check")
        assert "q2: read as 2. It is a count, as it should be." in notebook.said("q2-check")
        assert "q3: 185 has no unit: type the unit too" in notebook.said("q3-check")
        assert "q4: nothing is typed yet" in notebook.said("q4-check")
        assert "hard to believe in a kitchen" in notebook.said("q5-check")
        assert "Not the same in the saved file: q1, q2, q3, q5." in last_words(notebook)
        for cell in ("q1-answer", "q3-check"):
            notebook.cell(cell).scroll_into_view_if_needed()
            notebook.picture(cell)
        notebook.save()
        assert notebook.run_all() == []
        told = last_words(notebook)
        assert "Not the same" not in told
        assert "2 of 6 answers are there. Still empty: q4, q6. Look again at: q3, q5." in told
        assert f"Then hand in this file: {SET}.ipynb, in the folder {SET}." in told
        notebook.picture("last-look", notebook.cell("last-look"))

    lines = look_at(read_set((lab.kit / FILE).read_bytes())[0])
    assert lines[0] == f"Student number: {STUDENT}"
    assert lines[1].startswith("q1: read as 3.9 kg.")
    assert lines[-2].startswith("q6: nothing is written yet")


def test_on_a_phone_the_numbers_are_seen_and_not_the_code(lab):
    """The long cell is one line that still can be run; below the numbers stand their names."""
    with lab.notebook(FILE) as notebook:
        notebook.at(PHONE)
        given = notebook.cell("q1-given")
        given.scroll_into_view_if_needed()

        assert given.locator(".jp-Placeholder").count() == 1
        assert "one = sheet.given(" in given.locator(".jp-Placeholder").inner_text()
        assert not given.get_by_text("covers=steps").is_visible()

        notebook.type_between_quotes("me", STUDENT)
        assert notebook.run_all() == []
        assert "To compute with them: one.covers, one.portion, one.yield_" in notebook.said(
            "q1-given"
        )
        notebook.picture("phone-numbers", given)
        notebook.picture("phone-last-look", notebook.cell("last-look"))


def test_a_broken_cell_says_what_to_type(lab):
    """A quote too many is read as it was meant; code that goes wrong gets plain words first."""
    with lab.notebook(FILE) as notebook:
        notebook.type_between_quotes("me", STUDENT)
        notebook.type_between_quotes("q1-answer", '3 kg"')
        notebook.type_between_quotes("q2-answer", '" + ceil(')

        went_wrong = notebook.run_all()

        assert "read as 3 kg" in notebook.said("q1-check")
        assert any("SyntaxError" in each for each in went_wrong)
        assert notebook.said("q2-answer").startswith("The cell cannot be read; most often a quote")
        notebook.picture("broken", notebook.cell("q2-answer"))
