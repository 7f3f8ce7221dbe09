"""The look before handing in: read as data, nothing run, nothing told about right and wrong."""

import json

import pytest

from kitchenmath.practice.handin import ASSIGNMENTS, look_at, main

FILE = ASSIGNMENTS / "04-buy-enough" / "04-buy-enough.ipynb"


def notebook(**answers):
    """The set with these answer cells."""
    filled = json.loads(FILE.read_text(encoding="utf-8"))
    for cell in filled["cells"]:
        name = cell["id"].removesuffix("-answer")
        if name in answers:
            cell["source"] = answers[name]
    return filled


def test_an_untouched_set_says_what_is_missing():
    """Student number first, then every answer."""
    lines = look_at(notebook())

    assert "type it in quotes" in lines[0]
    assert [line.split(":")[0] for line in lines[1:]] == ["q1", "q2", "q3", "q4", "q5", "q6"]
    assert all("nothing is" in line for line in lines[1:])
    assert 'a count is asked for, such as "12"' in lines[2]
    assert 'money is asked for, such as "$3.48"' in lines[5]


@pytest.mark.parametrize(
    ("cell", "words"),
    [
        ('q1 = "3 kg"', "q1: read as 3 kg. It is a weight, as it should be."),
        ('q1 = "9 kg"', "q1: read as 9 kg. It is a weight, as it should be."),
        ('q1 = "900 kg"', "hard to believe"),
        ('q1 = "3"', "has no unit"),
        ("q1 = 3", "has no unit"),
        ('q1 = "3 L"', "a weight is asked for"),
        ('q1 = "rubbish"', "does not start with a number"),
        ("q1 = one.covers * 2", "computed; run the notebook"),
        ('q1 = "3 kg', "is a quote missing?"),
        ("", "nothing is typed yet"),
        ('q1 = "2 kg"\nq1 = "3 kg"', "read as 3 kg"),
        ("import os; os.remove('x'); q1 = '3 kg'", "read as 3 kg"),
    ],
)
def test_an_answer_is_described_and_not_judged(cell, words):
    """A right and a wrong answer get the same words; nothing in the cell is run."""
    assert words in look_at(notebook(q1=cell))[1]


def test_the_student_number_is_said_in_its_one_spelling():
    """Small letters and spaces are forgiven."""
    assert look_at(notebook(me='student = " bh-1007"'))[0] == "Student number: BH-1007"


def test_the_command_names_the_file_to_hand_in(capsys):
    """And leaves alone what is no notebook, with a sentence."""
    assert main([str(FILE), "no such file.ipynb"]) == 0
    captured = capsys.readouterr()

    assert f"Hand in this file: {FILE}" in captured.out
    assert "no such file.ipynb: this is no notebook of a set" in captured.err


def test_nothing_to_look_at_is_said(capsys, tmp_path):
    """Exit code 1."""
    (tmp_path / "x.ipynb").write_text("[1, 2]", encoding="utf-8")

    assert main([str(tmp_path / "x.ipynb")]) == 1
