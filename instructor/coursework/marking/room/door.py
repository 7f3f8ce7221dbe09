"""The door to the student's room: it opens rooms, keeps the time, and carries bytes out.

What comes out of a room is bytes of unknown intent; `visit.py` reads them. A room never gets the
instructor's environment, and never more than its job.
"""

import atexit
import contextlib
import json
import os
import queue
import secrets
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import threading
from functools import lru_cache
from pathlib import Path

from coursework.marking.room.listening import listen
from kitchenmath.errors import KitchenError

WARM = Path(__file__).with_name("warm.py")
# What each missing wall does not hold back; see walls.py.
HOLDS_BACK = {
    "namespaces": "using the network",
    "disk": "filling the disk",
    "limits": "using up memory and processor time",
    "files": "reading and changing this machine's files",
    "calls": "starting programs and ending other processes",
}
GRACE = 3.0  # seconds that a cell gets to obey its own clock before it is ended from outside
ONE_THREAD = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")


class NoRoom(KitchenError):
    """A room could not be opened; the message says why."""


class ForkedRooms:
    """Rooms as copies of one warm process: Linux."""

    def __init__(self):
        here, there = socket.socketpair(socket.AF_UNIX, socket.SOCK_SEQPACKET)
        # Made and cleared by the warm process, which outlives a marker that is killed.
        self._folder = os.path.join(tempfile.gettempdir(), f"room-{secrets.token_hex(8)}")
        with there:
            self._warm = subprocess.Popen(
                [sys.executable, "-I", "-B", str(WARM), "serve", str(there.fileno()), self._folder],
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
                pass_fds=[there.fileno()],
                cwd=tempfile.gettempdir(),
                env=_environment(self._folder),
            )
        self._control, self._lock = here, threading.Lock()
        self._hello, self._number, self._loaded = None, 0, set()
        atexit.register(self.close)

    @property
    def missing(self):
        """Walls that this machine lacks, with what it answered."""
        return self._greeting()["missing"]

    @property
    def usable(self):
        """Whether copies of the warm process are whole: it must have a single thread."""
        return self._greeting()["alone"]

    def _greeting(self):
        with self._lock:
            if self._hello is None:
                said = self._control.recv(65536)
                if not said:
                    raise NoRoom("the process that makes rooms ended at its start")
                self._hello = json.loads(said)
            return self._hello

    def load(self, module):
        """Have a slow module loaded before the next room is made."""
        with self._lock:
            if module not in self._loaded:
                self._loaded.add(module)
                self._send({"do": "load", "module": module})

    def run(self, work, most, seconds):
        """Run a job in a room of its own.

        Parameters
        ----------
        work : dict
            As `cells.run` takes it, with `bounds`.
        most : int
            Bytes that may come out.
        seconds : float
            After which it is ended.

        Returns
        -------
        Came

        Raises
        ------
        NoRoom
        """
        stand = [wall for wall in HOLDS_BACK if wall not in self.missing]
        with self._own_folder() as folder:
            job = os.memfd_create("job")
            lines, lines_in = os.pipe()
            ended, ended_in = os.pipe()
            try:
                with open(job, "wb", closefd=False) as file:
                    file.write(json.dumps(work | {"folder": folder, "walls": stand}).encode())
                os.lseek(job, 0, os.SEEK_SET)
                with self._lock:
                    self._number += 1
                    number = self._number
                    self._send({"do": "run", "room": number}, [job, lines_in, ended_in])
            except BaseException:
                os.close(lines)
                os.close(ended)
                raise
            finally:
                os.close(job)
                os.close(lines_in)
                os.close(ended_in)
            with open(ended, "rb") as status:
                try:
                    stream = os.fdopen(lines, "rb", buffering=0)
                    came = listen(stream, most, seconds, work["cell_seconds"] + GRACE)
                finally:
                    with self._lock:
                        self._send({"do": "end", "room": number})
                    how = _status(status.read())
        if "status" not in how:
            raise NoRoom(how.get("no room", "the process that makes rooms ended"))
        # The first line is the room's own: no student code runs before it.
        if came.raw.startswith(b'{"lost"'):
            raise NoRoom(f"walls that stood did not go up again: {came.raw.decode()}")
        return came

    def _own_folder(self):
        try:
            return tempfile.TemporaryDirectory(dir=self._folder, ignore_cleanup_errors=True)
        except OSError as error:
            raise NoRoom(f"the folder of rooms is gone ({error})") from None

    def _send(self, order, handles=()):
        try:
            socket.send_fds(self._control, [json.dumps(order).encode()], list(handles))
        except OSError as error:
            raise NoRoom(f"the process that makes rooms is gone ({error})") from None

    def close(self):
        """Close the door; every room that is still open ends with it."""
        atexit.unregister(self.close)
        self._control.close()
        if self._hello is None:
            self._warm.kill()  # it is still loading, and made no room
        try:
            self._warm.wait(5)
        except subprocess.TimeoutExpired:
            self._warm.kill()
            self._warm.wait()
        shutil.rmtree(self._folder, ignore_errors=True)


