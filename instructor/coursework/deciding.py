"""What an instructor decides, on the command line: each command adds one line to the list.

Decisions that change points for several students first show whose, and count only with --sure.
"""

from functools import partial
from pathlib import Path

from coursework.arriving.arrivals import read_list
from coursework.arriving.placing_by_hand import named, settle_again
from coursework.classes.course_file import time_of
from coursework.decisions.applied import changed_by
from coursework.decisions.holding import holding
from coursework.decisions.journal import in_words as journal_in_words
from coursework.decisions.journal import line_of
from coursework.decisions.kinds import FOR_GOOD, Decision, refuse_odd
from coursework.decisions.stamp import now, who_is_here
from coursework.errors import CourseError
from coursework.gradebook.decision_list import add_decision, decisions_of
from coursework.gradebook.points import human_marks
from coursework.gradebook.waiting import answers_to_read, by_question
from coursework.records.reading import usable_records
from coursework.records.trays import keep_tray
from coursework.words import number, plural
from kitchenmath.errors import Unreadable
from kitchenmath.practice import student_number
from kitchenmath.typed.numbers import typed_number

__all__ = ["COMMANDS", "FOR_ALL", "about_of", "add_commands", "decide", "in_words", "journal",
           "preview", "waiting_answers"]  # fmt: skip

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
    ("machine-mark", "back to the machine", "set student question", "take points by hand away"),
    ("drop", "dropped question", "set question", "let a question count nowhere"),
    ("full-marks", "full marks", "set question", "give everybody all points of a question"),
    ("accept", "accept this too", "set question", "accept an --answer too, or a wider --step"),
    ("take-back", "take back", "line", "take a decision back: its number stands in the journal"),
)
LINES = "how long the mat's two lines are under a ruler"
FOR_ALL = ("dropped question", "full marks", "accept this too")
MOVES_FILES = ("place", "set aside", "this one counts", "handed in at", "take back")


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
    if getattr(options, "photo", None):
        # Here, for only this command needs the library for photos.
        from kitchenmath.photo.evidence import board_evidence

        lines = options.lines and tuple(options.lines)
        found = board_evidence(options.photo, options.cut, ruler_mm=lines)
        print("\n".join([*found.table, *found.sentences]))
        about["file"] = keep_tray(course, about["student"], about["question"], found)
    if kind in FOR_ALL and not options.sure:
        print(in_words(preview(course, kind, **about)))
        print("Nothing is decided yet. Type it again with --sure.")
        return
    print(line_of(decide(course, kind, **about), course.roster))


def about_of(course, kind, typed):
    """What was typed, as the fields of a decision.

    Parameters
    ----------
    course : Course
    kind : str
    typed : dict of str to str
        By the names behind the command in `COMMANDS`, and "why".

    Returns
    -------
    dict
        For `decide` and `preview`.

    Raises
    ------
    CourseError
        Naming what was typed, what came and what to type.
    """
    about = {"why": typed["why"]}
    if "set" in typed:
        about["set_id"] = typed["set"]
        if typed["set"] not in course.sets_handed_out():
            raise CourseError(f"set: “{typed['set']}” is not handed out in this class.")
    if typed.get("student"):
        about["student"] = student_number(typed["student"])
        if about["student"] not in course.roster:
            raise CourseError(f"student: {about['student']} is not on the roster.")
    if "file" in typed:
        about["file"] = named(read_list(course), typed["file"]).sha256
    if "time" in typed:
        about["seconds"] = time_of(typed["time"])
    about |= {name: _number(typed[name], name) for name in ("points", "out_of") if name in typed}
    if "mark" in typed:
        about |= _practical(course, typed["mark"])
    if "line" in typed:
        about["line"] = int(_number(typed["line"], "line"))
    if kind == "accept this too":
        about |= {"accepted": typed["answer"], "step": typed["step"]}
    return about | ({"question": typed["question"]} if "question" in typed else {})


def _practical(course, name):
    """A practical mark of the course file: its name and its points."""
    found = course.policy.practical.get(name.strip())
    if found is None:
        names = ", ".join(course.policy.practical) or "none; the course file names them"
        raise CourseError(f"mark: “{name}” is no practical mark of this class. There are: {names}.")
    return {"question": found.name, "out_of": found.out_of}


def _number(typed, name):
    try:
        return typed_number(typed)
    except Unreadable as error:
        raise CourseError(f"{name}: {error}. Type a number, as in 2.5 or 2,5.") from None


def decide(course, kind, **about):
    """Add a decision, and settle the files anew where it moves one.

    Parameters
    ----------
    course : Course
    kind : str
    **about
        The fields of a `Decision`.

    Returns
    -------
    Decision

    Raises
    ------
    CourseError
        When the line is odd, or one that is taken back does not exist.
    """
    if kind == "take back":
        _refuse_taking_back(course, about.get("line"))
    made = add_decision(course, kind, **about)
    if kind in MOVES_FILES:
        settle_again(course)
    return made


def _refuse_taking_back(course, line):
    kinds = {one.number: one.kind for one in decisions_of(course)}
    if line not in kinds:
        raise CourseError(f"line: there is no decision {line}. See the journal.")
    if kinds[line] in FOR_GOOD:
        raise CourseError(f"line: decision {line} is for good: what was discarded is gone.")


def preview(course, kind, **about):
    """Whose points a decision would change, before it counts.

    Parameters
    ----------
    course : Course
    kind : str
    **about
        The fields of a `Decision`.

    Returns
    -------
    list of Change
    """
    stand = decisions_of(course)
    line = Decision(kind, who_is_here(), now(), number=len(stand) + 1, **about)
    refuse_odd(line)
    records, _ = usable_records(course, line.set_id)
    human = human_marks(course, line.set_id)
    return changed_by(records, human, holding(stand), holding([*stand, line]))


def in_words(changes):
    """Whose points change, a line each.

    Parameters
    ----------
    changes : list of Change

    Returns
    -------
    str
    """
    if not changes:
        return "Nobody's points change."
    lines = [f"{plural(len(changes), 'mark changes', 'marks change')}:"]
    for one in changes:
        before, after = _points(one.before, one.counted), _points(one.after, one.counts)
        lines.append(f"  {one.student}, {one.question}: {before} → {after}")
    return "\n".join(lines)


def _points(points, counts):
    if not counts:
        return "counts nowhere"
    return "open" if points is None else number(points)


def journal(course):
    """All decisions of a class by day, the latest day first.

    Parameters
    ----------
    course : Course

    Returns
    -------
    str
    """
    return journal_in_words(decisions_of(course), course.roster)
