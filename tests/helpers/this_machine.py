"""What this machine can, and what runs on it.

Which walls of the room it can have is asked of util-linux's `unshare` and of the kernel. Our own
report is no help here: a wall that is broken would be left out of the tests as one that the
machine lacks.
"""

import ctypes
import functools
import os
import platform
import shutil
import subprocess
import sys
import time
from pathlib import Path

import pytest


@functools.lru_cache
def landlock():
    """The kernel's Landlock version; below 1 where it has none."""
    return ctypes.CDLL(None).syscall(444, None, 0, 1)


@functools.lru_cache
def lacks(wall):
    """Why this machine cannot have a wall; "" where it can."""
    if sys.platform != "linux":
        held = wall == "limits" and os.name == "posix"
        return "" if held else "The walls are Linux's."
    own = ["unshare"] + (["--user", "--map-root-user"] if os.getuid() else [])
    tries = {
        "namespaces": [*own, "--net", "--ipc", "--mount", "true"],
        "disk": [*own, "--mount", "mount", "-t", "tmpfs", "none", "/mnt"],
    }
    if wall in tries and shutil.which("unshare"):
        run = subprocess.run(tries[wall], capture_output=True, text=True, check=False)
        return f"This machine allows no {wall}: {run.stderr.strip()}" if run.returncode else ""
    if wall == "files" and landlock() < 1:
        return "This machine's kernel has no Landlock."
    known = platform.machine() in ("x86_64", "aarch64")
    if wall == "calls" and not (known and "Seccomp:" in Path("/proc/self/status").read_text()):
        return f"This machine ({platform.machine()}) has no seccomp that we know the numbers of."
    return ""


def need(wall, version=1):
    """Leave a test out where the machine lacks a layer."""
    if reason := lacks(wall):
        pytest.skip(reason)
    if wall == "files" and landlock() < version:
        pytest.skip(f"This machine's Landlock is version {landlock()}; {version} is needed.")


def processes(with_word):
    """Process numbers whose command line or first environment holds a word (Linux)."""
    found = set()
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            said = (folder / "cmdline").read_bytes() + (folder / "environ").read_bytes()
        except OSError:
            continue  # it ended meanwhile, or is another user's
        if with_word.encode() in said:
            found.add(int(folder.name))
    return found - {os.getpid()}


def wait_until(come, seconds=60):
    """Wait for something that comes; its not coming is the failure."""
    end = time.monotonic() + seconds
    while not come():
        assert time.monotonic() < end, "what was waited for did not come"
        time.sleep(0.02)
