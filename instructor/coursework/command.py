"""The desk on the command line: `python3 instructor hand-out 04-buy-enough` and the rest."""

import argparse
import os
import sys
from itertools import chain
from pathlib import Path

from coursework.arriving.commands import add_commands as add_arriving_commands
from coursework.board import add_board
from coursework.care.commands import add_commands as add_care_commands
from coursework.classes.course import CLASSES, new_course, open_course
from coursework.classes.names import name_for_files
from coursework.classes.oneroster import read_any_roster
from coursework.deciding import add_commands as add_deciding_commands
from coursework.edition.told import add_options, told
from coursework.errors import CourseError
from coursework.progress import Progress
from coursework.sets.key_text import set_ids
from coursework.words import number
from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.typed.numbers import typed_number

STEPS = """\
Without a command, the desk opens in the browser: python3 instructor

A module, in order:
  python3 instructor new-class autumn --roster roster.csv --term autumn-26
  python3 instructor hand-out 04-buy-enough
  python3 instructor take-in Downloads/hand-ins.zip
  python3 instructor mark 04-buy-enough
  python3 instructor hand-back 04-buy-enough
  python3 instructor report 04-buy-enough
  python3 instructor skills
  python3 instructor reteach
  python3 instructor term-marks --practical practical.csv
"""


def main(arguments):
    """Do one step of running a class.

    Parameters
    ----------
    arguments : list of str

    Returns
    -------
    int
        0 when it was done, 1 when a sentence says what to mend, 130 when it was stopped.
    """
    options = _parser().parse_args(arguments)
    try:
        options.do(options)
    except KitchenError as error:
        print("\n".join([str(error), *_notes(error)]), file=sys.stderr)
        return 1
    except BrokenPipeError:  # as in `demo | head -5`: it may have come to its end, or not
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        print("Nobody reads what it says, so it stopped. Type it again to go on.", file=sys.stderr)
        return 1
    except KeyboardInterrupt as stop:
        words = "\nStopped. Nothing is lost: the same command goes on from here."
        print("\n".join([words, *_notes(stop)]), file=sys.stderr)
        return 130
    return 0


def _notes(error):
    return getattr(error, "__notes__", [])


