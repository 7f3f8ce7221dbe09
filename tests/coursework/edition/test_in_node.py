"""The library under the browser's Python, in Node: the same numbers for the same students.

It needs Node and the compiled wheels of the browser's Python (KITCHEN_WHEELS names their folder);
where there are none, this is left out and says so.
"""

import json
import os
import shutil
import subprocess
from pathlib import Path

import pytest
from coursework.edition.runtime import runtime
from coursework.edition.site import edition, write
from coursework.edition.smaller import STDLIB
from coursework.sets.key_text import set_ids

WHEELS = os.environ.get("KITCHEN_WHEELS", "")
pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(
        not (WHEELS and shutil.which("npm") and shutil.which("node")),
        reason="no Node, or KITCHEN_WHEELS is not set",
    ),
]
# The draws of all students in a set, as one sum; run here and there, word for word.
DRAWS = """
import hashlib
from kitchenmath.practice import given
from kitchenmath.practice.set_file import read_set

def draws(raw, students):
    cells, set_id = read_set(raw)
    names = {}
    for name, (kind, text) in cells.items():
        if name in ("me", "open-set") or name.endswith("-given"):
            exec(text, names)
    sheet, digest = names["sheet"], hashlib.sha256()
    for number in range(students):
        for question, choices in sheet.choices.items():
            mine = given(sheet.term, f"BH-{number}", f"{set_id}/{question}", **choices)
            digest.update(repr(sorted((name, str(each)) for name, each in mine.items())).encode())
    return digest.hexdigest()
"""
# The library's own examples, worked by hand in its docstrings: what a page loads is without them,
# and without the module that runs them, so the students' zip and the whole standard library help.
EXAMPLES = """
import importlib, pkgutil, sys

for name in [name for name in sys.modules if name.startswith("kitchenmath")]:
    del sys.modules[name]
sys.path[:0] = ["/kit/kitchen-kit"]
sys.path.append("/whole.zip")
import doctest
from kitchenmath import Q_, read, say

def examples(packages):
    failed = tried = 0
    for package in packages:
        top = importlib.import_module(f"kitchenmath.{package}")
        for found in pkgutil.walk_packages(top.__path__, f"{top.__name__}."):
            module = importlib.import_module(found.name)
            result = doctest.testmod(module, extraglobs={"Q_": Q_, "read": read, "say": say})
            failed, tried = failed + result.failed, tried + result.attempted
    return failed, tried
"""
PURE = ["units", "yields", "ratios", "brine", "cuts", "heat", "safety", "service", "practice"]
STUDENTS = 1000
SCRIPT = """
import { loadPyodide } from './python/pyodide.mjs';
import { readdirSync, readFileSync } from 'node:fs';
const python = await loadPyodide({ indexURL: './python/', packages: ['kitchenmath'] });
const [draws, examples, pure, students] = JSON.parse(readFileSync('asked.json', 'utf-8'));
python.runPython(draws);
const sums = {};
for (const name of readdirSync('notebooks').filter(each => !each.includes('lesson'))) {
  const notebook = readFileSync(`notebooks/${name}`, 'utf-8');
  sums[name] = python.globals.get('draws')(notebook, students);
}
const kit = new Uint8Array(readFileSync('student-edition.zip'));
python.unpackArchive(kit, 'zip', { extractDir: '/kit' });
python.FS.writeFile('/whole.zip', readFileSync('whole.zip'));
python.runPython(examples);
const [failed, tried] = python.globals.get('examples')(pure).toJs();
console.log('\\n' + JSON.stringify({ sums, failed, tried }));
"""


@pytest.fixture(scope="module")
def there(tmp_path_factory):
    """What the browser's Python says, and the edition that it came with."""
    folder = tmp_path_factory.mktemp("edition")
    write(edition(wheel_folder=Path(WHEELS), pictures={}), folder)
    (folder / "asked.json").write_text(json.dumps([DRAWS, EXAMPLES, PURE, STUDENTS]))
    (folder / "whole.zip").write_bytes(runtime()[0][STDLIB])
    (folder / "ask.mjs").write_text(SCRIPT)
    run = subprocess.run(["node", "ask.mjs"], cwd=folder, capture_output=True, text=True)
    assert run.returncode == 0, run.stdout[-2000:] + run.stderr[-2000:]
    return json.loads(run.stdout.splitlines()[-1]), folder


def test_a_thousand_students_have_the_same_numbers_natively_and_in_the_browser(there):
    """All sets: one sum of every number of every student, here and there."""
    said, folder = there
    names = {}
    exec(DRAWS, names)
    here = {
        file.name: names["draws"](file.read_bytes(), STUDENTS)
        for file in (folder / "notebooks").glob("*.ipynb")
        if "lesson" not in file.name
    }

    assert set(here) == {f"{set_id}.ipynb" for set_id in set_ids()}
    assert said["sums"] == here


def test_the_librarys_worked_examples_are_right_in_the_browsers_python(there):
    """The examples of its docstrings: the same ones that `test_docstrings` runs natively."""
    said, _ = there

    assert said["failed"] == 0
    assert said["tried"] > 200
