"""Write the page that says which source stands behind how many checks, and how far off we are.

    .venv/bin/python -m tests.measure.sources

Run it when a published value was added or changed, and commit what it writes. A test compares.
"""

import importlib
from collections import defaultdict
from pathlib import Path

from tests.helpers.published import CHECKED_BY, STATUSES

TESTS = Path(__file__).parents[1]
PAGE = TESTS / "sources.md"
HEAD = """\
# What the library is checked against

Each line is one published source, the numbers of its values that are checked, how they were come
by, and the check that is furthest off. `python -m tests.measure.sources` writes this page.

- *seen*: read in the named source. *quoted*: read in a text that quotes it. *computed*: worked out
  by hand or with a general library from exact definitions. *common practice*: in wide use, no
  source known. *memory*: recalled, not read.
- *Furthest off* is the largest difference as a share of what that check allows; 100 % would just
  pass. "exact" is less than a thousandth of it.

- *Formula*: the kit works it out, so another's print can find it wrong. *Table*: the kit holds the
  same print, so the check finds a slip of copying and no more.

| source | formula | table | status | furthest off | which |
|---|---|---|---|---|---|
"""


def published():
    """Every PUBLISHED value of every test module."""
    for file in sorted(TESTS.rglob("test_*.py")):
        if "\nPUBLISHED = " in file.read_text(encoding="utf-8"):
            name = ".".join(file.relative_to(TESTS.parent).with_suffix("").parts)
            yield from importlib.import_module(name).PUBLISHED


def page():
    by_source = defaultdict(list)
    for value in published():
        by_source[value.source].append(value)
    lines = []
    for source, values in sorted(by_source.items()):
        statuses = [status for status in STATUSES if any(v.status == status for v in values)]
        worst = max(values, key=share)
        off = "exact" if share(worst) < 1e-3 else f"{100 * share(worst):.0f} %"
        which = "" if off == "exact" else worst.name
        counts = [str(sum(value.by == by for value in values)) for by in CHECKED_BY]
        cells = (source, *counts, ", ".join(statuses), off, which)
        lines.append(f"| {' | '.join(cell.replace('|', '/') for cell in cells)} |")
    every = [value for values in by_source.values() for value in values]
    formula, table = (sum(value.by == by for value in every) for by in CHECKED_BY)
    return (
        f"{HEAD}{chr(10).join(lines)}\n\n{len(every)} values from {len(by_source)} sources: "
        f"{formula} are independent checks of a formula, {table} are tables copied twice.\n"
    )


def share(value):
    """The difference as a share of what is allowed; an exact check allows rounding only."""
    return value.deviation / max(value.allowed, 1e-12)


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
    print(PAGE)
