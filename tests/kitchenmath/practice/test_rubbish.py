"""A student who types rubbish everywhere: each sentence says what to type, and nothing breaks.

Every question of every set meets every piece of rubbish, where a student meets the sentence: at
the check cell, at the last cell, at `python3 assignments`, and on the page that comes back.
"""

import json
import re
from functools import lru_cache

import pytest
from coursework.classes.course import Bounds, new_course
from coursework.marking.mark_one import mark
from coursework.reports.hand_back import student_page
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.practice import in_words
from kitchenmath.practice.answer_look import MAY_BE_BELOW_NOUGHT, look_over
from kitchenmath.practice.set_file import asked_in, read_set
from kitchenmath.units.registry import KINDS, Q_
from tests.helpers.pages import Page

SETS = set_ids()
STUDENT = "BH-1007"
# What stands behind "q1 = ", and what the student may have thought.
RUBBISH = {
    "a word": '"lots"',
    "question marks": '"???"',
    "emoji": '"🍏🍏🍏"',
    "fifty thousand letters": f'"{"k" * 50_000}"',
    "fifty thousand figures": f'"{"9" * 50_000} kg"',
    "no unit that exists": '"4 smidgens"',
    "two readings": '"1,250 kg"',
    "a sum": '"4 kg + 3 L"',
    "infinity": '"inf"',
    "a page": '"<script>alert(1)</script>"',
    "nothing": "None",
    "yes": "True",
    "a table": '{"celeriac": 3}',
    "a set of words": '{"lots"}',
    "a huge whole number": "10**1000",
    "a number without a repr": "10**6000",
    "infinity as a number": 'float("inf")',
    "no number": 'float("nan")',
    "a list of amounts": "Q_([1, 2], 'kg')",
    "a function": "print",
    "a type": "str",
}
# Cells that are no assignment at all, or stop.
BROKEN = {
    "no closing bracket": '{q} = str("4.2 kg',
    "a bare word": "{q} = lots",
    "divided by nought": "{q} = 1 / 0",
    "a name of its own": 'answer = "4.2 kg"',
    "a sentence": "about a few kilos",
    "a null": '{q} = "\0"',
}
ONE_UNIT = ("count", "percent", "money")  # a bare number can have one unit only
SAYS = re.compile(r"\b[Tt]ype\b|such as|did you mean|[Ss]omething from|[Gg]ive each|run the cell")


@pytest.fixture(scope="module")
def keys():
    return {set_id: load_key(key_notebook(set_id)) for set_id in SETS}


@lru_cache
def handed_out(set_id):
    """The students' notebook, made afresh from its key."""
    return released(key_notebook(set_id), "demo")


def filled(set_id, text_for):
    """The released notebook with a text in each answer cell, as bytes."""
    notebook = json.loads(handed_out(set_id))
    for cell in notebook["cells"]:
        question, _, part = cell["id"].rpartition("-")
        if part == "answer" and cell["cell_type"] == "code":
            cell["source"] = text_for(question)
        elif cell["id"] == "me":
            cell["source"] = f'student = "{STUDENT}"'
    return json.dumps(notebook).encode()


def questions(set_id):
    """What the released notebook asks, without the written answers."""
    return [each for each in asked_in(read_set(filled(set_id, str))[0]) if not each.written]


@pytest.mark.parametrize("set_id", SETS)
@pytest.mark.parametrize("rubbish", RUBBISH)
def test_a_check_cell_says_what_to_type(set_id, rubbish):
    """Nothing passes for an answer, and no sentence is longer than five hundred characters."""
    value = eval(RUBBISH[rubbish], {"Q_": Q_})
    for asked in questions(set_id):
        look = look_over(value, asked.kind, asked.plausible)

        assert look.state in ("empty", "unreadable", "doubtful")
        assert SAYS.search(look.sentence), look.sentence
        assert len(look.sentence) < 500


@pytest.mark.parametrize("set_id", SETS)
def test_a_wrong_kind_a_missing_unit_and_a_negative_amount_are_named(set_id):
    """A time where no time is asked for; 3 without its unit; less than nothing."""
    for asked in questions(set_id):
        if asked.kind not in KINDS:
            continue
        kind, example = asked.kind, KINDS[asked.kind][1]
        other = look_over("3 kg" if kind == "time" else "20 min", kind, asked.plausible)
        bare = look_over("3", kind, asked.plausible)
        below = look_over(f"-{example}", kind, asked.plausible)

        assert f'is asked for, such as "{example}"' in other.sentence
        assert kind in ONE_UNIT or f'type the unit too, such as "{example}"' in bare.sentence
        signed = asked.kind in MAY_BE_BELOW_NOUGHT
        assert ("hard to believe" if signed else "cannot be, because") in below.sentence
        assert SAYS.search(below.sentence)


