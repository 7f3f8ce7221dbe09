"""Every command that the kit tells anybody to type is one that the kit takes."""

import json
import re

import pytest
from coursework.command import _parser

from tests.helpers.browser import KIT

NAMED = re.compile(r"python3 instructor((?: [^\s`\"”'<>|)]+)*)")
PLACES = (KIT / "instructor", KIT / "kitchenmath", KIT / "lessons")
KINDS = (".py", ".md", ".ipynb", ".html", ".toml", ".csv")


def texts():
    """Every text of the kit, notebooks by what they show."""
    files = [KIT / "README.md", KIT / "DEVELOPERS.md"]
    for place in PLACES:
        files += [one for one in place.rglob("*") if one.suffix in KINDS]
    for file in sorted(files):
        relative = file.relative_to(KIT).as_posix()
        if not relative.startswith(("instructor/classes/", "instructor/coursework/classes/.")):
            text = file.read_text("utf-8", "replace")
            yield relative, json.dumps(json.loads(text)) if file.suffix == ".ipynb" else text


def named():
    """Each place that names a command, and the words behind `python3 instructor`."""
    return [
        (place, found[1].split())
        for place, text in texts()
        for found in NAMED.finditer(text.replace("\\n", "\n"))
    ]


def commands():
    return {name for each in _parser()._subparsers._group_actions for name in each.choices}


def test_there_is_something_to_try():
    assert len(named()) > 30


@pytest.mark.parametrize(("place", "words"), named(), ids=lambda each: str(each)[:60])
def test_a_command_that_is_named_is_one(place, words):
    """The word behind it is a command or an option; after a sentence's end there is none."""
    first = words[0] if words else ""
    known = {re.sub(r"[.,;:]+$", "", first)} & {*commands(), "", "--help", "--allow-root"}

    assert known, f"{place} says: python3 instructor {' '.join(words)}"
