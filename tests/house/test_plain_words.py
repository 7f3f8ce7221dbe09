"""Plain kitchen English in what students and instructors read: a second-language reader's."""

import json
import re
from pathlib import Path

import pytest

KIT = Path(__file__).parents[2]
# Each was stumbled over by a reader; beside it what to write.
ODD = {
    r"\bnoughts?\b": "zero",
    r"\breckon": "work out",
    r"\bhas (?:not )?got\b": "still has to learn, knows",
    r"\bWho \w+ it so\b": "If you … it like this",
    r"Is there so much\?": "is there that much?",
    r"How many percent\b": "what percentage",
    r"\bstreak\b": "right in a row",
}


def read_by_people():
    """Lessons' text, guides, and the pages' templates, each under its name."""
    for file in sorted(KIT.glob("lessons/*.ipynb")):
        cells = json.loads(file.read_text(encoding="utf-8"))["cells"]
        yield file, "\n".join("".join(c["source"]) for c in cells if c["cell_type"] == "markdown")
    for pattern in ("instructor/guide/*.md", "instructor/coursework/**/*.html"):
        for file in sorted(KIT.glob(pattern)):
            yield file, file.read_text(encoding="utf-8")
    for file in sorted(KIT.glob("kitchenmath/drills/*.py")):
        yield file, "\n".join(re.findall(r'"([^"\n]*)"', file.read_text(encoding="utf-8")))


@pytest.mark.parametrize(
    ("file", "text"), [pytest.param(*each, id=each[0].name) for each in read_by_people()]
)
def test_no_odd_phrase_is_read_by_a_cook(file, text):
    found = {found[0]: plain for odd, plain in ODD.items() for found in re.finditer(odd, text)}

    assert {} == found, file.relative_to(KIT)
