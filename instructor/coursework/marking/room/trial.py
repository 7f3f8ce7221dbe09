"""The walls tried by attack: what a hostile hand-in would do, done from behind them, harmlessly.

The attacker is a copy of the warm process, walled in as a room is. Its prey are decoys: files that
lie outside the room as the class's do, sockets and memory of the process that stays, and that
process itself, which holds back the signals of the trial and looks afterwards which came. Every
attack does the thing itself, so an answer of the kernel's is not taken on trust.
"""

import contextlib
import ctypes
import errno
import fcntl
import mmap
import os
import resource
import shutil
import signal
import socket
import struct

DECOYS = ("key", "roster", "gradebook", "hand-in")
SIGNALS = {
    "by kill": signal.SIGUSR1,
    "through a handle of the process": signal.SIGUSR2,
    "through a pipe (fcntl)": signal.SIGRTMIN + 1,
    "through a socket (ioctl)": signal.SIGIO,
}
SHARED_BYTES, IPC_PRIVATE, IPC_CREAT, IPC_RMID = 4096, 0, 0o1000, 0
SIOCSPGRP, FIOASYNC = 0x8902, 0x5452


class Prey:
    """What the attacks aim at; made by the process that stays, and taken away at the end.

    Parameters
    ----------
    folder : str
        A new folder outside the one that the attacker may write to.
    keys : str
        The folder of the kit's keys, to be listed.
    """

    def __init__(self, folder, keys):
        self.folder, self.keys, self.process = folder, keys, os.getpid()
        self.library = f"{folder}/library"  # what a room may read
        self.memory, self.stream = f"/dev/shm/{self.process}-trial", f"{folder}/stream"
        self.datagrams, self.abstract = f"{folder}/datagrams", f"\0trial-{self.process}"

    def __enter__(self):
        os.mkdir(self.folder, 0o700)
        os.mkdir(self.library, 0o700)
        for name in (*DECOYS, *CHANGES, "library/module"):
            with open(f"{self.folder}/{name}", "w", encoding="ascii") as file:
                file.write("private")
        self._old = signal.pthread_sigmask(signal.SIG_BLOCK, SIGNALS.values())
        self._shared = _libc().shmget(IPC_PRIVATE, SHARED_BYTES, IPC_CREAT | 0o600)
        kinds = {self.stream: "STREAM", self.abstract: "STREAM", self.datagrams: "DGRAM"}
        self._sockets = {}
        for address, kind in kinds.items():
            made = socket.socket(socket.AF_UNIX, getattr(socket, f"SOCK_{kind}"))
            made.bind(address)
            made.setblocking(False)
            self._sockets[address] = made
            if kind == "STREAM":
                made.listen()
        return self

    def __exit__(self, *_):
        for made in self._sockets.values():
            made.close()
        _libc().shmctl(self._shared, IPC_RMID, None)
        self._forget_signals()
        with contextlib.suppress(OSError):
            os.unlink(self.memory)
        shutil.rmtree(self.folder, ignore_errors=True)

    def _forget_signals(self):
        """Drop those that wait, some of them several times, and let signals through again."""
        handlers = {sent: signal.signal(sent, signal.SIG_IGN) for sent in SIGNALS.values()}
        signal.pthread_sigmask(signal.SIG_SETMASK, self._old)
        for sent, handler in handlers.items():
            signal.signal(sent, handler)

    def suffered(self):
        """By harm, what reached the process that stays; only it can tell."""
        came = signal.sigpending()
        found = {"signals": [name for name, sent in SIGNALS.items() if sent in came]}
        with contextlib.suppress(OSError):
            self._sockets[self.datagrams].recv(9)
            found["others"] = ["sends a datagram"]
        return {harm: names for harm, names in found.items() if names}


def attack(prey, bounds):
    """Try everything, from behind whatever walls stand.

    Parameters
    ----------
    prey : Prey
    bounds : dict
        As the walls got them.

    Returns
    -------
    dict of str to list of str
        By harm, the attacks that got through. What only the prey can tell is not in it.
    """
    tried = {"reads": _reads(prey), "changes": _changes(prey), "programs": PROGRAMS,
             "signals": _signals(prey), "others": _others(prey), "network": NETWORK,
             "disk": _disk(bounds), "memory": _memory(prey, bounds),
             "limits": _limits(bounds)}  # fmt: skip
    found = {}
    for harm, attacks in tried.items():
        through = [name for name, do in attacks.items() if _gets_through(do)]
        if through and harm != "signals":
            found[harm] = through
    return found


def _gets_through(do):
    try:
        return do() is not False
    except (OSError, MemoryError, ValueError):
        return False


def _reads(prey):
    """A key, the roster, the gradebook, another's hand-in, and the folder they lie in."""
    return {
        **{name: lambda name=name: open(f"{prey.folder}/{name}").read() for name in DECOYS},
        "a list of files": lambda: os.listdir(prey.folder),
        "a list of the keys": lambda: os.listdir(prey.keys),
        "another program's settings": lambda: open(f"/proc/{prey.process}/environ", "rb").read(),
    }


