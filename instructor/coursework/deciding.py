"""What an instructor decides, for the command line and the desk: each adds one line to the list.

What changes points for several students is looked at first: `looked_at` says whose.
"""

from coursework.arriving.arrivals import names_of_files, read_list
from coursework.arriving.placing_by_hand import named, settle_again
from coursework.classes.course_file import time_of
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.decisions.applied import changed_by
from coursework.decisions.changed_words import in_words
from coursework.decisions.holding import holding
from coursework.decisions.journal import in_words as journal_in_words
from coursework.decisions.kinds import FOR_GOOD, OF_KEYS, Decision, refuse_odd
from coursework.decisions.stamp import now, who_is_here
from coursework.errors import CourseError
from coursework.gradebook.decision_list import add_decision, decisions_of
from coursework.gradebook.points import enter_human, human_marks
from coursework.marking.another_key import what_changes, what_numbers_change
from coursework.marking.key_words import NUMBERS
from coursework.marking.key_words import in_words as key_in_words
from coursework.records.reading import usable_records
from coursework.sets.checked_keys import library, refuse_unchecked
from coursework.sets.class_keys import keep_keys, kits_key, other_key
from coursework.sets.drawn_numbers import keep_numbers, other_numbers
from coursework.sets.hand_out import settle_keys
from coursework.words import UNKNOWN
from kitchenmath.errors import Unreadable
from kitchenmath.practice import student_number
from kitchenmath.typed.numbers import typed_number

__all__ = ["FOR_ALL", "about_of", "changed_in_words", "decide", "journal", "looked_at",
           "preview", "whose_changed"]  # fmt: skip

CORRECTS = ("dropped question", "full marks", "accept this too")
FOR_ALL = (*CORRECTS, "newer key", "newer numbers")
MOVES_KEYS = ("newer key", "take back")
MOVES_FILES = ("place", "set aside", "this one counts", "handed in at", "take back")


def about_of(course, kind, typed):
    """What was typed, as the fields of a decision.

    Parameters
    ----------
    course : Course
    kind : str
    typed : dict of str to str
        By the names behind the command in `deciding_commands.COMMANDS`, and "why".

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
    if kind in OF_KEYS:
        about["file"] = _other(course, kind, typed["set"])
    if kind == "accept this too":
        about |= {"accepted": typed["answer"], "step": typed["step"]}
    return about | ({"question": typed["question"]} if "question" in typed else {})


def _other(course, kind, set_id):
    """The digest of what the kit has now: numbers, or its key, also one declined before."""
    if kind == "newer numbers":
        if found := other_numbers(course, set_id):
            return found
        raise CourseError(f"set: the kit asks for the numbers that “{set_id}” went out with.")
    if found := other_key(course, set_id):
        return found
    raise CourseError(f"set: the kit has no newer key of “{set_id}” for this class.")


def _practical(course, name):
    """A practical mark of the course file: its name and its points."""
    found = course.policy.practical.get(name.strip())
    if found is None:
        names = ", ".join(course.policy.practical)
        raise CourseError(
            f"mark: “{name}” is no practical mark of this class. There are: "
            f"{names or 'none; the course file names them'}."
        )
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
        When the line is odd, one that is taken back does not exist, or another step is at work
        in this class and files would have to follow.
    """
    if kind == "take back":
        _refuse_taking_back(course, about.get("line"))
    if kind == "newer key":
        key = keep_keys(course, about["set_id"], about["file"])
        refuse_unchecked(course, about["set_id"], key, library())
    if kind == "newer numbers":
        keep_numbers(course, about["set_id"], about["file"])
    if kind == "points by hand":  # they stand in nbgrader's own column as well
        return enter_human(
            course, about["set_id"], about["student"], about["question"], about["points"],
            about.get("why", ""),
        )  # fmt: skip
    if kind not in MOVES_FILES + MOVES_KEYS:
        return add_decision(course, kind, **about)
    with one_at_a_time(course, "following a decision"):
        made = add_decision(course, kind, **about)
        if kind in MOVES_FILES:
            settle_again(course)
        if kind in MOVES_KEYS:
            settle_keys(course)
    return made


def _refuse_taking_back(course, line):
    kinds = {one.number: one.kind for one in decisions_of(course)}
    if line not in kinds:
        raise CourseError(f"line: there is no decision {line}. See the journal.")
    if kinds[line] in FOR_GOOD:
        raise CourseError(f"line: decision {line} is for good: what was discarded is gone.")


def looked_at(course, kind, about, progress=None):
    """What a decision for all would change, by name and in words, before it counts.

    Parameters
    ----------
    course : Course
    kind : str
        One of `FOR_ALL`.
    about : dict
        The fields of a `Decision`.
    progress : callable, optional
        Called with (done, total, text).

    Returns
    -------
    str
    """
    set_id = about.get("set_id")
    if kind == "newer key":
        other = what_changes(course, set_id, kits_key(course, set_id), progress)
        return key_in_words(other, course.roster)
    if kind == "newer numbers":
        return key_in_words(what_numbers_change(course, set_id, progress), course.roster, NUMBERS)
    return in_words(preview(course, kind, **about), course.roster)


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


def whose_changed(course, made):
    """Whose points a decision has changed, now that it counts.

    Parameters
    ----------
    course : Course
    made : Decision
        As it stands in the list.

    Returns
    -------
    list of Change or None
        None where it neither corrects a question for all nor takes such a correction back.
    """
    through = [one for one in decisions_of(course) if one.number <= made.number]
    about = next((one for one in through if one.number == made.line), made)
    if about.kind not in CORRECTS:
        return None
    records, _ = usable_records(course, about.set_id)
    human = human_marks(course, about.set_id)
    return changed_by(records, human, holding(through[:-1]), holding(through))


def changed_in_words(course, made):
    """What a decision that was just made has changed, by name; "" where it corrects no question.

    Parameters
    ----------
    course : Course
    made : Decision

    Returns
    -------
    str
    """
    changes = whose_changed(course, made)
    return "" if changes is None else in_words(changes, course.roster, done=True)


def journal(course, titles=UNKNOWN):
    """All decisions of a class by day, the latest day first.

    Parameters
    ----------
    course : Course
    titles : dict of str to str, optional
        What the sets are called; on a command line they are typed, and so said, by their ids.

    Returns
    -------
    str
    """
    return journal_in_words(decisions_of(course), course.roster, names_of_files(course), titles)
