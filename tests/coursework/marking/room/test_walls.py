"""Each wall of the student's room alone, in a child process that tries what it must hold back.

Every attempt is made twice: without the wall, where it must succeed, and behind it, where it must
not. So a wall that is taken away fails its own tests and no others.
"""

import ctypes
import json
import os
import platform
import re
import signal
import socket
import subprocess
import sys
from pathlib import Path

import pytest
from coursework.marking.room import door, shared, syscalls

from tests.helpers.old_kernel import FUNCTIONS
from tests.helpers.this_machine import need

pytestmark = pytest.mark.skipif(
    sys.platform != "linux", reason="The walls are Linux's; other systems say that they lack them."
)

ROOM = Path(door.__file__).parent
BOUNDS = {"memory_bytes": 200_000_000, "disk_bytes": 1_000_000, "files": 50, "open_files": 32,
          "threads": 8, "seconds": 0.5}  # fmt: skip
# A disk lies in a namespace: without one it would be mounted on the machine, so better to stop.
OWN_MOUNTS = (
    "before = os.readlink('/proc/self/ns/mnt'); walls.own_namespaces(); "
    "assert before != os.readlink('/proc/self/ns/mnt')"
)
UP = {
    "namespaces": "walls.own_namespaces()",
    "disk": f"{OWN_MOUNTS}; walls.own_disk(folder, 1_000_000, 50)",
    "memory": "walls.bound_memory(200_000_000)",
    "limits": f"walls.limits({BOUNDS}); walls.give_up_rights()",
    "files": "walls.only_these_files(folder, walls.python_folders())",
    "calls": "walls.refuse_calls()",
}
WITHOUT = {"disk": OWN_MOUNTS}  # without the disk the namespace still stands
CHILD = """
import array, ctypes, errno, fcntl, os, resource, shutil, signal, socket, subprocess, sys
import threading, time
sys.path.insert(0, {room!r})
import walls
folder, outside, port, shared = {folder!r}, {outside!r}, {port}, {shared}
libc = ctypes.CDLL(None, use_errno=True)
def call(number, *words):
    done = libc.syscall(number, *words)
    if done < 0:
        raise OSError(ctypes.get_errno(), os.strerror(ctypes.get_errno()))
    return done
{up}
os.chdir(folder)
try:
    {attempt}
    print("done")
except (OSError, MemoryError, RuntimeError, ValueError) as error:
    number = getattr(error, "errno", None)
    print("held", errno.errorcode.get(number, type(error).__name__))
"""


@pytest.fixture
def place(tmp_path):
    """A working folder, a file outside it, a port that listens, shared memory of the parent's."""
    (tmp_path / "folder").mkdir()
    (tmp_path / "outside").mkdir()
    (tmp_path / "outside" / "keys").write_text("secret")
    libc = ctypes.CDLL(None, use_errno=True)
    shared = libc.shmget(0, 4096, 0o1600)  # IPC_PRIVATE, IPC_CREAT
    abstract = socket.socket(socket.AF_UNIX)
    with socket.create_server(("127.0.0.1", 0)) as server, abstract:
        port = server.getsockname()[1]
        abstract.bind(f"\0kitchen-{port}")
        abstract.listen()
        yield {
            "folder": str(tmp_path / "folder"),
            "outside": str(tmp_path / "outside"),
            "port": port,
            "shared": shared,
        }
    libc.shmctl(shared, 0, None)  # IPC_RMID


def child(place, up, attempt):
    """Run an attempt in a child: "done", "held EACCES" and so on, or the signal that ended it."""
    text = CHILD.format(room=str(ROOM), up=up, attempt=attempt.replace("\n", "\n    "), **place)
    run = subprocess.run(
        [sys.executable, "-I", "-c", text], capture_output=True, text=True, timeout=60, check=False
    )
    if run.returncode < 0:
        return signal.Signals(-run.returncode).name
    assert "" == run.stderr
    return run.stdout.strip()


