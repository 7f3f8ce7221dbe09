"""Every kind of question in every set: a right answer in a cook's own words is right.

What is typed was collected from how people write on phones and cards (common practice); how cells
are filled in around it is in `test_typed_cells`.
"""

import pytest
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.conventions import conventions_of
from kitchenmath.errors import Unreadable
from kitchenmath.pages.form import Form
from kitchenmath.practice.typed_amount import read_as
from tests.helpers.typed_ways import DOUBTFUL, ways_of

STUDENT = "BH-1007"
OURS = [(each, "ours") for each in set_ids()]


@pytest.fixture(scope="module", params=[*OURS, ("04-buy-enough", "UK"), ("04-buy-enough", "EU")])
def asked(request):
    """Each question of a set, with a student's numbers; set 4 in pounds and in euros too."""
    set_id, country = request.param
    key = load_key(key_notebook(set_id, conventions_of(country)), tried=())
    return list(key.sheet.known(STUDENT))


def test_no_right_answer_is_lost_to_the_words_it_is_told_in(asked):
    """Each way of each question; several hundred over all sets, none of them lost."""
    lost = [
        (question.id, typed, *verdict.notes)
        for question, known in asked
        for typed in ways_of(question, known)
        if (verdict := question.judge(typed, known)).outcome != "right"
    ]

    assert [] == lost
    assert sum(len(ways_of(question, known)) for question, known in asked) > 30


def test_what_is_ambiguous_or_wrong_is_never_taken_for_right(asked):
    """Ranges, two answers, another kind, no unit, words: by the kind of each question."""
    taken = [
        (question.id, typed)
        for question, known in asked
        for typed in DOUBTFUL[question.kind]
        if question.judge(typed, known).outcome == "right"
    ]

    assert [] == taken


def test_there_are_enough_of_both():
    """As many as one may wish for: 60 doubtful ones, of every kind of question."""
    assert sum(map(len, DOUBTFUL.values())) >= 60


def test_two_amounts_around_an_equals_sign_are_still_two():
    """5 lb is 2.27 kg, and none of the two is guessed."""
    with pytest.raises(Unreadable, match="two amounts"):
        read_as("3 kg = 5 lb", "weight")


def test_pounds_typed_on_a_uk_classs_page_are_there_and_said_back():
    """Set 4 as a class in the UK gets it: £21.13 stands in its field, and the page reads pounds."""
    raw = key_notebook("04-buy-enough", conventions_of("UK"))
    form = Form(released(raw, "demo"))
    state, sentence = form.shown({"student": STUDENT, "q5": "£21.13"})["said"]["q5"]

    assert "there" == state
    assert "£21.13" in sentence
