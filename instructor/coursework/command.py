"""The desk on the command line: `python3 instructor hand-out 04-buy-enough` and the rest."""

import argparse
import os
import sys
from pathlib import Path

from coursework.arriving.commands import add_commands as add_arriving_commands
from coursework.board import add_board
from coursework.care.commands import add_commands as add_care_commands
from coursework.care.commands import add_restore
from coursework.class_commands import add_commands as add_class_commands
from coursework.classes.course import CLASSES, new_course, open_course
from coursework.classes.listing import class_name, classes_in, labelled
from coursework.classes.names import name_for_files
from coursework.classes.oneroster import read_any_roster
from coursework.deciding_commands import add_commands as add_deciding_commands
from coursework.edition.told import add_options, told
from coursework.errors import CourseError
from coursework.progress import Progress
from coursework.sets.key_text import set_ids
from kitchenmath.errors import KitchenError

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

    def class_step(name, do, help_):
        added = step(name, lambda options: do(chosen(options.folder), options), help_)
        _add_class(added)
        return added

    _add_demo(step("demo", _demo, "play an invented class of 24 through one set"))
    _add_new_class(step("new-class", _new_class, "make a class from a roster"))
    step("sets", _sets, "list the sets there are")
    add_class_commands(class_step)
    edition = step("edition", _edition, "build the pages and the zip that students get")
    add_options(edition)
    _add_class(edition)
    add_care_commands(class_step)
    add_deciding_commands(class_step)
    add_arriving_commands(class_step)
    add_restore(step)
    add_board(step)
    step("college", _college, "add what a cluster and a PostgreSQL gradebook need, once")
    step("refresh", _refresh, "for authors: run lessons and keys, generate the students' copies")
    return parser


def _add_demo(command):
    command.add_argument("--seed", type=int, default=1, help="the same seed gives the same marks")
    command.add_argument("--folder", type=Path, default=CLASSES / "demo", help="where it goes")


def _add_new_class(command):
    command.add_argument("name", help="the class's name, or a folder for it in one that is there")
    command.add_argument(
        "--roster", type=Path, required=True, help="CSV: student_number,name; or OneRoster"
    )
    command.add_argument("--term", required=True, help="part of every student's numbers")


def _add_class(command):
    command.add_argument("--class", dest="folder", type=Path, help="the class's folder or name")


def chosen(folder):
    """The class in a folder, or of that folder's or its own name; without it the only one there is.

    Raises
    ------
    CourseError
    """
    if folder:
        here = folder if folder.exists() else CLASSES / name_for_files(str(folder))
        named = [one for one in classes_in(CLASSES) if class_name(one) == str(folder)]
        return open_course(here if here.exists() or len(named) != 1 else named[0])
    classes = classes_in(CLASSES)
    real = [path for path in classes if path.name != "demo"] or classes
    if len(real) != 1:
        names = ", ".join(f"“{name}”" for name, _ in labelled(real)) or "none"
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
