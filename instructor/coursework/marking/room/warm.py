"""The process in which rooms are made: warm, with everything loaded that most hand-ins need.

Where the system can fork, one such process makes a room in a few milliseconds: a copy of itself,
walled in, which reads its job, runs it and ends. Elsewhere each room is a process of its own,
started and warmed before it is needed.

It is started as a script, without the instructor's environment, and student code never runs in
the process that stays.
"""

import contextlib
import gc
import importlib
import io
import json
import os
import random
import select
import shutil
import signal
import socket
import sys
import time

HERE = os.path.dirname(os.path.abspath(__file__))
KIT = os.path.abspath(os.path.join(HERE, *[os.pardir] * 4))
sys.path[:0] = [HERE, KIT]

import cells  # noqa: E402
import numpy.random  # noqa: E402
import walls  # noqa: E402

if sys.platform == "linux":
    import trial

from kitchenmath.practice import last_look, steps  # noqa: E402
from kitchenmath.practice.sheet import Sheet  # noqa: E402
from kitchenmath.units.registry import KINDS  # noqa: E402

sys.path.remove(HERE)
READABLE = (os.path.join(KIT, "kitchenmath"), os.path.join(KIT, "lessons"))
KEYS = os.path.join(KIT, "instructor", "keys")
# To try which walls this machine has, before there is a job that says what it may use.
TRIAL = {"memory_bytes": 1 << 30, "disk_bytes": 1 << 20, "files": 100, "open_files": 64,
         "threads": 32, "seconds": 10}  # fmt: skip
# What takes long to load; loaded here the first time that a hand-in names it.
SLOW = ("matplotlib.pyplot", "kitchenmath.figures", "kitchenmath.panels")


def serve(control, folder):
    """Make a room for each order that comes, until the door is closed.

    Parameters
    ----------
    control : socket.socket
        Orders are JSON: `{"do": "run", "room": number}` with two descriptors (where the job is,
        where its lines go) and one for how it ended; `{"do": "end", "room": number}`;
        `{"do": "load", "module": name}`.
    folder : str
        Made here and cleared here, also after the door's own process was killed.
    """
    os.mkdir(folder, 0o700)
    os.chdir(folder)
    try:
        _serve(control)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _serve(control):
    shell = cells.shell()
    rehearse(shell)
    wake, awake = os.pipe()
    os.set_blocking(awake, False)
    os.set_blocking(wake, False)
    signal.set_wakeup_fd(awake)
    signal.signal(signal.SIGCHLD, lambda *_: None)
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the marker decides; it closes the door
    gc.freeze()
    rooms = {}
    control.send(json.dumps(try_walls() | {"alone": _alone()}).encode())
    while True:
        ready = select.select([control, wake], [], [])[0]
        if wake in ready:
            with contextlib.suppress(BlockingIOError):
                os.read(wake, 4096)
            _reap(rooms)
        if control in ready:
            raw, handles, _, _ = socket.recv_fds(control, 65536, 4)
            if not raw:
                break
            _obey(json.loads(raw), handles, rooms, shell)
    for pid, _ in rooms.values():
        _end(pid)


def rehearse(shell):
    """Ask and look at one amount of each kind: what that loads, every copy of this process has.

    Units that were parsed and tables that were read are a sixth of what a hand-in's own cells take.
    """
    with contextlib.redirect_stdout(io.StringIO()):
        shell.run_cell("pass", store_history=False)
        sheet = Sheet("rehearsal", "", "BH-1000")
        for kind, (unit, typed) in KINDS.items():
            repr(sheet.given("q1", one=steps(1, 2, 1, unit, kind)))
            sheet.look("q1", typed, kind, plausible=(typed, typed))
        last_look({})


def _obey(order, handles, rooms, shell):
    if order["do"] == "load" and order["module"] in SLOW:
        with contextlib.suppress(ImportError):
            importlib.import_module(order["module"])
    elif order["do"] == "end" and order["room"] in rooms:
        _end(rooms[order["room"]][0])
    elif order["do"] == "run":
        job, lines, ended = handles
        try:
            pid = os.fork()
        except OSError as error:
            os.write(ended, json.dumps({"no room": str(error)}).encode())
            pid = None
        if pid == 0:
            _live(job, lines, shell)
        os.close(job)
        os.close(lines)
        if pid is None:
            os.close(ended)
        else:
            rooms[order["room"]] = pid, ended


def _live(job, lines, shell):
    """A room's whole life, in the copy; it never returns."""
    code = 1
    try:
        os.setsid()
        walls.end_with_parent()
        signal.set_wakeup_fd(-1)
        signal.signal(signal.SIGCHLD, signal.SIG_DFL)
        with open(job, "rb") as file:
            work = json.loads(file.read())
        # The door's own handles, and those of other rooms, are not for student code.
        os.closerange(3, lines)
        os.closerange(lines + 1, 4096)
        code = live(work, lines, shell)
    finally:
        os._exit(code)


