"""Plain kitchen English in what students and instructors read: a second-language reader's."""

import re

import pytest

from tests.helpers.read_by_people import KIT, read_by_people

# Each was stumbled over by a reader; beside it what to write.
ODD = {
    r"\bnoughts?\b": "zero",
    r"\breckon": "work out",
    r"\bhas (?:not )?got\b|\bnot got yet\b": "still has to learn, knows",
    r"\bWho \w+ it so\b": "If you … it like this",
    r"Is there so much\?": "is there that much?",
    r"How many percent\b": "what percentage",
    r"\bstreak\b": "right in a row",
    r"\bso long already\b|\bcore since then\b": "so far",
}


@pytest.mark.parametrize(
    ("file", "text"), [pytest.param(*each, id=each[0].name) for each in read_by_people()]
)
def test_no_odd_phrase_is_read_by_a_cook(file, text):
    found = {found[0]: plain for odd, plain in ODD.items()
             for found in re.finditer(odd, text, re.IGNORECASE)}  # fmt: skip

    assert {} == found, file.relative_to(KIT)
