"""A class with the kit's own set 04 handed out, and hand-ins for it, to take in."""

import json

from coursework.arriving.arrivals import read_list
from coursework.arriving.take_in import take_in as take_in_by_the_clock
from coursework.classes.course import new_course
from coursework.sets.hand_out import ASSIGNMENTS

from tests.helpers.folders import EVENING

SET = "04-buy-enough"
RELEASED = (ASSIGNMENTS / SET / f"{SET}.ipynb").read_bytes()
ROSTER = {f"BH-{number}": f"Student {number}" for number in range(1001, 1025)}
ANSWERS = {f"q{number}": f'q{number} = "{number}.5 kg"' for number in range(1, 6)}
NIGHT = EVENING + 10_000  # when the instructor takes in, where a test says nothing else


def take_in(course, place, progress=None, now=NIGHT):
    """Taking in with the clock at a fixed time, so that two of them can be compared."""
    return take_in_by_the_clock(course, place, progress, now)


def make_course(folder, roster=ROSTER):
    """A class to which the kit's own set 04 was handed out."""
    made = new_course(folder, "Class", "demo", roster)
    file = made.release(SET)
    file.parent.mkdir(parents=True)
    file.write_bytes(RELEASED)
    return made


def hand_in(student, metadata=True, **answers):
    """The released notebook, filled in: q1="…" is the text of the cell q1-answer."""
    book = json.loads(RELEASED)
    for cell in book["cells"]:
        question = cell["id"].removesuffix("-answer")
        if question in answers:
            cell["source"] = answers[question]
        if cell["id"] == "me" and student is not None:
            cell["source"] = f"student = {student!r}"
    if not metadata:
        del book["metadata"]["kitchen"]
    return json.dumps(book, ensure_ascii=False).encode()


def became(course):
    """Name of each arrival to what became of it."""
    return {one.name: one.became for one in read_list(course)}


def reason(course, name):
    return next(one.reason for one in read_list(course) if one.name == name)


def submitted(course, student):
    return course.submitted(SET, student).read_bytes()


def all_files(course):
    """Every file below a class's folder, with its bytes."""
    files = (path for path in course.folder.rglob("*") if path.is_file())
    return {path.relative_to(course.folder).as_posix(): path.read_bytes() for path in files}
