"""The command that breaks lines at random: each change is one, and is code."""

import ast
from pathlib import Path

import pytest

from tests.helpers.mutating.breaking import changes
from tests.measure.mutation import draw

KIT = Path(__file__).parents[2]
MODULES = [
    KIT / "kitchenmath" / name
    for name in ("safety/logs.py", "service/plan_rules.py", "recipes/reading.py")
]


@pytest.mark.parametrize("file", MODULES, ids=lambda file: file.stem)
def test_each_change_can_be_run_and_means_something_else(file):
    before = ast.dump(ast.parse(file.read_text(encoding="utf-8")))
    made = [ast.dump(ast.parse(change.made())) for change in changes(file)]

    assert len(made) >= 20
    assert before not in made


def test_every_kind_of_change_is_made(tmp_path):
    """A comparison, a sum, a number, a condition, a return; no text and no annotation."""
    file = tmp_path / "module.py"
    file.write_text(
        'def enough(need: int = 2) -> bool:\n    """3 of 4."""\n'
        '    print(f"{need + 5}")\n    return need + 1.5 < 8 and need\n'
    )
    made = [(change.old, change.new) for change in changes(file)]

    assert [
        ("2", "3"),
        ("return need + 1.5 < 8 and need", "return None"),
        ("need + 1.5 < 8 and need", "(need + 1.5 < 8 or need)"),
        ("need + 1.5 < 8", "(need + 1.5 <= 8)"),
        ("need + 1.5", "(need - 1.5)"),
        ("1.5", "1.6500000000000001"),
        ("8", "9"),
    ] == made


def test_a_seed_draws_the_same_lines_and_no_line_twice():
    drawn = draw(MODULES, 40, seed=7)

    assert draw(MODULES, 40, seed=7) == drawn
    assert draw(MODULES, 40, seed=8) != drawn
    assert 40 == len({(change.file, change.line) for change in drawn})
