"""A term of 30, and of 300, played at the desk: what was pressed, what was said, seconds.

Run as `.venv/bin/python tests/measure/term_of_thirty.py 30 300`. The desk's own buttons are
pressed, in this process; students and answers are invented. With `--short` the words are cut.
"""

import argparse
import sys
import tempfile
from pathlib import Path

KIT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(KIT), str(KIT / "instructor")]

from tests.helpers.term_played import played  # noqa: E402

SHORT = 110


def main(words):
    """Play each size, and print its table; then the seconds side by side."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("students", nargs="*", type=int, default=[30, 300])
    parser.add_argument("--short", action="store_true", help="only the first words of each answer")
    options = parser.parse_args(words)
    columns = [_played(size, options.short) for size in options.students]
    if len(columns) > 1:
        _beside(options.students, columns)


def _played(size, short):
    print(f"\n{size} students\n")

    def tell(row):
        said = f"{row.said[:SHORT]}…" if short and len(row.said) > SHORT else row.said
        print(f"{row.step:36s} [{row.pressed}] {row.seconds:6.2f} s\n    {said}", flush=True)

    with tempfile.TemporaryDirectory() as folder:
        return played(Path(folder), size, tell).rows


def _beside(sizes, columns):
    print("\nseconds" + "".join(f"{size:>10d}" for size in sizes))
    for rows in zip(*columns, strict=True):
        seconds = "".join(f"{row.seconds:10.2f}" for row in rows)
        print(f"{seconds}  {rows[0].step} [{rows[0].pressed}]")


if __name__ == "__main__":
    main(sys.argv[1:])