# Wall, what is tried, what answers; and the version of Landlock that it needs.
ATTEMPTS = {
    "namespaces": {
        "connects to the machine": ("socket.create_connection(('127.0.0.1', port), 5)", "ENETUN"),
        "sends a datagram": (
            "socket.socket(2, socket.SOCK_DGRAM).sendto(b'x', ('127.0.0.1', port))", "ENETUN",
        ),
        "reaches an abstract socket": (
            "socket.socket(socket.AF_UNIX).connect(f'\\0kitchen-{port}')", "ECONNREFUSED",
        ),
        "takes shared memory": (
            "libc.shmat.restype = ctypes.c_long\n"
            "if libc.shmat(shared, None, 0) == -1: raise OSError(ctypes.get_errno(), '')",
            "EINVAL",
        ),
    },
    "disk": {
        "fills the disk": ("open('big', 'wb').write(bytes(2_000_000))", "ENOSPC"),
        "makes many files": ("for n in range(99): open(str(n), 'w').close()", "ENOSPC"),
        "mounts": (
            "if libc.mount(b'none', folder.encode(), b'tmpfs', 0, None): "
            "raise OSError(ctypes.get_errno(), '')",
            "EPERM",
        ),
        "changes its root": ("os.chroot(folder)", "EPERM"),
    },
    "memory": {
        "takes memory": ("bytearray(400_000_000)", "MemoryError"),
        "maps memory": ("import mmap; mmap.mmap(-1, 400_000_000)", "ENOMEM"),
        "raises its limit": ("resource.setrlimit(resource.RLIMIT_AS, (-1, -1))", "ValueError"),
    },
    "limits": {
        "writes a long file": ("open('big', 'wb').write(bytes(2_000_000))", "EFBIG"),
        "opens many files": ("kept = [open('/dev/null') for _ in range(99)]", "EMFILE"),
        "burns processor time": (
            "end = time.process_time() + 2.5\nwhile time.process_time() < end: pass", "SIGKILL",
        ),
        "raises its limits": ("resource.setrlimit(resource.RLIMIT_NOFILE, (40, 40))", "ValueError"),
    },
    "files": {
        "reads": ("open(f'{outside}/keys').read()", "EACCES"),
        "lists": ("os.listdir(outside)", "EACCES"),
        "writes": ("open(f'{outside}/keys', 'w')", "EACCES"),
        "adds": ("open(f'{outside}/new', 'w')", "EACCES"),
        "makes a folder": ("os.mkdir(f'{outside}/new')", "EACCES"),
        "deletes": ("os.remove(f'{outside}/keys')", "EACCES"),
        "moves out": ("open('a', 'w').close(); os.rename('a', f'{outside}/a')", "EACCES|EXDEV"),
        "moves in": ("os.rename(f'{outside}/keys', 'a')", "EACCES|EXDEV"),
        "links": ("os.link(f'{outside}/keys', 'a')", "EACCES|EXDEV"),
        "reads through a link": ("os.symlink(f'{outside}/keys', 'a'); open('a')", "EACCES"),
        "makes a pipe": ("os.mkfifo(f'{outside}/pipe')", "EACCES"),
        "reads another's memory": ("open(f'/proc/{os.getppid()}/environ').read()", "EACCES"),
        "reads its own memory": ("open('/proc/self/mem', 'rb')", "EACCES"),
        "empties": ("os.truncate(f'{outside}/keys', 0)", "EACCES", 3),
        "connects": ("socket.create_connection(('127.0.0.1', port), 5)", "EACCES", 4),
        "listens": ("socket.socket().bind(('127.0.0.1', 0))", "EACCES", 4),
        "signals": ("os.kill(os.getppid(), 0)", "EPERM", 6),
        "reaches an abstract socket": (
            "socket.socket(socket.AF_UNIX).connect(f'\\0kitchen-{port}')", "EPERM", 6,
        ),
    },
    "calls": {
        "forks": ("if os.fork() == 0: os._exit(0)", "EPERM"),
        "runs a program": ("subprocess.run(['true'])", "EPERM"),
        "spawns": ("os.posix_spawn(shutil.which('true'), ['true'], {})", "EPERM"),
        "becomes a program": ("os.execv(shutil.which('echo'), ['echo', 'done'])", "EPERM"),
        "signals the parent": ("os.kill(os.getppid(), 0)", "EPERM"),
        "signals itself": ("os.kill(os.getpid(), 0)", "EPERM"),
        "opens a socket": ("socket.socket()", "EPERM"),
        "opens a unix socket": ("socket.socket(socket.AF_UNIX)", "EPERM"),
        "changes a file's rights": ("open('a', 'w').close(); os.chmod('a', 0o700)", "EPERM"),
        "gives a file away": ("open('a', 'w').close(); os.chown('a', -1, -1)", "EPERM"),
        "dates a file back": ("open('a', 'w').close(); os.utime('a', (0, 0))", "EPERM"),
        "steps back in line": ("os.setpriority(os.PRIO_PROCESS, 0, 19)", "EPERM"),
        "chooses a core": ("os.sched_setaffinity(0, os.sched_getaffinity(0))", "EPERM"),
        "changes its kind": (
            "call({'x86_64': 135, 'aarch64': 92}[os.uname().machine], -1)", "EPERM",
        ),
        "empties by path": ("os.truncate(f'{outside}/keys', 0)", "EPERM"),
        "empties what it may read": (
            "os.open(f'{outside}/keys', os.O_RDONLY | os.O_TRUNC)", "EPERM",
        ),
        "signals through a descriptor": ("fcntl.fcntl(0, fcntl.F_SETOWN, os.getpid())", "EPERM"),
        "chooses the signal": ("fcntl.fcntl(0, fcntl.F_SETSIG, 9)", "EPERM"),
        "takes memory that is a file": ("os.memfd_create('a')", "EPERM"),
        "takes shared memory": (
            "if libc.shmget(0, 4096, 0o1600) < 0: raise OSError(ctypes.get_errno(), '')", "EPERM",
        ),
        "sees another's limits": ("resource.prlimit(os.getppid(), resource.RLIMIT_AS)", "EPERM"),
    },
}  # fmt: skip
EACH = [(wall, what) for wall, those in ATTEMPTS.items() for what in those]


