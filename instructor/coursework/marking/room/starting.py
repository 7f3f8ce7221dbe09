"""The start of the warm process, by the standard library alone.

So `mark` starts it before anything else is loaded, and both load at the same time.
"""

import os
import secrets
import socket
import subprocess
import sys
import tempfile
from pathlib import Path

WARM = Path(__file__).with_name("warm.py")
ONE_THREAD = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")
_early = []


class Warm:
    """A warm process that was started, the line to it and its folder.

    The folder is made and cleared by the process itself, which outlives a marker that is killed.
    """

    def __init__(self):
        self.control, there = socket.socketpair(socket.AF_UNIX, socket.SOCK_SEQPACKET)
        self.folder = os.path.join(tempfile.gettempdir(), f"room-{secrets.token_hex(8)}")
        with there:
            self.process = subprocess.Popen(
                [sys.executable, "-I", "-B", str(WARM), "serve", str(there.fileno()), self.folder],
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
                pass_fds=[there.fileno()],
                cwd=tempfile.gettempdir(),
                env=environment(self.folder),
            )


def environment(folder):
    """Nothing of the instructor's own environment but what a process needs to start."""
    keep = {name: os.environ[name] for name in ("SYSTEMROOT",) if name in os.environ}
    return keep | dict.fromkeys(ONE_THREAD, "1") | {
        "HOME": folder,
        "IPYTHONDIR": folder,
        "MPLCONFIGDIR": folder,
        "MPLBACKEND": "agg",
        "PYTHONUTF8": "1",
    }  # fmt: skip


def start_early():
    """Start one now, for whoever asks first; where there are no forked rooms, nothing."""
    if sys.platform == "linux":
        _early.append(Warm())


def started():
    """The one that was started early, or a new one."""
    return _early.pop() if _early else Warm()
