"""The tests themselves: none leans on another, and none changes the kit."""

import ast
from pathlib import Path

import pytest

from tests.helpers.whole_tree import in_the_tree

TESTS = Path(__file__).parents[1]
MODULES = sorted(TESTS.rglob("*.py"))
by_name = {"ids": [str(file.relative_to(TESTS)) for file in MODULES]}
KIT = TESTS.parent
SHARED = ("tests.helpers", "tests.measure")


@pytest.mark.parametrize("file", MODULES, **by_name)
def test_what_tests_share_lies_with_the_helpers_or_in_a_conftest(file):
    """Nothing is imported from a module of tests, in code that is run as text neither."""
    text = file.read_text(encoding="utf-8")
    named = [
        name
        for node in ast.walk(ast.parse(text))
        for name in _imported(node)
        if name.startswith("tests.") and not name.startswith(SHARED)
    ]
    in_text = [line for line in text.splitlines() if line.startswith("from tests.")]

    assert [] == named
    assert all(line.split()[1].startswith(SHARED) for line in in_text)


def _imported(node):
    if isinstance(node, ast.ImportFrom):
        yield node.module or ""
    elif isinstance(node, ast.Import):
        yield from (alias.name for alias in node.names)


@pytest.mark.parametrize("place", ["tests/sources.md", "README.md", "lessons/new.txt"])
@pytest.mark.parametrize("mode", ["a", "r+", "x"])
def test_nothing_writes_into_the_tree(place, mode):
    with pytest.raises(PermissionError, match="writes into the kit"):
        (KIT / place).open(mode)


def test_what_git_ignores_may_be_written():
    assert in_the_tree(KIT / "tests" / "new.py")
    assert not in_the_tree(KIT / "tests" / "screenshots" / "desk.png")
    assert not in_the_tree(KIT / "instructor" / "classes" / "demo" / "marks.csv")
    assert not in_the_tree(KIT / "tests" / "__pycache__" / "new.pyc")
    assert not in_the_tree(KIT / ".hypothesis" / "examples")
    assert not in_the_tree(KIT.parent / "elsewhere")
