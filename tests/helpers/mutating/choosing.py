"""Which tests to run on a changed line, and in which order."""

import ast
from pathlib import Path

from tests.helpers.mutating.reached import KIT
from tests.helpers.mutating.replaced import at_work

# Packages whose tests lie in another place than their own name says.
ELSEWHERE = {"kitchenmath/drills": ["tests/lessons"]}
MOST_FILES = 8  # for a line that runs at import: each file of tests costs its loading


def chosen(change, reached):
    """Names of tests, and files of tests to run whole, in the order to run them.

    Files that are younger than the map come first, those nearest to the module; then the tests
    that reach the line, the cheapest first; then the rest of the nearest.

    Parameters
    ----------
    change : Change
    reached : Reached

    Returns
    -------
    list of str
    """
    near = nearest(change.file)
    new = [name for name in near if reached.is_older_than(KIT / name)]
    known = reached.cheapest(name for name in reached.seconds if name.split("::")[0] in near)
    return list(dict.fromkeys([*new, *_reaching(change, reached), *known]))


def nearest(file):
    """The files of tests nearest to a module: its own, then those of the folder that mirrors it.

    Parameters
    ----------
    file : Path

    Returns
    -------
    list of str
    """
    place = file.relative_to(KIT).with_suffix("")
    parts = place.parts[1:] if place.parts[0] == "instructor" else place.parts
    folders = [Path("tests", *parts[:length]) for length in range(len(parts) - 1, 0, -1)]
    folder = next(one for one in folders if any((KIT / one).rglob("test_*.py")))
    folders = ELSEWHERE.get(place.parent.as_posix(), [folder.as_posix()])
    own = [folder / f"test_{place.name}.py"] if (KIT / folder).is_dir() else []
    files = [file for each in folders for file in sorted((KIT / each).rglob("test_*.py"))]
    found = [*(KIT / one for one in own if (KIT / one).is_file()), *files]
    return list(dict.fromkeys(one.relative_to(KIT).as_posix() for one in found))


def lines_of(text, line):
    """The lines of the smallest statement around a line, without the statements inside it.

    Parameters
    ----------
    text : str
        A module.
    line : int
        Counted from 1.

    Returns
    -------
    range
    """
    around = [
        node
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.stmt) and node.lineno <= line <= node.end_lineno
    ]
    least = min(around, key=lambda node: (node.end_lineno - node.lineno, -node.col_offset))
    inside = getattr(least, "body", None)
    last = inside[0].lineno - 1 if inside else least.end_lineno
    return range(least.lineno, max(last, line) + 1)


def _reaching(change, reached):
    """Where the map holds for the line, the tests of the line; else those of its module."""
    if at_work(change.whole(), change.made()) and not reached.is_older_than(change.file):
        return reached.tests(change.file, lines_of(change.whole(), change.line))
    return in_few_files(reached.tests_of_module(change.file), MOST_FILES)


def in_few_files(names, most):
    """The first tests of a list, of so many files.

    Parameters
    ----------
    names : list of str
    most : int

    Returns
    -------
    list of str
    """
    files = list(dict.fromkeys(name.split("::")[0] for name in names))[:most]
    return [name for name in names if name.split("::")[0] in files]
