"""Set 3 for one student, worked by hand: the drawn sample, own readings, slips, rubbish.

BH-1007's sample is 4, 3, 3, 4, 4, 3.5, 2.5, 3.5, 3.5, 3 mm.

Mean: the ten add up to 34; 34 / 10 = 3.4 mm.
Trays: A is 2, 3, 2.5, 2, 4, 4, 3, 3, 3, 3.5 mm: four are off; B has none off, and passes.
Block: small dice are 6 mm; 28 / 6 gives 4, 128 / 6 gives 21: 4 x 4 x 21 = 336.
Dice: 38 mm / 1.414 = 26.87 mm give 4 each way, 110 mm give 18: 4 x 4 x 18 = 288 dice of 216 mm³ are
62,208 mm³. The carrot: 0.7854 x 38 x 38 x 110 = 124,753 mm³. 62,208 / 124,753 = 49.9 %.
Time: 4 / 3.4 = 1.1765, squared 1.384; 25 s x 1.384 = 34.6 s.
"""

import json
import random
from statistics import fmean

import pytest
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.conventions import conventions_of
from kitchenmath.drills.blocks import sizes_said, whole_pieces
from kitchenmath.drills.trays import off_size, sent_back
from kitchenmath.practice import Measured, in_words
from kitchenmath.practice.drawn import CutName, two_trays
from kitchenmath.units import Q_
from tests.helpers.filled_in import marked_with_copy

SET, STUDENT = "03-cut-to-size", "BH-1007"
RAW = key_notebook(SET)
RIGHT = {"q2": "3.4 mm", "q3": "4", "q4": "336", "q5": "49.9 %", "q6": "34.6 s"}
OUT_OF = {"q1": 3, "q2": 2, "q3": 3, "q4": 3, "q5": 3, "q6": 3}
# Ten of their own. They add up to 31.5, so the mean is 3.15 mm; 25 s x (4 / 3.15)² = 40.3 s.
OWN = "3.5, 3.0, 2.5, 4.0, 3.0, 3.5, 3.0, 2.5, 3.5, 3.0 mm"
FROM_OWN = {"q2": "3.15 mm", "q3": "4", "q4": "336 pieces", "q5": "49.9 %", "q6": "40.3 s"}

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
    together = "3.5, 3, 2.5, 4, 3, 3.5, 3, 2.5, 3.5, 3 mm: together 31.5 mm"
    assert verdicts["q2"].working[0] == together


@pytest.mark.parametrize(
    ("question", "typed", "slip", "worth"),
    [
        ("q2", "3.25 mm", "took the middle of the two ends", 1),  # (2.5 + 4) / 2
        ("q2", "3.5 mm", "took the middle reading", 1),  # 2.5 3 3 3 3.5 | 3.5 3.5 4 4 4
        ("q2", "3.78 mm", "divided by one too few", 1),  # 34 / 9
        ("q2", "34 mm", "gave the sum", 0),
        ("q3", "0", "went by the mean", 1),  # tray B: 32 / 10 = 3.2 mm, and none is off
        ("q3", "6", "counted the edge as off", 2),  # 2.5 and 3.5 too
        ("q3", "6", "counted what is on size", 2),
        ("q3", "2", "counted the large ones only", 2),
        ("q4", "3402", "took another cut's size", 1),  # 9 x 9 x 42 brunoise
        ("q4", "84", "counted one layer", 1),  # 4 x 21
        ("q4", "465", "divided the volumes", 2),  # 28 x 28 x 128 / 216 = 464.6
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


def test_every_pair_of_trays_has_one_that_passes_and_one_that_has_the_better_mean():
    """One off at most and a mean off 3 mm; two or more off, and a mean of just 3 mm."""
    for trays in two_trays("two trays").values:
        fails, passes = sent_back(trays)

        assert off_size(passes) <= 1 < off_size(fails) <= 6
        assert 0.0 == fmean(fails) < fmean(passes)
        assert 10 == len(passes) == len(fails)


def test_sticks_are_counted_by_their_length():
    """By hand: julienne is 3 x 3 x 40 mm; 28 / 3 gives 9, 128 / 40 gives 3: 9 x 9 x 3 = 243."""
    julienne = CutName("julienne")

    assert 243 == whole_pieces(julienne, Q_(28, "mm"), Q_(128, "mm")).magnitude
    assert "3 × 3 × 40 mm" == sizes_said(julienne)


def test_a_brunoise_is_counted_by_the_size_of_the_class():
    """By hand: 28 / 3 gives 9 and 128 / 3 gives 42: 9 x 9 x 42 = 3402; by 2 mm 14 x 14 x 64."""
    counts = [
        whole_pieces(
            CutName("brunoise").in_college(conventions_of(country)), Q_(28, "mm"), Q_(128, "mm")
        ).magnitude
        for country in ("ours", "UK")
    ]

    assert [3402, 12544] == counts


def test_a_hand_in_goes_through_both_rooms(key):
    """Typed and computed answers of the same student, marked as in a class."""
    copy = json.loads(released(RAW, "demo"))
    cells = {"me": f'student = "{STUDENT}"', "q1-answer": f'q1 = "{OWN}"'}
    cells |= {f"{name}-answer": f'{name} = "{text}"' for name, text in FROM_OWN.items()}
    cells |= {"q2-answer": "q2 = mine.lengths.mean()", "q7-answer": "910 g, 520 g: 57 %."}
    for cell in copy["cells"]:
        cell["source"] = cells.get(cell["id"], cell["source"])
    record, notebook = marked_with_copy(copy, STUDENT, of=(RAW, released(RAW, "demo")), seconds=60)

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
    """Question 1 is measured; the mean and the time of the largest build on it."""
    first, *others = key.sheet.questions.values()

    assert isinstance(first, Measured)
    assert [each.id for each in others if "q1" in each.builds_on] == ["q2", "q6"]


def test_ten_sizes_from_a_photo_earn_what_ten_by_hand_earn(key):
    """As the panel of lesson 3 prints them, to a tenth, with ±: three points, and no slip."""
    from_photo = "3.1, 2.9, 3.0, 3.2, 2.8, 3.1, 3.0, 2.9, 3.3, 2.7 mm ± 0.2 mm"
    verdict = found(key, q1=from_photo)["q1"]

    assert 3 == verdict.points
