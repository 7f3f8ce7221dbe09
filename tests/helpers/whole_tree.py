"""Keep the kit's own files as they are while its tests run."""

import os
from pathlib import Path

KIT = Path(__file__).parents[2]
WRITES = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC | os.O_APPEND
# Made on use, and ignored by git, as every folder whose name begins with a dot.
MADE = (("tests", "screenshots"), ("instructor", "classes"), ("instructor", "parts"))
CACHE = "pytest-cache-files-"  # pytest makes its own .pytest_cache under such a name first


def refuse_writing(process):
    """An audit hook that lets a process of tests write nothing into the tree.

    A room for students' code is another process, and has walls of its own.
    """

    def refuse(event, told):
        if event != "open" or not (told[2] or 0) & WRITES or os.getpid() != process:
            return
        if isinstance(told[0], (str, os.PathLike)) and in_the_tree(told[0]):
            raise PermissionError(f"a test writes into the kit: {told[0]}; use tmp_path")

    return refuse


def in_the_tree(file):
    """Whether a file lies where git keeps it."""
    place = os.path.abspath(os.fspath(file))
    if not place.startswith(f"{KIT}{os.sep}"):
        return False
    parts = Path(place).relative_to(KIT).parts
    hidden = any(part[0] == "." or part == "__pycache__" for part in parts)
    return not hidden and parts[:2] not in MADE and not parts[0].startswith(CACHE)
