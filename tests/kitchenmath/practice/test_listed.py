"""Answers that are a choice out of a list: letters of lines, allergens of a plate."""

import pytest

from kitchenmath.drills import Drill, Round
from kitchenmath.errors import Unreadable
from kitchenmath.practice import ListedQuestion, Slip, in_words
from kitchenmath.practice.answer_look import look_over
from kitchenmath.practice.drawn import words
from kitchenmath.practice.listed import ALLERGENS, LETTERS, Names


def question():
    """Lines B, E and H are out; A stands on its limit, C is written in °F."""
    return ListedQuestion(
        "q1",
        "letters",
        3,
        lambda day: "BEH",
        left_out=1,
        too_many=0.5,
        slips=(
            Slip("counted the limit itself", lambda day: "ABEH", "On the limit is in order."),
            Slip("took °F for °C", lambda day: "BCEH", "Look at the scale."),
            Slip("cold food only", lambda day: "B", "Hot food has a limit too."),
            Slip("makes no difference", lambda day: "BEH", "Never."),
        ),
        working=("{day}: {answer}",),
    )


DAY = {"day": "Monday"}


@pytest.mark.parametrize("typed", ["B, E, H", "beh", "h and e and b", "Lines B E H", "B\nE\nH",
                                   "B; E; H.", "B (cream), E, H", ["H", "B", "E"]])  # fmt: skip
def test_letters_in_every_form(typed):
    assert ("B", "E", "H") == LETTERS.read(typed)


@pytest.mark.parametrize(
    ("typed", "names"),
    [
        ("milk, celery", ("milk", "celery")),
        ("Gluten (wheat) and soy", ("gluten", "soya")),
        ("contains: dairy; eggs; sulfites", ("egg", "milk", "sulphites")),
        ("cereals containing gluten, tree nuts", ("gluten", "nuts")),
        ("none", ()),
    ],
)
def test_allergens_by_the_words_that_people_have(typed, names):
    """In the order of the list of fourteen, whatever came first."""
    assert names == ALLERGENS.read(typed)


@pytest.mark.parametrize("typed", ["milk, carrots", "Z", "", "?!", 7, None])
def test_a_word_that_is_not_on_the_list_is_said(typed):
    with pytest.raises(Unreadable):
        ALLERGENS.read(typed)


def test_a_letter_that_the_record_has_not_is_looked_at_again():
    look = look_over("B, J", "letters", tuple("ABCDEFGH"))

    assert "doubtful" == look.state
    assert "J is not among A, B, C, D, E, F, G, H" in look.sentence


def test_what_an_answer_earns_by_hand():
    """3 points; one left out costs 1, one too many a half: B, E, J is 3 - 1 - 0.5 = 1.5."""
    asked = question()
    typed = ("B, E, H", "B, E, J", "B, E", "none", "A to J", "")
    verdicts = [asked.judge(each, DAY) for each in typed]

    assert [3, 1.5, 2, 0, 0, 0] == [verdict.points for verdict in verdicts]
    assert "Left out: H. Too many: J." == in_words(verdicts[1])


def test_one_slip_two_slips_and_none_are_told_apart():
    """ABCEH is the limit counted and °F taken for °C; ABE is neither."""
    asked = question()
    verdicts = [asked.judge(each, DAY) for each in ("ABEH", "ABCEH", "ABE", "B")]

    assert ["slip", "slip", "wrong", "slip"] == [verdict.outcome for verdict in verdicts]
    assert [2.5, 2, 1.5, 1] == [verdict.points for verdict in verdicts]
    assert ("counted the limit itself", "took °F for °C") == verdicts[1].slips
    assert "Hot food has a limit too." == in_words(verdicts[3])
    assert "Left out: H. Too many: A." == in_words(verdicts[2])


def test_what_is_played_comes_out_as_it_was_meant():
    asked = question()
    for answer, way, slips in asked.played(DAY):
        verdict = asked.judge(answer, DAY)
        if way in ("right", "slip"):
            assert (way, slips) == (verdict.outcome, verdict.slips)
        if way == "two slips" and verdict.outcome == "slip":
            assert set(verdict.slips) <= set(slips)


def test_a_drill_may_ask_for_a_choice():
    turn = Round(Drill(question(), "Which?", "Line by line.", {"day": words(["Monday"], "day")}))

    assert "right" == turn.answer("H B E").outcome
    assert "Left out: H." == in_words(turn.answer("B, E"))
    assert "none" == str(Names())
