"""A marker that is killed, doubled or stopped loses nothing, doubles nothing and leaves nothing."""

import json
import os
import random
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from coursework.arriving.take_in import take_in
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.errors import CourseError
from coursework.marking.mark_set import mark_set

from tests.helpers.filled_in import SET, class_copy
from tests.helpers.small_class import SMALL, correct_key, listed, outcome
from tests.helpers.this_machine import processes, wait_until

KIT = Path(__file__).parents[3]
INSTANTS, SEED = 50, 20261125

linux = pytest.mark.skipif(sys.platform != "linux", reason="copies of a process: Linux only")


def environment(**more):
    return os.environ | {"PYTHONPATH": f"{KIT}{os.pathsep}{KIT / 'instructor'}"} | more


class Markers:
    """Markers to kill; see `marker_to_kill.py`."""

    def __init__(self, temporary):
        self.temporary = temporary
        temporary.mkdir()
        self.process = subprocess.Popen(
            [sys.executable, str(KIT / "tests" / "helpers" / "marker_to_kill.py"), SET],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            env=environment(TMPDIR=str(temporary)),
        )

    def one(self, folder, death=0, wait_ms=0.0):
        """The signal that ended it, and its count."""
        self.process.stdin.write(f"{folder}\t{death}\t{wait_ms}\n")
        self.process.stdin.flush()
        return [int(word) for word in self.process.stdout.readline().split()]

    def nothing_left(self):
        """No process of theirs, and no folder of a room."""
        return not processes(f"HOME={self.temporary}/room-") and not list(self.temporary.iterdir())


@pytest.fixture
def markers(tmp_path):
    made = Markers(tmp_path / "temporary")
    yield made
    made.process.stdin.close()
    made.process.wait(60)
    made.process.stdout.close()


@linux
@pytest.mark.slow
def test_killed_at_fifty_instants_the_next_run_ends_as_an_undisturbed_one(
    small_class, markers, tmp_path
):
    """Instants drawn over the whole run: start, copy of the gradebook, batches, end.

    After each the class is marked once more: marks, mark sheet, records and marked copies are
    those of a run that nobody disturbed, the human marks among them; and nothing is left behind.
    """
    undisturbed = class_copy(small_class, tmp_path / "undisturbed")
    ended, steps = markers.one(undisturbed.folder)
    expected, chance = outcome(undisturbed), random.Random(SEED)
    reached = []
    for number in range(INSTANTS):
        course = class_copy(small_class, tmp_path / "class")
        # Each fiftieth of the run has its instant: right at a step, or some milliseconds later.
        death = 1 + (number * steps + chance.randrange(steps)) // INSTANTS
        killed, _ = markers.one(course.folder, death, chance.choice((0, chance.uniform(0, 5))))
        reached.append((killed, len(list(course.marks(SET, "").parent.glob("*.json")))))
        marked = mark_set(course, SET)

        assert expected == outcome(course), f"killed at step {death} of {steps}"
        assert list(SMALL) == marked.students
        shutil.rmtree(course.folder)
    wait_until(markers.nothing_left)
    by_hand = [row[1:3] + row[4:5] for row in expected["marks"] if row[4] is not None]

    assert 0 == ended
    assert [("BH-1001", "q6-answer", 2.5), ("BH-1002", "q1-check", 0.5)] == by_hand
    assert [] == expected["odd"]
    assert INSTANTS - 3 <= [killed for killed, _ in reached].count(signal.SIGKILL)
    assert {3, 4, 5, 6, 7} <= {records for _, records in reached}  # records that lay there


