"""Copies of a classmate's file are named with both students."""

import json

from coursework.arriving.reading_in import read_notebook
from coursework.marking.pour import pour
from coursework.records.copies import fingerprint, with_copies
from coursework.sets.hand_out import ASSIGNMENTS

from tests.helpers.records import record

SET = "04-buy-enough"
RELEASED = (ASSIGNMENTS / SET / f"{SET}.ipynb").read_bytes()
ANSWERS = {f"q{i}": f'q{i} = "{i} kg"' for i in range(1, 6)}


def hand_in(**answers):
    book = json.loads(RELEASED)
    for cell in book["cells"]:
        name = cell["id"].removesuffix("-answer")
        if cell["id"].endswith("-answer") and name in answers:
            cell["source"] = answers[name]
    return book


def pairs(**hand_ins):
    """Who is named with whom, among these hand-ins."""
    records = []
    for student in sorted(hand_ins):
        raw = json.dumps(hand_ins[student]).encode()
        poured = pour(RELEASED, read_notebook(raw).cells, 20_000, 200)
        records.append(record(student, alike=fingerprint(poured.answers)))
    return {
        one.student: [(copied.student, copied.common[0].many) for copied in one.copied]
        for one in with_copies(records)
        if one.copied
    }


def test_a_copy_names_both_whatever_the_spaces():
    """The number was changed, the answers were not; a third has one other answer."""
    answers = dict(ANSWERS, q6="I weighed 910 g.")
    spaced = {name: f"  {text}\n\n".replace(" = ", "  =\t") for name, text in answers.items()}
    named = pairs(
        a=hand_in(**answers), b=hand_in(**spaced), c=hand_in(**dict(answers, q5='q5 = "9 kg"'))
    )

    assert {"a": [("b", 6)], "b": [("a", 6)]} == named


def test_two_equal_answers_and_nothing_else_are_chance():
    """Three are not; untouched notebooks are not."""
    two = {name: ANSWERS[name] for name in ("q1", "q2")}
    three = two | {"q3": ANSWERS["q3"]}

    assert {} == pairs(a=hand_in(**two), b=hand_in(**two), c=hand_in(), d=hand_in())
    assert ["a", "b"] == sorted(pairs(a=hand_in(**three), b=hand_in(**three)))


def test_one_who_handed_in_less_of_the_same_is_no_copy():
    """All that both filled in must be the same, not only what both have."""
    assert {} == pairs(a=hand_in(**ANSWERS), b=hand_in(q1=ANSWERS["q1"], q2=ANSWERS["q2"]))


def test_a_third_with_the_same_is_named_with_the_first():
    """And the first with both."""
    named = pairs(a=hand_in(**ANSWERS), b=hand_in(**ANSWERS), c=hand_in(**ANSWERS))

    assert {"a": ["b", "c"], "b": ["a"], "c": ["a"]} == {
        student: [other for other, _ in others] for student, others in named.items()
    }


def test_a_doubled_cell_and_lost_ids_do_not_hide_a_copy():
    """An untouched second cell after the filled one; a grade id without an id."""
    book = hand_in(**ANSWERS)
    book["cells"] += [cell for cell in json.loads(RELEASED)["cells"] if cell["id"] == "q1-answer"]
    for cell in book["cells"]:
        del cell["id"]

    assert ["a", "b"] == sorted(pairs(a=hand_in(**ANSWERS), b=book))
