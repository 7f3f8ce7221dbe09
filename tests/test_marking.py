"""The two rooms: student code runs in one, points are decided in the other."""

import json
from dataclasses import asdict

import pytest
from coursework.classes.course import Bounds
from coursework.marking.mark_one import mark
from coursework.marking.room.plain import Odd, from_plain, to_plain
from coursework.sets.hand_out import ASSIGNMENTS
from coursework.sets.keys import key_file

from kitchenmath import Q_

KEY = key_file("04-buy-enough").read_bytes()
RELEASED = (ASSIGNMENTS / "04-buy-enough" / "04-buy-enough.ipynb").read_bytes()
STUDENT = "BH-1007"
# Their numbers, worked by hand: 36 x 55 g / 0.66 = 3 kg; 3 / 2.5 -> 2 nets;
# 125 g / 0.74 = 168.9 g; (13 x 9.25 - 3.25 x 6.50 - 3.5 x 1.50) / 4.4 = $21.34 a kilo;
# (0.1689 x 21.335 + 1.70) / 0.35 = $15.15.
RIGHT = {"q1": "3 kg", "q2": "2", "q3": "168.9 g", "q4": "$21.34 per kg", "q5": "$15.15"}


def typed(**answers):
    return {name: f'{name} = "{text}"' for name, text in answers.items()}


def marked(seconds=30, cell_seconds=15, **cells):
    """The record of a hand-in whose answer cells hold these texts."""
    notebook = json.loads(RELEASED)
    cells = {"me": f'student = "{STUDENT}"'} | cells
    for cell in notebook["cells"]:
        name = cell["metadata"].get("nbgrader", {}).get("grade_id", "").removesuffix("-answer")
        if name in cells:
            cell["source"] = cells[name]
    task = {
        "key": KEY,
        "released": RELEASED,
        "hand_in": json.dumps(notebook).encode(),
        "term": "demo",
        "student": STUDENT,
        "bounds": asdict(Bounds(seconds=seconds, cell_seconds=cell_seconds)),
    }
    return mark(task)


def points(record):
    return {verdict["question"]: verdict["points"] for verdict in record["verdicts"]}


ALL = {"q1": 3.0, "q2": 2.0, "q3": 3.0, "q4": 4.0, "q5": 4.0}
NOTHING = dict.fromkeys(ALL, 0.0)


def test_right_answers_worked_by_hand_earn_everything():
    """The hand calculation at the top of this page."""
    record = marked(**typed(**RIGHT), q6="My yield was 66 %.")

    assert ALL == points(record)
    assert record["findings"] == []
    assert record["human"][0] == {
        "question": "q6",
        "asked": record["human"][0]["asked"],
        "answer": "My yield was 66 %.",
        "out_of": 4.0,
    }


def test_computed_answers_earn_as_much_as_typed_ones():
    """Quantities computed with the library cross the wall as numbers and units."""
    record = marked(
        q1="q1 = one.covers * one.portion / one.yield_",
        q3="q3 = three.cooked / (1 - three.loss)",
    )

    assert points(record) == NOTHING | {"q1": 3.0, "q3": 3.0}


def test_a_slip_is_named_with_its_sentence_and_part_of_the_points():
    """By hand: 36 x 55 g x 0.66 = 1.307 kg is what multiplying gives."""
    verdict = marked(**typed(q1="1.307 kg"))["verdicts"][0]

    assert (verdict["outcome"], verdict["points"]) == ("slip", 1.0)
    assert verdict["slips"] == ("multiplied by the yield",)
    assert verdict["given"] == [
        "covers: 36",
        "brunoise for each cover, trimmed: 55 g (1.94 oz)",
        "yield of celeriac cut to brunoise: 66 %",
    ]


def test_a_right_method_on_a_wrong_first_answer_is_followed_through():
    """By hand: own 1.307 kg in nets of 2.5 kg is 1 net."""
    verdict = marked(**typed(q1="1.307 kg", q2="1"))["verdicts"][1]

    assert (verdict["outcome"], verdict["points"]) == ("follow-through", 2.0)


def test_patching_the_library_buys_nothing():
    """The student's room may believe what it likes; only the plain value crosses."""
    patch = "import kitchenmath.practice as p\np.Sheet.award = lambda *a: 99\nq1 = '1 kg'"

    assert points(marked(q1=patch)) == NOTHING


def test_an_object_that_equals_everything_has_no_value():
    """Its type's name crosses, nothing else."""
    record = marked(q1="class All:\n    def __eq__(s, o): return True\n\nq1 = All()")

    assert points(record) == NOTHING
    assert "“All” is no amount" in record["verdicts"][0]["sentence"]