@pytest.mark.parametrize(("wall", "what"), EACH, ids=[" ".join(each) for each in EACH])
def test_a_wall_holds_back_what_is_possible_without_it(place, wall, what):
    """Without it the attempt succeeds, behind it the kernel answers as its manual pages say."""
    attempt, answer, *version = ATTEMPTS[wall][what]
    need(wall, *version)
    if wall == "disk":
        need("namespaces")

    assert "done" == child(place | {"folder": copy_of(place)}, WITHOUT.get(wall, ""), attempt)
    put_back(place)
    held = child(place, UP[wall], attempt)

    assert re.match(rf"(held )?({answer})", held), held


def copy_of(place):
    """Another empty folder, so that the second attempt finds what the first one found."""
    folder = Path(place["folder"]).with_name("first")
    folder.mkdir()
    return str(folder)


def put_back(place):
    """What the first attempt changed outside."""
    outside = Path(place["outside"])
    for path in outside.iterdir():
        path.rmdir() if path.is_dir() else path.unlink()
    (outside / "keys").write_text("secret")


HONEST = {
    "disk": "open('a', 'w').write('x' * 1000); assert os.listdir('.') == ['a']",
    "memory": "bytearray(100_000_000)",
    "limits": "open('a', 'wb').write(bytes(1000)); open('b', 'w').close(); time.process_time()",
    "files": "import wave, colorsys; open('a', 'w').write('x'); os.mkdir('b'); os.remove('a')\n"
    "os.rename('b', 'c'); open('/dev/null', 'w').write('x'); open('/dev/urandom', 'rb').read(9)",
    "calls": "one = threading.Thread(target=print, args=('',)); one.start(); one.join()\n"
    "open('a', 'w').write('x'); os.mkdir('b'); resource.getrlimit(resource.RLIMIT_AS)",
}


@pytest.mark.parametrize("wall", HONEST)
def test_honest_work_goes_on_behind_a_wall(place, wall):
    """Files in the working folder, some memory, the standard library, threads."""
    need(wall)

    assert "done" == child(place, UP[wall], HONEST[wall])


def test_what_is_written_to_the_own_disk_is_seen_by_nobody_and_ends(place):
    need("disk")
    attempt = "open('a', 'w').write('x'); print(os.listdir('.'))"

    assert "['a']\ndone" == child(place, UP["disk"], attempt)
    assert [] == os.listdir(place["folder"])


def test_a_room_that_dies_leaves_no_copy_of_its_memory(place):
    """No core dump, and no way to ask for one again: both limits are 0 (core(5))."""
    attempt = "print(resource.getrlimit(resource.RLIMIT_CORE))"
    if "(0, 0)\ndone" == child(place, "", attempt):
        pytest.skip("Core dumps are off on this machine already.")

    assert "(0, 0)\ndone" == child(place, UP["limits"], attempt)


