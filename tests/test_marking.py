"""The two rooms: student code runs in one, points are decided in the other."""

import json
from dataclasses import asdict

import pytest
from coursework.course import Bounds
from coursework.hand_out import ASSIGNMENTS
from coursework.keys import key_file
from coursework.marking import Odd, from_plain, mark

KEY = key_file("04-buy-enough").read_bytes()
RELEASED = (ASSIGNMENTS / "04-buy-enough" / "04-buy-enough.ipynb").read_bytes()
STUDENT = "BH-1007"
# Their numbers, worked by hand: 36 x 55 g / 0.66 = 3 kg; 3 / 2.5 -> 2 nets;
# 125 g / 0.74 = 168.9 g; (13 x 9.25 - 3.25 x 6.50 - 3.5 x 1.50) / 4.4 = $21.34 a kilo;
# (0.1689 x 21.335 + 1.70) / 0.35 = $15.15.
RIGHT = {"q1": "3 kg", "q2": "2", "q3": "168.9 g", "q4": "$21.34 per kg", "q5": "$15.15"}


def typed(**answers):
    return {name: f'{name} = "{text}"' for name, text in answers.items()}


def marked(seconds=30, **cells):
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
        "bounds": asdict(Bounds(seconds=seconds)),
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


def test_an_endless_loop_costs_only_what_comes_after_it():
    """What was answered before is kept, and the finding names the bound."""
    record = marked(seconds=3, **typed(q1="3 kg"), q2="while True: pass")

    assert points(record) == NOTHING | {"q1": 3.0}
    assert record["findings"] == ["The code in this notebook was stopped after 3 seconds."]


@pytest.mark.parametrize(
    "leave", ["import os; os._exit(0)", "import os, signal; os.kill(os.getpid(), signal.SIGKILL)"]
)
def test_code_that_ends_its_own_room_costs_only_what_comes_after(leave):
    """The marking goes on, and says so."""
    record = marked(**typed(q1="3 kg"), q2=leave)

    assert points(record) == NOTHING | {"q1": 3.0}
    assert "ended the run before its last cell" in record["findings"][0]


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
    ],
)
def test_a_forged_value_is_no_value(forged):
    """What the room sends is read as hostile."""
    assert isinstance(from_plain(forged), Odd)


@pytest.mark.parametrize("nothing", [None, 3, [], "text", True])
def test_what_is_no_record_is_no_answer(nothing):
    """A plain value is always wrapped; anything else counts as missing."""
    assert from_plain(nothing) is None
