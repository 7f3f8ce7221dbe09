"""The grid for practical marks at the desk. The class is invented."""

import pytest
from coursework.classes.course import new_course
from coursework.desk import desk as desk_module
from coursework.desk.desk import Desk
from coursework.terms.practical import practical_marks

from tests.helpers.desk import press
from tests.helpers.term import PRACTICAL, stated

ROSTER = {"BH-1": "Ada Quill", "BH-2": "Bram Oakes"}


@pytest.fixture
def desk(tmp_path, monkeypatch):
    monkeypatch.setattr(desk_module, "CLASSES", tmp_path)
    stated(new_course(tmp_path / "class", "Class", "demo", ROSTER), PRACTICAL)
    return Desk()


def test_a_mark_is_typed_for_each_student_and_shown_again(desk):
    panel = desk.practical()
    assert "2 students." in press(panel, "Show the grid")
    panel.name.value = "service"
    assert ["Ada Quill (BH-1)", "Bram Oakes (BH-2)"] == [
        one.description for one in panel.boxes.children
    ]
    panel.boxes.children[0].value = "7,5"

    assert "service: 1 mark is in." in press(panel, "Enter the practical marks")
    assert {("BH-1", "service"): 7.5} == practical_marks(desk.course).marks

    panel.name.value = "knife skills"

    assert "" == panel.boxes.children[0].value

    panel.name.value = "service"

    assert "7.5" == panel.boxes.children[0].value


def test_an_odd_mark_is_named_and_stays_in_its_box_to_be_mended(desk):
    panel = desk.practical()
    press(panel, "Show the grid")
    panel.boxes.children[1].value = "99"

    assert "(BH-2): “99” is above" in press(panel, "Enter the practical marks")
    assert "99" == panel.boxes.children[1].value


def test_without_a_grid_nothing_is_entered(desk):
    assert "Show the grid first." in press(desk.practical(), "Enter the practical marks")
