"""What is next in a class: who has not handed in, what waits for a decision, a mark or a page."""

from dataclasses import dataclass, field
from datetime import datetime

from coursework.arriving.doubts import doubts
from coursework.arriving.doubts import in_words as file_in_words
from coursework.arriving.placing_by_hand import without_place
from coursework.care.discarded_words import counted
from coursework.care.discarding import past_their_time
from coursework.decisions.holding import holding
from coursework.decisions.stamp import moment_of
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import human_marks
from coursework.gradebook.waiting import answers_in, still_open
from coursework.records.reading import handed_in, not_marked, usable_records
from coursework.sets.class_keys import newer_key
from coursework.sets.drawn_numbers import other_numbers
from coursework.words import plural

NAMED = 4  # students by name; the rest as a number
DAY = 24 * 60 * 60
NEWER_KEY = (
    "the kit has a newer key, or the class has other settings since it went out. The class keeps "
    "its own key until you take the newer one: look under “What you decide” whose numbers would "
    "change."
)
OTHER_NUMBERS = (
    "the kit asks for other numbers, or takes another answer for right, than when the set went "
    "out. Nothing is marked until you decide: look under “What you decide” whose numbers would "
    "change."
)


@dataclass(frozen=True)
class SetState:
    """How far one set of a class has come.

    Attributes
    ----------
    set_id, title : str
    missing : tuple of str
        Students on the roster who have not handed in.
    to_mark : tuple of str
        Students whose hand-in was not marked yet.
    to_read : int
        Answers that wait for a person's points.
    to_hand_back : int
        Marked students without a page, or with one that is older than their mark.
    due : float or None
        In seconds since 1970.
    newer_key : bool
        Whether the kit has another key than the class, and nobody decided about it yet.
    other_numbers : bool
        Whether students would be asked something else than what went out.
    """

    set_id: str
    title: str
    missing: tuple = ()
    to_mark: tuple = ()
    to_read: int = 0
    to_hand_back: int = 0
    due: float | None = None
    newer_key: bool = False
    other_numbers: bool = False


@dataclass(frozen=True)
class ClassState:
    """How far a class has come.

    Attributes
    ----------
    sets : tuple of SetState
        Those handed out, in order.
    unplaced : int
        Files that have no place.
    not_out : tuple of str
        Titles of the sets that are still to be handed out.
    doubts : tuple of (str, Doubt)
        Marked hand-ins that a later file would displace, with the title of the set.
    past : Past or None
        Copies of students' work that are past their time.
    """

    sets: tuple = ()
    unplaced: int = 0
    not_out: tuple = field(default=())
    doubts: tuple = ()
    past: object = None


def class_state(course, titles):
    """How far a class has come, worked out from its files and the gradebook.

    Parameters
    ----------
    course : Course
    titles : dict of str to str
        Of all sets, by id.

    Returns
    -------
    ClassState
    """
    out, decisions = course.sets_handed_out(), decisions_of(course)
    holds = holding(decisions)
    return ClassState(
        sets=tuple(_set_state(course, one, titles.get(one, one), decisions, holds) for one in out),
        unplaced=len(without_place(course)),
        not_out=tuple(title for set_id, title in titles.items() if set_id not in out),
        doubts=tuple((titles.get(one.set_id, one.set_id), one) for one in doubts(course)),
        past=past_their_time(course),
    )


def _set_state(course, set_id, title, decisions, holds):
    """A set as it stands after all decisions: who is excused, or is marked on paper, has not
    handed in and is not missed; an extension of the class moves the due time."""
    apart, roster = holds.apart(set_id), course.roster
    came = handed_in(course, set_id)
    missing = tuple(one for one in roster if one not in came and one not in apart)
    due = holds.due(course.policy.rule(set_id), set_id, "").due
    newer = bool(newer_key(course, set_id, holds)), bool(other_numbers(course, set_id, holds))
    try:
        records, _ = usable_records(course, set_id)
    except CourseError:  # nothing is marked yet
        to_mark = tuple(one for one in roster if one in came)
        return SetState(set_id, title, missing, to_mark, 0, 0, due, *newer)
    to_mark = tuple(one for one in not_marked(course, set_id, records) if one not in apart)
    last = _last_decided(decisions, set_id)
    backs = {found.student for found in records} | {one for one in apart if one in roster}
    gone = max((_moment(one) for one in decisions if one.kind == "copies discarded"), default=0)
    old = sum(_page_is_old(course, set_id, student, last, gone) for student in backs)
    answers = answers_in(records, set_id, human_marks(course, set_id), holds)
    waiting = still_open(answers)
    return SetState(set_id, title, missing, to_mark, waiting, old, due, *newer)


