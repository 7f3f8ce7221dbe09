"""What gets through the walls of the student's room, by the version of Landlock.

    .venv/bin/python tests/measure/old_kernels.py

Each line is one trial by attack, as the marker makes it at its start; an old kernel is played by
asking Landlock for less. The last word is what the desk and `mark` say.
"""

import sys
import tempfile
from pathlib import Path

KIT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(KIT), str(KIT / "instructor")]

from coursework.marking.room import door  # noqa: E402
from coursework.marking.room.shared import HARMS  # noqa: E402

from tests.helpers.old_kernel import rooms_of_a_kernel  # noqa: E402

KERNELS = {0: "before 5.13", 1: "5.13", 2: "5.19", 3: "6.2", 4: "6.7", 5: "6.10", 99: "this one"}


def main():
    with tempfile.TemporaryDirectory() as folder:
        for calls in (True, False):
            print(f"\nThe filter of calls {'stands' if calls else 'is missing'}")
            print(f"{'Landlock':>9} {'kernel':12} " + " ".join(f"{harm:9}" for harm in HARMS))
            for abi, kernel in KERNELS.items():
                without = [*([] if calls else ["calls"]), *(["files"] if abi == 0 else [])]
                with rooms_of_a_kernel(Path(folder), abi, without) as opened:
                    show(abi, kernel, opened)


def show(abi, kernel, opened):
    """One kernel's line, what got through, and the sentence."""
    found = opened.found
    cells = " ".join(f"{'THROUGH' if harm in found.harms else 'held':9}" for harm in HARMS)
    name = "whole" if abi == 99 else abi or "none"
    print(f"{name:>9} {kernel:12} {cells} {found.trial_ms:.0f} ms")
    for harm, names in found.harms.items():
        print(f"{'':23}{harm}: {', '.join(names)}")
    real, door.rooms = door.rooms, lambda: opened
    print(f"{'':23}says: {door.not_held_back() or 'nothing'}", flush=True)
    door.rooms = real


if __name__ == "__main__":
    main()
