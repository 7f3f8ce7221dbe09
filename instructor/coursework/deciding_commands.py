"""Decisions on the command line: each command adds one line to the list.

Decisions that change points for several students first show whose, and count only with --sure.
"""

from functools import partial
from pathlib import Path

from coursework.deciding import FOR_ALL, about_of, changed_in_words, decide, journal, looked_at
from coursework.decisions.journal import line_of
from coursework.gradebook.waiting import answers_to_read, by_question
from coursework.progress import Progress
from coursework.records.trays import keep_tray
from coursework.words import number

__all__ = ["COMMANDS", "add_commands", "waiting_answers"]

# Command, kind of decision, what is typed behind it, help.
COMMANDS = (
    ("place", "place", "file student set", "say whose a file is"),
    ("set-aside", "set aside", "file", "leave a file aside for good"),
    ("counts", "this one counts", "file student set", "say which of several hand-ins counts"),
    ("handed-in", "handed in at", "file student set time", "say when a file was handed in"),
    ("extend", "extension", "set time", "move the due time, for the class or --student"),
    ("excuse", "excused", "set student", "count a set nowhere for a student: neither open nor 0"),
    ("on-paper", "on paper", "set student points out_of", "enter marks for work that is no file"),
    ("practical", "practical mark", "student mark points", "give a practical mark"),
    ("points", "points by hand", "set student question points", "give points for any answer"),
    ("machine-mark", "back to the machine", "set student question", "take points by hand away"),
    ("drop", "dropped question", "set question", "let a question count nowhere"),
    ("full-marks", "full marks", "set question", "give everybody all points of a question"),
    ("accept", "accept this too", "set question", "accept an --answer too, or a wider --step"),
    ("newer-numbers", "newer numbers", "set", "take the numbers that the kit asks for now"),
    ("own-key", "own key", "set", "stay with the class's key; the kit's is offered no more"),
    ("newer-key", "newer key", "set", "take the kit's newer key of a set that is handed out"),
    ("take-back", "take back", "line", "take a decision back: its number stands in the journal"),
)
LINES = "how long the mat's two lines are under a ruler"


def add_commands(class_step):
    """Add these commands to the parser.

    Parameters
    ----------
    class_step : callable
        Takes a name, what to do with the class and the options, and a line of help; gives back the
        command's own parser.
    """
    for name, kind, typed, help_ in COMMANDS:
        command = class_step(name, partial(_command, kind), help_)
        for each in typed.split():
            command.add_argument(each)
        if name == "points":
            command.add_argument("comment", nargs="?", default="", help="as --why")
        command.add_argument("--why", default="", help="the reason, or a remark to the student")
        if name == "extend":
            command.add_argument("--student", default="", help="only for this student")
        if name == "practical":
            command.add_argument("--photo", type=Path, help="of the tray, on the printed mat")
            command.add_argument("--cut", metavar="NAME", help="judge the tray against it")
            command.add_argument("--lines", nargs=2, type=float, metavar="MM", help=LINES)
        if name == "accept":
            command.add_argument("--answer", default="", help="as a student typed it")
            command.add_argument("--step", default="", help='as in "100 g" or "5 %%"')
        if kind in FOR_ALL:
            command.add_argument("--sure", action="store_true", help="without this it only shows")
    class_step("journal", lambda course, _: print(journal(course)), "list all decisions")
    waiting = class_step(
        "waiting",
        lambda course, options: print(waiting_answers(course, options.set)),
        "list the answers that wait for you, question by question",
    )
    waiting.add_argument("set")


def waiting_answers(course, set_id):
    """The answers of a set that wait for a person, question by question.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    str
    """
    waits = [one for one in answers_to_read(course, set_id) if one.points is None]
    lines = []
    for question, answers in by_question(waits).items():
        first = answers[0]
        lines += [f"{question}: {first.title}, 0 to {number(first.out_of)} points"]
        lines += [f"  {one.student}: {' '.join(one.answer.split()) or '–'}" for one in answers]
    return "\n".join(lines) or f"Everything of {set_id} is marked."


def _command(kind, course, options):
    about = about_of(course, kind, vars(options))
    about["why"] = about["why"] or getattr(options, "comment", "")
    if getattr(options, "photo", None):
        # Here, for only this command needs the library for photos.
        from kitchenmath.photo.evidence import board_evidence

        lines = options.lines and tuple(options.lines)
        found = board_evidence(options.photo, options.cut, ruler_mm=lines)
        print("\n".join([*found.table, *found.sentences]))
        about["file"] = keep_tray(course, about["student"], about["question"], found)
    if kind in FOR_ALL and not options.sure:
        with Progress("Looking") as progress:
            words = looked_at(course, kind, about, progress)
        print(words)
        print("Nothing is decided yet. Type it again with --sure.")
        return
    made = decide(course, kind, **about)
    said = line_of(made, course.roster), changed_in_words(course, made)
    print("\n".join(filter(None, said)))
