"""How well the sets diagnose: 200 played students a set, and a table. A script, not a test.

    .venv/bin/python tests/measure_diagnosis.py [SET ...]

Each question is answered right (exactly, to four and to three figures, in another unit), with each
of its slips (exactly and to three figures), and with plain noise. Questions are played one by one,
on right earlier answers. Printed are: right answers refused, slips named, right answers or noise
accused of a slip, and where slips were taken for one another.
"""

import sys
from collections import Counter
from pathlib import Path

KIT = Path(__file__).parents[1]
sys.path[:0] = [str(KIT), str(KIT / "instructor")]

from coursework.keys import key_file, load_key, set_ids  # noqa: E402

from kitchenmath.units import say  # noqa: E402

STUDENTS = [f"PLAYED-{number}" for number in range(200)]
OTHER = {"kg": "lb", "g": "oz", "lb": "kg", "oz": "g", "L": "us_quart", "mL": "us_fluid_ounce",
         "°C": "degF", "°F": "degC", "mm": "inch", "min": "h", "h": "min"}  # fmt: skip
NOISE = (1.37, 0.83)


def typed(value, digits):
    """An amount as people type it, to so many figures."""
    return say(value, digits)


def right_ways(value):
    """The right answer in every way that people write it."""
    yield from (typed(value, digits) for digits in (6, 4, 3))
    other = OTHER.get(f"{value.units:~}".replace("Δ", ""))
    if other:
        difference = "delta_" if "delta_" in str(value.units) and "deg" in other else ""
        yield typed(value.to(f"{difference}{other}"), 4)


def play(set_id):
    """Counts of what was found, and pairs of slips that were taken for one another."""
    sheet = load_key(key_file(set_id).read_bytes()).sheet
    found, confused = Counter(), Counter()
    for student in STUDENTS:
        for question, known in sheet.known(student):
            right = question.right(known)
            for answer in right_ways(right):
                verdict = question.judge(answer, known)
                found["right"] += 1
                found["refused"] += verdict.outcome != "right"
                found["accused"] += verdict.outcome == "slip"
            for slip in question.slips:
                value = question.slip_value(slip, known)
                if value is None:
                    continue
                for digits in (6, 3):
                    verdict = question.judge(typed(value, digits), known)
                    found["slips"] += 1
                    found["named"] += slip.name in verdict.slips
                    for other in set(verdict.slips) - {slip.name}:
                        confused[f"{question.id}: {slip.name} / {other}"] += 1
            for factor in NOISE:
                verdict = question.judge(typed(right * factor, 6), known)
                found["noise"] += 1
                found["noise accused"] += verdict.outcome in ("slip", "right")
    return found, confused


def main(names):
    print(
        "set                       right  refused   slips   named   noise  accused  (students: 200)"
    )
    for set_id in names or set_ids():
        found, confused = play(set_id)
        named = 100 * found["named"] / found["slips"]
        accused = 100 * (found["accused"] + found["noise accused"])
        accused /= found["right"] + found["noise"]
        print(
            f"{set_id:24} {found['right']:6d} {found['refused']:8d} {found['slips']:7d}"
            f" {named:6.2f}% {found['noise']:7d} {accused:6.2f}%"
        )
        for pair, count in confused.most_common():
            print(f"    named together {count} times: {pair}")


if __name__ == "__main__":
    main(sys.argv[1:])
