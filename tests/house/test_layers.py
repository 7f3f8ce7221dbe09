"""Imports point one way: the contracts in pyproject.toml, as import-linter reads them."""

import subprocess
import sys

from tests.helpers.browser import KIT

CHECK = "from importlinter.cli import lint_imports_command; lint_imports_command()"


def test_no_layer_imports_from_one_above_it():
    run = subprocess.run(
        [sys.executable, "-c", CHECK, "--no-cache"], capture_output=True, text=True, cwd=KIT
    )

    assert run.returncode == 0, run.stdout + run.stderr