def _parser():
    parser = argparse.ArgumentParser(
        prog="python3 instructor",
        description="Run a class: hand out, take in, mark, hand back, report.",
        epilog=STEPS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    steps = parser.add_subparsers(title="commands", metavar="command", required=True)

    def step(name, do, help_):
        added = steps.add_parser(name, help=help_, description=help_)
        added.set_defaults(do=do)
        return added

    demo = step("demo", _demo, "play an invented class of 24 through one set")
    demo.add_argument("--seed", type=int, default=1, help="the same seed gives the same marks")
    demo.add_argument("--folder", type=Path, default=CLASSES / "demo", help="where the class goes")

    begin = step("new-class", _new_class, "make a class from a roster")
    begin.add_argument("name", help="the class's name, or a folder for it in one that is there")
    begin.add_argument(
        "--roster", type=Path, required=True, help="CSV: student_number,name; or OneRoster"
    )
    begin.add_argument("--term", required=True, help="part of every student's numbers")

    step("sets", _sets, "list the sets there are")
    take = step("take-in", _take_in, "take in a folder or a zip of hand-ins, as downloaded")
    take.add_argument("places", nargs="+", type=Path, help="folders or zips")
    for name, do, help_ in (
        ("hand-out", _hand_out, "make a set's notebook for the class"),
        ("mark", _mark, "mark all hand-ins of a set"),
        ("hand-back", _hand_back, "write one page for each student"),
        ("report", _report, "write the mark sheet and the class's page"),
    ):
        step(name, do, help_).add_argument("set", help="such as 04-buy-enough")
    steps.choices["mark"].add_argument(
        "--cluster", metavar="ADDRESS", help="mark on a Dask cluster, as in tcp://192.0.2.7:8786"
    )
    step("skills", _skills, "write what is not got over all sets, by skill and by student")
    again = step("reteach", _reteach, "make a practice notebook on what is not got, for the class")
    again.add_argument("students", nargs="*", help="student numbers: a sheet for each of them")
    again.add_argument("--each", action="store_true", help="for each student who lacks something")
    oneroster = step("oneroster", _oneroster,
                     "write roster and results in the open OneRoster form")  # fmt: skip
    oneroster.add_argument("--take", type=Path, metavar="ZIP",
                           help="take results in from there, as practical marks")  # fmt: skip
    packs = step("pack", _pack, "write a page for each student, and pack all in one zip")
    packs.add_argument("set")
    packs.add_argument("--folders", action="store_true", help="a folder for each student")
    step("student", _student, "show all that is known of a student").add_argument("student")
    term = step("term-marks", _term_marks, "write the term's mark book over all sets")
    term.add_argument("--practical", type=Path, help="CSV: student_number and a column a mark")
    points = step("points", _points, "enter the points that you gave for a written answer")
    for name in ("set", "student", "question"):
        points.add_argument(name)
    points.add_argument("points")
    points.add_argument("comment", nargs="?", default="")
    add_options(step("edition", _edition, "build the pages and the zip that students get"))
    care = [add(step, chosen) for add in
            (add_care_commands, add_deciding_commands, add_arriving_commands)]  # fmt: skip
    for name in ("take-in", "hand-out", "mark", "hand-back", "report", "skills", "reteach",
                 "term-marks", "points", "pack", "oneroster", "student", "edition",
                 *chain(*care)):  # fmt: skip
        steps.choices[name].add_argument(
            "--class", dest="folder", type=Path, help="the class's folder or name"
        )
    add_board(step)
    step("college", _college, "add what a cluster and a PostgreSQL gradebook need, once")
    step("refresh", _refresh, "for authors: run lessons and keys, generate the students' copies")
    return parser


def chosen(folder):
    """The class in a folder, or of that name; without either the only class there is.

    Raises
    ------
    CourseError
    """
    if folder:
        return open_course(folder if folder.exists() else CLASSES / name_for_files(str(folder)))
    classes = sorted(path.parent for path in CLASSES.glob("*/course.toml"))
    real = [path for path in classes if path.name != "demo"] or classes
    if len(real) != 1:
        names = ", ".join(path.name for path in real) or "none"
        raise CourseError(f"which class? There are: {names}. Say it with --class NAME.")
    return open_course(real[0])


def _new_class(options):
    folder, name = Path(options.name), options.name
    if len(folder.parts) > 1 and (folder.is_absolute() or folder.parent.is_dir()):
        name = folder.name
    else:  # "Cooks 2026/27" is a name with a slash, no place
        folder = CLASSES / name_for_files(name)
    course = new_course(folder, name, options.term, read_any_roster(options.roster))
    print(f"Class “{course.name}” with {len(course.roster)} students is in {course.folder}")


def _sets(_):
    print("\n".join(set_ids()))


def _hand_out(options):
    from coursework.sets.hand_out import hand_out

    course = chosen(options.folder)
    with Progress("Handing out"):
        file = hand_out(course, options.set)
    print(f"Give this notebook to the class: {file}")


def _take_in(options):
    from coursework.arriving.take_in import take_in

    course = chosen(options.folder)
    with Progress("Taking in") as progress:
        taken = take_in(course, options.places, progress)
    print(taken)


def _mark(options):
    from coursework.marking.mark_set import mark_set
    from coursework.marking.room.door import not_held_back
    from coursework.reports.in_lines import marks_in_lines

    course = chosen(options.folder)
    if options.cluster:
        from coursework.marking.cluster import cluster

        with cluster(options.cluster) as executor, Progress("Marking") as progress:
            marked = mark_set(course, options.set, progress, executor, executor.workers)
            weak = executor.not_held_back()
    else:
        with Progress("Marking") as progress:
            marked = mark_set(course, options.set, progress)
        weak = not_held_back()
    print(f"{marks_in_lines(course, options.set)}\n\n{marked}")
    if weak:
        print(f"\n{weak}")


def _hand_back(options):
    from coursework.reports.hand_back import hand_back

    course = chosen(options.folder)
    with Progress("Handing back") as progress:
        pages = hand_back(course, options.set, progress)
    print(f"{len(pages)} pages, one in each student's folder below {course.folder / 'feedback'}")


def _report(options):
    from coursework.reports.report import report

    course = chosen(options.folder)
    with Progress("Reporting") as progress:
        sheet, page = report(course, options.set, progress)
    print(f"Mark sheet: {sheet}\nThe class's page: {page}")


def _skills(options):
    from coursework.reports.skills_page import told

    course = chosen(options.folder)
    with Progress("Counting skills") as progress:
        words = told(course, progress)
    print(words)


def _reteach(options):
    from coursework.skills.reteach import told

    course = chosen(options.folder)
    with Progress("Making sheets") as progress:
        words = told(course, options.students, options.each, progress)
    print(words)


def _term_marks(options):
    from coursework.reports.term_marks import said, term_marks

    course = chosen(options.folder)
    with Progress("Making the mark book") as progress:
        written = term_marks(course, options.practical, progress)
    print(said(*written))


def _oneroster(options):
    from coursework.reports.exchange import export_exchange
    from coursework.terms.results_in import in_words, take_results

    if options.take:
        print(in_words(take_results(chosen(options.folder), options.take)))
        return
    print(f"Roster and results: {export_exchange(chosen(options.folder))}")


def _pack(options):
    from coursework.reports.pack import in_words, pack

    course = chosen(options.folder)
    with Progress("Packing") as progress:
        packed = pack(course, options.set, options.folders, progress)
    print(in_words(packed))


def _student(options):
    from coursework.reports.student_view import in_lines, student_view

    course = chosen(options.folder)
    print(in_lines(student_view(course, options.student), course.roster))


def _points(options):
    from coursework.gradebook.points import enter_human

    course = chosen(options.folder)
    try:
        points = typed_number(options.points)
    except Unreadable as error:
        raise CourseError(f"points: {error}. Type a number, as in 2.5 or 2,5.") from None
    enter_human(course, options.set, options.student, options.question, points, options.comment)
    print(f"{options.student}, {options.question}: {number(points)} points are entered.")


def _edition(options):
    told(options, chosen(options.folder) if options.folder else None)


def _college(_):
    # What it needs was installed on the way here.
    print('Ready: mark SET --cluster ADDRESS, and gradebook = "postgresql+psycopg://...".')


def _refresh(_):
    from coursework.sets.notebooks import refresh

    with Progress("Running notebooks") as progress:
        files = refresh(progress)
    print("\n".join(str(file) for file in files))


def _demo(options):
    from coursework.demo import told

    told(options.folder, options.seed)
