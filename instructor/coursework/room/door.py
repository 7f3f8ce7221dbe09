"""The door to the student's room: it opens rooms, keeps the time, and carries bytes out.

What comes out of a room is bytes of unknown intent; `visit.py` reads them. A room never gets the
instructor's environment, and never more than its job.
"""

import atexit
import contextlib
import json
import os
import queue
import signal
import socket
import subprocess
import sys
import tempfile
import threading
import time
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

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


@dataclass(frozen=True)
class Came:
    """What came out of a room.

    Attributes
    ----------
    raw : bytes
        Its lines, at most as many bytes as were allowed.
    why : str
        "" when the room ended by itself, else "cell_seconds", "seconds" or "output".
    """

    raw: bytes
    why: str = ""


class NoRoom(Exception):
    """A room could not be opened; the message says why."""


class ForkedRooms:
    """Rooms as copies of one warm process: Linux."""

    def __init__(self):
        here, there = socket.socketpair(socket.AF_UNIX, socket.SOCK_SEQPACKET)
        self._folder = tempfile.TemporaryDirectory(prefix="room-")
        with there:
            self._warm = subprocess.Popen(
                [sys.executable, "-I", "-B", str(WARM), "serve", str(there.fileno())],
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
                pass_fds=[there.fileno()],
                cwd=self._folder.name,
                env=_environment(self._folder.name),
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
        with tempfile.TemporaryDirectory(prefix="room-") as folder:
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
            with open(lines, "rb", buffering=0) as stream, open(ended, "rb") as status:
                try:
                    came = _listen(stream, most, seconds, work["cell_seconds"] + GRACE)
                finally:
                    with self._lock:
                        self._send({"do": "end", "room": number})
                    how = _status(status.read())
        if "no room" in how:
            raise NoRoom(how["no room"])
        return came

    def _send(self, order, handles=()):
        try:
            socket.send_fds(self._control, [json.dumps(order).encode()], list(handles))
        except OSError as error:
            raise NoRoom(f"the process that makes rooms is gone ({error})") from None

    def close(self):
        """Close the door; every room that is still open ends with it."""
        atexit.unregister(self.close)
        self._control.close()
        try:
            self._warm.wait(5)
        except subprocess.TimeoutExpired:
            self._warm.kill()
            self._warm.wait()
        self._folder.cleanup()


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
                came = _listen(process.stdout, most, seconds, work["cell_seconds"] + GRACE)
            finally:
                _end(process)
                process.stdout.close()
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


@lru_cache(maxsize=1)
def rooms():
    """The rooms of this process: forked where the system can, else fresh ones."""
    if sys.platform == "linux":
        forked = ForkedRooms()
        if forked.usable:
            return forked
        forked.close()
    return FreshRooms()


def new_rooms():
    """The rooms again, after the process that makes them was lost."""
    rooms().close()
    rooms.cache_clear()
    return rooms()


def not_held_back():
    """One sentence on what this machine does not keep student code from; "" where nothing."""
    missing = [what for wall, what in HOLDS_BACK.items() if wall in rooms().missing]
    if not missing:
        return ""
    *first, last = missing
    listed = f"{', '.join(first)} and {last}" if first else last
    return (
        f"On this machine students' code is not kept from {listed}. "
        "Mark on a Linux machine or in a container: the contributor guide says how."
    )


def _listen(stream, most, seconds, cell_seconds):
    """A room's lines until it closes, or until a bound strikes."""
    pieces = queue.SimpleQueue()
    reader = threading.Thread(target=_read, args=(stream, pieces, most), daemon=True)
    reader.start()
    start = cell_start = time.monotonic()
    got, why, size = [], "", 0
    while True:
        now = time.monotonic()
        left = min(start + seconds, cell_start + cell_seconds) - now
        if left <= 0:
            why = "seconds" if now >= start + seconds else "cell_seconds"
            break
        try:
            piece = pieces.get(timeout=left)
        except queue.Empty:
            continue
        if not piece:
            break
        got.append(piece)
        size += len(piece)
        if b'"began"' in piece:
            cell_start = time.monotonic()
        if size >= most:
            why = "output"
            break
    return Came(b"".join(got), why)


def _read(stream, pieces, most):
    with contextlib.suppress(OSError, ValueError):  # the room was ended, the stream is closed
        while most > 0 and (piece := stream.read(65536) if not hasattr(stream, "read1")
                            else stream.read1(65536)):  # fmt: skip
            pieces.put(piece)
            most -= len(piece)
    pieces.put(b"")


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
