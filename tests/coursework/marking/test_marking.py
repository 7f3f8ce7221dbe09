"""One hand-in, marked: what the record says, and what crosses the wall between the two rooms."""

import json
from types import SimpleNamespace

import pytest
from coursework.marking.room import visit
from coursework.marking.room.plain import Odd, from_plain, to_plain
from coursework.sets.keys import load_key

from kitchenmath import Q_
from kitchenmath.practice import in_words
from tests.helpers.filled_in import (
    ALL,
    COMPUTED,
    KEY,
    NOTHING,
    RELEASED,
    TYPED,
    WRITTEN,
    filled,
    honest,
    marked,
    marked_with_copy,
    points,
)
from tests.helpers.this_machine import need


def verdict(record, question):
    return next(each for each in record.answered if each.question == question)


def test_right_answers_worked_by_hand_earn_everything():
    """The hand calculation in filled_in.py; the written answer waits for a person."""
    record = marked(honest())

    assert ALL == points(record)
    assert record.findings == ()
    assert [("q6", WRITTEN, 4.0)] == [
        (each.question, each.answer, each.out_of) for each in record.written
    ]


def test_an_honest_half_keeps_its_half():
    """By hand: 3 + 3 of 16; computed and typed answers count alike, a blank one is missing."""
    record = marked(filled(q1=COMPUTED["q1"], q3=TYPED["q3"]))

    assert NOTHING | {"q1": 3.0, "q3": 3.0} == points(record)
    assert "missing" == verdict(record, "q2").outcome


def test_a_slip_is_named_with_its_sentence_and_part_of_the_points():
    """By hand: 36 x 55 g x 0.66 = 1.307 kg is what multiplying gives."""
    found = verdict(marked(filled(q1='q1 = "1.307 kg"')), "q1")

    assert (found.outcome, found.points) == ("slip", 1.0)
    assert found.slips == ("multiplied by the yield",)
    assert list(found.given) == [
        "covers: 36",
        "brunoise for each cover, trimmed: 55 g (1.94 oz)",
        "yield of celeriac cut to brunoise: 66 %",
    ]


def test_a_right_method_on_a_wrong_first_answer_is_followed_through():
    """By hand: own 1.307 kg in nets of 2.5 kg is 1 net."""
    found = verdict(marked(filled(q1='q1 = "1.307 kg"', q2='q2 = "1"')), "q2")

    assert (found.outcome, found.points) == ("follow-through", 2.0)


def test_an_object_that_equals_everything_crosses_as_the_name_of_its_type():
    record = marked(filled(q1="class All:\n    def __eq__(s, o): return True\n\nq1 = All()"))

    assert NOTHING == points(record)
    assert "“All” is no amount" in in_words(verdict(record, "q1"))


# What stands in the cell of q2, what becomes of it, in the record's words.
NO_ANSWER = {
    "an error": (
        "q2 = covers * 2",
        "The cell is filled in, and gave no answer. It ended with: "
        "NameError: name 'covers' is not defined",
    ),
    "a syntax error": (
        'q2 = str("2',
        "The cell is filled in, and gave no answer. It ended with: "
        "SyntaxError: unterminated string literal (detected at line 1)",
    ),
    "another name": (
        '# Two nets.\nnets = "2"\nprint("bought")',
        "The cell is filled in, and ran, and put no answer under the name q2.",
    ),
    "its time is over": (
        "while True: pass",
        "The cell is filled in, and gave no answer. It ended with: "
        "CellTooLong: this cell was stopped after 1 seconds",
    ),
    "it left": (
        "import sys\nsys.exit('enough')",
        "The cell is filled in, and gave no answer. It ended with: SystemExit: enough",
    ),
    "it ended its room": (
        "import os\nos._exit(0)",
        "The cell ended the room it ran in, and gave no answer.",
    ),
}


@pytest.mark.parametrize("what", NO_ANSWER)
def test_a_cell_that_gave_no_answer_says_why_and_keeps_what_was_typed(what):
    """A cell that ran is never said not to have run; who reads the record sees the student's text.

    Python's own last line is Python's; the rest is ours.
    """
    typed, sentence = NO_ANSWER[what]
    record = marked(filled(q1=TYPED["q1"], q2=typed, q3=TYPED["q3"]), cell_seconds=1)
    found = verdict(record, "q2")

    assert ("unreadable", 0.0, typed) == (found.outcome, found.points, found.answer)
    assert in_words(found).startswith(sentence)
    assert "filled in" not in sentence or " quote" in in_words(found)
    assert NOTHING | {"q1": 3.0, "q3": 3.0} == points(record)


def test_cells_that_the_whole_notebooks_time_did_not_reach_say_so():
    """The second of three sleepers is stopped; the third never began, and its text is kept."""
    slow = "import time\ntime.sleep(2)\n"
    record = marked(
        filled(q1=TYPED["q1"], q2=slow, q3=slow + TYPED["q3"], q4=slow + TYPED["q4"]), seconds=3
    )
    stopped, never = verdict(record, "q3"), verdict(record, "q4")

    assert NOTHING | {"q1": 3.0} == points(record)
    assert (
        "The cell was stopped after 3 seconds of the notebook (seconds), and gave no answer."
        == in_words(stopped)
    )
    assert "The cell did not run: the notebook was stopped before it." == in_words(never)
    assert slow + TYPED["q4"] == never.answer


