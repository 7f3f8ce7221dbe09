"""Set 3 for one student, worked by hand: the drawn sample, own readings, slips, rubbish.

BH-1007's sample is 4, 3, 3, 4, 4, 3.5, 2.5, 3.5, 3.5, 3 mm.

Mean: the ten add up to 34; 34 / 10 = 3.4 mm.
Spread: less 3.4 and squared 3 x 0.36 (the fours), 3 x 0.16 (the threes), 3 x 0.01 (the 3.5s) and
0.81 (the 2.5) are 2.40; 2.40 / 9 = 0.2667, and its root is 0.516 mm.
Promise: the three fours are off, seven of ten are on size; that row reads 35 to 93 %, so at worst
100 - 35 = 65 % are off.
Dice: 38 mm / 1.414 = 26.87 mm give 4 each way, 110 mm give 18: 4 x 4 x 18 = 288 dice of 216 mm³ are
62,208 mm³. The carrot: 0.7854 x 38 x 38 x 110 = 124,753 mm³. 62,208 / 124,753 = 49.9 %.
Time: 4 / 3.4 = 1.1765, squared 1.384; 25 s x 1.384 = 34.6 s.
"""

import json
import random
import re
from dataclasses import asdict

import pytest
from coursework.classes.course import Bounds
from coursework.marking.mark_one import mark
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.cuts.spread import share_limits
from kitchenmath.practice import Measured, in_words

SET, STUDENT = "03-cut-to-size", "BH-1007"
RAW = key_notebook(SET)
RIGHT = {"q2": "3.4 mm", "q3": "0.516 mm", "q4": "65 %", "q5": "49.9 %", "q6": "34.6 s"}
OUT_OF = {"q1": 3, "q2": 2, "q3": 3, "q4": 3, "q5": 3, "q6": 3}
# Ten of their own. They add up to 31.5, so the mean is 3.15 mm. Squared distances: 3 x 0.1225
# (3.5), 4 x 0.0225 (3), 2 x 0.4225 (2.5), 0.7225 (4): 2.025; / 9 = 0.225, its root 0.474 mm.
# The four alone is off: 9 of ten, 55 to 100 %, so 45 % at worst. 25 s x (4 / 3.15)² = 40.3 s.
OWN = "3.5, 3.0, 2.5, 4.0, 3.0, 3.5, 3.0, 2.5, 3.5, 3.0 mm"
FROM_OWN = {"q2": "3.15 mm", "q3": "0.474 mm", "q4": "45 %", "q5": "49.9 %", "q6": "40.3 s"}

IN_INCHES = "0.14 0.12 0.1 0.16 0.12 0.14 0.12 0.1 0.14 0.12"
IN_CM = "0.35 0.3 0.25 0.4 0.3 0.35 0.3 0.25 0.35 0.3"


@pytest.fixture(scope="module")
def key():
    return load_key(RAW)


def found(key, **answers):
    return key.sheet.mark(STUDENT, answers)


def points(verdicts):
    return {each.question: each.points for each in verdicts.values()}


def test_the_hand_calculation_from_the_drawn_sample_earns_all_but_the_measurement(key):
    """The numbers at the top of this page; the empty question 1 costs its own three points."""
    assert points(found(key, **RIGHT)) == OUT_OF | {"q1": 0}


def test_the_hand_calculation_from_own_readings_earns_everything(key):
    """The numbers beside `OWN`; what the page shows as right is reckoned from them too."""
    verdicts = found(key, q1=OWN, **FROM_OWN)

    assert points(verdicts) == OUT_OF
    assert verdicts["q2"].right == "3.15 mm"
    assert verdicts["q2"].working[0] == "3.5, 3, 2.5, 4, 3, 3.5, 3, 2.5, 3.5, 3 mm: add them up"


