"""A term in records: hand-ins that arrive at a second, and points that each got."""

import hashlib
from dataclasses import replace

from coursework.arriving.arrivals import Arrival, on_the_clock, read_list, write_list
from coursework.arriving.states import COUNTS, REPLACED
from coursework.classes.course import open_course
from coursework.records.record_file import as_text

from tests.helpers.records import record, verdict

BUY, BRINE = "04-buy-enough", "05-season-and-brine"
DUE = 1_790_000_000
DAY = 86_400
PRACTICAL = """
[practical."knife skills"]
out_of = 20
weight = 2
[practical.service]
out_of = 10
weight = 2
"""


def stated(course, text):
    """The class with these lines at the end of its course file."""
    with (course.folder / "course.toml").open("a", encoding="utf-8") as file:
        file.write(text.replace("DUE", f'"{on_the_clock(DUE)}"'))
    return open_course(course.folder)


def points(student, got, out_of=20.0, raw=b"", human=()):
    """The record of a hand-in whose one question got so many points."""
    verdicts = [verdict("q1", "right", float(got), float(out_of))]
    return record(student, *verdicts, human=human, sha256=sha(raw), task="one key")


def sha(raw):
    return hashlib.sha256(raw).hexdigest()


def leave(course, set_id, *records):
    for each in records:
        file = course.marks(set_id, each.student)
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(as_text(replace(each, set_id=set_id)), encoding="utf-8")


def arrive(course, set_id, student, **seconds):
    """Hand-ins of a student at these seconds; the bytes of each are its name."""
    listed, latest = read_list(course), max(seconds, key=seconds.get)
    for name, moment in seconds.items():
        raw = name.encode()
        kept = f"{sha(raw)[:2]}/{sha(raw)}.ipynb"
        (course.arrived / kept).parent.mkdir(parents=True, exist_ok=True)
        (course.arrived / kept).write_bytes(raw)
        became = COUNTS if name == latest else REPLACED
        listed.append(
            Arrival("post", f"{name}.ipynb", sha(raw), kept, moment, on_the_clock(moment),
                    student=student, set_id=set_id, became=became)
        )  # fmt: skip
    write_list(course, listed)


def practical(tmp_path, *lines, code="utf-8"):
    file = tmp_path / "practical.csv"
    file.write_bytes("\r\n".join(lines).encode(code))
    return file


def of(book, student):
    return next(one for one in book.students if one.number == student)
