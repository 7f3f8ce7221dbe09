"""Set 8 for one student, worked by hand: the drawn log, a log of their own, slips, rubbish.

BH-2848852's log, every five minutes: 6, 6, 10.5, 20.5, 29, 36, 42, 47.5, 51.5, 55.5 °C.

Half-way: (6 + 55.5) / 2 = 30.75 °C. 29 °C at 20 min, 36 at 25: (30.75 - 29) / 7 = 0.25 of 5 min,
so 21.25 min, 21 min 15 s.
Wait: 55.5 - 51.5 = 4 °C in 5 min, 0.8 °C a minute; 7 / 0.8 = 8.75 min.
Fillet: 34 / 22 = 1.5455, squared 2.3884; 23 min x 2.3884 = 54.93 min.
Loin: 59 - 52 = 7 °C = 12.6 °F; 150 - 12.6 = 137.4 °F, 58.6 °C.
Roast: 134 °F has reached the row of 133 °F, 56 min, and not that of 135. 56 - 4 = 52 min.
"""

import json
import random
import re

import pytest
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.practice import Measured, in_words
from kitchenmath.safety import limit, limits
from tests.helpers.filled_in import marked_with_copy

SET, STUDENT = "08-heat-gently", "BH-2848852"  # who draws the log worked by hand
RAW = key_notebook(SET)
RIGHT = {"q2": "21 min 15 s", "q3": "8.75 min", "q4": "54.9 min", "q5": "137.4 °F", "q6": "52 min"}
OUT_OF = {"q1": 3, "q2": 3, "q3": 3, "q4": 2, "q5": 3, "q6": 3}
# A log of their own, in °F: 41, 42, 50, 62, 74, 85, 95, 103. Half-way is 72 °F: 62 at 15 min, 74
# at 20, so 10/12 of 5 min after 15: 19.17 min. The last step is 8 °F, 4.444 °C in 5 min, 0.889 °C
# a minute; 7 / 0.889 = 7.875 min.
OWN = "0 min 41 °F\n5 min 42 °F\n10 min 50 °F\n15 min 62 °F\n20 min 74 °F\n25 min 85 °F\n"
OWN += "30 min 95 °F\n35 min 103 °F"
FROM_OWN = RIGHT | {"q2": "19 min 10 s", "q3": "7.9 min"}


@pytest.fixture(scope="module")
def key():
    return load_key(RAW)


def found(key, **answers):
    return key.sheet.mark(STUDENT, answers)


def points(verdicts):
    return {each.question: each.points for each in verdicts.values()}


def test_the_hand_calculation_from_the_drawn_log_earns_all_but_the_measurement(key):
    """The numbers at the top of this page; the empty question 1 costs its own three points."""
    assert points(found(key, **RIGHT)) == OUT_OF | {"q1": 0}


def test_the_hand_calculation_from_an_own_log_earns_everything(key):
    """The numbers beside `OWN`, which was kept in °F; 137.4 °F is as good in °C."""
    verdicts = found(key, q1=OWN, **FROM_OWN | {"q5": "58.6 °C"})

    assert points(verdicts) == OUT_OF
    assert verdicts["q2"].right == "19.17 min"
    assert verdicts["q1"].answer.startswith("0 min 41 °F; 5 min 42 °F")


@pytest.mark.parametrize(
    ("question", "typed", "slip", "worth"),
    [
        ("q2", "22.5 min", "took half of the time", 1),
        ("q2", "19 min 16 s", "halved the last reading", 1),  # 27.75 °C: 15 + 5 x 7.25 / 8.5
        ("q2", "20 min", "took the reading before", 2),
        ("q2", "25 min", "took the reading after", 2),
        ("q2", "23.75 min", "shared the step from the wrong end", 2),  # 25 - 1.25
        ("q3", "6.36 min", "took the pace of the whole log", 2),  # 49.5 °C in 45 min: 1.1
        ("q3", "53.75 min", "gave the time on the clock", 2),
        ("q3", "1.75 min", "took a step for a minute", 2),  # 7 / 4 steps
        ("q3", "78 min", "counted the rise from zero", 1),  # 62.5 / 0.8
        ("q3", "31 min", "took the difference for a point in °F", 1),  # 7 °C "is" 44.6 °F: 24.8 °C
        ("q4", "35.5 min", "straight ratio", 1),
        ("q4", "84.9 min", "cubed the ratio", 1),
        ("q4", "71.1 min", "doubled the ratio", 1),
        ("q4", "9.6 min", "turned the ratio round", 1),
        ("q5", "143 °F", "took the difference as it stands", 2),  # 150 - 7
        ("q5", "105.4 °F", "took the difference for a point", 2),  # 7 °C "is" 44.6 °F
        ("q5", "162.6 °F", "added the rise", 1),
        ("q5", "150 °F", "no rest counted", 1),
        ("q5", "52 °C", "pulled as last week", 0),
        ("q6", "32 min", "took the next hotter row", 2),  # 36 - 4
        ("q6", "42 min", "read between two rows", 2),  # 46 - 4
        ("q6", "56 min", "gave the whole time", 2),
        ("q6", "60 min", "added the time that is over", 1),
        ("q6", "43 min", "took the table from before 2001", 1),  # 134 °F: 47 - 4
    ],
)
def test_each_slip_worked_by_hand_is_named(key, question, typed, slip, worth):
    """From the drawn log; the sum stands beside each."""
    verdict = found(key, **RIGHT | {question: typed})[question]

    assert slip in verdict.slips
    assert verdict.points <= worth


