"""The look before handing in: read as data, nothing run, nothing told about right and wrong."""

import json

import pytest
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook, set_ids

from kitchenmath.practice import before_handing_in
from kitchenmath.practice.before_handing_in import ASSIGNMENTS, look_at, main
from kitchenmath.practice.set_file import read_set

FILE = ASSIGNMENTS / "04-buy-enough" / "04-buy-enough.ipynb"
RELEASED = released(key_notebook("04-buy-enough"), "demo")


def notebook(**answers):
    """The set with these answer cells, as bytes."""
    filled = json.loads(RELEASED)
    for cell in filled["cells"]:
        name = cell["id"].removesuffix("-answer")
        if name in answers:
            cell["source"] = answers[name]
    return json.dumps(filled).encode()


def looked(**answers):
    """What the look says of the set with these answer cells."""
    return look_at(read_set(notebook(**answers))[0])


@pytest.fixture
def sets(tmp_path, monkeypatch):
    """A student's folder of sets: set 4 begun, set 5 untouched."""
    for set_id, raw in (
        ("04-buy-enough", notebook(me='student = "BH-1"', q1='q1 = "3 kg"')),
        ("05-season-and-brine", released(key_notebook("05-season-and-brine"), "demo")),
    ):
        (tmp_path / set_id).mkdir()
        (tmp_path / set_id / f"{set_id}.ipynb").write_bytes(raw)
    monkeypatch.setattr(before_handing_in, "ASSIGNMENTS", tmp_path)
    return tmp_path


def test_an_untouched_set_says_what_is_missing():
    """Student number first, then every answer, then the sum."""
    lines = looked()

    assert "type it in quotes" in lines[0]
    assert [line.split(":")[0] for line in lines[1:-1]] == ["q1", "q2", "q3", "q4", "q5", "q6"]
    assert all("nothing is" in line for line in lines[1:-1])
    assert 'a count is asked for, such as "12"' in lines[2]
    assert 'money is asked for, such as "$3.48"' in lines[5]
    assert lines[-1] == "0 of 6 answers are there. Still empty: q1, q2, q3, q4, q5, q6."


@pytest.mark.parametrize(
    ("cell", "words"),
    [
        ('q1 = "3 kg"', "q1: read as 3 kg. It is a weight, as it should be."),
        ('q1 = "9 kg"', "q1: read as 9 kg. It is a weight, as it should be."),
        ('q1 = "900 kg"', "hard to believe in a kitchen. Something from 500 g to 30 kg is."),
        ('q1 = "3"', "has no unit"),
        ("q1 = 3", "has no unit"),
        ("q1 = [3, 4]", "[3, 4] is no amount: type it in quotes"),
        ('q1 = "3 L"', "a weight is asked for"),
        ('q1 = "rubbish"', "does not start with a number"),
        ("q1 = one.covers * 2", "computed. Run the notebook"),
        ('q1 = "3 kg', "read as 3 kg"),  # a quote is forgotten
        ("q1 = round(3", "is a quote missing?"),
        ("", "nothing is typed yet"),
        ('   q1 = "3 kg"', "read as 3 kg"),  # a notebook forgives it too
        ('answer = "3 kg"', 'the cell gives no q1. Type it between two quotes: q1 = "4.2 kg".'),
        ('q1 = "2 kg"\nq1 = "3 kg"', "read as 3 kg"),
        ("import os; os.remove('x'); q1 = '3 kg'", "read as 3 kg"),
        (r'q1 = "3 kg"  # not "\d"', "read as 3 kg"),
        (r'q1 = "3 kg" or "\d"', "computed"),
    ],
)
def test_an_answer_is_described_and_not_judged(cell, words):
    """A right and a wrong answer get the same words; nothing in the cell is run."""
    assert words in looked(q1=cell)[1]


