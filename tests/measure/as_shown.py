"""Answers at the marks of their tools, by 300 drawn students: what is refused. A script, no test.

.venv/bin/python -m tests.measure.as_shown [SET ...]
"""

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2] / "instructor"))

from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from tests.helpers.as_shown import SHOWN, refused

STUDENTS = 300


def main(names):
    print(f"{STUDENTS} students; each answer at the nearest mark, or the next to the safe side")
    for set_id in names or SHOWN:
        sheet, tried, found = load_key(key_notebook(set_id)).sheet, 0, Counter()
        for number in range(STUDENTS):
            more, again = refused(sheet, SHOWN[set_id], f"PLAYED-{number}")
            tried += more
            found.update(again)
        print(f"{set_id:22} {tried:6d} tried, {found.total():4d} refused", flush=True)
        for (question_id, typed, right), times in found.most_common(5):
            print(f"    {question_id}: {typed} for {right}, {times} times")


if __name__ == "__main__":
    main(sys.argv[1:])
