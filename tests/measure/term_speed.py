"""How long each step of a set takes an instructor, with a small class and with a large one.

Run as `.venv/bin/python tests/measure/term_speed.py 30 300`: a column for each number
of students, in seconds, and how the large class compares. Students and answers are invented.
"""

import sys
import tempfile
import time
from pathlib import Path

KIT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(KIT), str(KIT / "instructor")]

from coursework import demo  # noqa: E402
from coursework.arriving.inbox import inbox, place_many, sure_placings  # noqa: E402
from coursework.arriving.take_in import take_in  # noqa: E402
from coursework.deciding import decide, preview  # noqa: E402
from coursework.desk.next_steps import class_state  # noqa: E402
from coursework.gradebook.waiting import answers_to_read  # noqa: E402
from coursework.marking.mark_set import mark_set  # noqa: E402
from coursework.reports.exchange import export_exchange  # noqa: E402
from coursework.reports.pack import pack  # noqa: E402
from coursework.reports.report import report  # noqa: E402
from coursework.reports.student_view import student_view  # noqa: E402
from coursework.reports.term_marks import term_marks  # noqa: E402

SET = demo.SET


def timed(students, folder):
    """Seconds of each step, by its name."""
    names = list(demo.ROSTER.values())
    demo.ROSTER = {f"BH-{1001 + at}": f"{names[at % len(names)]} {at}" for at in range(students)}
    course, places = demo.play(folder / str(students))
    first = next(iter(course.roster))
    drop = {"set_id": SET, "question": "q2"}
    steps = {
        "take in": lambda: take_in(course, places),
        "inbox": lambda: place_many(course, sure_placings(inbox(course, SET))),
        "mark": lambda: mark_set(course, SET),
        "mark again, nothing new": lambda: mark_set(course, SET),
        "what waits": lambda: answers_to_read(course, SET),
        "what is next": lambda: class_state(course, {}),
        "look whose marks change": lambda: preview(course, "full marks", **drop),
        "decide": lambda: decide(course, "excused", set_id=SET, student=first),
        "hand back as one file": lambda: pack(course, SET),
        "report": lambda: report(course, SET),
        "one student": lambda: student_view(course, first),
        "mark book": lambda: term_marks(course),
        "OneRoster": lambda: export_exchange(course),
    }
    found = {}
    for name, step in steps.items():
        begin = time.perf_counter()
        step()
        found[name] = time.perf_counter() - begin
    return found


def main(words):
    """Print the table."""
    sizes = [int(one) for one in words] or [30, 300]
    with tempfile.TemporaryDirectory() as folder:
        columns = [timed(size, Path(folder)) for size in sizes]
    print(f"{'step':28s}" + "".join(f"{size:>10d}" for size in sizes) + "     ratio")
    for name in columns[0]:
        seconds = [column[name] for column in columns]
        shown = "".join(f"{one:10.2f}" for one in seconds)
        print(f"{name:28s}{shown}{seconds[-1] / max(seconds[0], 1e-9):10.1f}")


if __name__ == "__main__":
    main(sys.argv[1:])
