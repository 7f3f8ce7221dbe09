"""What no test notices: break lines at random, one at a time, and run the package's tests.

    .venv/bin/python -m tests.measure.mutation kitchenmath/safety --lines 50 --seed 7

Each broken line lies in a throw-away copy of the kit. The tests are those of the folder that
mirrors the package, and the examples in its docstrings; name others with `--tests`. A line that no
test noticed is printed as it was and as it was made. Some of these mean the same as before: a
person looks. The same seed breaks the same lines.
"""

import argparse
import os
import random
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.helpers.breaking import changes

KIT = Path(__file__).parents[2]
PATIENCE = 5  # tests that take so many times as long as on the whole code have noticed, too
GRACE_S = 20


def main(words=None):
    """Print what no test noticed; the exit code is 0, for this is a measurement."""
    asked = _asked(words)
    files = _files(KIT / asked.package)
    drawn = draw(files, asked.lines, asked.seed)
    tests = asked.tests or _tests_of(asked.package)
    print(f"{len(drawn)} lines of {asked.package}, seed {asked.seed}; tests: {' '.join(tests)}")
    noticed, seconds = _noticed(None, tests, files, None)
    if noticed:
        sys.exit("The tests fail before anything is broken: mend that first.")
    survived = []
    for done, change in enumerate(drawn, 1):
        found, _ = _noticed(change, tests, files, PATIENCE * seconds + GRACE_S)
        if not found:
            survived.append(change)
            print(f"\nnot noticed: {change.in_words(KIT)}", flush=True)
        if sys.stderr.isatty():
            print(f"\r{done} of {len(drawn)}", end="", file=sys.stderr, flush=True)
    killed = len(drawn) - len(survived)
    print(f"\nnoticed {killed} of {len(drawn)}: {killed / max(1, len(drawn)):.0%}")


def draw(files, lines, seed):
    """Changes to make, at most one a line, the same for the same seed.

    Parameters
    ----------
    files : list of Path
    lines, seed : int

    Returns
    -------
    list of Change
    """
    dice = random.Random(seed)
    by_line = {}
    for file in files:
        for change in changes(file):
            by_line.setdefault((file, change.line), []).append(change)
    places = dice.sample(sorted(by_line), min(lines, len(by_line)))
    return [dice.choice(by_line[place]) for place in places]


def _asked(words):
    parser = argparse.ArgumentParser(prog="python -m tests.measure.mutation", description=__doc__)
    parser.add_argument("package", help="a folder or a module, such as kitchenmath/safety")
    parser.add_argument("--lines", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--tests", nargs="+", help="in place of the tests of the same folder")
    asked = parser.parse_args(words)
    asked.package = asked.package.rstrip("/")
    if not _files(KIT / asked.package):
        parser.error(f"{asked.package} holds no code of the kit; type such as kitchenmath/safety")
    return asked


def _files(where):
    return sorted(where.rglob("*.py")) if where.is_dir() else [where] * where.is_file()


def _tests_of(package):
    """The nearest folder of tests that mirrors a package: tests/kitchenmath/safety, or above."""
    place = Path(package).with_suffix("")
    parts = place.parts[1:] if place.parts[0] == "instructor" else place.parts
    for length in range(len(parts), 0, -1):
        folder = Path("tests", *parts[:length])
        if (KIT / folder).is_dir() and list((KIT / folder).rglob("test_*.py")):
            return [str(folder)]
    return ["tests"]


def _noticed(change, tests, files, seconds):
    """Whether a run of the tests fails on a copy with one change, and how long it took."""
    began = time.monotonic()
    with tempfile.TemporaryDirectory(prefix="kitchen-broken-") as folder:
        kit = Path(folder) / "kit"
        shutil.copytree(KIT, kit, ignore=_not_copied)
        if change:
            place = kit / change.file.relative_to(KIT)
            place.write_text(change.made(), encoding="utf-8")
        names = _names([change.file] if change else files)
        examples = ["tests/house/test_docstrings.py", "-k", names]
        runs = [tests, examples] if names else [tests]
        found = any(_fails(kit, what, seconds) for what in runs)
    return found, time.monotonic() - began


def _fails(kit, what, seconds):
    try:
        run = subprocess.run(
            [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *what],
            cwd=kit,
            env=os.environ | {"PYTHONDONTWRITEBYTECODE": "1"},
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            timeout=seconds,
        )
    except subprocess.TimeoutExpired:
        return True
    return run.returncode not in (0, 5)  # 5: no test of that name


def _not_copied(folder, names):
    """What git ignores: hidden folders, real classes, pictures of a test run."""
    made = {KIT / "instructor": {"classes"}, KIT / "tests": {"screenshots"}}.get(Path(folder), ())
    return [name for name in names if name[0] == "." or name == "__pycache__" or name in made]


def _names(files):
    """The docstring tests of modules, as pytest's -k picks them: by their dotted names."""
    with_examples = [file for file in files if ">>>" in file.read_text(encoding="utf-8")]
    places = [file.relative_to(KIT).with_suffix("") for file in with_examples]
    dotted = [".".join(place.parts) for place in places if place.parts[0] == "kitchenmath"]
    return " or ".join(f"test_examples_run and {name}" for name in dotted)


if __name__ == "__main__":
    main()
