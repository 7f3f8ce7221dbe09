"""Rooms as on an older kernel: a smaller Landlock, or walls that do not go up.

The warm process is started through a script that takes away first. What Landlock is then not
asked to hold it does not hold, on this kernel as on the old one.
"""

from contextlib import contextmanager

from coursework.marking.room import forked_rooms, starting

# The function of walls.py that puts each wall up.
FUNCTIONS = {
    "namespaces": "own_namespaces",
    "disk": "own_disk",
    "memory": "bound_memory",
    "limits": "limits",
    "files": "only_these_files",
    "calls": "refuse_calls",
}
SCRIPT = """
import runpy, sys
sys.path.insert(0, {room!r})
import walls
def breaks(*_):
    raise walls.NoWall(1, "no such wall")
real = walls.landlock_abi
walls.landlock_abi = lambda libc: min(real(libc), {abi})
for name in {without!r}:
    setattr(walls, name, breaks)
sys.argv[0] = {warm!r}
runpy.run_path({warm!r}, run_name="__main__")
"""


@contextmanager
def rooms_of_a_kernel(folder, abi=99, without=()):
    """Rooms where Landlock has at most this version, and without some walls.

    Parameters
    ----------
    folder : Path
        For the script.
    abi : int
    without : iterable of str
        Walls that do not go up.

    Yields
    ------
    ForkedRooms
    """
    names = [FUNCTIONS[wall] for wall in without]
    warm = str(starting.WARM)
    script = folder / f"warm-{abi}-{'-'.join(without)}.py"
    script.write_text(
        SCRIPT.format(room=str(starting.WARM.parent), abi=abi, without=names, warm=warm)
    )
    before, starting.WARM = starting.WARM, script
    try:
        opened = forked_rooms.ForkedRooms()
    finally:
        starting.WARM = before
    try:
        yield opened
    finally:
        opened.close()
