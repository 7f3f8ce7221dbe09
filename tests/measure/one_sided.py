"""One-sided questions, rounded as 300 drawn students may: what is refused. A script, not a test.

    .venv/bin/python tests/measure/one_sided.py

"Before" is the same tolerance with two sides alike, which knows neither the safe side nor the step
of the scale or the card.
"""

import math
import sys
from dataclasses import replace
from pathlib import Path

KIT = Path(__file__).parents[2]
sys.path[:0] = [str(KIT), str(KIT / "instructor")]

from coursework.sets.key_text import key_notebook, set_ids  # noqa: E402
from coursework.sets.keys import load_key  # noqa: E402

from kitchenmath.units import Q_, say  # noqa: E402

STUDENTS = 300


def rounded(right, step, upward):
    """A right answer at the next step above or below it, as it is typed."""
    steps = right.magnitude / step.to(right.units).magnitude
    whole = math.ceil(steps - 1e-9) if upward else math.floor(steps + 1e-9)
    return Q_(whole * step.to(right.units).magnitude, str(right.units))


def counted(sheet, question_id):
    """How often an answer rounded to each side earned everything, before and after."""
    full = {(side, when): 0 for side in ("safe", "other") for when in ("before", "after")}
    tried = 0
    for number in range(STUDENTS):
        known = dict((q.id, k) for q, k in sheet.known(f"PLAYED-{number}"))[question_id]
        after = sheet.questions[question_id]
        tolerance = after.tolerance
        before = replace(after, tolerance=replace(tolerance, safe="", to=None))
        right = after.right(known)
        up, down = (rounded(right, tolerance.to, upward) for upward in (True, False))
        if up == down:
            continue
        tried += 1
        for side, value in zip(
            ("safe", "other"), (up, down) if tolerance.safe == "up" else (down, up), strict=True
        ):
            for when, question in (("before", before), ("after", after)):
                verdict = question.judge(say(value, 6), known)
                full[side, when] += verdict.outcome == "right"
    return tried, full


def main():
    print(f"{STUDENTS} drawn students; answers rounded to the step that the scale or card shows")
    print(
        "question                   tried  safe side right: before after  other side: before after"
    )
    for set_id in set_ids():
        sheet = load_key(key_notebook(set_id)).sheet
        for question in sheet.questions.values():
            if question.told_in_numbers and question.tolerance.safe:
                tried, full = counted(sheet, question.id)
                print(
                    f"{set_id + ', ' + question.id:26} {tried:5d} {full['safe', 'before']:24d}"
                    f" {full['safe', 'after']:5d} {full['other', 'before']:19d}"
                    f" {full['other', 'after']:5d}"
                )


if __name__ == "__main__":
    main()
