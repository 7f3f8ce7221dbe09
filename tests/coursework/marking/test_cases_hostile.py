"""Nothing is earned by force, nothing else is harmed, and the rest of the class is marked.

One class: a student for each hostile hand-in, and classmates between them. Each attack stands in
the cell of question 2, between honest answers to 1 and 3, so by hand 3 + 3 = 6 points are earned
whatever it does, and never one more; attacks on the judging come without honest answers, and earn
nothing. The class is marked once; each test looks at what became of one attack.
"""

import contextlib
import hashlib
import json
import os
import re
import socket
from pathlib import Path
from types import SimpleNamespace

import pytest
from coursework.arriving.arrivals import read_list
from coursework.arriving.states import NOT_PLACED
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course, open_course
from coursework.gradebook.points import all_marks
from coursework.marking.mark_set import mark_set
from coursework.marking.room import door, shared
from coursework.reports.hand_back import hand_back
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import key_file

from tests.helpers.attacks import FILES, LEAVES, NO_NOTEBOOK, OTHERS, RUNAWAY, TRICKS, hand_in
from tests.helpers.filled_in import (
    ALL,
    NOTHING,
    SET,
    filled,
    honest,
    marked,
    points,
    raw,
    record_of,
)
from tests.helpers.this_machine import need, processes

KEPT = NOTHING | {"q1": 3.0, "q3": 3.0}  # the honest answers above and below the attack
EXPECTED = {
    **dict.fromkeys([*RUNAWAY, *LEAVES, *OTHERS], KEPT),
    **dict.fromkeys(TRICKS, NOTHING),
    **dict.fromkeys(FILES, NOTHING),
}
NUMBERS = {name: f"BH-{number}" for number, name in enumerate(EXPECTED, start=2001)}
CLASSMATES = [f"BH-{number}" for number in range(1001, 1005)]


class Listener:
    """What arrives at a port and a unix socket of this machine."""

    def __init__(self, folder):
        self.tcp = socket.create_server(("127.0.0.1", 0))
        self.port = self.tcp.getsockname()[1]
        self.udp = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
        self.udp.bind(("127.0.0.1", self.port))
        self.unix = socket.socket(socket.AF_UNIX)
        self.path = f"{folder}/bus"
        self.unix.bind(self.path)
        self.unix.listen()

    def came(self):
        """Who connected and what was sent; waits for nothing."""
        found = []
        takes = {self.tcp: self.tcp.accept, self.unix: self.unix.accept}
        for one, take in (takes | {self.udp: lambda: self.udp.recvfrom(99)}).items():
            one.setblocking(False)
            with one, contextlib.suppress(BlockingIOError):
                found.append(take())
        return found


@pytest.fixture(scope="module")
def hostile(tmp_path_factory):
    """The class, taken in and marked once, and everything around it before and after."""
    for wall in shared.WALLS:
        need(wall)
    refuse_where_a_wall_is_broken()
    folder = tmp_path_factory.mktemp("hostile")
    roster = dict.fromkeys([*CLASSMATES, *NUMBERS.values(), "BH-3000"], "Student")
    course = new_course(folder / "class", "Class", "demo", roster)
    file = course.folder / "course.toml"
    small = {"cell_seconds": 2, "seconds": 20, "disk_bytes": 20_000_000}
    kept = [line for line in file.read_text().splitlines() if not line.startswith(tuple(small))]
    file.write_text("\n".join([*kept, *(f"{name} = {most}" for name, most in small.items())]))
    course = open_course(course.folder)
    hand_out(course, SET)
    listener, token = Listener(folder), f"86400.{os.getpid()}"
    places = {
        "token": token,
        "marker": os.getpid(),
        "port": listener.port,
        "unix": listener.path,
        "home": Path.home(),
        "gradebook": course.gradebook_file,
        "key": key_file(SET),
        "instructor": key_file(SET).parents[1],
        "classmate": course.submitted(SET, CLASSMATES[0]),
    }
    post = folder / "post"
    post.mkdir()
    for student in CLASSMATES:
        (post / f"{student}.ipynb").write_bytes(raw(honest(student)))
    for name, student in NUMBERS.items():
        own = places | {"own": course.submitted(SET, student)}
        (post / f"{student}.ipynb").write_bytes(raw(hand_in(name, student, own)))
    for number, data in enumerate(NO_NOTEBOOK.values()):
        (post / f"odd-{number}.ipynb").write_bytes(data)
    os.symlink(post / f"{CLASSMATES[0]}.ipynb", post / "BH-3000.ipynb")
    take_in(course, post)
    before, kit = digests(course.folder), digests(key_file(SET).parents[1])
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(shared, "GRACE", 1)
        mark_set(course, SET)
    after = digests(course.folder)
    yield SimpleNamespace(
        course=course,
        before=before,
        after=after,
        kit=(kit, digests(key_file(SET).parents[1])),
        came=listener.came(),
        token=token,
        rooms=door.rooms(),
    )


def refuse_where_a_wall_is_broken():
    """Try harmlessly first: without its wall an attack would hit this machine and these files."""
    harmless = {
        "q1": "import os\nos.kill(os.getppid(), 0)",
        "q2": f"open({str(key_file(SET))!r}, 'r+')",
        "q3": "import subprocess\nsubprocess.run(['true'])",
        "q4": "import socket\nsocket.socket()",
    }
    for verdict in marked(filled(**harmless)).answered[: len(harmless)]:
        assert "It ended with: PermissionError" in " ".join(verdict.notes), verdict.answer


