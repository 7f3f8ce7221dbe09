"""Answer cells as people fill them in on a phone: the right answer is right, a doubtful one is not.

The ways of typing were collected from how people write on cards and phones (common practice).
"""

import pytest
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.practice.set_file import last_assigned
from kitchenmath.practice.typed_cells import as_code, typed_in
from kitchenmath.units import say

STUDENT = "BH-1007"
WAYS = (
    '{name} = "{text}"', "{name} = “{text}”", "{name} = „{text}“", "{name} = ‘{text}’",
    "{name} = «{text}»", "{name} = {text}", "{text}", '"{text}"', '{capital} = "{text}"',
    '{name}: "{text}"', "{name}: {text}", '{name} == "{text}"', '{name} = "{text}',
    '{name} = ""\n{text}', '{name} = "" {text}', '{name} = ""\n# Type your answer\n"{text}"',
    "{name} = \u201d{text}\u201d # worked out twice", '{name} = "= {text}"', '{name} = "{text}."',
    '{name} = "\u200b{text}\ufeff"', "{name} = about {text}", '{name} = "{text} please"',
)  # fmt: skip
FORMS = ("{cell}", "\n{cell}\n\n", "# my answer\n{cell}")
SURE = {
    "weight": ("3 kg = {text}", "36 x 55 g / 0.66 = {text}"),
    "percent": ("{text}", "{bare} percent", "{bare}"),
    "count": ("{bare} nets", "{bare} whole nets"),
}
DOUBTFUL = (
    "3 kg or 4 kg", "3-4 kg", "3 kg\n4 kg", "3 kg 4 kg", "10³ g", "2² kg", "3 kg = 5 lb", "3",
    "three", "kg", "3 kgg", "3 L", "3 min", "1,250 g", "?", "lots", "3 kg; 4 kg", "3 kg / 4 kg",
    "about", "see above", "3 stone", "3,000,5 kg", "kg 3", "3..5 kg", "3 °C",
)  # fmt: skip


@pytest.fixture(scope="module", params=set_ids())
def key(request):
    return load_key(key_notebook(request.param), tried=())


def given_back(cell, question):
    """What a cell answers, as marking sees it; None where Python stops there."""
    try:
        return last_assigned(as_code(cell, question), question)
    except SyntaxError:
        return None


def test_no_right_answer_is_lost_to_how_it_is_typed(key):
    """Every amount of the set in 66 ways, and a list, log or plan in all of its own."""
    tried = 0
    for question, known in key.sheet.known(STUDENT):
        for cell, typed in cells(question, known):
            value = given_back(cell, question.id)
            verdict = question.judge(value, known)

            assert "right" == verdict.outcome, (question.id, cell, typed, verdict.notes)
            tried += 1

    assert tried > 120


def cells(question, known):
    """Answer cells that hold the right answer, and what is typed in them."""
    if not question.told_in_numbers:
        answers = [each.answer for each in question.played(known) if each.way == "right"]
        for text in (each for each in answers if isinstance(each, str)):
            yield f'{question.id} = """{text}"""', text
            yield f"{question.id} = “{text}”", text
            yield text, text
        return
    right = question.right(known)
    text, bare = say(right, 6), f"{right.magnitude:.6g}"
    texts = [text]
    texts += [each.format(text=text, bare=bare) for each in SURE.get(question.kind, ())[1:]]
    texts = [each for each in texts if each != bare or question.kind == "count" or right.m > 1]
    for each in texts:
        for way in WAYS:
            cell = way.format(name=question.id, capital=question.id.upper(), text=each)
            yield from ((form.format(cell=cell), each) for form in FORMS)


@pytest.mark.parametrize("typed", DOUBTFUL)
@pytest.mark.parametrize("way", WAYS[:7:3])
def test_nothing_doubtful_is_taken_for_right(typed, way):
    """75 ways: two amounts, no unit, another kind, a power, words. Of 3 kg each gets a sentence."""
    key = load_key(key_notebook("04-buy-enough"), tried=())
    (question, known), *_ = key.sheet.known(STUDENT)
    value = given_back(way.format(name="q1", capital="Q1", text=typed), "q1")
    verdict = question.judge(value, known | {"covers": known["covers"]})

    assert "right" != verdict.outcome
    assert verdict.outcome != "unreadable" or verdict.notes[0]


@pytest.mark.parametrize(
    "code",
    ["q1 = one.need / 2", "q1 = round(3", 'q1 = ""', "# only a note", "", "need = 3\nq1 = need * 2",
     "import math\nq1 = 3 kg", "for each in [1]:\n    q1 = each"],
)  # fmt: skip
def test_code_and_empty_cells_are_left_alone(code):
    """Good Python computes; code gone wrong keeps Python's own error."""
    assert typed_in(code, "q1") is None
    assert code == as_code(code, "q1")


def test_an_inch_at_the_end_is_no_quote():
    """3" is a length, and “3" in” is one with quotes around it."""
    assert "q1 = '3\"'" == as_code('q1 = 3"', "q1")


@pytest.mark.parametrize("line", ["%matplotlib inline", "%matplotlib widget", "!ls", "%cd ..",
                                  "%%time"])  # fmt: skip
def test_a_line_that_talks_to_the_notebook_takes_no_answer_away(line):
    """Before an answer in code it stays; before a typed one it is no part of the answer."""
    code = f'{line}\nq1 = "3 kg"'

    assert code == as_code(code, "q1")
    assert "q1 = '3 kg'" == as_code(f"{line}\n3 kg", "q1")
