"""Rooms as processes of their own, warmed ahead: for systems that cannot copy a process."""

import atexit
import contextlib
import json
import os
import queue
import signal
import subprocess
import sys
import tempfile
import threading

from coursework.marking.room.listening import listen
from coursework.marking.room.shared import WALLS, Found, clocks, refuse_lost
from coursework.marking.room.starting import WARM, environment


class FreshRooms:
    """Opens a new process for each room; `ahead` of them are started before they are needed."""

    usable = True

    def __init__(self, ahead=2):
        self._ready, self._lock, self._found = queue.SimpleQueue(), threading.Lock(), None
        self._trial = self._start("walls")
        for _ in range(ahead):
            self._ready.put(self._start("once"))
        atexit.register(self.close)

    @property
    def found(self):
        """What the trial of the walls found: tried once, in such a process."""
        with self._lock:
            if self._found is None:
                folder, process = self._trial
                with folder:
                    said = process.communicate()[0]
                try:
                    said = json.loads(said)
                except ValueError:
                    said = {"lacking": dict.fromkeys(WALLS, "the trial failed"), "through": None}
                self._found = Found(said)
            return self._found

    def load(self, module):
        """Nothing: a room here loads what it needs itself."""

    def run(self, work, most, seconds):
        """As `ForkedRooms.run`; the seconds begin when the room is warm."""
        stand = self.found.stand
        folder, process = self._ready.get()
        self._ready.put(self._start("once"))
        with folder:
            try:
                _give(process, work | {"folder": folder.name, "walls": stand})
                came = listen(process.stdout, most, seconds, *clocks(work))
            finally:
                _end(process)
        return refuse_lost(came)

    def _start(self, what):
        folder = tempfile.TemporaryDirectory(prefix="room-", ignore_cleanup_errors=True)
        process = subprocess.Popen(
            [sys.executable, "-I", "-B", str(WARM), what],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            cwd=folder.name,
            env=environment(folder.name),
            start_new_session=True,
        )
        return folder, process

    def close(self):
        """End the rooms that were warmed and not needed."""
        atexit.unregister(self.close)
        if self._found is None:
            self._ready.put(self._trial)
        with contextlib.suppress(queue.Empty):
            while True:
                folder, process = self._ready.get_nowait()
                _end(process)
                process.stdin.close()
                process.stdout.close()
                folder.cleanup()


def _give(process, work):
    """Hand a job to a fresh room; one that ended already is found out by listening."""
    with contextlib.suppress(OSError):
        process.stdin.write(json.dumps(work).encode())
        process.stdin.close()


def _end(process):
    """End a fresh room and whatever it started; on Windows the room alone."""
    if os.name == "posix":
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(process.pid, signal.SIGKILL)
    else:
        process.kill()
    process.wait()
