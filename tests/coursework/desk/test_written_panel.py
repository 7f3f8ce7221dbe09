"""Written answers at the desk, question by question over the class. The class is invented."""

import json

import pytest
from coursework.classes.course import new_course
from coursework.desk import desk as desk_module
from coursework.desk import written_panel as module
from coursework.desk.desk import Desk
from coursework.desk.written_panel import Reading
from coursework.gradebook.waiting import Answer, remarks_on
from coursework.records.record import Written

from tests.helpers.desk import press, words
from tests.helpers.records import SET, leave, record, verdict

ROSTER = {"BH-1": "Ada Quill", "BH-2": "Bram Oakes", "BH-3": "Zoë Ferny"}
ENTER, SKIP, BACK = "Enter the points, next", "Skip this answer", "Back to the one before"


def written(answer, question="q6"):
    asked = f"## 6. From your bench (4 points)\n\nWhy does your yield differ? ({question})"
    return Written(question, asked, answer, 4.0)


@pytest.fixture
def entered(monkeypatch):
    """What went to the gradebook, in place of it."""
    found = []
    monkeypatch.setattr(module, "enter_human", lambda _, *what: found.append(what))
    return found


@pytest.fixture
def panel(tmp_path, monkeypatch, entered):
    """Three students and two written questions, nothing marked; the schemes stand in the key."""
    monkeypatch.setattr(desk_module, "CLASSES", tmp_path)
    monkeypatch.setattr("coursework.gradebook.waiting.human_marks", lambda *_: {})
    course = new_course(tmp_path / "class", "Class", "demo", ROSTER)
    texts = ("<script>alert(1)</script>", "It was old.", "")
    leave(course, *(
        record(who, verdict("q1"), human=[written(text), written(text, "q7")])
        for who, text in zip(ROSTER, texts, strict=True)
    ))  # fmt: skip
    cells = [{"id": f"{one}-answer", "source": f"**Mark scheme.** Of {one}."} for one in
             ("q6", "q7")]  # fmt: skip
    course.key(SET).parent.mkdir(parents=True)
    course.key(SET).write_text(json.dumps({"cells": cells}))
    desk = Desk()
    desk.sets.value = SET
    panel = desk.written()
    assert "6 answers wait." in press(panel, "Show what waits")
    return panel


def give(panel, points, remark=""):
    panel.shows.points.value, panel.shows.comment.value = points, remark
    return press(panel, ENTER)


def test_question_scheme_and_answer_stand_together_and_the_answer_is_only_letters(panel):
    """What a student wrote is shown and not obeyed."""
    shows = panel.shows

    assert "Why does your yield differ? (q6)" in words(shows.asked)
    assert "Mark scheme. Of q6." in words(shows.scheme)
    assert "Ada Quill (BH-1), answer 1 of 3" in words(shows.whose)
    assert "<script>" not in shows.answer.value and "alert(1)" in words(shows.answer)


def test_a_whole_question_is_marked_before_the_next(panel, entered):
    """Three students at q6, with a decimal comma; then none of it waits."""
    for points in ("2,5", "4", "0"):
        give(panel, points)

    assert [
        (SET, "BH-1", "q6", 2.5, ""),
        (SET, "BH-2", "q6", 4.0, ""),
        (SET, "BH-3", "q6", 0.0, ""),
    ] == entered
    assert "No answer of this question waits." in words(panel.shows.whose)

    panel.shows.question.value = "q7"

    assert "Of q7." in words(panel.shows.scheme) and "answer 1 of 3" in words(panel.shows.whose)


def test_a_skipped_answer_comes_again_after_the_others(panel):
    press(panel, SKIP)
    assert "Bram Oakes" in words(panel.shows.whose)
    give(panel, "1")
    give(panel, "1")

    assert "Ada Quill" in words(panel.shows.whose)


def test_back_shows_the_one_before_with_its_points_to_change(panel, entered):
    give(panel, "3", "Say which scale.")
    assert "Its points can be changed." in press(panel, BACK)
    shows = panel.shows

    assert ("3", "Say which scale.") == (shows.points.value, shows.comment.value)

    give(panel, "3.5", "Say which scale.")

    assert (SET, "BH-1", "q6", 3.5, "Say which scale.") == entered[-1]
    assert "Bram Oakes" in words(shows.whose)

    press(panel, "Show what waits")

    assert "This is the first one" in press(panel, BACK)


def test_the_last_remark_stays_in_view_and_can_be_used_again(panel):
    give(panel, "3", "Name the reason.")
    shows = panel.shows

    assert "Last remark: Name the reason." in words(shows.last)
    assert "" == shows.comment.value

    shows.used.value = "Name the reason."

    assert "Name the reason." == shows.comment.value


def test_remarks_come_most_used_first():
    one = Answer("BH-1", "q6", "", "", "", 4.0, 1.0, "A")

    assert ["B", "A"] == remarks_on([one, *(Answer("x", "q6", "", "", "", 4.0, 1.0, "B"),) * 2])


def test_nothing_of_another_set_stays_in_view(panel):
    desk_sets = panel.shows.desk.sets
    desk_sets.value = next(one for _, one in desk_sets.options if one != SET)

    assert "" == panel.shows.answer.value == panel.shows.scheme.value
    assert panel.shows.reading.now is None


def test_going_on_ends_where_nothing_waits():
    assert Reading([]).now is None
