"""Which walls of the room this machine can have, found by other programs than ours.

Asked of util-linux's `unshare` and of the kernel. Our own report is no help here: a wall that is
broken would be left out of the tests as one that the machine lacks.
"""

import ctypes
import functools
import os
import platform
import shutil
import subprocess
import sys
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
        return "" if wall == "limits" and os.name == "posix" else "The walls are Linux's."
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
