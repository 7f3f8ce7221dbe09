"""What both ways to open a room share: walls by name, what a room gets, what it must not say."""

import os
from pathlib import Path

from kitchenmath.errors import KitchenError

WARM = Path(__file__).with_name("warm.py")
# What each missing wall does not hold back; see walls.py.
HOLDS_BACK = {
    "namespaces": "using the network",
    "disk": "filling the disk",
    "memory": "using up memory",
    "limits": "using up processor time",
    "files": "reading and changing this machine's files",
    "calls": "starting programs and ending other processes",
}
GRACE = 3.0  # seconds that a cell gets to obey its own clock before it is ended from outside
ONE_THREAD = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")


class NoRoom(KitchenError):
    """A room could not be opened; the message says why."""


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


def refuse_lost(came):
    """What came out of a room whose walls went up.

    The first line is the room's own: no student code runs before it.

    Raises
    ------
    NoRoom
        When a wall that this machine has did not go up.
    """
    if came.raw.startswith(b'{"lost"'):
        raise NoRoom(f"walls that stood did not go up again: {came.raw.decode()}")
    return came