def test_the_marked_copy_shows_points_and_sentence_below_each_check():
    """A person who marks sees what the machine found, also why a cell was left out."""
    _, notebook = marked_with_copy(filled(q1=TYPED["q1"], q2="import os\nos._exit(0)"))
    cells = {each["id"]: each for each in json.loads(notebook)["cells"]}
    shown = {name: "".join(cells[name]["outputs"][0]["text"]) for name in ("q1-check", "q2-answer")}

    assert "3 of 3 points. Right." in shown["q1-check"]
    assert "This cell ended the room it ran in." == shown["q2-answer"]


def test_the_room_knows_no_key_and_no_environment(monkeypatch):
    """The student's code sees its own empty folder, and nothing of the instructor's variables.

    On Linux a folder in memory: its own, and nobody else's.
    """
    need("disk")
    monkeypatch.setenv("MARK_BOOK_PASSWORD", "celeriac")
    look = "import os\nprint(os.listdir('.'), os.environ.get('MARK_BOOK_PASSWORD'))"
    _, notebook = marked_with_copy(filled(q1=look))
    cell = next(each for each in json.loads(notebook)["cells"] if each["source"] == look)

    assert "[] None" == "".join(cell["outputs"][0]["text"]).strip()


def test_no_hidden_text_of_the_key_is_in_the_room_or_in_the_marked_copy():
    """The room is sent our released copy: what the key hides never was in it.

    Looked for: every hidden part of the key, in what a room is sent and in the copy that is kept.
    """
    sent = []
    hidden = hidden_lines()
    with pytest.MonkeyPatch.context() as patch:
        run = visit.rooms().run
        patch.setattr(
            visit,
            "rooms",
            lambda: SimpleNamespace(
                run=lambda work, *rest: (sent.append(json.dumps(work)), run(work, *rest))[1],
                load=lambda module: None,
            ),
        )
        _, notebook = marked_with_copy(honest())

    assert len(hidden) > 40
    assert "q1 = " in sent[0]
    assert [] == [line for line in hidden if json.dumps(line)[1:-1] in sent[0] + notebook]


def hidden_lines():
    """Lines of the key's hidden parts and solutions that say something of their own."""
    lines, inside = set(), False
    for cell in json.loads(KEY)["cells"]:
        for line in "".join(cell["source"]).splitlines():
            if "### BEGIN" in line:
                inside = True
            elif "### END" in line:
                inside = False
            elif inside and len(line.strip()) > 12:
                lines.add(line.strip())
    released = RELEASED.decode()
    return sorted(line for line in lines if json.dumps(line)[1:-1] not in released)


def test_the_same_task_gives_the_same_record():
    """A pure function: nothing in it depends on the clock or on chance."""
    hand_in = filled(q1=TYPED["q1"], q2='q2 = "1"')

    assert marked_with_copy(hand_in) == marked_with_copy(hand_in)


@pytest.mark.parametrize(
    "forged",
    [
        {"number": float("inf")},
        {"number": float("nan")},
        {"number": True},
        {"number": "3"},
        {"number": 3, "units": {"__class__": 1}},
        {"number": 3, "units": {"gram": "x"}},
        {"number": 3, "units": {"gram": 99}},
        {"number": 3, "units": "gram"},
        {"number": 3, "units": {str(i): 1 for i in range(100)}},
        {"type": "x" * 1000},
        {"number": 10**400},
        {"list": [{"text": "3"}] * 1000},
        {"table": [["a"]]},
        {"table": {"a": 1}},
    ],
)
def test_a_forged_value_is_no_value(forged):
    """What the room sends is read as hostile."""
    assert isinstance(from_plain(forged), Odd)


@pytest.mark.parametrize(
    "value",
    [
        "4.2 kg",
        3.5,
        Q_(4.2, "kg"),
        Q_(200, "degF"),
        Q_(2, "dollar/kg"),
        [Q_(3.5, "mm"), Q_(3, "mm")],
        {"foam": "19:20", "birds": ["18:50", 90.0]},
    ],
)
def test_a_plain_value_crosses_the_wall_and_stays_what_it_is(value):
    """There and back through JSON, as between the two rooms."""
    assert value == from_plain(json.loads(json.dumps(to_plain(value))))


def test_lists_without_end_do_not_cross():
    """Depth and length are bounded; what is beyond crosses as the name of its type."""
    deep = []
    deep.append(deep)

    crossed = json.dumps(to_plain(deep))

    assert len(crossed) < 200
    assert isinstance(from_plain(to_plain([0] * 10_000)), Odd)


@pytest.mark.parametrize("nothing", [None, 3, [], "text", True])
def test_what_is_no_record_is_no_answer(nothing):
    """A plain value is always wrapped; anything else counts as missing."""
    assert from_plain(nothing) is None


def test_a_hand_in_on_which_judging_fails_costs_nobody_else_anything(monkeypatch):
    """All its questions wait for a person; the student reads nothing of what went wrong inside."""
    key = load_key(KEY, "demo", tried=())

    def fails(student, answers, mark=key.sheet.mark):
        if answers:
            raise AssertionError("an odd unit")
        return mark(student, answers)

    monkeypatch.setattr(key.sheet, "mark", fails)
    record = marked(honest())

    assert {None} == {verdict.points for verdict in record.answered}
    assert "AssertionError: an odd unit" in record.to_do[0]
    assert "AssertionError" not in str(record.findings) + str(record.answered)