@pytest.mark.parametrize(
    ("question", "typed", "slip", "worth"),
    [
        ("q2", "3.25 mm", "took the middle of the two ends", 1),  # (2.5 + 4) / 2
        ("q2", "3.5 mm", "took the middle reading", 1),  # 2.5 3 3 3 3.5 | 3.5 3.5 4 4 4
        ("q2", "3.78 mm", "divided by one too few", 1),  # 34 / 9
        ("q2", "34 mm", "gave the sum", 0),
        ("q3", "0.49 mm", "divided by all pieces", 2),  # root of 2.40 / 10
        ("q3", "0.267 mm", "forgot the root", 2),
        ("q3", "0.42 mm", "took the mean distance", 1),  # (1.8 + 1.2 + 0.3 + 0.9) / 10
        ("q3", "1.5 mm", "took the range", 1),
        ("q4", "30 %", "took the sample for the tray", 1),
        ("q4", "35 %", "gave the share on size", 2),
        ("q4", "7 %", "took the better end", 2),  # 100 - 93
        ("q4", "93 %", "counted the edge as off", 2),  # 3.5 and 2.5 off: three of ten, from 7 %
        ("q5", "63.7 %", "squared it and forgot the dice", 2),  # 2 / pi
        ("q5", "78.3 %", "share of the square, not of the carrot", 2),  # of 26.87² x 110 mm³
        ("q5", "28 %", "squared to half the diameter", 1),  # 19 mm give 3: 162 dice
        ("q5", "39.2 %", "took the round for a square bar", 2),  # of 38² x 110 mm³
        ("q6", "29.4 s", "straight ratio", 1),  # 25 x 1.1765
        ("q6", "40.7 s", "cubed the ratio", 1),
        ("q6", "18.1 s", "turned the ratio round", 1),
        ("q6", "13.5 s", "took the smallest piece", 2),  # 25 x (2.5 / 3.4)²
        ("q6", "44.4 s", "compared with the size asked for", 2),  # 25 x (4 / 3)²
    ],
)
def test_each_slip_worked_by_hand_is_named(key, question, typed, slip, worth):
    """From the drawn sample; the sum stands beside each."""
    verdict = found(key, **RIGHT | {question: typed})[question]

    assert slip in verdict.slips
    assert verdict.points <= worth


@pytest.mark.parametrize(
    ("typed", "slips", "points"),
    [
        (OWN, (), 3),
        (OWN.replace("3.5, ", "", 1), ("not ten pieces",), 2),
        (OWN.removesuffix(" mm"), ("no unit",), 2),
        (OWN.replace("2.5", "2.53"), ("invented digits",), 2),
        (OWN.replace("4.0", "40"), ("slipped decimal point",), 2),
        (OWN.replace(".", ""), ("slipped decimal point",), 2),  # 35, 30, 25, … mm
        (OWN.replace("mm", "cm"), ("slipped decimal point",), 2),  # 35 mm: the same mishap
        ("3 3 3 3 3 3 3 3 3 3 mm", ("all readings alike",), 0),
        (IN_INCHES, ("no unit", "inches typed as millimetres"), 0),
        (IN_INCHES + " in", (), 3),
        (IN_CM + " mm", ("centimetres typed as millimetres",), 1),
        (IN_CM + " cm", (), 3),
        ("3.5 mm", ("not ten pieces", "all readings alike"), 0),
    ],
)  # fmt: skip
def test_readings_are_judged_by_what_sound_ones_keep_to(key, typed, slips, points):
    """Each rule that is broken is named and costs its points, and nothing else is."""
    verdict = found(key, q1=typed)["q1"]

    assert slips == verdict.slips
    assert points == verdict.points


def test_a_slip_in_the_mean_is_followed_through_into_the_time(key):
    """By hand: with the middle reading, 3.5 mm, for a mean: 25 s x (4 / 3.5)² = 32.7 s."""
    verdicts = found(key, **RIGHT | {"q2": "3.5 mm", "q6": "32.7 s"})

    assert verdicts["q2"].outcome == "slip"
    assert (verdicts["q6"].outcome, verdicts["q6"].points) == ("follow-through", 3)


