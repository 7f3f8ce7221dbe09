"""The door to the student's room: lost walls, killed processes, rooms without fork."""

import contextlib
import itertools
import json
import os
import signal
import subprocess
import sys
import threading
from pathlib import Path
from types import SimpleNamespace

import pytest
from coursework.marking.room import door, visit
from coursework.marking.room.forked_rooms import ForkedRooms
from coursework.marking.room.fresh_rooms import FreshRooms
from coursework.marking.room.listening import Beats, Came, listen
from coursework.marking.room.shared import HARMS, WALLS, Found, NoRoom

from tests.helpers.filled_in import ALL, NOTHING, TYPED, code, filled, honest, marked, points
from tests.helpers.this_machine import lacks, need, processes, wait_until

pytestmark = pytest.mark.skipif(
    sys.platform != "linux", reason="Processes are watched by Linux's means."
)


def test_the_warm_process_found_every_wall_that_this_machine_can_have():
    """Our trial against the other programs' answers."""
    assert {wall for wall in WALLS if lacks(wall)} == set(door.rooms().found.lacking)


@pytest.mark.parametrize(
    ("harms", "words"),
    [
        ((), ""),
        (("signals", "programs"), "kept from starting programs and ending other programs. Mark on"),
        (("reads", "disk"), "kept from filling the disk and reading this machine's files. Mark on"),
        (("memory",), "kept from using up memory. Mark on a Linux"),
        (tuple(HARMS), "kept from using the network, filling the disk, using up memory,"),
    ],
)
def test_one_sentence_says_what_is_not_held_back(monkeypatch, harms, words):
    """In the order of the table of harms, joined as in a sentence."""
    found = Found({"lacking": {}, "through": {harm: ["an attack"] for harm in harms}})
    made = SimpleNamespace(found=found)
    monkeypatch.setattr(door, "rooms", lambda: made)

    assert words in door.not_held_back()
    assert bool(words) == door.not_held_back().startswith("On this machine students' code is not")


def test_where_nothing_could_be_tried_a_lacking_wall_holds_nothing_back():
    """As on macOS: without the wall of files, files are read and changed."""
    found = Found({"lacking": {"files": "darwin", "calls": "darwin"}, "through": None})

    assert {"reads", "changes", "programs", "signals", "others"} == set(found.harms)
    assert {"files": "darwin", "calls": "darwin"} == found.missing


def job(*sources, **bounds):
    """Work for a room: code cells, none of which is asked for an answer."""
    bounds = {"memory_bytes": 10**9, "disk_bytes": 10**6, "files": 50, "open_files": 32,
              "threads": 8, "seconds": 20} | bounds  # fmt: skip
    cells = [{"place": n, "source": each, "ask": None} for n, each in enumerate(sources)]
    return {"cells": cells, "bounds": bounds, "cell_seconds": 10, "output_bytes": 1000,
            "figures": 1}  # fmt: skip


@pytest.fixture
def forked():
    """The way of Linux."""
    opened = ForkedRooms()
    yield opened
    opened.close()


@pytest.fixture
def fresh():
    """The way of systems that cannot copy a process."""
    opened = FreshRooms(ahead=1)
    yield opened
    opened.close()


@pytest.mark.parametrize("way", ["forked", "fresh"])
def test_a_room_refuses_to_run_when_a_wall_that_stood_is_lost(request, way):
    """No disk can be made for minus one file: nothing ran, and the door says what is lost."""
    need("disk")
    opened = request.getfixturevalue(way)

    with pytest.raises(NoRoom, match=r"did not go up again: .*disk"):
        opened.run(job("print('ran')", files=-1), 100_000, 20)
    assert b"ran" in opened.run(job("print('ran')"), 100_000, 20).raw


def test_rooms_without_fork_have_the_walls_that_this_machine_can_have(fresh):
    """Found by trying, in the same kind of process; not by the name of the system."""
    assert {wall for wall in WALLS if lacks(wall)} == set(fresh.found.lacking)


def test_a_lost_wall_is_no_zero_for_a_student():
    """Marking stops with a sentence; it does not go on and give a student nothing."""
    need("disk")
    with pytest.raises(NoRoom):
        marked(honest(), files=-1)

    assert ALL == points(marked(honest()))


