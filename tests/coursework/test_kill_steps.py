"""Killed while taking in, handing back, reporting or counting the term, and done again.

Marking is killed in `marking/test_kill.py`, at fifty instants. Here each step is a copy of this
process that dies by SIGKILL at one of twelve of its own steps: what it asks of the system (files
opened and renamed, folders, the database) is counted.
"""

import os
import random
import shutil
import signal
import sys
import zipfile

import pytest
from coursework.arriving.take_in import take_in
from coursework.gradebook.points import all_marks
from coursework.marking.mark_set import mark_set
from coursework.reports.hand_back import hand_back
from coursework.reports.report import report
from coursework.reports.term_marks import term_marks

from tests.helpers.filled_in import SET, class_copy
from tests.helpers.folders import EVENING, put

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs a system that can fork")

KILLS, SEED = 12, 20261129
ASKED = ("open", "os.", "sqlite3.", "shutil.", "tempfile.")


@pytest.fixture(scope="module")
def marked(small_class, tmp_path_factory):
    """Seven hand-ins, all marked; the first one lies in a folder, to be taken in again, changed."""
    course = class_copy(small_class, tmp_path_factory.mktemp("marked") / "class")
    mark_set(course, SET)
    raw = course.submitted(SET, "BH-1001").read_bytes()
    files = {"Ada Quill/a.ipynb": raw, "Ada Quill/b.ipynb": raw + b"\n", "c.txt": b"celeriac"}
    return course, put(course.folder.parent / "post", files)


STEPS = {
    "taking in": lambda course, post: take_in(course, post, now=EVENING + 10_000),
    "handing back": lambda course, post: hand_back(course, SET),
    "reporting": lambda course, post: report(course, SET),
    "term marks": lambda course, post: term_marks(course, now=EVENING),
}


def copy_of_this_process(step, death):
    """Do a step in a copy of this process; the signal that ended it, and how far it counted."""
    told, tell = os.pipe()
    pid = os.fork()
    if pid == 0:
        counted = 0

        def count(event, _):
            nonlocal counted
            counted += event.startswith(ASKED)
            if death and counted == death:
                os.kill(os.getpid(), signal.SIGKILL)

        try:
            sys.addaudithook(count)
            step()
            os.write(tell, str(counted).encode())
        finally:
            os._exit(0)
    os.close(tell)
    with os.fdopen(told) as reading:
        said = reading.read()
    status = os.waitpid(pid, 0)[1]
    return os.WTERMSIG(status) if os.WIFSIGNALED(status) else 0, int(said or 0)


def left(course):
    """Marks, and every file that a person or the next step reads."""
    files = {
        file.relative_to(course.folder).as_posix(): without_its_date(file)
        for place in ("arrived", "submitted", "marks", "autograded", "feedback", "reports")
        for file in sorted((course.folder / place).rglob("*"))
        if file.is_file()
    }
    return sorted(all_marks(course), key=str), files


def without_its_date(file):
    """A file's bytes; of a workbook its parts, without the one that says when it was written."""
    if file.suffix != ".xlsx":
        return file.read_bytes()
    with zipfile.ZipFile(file) as book:
        return {name: book.read(name) for name in book.namelist() if name != "docProps/core.xml"}


@pytest.mark.slow
@pytest.mark.filterwarnings("ignore:.*fork.*:DeprecationWarning")
@pytest.mark.parametrize("name", STEPS)
def test_killed_at_twelve_instants_and_done_again_all_is_as_undisturbed(marked, tmp_path, name):
    """Nothing more, nothing less, and no half file: byte for byte."""
    given, post = marked
    undisturbed = class_copy(given, tmp_path / "class")
    STEPS[name](undisturbed, post)  # here: it loads what the copies then need not load
    expected, chance, killed = left(undisturbed), random.Random(SEED), []
    shutil.rmtree(undisturbed.folder)
    counted = class_copy(given, tmp_path / "class")
    _, steps = copy_of_this_process(lambda: STEPS[name](counted, post), 0)
    shutil.rmtree(counted.folder)
    for number in range(KILLS):
        course = class_copy(given, tmp_path / "class")  # in the same place: paths stand in pages
        death = 1 + (number * steps + chance.randrange(steps)) // KILLS
        killed += [copy_of_this_process(lambda: STEPS[name](course, post), death)[0]]  # noqa: B023
        STEPS[name](course, post)

        found = left(course)
        where = f"killed at step {death} of {steps}"
        assert expected[0] == found[0], where
        assert sorted(expected[1]) == sorted(found[1]), where
        assert expected[1] == found[1], where
        shutil.rmtree(course.folder)

    assert steps > KILLS
    assert [signal.SIGKILL] * KILLS == killed
