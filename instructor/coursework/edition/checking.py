"""Verifying an edition that somebody built: is every file as it was?"""

import hashlib
import json
from pathlib import Path

from coursework.errors import CourseError

LIST = "edition.json"  # in each edition: the sum of every other file


def wrong_in(folder):
    """What is wrong with an edition's files.

    Parameters
    ----------
    folder : Path

    Returns
    -------
    list of str
        A sentence for each file; empty where all is well.

    Raises
    ------
    CourseError
        Where the folder holds no edition.
    """
    folder = Path(folder)
    try:
        sums = json.loads((folder / LIST).read_bytes())["files"]
    except (OSError, ValueError, KeyError, TypeError):
        raise CourseError(
            f"{folder} holds no edition: it has no {LIST} that can be read."
        ) from None
    found = []
    for name, right in sorted(sums.items()):
        file = folder / name
        if not file.is_file():
            found.append(f"{name} is missing.")
        elif hashlib.sha256(file.read_bytes()).hexdigest() != right:
            found.append(f"{name} is another file than the one that was built.")
    there = {file.relative_to(folder).as_posix() for file in folder.rglob("*") if file.is_file()}
    return found + [f"{name} does not belong to it." for name in sorted(there - {*sums, LIST})]
