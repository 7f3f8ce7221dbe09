"""Run every test, and every lesson against its stored results: python3 tests

Further words go on to pytest. Paths among them take the place of "every", for example:
python3 tests tests/kitchenmath/brine -n 0
"""

import glob
import os
import runpy
import sys

KIT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
start = runpy.run_path(os.path.join(KIT, "kitchenmath", "start.py"))


class LeftOut:
    """Say at the end which tests found no Chromium, so that nobody takes them for passed."""

    def __init__(self):
        self.tests = []

    def pytest_runtest_logreport(self, report):
        if report.skipped and "Chromium" in str(report.longrepr):
            self.tests.append(report.nodeid)

    def pytest_terminal_summary(self, terminalreporter):
        if self.tests:
            terminalreporter.section("left out, for no Chromium was found")
            for test in self.tests:
                terminalreporter.line(test)
            terminalreporter.line(
                "To run these too: on Debian, apt install chromium. Elsewhere, install Chromium "
                "or Chrome. KITCHEN_CHROMIUM may name the program, with its folder."
            )


def named(words):
    """Return the place in ``words`` of each path: a file, a folder, or a test in a file."""
    return [
        place
        for place, word in enumerate(words)
        if words[place - 1 : place] not in (["-k"], ["-m"]) and os.path.exists(word.split("::")[0])
    ]


def everything():
    """Return the folder of tests and each notebook that has stored results."""
    lessons = glob.glob(os.path.join(KIT, "lessons", "*.ipynb"))
    return [os.path.join(KIT, "tests"), *sorted(lessons)]


def main(words):
    """Run pytest with ``words`` on everything, or on the paths among them."""
    start["ready"]("tests")
    start["reach"](os.path.join(KIT, "instructor"))

    import pytest

    for place in named(words):
        words[place] = os.path.abspath(words[place])
    what = [] if named(words) else everything()
    os.chdir(KIT)
    options = ["-c", "pyproject.toml", "--rootdir=.", "--nbval", "--nbval-current-env"]
    # Notebooks among the tests are material for them, and may be broken on purpose.
    options += ["--ignore-glob=" + os.path.join(KIT, "tests", "*.ipynb")]
    # A file stays in one process: a notebook's cells, or a module's fixtures, belong together.
    options += ["-n", "2", "--dist=loadfile"]
    return pytest.main(options + words + what, plugins=[LeftOut()])


sys.exit(main(sys.argv[1:]))
