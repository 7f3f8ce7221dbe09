"""Rooms as copies of one warm process, made in a few milliseconds: Linux."""

import atexit
import json
import os
import shutil
import socket
import subprocess
import tempfile
import threading

from coursework.marking.room.listening import listen
from coursework.marking.room.shared import Found, NoRoom, clocks, refuse_lost
from coursework.marking.room.starting import started


class ForkedRooms:
    """Opens rooms as copies of one warm process."""

    def __init__(self):
        warm = started()
        self.folder, self.warm = warm.folder, warm.process
        self._control, self._lock = warm.control, threading.Lock()
        self._hello, self._number, self._loaded = None, 0, set()
        atexit.register(self.close)

    @property
    def found(self):
        """What the trial of the walls found."""
        return Found(self._greeting())

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
        stand = self.found.stand
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
                    came = listen(stream, most, seconds, *clocks(work))
                finally:
                    with self._lock:
                        self._send({"do": "end", "room": number})
                    how = _status(status.read())
        if "status" not in how:
            raise NoRoom(how.get("no room", "the process that makes rooms ended"))
        return refuse_lost(came)

    def _own_folder(self):
        try:
            return tempfile.TemporaryDirectory(dir=self.folder, ignore_cleanup_errors=True)
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
            self.warm.kill()  # it is still loading, and made no room
        try:
            self.warm.wait(5)
        except subprocess.TimeoutExpired:
            self.warm.kill()
            self.warm.wait()
        shutil.rmtree(self.folder, ignore_errors=True)


def _status(raw):
    try:
        return json.loads(raw)
    except ValueError:
        return {}
