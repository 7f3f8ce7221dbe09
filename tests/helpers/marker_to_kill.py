"""A marker that is killed: `test_kill.py` starts this once and says when each one dies.

Everything is loaded once; each marker is a copy of this process, and dies by SIGKILL from
outside, which no program can catch. What it does is counted by what it asks of the system (files
opened and renamed, folders, processes, the database), so that its death comes at much the same
place on a slow machine as on a quick one.

Each line that comes in holds a folder, a count and a wait in milliseconds, parted by tabs; with a
count of 0 the marker lives, with a wait of 0 it dies right there. A line goes out for each: its
signal (0: none) and how far it counted.
"""

import os
import signal
import sys
import tempfile
import time

from coursework.classes.course import open_course
from coursework.gradebook import kept_copy as gradebook_copy  # noqa: F401
from coursework.gradebook import writer as grade_writer
from coursework.marking import mark_set
from coursework.marking.room.door import rooms
from coursework.sets.checked_keys import library

ASKED = ("open", "os.", "sqlite3.", "subprocess.", "socket.", "shutil.", "tempfile.", "fcntl.")


def mark(set_id, folder, death, at_once, tell):
    """Mark the class in the folder in this process, and tell each step, or only the deadly one."""
    counted = 0

    def count(event, _):
        nonlocal counted
        if event.startswith(ASKED):
            counted += 1
            if counted == death or not death:
                os.write(tell, b".")
            if counted == death and at_once:
                signal.pause()

    grade_writer.BATCH = 2  # so that a small class has several
    sys.addaudithook(count)
    mark_set.mark_set(open_course(folder), set_id)
    rooms().close()


def one(set_id, folder, death, wait_ms):
    """A marker's life: its signal and its count."""
    told, tell = os.pipe()
    pid = os.fork()
    if pid == 0:
        code = 1
        try:
            os.close(told)
            mark(set_id, folder, death, not wait_ms, tell)
            code = 0
        finally:
            os._exit(code)
    os.close(tell)
    count = 0
    while said := os.read(told, 65536):
        count += len(said)
        if death:
            time.sleep(wait_ms / 1000)
            os.kill(pid, signal.SIGKILL)
            break
    os.close(told)
    status = os.waitpid(pid, 0)[1]
    if not os.WIFSIGNALED(status) and os.WEXITSTATUS(status):
        raise SystemExit(f"the marker failed in {folder}")
    return os.WTERMSIG(status) if os.WIFSIGNALED(status) else 0, count


library()  # reads every file of the kit: no step of a marking that could spoil anything
tempfile.gettempdir()  # Python's own trial file, which a death right there would leave lying
for line in sys.stdin:
    where, at, wait = line.rstrip("\n").split("\t")
    print(*one(sys.argv[1], where, int(at), float(wait)), flush=True)