def test_readings_with_a_slipped_point_are_built_on_as_they_were_typed(key):
    """One point lost once: the mean of 40 and nine others is 67.5 / 10 = 6.75 mm, and it counts."""
    verdicts = found(key, q1=OWN.replace("4.0", "40"), q2="6.75 mm")

    assert points(verdicts) == dict.fromkeys(OUT_OF, 0) | {"q1": 2, "q2": 2}


def test_the_table_in_the_text_is_the_exact_interval(key):
    """Clopper and Pearson's for ten pieces, rounded to 1 %; 9 of 10 from 55.5 to 99.75 %."""
    rows = re.findall(r"^\| (\d+) \| (\d+) to (\d+) % \|$", key.asked["q4"], re.MULTILINE)
    exact = {
        hits: tuple(round(100 * each) for each in share_limits(hits, 10)) for hits in range(11)
    }

    assert {int(hits): (int(low), int(high)) for hits, low, high in rows} == exact
    assert exact[9] == (55, 100)
    assert exact[10] == (69, 100)


def test_a_hand_in_goes_through_both_rooms(key):
    """Typed and computed answers of the same student, marked as in a class."""
    copy = json.loads(released(RAW, "demo"))
    cells = {"me": f'student = "{STUDENT}"', "q1-answer": f'q1 = "{OWN}"'}
    cells |= {f"{name}-answer": f'{name} = "{text}"' for name, text in FROM_OWN.items()}
    cells |= {"q2-answer": "q2 = mine.lengths.mean()", "q7-answer": "910 g, 520 g: 57 %."}
    for cell in copy["cells"]:
        cell["source"] = cells.get(cell["id"], cell["source"])
    record, notebook = mark(
        {
            "key": RAW,
            "released": released(RAW, "demo"),
            "hand_in": json.dumps(copy).encode(),
            "term": "demo",
            "student": STUDENT,
            "bounds": asdict(Bounds(seconds=60)),
        }
    )

    assert {each.question: each.points for each in record.answered} == OUT_OF
    assert record.answered[0].given[0].startswith("a sample drawn for you, invented: 4, 3, 3")
    assert "start from your own: 3.5, 3, 2.5" in notebook


def test_random_measurements_and_answers_never_stop_the_marking(key):
    """500 hand-ins of anything: each question has a verdict within its points."""
    chance = random.Random(3)
    pools = [
        "",
        "0 mm",
        "3 mm",
        "0 %",
        "-5 min",
        "1e300 mm",
        "lots",
        None,
        0,
        1e308,
        [1, 2],
        "9 kg",
    ]
    for _ in range(500):
        sizes = [
            str(chance.choice((0.1, 2.5, 3, 3.5, 30, 499))) for _ in range(chance.randint(1, 12))
        ]
        answers = {name: chance.choice(pools) for name in OUT_OF}
        answers["q1"] = chance.choice((", ".join(sizes) + " mm", sizes, *pools))
        for verdict in key.sheet.mark(STUDENT, answers).values():
            assert 0 <= verdict.points <= verdict.out_of
            assert in_words(verdict)


def test_the_set_asks_for_a_measurement_first(key):
    """Question 1 is measured, and all but the carrot build on it."""
    first, *others = key.sheet.questions.values()

    assert isinstance(first, Measured)
    assert [each.id for each in others if "q1" in each.builds_on] == ["q2", "q3", "q4", "q6"]


def test_ten_sizes_from_a_photo_earn_what_ten_by_hand_earn(key):
    """As the panel of lesson 3 prints them, to a tenth, with ±: three points, and no slip."""
    from_photo = "3.1, 2.9, 3.0, 3.2, 2.8, 3.1, 3.0, 2.9, 3.3, 2.7 mm ± 0.2 mm"
    verdict = found(key, q1=from_photo)["q1"]

    assert 3 == verdict.points
