"""What no test notices: break lines at random, one at a time, and run the tests nearest to each.

    .venv/bin/python -m tests.measure.mutation kitchenmath/safety --lines 50 --seed 7
    .venv/bin/python -m tests.measure.mutation kitchenmath --lines 300 --left-out panels figures

Lines are broken in a throw-away copy of the kit, and put back. First the examples in the module's
docstrings run, then its own tests, then those of the folder that mirrors its package; for drills
those of the lessons that hold them. Browser tests are left out. A line that no test noticed is
printed as it was and as it was made. Some of these mean the same as before: a person looks. The
same seed breaks the same lines, and `--from 120` goes on where a run was stopped.

Each run is a fork of this process, which has everything loaded but the kit: it needs
Linux or macOS.
"""

import argparse
import doctest
import importlib
import os
import random
import shutil
import signal
import sys
import tempfile
import time
from pathlib import Path

import hypothesis  # noqa: F401 - what tests load anyway is loaded once, before the forks
import matplotlib.figure  # noqa: F401
import numpy  # noqa: F401
import pint  # noqa: F401
import pytest
import scipy.stats  # noqa: F401

from tests.helpers.breaking import changes

KIT = Path(__file__).parents[2]
PATIENCE = 5  # tests that take so many times as long as on the whole code have noticed, too
GRACE_S = 20
# Packages whose tests lie in another place than their own name says.
ELSEWHERE = {"kitchenmath/drills": ["tests/lessons"]}
NOT_RUN = "not browser and not slow"
OURS = ("kitchenmath", "coursework", "tests")


def main(words=None):
    """Print what no test noticed; the exit code is 0, for this is a measurement."""
    asked = _asked(words)
    drawn = draw(_files(asked.package, asked.left_out), asked.lines, asked.seed)
    print(f"{len(drawn)} lines of {' '.join(asked.package)}, seed {asked.seed}", flush=True)
    survived, known_s = 0, {}
    with tempfile.TemporaryDirectory(prefix="kitchen-broken-") as folder:
        kit = Path(shutil.copytree(KIT, Path(folder) / "kit", ignore=_not_copied))
        for done, change in enumerate(drawn[asked.begin :], asked.begin + 1):
            if not _noticed(kit, change, asked.tests or tests_of(change.file), known_s):
                survived += 1
                print(f"\n{done}, not noticed: {change.in_words(KIT)}", flush=True)
            _progress(done, len(drawn))
    tried = len(drawn) - asked.begin
    print(f"\nnoticed {tried - survived} of {tried}: {1 - survived / max(1, tried):.1%}")


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


def tests_of(file):
    """The tests nearest to a module, the nearest first, as words for pytest.

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
    named = [folder / f"test_{place.name}.py"]
    return [
        *[str(one) for one in named if (KIT / one).is_file()],
        *ELSEWHERE.get(place.parent.as_posix(), [str(folder)]),
    ]


def _asked(words):
    parser = argparse.ArgumentParser(prog="python -m tests.measure.mutation", description=__doc__)
    parser.add_argument("package", nargs="+", help="folders or modules: kitchenmath/safety")
    parser.add_argument("--lines", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--from", type=int, default=0, dest="begin", help="leave out so many")
    parser.add_argument("--left-out", nargs="+", default=(), help="names of folders to leave out")
    parser.add_argument("--tests", nargs="+", help="in place of the nearest tests")
    asked = parser.parse_args(words)
    if not _files(asked.package, asked.left_out):
        parser.error("no code of the kit is there; type such as kitchenmath/safety")
    return asked


def _files(places, left_out):
    wheres = [KIT / place.rstrip("/") for place in places]
    files = [file for one in wheres for file in ([one] if one.is_file() else one.rglob("*.py"))]
    return sorted(file for file in files if not set(left_out) & set(file.parts))


def _noticed(kit, change, tests, known_s):
    """Whether the tests fail on the copy with one change."""
    place = kit / change.file.relative_to(KIT)
    key = tests[-1]
    if key not in known_s:
        began = time.monotonic()
        if _fails(kit, place, tests, None):
            sys.exit(f"The tests fail before anything is broken: {place.name}, {' '.join(tests)}")
        known_s[key] = time.monotonic() - began
    whole, times = place.read_bytes(), place.stat()
    place.write_text(change.made(), encoding="utf-8")
    try:
        return _fails(kit, place, tests, PATIENCE * known_s[key] + GRACE_S)
    finally:
        place.write_bytes(whole)
        os.utime(place, ns=(times.st_atime_ns, times.st_mtime_ns))  # its bytecode holds again


def _fails(kit, place, tests, seconds):
    """Whether a fork of this process, at work in the copy, finds fault; too long is a fault."""
    child = os.fork()
    if child == 0:
        os.setsid()
        os._exit(_at_work(kit, place, tests))
    began = time.monotonic()
    while not (ended := os.waitpid(child, os.WNOHANG))[0]:
        if seconds and time.monotonic() - began > seconds:
            os.killpg(child, signal.SIGKILL)
            os.waitpid(child, 0)
            return True
        time.sleep(0.05)
    return ended[1] != 0


def _at_work(kit, place, tests):
    """The examples of one module, then pytest: 0 where all is well."""
    silent = os.open(os.devnull, os.O_WRONLY)
    for stream in (1, 2):
        os.dup2(silent, stream)
    try:
        os.chdir(kit)
        sys.path[:] = [str(kit), str(kit / "instructor"), *(p for p in sys.path if p != str(KIT))]
        for name in [name for name in sys.modules if name.split(".")[0] in OURS]:
            del sys.modules[name]
        if _examples_fail(place.relative_to(kit).with_suffix("").parts):
            return 1
        words = ["-q", "-x", "-p", "no:cacheprovider", "-p", "no:xdist", "-m", NOT_RUN]
        words += ["-W", "ignore:Module already imported", *tests]
        return int(pytest.main(words) not in (0, 5))  # 5: no test of that name
    except BaseException:  # a broken line may raise anything, when it is loaded
        return 1


def _examples_fail(parts):
    top = 1 if parts[0] == "instructor" else 0
    name = ".".join(part for part in parts[top:] if part != "__init__")
    kit = importlib.import_module("kitchenmath")
    helpers = {each: getattr(kit, each) for each in ("Q_", "read", "say")}
    return doctest.testmod(importlib.import_module(name), extraglobs=helpers).failed


def _progress(done, of):
    if sys.stderr.isatty():
        print(f"\r{done} of {of}", end="", file=sys.stderr, flush=True)


def _not_copied(folder, names):
    """What git ignores: hidden folders, real classes, pictures of a test run."""
    made = {KIT / "instructor": {"classes"}, KIT / "tests": {"screenshots"}}.get(Path(folder), ())
    return [name for name in names if name[0] == "." or name == "__pycache__" or name in made]


if __name__ == "__main__":
    main()
