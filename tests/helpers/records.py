"""Records as marking leaves them, for an invented class."""

import random

from coursework.records.record import Answered, Found, Record, Written
from coursework.records.record_file import as_text

SET = "04-buy-enough"
ROSTER = {"BH-1": "Ada Quill", "BH-2": "Bram Oakes", "BH-3": "Chidi Morrow"}  # invented


def verdict(question, outcome="right", points=3.0, out_of=3.0, **other):
    """One judged answer as marking leaves it."""
    usual = {
        "asked": f"## {question[1:]}. Celeriac, part {question} ({out_of:g} points)\n\n"
        "Peeling costs **weight**.\nWhat must come through the door?",
        "given": ("covers: 32", "yield of celeriac: 70 %"),
        "answer": "" if outcome == "missing" else "4.2 kg",
        "right": "4.23 kg",
        "found": slips("multiplied by the yield") if outcome == "slip" else (),
        "working": ("32 covers × 65 g = the trimmed weight", "that ÷ 70 % = 4.23 kg"),
        "skill": "as purchased from edible portion",
        "lesson": "04-buy-enough.ipynb",
    }
    fields = {"outcome": outcome, "points": points, "out_of": out_of}
    return Answered(**{"question": question} | fields | usual | other)


def slips(*names, sentence="You multiplied by the yield. Divide."):
    """What was found in an answer: slips of these names, each with the same sentence."""
    return tuple(Found(name, sentence) for name in names)


def written(question="q9", answer="I weighed 900 g in and 610 g out.", out_of=4.0):
    """One written answer as marking leaves it."""
    asked = f"## {question[1:]}. From your bench ({out_of:g} points, marked by your instructor)\n"
    return Written(question, asked, answer, out_of)


def record(student, *verdicts, human=(), **other):
    """The record of one hand-in."""
    usual = {
        "set_id": SET,
        "title": "Buy enough",
        "handed_in": "2026-10-02 18:31:07",
        "sha256": "0" * 64,
    }
    return Record(student=student, answered=verdicts, written=tuple(human), **usual | other)


def leave(course, *records):
    """Leave records as marking does."""
    for each in records:
        file = course.marks(SET, each.student)
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(as_text(each), encoding="utf-8", errors="surrogatepass")


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
