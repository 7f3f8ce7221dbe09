"""An invented class, and the points that a person gave in it."""

import pytest
from coursework.classes.course import new_course

from tests.helpers.records import ROSTER


@pytest.fixture
def course(tmp_path):
    return new_course(tmp_path / "class", "Brackwater House (invented)", "demo", ROSTER)


@pytest.fixture
def entered(monkeypatch):
    """Points that a person gave, in place of the gradebook."""
    marks = {}
    for module in ("hand_back", "report"):
        place = f"coursework.reports.{module}.human_marks"
        monkeypatch.setattr(place, lambda course, set_id: marks)
    monkeypatch.setattr("coursework.reports.report.refused_points", lambda course, set_id: [])
    return marks
