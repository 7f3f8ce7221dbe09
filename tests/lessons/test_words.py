"""The list of words: what the lessons call things, each with one plain line."""

import json
import re
from pathlib import Path

import pytest

from kitchenmath.data.tables import table
from kitchenmath.pages.at_home import Home

KIT = Path(__file__).parents[2]
LESSONS = sorted(KIT.glob("lessons/*.ipynb"))
ROWS = table("words.csv")
# Set in bold to be heard, and plain words all the same.
STRESSED = {
    *("100 %", "15 °C below", "after", "clock", "cool to hand-warm", "divide", "flour", "grams"),
    *("goes on rising", "last time", "nobody is free", "one thickness", "quality", "safety"),
    *(
        "celery",
        "gluten",
        "milk",
        "soya",
        "steam",
        "twice as far",
        "twice as much",
        "wet",
        "2 h",
        "at",
        "first",
        "more",
        "not",
        "one",
    ),
    *("ring", "sea", "shallow trays", "too much", "two", "what was done", "written down"),
}


def prose(file):
    cells = json.loads(file.read_text(encoding="utf-8"))["cells"]
    return "\n".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "markdown")


def forms(row):
    return [row["word"], *filter(None, row["also"].split(";"))]


def bold_terms(text):
    """What is set in bold as a word: up to three words, no heading of a line, no sentence."""
    found = re.findall(r"\*\*([^*\n]+)\*\*", text)
    return {
        each for each in found
        if len(each.split()) <= 3 and not each[0].isupper() and each[-1] not in ".?!:"
    }  # fmt: skip


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["word"])
def test_every_word_is_used_in_a_lesson_or_in_a_drill_of_one(row):
    """In the text that students read, in one of its forms."""
    texts = [prose(file) for file in LESSONS]
    texts += [file.read_text(encoding="utf-8") for file in KIT.glob("kitchenmath/drills/*.py")]
    text = "\n".join(texts).casefold()

    assert any(
        re.search(rf"(?<!\w){re.escape(form.casefold())}(?!\w)", text) for form in forms(row)
    )


@pytest.mark.parametrize("file", LESSONS, ids=lambda file: file.stem)
def test_every_bold_term_of_a_lesson_is_in_the_list(file):
    """A term that is new gets a line in `kitchenmath/data/words.csv`."""
    known = {form.casefold() for row in ROWS for form in forms(row)}
    missing = {term for term in bold_terms(prose(file)) if term.casefold() not in known}

    assert missing - STRESSED == set()


def test_a_line_is_plain_and_short():
    """One or two sentences, 22 words at most, with a capital and a full stop; words in order."""
    words = [row["word"].casefold() for row in ROWS]

    assert words == sorted(set(words))
    for row in ROWS:
        assert row["line"][0].isupper() and row["line"].endswith(".")
        assert len(row["line"].split()) <= 22
        assert row["source"]


def test_the_start_page_and_each_lesson_and_set_lead_to_the_list():
    home = Home(KIT)
    pages = ["index.html", "lesson-04-buy-enough.html", "set-04-buy-enough.html"]
    listed = home.page("words.html")[0].decode()

    assert all('href="words.html"' in home.page(page)[0].decode() for page in pages)
    assert all(row["line"].replace("'", "&#39;") in listed for row in ROWS)
