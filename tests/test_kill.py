"""A marker that is killed, doubled or stopped loses nothing, doubles nothing and leaves nothing."""

import json
import os
import random
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from coursework.arriving.take_in import take_in
from coursework.classes.course import CourseError, open_course
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.demo import SET, play
from coursework.gradebook.kept_copy import copy_gradebook
from coursework.gradebook.points import all_marks, enter_human
from coursework.marking import mark_set as module
from coursework.marking.mark_set import Change, mark_set
from coursework.reports.sheet import mark_sheet, sheet_as_csv
from coursework.reports.standing import usable_records

KIT = Path(__file__).parents[1]
INSTANTS, SEED = 50, 20261125
SMALL = ("BH-1001", "BH-1002", "BH-1003", "BH-1005", "BH-1007", "BH-1011", "BH-1021")

linux = pytest.mark.skipif(sys.platform != "linux", reason="copies of a process: Linux only")


@pytest.fixture(scope="module")
def small(tmp_path_factory):
    """Seven hand-ins; three were marked before, two of them have a human mark, one is new since."""
    course, places = play(tmp_path_factory.mktemp("small") / "class")
    take_in(course, places)
    shutil.rmtree(course.folder / "post")
    shutil.rmtree(course.arrived)
    aside = course.folder.parent / "aside"
    for folder in list((course.folder / "submitted").iterdir()):
        if folder.name not in SMALL[:3]:
            shutil.move(folder, aside / folder.name)
    mark_set(course, SET)
    enter_human(course, SET, SMALL[0], "q6", 2.5, "Well reasoned.")
    enter_human(course, SET, SMALL[1], "q1", 0.5)
    for student in SMALL[3:]:
        shutil.move(aside / student, course.folder / "submitted" / student)
    again = course.submitted(SET, SMALL[0])
    again.write_bytes(again.read_bytes().replace(b"q1 = ", b"q1 =  "))
    return course


def copied(course, folder):
    """A copy of the class, free to be changed."""
    shutil.copytree(course.folder, folder)
    return open_course(folder)


def outcome(course):
    """All that a marking leaves and that counts: marks, sheet, records, our marked copies."""
    records, odd = usable_records(course, SET)
    sheet = sheet_as_csv(mark_sheet(course, SET, records, {}))
    copies = {
        str(file.relative_to(course.folder)): file.read_bytes()
        for place in ("marks", "autograded")
        for file in sorted((course.folder / place).rglob("*"))
        if file.is_file()
    }
    return {"marks": sorted(all_marks(course)), "sheet": sheet, "files": copies, "odd": odd}


def environment(**more):
    return os.environ | {"PYTHONPATH": f"{KIT}{os.pathsep}{KIT / 'instructor'}"} | more


def processes_with(word):
    """Numbers of the processes in whose command the word stands."""
    found = []
    for file in Path("/proc").glob("[0-9]*/cmdline"):
        try:
            found += [file.parent.name] if word.encode() in file.read_bytes() else []
        except OSError:
            continue  # it ended meanwhile
    return found


def wait_for(come, seconds=120):
    end = time.monotonic() + seconds
    while not come() and time.monotonic() < end:
        time.sleep(0.05)
    assert come(), "what was waited for did not come"