class FreshRooms:
    """Rooms as processes of their own, warmed ahead: for systems that cannot copy a process."""

    def __init__(self, ahead=2):
        self._ahead, self._ready, self._lock = ahead, queue.SimpleQueue(), threading.Lock()
        self.missing = dict.fromkeys(("namespaces", "disk", "files", "calls"), sys.platform)
        if os.name != "posix":
            self.missing["limits"] = sys.platform
        self.usable = True
        for _ in range(ahead):
            self._ready.put(self._warm_one())
        atexit.register(self.close)

    def load(self, module):
        """Nothing: a room here loads what it needs itself."""

    def run(self, work, most, seconds):
        """As `ForkedRooms.run`; the seconds begin when the room is warm."""
        folder, process = self._ready.get()
        self._ready.put(self._warm_one())
        with folder:
            try:
                _give(process, work | {"folder": folder.name, "walls": []})
                came = listen(process.stdout, most, seconds, work["cell_seconds"] + GRACE)
            finally:
                _end(process)
        return came

    def _warm_one(self):
        folder = tempfile.TemporaryDirectory(prefix="room-", ignore_cleanup_errors=True)
        process = subprocess.Popen(
            [sys.executable, "-I", "-B", str(WARM), "once"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            cwd=folder.name,
            env=_environment(folder.name),
            start_new_session=True,
        )
        return folder, process

    def close(self):
        """End the rooms that were warmed and not needed."""
        atexit.unregister(self.close)
        with contextlib.suppress(queue.Empty):
            while True:
                folder, process = self._ready.get_nowait()
                _end(process)
                process.stdin.close()
                process.stdout.close()
                folder.cleanup()


_ONE_DOOR = threading.Lock()


@lru_cache(maxsize=1)
def _forked():
    return ForkedRooms() if sys.platform == "linux" else None


@lru_cache(maxsize=1)
def _fresh():
    return FreshRooms()


def warm_up():
    """Begin to load what rooms need, while the marker reads in its own things."""
    with _ONE_DOOR:
        _forked()


def rooms():
    """The rooms of this process: forked where the system can, else fresh ones."""
    with _ONE_DOOR:
        return _usable()


def _usable():
    forked = _forked()
    return forked if forked and forked.usable else _fresh()


def new_rooms(lost):
    """The rooms again, after the process that makes them was lost; one thread makes them anew.

    Raises
    ------
    NoRoom
        When a wall that stood before does not stand any more.
    """
    with _ONE_DOOR:
        if lost is _usable():
            lost.close()
            _forked.cache_clear()
            _fresh.cache_clear()
        made = _usable()
    if fallen := [wall for wall in HOLDS_BACK if wall in made.missing and wall not in lost.missing]:
        raise NoRoom(
            f"students' code was kept from {_listed(fallen)} when the marking began, and is no "
            "longer. Nothing more is marked: start the marking again, or mark on another machine."
        )
    return made


def not_held_back():
    """One sentence on what this machine does not keep student code from; "" where nothing."""
    missing = [wall for wall in HOLDS_BACK if wall in rooms().missing]
    if not missing:
        return ""
    return (
        f"On this machine students' code is not kept from {_listed(missing)}. "
        "Mark on a Linux machine or in a container: the contributor guide says how."
    )


def _listed(walls):
    """What walls hold back, in words."""
    *first, last = [HOLDS_BACK[wall] for wall in walls]
    return f"{', '.join(first)} and {last}" if first else last


def _give(process, work):
    """Hand a job to a fresh room; one that ended already is found out by listening."""
    with contextlib.suppress(OSError):
        process.stdin.write(json.dumps(work).encode())
        process.stdin.close()


def _end(process):
    """End a fresh room and whatever it started."""
    if os.name == "posix":
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(process.pid, signal.SIGKILL)
    else:
        process.kill()
    process.wait()


def _status(raw):
    try:
        return json.loads(raw)
    except ValueError:
        return {}


def _environment(folder):
    """Nothing of the instructor's own environment but what a process needs to start."""
    keep = {name: os.environ[name] for name in ("SYSTEMROOT",) if name in os.environ}
    return keep | dict.fromkeys(ONE_THREAD, "1") | {
        "HOME": folder,
        "IPYTHONDIR": folder,
        "MPLCONFIGDIR": folder,
        "MPLBACKEND": "agg",
        "PYTHONUTF8": "1",
    }  # fmt: skip
