"""Changes tried with everything loaded: tests are collected once, each change goes into a fork."""

import gc
import os

import pytest

from tests.helpers.mutating.forks import CUT, PASSED, Clock, be_patient, forked
from tests.helpers.mutating.reached import FAST, KIT, all_named
from tests.helpers.mutating.replaced import Functions
from tests.helpers.mutating.tried_anew import EXAMPLES, WORDS, examples_fail, go_to

WORKERS = 2


def with_all_loaded(kit, tries, costs, most_s, tell):
    """Try changes of lines that run when functions do.

    Parameters
    ----------
    kit : Path
        A copy of the kit.
    tries : list of Try
    costs : callable
        Seconds of processor of a test, by its name.
    most_s : float
        Seconds of processor that one change may cost.
    tell : callable
        Takes a try and how it ended; is called in another process.
    """
    files = sorted({name.split("::")[0] for one in tries for name in one.tests})

    def work(_):
        go_to(kit)
        return int(pytest.main([*WORDS, "-m", FAST, *files], plugins=[
            Loaded(kit, tries, costs, most_s, tell)
        ]))  # fmt: skip

    forked(work, hangs_s=0)


class Loaded:
    """A part of pytest that tries changes in place of running what was collected."""

    def __init__(self, kit, tries, costs, most_s, tell):
        self.kit, self.tries, self.costs = kit, tries, costs
        self.most_s, self.tell = most_s, tell
        self.sound, self.unsound = {"", EXAMPLES}, set()

    def pytest_runtestloop(self, session):
        """Forks share the changes."""
        session.config._tmp_path_factory.getbasetemp()  # one for all forks
        self.session, self.functions = session, Functions()
        gc.freeze()  # forks share the memory of what is loaded as long as nobody looks it through
        gc.disable()
        self.items = {item.nodeid: item for item in session.items}
        workers = [os.fork() or self._share(first) for first in range(WORKERS)]
        for worker in workers:
            os.waitpid(worker, 0)
        return True

    def _share(self, first):
        for one in self.tries[first::WORKERS]:
            ended = self._ended(one.change, one.tests)
            while ended.noticed and not self._is_sound(ended.test):
                ended = self._ended(one.change, one.tests)
            self.tell(one, ended)
        os._exit(0)

    def _is_sound(self, name):
        """Whether a test that failed passes on the whole code."""
        if name not in self.sound | self.unsound:
            fails = self._ended(None, [name]).noticed
            (self.unsound if fails else self.sound).add(name)
        return name in self.sound

    def _ended(self, change, tests):
        names = [name for name in all_named(tests, self.items) if name not in self.unsound]

        def work(tell):
            if change:
                place = self.kit / change.file.relative_to(KIT)
                self.functions.replace(place, change.whole(), change.made())
                if examples_fail(change):
                    tell(EXAMPLES)
                    return 1
            return self._run([self.items[name] for name in names], tell)

        return forked(work)

    def _run(self, items, tell):
        clock = Clock(self.most_s)
        for item, after in zip(items, [*items[1:], None], strict=True):
            be_patient(self.costs(item.nodeid))
            self.session.config.hook.pytest_runtest_protocol(item=item, nextitem=after)
            if self.session.testsfailed:
                tell(item.nodeid)
                return 1
            if clock.run_out and after:
                return CUT
        return PASSED