@linux
def test_killed_after_a_key_was_corrected_no_change_is_lost_or_listed_twice(
    small_class, markers, tmp_path
):
    """Marked with slips at 1.5 points, then by markers that are killed with the real key, at 1.

    Six instants of the run's last part, where records are written; the marking that goes on from
    there completes the list.
    """
    changed = class_copy(small_class, tmp_path / "changed")
    real = changed.key(SET).read_bytes()
    correct_key(changed)
    mark_set(changed, SET)
    changed.key(SET).write_bytes(real)
    undisturbed = class_copy(changed, tmp_path / "undisturbed")
    ended, steps = markers.one(undisturbed.folder)
    expected, lines = sorted(row[1:] for row in listed(undisturbed)), []
    for percent in (60, 67, 74, 81, 88, 95):
        course = class_copy(changed, tmp_path / "class")
        markers.one(course.folder, percent * steps // 100)
        lines.append(len(listed(course)))
        mark_set(course, SET)

        assert expected == sorted(row[1:] for row in listed(course)), f"killed at {percent} %"
        shutil.rmtree(course.folder)

    assert 0 == ended
    assert [] != [many for many in lines if 0 < many < len(expected)]  # died between two


def test_killed_within_a_transaction_the_gradebook_is_as_before(small_class, tmp_path):
    """SQLite's journal lies there, hot, and half the pages are changed; a next run undoes them."""
    undisturbed, course = (
        class_copy(small_class, tmp_path / "undisturbed"),
        class_copy(small_class, tmp_path / "class"),
    )
    code = (
        "import os, signal, sqlite3, sys\n"
        "book = sqlite3.connect(sys.argv[1])\n"
        "book.execute('PRAGMA cache_size = 1')\n"
        "book.execute('UPDATE grade SET auto_score = 77, manual_score = 77')\n"
        "book.execute('UPDATE comment SET auto_comment = hex(randomblob(40000))')\n"
        "os.kill(os.getpid(), signal.SIGKILL)\n"
    )
    subprocess.run([sys.executable, "-c", code, str(course.gradebook_file)])
    assert (course.folder / "gradebook.db-journal").stat().st_size > 4096
    for each in (undisturbed, course):
        mark_set(each, SET)

    assert outcome(undisturbed) == outcome(course)


def command(course, **more):
    """The real command, as a terminal starts it."""
    return subprocess.Popen(
        [sys.executable, str(KIT / "instructor"), "mark", SET, "--class", str(course.folder)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
        env=environment(**more),
    )


def slow_down(course):
    """Every hand-in takes two seconds longer, so that there is time to stop the marker."""
    for student in SMALL:
        file = course.submitted(SET, student)
        notebook = json.loads(file.read_bytes())
        answer = next(cell for cell in notebook["cells"] if cell["id"] == "q1-answer")
        answer["source"] = "import time\ntime.sleep(2)\n" + "".join(answer["source"])
        file.write_text(json.dumps(notebook), encoding="utf-8")


@linux
@pytest.mark.parametrize("sign", [signal.SIGINT, signal.SIGKILL], ids=["Ctrl-C", "killed"])
def test_the_command_stopped_leaves_no_process_and_lets_go_of_the_class(
    small_class, tmp_path, sign
):
    """Ctrl-C gets a sentence and the exit code 130; either way the same command goes on from there.

    A terminal sends Ctrl-C to the command and to all that it started.
    """
    temporary = tmp_path / "temporary"
    temporary.mkdir()
    course = class_copy(small_class, tmp_path / "class")
    slow_down(course)
    undisturbed = class_copy(course, tmp_path / "undisturbed")
    # Where these tests run in the background, Ctrl-C may be switched off for all they start.
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    with command(course, TMPDIR=str(temporary)) as marker:
        signal.signal(signal.SIGINT, before)
        wait_until(lambda: len(list(temporary.glob("room-*/*"))) >= 1)
        if sign == signal.SIGINT:
            os.killpg(marker.pid, sign)
        else:
            os.kill(marker.pid, sign)
        _, said = marker.communicate(timeout=120)
    wait_until(lambda: not processes(f"HOME={temporary}/room-") and not list(temporary.iterdir()))

    if sign == signal.SIGINT:
        assert 130 == marker.returncode
        assert "Stopped. Nothing is lost: the same command goes on from here." == said.strip()
    for each in (undisturbed, course):
        mark_set(each, SET)

    assert outcome(undisturbed) == outcome(course)


def test_two_markers_at_once_the_second_says_so_and_stops(small_class, tmp_path):
    """The first one holds the class; the real command gets one sentence, and nothing changes."""
    course = class_copy(small_class, tmp_path / "class")
    with one_at_a_time(course, "marking"), command(course) as second:
        _, said = second.communicate(timeout=120)

    assert 1 == second.returncode
    assert said.startswith("another window is at work in this class: marking since ")
    assert said.endswith(". Wait until it ends, then try again.\n")
    assert 1 == len(said.splitlines())
    assert not list((course.folder / "marks" / SET).glob("BH-1021*"))


def test_nothing_is_taken_in_while_the_class_is_marked(small_class, tmp_path):
    """The same sentence; the folder of arrivals stays as it was."""
    course = class_copy(small_class, tmp_path / "class")
    (tmp_path / "post").mkdir()
    shutil.copy(course.submitted(SET, "BH-1007"), tmp_path / "post" / "mine.ipynb")
    with one_at_a_time(course, "marking"), pytest.raises(CourseError, match="marking since"):
        take_in(course, [tmp_path / "post"])

    assert not course.arrived.exists()
