"""Hand-ins of set 04 for the tests of marking: filled in, changed, marked; and a class's copy.

The numbers of BH-1007, worked by hand: 36 x 55 g / 0.66 = 3 kg; 3 / 2.5 -> 2 nets;
125 g / 0.74 = 168.9 g; (13 x 9.25 - 3.5 x 6.50 - 3.9 x 1.50) / 3.75 = $24.44 a kilo;
(0.1689 x 24.44 + 1.70) / 0.35 = $16.65.
"""

import copy
import json
import shutil
from dataclasses import asdict

from coursework.classes.course import Bounds, open_course
from coursework.marking.mark_one import mark
from coursework.records.record_file import read_record
from coursework.sets.hand_out import ASSIGNMENTS
from coursework.sets.key_text import key_notebook

SET = "04-buy-enough"
KEY = key_notebook(SET)
RELEASED = (ASSIGNMENTS / SET / f"{SET}.ipynb").read_bytes()
STUDENT = "BH-1007"
ALL = {"q1": 3.0, "q2": 2.0, "q3": 3.0, "q4": 4.0, "q5": 4.0}
NOTHING = dict.fromkeys(ALL, 0.0)

WRITTEN = "My celeriac gave 66 %: thick peel — next time à la cuillère, ½ as thick."
TYPED = {
    "q1": 'q1 = "3 kg"',
    "q2": 'q2 = "2"',
    "q3": 'q3 = "168.9 g"',
    "q4": 'q4 = "$24.44 per kg"',
    "q5": 'q5 = "$16.65"',
    "q6": WRITTEN,
}
# The same by formula: right for every student's own numbers.
COMPUTED = {
    "q1": "q1 = one.covers * one.portion / one.yield_",
    "q2": 'from math import ceil\nq2 = ceil((q1 / two.net).to("").magnitude - 1e-9)',
    "q3": "q3 = three.cooked / (1 - three.loss)",
    "q4": "q4 = (four.bought * four.price - four.legs * four.legs_price\n"
    "      - four.bones * four.bones_price) / four.breast",
    "q5": "q5 = (q3 * q4 + five.garnish) / five.food_cost",
    "q6": WRITTEN,
}


def filled(student=STUDENT, **answers):
    """The released notebook as a dict, filled in: q1="…" is the text of the cell q1-answer."""
    book = json.loads(RELEASED)
    answers = {"me": f'student = "{student}"'} | answers
    for cell in book["cells"]:
        name = cell["id"].removesuffix("-answer")
        if name in answers:
            cell["source"] = answers[name]
    return book


def honest(student=STUDENT):
    """A notebook with every answer, typed or, for other students' numbers, computed."""
    return filled(student, **(TYPED if student == STUDENT else COMPUTED))


def raw(book):
    """A notebook's bytes as an editor writes them, letters and all."""
    return json.dumps(book, ensure_ascii=False, indent=1).encode()


def cell(book, name):
    """A notebook's cell by its id."""
    return next(each for each in book["cells"] if each["id"] == name)


def position(book, name):
    """Where a cell stands."""
    return book["cells"].index(cell(book, name))


def code(source, name="own", **metadata):
    """A code cell of a student's own, or with nbgrader's flags one that claims to be ours."""
    return {"cell_type": "code", "execution_count": None, "id": name, "metadata": metadata,
            "outputs": [], "source": source}  # fmt: skip


def copied(book, name, **changes):
    """A second copy of a cell."""
    return copy.deepcopy(cell(book, name)) | changes


def marked(hand_in, student=STUDENT, **bounds):
    """The record of a hand-in, given as bytes or as a notebook."""
    return marked_with_copy(hand_in, student, **bounds)[0]


def marked_with_copy(hand_in, student=STUDENT, of=(KEY, RELEASED), **bounds):
    """The record of a hand-in, and our copy as it was marked; `of` are key and released copy."""
    key, released = of
    bounds = {"seconds": 30, "cell_seconds": 10} | bounds
    return mark(
        {
            "key": key,
            "released": released,
            "hand_in": hand_in if isinstance(hand_in, bytes) else raw(hand_in),
            "term": "demo",
            "student": student,
            "bounds": asdict(Bounds(**bounds)),
        }
    )


def points(record):
    """Question to points, of those that a machine gives."""
    return {verdict.question: verdict.points for verdict in record.answered}


def class_copy(course, folder):
    """A copy of a class, free to be changed."""
    shutil.copytree(course.folder, folder)
    return open_course(folder)


def record_of(course, student):
    """What marking a class left of one hand-in."""
    return read_record(course.marks(SET, student))