def test_code_cannot_say_that_a_wall_is_lost(forked):
    """The first line is the room's own; a later one of a student's is passed by."""
    forge = 'import os\nfor n in range(64):\n  try: os.write(n, b\'{"lost": ["disk"]}\\n\')\n'
    came = forked.run(job(forge + "  except OSError: pass"), 100_000, 20)

    assert b'"lost"' in came.raw
    assert "" == came.why


def test_new_rooms_with_fewer_walls_are_refused(monkeypatch, forked):
    """What was kept from students' code when the marking began must not change half-way."""
    monkeypatch.setattr(door, "_forked", lambda: forked)
    forked._greeting()["through"] = {"changes": ["writes"]}
    lost = SimpleNamespace(found=Found({"lacking": {}, "through": {}}))

    with pytest.raises(NoRoom, match="changing this machine's files"):
        door.new_rooms(lost)


def test_rooms_without_fork_give_the_same_record(fresh, monkeypatch):
    """Right answers, a loop, an exit, an output: the whole records are equal."""
    book = filled(
        q1=TYPED["q1"],
        q2="while True: pass",
        q3="print('raw')\n" + TYPED["q3"],
        q4="import os\nos._exit(0)",
        q5="print(1 / 0)",
    )
    monkeypatch.setattr(visit, "rooms", lambda: fresh)
    without = marked(book, cell_seconds=1)
    monkeypatch.setattr(visit, "rooms", door.rooms)

    assert NOTHING | {"q1": 3.0, "q3": 3.0} == points(without)
    assert marked(book, cell_seconds=1) == without


def test_marking_goes_on_when_the_warm_process_was_killed():
    """A new door, once; then the same points."""
    door.rooms().warm.kill()
    door.rooms().warm.wait()

    assert ALL == points(marked(honest()))


def test_marking_goes_on_when_the_warm_process_is_killed_during_a_run():
    """The room ends with it; the hand-in is run again in another."""
    book = honest()
    book["cells"].append(code("import time; time.sleep(1.5)"))
    warm = door.rooms().warm
    killer = threading.Timer(0.7, warm.kill)
    killer.start()
    record = marked(book)
    killer.join()

    assert ALL == points(record)
    assert () == record.findings
    assert warm.wait(10) == -signal.SIGKILL


MARKER = """
import sys
sys.path[:0] = [{root!r}, {instructor!r}]
from coursework.marking.room import door
from tests.helpers.filled_in import TYPED, filled, marked
print(door.rooms().folder, flush=True)
marked(filled(q1=TYPED["q1"], q2={stubborn!r}), cell_seconds=60, seconds=60)
"""
STUBBORN = """
import ctypes, signal, time
ctypes.CDLL(None).prctl(1, 0)
for n in range(1, 65):
    try: signal.signal(n, signal.SIG_IGN)
    except (OSError, ValueError): pass
while True: time.sleep(1)
"""


def test_nothing_is_left_when_the_marker_is_killed():
    """The warm process sees its door close and ends every room, also one that asked to outlive it.

    The room took back the order to die with its parent (prctl 1) and ignores every signal it can.
    """
    root = str(Path(__file__).resolve().parents[4])
    text = MARKER.format(root=root, instructor=f"{root}/instructor", stubborn=STUBBORN)
    marker = subprocess.Popen([sys.executable, "-c", text], stdout=subprocess.PIPE, text=True)
    with marker.stdout as said:
        folder = said.readline().strip()
    wait_until(lambda: any(map(ignores_signals, processes(f"HOME={folder}"))))
    marker.kill()
    marker.wait()

    wait_until(lambda: processes(f"HOME={folder}") == set())
    assert not Path(folder).exists()


def ignores_signals(process):
    """Whether the stubborn cell is past its first lines: SIGTERM, number 15, is ignored (Linux)."""
    try:
        status = Path(f"/proc/{process}/status").read_text()
    except OSError:
        return False
    ignored = int(status.partition("SigIgn:")[2].split()[0], 16)
    return bool(ignored & 1 << signal.SIGTERM - 1)


