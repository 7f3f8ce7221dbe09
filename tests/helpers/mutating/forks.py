"""Tests run in a fork of this process with one line broken, and how that ended."""

import contextlib
import os
import signal
import time
from dataclasses import dataclass

PATIENCE, GRACE_S = 5, 20  # a test that takes so many times its seconds, and these, has noticed
HANGS_S = 900
PASSED, CUT = 0, 3


@dataclass(frozen=True)
class Try:
    """A change and the tests to run on it, in their order.

    Attributes
    ----------
    number : int
    change : Change
    tests : list of str
        Names of tests, and of files of tests.
    at_work : bool
        Whether the line runs when functions do, not when the module is imported.
    """

    number: int
    change: object
    tests: list
    at_work: bool


@dataclass(frozen=True)
class Ended:
    """How a fork ended.

    Attributes
    ----------
    noticed : bool
        A test failed, took far too long, or the code could not be loaded.
    cut : bool
        Not noticed, and the seconds were gone before every test had run.
    test : str
        The name of the test that failed; "" for an example in a docstring and for no test.
    """

    noticed: bool
    cut: bool = False
    test: str = ""


def forked(work, hangs_s=HANGS_S):
    """Run something in a fork.

    Parameters
    ----------
    work : callable
        Takes a function to tell the name of a failed test; returns `PASSED`, `CUT` or another
        exit code.
    hangs_s : float, optional
        After so long it is ended, and counts as noticed; 0 waits for as long as it takes.

    Returns
    -------
    Ended
    """
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.setsid()
        signal.setitimer(signal.ITIMER_REAL, hangs_s)
        os._exit(_exit_code(work, lambda name: os.write(writing, name.encode())))
    os.close(writing)
    status = os.waitpid(child, 0)[1]
    _end_group(child)
    with open(reading, encoding="utf-8") as told:
        name = told.read()
    code = os.waitstatus_to_exitcode(status)
    return Ended(noticed=code not in (PASSED, CUT), cut=code == CUT, test=name)


def be_patient(seconds):
    """End this process by a signal if one test takes far longer than it is known to take."""
    signal.setitimer(signal.ITIMER_PROF, PATIENCE * seconds + GRACE_S)


class Clock:
    """Seconds of processor that one change may cost."""

    def __init__(self, seconds):
        self.until = time.process_time() + seconds

    @property
    def run_out(self):
        return time.process_time() > self.until


def _exit_code(work, tell):
    silent = os.open(os.devnull, os.O_WRONLY)
    for stream in (1, 2):
        os.dup2(silent, stream)
    try:
        return work(tell)
    except BaseException:  # a broken line may raise anything, when it is loaded
        return 1


def _end_group(child):
    """End what tests of a fork may have left behind."""
    with contextlib.suppress(ProcessLookupError):
        os.killpg(child, signal.SIGKILL)
