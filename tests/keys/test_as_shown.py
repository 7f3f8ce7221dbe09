"""What a scale, a stem, a ruler, a probe or a card shows is right, and rounded to the safe side."""

import pytest
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from tests.helpers.as_shown import SHOWN, refused

STUDENTS = 60  # tests/measure/as_shown.py plays 300


@pytest.mark.slow
@pytest.mark.parametrize("set_id", SHOWN)
def test_no_answer_at_a_mark_of_its_tool_is_refused(set_id):
    """The marks are *common practice* (see `SHOWN`); on a one-sided question the safe side's."""
    sheet = load_key(key_notebook(set_id)).sheet
    found = [refused(sheet, SHOWN[set_id], f"PLAYED-{number}") for number in range(STUDENTS)]

    assert [] == [each for _, more in found for each in more]
    assert STUDENTS * len(SHOWN[set_id]) <= sum(tried for tried, _ in found)


def test_every_question_with_a_number_has_its_tool():
    """But for pieces, which are counted: they are whole, and no tool shows them otherwise."""
    asked = {
        set_id: {
            question.id
            for question in load_key(key_notebook(set_id)).sheet.questions.values()
            if question.told_in_numbers
            and not (question.kind == "count" and question.tolerance.step.magnitude < 0.1)
        }
        for set_id in set_ids()
        if "-review-" not in set_id  # they ask questions of other sets again
    }

    assert {set_id: set(steps) for set_id, steps in SHOWN.items()} == asked


def test_half_a_degree_on_the_salometer_is_right():
    """100° is 26.4 %, so half a degree is 0.132 % (5: within 0.1 % refused it)."""
    sheet = load_key(key_notebook("05-season-and-brine")).sheet
    question, known = next(pair for pair in sheet.known("BH-1007") if pair[0].id == "q4")
    right = question.right(known).to("percent").magnitude

    for off in (-0.132, 0.132):
        assert "right" == question.judge(f"{right + off:.4f} %", known).outcome


def test_a_hold_time_is_never_rounded_down():
    """What the code asks, one minute short, is short; one minute more harms nobody."""
    sheet = load_key(key_notebook("08-heat-gently")).sheet
    question, known = next(pair for pair in sheet.known("BH-1007") if pair[0].id == "q6")
    right = question.right(known).to("min").magnitude

    assert "right" == question.judge(f"{right + 1:g} min", known).outcome
    assert "right" != question.judge(f"{right - 1:g} min", known).outcome