def test_a_written_answer_is_there_or_not():
    """The stub alone is no answer; whether it is a good one is for a person to say."""
    assert looked(q6="*Write here.*")[6].startswith("q6: nothing is written yet")
    assert looked(q6="My yield was 70 %.")[6] == "q6: written."


def test_the_sum_counts_what_can_be_used_and_names_the_rest():
    """By hand: of six, q1, q2 and q6 are filled in; q2 cannot be read."""
    lines = looked(q1='q1 = "3 kg"', q2='q2 = "lots"', q6="My yield was 70 %.")

    assert (
        lines[-1] == "2 of 6 answers are there. Still empty: q3, q4, q5. Look again at: q2."
    )  # fmt: skip


def test_the_student_number_is_said_in_its_one_spelling():
    """Small letters and spaces are forgiven."""
    assert looked(me='student = " bh-1007"')[0] == "Student number: BH-1007"


@pytest.mark.parametrize(
    ("cell", "words"),
    [
        ('student = "BH-1', 'is a quote missing? Type student = "BH-1007".'),
        ("student = BH", 'type it in quotes, as in "BH-1007"'),
        ('student = "Ann Marie"', "is no student number"),
        ("", "type it in quotes"),
    ],
)
def test_a_student_number_that_is_none_says_what_to_type(cell, words):
    assert words in looked(me=cell)[0]


def test_the_command_names_the_file_to_hand_in(capsys):
    """And leaves alone what is not there, with a sentence."""
    assert main([str(FILE), "no such file.ipynb"]) == 0
    captured = capsys.readouterr()

    assert f"Hand in this file: {FILE}" in captured.out
    assert "Whether an answer is right is not said here" in captured.out
    assert "no such file.ipynb: there is no such file. Is it in another folder" in captured.err


def test_without_words_the_sets_that_are_begun_are_shown(sets, capsys):
    """An untouched set is one line, not eight."""
    assert main([]) == 0
    told = capsys.readouterr().out

    assert told.count("Student number") == 1
    assert "1 of 6 answers is there." in told
    assert "Not begun: 05-season-and-brine." in told


@pytest.mark.parametrize("set_id", set_ids())
def test_no_set_is_begun_as_it_is_handed_out(set_id, tmp_path, monkeypatch, capsys):
    """Also where an answer cell holds a form to fill in."""
    (tmp_path / set_id).mkdir()
    raw = released(key_notebook(set_id), "demo")
    (tmp_path / set_id / f"{set_id}.ipynb").write_bytes(raw)
    monkeypatch.setattr(before_handing_in, "ASSIGNMENTS", tmp_path)

    assert main([]) == 0
    assert capsys.readouterr().out == f"Not begun: {set_id}.\n"


def test_a_number_or_a_folder_means_the_sets_in_it(sets, capsys):
    """`python3 assignments look 5`, and a folder by its name."""
    assert main(["5"]) == 0
    assert "0 of 7 answers are there." in capsys.readouterr().out
    assert main([str(sets)]) == 0
    assert capsys.readouterr().out.count("Hand in this file") == 2


@pytest.mark.parametrize("word", ["99", "x.ipynb", "empty", "picture.png"])
def test_nothing_to_look_at_is_said_with_what_to_type(word, tmp_path, monkeypatch, capsys):
    """Exit code 1, and how to call it."""
    (tmp_path / "x.ipynb").write_text("[1, 2]", encoding="utf-8")
    (tmp_path / "empty").mkdir()
    (tmp_path / "picture.png").write_bytes(b"\x89PNG\r\n\x1a\n\0")
    monkeypatch.chdir(tmp_path)

    assert main([word]) == 1
    assert 'Type "python3 assignments", or' in capsys.readouterr().err


def test_no_sets_at_all_is_said(tmp_path, monkeypatch, capsys):
    """A kit whose folder of sets is empty."""
    monkeypatch.setattr(before_handing_in, "ASSIGNMENTS", tmp_path)

    assert main([]) == 1
    assert "no notebook in this folder" in capsys.readouterr().err
