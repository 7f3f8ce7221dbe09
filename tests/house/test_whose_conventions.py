"""A class with other money, cuts or limits is told whose figures a lesson or a guide prints."""

import json
import re

import pytest
from coursework.sets.key_text import key_notebook, set_ids

from kitchenmath.conventions import conventions_of
from tests.helpers.read_by_people import KIT

LESSONS = sorted(KIT.glob("lessons/*.ipynb"))
# The page of a class's own limits is written for each class.
GUIDES = sorted(set(KIT.glob("instructor/guide/*.md")) - {KIT / "instructor/guide/limits.md"})
MONEY = re.compile(r"\$(?:</span>)?\d|\bdollars?\b")
WHOSE_MONEY = "in dollars, as in this kit's book"
# Its size beside its name, before another cut or a sentence's end.
SIZED = re.compile(
    r"\bbrunoise\b[^.:;|\n]{0,25}\b3 mm|\b3 mm (?:sticks, then )?brunoise", re.IGNORECASE
)
OURS = "this kit's book"
# "The code asks" is anybody's; "the US code asks", "your food code asks" say whose.
ANYBODYS = re.compile(r"\b(?:the|this) (?:food )?code\b|\bthis one asks\b", re.IGNORECASE)
OF_THE_US = re.compile(r"\bFDA\b|\bFSIS\b|\bUS (?:food )?code\b", re.IGNORECASE)
LOCAL_FIRST = re.compile(r"\blocal food code\b|\byour own code\b")


def told(file):
    """What a lesson or a guide says in words."""
    text = file.read_text(encoding="utf-8")
    if file.suffix == ".md":
        return text
    cells = json.loads(text)["cells"]
    return "\n".join("".join(c["source"]) for c in cells if c["cell_type"] == "markdown")


def unowned(text):
    """What a text asserts as everybody's: money, the size of a brunoise, a code's limits."""
    found = []
    if MONEY.search(text) and WHOSE_MONEY not in text:
        found.append("money")
    if any(SIZED.search(line) and OURS not in line for line in text.split("\n")):
        found.append("brunoise")
    found += [each[0] for each in ANYBODYS.finditer(text)]
    if OF_THE_US.search(text) and not LOCAL_FIRST.search(text):
        found.append("limits")
    return found


@pytest.mark.parametrize("file", [*LESSONS, *GUIDES], ids=lambda file: file.name)
def test_what_one_country_or_house_has_is_said_to_be_its_own(file):
    """So that a class of 2 mm, of pounds, or of another code does not take it for theirs."""
    assert [] == unowned(told(file))


@pytest.mark.parametrize("set_id", set_ids())
def test_a_set_says_nothing_of_dollars_to_a_class_of_pounds(set_id):
    """Nor of the kit's own brunoise: a set's figures are the class's."""
    cells = json.loads(key_notebook(set_id, conventions_of("UK")))["cells"]
    text = "\n".join("".join(c["source"]) for c in cells if c["cell_type"] == "markdown")

    assert not MONEY.search(text)
    assert not SIZED.search(text)


@pytest.mark.parametrize(
    ("text", "missing"),
    [
        ("A net costs $5.", ["money"]),
        ("A net costs <span>\\$</span>5.", ["money"]),
        ("Cut a brunoise of 3 mm.", ["brunoise"]),
        ("In this kit's book a brunoise is 3 mm.", []),
        ("The code asks for 74 °C.", ["The code"]),
        ("The US code asks for 74 °C.", ["limits"]),
        ("The US code asks for 74 °C. Your local food code comes first.", []),
    ],
)
def test_a_figure_without_an_owner_is_found(text, missing):
    """Each kind of it."""
    assert missing == unowned(text)
