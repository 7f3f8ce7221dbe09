"""The practice sheet that a student works through: plain numbers in, plain sentences out."""

import pytest

from kitchenmath import Q_
from kitchenmath.errors import KitchenError
from kitchenmath.practice.practice_sheet import open_practice

# By hand: 2.4 kg of trimmed celeriac at a yield of 60 % are 2.4 ÷ 0.6 = 4 kg to buy. Multiplied it
# would be 1.44 kg, and with the loss of 40 % put on top 2.4 × 1.4 = 3.36 kg.
CELERIAC = {
    "kind": "weight",
    "right": [4.0, "kilogram"],
    "within": [50.0, "gram"],
    "slips": [
        {"name": "one", "at": [1440.0, "g"], "near": 0.003, "sentence": "You multiplied. Divide."},
        {"name": "two", "at": [3.36, "kg"], "near": 0.003, "sentence": "You put the loss on top."},
    ],
    "working": ["2.4 kg ÷ 60 % = 4 kg"],
    "hint": "Must it be more or less?",
}
WARM = {
    "kind": "temperature",
    "right": [60.0, "degree_Celsius"],
    "within": [1.0, "delta_degC"],
    "slips": [
        {"name": "one", "at": [78.0, "degC"], "near": 0.01, "sentence": "First."},
        {"name": "two", "at": [78.5, "degC"], "near": 0.01, "sentence": "Second."},
    ],
    "working": [],
    "hint": "Look at the scale.",
}


@pytest.fixture
def sheet():
    return open_practice([CELERIAC, WARM])


@pytest.mark.parametrize("answer", ["4 kg", "4000 g", "4.049 kg", "8 lb 13 oz", Q_(4, "kg")])
def test_right_in_any_unit_and_within_the_tolerance(sheet, answer):
    """8 lb 13 oz are 3.997 kg."""
    assert sheet.found(1, answer).startswith("✓ Right: ")


def test_a_slip_is_named_then_the_hint_then_the_working(sheet):
    """The same number again is no second try: running a cell twice costs nothing."""
    for typed in ("1.44 kg", "1440 g"):
        assert (
            f"↺ You multiplied. Divide. (Read as {typed}.)\nHint: Must it be more or less?"
        ) == sheet.found(1, typed)
    assert (
        "↺ You put the loss on top. (Read as 3.36 kg.)\n"
        "How it goes:\n  2.4 kg ÷ 60 % = 4 kg\n  The answer: 4 kg"
    ) == sheet.found(1, "3.36 kg")
    assert sheet.found(1, "4 kg").startswith("✓ Right")


def test_a_number_that_nothing_explains_is_said_so(sheet):
    assert sheet.found(1, "9 kg").startswith("✗ This number is not right, and none of the usual")


def test_slips_that_cannot_be_told_apart_are_both_said(sheet):
    assert "↺ First. Or: Second." in sheet.found(2, "78.2 °C")


def test_fahrenheit_is_taken_too(sheet):
    """140 °F are (140 - 32) ÷ 1.8 = 60 °C."""
    assert sheet.found(2, "140 °F") == "✓ Right: 140 °F."


@pytest.mark.parametrize(
    ("answer", "words"),
    [
        ("", "nothing is typed yet: a weight is asked for"),
        ("   ", "nothing is typed yet"),
        ("4", "has no unit"),
        ("4 L", "is a volume: a weight is asked for"),
        ("lots", "does not start with a number"),
        (None, "There is no answer here."),
        (["4 kg"], "is no amount"),
        (True, "is no amount"),
        (float("nan"), "amount"),
    ],
)
def test_whatever_is_typed_gets_a_sentence_and_costs_no_try(sheet, answer, words):
    """No cell stops, and the first number that is wrong still brings the hint only."""
    assert words in sheet.found(1, answer)
    assert "Hint: " in sheet.found(1, "9 kg")


@pytest.mark.parametrize("asked", ["hint", "Hint?", " HINT "])
def test_a_hint_and_the_working_can_be_asked_for(sheet, asked):
    assert "Must it be more or less?" == sheet.found(1, asked)
    assert "2.4 kg ÷ 60 % = 4 kg" in sheet.found(1, "working")


def test_each_question_has_its_own_tries(sheet):
    sheet.found(1, "9 kg")

    assert "Hint: Look at the scale." in sheet.found(2, "10 °C")


def test_check_prints_and_gives_nothing_back(sheet, capsys):
    assert sheet.check(1, "4 kg") is None
    assert "1: ✓ Right: 4 kg.\n" == capsys.readouterr().out
    assert "2 questions to practise." == repr(sheet)


@pytest.mark.parametrize("number", [0, 3, -1])
def test_a_question_that_is_not_there_is_refused(sheet, number):
    with pytest.raises(KitchenError, match="questions 1 to 2"):
        sheet.found(number, "4 kg")


def test_a_notebook_that_was_given_out_earlier_still_opens():
    """It imports the sheet by the name that its module had then."""
    from kitchenmath.practice.again import open_practice as earlier

    assert earlier is open_practice
