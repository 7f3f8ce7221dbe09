"""The style that all of the kit keeps to: ruff's checks and its layout, as pyproject.toml says."""

import subprocess
import sys
from pathlib import Path

import pytest


@pytest.mark.parametrize("ask", [["check"], ["format", "--check"]], ids=" ".join)
def test_ruff_has_nothing_to_say(ask):
    run = subprocess.run(
        [sys.executable, "-m", "ruff", *ask, "--no-cache", "."],
        capture_output=True,
        text=True,
        cwd=Path(__file__).parents[2],
    )

    assert run.returncode == 0, run.stdout + run.stderr
