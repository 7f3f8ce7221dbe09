"""Writing files so that a stop half-way leaves the old one or the new one, never a half."""

import os
import shutil
import tempfile
from pathlib import Path


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
    handle, neighbour = tempfile.mkstemp(dir=path.parent, prefix=".half-", suffix=path.suffix)
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


def keep_earlier(folder, path, tag):
    """Copy a file that is about to change into the folder's `kept`, under a name of its own.

    Parameters
    ----------
    folder : Path
        The class's folder.
    path : Path
        A file in it; nothing happens where it does not exist.
    tag : str
        Part of the new name, such as the first figures of its SHA-256.
    """
    if path.is_file():
        kept = folder / "kept" / path.relative_to(folder).with_suffix(f".{tag}{path.suffix}")
        kept.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(path, kept)