CHANGES = {
    "empties by path": lambda file: os.truncate(file, 0),
    "writes": lambda file: os.close(os.open(file, os.O_WRONLY)),
    "renames": lambda file: os.rename(file, f"{file}-away"),
    "takes in": lambda file: os.rename(file, "taken"),
    "links": lambda file: os.link(file, "linked"),
    "deletes": os.remove,
    "changes who may read": lambda file: os.chmod(file, 0o777),
    "dates back": lambda file: os.utime(file, (0, 0)),
    "adds": lambda file: open(f"{file}-new", "x").close(),
}


def _changes(prey):
    """Each change has a file of its own, named after it, and the last one what a room may read."""

    def empties():
        os.close(os.open(f"{prey.library}/module", os.O_RDONLY | os.O_TRUNC))

    each = {name: lambda do=do, name=name: do(f"{prey.folder}/{name}")
            for name, do in CHANGES.items()}  # fmt: skip
    return each | {"empties a library while reading": empties}


def _copies_itself():
    if (pid := os.fork()) == 0:
        os._exit(0)
    os.waitpid(pid, 0)


def _becomes_a_program():
    """Of a program that is not there: refused by a wall, or looked for."""
    try:
        os.execv("/no such program", ["none"])
    except OSError as error:
        return error.errno == errno.ENOENT


PROGRAMS = {"copies itself": _copies_itself, "becomes another": _becomes_a_program}


def _signals(prey):
    """Each way with a signal of its own; the prey says which came."""

    def by_handle():
        signal.pidfd_send_signal(os.pidfd_open(prey.process), signal.SIGUSR2)

    def by_pipe():
        read, write = os.pipe()
        fcntl.fcntl(read, fcntl.F_SETOWN, prey.process)
        fcntl.fcntl(read, 10, SIGNALS["through a pipe (fcntl)"])  # F_SETSIG
        fcntl.fcntl(read, fcntl.F_SETFL, os.O_ASYNC)
        os.write(write, b"x")

    def by_socket():
        here, there = socket.socketpair()
        fcntl.ioctl(here, SIOCSPGRP, struct.pack("i", prey.process))
        fcntl.ioctl(here, FIOASYNC, struct.pack("i", 1))
        there.send(b"x")

    kill = lambda: os.kill(prey.process, signal.SIGUSR1)  # noqa: E731
    return dict(zip(SIGNALS, (kill, by_handle, by_pipe, by_socket), strict=True))


def _others(prey):
    """Sockets and memory of another program."""

    def datagram():  # the prey says whether it came
        here, _ = socket.socketpair(socket.AF_UNIX, socket.SOCK_DGRAM)
        here.sendto(b"x", prey.datagrams)
        return False

    def shared():
        libc = _libc()
        libc.shmat.restype = ctypes.c_long
        return libc.shmat(prey._shared, None, 0) != -1

    return {
        "connects by a path": lambda: socket.socket(socket.AF_UNIX).connect(prey.stream),
        "connects by a name": lambda: socket.socket(socket.AF_UNIX).connect(prey.abstract),
        "sends a datagram": datagram,
        "takes its shared memory": shared,
        "opens its memory": lambda: open(f"/proc/{prey.process}/mem", "rb").close(),
    }


def _connects(kind):
    """Whether this machine's own network answers: a port that is closed does, too."""
    with socket.socket(socket.AF_INET, kind) as made:
        made.settimeout(1)
        try:
            made.connect(("127.0.0.1", 9))
        except ConnectionRefusedError:
            return True


NETWORK = {
    "connects": lambda: _connects(socket.SOCK_STREAM),
    "sends": lambda: _connects(socket.SOCK_DGRAM),
}


def _disk(bounds):
    def fills():
        for name in ("one", "two"):
            with open(name, "wb") as file:
                file.write(bytes(bounds["disk_bytes"] * 3 // 4))

    return {"fills": fills}


def _memory(prey, bounds):
    """Address space beyond the limit, and the kinds that the limit does not count."""

    def kept():
        number = _libc().shmget(IPC_PRIVATE, SHARED_BYTES, IPC_CREAT | 0o600)
        return number >= 0 and _libc().shmctl(number, IPC_RMID, None) == 0

    return {
        "maps": lambda: mmap.mmap(-1, 2 * bounds["memory_bytes"]).close(),
        "as a file without a name": lambda: os.close(os.memfd_create("trial")),
        "as a shared file": lambda: open(prey.memory, "x").close(),
        "as a shared segment": kept,
    }


def _limits(bounds):
    def unlimited(name):
        return lambda: resource.setrlimit(getattr(resource, name), (-1, -1))

    def opens():
        kept = [os.open(os.devnull, os.O_RDONLY) for _ in range(bounds["open_files"])]
        for each in kept:
            os.close(each)

    return {
        "opens many files": opens,
        "lifts its processor time": unlimited("RLIMIT_CPU"),
        "lifts the size of a file": unlimited("RLIMIT_FSIZE"),
    }


def _libc():
    return ctypes.CDLL(None, use_errno=True)
