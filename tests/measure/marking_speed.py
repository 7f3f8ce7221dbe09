"""What marking costs, as ratios from one run. Quote a ratio with its N and its e.

    .venv/bin/python tests/measure/marking_speed.py             # beside nbgrader: 24, 240
    .venv/bin/python tests/measure/marking_speed.py --nbgrader-sample 24   # 240 scaled from 24
    .venv/bin/python tests/measure/marking_speed.py growth              # 24 to 10,000 hand-ins
    .venv/bin/python tests/measure/marking_speed.py gradebook           # 10,000 students, 8 sets

Both ways are timed as whole commands, start-up and gradebook included, on the same notebooks, in
turn; ours has every wall up that this machine has. Points are compared cell by cell: a ratio
counts only where they are the same. e is what the students' own cells take in a bare shell, in
seconds a notebook. Processor time is printed beside the clock, for a machine that others use too.
"""

import argparse
import json
import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from uuid import uuid4

KIT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(KIT), str(KIT / "instructor")]

from coursework.classes.course import new_course, open_course  # noqa: E402
from coursework.demo import NAMES, SET, WAYS, _answers, _filled, _written  # noqa: E402
from coursework.sets.hand_out import hand_out  # noqa: E402
from coursework.sets.key_text import key_notebook  # noqa: E402
from coursework.sets.keys import load_key  # noqa: E402

TERM = "demo"
FRESH = """
import sys
from coursework.command import main
from coursework.marking.room import door, visit
door.warm_up = lambda: None
fresh = door.FreshRooms(ahead=2)
visit.rooms = lambda: fresh
sys.exit(main(sys.argv[1:]))
"""


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    what = parser.add_argument("what", nargs="?", default="nbgrader")
    what.choices = ("nbgrader", "growth", "gradebook")
    parser.add_argument("--sizes", type=int, nargs="+")
    parser.add_argument("--nbgrader-sample", type=int, metavar="N", help="time N and scale")
    parser.add_argument("--rounds", type=int, default=1)
    options = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="benchmark-") as folder:
        do = {"nbgrader": beside_nbgrader, "growth": growth, "gradebook": gradebook}
        do[options.what](options, Path(folder))


def environment():
    paths = os.pathsep.join([str(KIT), str(KIT / "instructor")])
    return os.environ | {"PYTHONPATH": paths, "MPLBACKEND": "agg"}


def timed(words, folder):
    """Seconds by the clock and of the processors, and the command's own peak of memory."""
    before, start = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    run = subprocess.run(
        words, cwd=folder, env=environment(), capture_output=True, text=True, errors="replace"
    )
    wall, after = time.perf_counter() - start, resource.getrusage(resource.RUSAGE_CHILDREN)
    if run.returncode:
        raise SystemExit(run.stdout[-2000:] + run.stderr[-2000:])
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return wall, used


def make_class(folder, size):
    """A class whose students filled in the set in the demonstration's ways; all of it invented."""
    roster = {f"BH-{10001 + n}": f"{NAMES[n % len(NAMES)]} {n}" for n in range(size)}
    course = new_course(folder, "benchmark", TERM, roster)
    import random

    released = json.loads(hand_out(course, SET).read_bytes())
    sheet, chance = load_key(key_notebook(SET), TERM).sheet, random.Random(size)
    for student in roster:
        answers = _answers(sheet, student, WAYS[chance.choice((0, 1, 1, 2))], chance)
        place = course.submitted(SET, student)
        place.parent.mkdir(parents=True)
        place.write_bytes(_filled(released, student, answers, _written(student, chance)))
        stamp = "2026-10-02 18:30:00\n"
        (place.parent / "timestamp.txt").write_text(stamp, encoding="utf-8")
    return course


def ours(course):
    return timed([sys.executable, str(KIT / "instructor"), "mark", SET, "--class",
                  str(course.folder)], KIT)  # fmt: skip


def without_fork(course):
    return timed([sys.executable, "-c", FRESH, "mark", SET, "--class", str(course.folder)], KIT)


def nbgraders(course):
    return timed([sys.executable, "-m", "nbgrader", "autograde", SET], course.folder)


def points(course):
    """The machine's points in the gradebook, by student and check cell."""
    from coursework.gradebook.points import all_marks

    return {row[1:3]: row[3] for row in all_marks(course, SET) if row[2].endswith("-check")}


def copy(course, folder, students=None):
    """A copy of a class with some of its students' work, set up for nbgrader too."""
    shutil.copytree(course.folder, folder)
    if students is not None:
        for place in list((folder / "submitted").iterdir())[students:]:
            shutil.rmtree(place)
    made = open_course(folder)
    hand_out(made, SET)  # nbgrader's settings name the folder
    return made