def test_threads_are_bounded_by_the_kernel_for_ordinary_users(place):
    """8 in all, the first one included; a root user may have any number, and the shell counts."""
    attempt = (
        "started = 0\n"
        "try:\n"
        "    for _ in range(40): threading.Thread(target=time.sleep, args=(0.5,)).start(); "
        "started += 1\n"
        "except RuntimeError: pass\n"
        "print(started, resource.getrlimit(resource.RLIMIT_NPROC))"
    )
    if os.getuid() == 0:
        said = child(place, UP["limits"], attempt)
        assert said.endswith("(8, 8)\ndone")
        pytest.skip("The kernel counts no threads of a root user: this machine's tests run as one.")
    need("namespaces")
    # In a namespace of their own, where the user's other processes do not count.
    said = child(place, f"{UP['namespaces']}; {UP['limits']}", attempt)

    assert "7 (8, 8)\ndone" == said
    assert "40" == child(place, "", attempt).split()[0]


def test_threads_are_bounded_by_python_where_the_kernel_does_not(place):
    """8 in all, the first one included, by the error that the kernel gives."""
    kit = str(ROOM.parents[3])
    attempt = (
        "started = 0\n"
        "while started < 40:\n"
        "    threading.Thread(target=time.sleep, args=(0.5,)).start(); started += 1"
    )
    bounded = f"sys.path.insert(0, {kit!r}); import cells; cells.few_threads(8)"

    assert "done" == child(place, "", attempt)
    assert "held RuntimeError" == child(place, bounded, attempt)
    assert "done" == child(place, bounded, attempt.replace("40", "7"))


COLUMN = {"x86_64": 0, "aarch64": 1}.get(platform.machine(), 0)
LOOKED_AT = {
    *(numbers for numbers, _ in syscalls.ALLOWED_WITH.values()),
    *(numbers for numbers, _ in syscalls.OPENING),
    syscalls.CLONE,
    *syscalls.NEWER,
}


def test_every_call_that_is_not_on_the_list_is_refused_by_its_number(place):
    """Each number up to 1023, beyond the kernel's newest, with arguments that could do nothing."""
    need("calls")
    known = {numbers[COLUMN] for numbers in [*syscalls.ALLOWED.values(), *LOOKED_AT]}
    # uretprobe and uprobe, which kernels since 6.14 let past every filter, and which end whoever
    # calls them without the kernel's own code around (SIGILL).
    others = sorted(set(range(1024)) - known - {335, 336})
    attempt = (
        f"for number in {others}:\n"
        "    try: call(number, -1, -1, -1, -1, -1, -1); print(number)\n"
        "    except OSError as error:\n"
        "        if error.errno != errno.EPERM: print(number, error)"
    )

    assert len(others) > 850
    assert "done" == child(place, UP["calls"], attempt)


@pytest.mark.parametrize(
    ("name", "arguments", "answer"),
    [
        ("fcntl", (0, 8, 0), "EPERM"),  # F_SETOWN
        ("fcntl", (0, 10, 9), "EPERM"),  # F_SETSIG
        ("fcntl", (0, 15, 0), "EPERM"),  # F_SETOWN_EX
        ("fcntl", (0, 1031, 1 << 20), "EPERM"),  # F_SETPIPE_SZ
        ("fcntl", (-1, 3, 0), "EBADF"),  # F_GETFL, allowed: the kernel looks at the descriptor
        ("ioctl", (0, 0x8901, 0), "EPERM"),  # FIOSETOWN
        ("ioctl", (0, 0x5412, 0), "EPERM"),  # TIOCSTI
        ("ioctl", (-1, 0x5401, 0), "EBADF"),  # TCGETS
        ("prctl", (1, 0, 0, 0, 0), "EPERM"),  # PR_SET_PDEATHSIG: to outlive the marker
        ("prctl", (4, 1, 0, 0, 0), "EPERM"),  # PR_SET_DUMPABLE
        ("prctl", (15, 0, 0, 0, 0), "EFAULT"),  # PR_SET_NAME
        ("socketpair", (1, 2, 0, 0), "EPERM"),  # SOCK_DGRAM, which takes an address
        ("socketpair", (2, 1, 0, 0), "EPERM"),  # AF_INET
        ("socketpair", (1, 1, 0, 0), "EFAULT"),
        ("prlimit64", (1, 9, 0, 0), "EPERM"),  # of process 1
    ],
)
def test_a_call_with_a_dangerous_argument_is_refused(place, name, arguments, answer):
    """Numbers from the manual pages; without the filter none of them answers EPERM here."""
    need("calls")
    number = syscalls.ALLOWED_WITH[name][0][COLUMN]

    assert f"held {answer}" == child(place, UP["calls"], f"call({number}, *{arguments})")