@pytest.mark.parametrize(
    ("typed", "slips", "points"),
    [
        (OWN, (), 3),
        (OWN.partition("\n")[2], ("too few readings",), 2),
        (OWN.replace(" °F", ""), ("no scale", "°F typed as °C"), 0),
        (OWN.replace("°F", "°C"), ("°F typed as °C",), 1),
        (OWN.replace("15 min", "9 min"), ("not in the order of time",), 2),
        (OWN.replace("15 min", "10 min"), ("not in the order of time",), 2),
        ("\n".join(f"{5 * i} min {8 + 5 * i} °C" for i in range(8)), ("every step alike",), 1),
        ("\n".join(f"{5 * i} min {5 + i * i / 4} °C" for i in range(8)), ("hardly warmed",), 2),
    ],
)
def test_a_log_is_judged_by_what_a_sound_one_keeps_to(key, typed, slips, points):
    """Each rule that is broken is named and costs its points, and nothing else is."""
    verdict = found(key, q1=typed)["q1"]

    assert slips == verdict.slips
    assert points == verdict.points


def test_a_log_that_does_not_warm_to_the_end_is_not_built_on(key):
    """The last two readings alike have no pace; the sheet says that the drawn log counts."""
    verdicts = found(key, q1=OWN + "\n40 min 103 °F", **RIGHT)

    assert points(verdicts) == OUT_OF | {"q1": 0}
    assert verdicts["q1"].outcome == "wrong"
    assert "marked from the sample" in in_words(verdicts["q1"])


def test_the_table_in_the_text_is_the_codes_own(key):
    """Every current row of the Food Code from 130 to 140 °F, and each line's limit is quoted."""
    rows = re.findall(r"^\| ([\d.]+) °C \((\d+) °F\) \| (\d+) min \|$", key.asked["q6"], re.M)
    quoted = {
        (row.temperature.magnitude, row.fahrenheit.magnitude, row.time.magnitude)
        for row in limits("whole roast")
        if row.fahrenheit.magnitude <= 140
    }

    assert {tuple(map(float, row)) for row in rows} == quoted
    assert len(quoted) == 7
    pork = limit("intact meat")
    assert (
        f"{pork.temperature.magnitude:.0f} °C ({pork.fahrenheit.magnitude:.0f} °F)"
        in (key.asked["q5"])
    )
    assert (pork.section in key.asked["q5"], pork.time.magnitude) == (True, 15)


def test_a_limit_is_looked_up_and_never_worked_out(key):
    """131 to 137 °F, row by row: 89, 89, 56, 56, 36, 28, 28 min."""
    question = key.sheet.questions["q6"]
    cores, none_yet = key.sheet.choices["q6"]["core"].values, key.sheet.choices["q6"]["held"].values
    asked = [question.right({"core": core, "held": none_yet[0]}).magnitude for core in cores]

    assert [89, 89, 56, 56, 36, 28, 28] == [each + none_yet[0].magnitude for each in asked]


def test_a_hand_in_goes_through_both_rooms(key):
    """A log typed between three quotes, typed and computed answers, marked as in a class."""
    copy = json.loads(released(RAW, "demo"))
    cells = {"me": f'student = "{STUDENT}"', "q1-answer": f'q1 = """\n{OWN}\n"""'}
    cells |= {f"{name}-answer": f'{name} = "{text}"' for name, text in FROM_OWN.items()}
    cells |= {"q4-answer": "q4 = four.time * (four.new / four.old) ** 2", "q7-answer": "12 min."}
    for cell in copy["cells"]:
        cell["source"] = cells.get(cell["id"], cell["source"])
    record, notebook = marked_with_copy(copy, STUDENT, of=(RAW, released(RAW, "demo")), seconds=60)

    assert {each.question: each.points for each in record.answered} == OUT_OF
    assert "start from your own: 8 readings, from 0 min 41 °F to 35 min 103 °F" in notebook


def test_random_logs_and_answers_never_stop_the_marking(key):
    """500 hand-ins of anything: each question has a verdict within its points."""
    chance = random.Random(7)
    pools = [
        "",
        "0 min",
        "3 °C",
        "0 °F",
        "-5 min",
        "1e300 min",
        "lots",
        None,
        0,
        1e308,
        [1],
        "9 kg",
    ]
    for _ in range(500):
        cores = [chance.choice((-9, 5, 9.5, 40, 399)) for _ in range(chance.randint(1, 12))]
        minutes = [chance.choice((5 * place, place / 60, 7)) for place in range(len(cores))]
        lines = [f"{minute} min {core}" for minute, core in zip(minutes, cores, strict=True)]
        answers = {name: chance.choice(pools) for name in OUT_OF}
        answers["q1"] = chance.choice(("\n".join(lines) + " °C", lines, *pools))
        for verdict in key.sheet.mark(STUDENT, answers).values():
            assert 0 <= verdict.points <= verdict.out_of
            assert in_words(verdict)


def test_the_set_asks_for_a_measurement_first(key):
    """Question 1 is measured, and the two after it build on it."""
    first, *others = key.sheet.questions.values()

    assert isinstance(first, Measured)
    assert [each.id for each in others if "q1" in each.builds_on] == ["q2", "q3"]
