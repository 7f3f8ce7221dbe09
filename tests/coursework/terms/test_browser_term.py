"""The term's mark book at the desk, in a real browser: choose the practical marks, press, look."""

import json

import pytest
from coursework.classes.course import new_course, open_course
from coursework.gradebook.points import prepare_set

from tests.helpers.browser import NEEDS_CHROMIUM, open_lab
from tests.helpers.desk_page import press
from tests.helpers.records import ROSTER
from tests.helpers.term import BUY, PRACTICAL, leave, points, stated

pytestmark = NEEDS_CHROMIUM


@pytest.fixture(scope="module")
def lab(tmp_path_factory):
    with open_lab(tmp_path_factory.mktemp("lab")) as lab:
        yield lab


def test_the_practical_marks_are_chosen_and_the_page_appears(lab, tmp_path):
    """By hand: 15 of 20 of weight 1 and 8 of 10 of weight 2 make (0.75 + 1.6) / 3 = 78.3 %."""
    course = new_course(lab.kit / "instructor" / "classes" / "autumn", "Autumn", "demo", ROSTER)
    course.release(BUY).parent.mkdir(parents=True)
    course.release(BUY).write_text(json.dumps({}))
    prepare_set(course, BUY)
    stated(course, PRACTICAL)
    leave(course, BUY, points("BH-1", 15))
    file = tmp_path / "practical.csv"
    file.write_text("student_number;service\nBH-1;8\nBH-9;3\n", encoding="utf-16")
    with lab.notebook("instructor/desk.ipynb") as desk:
        assert desk.run_all() == []
        panel = desk.panel("term")
        with desk.page.expect_file_chooser() as chosen:
            panel.get_by_role("button", name="Practical marks").click()
        chosen.value.set_files(file)
        panel.get_by_role("button", name="Practical marks (CSV) (1)").wait_for()
        told = press(desk, "term", "Make the mark book", "Mark book:")
        page = panel.frame_locator("iframe")
        page.get_by_role("heading", name="The term's mark book").wait_for()
        shown = page.locator("tbody tr").first.inner_text()
        desk.picture("term", panel)

    assert "BH-9 is not on the roster" in told
    assert "78.3\N{NO-BREAK SPACE}% so far" in shown
    assert file.read_bytes() == (open_course(course.folder).folder / "practical.csv").read_bytes()
