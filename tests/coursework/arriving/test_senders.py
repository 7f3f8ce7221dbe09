"""Who sent a file, by the name under which a platform keeps it. Names and numbers are invented."""

import pytest
from coursework.arriving.senders import Senders

ROSTER = {
    "BH-1001": "Ada Quill",
    "BH-1002": "Bram Oakes",
    "BH-1003": "Søren Åkesson",
    "BH-1004": "Ada Mary Quill",
    "4": "May",
    "20261": "Noor de Vries",
}


@pytest.mark.parametrize(
    ("outer", "expected"),
    [
        ("Ada Quill/04 final.ipynb", "BH-1001"),
        ("Quill, Ada - set 4.ipynb", "BH-1001"),
        ("quillada_0412_04-buy-enough.ipynb", "BH-1001"),
        ("AdaQuill.zip", "BH-1001"),
        ("BH-1002_w.ipynb", "BH-1002"),
        ("set 4 (bh1002).ipynb", "BH-1002"),
        ("post\\Bram Oakes\\w.ipynb", "BH-1002"),
        ("Søren Åkesson.ipynb", "BH-1003"),
        ("soren akesson.ipynb", ""),  # ø is a letter of its own: no match, and no wrong one
        ("søren akesson.ipynb", "BH-1003"),
        ("Quill Ada Mary/w.ipynb", "BH-1004"),
        ("de Vries, Noor/w.ipynb", "20261"),
        ("w 20261.ipynb", "20261"),
    ],
)
def test_a_number_or_a_whole_name_says_who_sent_it(outer, expected):
    assert expected == Senders(ROSTER).of(outer)


@pytest.mark.parametrize(
    "outer",
    [
        "04-buy-enough.ipynb",
        "4.ipynb",
        "handed in 4 May/w.ipynb",
        "Ada.ipynb",
        "Quill.ipynb",
        "BH-10012.ipynb",
        "XBH-1001.ipynb",
        "Ada Oakes/w.ipynb",
        "Ada Quill and Bram Oakes.ipynb",
        "",
    ],
)
def test_part_of_a_name_short_numbers_and_two_students_say_nothing(outer):
    assert "" == Senders(ROSTER).of(outer)


def test_the_outermost_part_is_the_platforms():
    """What a student calls the file inside a folder of the platform is the student's word."""
    senders = Senders(ROSTER)

    assert "BH-1001" == senders.of("Ada Quill/BH-1002 Bram Oakes.ipynb")
    assert "BH-1002" == senders.of("set 4/Bram Oakes/Ada Quill.ipynb")


def test_two_of_the_same_name_are_not_told_apart():
    assert "" == Senders({"BH-1": "Ada Quill", "BH-2": "Ada Quill"}).of("Ada Quill/w.ipynb")