def own_seconds(course):
    """e: the cells of one notebook in a bare shell that has everything loaded, in seconds."""
    file = next((course.folder / "submitted").glob(f"*/{SET}/*.ipynb"))
    code = (
        "import json, sys, time, contextlib, io\n"
        "from IPython.core.interactiveshell import InteractiveShell\n"
        "import kitchenmath.practice\n"
        "shell = InteractiveShell.instance(colors='NoColor')\n"
        "shell.history_manager.enabled = False\n"
        "cells = [''.join(c['source']) for c in json.load(open(sys.argv[1]))['cells']\n"
        "         if c['cell_type'] == 'code']\n"
        "shell.run_cell('pass')\n"
        "start = time.process_time()\n"
        "with contextlib.redirect_stdout(io.StringIO()):\n"
        "    for cell in cells: shell.run_cell(cell, store_history=False)\n"
        "print(time.process_time() - start)"
    )
    words = [sys.executable, "-c", code, str(file)]
    run = subprocess.run(words, env=environment(), capture_output=True, text=True, check=True)
    return float(run.stdout.split()[-1])


def beside_nbgrader(options, folder):
    for size in options.sizes or (24, 240):
        course = make_class(folder / f"class-{size}", size)
        own = own_seconds(course)
        for turn in range(options.rounds):
            one_round(options, course, size, own, folder / f"{size}-{turn}")


def one_round(options, course, size, own, folder):
    sample = min(options.nbgrader_sample or size, size)
    theirs = copy(course, folder / "nbgrader", sample)
    wall, used = nbgraders(theirs)
    scaled = size / sample
    label = f", scaled from {sample}" if sample < size else ""
    print(f"\n{size} hand-ins, e = {own * 1000:.0f} ms; {os.cpu_count()} cores, "
          f"load {os.getloadavg()[0]:.1f}")  # fmt: skip
    show("nbgrader autograde" + label, wall * scaled, used * scaled)
    yardstick = points(theirs)
    for name, way in (("ours, all walls", ours), ("ours, without fork", without_fork)):
        if way is without_fork and size > 24:
            continue
        mine = copy(course, folder / way.__name__)
        my_wall, my_used = way(mine)
        show(name, my_wall, my_used, wall * scaled / my_wall, used * scaled / my_used)
        found = points(mine)
        differ = [key for key, value in yardstick.items() if found.get(key) != value]
        print(f"    {len(yardstick)} check cells compared, {len(differ)} differ")
        for key in differ:
            print(f"    {key}: {yardstick[key]} and {found.get(key)}")
        shutil.rmtree(mine.folder)
    shutil.rmtree(theirs.folder)


def show(name, wall, used, ratio=None, by_processor=None):
    text = f"  {name:38} {wall:7.1f} s by the clock, {used:7.1f} s of processor"
    if ratio:
        text += f"   ratio {ratio:.1f} by the clock, {by_processor:.1f} by processor"
    print(text, flush=True)


def growth(options, folder):
    """Cost of each hand-in as the class grows, the marker's memory, the writer's share."""
    code = (
        "import sys, time, resource\n"
        "start = time.perf_counter()\n"
        "from coursework.classes.course import open_course\n"
        "from coursework.marking.mark_set import mark_set\n"
        "from coursework.gradebook.writer import GradeWriter\n"
        "spent = [0.0]\n"
        "def watch(name):\n"
        "    real = getattr(GradeWriter, name)\n"
        "    def watched(*given):\n"
        "        begin = time.thread_time()\n"
        "        try: return real(*given)\n"
        "        finally: spent[0] += time.thread_time() - begin\n"
        "    setattr(GradeWriter, name, watched)\n"
        "watch('__init__'); watch('put'); watch('close')\n"
        f"mark_set(open_course(sys.argv[1]), {SET!r})\n"
        "peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
        "print(time.perf_counter() - start, spent[0], peak, time.process_time())\n"
    )
    for size in options.sizes or (24, 240, 2400, 10_000):
        course = make_class(folder / f"class-{size}", size)
        words = [sys.executable, "-c", code, str(course.folder)]
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        run = subprocess.run(words, env=environment(), capture_output=True, text=True, check=True)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        wall, writer, peak, own = map(float, run.stdout.split())
        used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
        print(f"{size:6} hand-ins: {wall:7.1f} s, {1000 * wall / size:6.1f} ms each by the clock; "
              f"processor {1000 * used / size:6.1f} ms each, of it the marker "
              f"{1000 * own / size:5.1f} and its writer {1000 * writer / size:5.2f}; "
              f"the marker's peak {peak / 1024:.0f} MB; load {os.getloadavg()[0]:.1f}",
              flush=True)  # fmt: skip
        shutil.rmtree(course.folder)


