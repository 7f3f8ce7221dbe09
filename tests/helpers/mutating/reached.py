"""Which tests reach a line, and how long each takes: recorded once, then looked up.

A map is a folder outside the tree: for each slice of the tests `lines`, in coverage's own
format with a test's name as context, and `seconds` of processor, one test a line.
"""

import os
import subprocess
import sys
from pathlib import Path

import coverage

KIT = Path(__file__).parents[3]
FAST = "not browser and not slow"
SLICES = {
    "kitchenmath": ["tests/kitchenmath"],
    "lessons": ["tests/lessons", "tests/keys"],
    "coursework": ["tests/coursework"],
}
UNKNOWN_S = 0.5  # a test that is younger than the map


def record(folder, slices):
    """Run slices of the tests, each in a process of its own, and keep what each test reaches.

    Parameters
    ----------
    folder : Path
    slices : list of str
        Keys of `SLICES`.
    """
    for name in slices:
        place = Path(folder) / name
        place.mkdir(parents=True, exist_ok=True)
        for old in place.iterdir():
            old.unlink()
        (place / "begun").touch()
        command = [sys.executable, "-m", "pytest", "-q", "-n", "0", "-p", "no:cacheprovider"]
        command += ["-p", "tests.helpers.mutating.recording", "-m", FAST, *SLICES[name]]
        subprocess.run(command, cwd=KIT, env=os.environ | {"KITCHEN_MAP": str(place)}, check=False)


def slices_for(packages):
    """The slices whose tests may reach these packages.

    Parameters
    ----------
    packages : list of str

    Returns
    -------
    list of str
    """
    library = any(name.startswith("kitchenmath") for name in packages)
    others = any(not name.startswith("kitchenmath") for name in packages)
    return ["kitchenmath", "lessons"] * library + ["coursework"] * others


def all_named(names, known):
    """The tests that a list means: a test by its name, every test of a file by the file's.

    Parameters
    ----------
    names : list of str
    known : iterable of str
        Every test that was collected.

    Returns
    -------
    list of str
    """
    of_file = {}
    for name in known:
        of_file.setdefault(name.split("::")[0], []).append(name)
    every = {name for names in of_file.values() for name in names}
    meant = [test for name in names for test in of_file.get(name, [name])]
    return [test for test in dict.fromkeys(meant) if test in every]


class Reached:
    """A recorded map.

    Parameters
    ----------
    folder : Path
        Where `record` wrote; slices that are not there are left out.
    """

    def __init__(self, folder):
        self.slices = [one for one in sorted(Path(folder).iterdir()) if (one / "seconds").is_file()]
        self.seconds = {}
        for one in self.slices:
            for line in (one / "seconds").read_text(encoding="utf-8").splitlines():
                seconds, name = line.split("\t", 1)
                self.seconds[name] = float(seconds)
        self.files = {name.split("::")[0] for name in self.seconds}
        self.made_at = min(((one / "begun").stat().st_mtime for one in self.slices), default=0)

    def is_older_than(self, file):
        """Whether a file was changed after the map was begun, or a file of tests is not in it."""
        name = file.relative_to(KIT).as_posix()
        unknown = name.startswith("tests/") and name not in self.files
        return unknown or file.stat().st_mtime > self.made_at

    def tests(self, file, lines):
        """Names of the tests that reach one of these lines, the cheapest first.

        Parameters
        ----------
        file : Path
        lines : iterable of int
            Counted from 1.

        Returns
        -------
        list of str
            With none for a line that runs at import only.
        """
        by_line = self._by_line(file)
        found = {name for line in lines for name in by_line.get(line, ())} - {""}
        return self.cheapest(found)

    def tests_of_module(self, file):
        """Names of the tests that reach any line of a module, those that reach most of it first."""
        counts = {}
        for names in self._by_line(file).values():
            for name in set(names) - {""}:
                counts[name] = counts.get(name, 0) + 1
        return sorted(counts, key=lambda name: (-counts[name], self.costs(name), name))

    def cheapest(self, names):
        """The same names, the cheapest first."""
        return sorted(names, key=lambda name: (self.costs(name), name))

    def costs(self, name):
        """Seconds of processor of one test."""
        return self.seconds.get(name, UNKNOWN_S)

    def _by_line(self, file):
        by_line = {}
        for one in self.slices:
            data = coverage.CoverageData(str(one / "lines"))
            data.read()
            for line, names in data.contexts_by_lineno(str(file)).items():
                by_line.setdefault(line, []).extend(names)
        return by_line