HEADERS = {
    0: Path("/usr/include/x86_64-linux-gnu/asm/unistd_64.h"),
    1: Path("/usr/include/asm-generic/unistd.h"),  # the table of ARM64
}


@pytest.mark.parametrize("column", HEADERS, ids=["x86-64", "ARM64"])
def test_the_numbers_are_the_kernels_own(column):
    """Referee: the headers that the kernel installs for programs; newer calls may lack in them."""
    if not HEADERS[column].is_file():
        pytest.skip("The kernel's headers are not installed here.")
    found = re.findall(r"#define __NR(?:3264)?_(\w+)\s+(\d+)", HEADERS[column].read_text())
    theirs = {name: int(number) for name, number in found}
    ours = {name: numbers[column] for name, numbers in syscalls.ALLOWED.items()}
    ours |= {name: numbers[column] for name, (numbers, _) in syscalls.ALLOWED_WITH.items()}
    ours |= {"clone": syscalls.CLONE[column], "openat": syscalls.OPENING[1][0][column]}
    known = {name: number for name, number in ours.items() if name in theirs}

    assert {name: theirs[name] for name in known} == known
    assert len(known) > 100


@pytest.mark.skipif(platform.machine() != "x86_64", reason="Only this processor has three tables.")
def test_another_table_of_calls_ends_the_process(place):
    """getpid (39) by the x32 table, whose numbers begin at 2 to the power of 30."""
    need("calls")

    assert "SIGSYS" == child(place, UP["calls"], "libc.syscall(0x40000000 | 39)")


def test_the_newer_clone_does_not_exist_so_that_threads_use_the_older(place):
    need("calls")

    assert "held ENOSYS" == child(place, UP["calls"], "call(435, None, 0)")


RAISE = """
import json
def breaks(*_):
    raise walls.NoWall(1, "no such wall")
{broken}
print(json.dumps(walls.raise_walls(folder, {bounds})))
"""


def raised(place, broken=""):
    """What `raise_walls` reports in a child, with one wall broken."""
    said = child(place, RAISE.format(broken=broken, bounds=BOUNDS), "pass")
    return json.loads(said.splitlines()[0])


def test_walls_that_all_stand_are_not_reported(place):
    for wall in FUNCTIONS:
        need(wall)

    assert {} == raised(place)


@pytest.mark.parametrize("wall", FUNCTIONS)
def test_a_missing_wall_is_reported_with_what_the_machine_said(place, wall):
    """The others stand; only the disk needs the namespace, and is not mounted without it."""
    for each in FUNCTIONS:
        need(each)
    missing = raised(place, f"walls.{FUNCTIONS[wall]} = breaks")

    assert "no such wall" in missing.pop(wall)
    assert ({"disk"} if wall == "namespaces" else set()) == set(missing)


def test_without_a_namespace_nothing_is_mounted_on_the_machine(place):
    """It would stay there after the room, and every right of a root user with it."""
    need("files")
    broken = (
        "walls.own_namespaces = walls.only_these_files = breaks\n"
        f"walls.raise_walls(folder, {BOUNDS})\n"
        "print(open('/proc/self/status').read().split('CapEff:')[1].split()[0], "
        "folder in open('/proc/self/mountinfo').read())"
    )
    said = child(place, RAISE.split("print")[0].format(broken=broken), "pass")

    assert "0000000000000000 False" == said.splitlines()[0]


# What a system answers whose limits are others than Linux's: told to the child before it tries.
OTHER_SYSTEMS = {
    "macOS": "sys.platform = 'darwin'\nresource.setrlimit = lambda *_: None",
    "Windows": "sys.platform = 'win32'\nsys.modules['resource'] = None",
}


@pytest.mark.parametrize(
    ("system", "held"), [("macOS", {"limits"}), ("Windows", set())], ids=list(OTHER_SYSTEMS)
)
def test_a_limit_that_a_system_does_not_keep_is_reported_as_missing(place, system, held):
    """macOS takes a limit on memory and does not keep it, and Windows has no limits to set.

    Played on this machine: the kit was never run on those. From their manuals, setrlimit(2) of
    macOS and Python's own page on `resource`, which is "Availability: Unix".
    """
    assert set(FUNCTIONS) - held == set(raised(place, OTHER_SYSTEMS[system]))


def test_every_wall_is_tried_here_and_has_words_at_the_door():
    assert set(ATTEMPTS) == set(FUNCTIONS) == set(UP) == set(shared.WALLS)
