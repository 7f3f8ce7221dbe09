"""Writing files so that a stop half-way leaves the old one or the new one, never a half."""

import hashlib
import os
import shutil
import tempfile
from pathlib import Path

from coursework.errors import CourseError

# The name of what is not whole yet begins so.
HALF = ".half-"


def write_safely(path, content, lasting=True):
    """Write bytes or text in one step: into a neighbour first, then renamed over.

    Parameters
    ----------
    path : Path
    content : bytes or str
    lasting : bool
        Wait until it is on the disk, for what cannot be made again. Without that a power cut, but
        no stop of the program, may leave an empty file.
    """
    path = Path(path)
    path.parent.mkdir(parents=True, exist_ok=True)
    raw = content.encode("utf-8", "surrogatepass") if isinstance(content, str) else content
    handle, neighbour = tempfile.mkstemp(dir=path.parent, prefix=HALF, suffix=path.suffix)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(raw)
            if lasting:
                file.flush()
                os.fsync(file.fileno())
        os.chmod(neighbour, 0o644)
        os.replace(neighbour, path)
    except BaseException:
        Path(neighbour).unlink(missing_ok=True)
        raise


def keep_earlier(folder, path):
    """Copy a file that is about to change into the folder's `kept`, named by its bytes.

    Parameters
    ----------
    folder : Path
        The class's folder.
    path : Path
        A file in it; nothing happens where it does not exist.
    """
    if path.is_file():
        tag = digest(path.read_bytes())[:8]
        kept = folder / "kept" / path.relative_to(folder).with_suffix(f".{tag}{path.suffix}")
        kept.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(path, kept)


def save(file, text, encoding="utf-8"):
    """Write a page or a sheet. Halves of characters, which no file can hold, become "?".

    What a writing that was killed left beside it is cleared away: pages are given to people, who
    would wonder about a second one.

    Parameters
    ----------
    file : Path
    text : str
    encoding : str

    Raises
    ------
    CourseError
        When the file is open in another program, or the disk refuses.
    """
    try:
        clear_halves(file.parent)
        write_safely(file, text.encode(encoding, "replace"))
    except OSError as error:
        why = error.strerror or "it cannot be written"
        raise CourseError(
            f"“{file.name}”: {why}. Close it where it is open, and try again."
        ) from None


def half_of(path):
    """The neighbour in which a file or a folder is made before it is renamed."""
    return path.with_name(f"{HALF}{path.name}")


def clear_halves(folder):
    """Remove what a write that was killed left in a folder."""
    for half in folder.glob(f"{HALF}*"):
        half.unlink(missing_ok=True)


def digest(raw):
    """SHA-256 of a file's bytes, as text."""
    return hashlib.sha256(raw).hexdigest()
