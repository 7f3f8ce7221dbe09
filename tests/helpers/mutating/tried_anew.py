"""A change tried by importing the kit with it, for lines that run at import."""

import doctest
import importlib
import os
import sys

import pytest

from tests.helpers.mutating.forks import CUT, Clock, be_patient, forked
from tests.helpers.mutating.reached import FAST, KIT, all_named

WORDS = ["-q", "-p", "no:cacheprovider", "-p", "no:xdist"]
WORDS += ["-W", "ignore:Module already imported"]
EXAMPLES = "the examples of its module"
OURS = ("kitchenmath", "coursework", "tests")


def with_the_kit_anew(kit, one, costs, most_s):
    """Try a change in a fork of a process that never had the kit.

    A test that fails on the whole code, too, is left out.

    Parameters
    ----------
    kit : Path
        A copy of the kit; the line is broken there, and put back.
    one : Try
    costs : callable
        Seconds of processor of a test, by its name.
    most_s : float
        Seconds of processor that the tests may cost.

    Returns
    -------
    Ended

    Raises
    ------
    RuntimeError
        When pytest cannot collect the tests, whole as the code is.
    """
    unsound = set()
    while True:
        ended = _broken(kit, one.change, Only(one.tests, costs, most_s, unsound))
        if not ended.noticed or _is_sound(kit, one, ended.test, costs):
            return ended
        if not ended.test:
            raise RuntimeError(f"cannot be collected on the whole code: {', '.join(one.tests)}")
        unsound.add(ended.test)


class Only:
    """A part of pytest that runs the tests named, in their order, until the seconds are gone."""

    def __init__(self, tests, costs, most_s, unsound=()):
        self.tests, self.costs, self.most_s = tests, costs, most_s
        self.unsound = unsound
        self.failed, self.cut = "", False

    @property
    def files(self):
        return list(dict.fromkeys(name.split("::")[0] for name in self.tests))

    def pytest_collection_modifyitems(self, items):
        """Those named, in their order."""
        by_name = {item.nodeid: item for item in items}
        meant = all_named(self.tests, by_name)
        items[:] = [by_name[name] for name in meant if name not in self.unsound]
        self.clock = Clock(self.most_s)

    def pytest_runtest_logstart(self, nodeid):
        be_patient(self.costs(nodeid))

    def pytest_runtest_logreport(self, report):
        if report.failed and not self.failed:
            self.failed = report.nodeid

    def pytest_runtest_logfinish(self):
        self.cut = self.clock.run_out

    def pytest_runtest_protocol(self, item):
        """Leave out what comes after the seconds are gone."""
        return True if self.cut else None


def go_to(kit):
    """Let this process import a copy of the kit in place of the kit."""
    os.chdir(kit)
    sys.path[:] = [str(kit), str(kit / "instructor"), *(p for p in sys.path if p != str(KIT))]
    for name in [name for name in sys.modules if name.split(".")[0] in OURS]:
        del sys.modules[name]


def examples_fail(change):
    """How many examples of a change's module fail."""
    parts = change.file.relative_to(KIT).with_suffix("").parts
    top = 1 if parts[0] == "instructor" else 0
    name = ".".join(part for part in parts[top:] if part != "__init__")
    kit = importlib.import_module("kitchenmath")
    helpers = {each: getattr(kit, each) for each in ("Q_", "read", "say")}
    return doctest.testmod(importlib.import_module(name), extraglobs=helpers).failed


def _broken(kit, change, only):
    place = kit / change.file.relative_to(KIT)
    whole, times = place.read_bytes(), place.stat()
    place.write_text(change.made(), encoding="utf-8")
    try:
        return _run(kit, change, only)
    finally:
        place.write_bytes(whole)
        os.utime(place, ns=(times.st_atime_ns, times.st_mtime_ns))  # its bytecode holds again


def _is_sound(kit, one, failed, costs):
    """Whether the test that failed passes on the whole code, or all can be collected there."""
    if failed == EXAMPLES:
        return True
    only = Only([failed] if failed else one.tests, costs, most_s=600)
    return not _run(kit, None, only, *([] if failed else ["--collect-only"])).noticed


def _run(kit, change, only, *words):
    def work(tell):
        go_to(kit)
        if change and examples_fail(change):
            tell(EXAMPLES)
            return 1
        code = int(pytest.main([*WORDS, "-x", "-m", FAST, *words, *only.files], plugins=[only]))
        tell(only.failed)
        return CUT if only.cut and code == 0 else int(code not in (0, 5))

    return forked(work)
