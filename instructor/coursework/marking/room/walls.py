"""The walls of the student's room on Linux, without root.

Each wall is a function of its own that goes up in the process that calls it and cannot be taken
down again. `raise_walls` puts them up in order and names those that this machine lacks. macOS has
only the limits, Windows none; they say so the same way.

Sources: the kernel's interface (landlock(7), seccomp(2), user_namespaces(7), prctl(2)).
"""

import contextlib
import ctypes
import errno
import mmap
import os
import platform
import struct
import sys
import sysconfig

from call_filter import program

# In the order in which they go up; the door says what each holds back.
WALLS = ("namespaces", "disk", "memory", "limits", "files", "calls")

CLONE_NEWNS, CLONE_NEWUTS, CLONE_NEWIPC = 0x00020000, 0x04000000, 0x08000000
CLONE_NEWUSER, CLONE_NEWNET = 0x10000000, 0x40000000
MS_NOSUID, MS_NODEV, MS_NOEXEC, MS_REC, MS_PRIVATE = 2, 4, 8, 16384, 1 << 18
PR_SET_PDEATHSIG, PR_SET_DUMPABLE, PR_SET_SECCOMP, PR_SET_NO_NEW_PRIVS = 1, 4, 22, 38
LANDLOCK_CREATE, LANDLOCK_ADD, LANDLOCK_RESTRICT = 444, 445, 446  # the same on both processors
SIGKILL = 9


class NoWall(OSError):
    """This machine lacks a wall; the message says what it answered."""


def raise_walls(folder, bounds, room=()):
    """Put up every wall that this machine has.

    Parameters
    ----------
    folder : str
        The working folder; a private one in memory is laid over it.
    bounds : dict
        `memory_bytes`, `disk_bytes`, `files`, `open_files`, `threads`, `seconds`.
    room : iterable of str
        Folders that may be read besides Python's own.

    Returns
    -------
    dict of str to str
        Each wall that is missing, and what the machine answered.
    """
    missing = {}
    if sys.platform != "linux":
        missing = dict.fromkeys(("namespaces", "disk", "files", "calls"), sys.platform)
    raising = (
        own_namespaces,
        lambda: own_disk(folder, bounds["disk_bytes"], bounds["files"]),
        lambda: bound_memory(bounds["memory_bytes"]),
        lambda: limits(bounds),
        lambda: only_these_files(folder, [*python_folders(), *room]),
        refuse_calls,
    )
    for name, up in zip(WALLS, raising, strict=True):
        if name == "disk" and "namespaces" in missing:  # mounted there, it would stay and show
            missing.setdefault(name, "a disk of one's own needs a namespace")
        if name not in missing:
            try:
                up()
            except (OSError, ValueError, ImportError, AttributeError) as error:
                missing[name] = str(error)
        if name == "disk" and name in missing and sys.platform == "linux":
            with contextlib.suppress(OSError):
                give_up_rights()
    with contextlib.suppress(OSError):
        os.chdir(folder)
    return missing


def end_with_parent():
    """Be killed when the process that made this one ends."""
    _libc().prctl(PR_SET_PDEATHSIG, SIGKILL, 0, 0, 0)


def own_namespaces():
    """A network without any device, shared memory and mounts of one's own.

    As an ordinary user that takes a user namespace; where those are forbidden, a root user may
    still get the rest.
    """
    libc, user, group = _libc(), os.getuid(), os.getgid()
    rest = CLONE_NEWNET | CLONE_NEWIPC | CLONE_NEWNS | CLONE_NEWUTS
    if libc.unshare(CLONE_NEWUSER | rest) == 0:
        _write("/proc/self/setgroups", "deny")
        _write("/proc/self/uid_map", f"{user} {user} 1")
        _write("/proc/self/gid_map", f"{group} {group} 1")
    elif libc.unshare(rest) != 0:
        raise _error("unshare")


def own_disk(folder, most_bytes, most_files):
    """A folder in memory, of bounded size, that nobody else sees and that ends with the process.

    Afterwards the right to mount, and every other right that a namespace's first user has, is
    given up.
    """
    libc = _libc()
    # Whatever is mounted here must not show outside.
    if libc.mount(None, b"/", None, MS_REC | MS_PRIVATE, None) != 0:
        raise _error("mount")
    options = f"size={int(most_bytes)},nr_inodes={int(most_files)},mode=700".encode()
    flags = MS_NOSUID | MS_NODEV | MS_NOEXEC
    if libc.mount(b"tmpfs", os.fsencode(folder), b"tmpfs", flags, options) != 0:
        raise _error("mount")
    give_up_rights()


def give_up_rights():
    """Drop all capabilities: root in the room is nobody special."""
    if _libc().capset(struct.pack("=II", 0x20080522, 0), bytes(24)) != 0:
        raise _error("capset")


def bound_memory(most_bytes):
    """Address space, on top of what the process holds already, which is not the student's doing.

    macOS takes the limit and does not keep it, so it is tried.
    """
    import resource

    most = _memory_now() + most_bytes
    _limit(resource, "RLIMIT_AS", most)
    try:
        mmap.mmap(-1, most).close()
    except OSError:
        return
    raise NoWall(errno.ENOSYS, "the limit is taken and not kept")


