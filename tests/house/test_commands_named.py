"""Every command that the kit tells anybody to type is one that the kit takes."""

import json
import re

import pytest
from coursework.command import _parser

from tests.helpers.browser import KIT

NAMED = re.compile(r"python3 instructor((?: [^\s`\"”'<>|)]+)*)")
SCRIPT = re.compile(r"python3? ((?:tests|lessons|assignments|instructor)(?:/[\w./-]*\w)?)")
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


@pytest.mark.parametrize(("place", "words"), named(), ids=lambda each: str(each)[:60])
def test_the_words_behind_a_command_are_taken(place, words, capsys):
    """Up to the end of a sentence; prose may name a command and leave out what goes with it."""
    end = next((n for n, word in enumerate(words, 1) if re.search(r"[.,;:]$", word)), len(words))
    typed = [re.sub(r"[“”.,;:]+$", "", word) for word in words[:end]]
    try:
        _parser().parse_args(list(filter(None, typed)))
    except SystemExit as ended:
        refused = capsys.readouterr().err

        assert not ended.code or "arguments are required" in refused, f"{place}: {refused}"


def test_every_script_that_is_named_lies_there():
    """README, guides, lessons and this contributor guide name scripts by their place."""
    scripts = {(place, found) for place, text in texts() for found in SCRIPT.findall(text)}

    assert len(scripts) > 10
    assert {True} == {(KIT / found).exists() for _, found in scripts}, scripts
