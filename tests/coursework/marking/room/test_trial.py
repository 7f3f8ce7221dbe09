"""The walls tried by attack: each attack works where nothing holds it, and what works is said.

Rooms of older kernels are played by asking Landlock for less; see `old_kernel.py`. What a version
holds is from landlock(7): truncation from 3 on, TCP from 4, signals and abstract sockets from 6.
"""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from coursework.marking.room import door, visit
from coursework.marking.room.shared import HARMS

from tests.helpers.filled_in import ALL, NOTHING, TYPED, filled, honest, marked, points
from tests.helpers.old_kernel import FUNCTIONS, rooms_of_a_kernel
from tests.helpers.this_machine import landlock, need

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="The walls are Linux's.")

ROOM = Path(door.__file__).parent
UNHELD = """
import json, os, sys
sys.path.insert(0, {room!r})
import trial
os.mkdir("own")
with trial.Prey(os.path.abspath("prey"), {keys!r}) as prey:
    read, write = os.pipe()
    if os.fork() == 0:
        os.chdir("own")
        bounds = {{"memory_bytes": 1 << 28, "disk_bytes": 1 << 20, "open_files": 64}}
        os.write(write, json.dumps(trial.attack(prey, bounds)).encode())
        os._exit(0)
    os.wait()
    found = json.loads(os.read(read, 65536))
    for harm, names in prey.suffered().items():
        found.setdefault(harm, []).extend(names)
print(json.dumps(found), os.listdir("."))
print(sum(map(len, [*trial.DECOYS, *trial.CHANGES])))
"""
# Without seccomp, whatever the version of Landlock: what only the filter holds.
ONLY_CALLS = {"programs", "changes", "others", "memory"}


@pytest.fixture(autouse=True)
def all_walls():
    for wall in FUNCTIONS:
        need(wall)


def test_every_attack_gets_through_where_no_wall_stands(tmp_path):
    """Else an attack that always fails would call a wall sound; and nothing is left behind."""
    text = UNHELD.format(room=str(ROOM), keys=str(ROOM.parents[2] / "keys"))
    run = subprocess.run(
        [sys.executable, "-I", "-c", text], cwd=tmp_path, capture_output=True, text=True, check=True
    )
    found, left = run.stdout.splitlines()[0].rsplit("} ", 1)

    assert "['own']" == left
    assert [] == [harm for harm in HARMS if f'"{harm}"' not in found]
    for name in ("gradebook", "empties by path", "empties a library while reading", "links",
                 "dates back", "by kill", "through a pipe (fcntl)", "through a socket (ioctl)",
                 "connects by a name", "sends a datagram", "takes its shared memory",
                 "opens its memory", "another program's settings", "as a shared segment",
                 "as a shared file", "as a file without a name", "copies itself"):  # fmt: skip
        assert f'"{name}"' in found


@pytest.mark.parametrize("abi", [1, 2, 3, 4, 5, 99])
def test_nothing_gets_through_at_any_version_of_landlock(tmp_path, abi):
    """The filter of calls holds what an old Landlock does not."""
    with rooms_of_a_kernel(tmp_path, abi) as opened:
        assert ({}, {}) == (opened.found.harms, opened.found.missing)


@pytest.mark.parametrize("abi", [1, 2, 3, 4, 5, 99])
def test_without_the_filter_of_calls_an_old_landlock_is_said_not_to_hold(tmp_path, abi):
    """Emptying below version 3 and signals below 6; a file's rights and dates at every version.

    So the wall of files counts as missing, though it went up.
    """
    with rooms_of_a_kernel(tmp_path, abi, ["calls"]) as opened:
        found = opened.found
    version = min(abi, landlock())
    emptied = [name for name in found.harms["changes"] if name.startswith("empties")]

    assert ONLY_CALLS | ({"signals"} if version < 6 else set()) == set(found.harms)
    assert (2 if version < 3 else 0) == len(emptied)
    assert {"changes who may read", "dates back"} <= set(found.harms["changes"])
    assert ["calls"] == list(found.lacking)
    assert "did not hold: " in found.missing["files"]


@pytest.mark.parametrize(
    ("wall", "harms"),
    [
        (
            "namespaces",
            {"disk"},
        ),  # the filter allows no socket, so the network is held all the same
        ("disk", {"disk"}),
        ("memory", {"memory"}),
        ("limits", {"limits"}),
        ("files", {"reads", "changes", "memory"}),  # memory as a file that all programs share
    ],
)
def test_what_a_missing_wall_lets_through_is_said_and_nothing_else(
    tmp_path, monkeypatch, wall, harms
):
    with rooms_of_a_kernel(tmp_path, without=[wall]) as opened:
        monkeypatch.setattr(door, "rooms", lambda: opened)
        said = door.not_held_back()
        found = opened.found

    assert harms == set(found.harms)
    assert wall in found.missing
    for harm, (_, words) in HARMS.items():
        assert (harm in harms) == (words in said)


EMPTIES = "import os\nos.truncate({file!r}, 0)"
SIGNALS = """
import fcntl, os
read, write = os.pipe()
fcntl.fcntl(read, fcntl.F_SETOWN, {marker})
fcntl.fcntl(read, 10, 9)
fcntl.fcntl(read, fcntl.F_SETFL, os.O_ASYNC)
os.write(write, b"x")
"""


@pytest.mark.parametrize("abi", [1, 2, 3, 4, 5, 99])
def test_the_marker_and_its_files_are_safe_at_every_version(tmp_path, monkeypatch, abi):
    """Emptying a file and killing the marker, by the marker's own rooms: 3 + 3 points, no harm."""
    file = tmp_path / "gradebook.db"
    file.write_text("marks")
    attacked = filled(
        q1=TYPED["q1"],
        q2=EMPTIES.format(file=str(file)),
        q3=TYPED["q3"],
        q4=SIGNALS.format(marker=os.getpid()),
    )
    with rooms_of_a_kernel(tmp_path, abi) as opened:
        monkeypatch.setattr(visit, "rooms", lambda: opened)
        right, record = marked(honest()), marked(attacked)

    assert ALL == points(right)
    assert NOTHING | {"q1": 3.0, "q3": 3.0} == points(record)
    assert "marks" == file.read_text()