@pytest.fixture
def said():
    """A room's stream that a test writes to, piece by piece with a wait after each."""
    lines, lines_in = os.pipe()
    stop = threading.Event()

    def say(pieces, wait):
        with os.fdopen(lines_in, "wb", buffering=0) as file, contextlib.suppress(BrokenPipeError):
            for piece in pieces:
                file.write(piece)
                written.append(len(piece))
                if stop.wait(wait):
                    break

    def start(pieces, wait):
        threading.Thread(target=say, args=(pieces, wait)).start()
        return os.fdopen(lines, "rb", buffering=0)

    start.written = written = []
    yield start
    stop.set()


BEGAN = b'{"began": 3}\n'


def test_a_cell_that_says_nothing_for_too_long_is_stopped_from_outside(said):
    """One cell began and is silent: 0.3 s for it, whatever the notebook has left."""
    came = listen(said([BEGAN], 9), 1000, seconds=30, cell_seconds=0.3, places=[3])

    assert (BEGAN, "cell_seconds") == (came.raw, came.why)


def test_each_cell_that_begins_has_its_own_time_and_all_together_one(said):
    """Every 0.05 s a cell begins, so none is late; after 0.5 s the notebook is."""
    pieces = [b'{"began": %d}\n' % place for place in range(99)]
    came = listen(said(pieces, 0.05), 10_000, seconds=0.5, cell_seconds=0.3, places=range(99))

    assert "seconds" == came.why
    assert came.raw.count(b"began") > 3


def test_a_cell_cannot_say_again_that_it_began(said):
    """Every 0.05 s the same line, as student code may write it: its 0.3 s end all the same."""
    came = listen(said([BEGAN] * 99, 0.05), 10_000, seconds=30, cell_seconds=0.3, places=[3, 4])

    assert "cell_seconds" == came.why
    assert came.seconds < 5


@pytest.mark.parametrize(
    ("pieces", "heard"),
    [
        ([BEGAN, BEGAN], [True, False]),
        ([b'{"began": 5}\n', BEGAN], [False, True]),  # too early, it is no sign of its own cell
        ([BEGAN, b'{"began": 5}\n', BEGAN, b'{"began": 7}\n'], [True, True, False, True]),
        ([b'{"beg', b'an": 3}\n'], [False, True]),
        ([b"x" * 99 + BEGAN], [False]),
        ([b"x" * 99, b"y" * 99 + b"\n" + BEGAN], [False, True]),
        ([b'{"cell": 1, "output": "{\\"began\\": 3}"}\n'], [False]),
    ],
)
def test_a_sign_that_a_cell_began_counts_once_and_in_order(pieces, heard):
    """The cells at places 3, 5 and 7."""
    beats = Beats([3, 5, 7])

    assert heard == [beats.heard(piece) for piece in pieces]


def test_all_visits_of_a_hand_in_share_its_seconds(monkeypatch):
    """Each of four answers ends the room after 20 s: of 60 s, 60, 40 and 20 are left, then none.

    What the earlier visits found above stays, also where the last one did not get that far.
    """
    left = []

    def run(work, _, seconds):
        left.append(seconds)
        cells = {cell["ask"]: cell for cell in work["cells"] if cell["ask"]}
        first = next(each["place"] for each in work["cells"] if "_exit" in each["source"])
        q1 = {"cell": cells["q1"]["place"], "output": "", "value": {"text": "3 kg"}}
        if len(left) == 3:
            return Came(b"", "seconds", seconds=20)
        return Came(f'{json.dumps(q1)}\n{{"began": {first}}}'.encode(), "", seconds=20)

    monkeypatch.setattr(visit, "rooms", lambda: SimpleNamespace(run=run, load=None))
    leaves = "import os\nos._exit(0)"
    record = marked(filled(q2=leaves, q3=leaves, q4=leaves, q5=leaves), seconds=60)

    assert [60, 40, 20] == left
    assert "The whole notebook ran longer than 60 seconds (seconds)." == record.findings[-1]
    assert 3.0 == points(record)["q1"]


def test_a_flood_is_cut_and_its_room_not_waited_for(said):
    """Of 8 MB 1000 bytes may come: the room's pipe (64 kB) and one piece as long, and no more."""
    stream = said(itertools.repeat(b"x" * 4096, 2000), 0)
    came = listen(stream, 1000, seconds=30, cell_seconds=30, places=[])
    wait_until(lambda: stream.closed)

    assert "output" == came.why
    assert 1000 <= len(came.raw) <= 1000 + 65536
    assert sum(said.written) <= 3 * 65536