def _last_decided(decisions, set_id):
    """When a decision about a set was last made or taken back, by student; "" for the class."""
    about = {one.number: one for one in decisions}
    last = {}
    for one in decisions:
        what = about.get(one.line, one)
        if set_id == what.set_id:
            last[what.student] = _moment(one)
    return last


def _moment(decision):
    return moment_of(decision.when).timestamp()


def _page_is_old(course, set_id, student, last, gone=0):
    """Whether a student has no page, or one from before the last marking or decision.

    A page that was past its time counts as of the moment when it was discarded, `gone`.
    """
    page, mark = course.feedback(set_id, student), course.marks(set_id, student)
    made = page.stat().st_mtime if page.is_file() else gone
    if not made:
        return True
    changed = [last.get(student, 0), last.get("", 0)]
    changed += [mark.stat().st_mtime] if mark.is_file() else []
    return made < max(changed)


def in_words(state, roster, now):
    """What is next, a line each, the most urgent first.

    Parameters
    ----------
    state : ClassState
    roster : dict of str to str
        Student number to name.
    now : float
        In seconds since 1970.

    Returns
    -------
    list of str
        Never empty.
    """
    lines = _doubted(state.doubts, roster)
    if state.unplaced:
        lines.append(f"{_files(state.unplaced)} no place: say whose, or set aside.")
    for one in state.sets:
        words = _of_set(one, roster, now)
        lines += [f"{one.title}: {words}"] if words else []
        lines += [f"{one.title}: {OTHER_NUMBERS}"] if one.other_numbers else []
        lines += [f"{one.title}: {NEWER_KEY}"] if one.newer_key else []
    if state.past:
        kept = state.past.kept
        lines.append(
            f"Copies of students' work were to be kept until {kept.until}: "
            f"{counted(state.past)}. Look at them in “The class's data”, and discard them."
        )
    if not lines and state.not_out:
        lines.append(f"Nothing waits. Next to hand out: {state.not_out[0]}.")
    return lines or ["Nothing waits."]


def _doubted(doubts_, roster):
    """Which file counts, a line for each of the first; the inbox has them all."""
    lines = []
    for title, one in doubts_[:NAMED]:
        files = "; ".join(file_in_words(file, one, roster) for file in one.files)
        name = roster.get(one.student, one.student)
        lines.append(f"{name}, {title}: say in the inbox which file counts. {files}.")
    more = len(doubts_) - NAMED
    return [*lines, f"{more} more like these stand in the inbox."] if more > 0 else lines


def _of_set(one, roster, now):
    parts = []
    if one.due is not None:
        parts.append(_due(one.due, now))
    if one.to_mark:
        parts.append(f"{_students(one.to_mark, roster)} to mark")
    if one.to_read:
        parts.append("1 answer waits for you" if one.to_read == 1
                     else f"{one.to_read} answers wait for you")  # fmt: skip
    if one.to_hand_back:
        parts.append(f"{one.to_hand_back} to hand back")
    if one.missing and len(one.missing) < len(roster):
        parts.append(f"not handed in: {_students(one.missing, roster)}")
    elif one.missing:
        parts.append("nobody has handed in yet")
    settled = not (one.to_mark or one.to_read or one.to_hand_back or one.missing)
    return "" if settled else "; ".join(parts) + "."


def _due(due, now):
    when = datetime.fromtimestamp(due).strftime("%d %B, %H:%M").lstrip("0")
    if due < now:
        return f"was due {when}"
    days = int((due - now) // DAY)
    return f"due {when}, {f'in {days} days' if days > 1 else 'in a day' if days else 'today'}"


def _students(numbers, roster):
    named = [roster.get(one, one) for one in numbers[:NAMED]]
    more = len(numbers) - NAMED
    if more <= 0:
        return ", ".join(named)
    return f"{', '.join(named)} and {more} more"


def _files(count):
    return plural(count, "file has", "files have")