def live(work, lines, shell):
    """Put up the walls and run a job.

    Parameters
    ----------
    work : dict
        What `cells.run` takes, with `folder`, `bounds` and `walls`, the names of those that must
        stand; with one of them missing nothing runs.
    lines : int
        The descriptor that lines go to.
    shell : cells.Shell

    Returns
    -------
    int
        The process's exit code.
    """
    _reseed()
    os.environ.update(dict.fromkeys(("HOME", "IPYTHONDIR", "MPLCONFIGDIR"), work["folder"]))
    missing = walls.raise_walls(work["folder"], work["bounds"], READABLE)
    if lost := sorted(set(work["walls"]) & set(missing)):
        os.write(lines, json.dumps({"lost": lost}).encode() + b"\n")
        return 1

    def write(line):
        while line:
            line = line[os.write(lines, line) :]

    cells.few_threads(work["bounds"]["threads"])
    cells.run(work, shell, write)
    return 0


def try_walls():
    """What this machine does not hold back, found by attack in a copy that ends at once.

    Returns
    -------
    dict
        `lacking`: the walls that did not go up, with what the machine answered; `through`: by
        harm, the attacks that succeeded, None where none could be tried; `trial_ms`.
    """
    start, folder = time.perf_counter(), os.path.join(os.getcwd(), "trial")
    os.mkdir(folder)
    try:
        with trial.Prey(os.path.join(os.getcwd(), "prey"), KEYS) as prey:
            said = _from_a_copy(lambda: _attack(folder, prey))
            suffered = prey.suffered()
    except OSError:  # no room for decoys, or no copy
        said = {}
    if not said:
        return {"lacking": dict.fromkeys(walls.WALLS, "the trial failed"), "through": None}
    for harm, names in suffered.items():
        said["through"].setdefault(harm, []).extend(names)
    shutil.rmtree(folder, ignore_errors=True)
    return said | {"trial_ms": round(1000 * (time.perf_counter() - start), 1)}


def untried():
    """The same of another system than Linux: which walls go up is all that is known."""
    return {"lacking": walls.raise_walls(os.getcwd(), TRIAL, READABLE), "through": None}


def _attack(folder, prey):
    lacking = walls.raise_walls(folder, TRIAL, [*READABLE, prey.library])
    return {"lacking": lacking, "through": trial.attack(prey, TRIAL)}


def _from_a_copy(do):
    """What a function answers in a copy of this process, as data; {} where the copy ended early."""
    read, write = os.pipe()
    pid = os.fork()
    if pid == 0:
        try:
            os.closerange(3, write)
            os.closerange(write + 1, 4096)
            os.write(write, json.dumps(do()).encode())
        finally:
            os._exit(0)
    os.close(write)
    with open(read, "rb") as file:
        said = file.read()
    os.waitpid(pid, 0)
    try:
        return json.loads(said)
    except ValueError:
        return {}


def _alone():
    """Whether this process has one thread: only then is a copy of it whole."""
    try:
        return len(os.listdir("/proc/self/task")) == 1
    except OSError:
        return False


def _reap(rooms):
    for number, (pid, ended) in list(rooms.items()):
        done, status, used = os.wait4(pid, os.WNOHANG)
        if done:
            del rooms[number]
            told = {"status": status, "seconds": used.ru_utime + used.ru_stime}
            with contextlib.suppress(OSError):
                os.write(ended, json.dumps(told).encode())
            os.close(ended)


def _end(pid):
    for end in (os.killpg, os.kill):
        with contextlib.suppress(ProcessLookupError, PermissionError):
            end(pid, signal.SIGKILL)
            return


def _reseed():
    """Every room draws other random numbers, also from a copied generator."""
    random.seed()
    numpy.random.seed()


def once():
    """One room in this very process: the job comes on standard input."""
    shell = cells.shell()
    work = json.loads(sys.stdin.buffer.read())
    lines = os.dup(1)
    nowhere = os.open(os.devnull, os.O_RDWR)
    for descriptor in (0, 1, 2):
        os.dup2(nowhere, descriptor)
    os._exit(live(work, lines, shell))


if __name__ == "__main__":
    if sys.argv[1] == "serve":
        serve(socket.socket(fileno=int(sys.argv[2])), sys.argv[3])
    elif sys.argv[1] == "walls":
        print(json.dumps(try_walls() if sys.platform == "linux" else untried()))
    else:
        once()
