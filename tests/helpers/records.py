"""Records as marking leaves them, for an invented class."""

import json
import random

SET = "04-buy-enough"
ROSTER = {"BH-1": "Ada Quill", "BH-2": "Bram Oakes", "BH-3": "Chidi Morrow"}  # invented


def verdict(question, outcome="right", points=3.0, out_of=3.0, **other):
    """One verdict as marking leaves it."""
    words = {"right": "Right.", "missing": "There is no answer here."}
    return {
        "question": question,
        "asked": f"## {question[1:]}. Celeriac, part {question} ({out_of:g} points)\n\n"
        "Peeling costs **weight**.\nWhat must come through the door?",
        "given": ["covers: 32", "yield of celeriac: 70 %"],
        "outcome": outcome,
        "points": points,
        "out_of": out_of,
        "sentence": words.get(outcome, "You multiplied by the yield. Divide."),
        "answer": "" if outcome == "missing" else "4.2 kg",
        "right": "4.23 kg",
        "slips": ["multiplied by the yield"] if outcome == "slip" else [],
        "working": ["32 covers × 65 g = the trimmed weight", "that ÷ 70 % = 4.23 kg"],
        "skill": "as purchased from edible portion",
        "lesson": "04-buy-enough.ipynb",
    } | other


def written(question="q9", answer="I weighed 900 g in and 610 g out.", out_of=4.0):
    """One written answer as marking leaves it."""
    asked = f"## {question[1:]}. From your bench ({out_of:g} points, marked by your instructor)\n"
    return {"question": question, "asked": asked, "answer": answer, "out_of": out_of}


def record(student, *verdicts, human=(), **other):
    """The record of one hand-in."""
    return {
        "set": SET,
        "title": "Buy enough",
        "student": student,
        "handed_in": "2026-10-02 18:31:07",
        "sha256": "0" * 64,
        "findings": [],
        "verdicts": list(verdicts),
        "human": list(human),
    } | other


def leave(course, *records):
    """Leave records as marking does."""
    for each in records:
        file = course.marks(SET, each["student"])
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(json.dumps(each), encoding="utf-8")


def whole_class():
    """Five invented students with something of everything."""
    chance = random.Random(1)
    return [
        record(
            f"BH-{place}",
            *(
                verdict(f"q{number}", *chance.choice((("right", 3.0), ("slip", 1.0))))
                for number in range(1, 6)
            ),
            human=[written()],
        )
        for place in range(1, 7)
    ]