@pytest.mark.parametrize("set_id", SETS)
@pytest.mark.parametrize("rubbish", [*RUBBISH, *BROKEN])
def test_the_command_says_what_to_type(set_id, rubbish):
    """`python3 assignments` runs nothing, so a computed answer is called computed."""
    template = BROKEN.get(rubbish, f"{{q}} = {RUBBISH.get(rubbish, '').replace('{', '{{')}")
    template = template.replace("}}", "}").replace("{{", "{") if rubbish in RUBBISH else template
    raw = filled(set_id, lambda question: template.replace("{q}", question))
    named, _ = read_set(raw)
    for asked in asked_in(named):
        if asked.written:
            continue
        look = asked.look()

        assert look.state != "there"
        assert look.state == "unknown" or SAYS.search(look.sentence), look.sentence
        assert len(look.sentence) < 500


@pytest.mark.parametrize("set_id", SETS)
@pytest.mark.parametrize("rubbish", RUBBISH)
def test_the_page_says_what_to_type(set_id, rubbish, keys):
    """The verdict's sentence is the page's; nothing is right, and nothing stops the marking."""
    value = eval(RUBBISH[rubbish], {"Q_": Q_})
    sheet = keys[set_id].sheet
    verdicts = sheet.mark(STUDENT, dict.fromkeys(sheet.questions, value))

    for verdict in verdicts.values():
        assert verdict.points == 0
        assert verdict.outcome in ("missing", "unreadable")
        assert verdict.outcome == "missing" or SAYS.search(in_words(verdict)), in_words(verdict)


@pytest.mark.parametrize("set_id", SETS)
@pytest.mark.parametrize("number", ["0", "-1", "1e-300", "1e300", "0.000001", "123456789"])
def test_an_amount_beyond_a_kitchen_does_not_stop_marking(set_id, number, keys):
    """Later questions build on it: a division by nought or a number too large is no crash."""
    sheet = keys[set_id].sheet
    answers = {}
    for question, known in sheet.known(STUDENT):
        right = question.right(known)
        answers[question.id] = (
            Q_(float(number), str(right.units)) if hasattr(right, "units") else number
        )

    verdicts = sheet.mark(STUDENT, answers)

    assert verdicts.keys() == sheet.questions.keys()
    assert all(verdict.outcome != "missing" for verdict in verdicts.values())


PIECES = [f"{{q}} = {each}" for each in RUBBISH.values() if "{" not in each] + [*BROKEN.values()]


@pytest.mark.slow
@pytest.mark.parametrize("set_id", SETS)
def test_a_whole_set_of_rubbish_comes_back_with_a_sentence_for_each(set_id, tmp_path):
    """Really run and marked: the last cell still speaks, and the page holds together.

    The pieces go round the sets, so that each is run at least once.
    """
    asked = questions(set_id)
    start = SETS.index(set_id) * 6
    texts = {each.question: (PIECES * 3)[start + i] for i, each in enumerate(asked)}
    task = {
        "key": key_notebook(set_id),
        "released": handed_out(set_id),
        "hand_in": filled(set_id, lambda question: texts[question].replace("{q}", question)),
        "term": "demo",
        "student": STUDENT,
        "bounds": vars(Bounds()),
    }

    record, notebook = mark(task)
    last = json.loads(notebook)["cells"][-1]
    said = " ".join("".join(last["outputs"][0]["text"]).split())
    course = new_course(tmp_path / "class", "Brackwater House", "demo", {STUDENT: "Ann"})
    told = Page(student_page(course, record, {})).text

    assert f"Student number: {STUDENT}" in said
    assert f"of {len(asked)} answers" in said
    assert "Traceback" not in said
    for verdict in record.answered:
        assert verdict.points == 0
        assert f"{verdict.question}: " in said
        if verdict.outcome == "unreadable":
            words = " ".join(in_words(verdict).split())
            assert words in told
            assert SAYS.search(words + told.partition(words)[2][:200]), words
