"""Imports point one way: the contracts in pyproject.toml, as import-linter reads them."""

import os
import subprocess
import sys

from tests.helpers.browser import KIT

CHECK = "from importlinter.cli import lint_imports_command; lint_imports_command()"


def test_no_layer_imports_from_one_above_it():
    places = os.pathsep.join([str(KIT), str(KIT / "instructor")])
    run = subprocess.run(
        [sys.executable, "-c", CHECK, "--no-cache"],
        capture_output=True,
        text=True,
        cwd=KIT,
        env=os.environ | {"PYTHONPATH": places},
    )

    assert run.returncode == 0, run.stdout + run.stderr
