"""Python's errors in plain words, as a notebook's own shell says them."""

import subprocess
import sys

import pytest

from kitchenmath.practice.stumbles import in_plain_words, speak_plainly


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("SyntaxError: unterminated string literal (detected at line 1)", "a quote is missing"),
        ("IndentationError: unexpected indent", "begins with blanks"),
        ("NameError: name 'lots' is not defined", "Python does not know “lots”"),
        ("NameError: name 'q2' is not defined", "q2 has no value yet: run the cell"),
        ("ZeroDivisionError: division by zero", "divided by zero"),
        ("TypeError: unsupported operand type(s)", "between two quotes"),
        ("StopIteration: no error's name, and none is made up", ""),
        ("RecursionError", "The cell stopped. Type the answer between two quotes"),
        ("“lots” does not start with a number: type one.", ""),
    ],
)
def test_an_error_is_said_with_what_to_type(text, words):
    assert words in in_plain_words(text)
    assert bool(words) == bool(in_plain_words(text))


# Every cell of a set as a student may break it, one after the other, in a real shell.
SESSION = """
from IPython.core.interactiveshell import InteractiveShell
shell = InteractiveShell.instance(colors="NoColor")
for text in (
    "from kitchenmath.practice import open_set; sheet = open_set('x', 'demo', 'BH-1')",
    "q1 = str('4.2 kg",
    "q1 = lots",
    "sheet.look('q1', q1, 'weight')",
    "from kitchenmath.practice import last_look; last_look(globals())",
):
    print(">>>", text)
    print("<<<", shell.run_cell(text).success)
"""


def test_a_notebook_says_it_first_and_the_cell_still_fails(tmp_path):
    """Plain words, then Python's error; a cell that failed is known to have failed."""
    ran = subprocess.run(
        [sys.executable, "-c", SESSION],
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env={"PYTHONPATH": ":".join(filter(None, sys.path)), "HOME": str(tmp_path)},
        check=True,
    )
    opened, quote, word, check, last = ran.stdout.split(">>> ")[1:]

    assert "<<< True" in opened
    for said, words, error in (
        (quote, "most often a quote is missing", "SyntaxError"),
        (word, "Python does not know “lots”", "NameError"),
        (check, "q1 has no value yet", "NameError"),
    ):
        assert "<<< False" in said
        assert said.index(words) < said.index(error)
    assert "Student number" in last
    assert "<<< True" in last


def test_outside_a_notebook_nothing_changes():
    """The marking room runs keys without a shell."""
    hook = sys.excepthook

    speak_plainly()

    assert sys.excepthook is hook