def test_an_endless_loop_costs_only_its_own_answer():
    """What was answered above and below is kept, and the finding names the bound."""
    record = marked(cell_seconds=1, **typed(q1="3 kg", q3="168.9 g"), q2="while True: pass")

    assert points(record) == NOTHING | {"q1": 3.0, "q3": 3.0}
    assert record["findings"] == [
        "Cell q2-answer ran longer than 1 seconds and was stopped (cell_seconds)."
    ]


STUBBORN = """
while True:
    try:
        import signal
        signal.signal(signal.SIGALRM, signal.SIG_IGN)
        while True: pass
    except BaseException: pass
"""


def test_a_loop_that_swallows_everything_is_ended_from_outside():
    """Its room is ended; a second one runs the rest without that cell."""
    record = marked(cell_seconds=0.2, **typed(q1="3 kg", q3="168.9 g"), q2=STUBBORN)

    assert points(record) == NOTHING | {"q1": 3.0, "q3": 3.0}
    assert record["findings"] == [
        "Cell q2-answer ran longer than 0.2 seconds and was stopped (cell_seconds). "
        "It was left out."
    ]


def test_the_whole_notebook_has_a_bound_of_its_own():
    """Four cells that each stay within theirs."""
    slow = "import time; time.sleep(0.9)"
    record = marked(seconds=1.5, **typed(q1="3 kg"), q2=slow, q3=slow, q4=slow, q5=slow)

    assert points(record) == NOTHING | {"q1": 3.0}
    assert record["findings"] == ["The whole notebook ran longer than 1.5 seconds (seconds)."]


@pytest.mark.parametrize(
    "leave",
    ["import os; os._exit(0)", "import ctypes; ctypes.string_at(0)", "import os; os.abort()"],
)
def test_code_that_ends_its_own_room_costs_only_its_own_answer(leave):
    """The rest is run again without that cell, and it is said."""
    record = marked(**typed(q1="3 kg", q3="168.9 g"), q2=leave)

    assert points(record) == NOTHING | {"q1": 3.0, "q3": 3.0}
    assert record["findings"] == ["Cell q2-answer ended the room it ran in. It was left out."]


def test_sys_exit_and_errors_in_one_cell_leave_the_others_alone():
    """As in a notebook: the next cell runs."""
    record = marked(q2="import sys; sys.exit(1)", q3='q3 = "168.9 g"', q1="1 / 0")

    assert points(record) == NOTHING | {"q3": 3.0}


def test_a_cell_that_fails_says_with_what():
    """A name that does not exist is the usual one."""
    verdict = marked(q1="q1 = covers * 2")["verdicts"][0]

    assert "NameError: name 'covers' is not defined" in verdict["sentence"]


def test_a_million_lines_of_output_do_no_harm():
    """Output is bounded, the answer counts."""
    record = marked(**typed(q1="3 kg"), q2='print("x" * 10**7)\nq2 = "2"')

    assert points(record) == NOTHING | {"q1": 3.0, "q2": 2.0}
    assert len(record["notebook"]) < 2_000_000


def test_a_number_of_numpy_counts_as_a_number():
    """np.int64(2) nets are two nets."""
    assert points(marked(**typed(q1="3 kg"), q2="import numpy as np\nq2 = np.int64(2)"))["q2"] == 2


def test_the_room_knows_no_key_and_no_environment(monkeypatch):
    """The student's code sees its own empty folder, and nothing of the instructor's variables."""
    monkeypatch.setenv("MARK_BOOK_PASSWORD", "celeriac")
    record = marked(
        q1="import os\nprint(sorted(os.listdir('.')), os.environ.get('MARK_BOOK_PASSWORD'))"
    )
    printed = next(
        "".join(cell["outputs"][0]["text"])
        for cell in json.loads(record["notebook"])["cells"]
        if cell["id"] == "q1-answer"
    )

    assert "keys" not in printed
    assert "celeriac" not in printed


def test_the_marked_copy_shows_points_and_sentence_below_each_check():
    """The human marker sees what the machine found."""
    cells = json.loads(marked(**typed(q1="3 kg"))["notebook"])["cells"]
    check = next(cell for cell in cells if cell["id"] == "q1-check")

    assert "3 of 3 points. Right." in "".join(check["outputs"][0]["text"])


def test_the_same_task_gives_the_same_record():
    """A pure function: nothing in it depends on the clock or on chance."""
    assert marked(**typed(q1="3 kg", q2="1")) == marked(**typed(q1="3 kg", q2="1"))


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
