"""A class of a term, its points, and the marking of earlier attempts."""

from dataclasses import replace

import pytest
from coursework.classes.course import new_course
from coursework.terms import attempts as attempts_module

from tests.helpers.records import ROSTER
from tests.helpers.term import BRINE, BUY, points


@pytest.fixture(name="course")
def a_class(tmp_path):
    """A class to which two sets were handed out, without a policy."""
    made = new_course(tmp_path / "class", "Brackwater House (invented)", "demo", ROSTER)
    for set_id in (BUY, BRINE):
        made.release(set_id).parent.mkdir(parents=True)
        made.release(set_id).write_text("{}")
    return made


@pytest.fixture(name="human")
def points_of_a_person(monkeypatch):
    """Points that a person gave, by set, in place of the gradebook."""
    marks = {BUY: {}, BRINE: {}}
    place = "coursework.terms.term_book.human_marks"
    monkeypatch.setattr(place, lambda course, set_id: marks[set_id])
    monkeypatch.setattr("coursework.terms.term_book.refused_points", lambda course, set_id: [])
    return marks


@pytest.fixture(name="marked")
def marking(monkeypatch):
    """Marking of earlier attempts without running them: points by the bytes; what was marked."""
    got, seen = {}, []

    def stand_in(task):
        seen.append(task["hand_in"])
        return replace(points(task["student"], got[task["hand_in"]]), set_id=BUY), ""

    monkeypatch.setattr(attempts_module, "mark", stand_in)
    monkeypatch.setattr(attempts_module, "class_key", lambda course, set_id: b"")
    stand_in.got, stand_in.seen = got, seen
    return stand_in
