"""What an import loads: the library alone must stay light."""

import subprocess
import sys
from pathlib import Path

import pytest

HEAVY = ("matplotlib", "ipywidgets", "IPython", "jupyterlab", "jupyter_core", "nbgrader")


@pytest.mark.parametrize(
    "module",
    ["kitchenmath", "kitchenmath.heat", "kitchenmath.safety", "kitchenmath.service",
     "kitchenmath.cuts", "kitchenmath.sauces", "kitchenmath.practice", "kitchenmath.drills.buying"],
)  # fmt: skip
def test_the_library_loads_neither_drawing_nor_widgets_nor_jupyter(module):
    """Asked of a fresh interpreter; pint and numpy are all it needs."""
    code = f"import sys, {module}; print([name for name in {HEAVY!r} if name in sys.modules])"
    run = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=Path(__file__).parents[2]
    )

    assert (run.stdout.strip(), run.stderr) == ("[]", "")


def test_a_panel_without_widgets_says_how_to_get_them():
    """The sentence names the command that sets lessons up."""
    code = (
        "import sys; sys.modules['ipywidgets'] = None\n"
        "try:\n    import kitchenmath.panels.frame\n"
        "except ImportError as error:\n    print(error)"
    )
    run = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=Path(__file__).parents[2]
    )

    assert "python3 lessons" in run.stdout