def digests(folder):
    """SHA-256 of each file below a folder, those that Python makes for itself left out."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }


def printed(hostile, name):
    """All that the cells of a hand-in printed."""
    copy = json.loads(hostile.course.autograded(SET, NUMBERS[name]).read_bytes())
    outputs = [out for each in copy["cells"] for out in each.get("outputs", [])]
    return "".join("".join(out["text"]) for out in outputs)


@pytest.mark.parametrize("name", EXPECTED)
def test_no_undeserved_point(hostile, name):
    """The honest answers around an attack, where there are any, and nothing else."""
    assert EXPECTED[name] == points(record_of(hostile.course, NUMBERS[name]))


@pytest.mark.parametrize("student", CLASSMATES)
def test_the_rest_of_the_class_is_marked_with_its_points(hostile, student):
    record = record_of(hostile.course, student)

    assert ALL == points(record)
    assert () == record.findings


def test_the_gradebook_holds_the_points_of_the_records_and_no_others(hostile):
    """Nobody's attack wrote a row: every mark is that of the record, and no human mark is there."""
    course, expected = hostile.course, {}
    for student in [*CLASSMATES, *NUMBERS.values()]:
        for question, each in points(record_of(course, student)).items():
            expected[student, f"{question}-check"] = each
    rows = list(all_marks(course))
    machine = {(row[1], row[2]): row[3] for row in rows if row[2].endswith("-check")}

    assert expected == machine
    assert [] == [row for row in rows if row[4] is not None or row[5]]


def test_every_file_that_was_there_is_there_unchanged(hostile):
    """Hand-ins, arrivals, release, roster; only the gradebook takes the legitimate entries."""
    legitimate = {"gradebook.db", ".at-work"}
    before = {name: each for name, each in hostile.before.items() if name not in legitimate}

    assert before == {name: hostile.after.get(name) for name in before}
    new = {name.split("/")[0] for name in hostile.after if name not in hostile.before}
    assert {"marks", "autograded", "kept"} == new


def test_keys_and_the_marking_itself_are_unchanged(hostile):
    before, after = hostile.kit

    assert before == after


def test_nothing_arrived_from_the_network(hostile):
    """A port and a unix socket listened while the class was marked."""
    assert [] == hostile.came


def test_no_process_is_left_behind(hostile):
    """Of the door's own process no copy, and of what attacks started nothing (Linux: /proc)."""
    assert set() == processes(hostile.token)
    assert {hostile.rooms.warm.pid} == processes(f"HOME={hostile.rooms.folder}")


@pytest.mark.parametrize(
    ("name", "secret"),
    [
        ("reads the gradebook", "SQLite format"),
        ("reads the keys", "BEGIN HIDDEN TESTS"),
        ("lists the keys", "05-season-and-brine"),
        ("lists the home folder", "found ["),
        ("reads a classmate's work", "à la cuillère"),
        ("links to a classmate's work", "à la cuillère"),
        ("reads the marker's environment", "PATH="),
    ],
)
def test_what_it_wanted_to_read_it_did_not_get(hostile, name, secret):
    """The error is in its own output, what it was after is not."""
    text = printed(hostile, name)

    assert secret not in text
    assert re.search("Permission denied|No such file|not permitted", text)


@pytest.mark.parametrize("number", range(len(NO_NOTEBOOK)), ids=list(NO_NOTEBOOK))
def test_what_is_no_hand_in_is_listed_with_the_reason(hostile, number):
    """And the class was taken in and marked around it."""
    one = next(each for each in read_list(hostile.course) if each.name == f"odd-{number}.ipynb")

    assert NOT_PLACED == one.became
    assert one.reason.endswith((".", "?"))


def test_a_link_to_a_classmates_file_is_nobodys_hand_in(hostile):
    one = next(each for each in read_list(hostile.course) if each.name == "BH-3000.ipynb")

    assert (NOT_PLACED, "It is a link to another place, not a file.") == (one.became, one.reason)
    assert not hostile.course.submitted(SET, "BH-3000").exists()


def test_scripts_are_text_on_the_page_that_goes_back(hostile):
    """No tag of theirs is one of the page's, and no address of theirs is a link."""
    course = hostile.course
    hand_back(course, SET)
    page = course.feedback(SET, NUMBERS["holds scripts"]).read_text(encoding="utf-8")

    assert "brunoise" in page
    assert "<script>alert" not in page
    assert "<img src=x" not in page
    assert 'href="javascript' not in page


FINDINGS = {
    "loops for ever": "(cell_seconds)",
    "swallows interrupts": "(cell_seconds). It was left out.",
    "ignores interrupts": "(cell_seconds). It was left out.",
    "allocates 1.5 GB": "(memory_bytes)",
    "prints 100 MB": "(output_bytes)",
    "writes 100 MB": "(disk_bytes)",
    "opens 100 figures": "(figures)",
    "leaves by os._exit": "ended the room it ran in. It was left out.",
    "kills itself by a bad address": "ended the room it ran in. It was left out.",
}


@pytest.mark.parametrize("name", FINDINGS)
def test_the_instructor_reads_what_struck(hostile, name):
    assert FINDINGS[name] in " ".join(record_of(hostile.course, NUMBERS[name]).findings)


def test_marking_the_class_again_runs_nothing_and_changes_nothing(hostile):
    """Also with half characters in answers and outputs, every record can be read again."""
    before = {name: each for name, each in digests(hostile.course.folder).items()
              if name.startswith(("marks", "autograded"))}  # fmt: skip
    again = mark_set(hostile.course, SET)
    after = digests(hostile.course.folder)

    assert 0 == again.run
    assert before == {name: after.get(name) for name in before}