class Markers:
    """Markers to kill; see `marker_to_kill.py`."""

    def __init__(self, temporary):
        self.temporary = temporary
        temporary.mkdir()
        self.process = subprocess.Popen(
            [sys.executable, str(KIT / "tests" / "marker_to_kill.py"), SET],
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
        return not processes_with(str(self.temporary / "room-")) and not list(
            self.temporary.iterdir()
        )


@pytest.fixture
def markers(tmp_path):
    made = Markers(tmp_path / "temporary")
    yield made
    made.process.stdin.close()
    made.process.wait(60)
    made.process.stdout.close()


@linux
@pytest.mark.slow
def test_killed_at_fifty_instants_the_next_run_ends_as_an_undisturbed_one(small, markers, tmp_path):
    """Instants drawn over the whole run: start, copy of the gradebook, batches, end.

    After each the class is marked once more: marks, mark sheet, records and marked copies are
    those of a run that nobody disturbed, the human marks among them; and nothing is left behind.
    """
    undisturbed = copied(small, tmp_path / "undisturbed")
    ended, steps = markers.one(undisturbed.folder)
    expected, chance = outcome(undisturbed), random.Random(SEED)
    reached = []
    for number in range(INSTANTS):
        course = copied(small, tmp_path / "class")
        # Each fiftieth of the run has its instant: right at a step, or some milliseconds later.
        death = 1 + (number * steps + chance.randrange(steps)) // INSTANTS
        killed, _ = markers.one(course.folder, death, chance.choice((0, chance.uniform(0, 5))))
        reached.append((killed, len(list(course.marks(SET, "").parent.glob("*.json")))))
        marked = mark_set(course, SET)

        assert expected == outcome(course), f"killed at step {death} of {steps}"
        assert list(SMALL) == marked.students
        shutil.rmtree(course.folder)
    wait_for(markers.nothing_left)
    by_hand = [row[1:3] + row[4:5] for row in expected["marks"] if row[4] is not None]

    assert 0 == ended
    assert [("BH-1001", "q6-answer", 2.5), ("BH-1002", "q1-check", 0.5)] == by_hand
    assert [] == expected["odd"]
    assert INSTANTS - 3 <= [killed for killed, _ in reached].count(signal.SIGKILL)
    assert {3, 4, 5, 6, 7} <= {records for _, records in reached}  # records that lay there


def test_killed_within_a_transaction_the_gradebook_is_as_before(small, tmp_path):
    """SQLite's journal lies there, hot, and half the pages are changed; a next run undoes them."""
    undisturbed, course = copied(small, tmp_path / "undisturbed"), copied(small, tmp_path / "class")
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
def test_the_command_stopped_leaves_no_process_and_lets_go_of_the_class(small, tmp_path, sign):
    """Ctrl-C gets a sentence and the exit code 130; either way the same command goes on from there.

    A terminal sends Ctrl-C to the command and to all that it started.
    """
    temporary = tmp_path / "temporary"
    temporary.mkdir()
    course = copied(small, tmp_path / "class")
    slow_down(course)
    undisturbed = copied(course, tmp_path / "undisturbed")
    # Where these tests run in the background, Ctrl-C may be switched off for all they start.
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    with command(course, TMPDIR=str(temporary)) as marker:
        signal.signal(signal.SIGINT, before)
        wait_for(lambda: len(list(temporary.glob("room-*/*"))) >= 1)
        if sign == signal.SIGINT:
            os.killpg(marker.pid, sign)
        else:
            os.kill(marker.pid, sign)
        _, said = marker.communicate(timeout=120)
    wait_for(lambda: not processes_with(str(temporary)) and not list(temporary.iterdir()))

    if sign == signal.SIGINT:
        assert 130 == marker.returncode
        assert "Stopped. Nothing is lost: the same command goes on from here." == said.strip()
    for each in (undisturbed, course):
        mark_set(each, SET)

    assert outcome(undisturbed) == outcome(course)


def test_two_markers_at_once_the_second_says_so_and_stops(small, tmp_path):
    """The first one holds the class; the real command gets one sentence, and nothing changes."""
    course = copied(small, tmp_path / "class")
    with one_at_a_time(course, "marking"), command(course) as second:
        _, said = second.communicate(timeout=120)

    assert 1 == second.returncode
    assert said.startswith("another window is at work in this class: marking since ")
    assert f"(process {os.getpid()}). Wait until it ends, then try again." in said
    assert 1 == len(said.splitlines())
    assert not list((course.folder / "marks" / SET).glob("BH-1021*"))


def test_nothing_is_taken_in_while_the_class_is_marked(small, tmp_path):
    """The same sentence; the folder of arrivals stays as it was."""
    course = copied(small, tmp_path / "class")
    (tmp_path / "post").mkdir()
    shutil.copy(course.submitted(SET, "BH-1007"), tmp_path / "post" / "mine.ipynb")
    with one_at_a_time(course, "marking"), pytest.raises(CourseError, match="marking since"):
        take_in(course, [tmp_path / "post"])

    assert not course.arrived.exists()


def test_the_gradebook_is_copied_and_the_copy_is_whole(small, tmp_path):
    """SQLite finds the copy sound; it holds every mark of before, and twenty are kept at most."""
    course = copied(small, tmp_path / "class")
    before = sorted(all_marks(course), key=str)
    copies = [copy_gradebook(course) for _ in range(22)]
    kept = sorted((course.folder / "kept" / "gradebook").iterdir())
    shutil.copy(copies[-1], tmp_path / "class" / "gradebook.db")

    assert copies[-20:] == kept
    assert before == sorted(all_marks(course), key=str)


@pytest.mark.parametrize("damage", ["in the middle", "at its head"])
def test_a_damaged_gradebook_is_refused_and_the_last_good_copy_named(small, tmp_path, damage):
    """Bytes are overwritten as a bad disk does it; put the copy back, and marking goes on."""
    course = copied(small, tmp_path / "class")
    good = copy_gradebook(course)
    file = course.gradebook_file
    raw = bytearray(file.read_bytes())
    start = 0 if damage == "at its head" else 4096
    raw[start : len(raw) // 2 if start else 64] = os.urandom(
        (len(raw) // 2 if start else 64) - start
    )
    file.write_bytes(raw)
    with pytest.raises(CourseError) as told:
        mark_set(course, SET)
    shutil.copy(good, file)
    mark_set(course, SET)

    assert str(told.value).startswith("gradebook.db cannot be read (")
    assert str(told.value).endswith(
        f"Nothing was marked. Put the last good copy in its place: kept/gradebook/{good.name}."
    )


def test_a_corrected_key_keeps_human_marks_and_says_what_changed_for_whom(
    small, tmp_path, monkeypatch
):
    """Slips that were worth 1 point are worth 1.5 in the corrected key: +0.5 for who made one."""
    course = copied(small, tmp_path / "class")
    mark_set(course, SET)
    human = {row[1:3]: row[4] for row in all_marks(course) if row[4] is not None}
    expected = [
        Change(found["student"], verdict["question"], 1.0, 1.5)
        for found in usable_records(course, SET)[0]
        for verdict in found["verdicts"]
        if verdict["outcome"] == "slip" and verdict["points"] == 1
    ]
    text = (KIT / "instructor" / "keys" / f"{SET}.ipynb").read_text(encoding="utf-8")
    (tmp_path / f"{SET}.ipynb").write_text(text.replace("worth=1)", "worth=1.5)"), "utf-8")
    monkeypatch.setattr(module, "key_file", lambda set_id: tmp_path / f"{set_id}.ipynb")
    marked = mark_set(course, SET)
    after = {row[1:3]: row for row in all_marks(course)}

    assert expected
    assert sorted(expected, key=str) == marked.changes
    assert len(SMALL) == marked.run
    assert human == {place: row[4] for place, row in after.items() if row[4] is not None}
    for change in expected:
        assert 1.5 == after[change.student, f"{change.question}-check"][3]
        assert f"{change.student}, {change.question}: 1 → 1.5" in str(marked)