def limits(bounds):
    """Processor time, size of a file, open files and threads; no core dumps."""
    import resource

    _limit(resource, "RLIMIT_CPU", int(bounds["seconds"]) + 2)
    _limit(resource, "RLIMIT_FSIZE", bounds["disk_bytes"])
    _limit(resource, "RLIMIT_NOFILE", bounds["open_files"])
    _limit(resource, "RLIMIT_NPROC", bounds["threads"])
    _limit(resource, "RLIMIT_CORE", 0)


def _limit(resource, name, most):
    """Set one limit where the system has it; what is lower already stays."""
    if hasattr(resource, name):
        kind, hard = getattr(resource, name), resource.getrlimit(getattr(resource, name))[1]
        if hard != resource.RLIM_INFINITY:
            most = min(most, hard)
        resource.setrlimit(kind, (most, most))


def only_these_files(folder, readable):
    """Landlock: read these, write the working folder, and nothing else of this machine's files.

    From ABI 4 also no TCP, from ABI 6 no signals to, and no abstract sockets of, other processes.
    """
    libc = _libc()
    abi = landlock_abi(libc)
    if abi < 1:
        raise _error("landlock")
    read = 0b1101  # execute (map a library), read a file, list a folder
    everything = (1 << (13 if abi < 2 else 14 if abi < 3 else 15 if abi < 5 else 16)) - 1
    attributes = struct.pack("=Q", everything)
    if abi >= 4:
        attributes += struct.pack("=Q", 0b11)  # bind, connect
    if abi >= 6:
        attributes += struct.pack("=Q", 0b11)  # abstract unix sockets, signals
    ruleset = libc.syscall(LANDLOCK_CREATE, attributes, len(attributes), 0)
    if ruleset < 0:
        raise _error("landlock")
    try:
        for path in readable:
            _allow(libc, ruleset, path, read)
        for device in ("/dev/null", "/dev/zero", "/dev/urandom", "/dev/random"):
            _allow(libc, ruleset, device, 0b110)
        _allow(libc, ruleset, folder, everything)
        if libc.prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) != 0:
            raise _error("prctl")
        if libc.syscall(LANDLOCK_RESTRICT, ruleset, 0) != 0:
            raise _error("landlock")
    finally:
        os.close(ruleset)


def landlock_abi(libc):
    """The version of Landlock that this kernel has; below 1 where it has none."""
    return libc.syscall(LANDLOCK_CREATE, None, 0, 1)


def _allow(libc, ruleset, path, access):
    try:
        handle = os.open(path, os.O_PATH | os.O_CLOEXEC)
    except FileNotFoundError:
        return
    try:
        if not os.path.isdir(path):
            access &= 0b111 | 1 << 14  # what can be done with a file
        rule = struct.pack("=Qi", access, handle)
        if libc.syscall(LANDLOCK_ADD, ruleset, 1, rule, 0) != 0:
            raise _error("landlock")
    finally:
        os.close(handle)


def python_folders():
    """Where the interpreter and its libraries lie, and the system's shared libraries and fonts."""
    paths = sysconfig.get_paths()
    found = {paths[name] for name in ("stdlib", "platstdlib", "purelib", "platlib")}
    found |= {path for path in sys.path if path.endswith(("site-packages", "dist-packages"))}
    found |= {os.path.join(base, "lib") for base in (sys.base_prefix, sys.base_exec_prefix)}
    found |= {"/lib", "/lib64", "/usr/lib", "/usr/lib64", "/etc/ld.so.cache", "/etc/localtime"}
    found |= {"/usr/share/zoneinfo", "/usr/share/fonts", "/usr/local/share/fonts"}
    return sorted(os.path.realpath(path) for path in found if os.path.exists(path))


def refuse_calls():
    """A seccomp filter: refused calls answer "not permitted", so that the cell goes on and says so.

    A call by another processor's table would slip past the numbers, and ends the process. clone3
    answers "no such call", so that the C library makes threads with clone, whose flags a filter
    can see.
    """
    column = {"x86_64": 0, "aarch64": 1}.get(platform.machine())
    if column is None or struct.calcsize("P") != 8:
        raise NoWall(errno.ENOSYS, f"no table of system calls for {platform.machine()}")
    libc, steps = _libc(), program(column)
    code = ctypes.create_string_buffer(steps, len(steps))
    head = struct.pack("HP", len(steps) // 8, ctypes.addressof(code))
    if libc.prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) != 0:
        raise _error("prctl")
    if libc.prctl(PR_SET_SECCOMP, 2, head, 0, 0) != 0:
        raise _error("seccomp")


def _memory_now():
    """Bytes of address space in use."""
    try:
        with open("/proc/self/statm", encoding="ascii") as file:
            return int(file.read().split()[0]) * os.sysconf("SC_PAGE_SIZE")
    except OSError:
        return 1 << 30


def _write(path, text):
    with open(path, "w", encoding="ascii") as file:
        file.write(text)


def _libc():
    return ctypes.CDLL(None, use_errno=True)


def _error(call):
    number = ctypes.get_errno()
    return NoWall(number, f"{call}: {os.strerror(number)}")
