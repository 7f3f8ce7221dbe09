"""What no test notices: break lines at random, one at a time, and run the tests that reach each.

    .venv/bin/python -m tests.measure.mutation kitchenmath/safety --lines 50 --seed 7 --map /tmp/map

`--map` is a folder outside the tree. Where it is empty, the fast tests run first and it keeps which
lines each reaches and its seconds; `--map-anew` does so again. Tests of browsers and slow tests are
left out. A line that is broken in a throw-away copy gets the examples of its module, the tests
that reach it, the cheapest first, then those of the module's own test file or folder: up to
`--seconds` of processor, and where these were not enough, it is said. A line that runs at import
gets the tests that reach most of its module instead.

First come the lines that run when functions do, with all tests loaded; then the others, and those
that no test noticed, with the kit loaded anew (`--once` leaves out this second look). A line that
no test noticed is printed as it was and as it was made. Some of these mean the same as before:
a person looks. The same seed breaks the same lines, and `--from 120` goes on where a run was
stopped.

Each run is a fork of this process, which has everything loaded but the kit: it needs Linux or
macOS.
"""

import argparse
import os
import random
import shutil
import tempfile
from pathlib import Path

import hypothesis  # noqa: F401 - what tests load anyway is loaded once, before the forks
import matplotlib.figure  # noqa: F401
import numpy  # noqa: F401
import pint  # noqa: F401
import scipy.stats  # noqa: F401

from tests.helpers.mutating.breaking import changes
from tests.helpers.mutating.choosing import chosen
from tests.helpers.mutating.forks import Try
from tests.helpers.mutating.reached import KIT, Reached, record, slices_for
from tests.helpers.mutating.replaced import at_work
from tests.helpers.mutating.tried_anew import with_the_kit_anew
from tests.helpers.mutating.tried_loaded import with_all_loaded


def main(words=None):
    """Print what no test noticed; the exit code is 0, for this is a measurement."""
    asked = _asked(words)
    _record(asked)
    reached = Reached(asked.map)
    drawn = draw(_files(asked.package, asked.left_out), asked.lines, asked.seed)[asked.begin :]
    print(f"{len(drawn)} lines of {' '.join(asked.package)}, seed {asked.seed}", flush=True)
    tries = [
        Try(number, change, chosen(change, reached), at_work(change.whole(), change.made()))
        for number, change in enumerate(drawn, asked.begin + 1)
    ]
    with tempfile.TemporaryDirectory(prefix="kitchen-broken-") as folder:
        kit = Path(shutil.copytree(KIT, Path(folder) / "kit", ignore=_not_copied))
        left = _look_once(kit, tries, reached.costs, asked.seconds, Path(folder) / "ends")
        done = [one for one in left if asked.once and one.at_work]
        again = [one for one in left if one not in done]
        left = done + _look_again(kit, again, reached.costs, asked.seconds)
    noticed = len(tries) - len(left)
    print(f"\nnoticed {noticed} of {len(tries)}: {noticed / max(1, len(tries)):.1%}")


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
    parser.add_argument("package", nargs="+", help="folders or modules: kitchenmath/safety")
    parser.add_argument("--lines", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--from", type=int, default=0, dest="begin", help="leave out so many")
    parser.add_argument("--left-out", nargs="+", default=(), help="names of folders to leave out")
    parser.add_argument("--map", type=Path, required=True, help="a folder outside the tree")
    parser.add_argument("--map-anew", action="store_true", help="run the tests for it again")
    parser.add_argument("--seconds", type=float, default=40, help="of processor, for one line")
    parser.add_argument("--once", action="store_true", help="no second look at what survived")
    asked = parser.parse_args(words)
    if not _files(asked.package, asked.left_out):
        parser.error("no code of the kit is there; type such as kitchenmath/safety")
    if asked.map.resolve().is_relative_to(KIT):
        parser.error(f"--map {asked.map} lies in the kit; type a folder outside of it")
    return asked


def _record(asked):
    wanted = slices_for(asked.package)
    missing = [
        one for one in wanted if asked.map_anew or not (asked.map / one / "seconds").is_file()
    ]
    if missing:
        print(f"Running the tests once to see which lines each reaches: {', '.join(missing)}")
        record(asked.map, missing)


def _files(places, left_out):
    wheres = [KIT / place.rstrip("/") for place in places]
    files = [file for one in wheres for file in ([one] if one.is_file() else one.rglob("*.py"))]
    return sorted(file for file in files if not set(left_out) & set(file.parts))


def _look_once(kit, tries, costs, most_s, ends):
    """Tries that need another look: nobody noticed, or the line runs at import."""
    quick = [one for one in tries if one.at_work]

    def tell(one, ended):
        _say(one, ended, out)
        if ended.noticed:
            with ends.open("a", encoding="utf-8") as told:
                told.write(f"{one.number}\n")

    ends.touch()
    out = os.fdopen(os.dup(1), "w")  # the forks are silent
    with_all_loaded(kit, quick, costs, most_s, tell)
    noticed = {int(number) for number in ends.read_text(encoding="utf-8").split()}
    return [one for one in tries if one.number not in noticed]


def _look_again(kit, tries, costs, most_s):
    left = []
    print(f"\nWith the kit loaded anew: {len(tries)}", flush=True)
    for one in tries:
        ended = with_the_kit_anew(kit, one, costs, most_s)
        _say(one, ended)
        if not ended.noticed:
            left.append(one)
    return left


def _say(one, ended, out=None):
    if ended.noticed:
        print(".", end="", file=out, flush=True)
    else:
        why = ", and the seconds were not enough for all tests" if ended.cut else ""
        print(f"\n{one.number}, not noticed{why}: {one.change.in_words(KIT)}", file=out, flush=True)


def _not_copied(folder, names):
    """What git ignores but bytecode: hidden folders, real classes, pictures of a test run."""
    made = {KIT / "instructor": {"classes"}, KIT / "tests": {"screenshots"}}.get(Path(folder), ())
    return [name for name in names if name[0] == "." or name in made]


if __name__ == "__main__":
    main()
