"""Each question by each trade way, with 200 simulated students: what is refused. A script, no test.

.venv/bin/python -m tests.measure.trade_methods [STUDENTS] [SET ...]
"""

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2] / "instructor"))

from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from tests.helpers.trade_ways import WAYS, refused


def main(words):
    students = int(words.pop(0)) if words and words[0].isdigit() else 200
    for set_id in words or WAYS:
        sheet, tried, found, example = load_key(key_notebook(set_id)).sheet, 0, Counter(), {}
        for number in range(students):
            more, odd = refused(sheet, WAYS[set_id], f"PLAYED-{number}")
            tried += more
            for question_id, way, *rest in odd:
                found[question_id, way] += 1
                example.setdefault((question_id, way), rest)
        ways = "; ".join(f"{each}: {', '.join(names)}" for each, names in WAYS[set_id].items())
        print(
            f"{set_id}: {students} students, {tried} answers, {found.total()} refused", flush=True
        )
        print(f"    {ways}")
        for (question_id, way), times in found.most_common():
            typed, right, outcome = example[question_id, way]
            print(f"    refused {times}: {question_id}, {way}: {typed} for {right} ({outcome})")


if __name__ == "__main__":
    main(sys.argv[1:])
