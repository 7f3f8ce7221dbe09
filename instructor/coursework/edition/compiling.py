"""The modules of a page's Python compiled here once, so that no phone has to do it at each start.

The runtime itself compiles them, in Node: another Python's bytecode would mean nothing to it.
"""

import hashlib
import re
import shutil
import subprocess
import tempfile
import zipfile
from pathlib import Path

from coursework.edition.runtime import PARTS
from coursework.edition.wheels import zipped
from coursework.errors import CourseError
from coursework.safe_files import write_safely

SCRIPT = Path(__file__).with_name("compile.mjs")
KEPT = PARTS / "compiled"
NEWEST = 6  # what was compiled stays for the next building: the last few suffice
NO_NODE = (
    "Node.js is not on this machine, so each phone compiles the pages' Python itself, "
    "which takes it a second or two longer. Install Node.js, and build again."
)


def can_compile():
    """Whether this machine has what compiles the pages' Python."""
    return shutil.which("node") is not None


def compiled(files, runtime):
    """Wheels, or the standard library, with compiled modules in place of their text.

    Parameters
    ----------
    files : dict of str to bytes
        By file name.
    runtime : dict of str to bytes
        The browser's Python as it is published, by file name.

    Returns
    -------
    dict of str to bytes
        The same inputs give the same bytes. As they came where this machine has no Node.

    Raises
    ------
    CourseError
        Where a module cannot be compiled.
    """
    if not can_compile():
        return files
    kept = KEPT / f"{_digest(files, runtime)}.zip"
    if not kept.is_file():
        write_safely(kept, zipped(_by_node(files, runtime)), lasting=False)
        for old in sorted(KEPT.glob("*.zip"), key=_age)[NEWEST:]:
            old.unlink(missing_ok=True)
    with zipfile.ZipFile(kept) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def _age(file):
    return -file.stat().st_mtime


def _digest(files, runtime):
    digest = hashlib.sha256(SCRIPT.read_bytes())
    for part in (files, runtime):
        for name, raw in sorted(part.items()):
            digest.update(f"{name}\0{len(raw)}\0".encode() + raw)
    return digest.hexdigest()[:20]


def _by_node(files, runtime):
    """Everything in one run of a process that does nothing else, so that bytes come out alike."""
    with tempfile.TemporaryDirectory() as folder:
        for part, content in (("python", runtime), ("in", files), ("out", {})):
            (Path(folder) / part).mkdir()
            for name, raw in content.items():
                (Path(folder) / part / name).write_bytes(raw)
        command = ["node", str(SCRIPT), folder]
        run = subprocess.run(command, capture_output=True, text=True)
        if run.returncode:
            said = re.findall(r"^\w*Error: .*", run.stderr, re.MULTILINE) or ["no reason given"]
            raise CourseError(f"The pages' Python could not be compiled: {said[-1][:300]}")
        return {name: (Path(folder) / "out" / name).read_bytes() for name in files}
