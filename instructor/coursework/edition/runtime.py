"""What an edition's pages run on: the browser's Python, by the npm client.

Its package is pinned with its integrity sum and fetched once, into a folder beside the classes.
"""

import base64
import hashlib
import io
import json
import shutil
import subprocess
import tarfile
from dataclasses import dataclass
from pathlib import Path

from coursework.classes.course import INSTRUCTOR
from coursework.errors import CourseError

PARTS = INSTRUCTOR / "parts"


@dataclass(frozen=True)
class Package:
    """One package: its name and version, its integrity sum, and the files that pages need."""

    name: str
    version: str
    integrity: str
    files: tuple

    @property
    def archive(self):
        """The file that the npm client makes of it."""
        return f"{self.name.lstrip('@').replace('/', '-')}-{self.version}.tgz"


LOCK = "pyodide-lock.json"  # says which wheels belong to it
PYODIDE = Package(
    "pyodide",
    "314.0.4",
    "sha512-fMexKS5P/s8iTjczevLUv/aWq9i5yaGvBTpBW6gM+nzDNelfPpREma/xdDK2AAGebAuKnBJk7fyVP6RBlz4btg==",
    ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", LOCK),
)


def runtime(folder=None):
    """The runtime's files, and the lock that says which wheels belong to it.

    Parameters
    ----------
    folder : Path, optional
        Where the packages lie as the npm client packs them. Without it they are fetched once.

    Returns
    -------
    dict of str to bytes
        By name, as they are published.
    dict
        The official lock.

    Raises
    ------
    CourseError
        Where a package is missing, or is another than the pinned one.
    """
    members = files_of(PYODIDE, folder)
    return members, json.loads(members[LOCK])


def files_of(package, folder=None):
    """The files of a package that are needed, out of its archive; its sum is right.

    Parameters
    ----------
    package : Package
    folder : Path, optional
        Where it lies as the npm client packs it. Without it, it is fetched once.

    Returns
    -------
    dict of str to bytes
        By name in the package.

    Raises
    ------
    CourseError
        Where it is missing or another than the pinned one, or the client cannot fetch it.
    """
    with tarfile.open(fileobj=io.BytesIO(_archive(package, folder))) as archive:
        return {name: archive.extractfile(f"package/{name}").read() for name in package.files}


def _archive(package, folder):
    """The bytes of a package, from a folder or fetched into the parts; its sum is right."""
    file = (Path(folder) if folder else PARTS) / package.archive
    if not file.is_file():
        if folder:
            raise CourseError(
                f"{folder} holds no {package.archive}. Make it there with: "
                f"npm pack {package.name}@{package.version}"
            )
        _fetch(package)
    raw = file.read_bytes()
    if sum_of(raw) != package.integrity:
        raise CourseError(
            f"{file} is not {package.name} {package.version}: its sum is another. "
            "Delete it, and build again."
        )
    return raw


def _fetch(package):
    npm = shutil.which("npm")
    if npm is None:
        raise CourseError(
            f"This needs the npm client once, to fetch {package.name}, and it is not on this "
            "machine. Install Node.js, or name a folder with the packages: --runtime FOLDER"
        )
    PARTS.mkdir(parents=True, exist_ok=True)
    command = [npm, "pack", "--silent", f"{package.name}@{package.version}"]
    run = subprocess.run(command, cwd=PARTS, capture_output=True, text=True)
    if run.returncode:
        last = (run.stderr.strip().splitlines() or ["nothing"])[-1]
        raise CourseError(f"npm could not fetch {package.name}: {last}")


def sum_of(raw):
    """The integrity sum of a package, as npm writes it."""
    return f"sha512-{base64.b64encode(hashlib.sha512(raw).digest()).decode()}"
