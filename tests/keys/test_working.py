"""The working that goes back to a student shows every number, as a hand would write it."""

import re

import pytest
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.practice import Question

STUDENT = "BH-1007"
# A sign with a bare word where a number belongs: "the dough ÷ total percent".
WORD_FOR_A_NUMBER = re.compile(r"[×÷−] (?!one\b)[a-z]{3,}|\b(?:that|sum|ratio|left|base) [×÷]")


def _working(set_id):
    sheet = load_key(key_notebook(set_id), tried=()).sheet
    asked = ((one, known) for one, known in sheet.known(STUDENT) if isinstance(one, Question))
    return {one.id: one.judge(None, known).working for one, known in asked}


@pytest.mark.parametrize("set_id", set_ids())
def test_no_word_stands_where_a_number_was_worked_out(set_id):
    """ "2 L × 1.041 kg = 2.08 kg", and then 2.08 kg in the next line: a wrong line is found."""
    lines = [line for working in _working(set_id).values() for line in working]

    assert [] == [line for line in lines if WORD_FOR_A_NUMBER.search(line)]


def test_the_working_of_set_4_is_the_hand_calculation():
    """36 x 55 g = 1980 g, / 0.66 = 3 kg; 125 g / 0.74 = 168.9 g; 120.25 - 28.60, / 3.75."""
    working = _working("04-buy-enough")

    assert ("36 covers × 55 g = 1980 g trimmed", "1980 g ÷ 66 % = 3 kg to buy") == working["q1"]
    assert ("what is left: 100 % − 26 % = 74 %", "125 g ÷ 74 % = 168.9 g raw") == working["q3"]
    assert "($120.25 − $28.60) ÷ 3.75 kg = $24.44 per kg" == working["q4"][-1]
    assert "the plate: $4.13 + $1.70 of garnish = $5.83" == working["q5"][1]