def gradebook(options, folder):
    """Open, list and export the marks of a large class in eight sets."""
    from coursework.gradebook.kept_copy import _table, copy_gradebook
    from coursework.gradebook.points import all_marks, human_marks
    from coursework.gradebook.tables import (
        CELL,
        COMMENT,
        GRADE,
        SUBMITTED,
        SUBMITTED_NOTEBOOK,
        analyze,
    )  # fmt: skip
    from coursework.sets.key_text import set_ids

    size = (options.sizes or [10_000])[0]
    course = make_empty(folder / "college", size)
    sets = [f"{number:02d}-set" for number in range(1, 9)]
    fill(course, sets, size, (CELL, COMMENT, GRADE, SUBMITTED, SUBMITTED_NOTEBOOK), analyze)
    file = course.gradebook_file
    print(f"{size} students, {len(sets)} sets, {file.stat().st_size / 1e6:.0f} MB; "
          f"load {os.getloadavg()[0]:.1f}; keys there are: {len(set_ids())}")  # fmt: skip
    for name, do in (
        ("open, and one set's human marks", lambda: human_marks(course, sets[0])),
        ("list one set", lambda: all_marks(course, sets[0])),
        ("list everything", lambda: all_marks(course)),
        ("export everything to a table (CSV)", lambda: _table(course)),
        ("copy and check the gradebook", lambda: copy_gradebook(course)),
    ):
        start, used = time.perf_counter(), time.process_time()
        got = do()
        count = f"{len(got)} marks" if isinstance(got, list) else ""
        print(f"  {name:36} {time.perf_counter() - start:5.2f} s by the clock, "
              f"{time.process_time() - used:5.2f} s of processor  {count}", flush=True)  # fmt: skip


def make_empty(folder, size):
    roster = {f"BH-{100001 + n}": f"{NAMES[n % len(NAMES)]} {n}" for n in range(size)}
    course = new_course(folder, "college", TERM, roster)
    hand_out(course, SET)
    return course


def fill(course, sets, size, tables, analyze):
    """Eight sets with the cells of ours, each handed in by everybody and marked: rows in bulk."""
    from coursework.gradebook.points import connected
    from nbgrader.api import Gradebook

    _cell, comment, grade, submitted, of_notebook = tables
    with Gradebook(course.gradebook) as book:
        for set_id in sets:
            book.add_assignment(set_id)
            book.add_notebook(set_id, set_id)
            for question in range(1, 6):
                book.add_grade_cell(f"q{question}-check", set_id, set_id, max_score=3,
                                    cell_type="code")  # fmt: skip
            book.add_grade_cell("q6-answer", set_id, set_id, max_score=4, cell_type="markdown")
            book.add_solution_cell("q6-answer", set_id, set_id)
        where = {
            set_id: (
                book.find_assignment(set_id).id,
                book.find_notebook(set_id, set_id).id,
                [(each.id, each.name) for each in book.find_notebook(set_id, set_id).grade_cells],
                [each.id for each in book.find_notebook(set_id, set_id).solution_cells],
            )
            for set_id in sets
        }
    for assignment, notebook, graded, solutions in where.values():
        rows = {table: [] for table in (submitted, of_notebook, grade, comment)}
        for number in range(size):
            one, other = uuid4().hex, uuid4().hex
            rows[submitted].append({"id": one, "assignment_id": assignment,
                                    "student_id": f"BH-{100001 + number}"})  # fmt: skip
            rows[of_notebook].append({"id": other, "assignment_id": one,
                                      "notebook_id": notebook, "flagged": False})  # fmt: skip
            rows[grade] += [
                {"id": uuid4().hex, "notebook_id": other, "cell_id": key,
                 "auto_score": None if name == "q6-answer" else float(number % 4),
                 "manual_score": None, "needs_manual_grade": name == "q6-answer"}
                for key, name in graded
            ]  # fmt: skip
            rows[comment] += [{"id": uuid4().hex, "notebook_id": other, "cell_id": key,
                               "manual_comment": None} for key in solutions]  # fmt: skip
        with connected(course) as connection:
            for table, those in rows.items():
                connection.execute(table.insert(), those)
    with connected(course) as connection:
        analyze(connection)


if __name__ == "__main__":
    main()
