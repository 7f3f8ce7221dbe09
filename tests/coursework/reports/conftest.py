"""An invented class, and the points that a person gave in it."""

import sys
import types

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
    stand_in = types.ModuleType("coursework.gradebook.points")
    stand_in.human_marks = lambda course, set_id: marks
    monkeypatch.setitem(sys.modules, "coursework.gradebook.points", stand_in)
    return marks
