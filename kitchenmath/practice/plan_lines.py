"""A service plan as a student types it: the start of each task, a line each.

"cider foam 19:20", "7.20 pm - Cider Foam" and {"cider foam": "19:20"} all say the same.
"""

import datetime
import difflib
import re
import unicodedata
from dataclasses import dataclass, field
from functools import lru_cache

from kitchenmath.errors import KitchenError, Unreadable, WrongKind
from kitchenmath.practice import look_words
from kitchenmath.practice.plan_evening import said_of_the_evening
from kitchenmath.practice.question_kinds import AnswerKind, add_kind
from kitchenmath.service.clock import read_clock, say_clock
from kitchenmath.typed.bare_words import bare_words
from kitchenmath.units.saying import as_came
from kitchenmath.units.typed_words import UNSEEN

EXAMPLE = "cider foam 19:20"
LONGEST = 4000  # characters; a plan is a page at most
NEAR = 0.75  # share of letters in common from which two spellings are one word
SMALL_WORDS = {"a", "an", "and", "at", "for", "from", "in", "into", "of", "on", "start", "the",
               "to"}  # fmt: skip

_CLOCK = re.compile(
    r"(?<![\w:.,])"
    r"(?:(?P<hour>\d{1,2})[:.,h](?P<minute>\d\d)(?![:.,]?\d)"
    r"|(?P<four>\d{4})(?!\w)"
    r"|(?P<whole>\d{1,2})(?=\s?[ap]\.?\s?m\b))"
    r"(?:\s?(?P<half>[ap])\.?\s?m\b\.?)?(?:\s?h\b)?(?P<day>\s(?:the|\d+) days? before)?",
    re.IGNORECASE,
)
# "19:08-19:20" and "19:08 until 19:20": the first is the start.
_UNTIL = re.compile(
    r"(\d{1,2}[:.]\d\d(?:\s?[ap]m)?)\s*(?:-|–|—|to|until|till)\s*\d{1,2}[:.]\d\d(?:\s?[ap]m)?",
    re.IGNORECASE,
)
_MORNING = re.compile(r"\d\s?a\.?\s?m\b", re.IGNORECASE)
_AROUND = " \t-–—•*·:=>|,.@/'\"“”()[]"  # what may stand between a task and its time


@dataclass(frozen=True)
class TypedPlan:
    """What a student typed.

    Attributes
    ----------
    starts : dict of str to str
        A clock time by task.
    odd : tuple of str
        Sentences on what could not be read.
    untimed : tuple of (str, str)
        Each line without a clock time, and the sentence on it.
    morning_said : bool
        Whether an "am" stands in it, so that its times are meant as they are typed.
    """

    starts: dict
    odd: tuple = ()
    untimed: tuple = field(default=(), repr=False)
    morning_said: bool = field(default=False, repr=False)

    def __str__(self):
        return "; ".join(f"{start} {name}" for name, start in in_time(self.starts))


def in_time(starts):
    """Tasks and their starts, earliest first.

    Parameters
    ----------
    starts : dict of str to str

    Returns
    -------
    list of (str, str)
    """
    return sorted(starts.items(), key=lambda pair: read_clock(pair[1], pair[0]))


def read_plan(answer):
    """The starts in a plan as typed, with the tasks as the student calls them.

    Parameters
    ----------
    answer : str or dict
        A line for each task, or a clock time by task.

    Returns
    -------
    TypedPlan
        A line that cannot be read is told in `odd` and spoils no other.

    Raises
    ------
    WrongKind
        When no plan came at all.
    Unreadable
        When not one start could be read.

    Examples
    --------
    >>> print(read_plan("Plate - 7.20 pm; cider foam 19:14"))
    19:14 cider foam; 19:20 Plate
    """
    if isinstance(answer, dict):
        found = [_entry(name, time) for name, time in answer.items()]
    elif isinstance(answer, str):
        if len(answer) > LONGEST:
            raise Unreadable(f"this plan is longer than {LONGEST} characters: type a line a task.")
        plain = unicodedata.normalize("NFKC", UNSEEN.sub("", answer))
        lines = plain.replace(";", "\n").splitlines()
        found = [_line(line, place) for place, line in enumerate(lines, 1) if line.strip()]
    else:
        raise WrongKind(f'{as_came(answer)} is no plan: type a line for each task, "{EXAMPLE}".')
    starts, odd = {}, [sentence for name, _, sentence in found if sentence and not name]
    untimed = tuple((name, sentence) for name, _, sentence in found if sentence and name)
    for name, start, _ in found:
        odd += [_twice(name, starts[name], start)] if starts.get(name, start) != start else []
        starts |= {name: start} if start else {}
    if not starts:
        said_ = [*odd, *(sentence for _, sentence in untimed)]
        why = said_[0] if len(said_) == 1 else look_words.NO_LINE
        raise Unreadable(f'{why} Type a line for each task, such as "{EXAMPLE}".')
    return TypedPlan(starts, tuple(odd), untimed, bool(_MORNING.search(str(answer))))


def placed(typed, tasks):
    """A plan with the tasks by the names that the question gives them.

    Case, accents, order of words and small words do not matter, and a part of a name will do
    while it means one task only: "foam" is "whip the cider foam". A line that holds the name of a
    task and no time is not filled in yet: nothing is odd about it.

    Parameters
    ----------
    typed : TypedPlan
    tasks : iterable of str

    Returns
    -------
    TypedPlan

    Examples
    --------
    >>> placed(read_plan("foam 19:14; soup 18:00"), ["whip the cider foam", "plate"])
    TypedPlan(starts={'whip the cider foam': '19:14'}, odd=('“soup” is no task of this service.',))
    """
    untimed = [sentence for line, sentence in typed.untimed if not only_names(line, tasks)]
    starts, odd = {}, [*typed.odd, *untimed]
    for name, start in typed.starts.items():
        meant = _meant(name, tasks)
        if len(meant) > 1:
            tasks_ = " or ".join(meant)
            odd.append(look_words.MAY_BE.format(name=as_came(name)[1:-1], tasks=tasks_))
        elif not meant:
            odd.append(look_words.UNKNOWN_TASK.format(name=as_came(name)[1:-1]))
        else:
            if starts.get(meant[0], start) != start:
                odd.append(_twice(meant[0], starts[meant[0]], start))
            starts[meant[0]] = start
    return TypedPlan(starts, tuple(odd), morning_said=typed.morning_said)


def only_names(answer, tasks):
    """Whether a sheet holds names of tasks and nothing else.

    Parameters
    ----------
    answer : object
    tasks : iterable of str

    Returns
    -------
    bool

    Examples
    --------
    >>> only_names("whip the foam\\nplate", ["whip the foam", "plate"])
    True
    >>> only_names("whip the foam at seven\\nplate", ["whip the foam", "plate"])
    False
    """
    if not isinstance(answer, str) or len(answer) > LONGEST:
        return False
    names = {_words(name) for name in tasks}
    return all(_words(line) in names for line in answer.splitlines() if line.strip())


class PlanKind(AnswerKind):
    """How a plan is looked at before it is marked; `plausible` names the tasks of the service."""

    asked = look_words.A_PLAN
    example = EXAMPLE

    def read(self, answer):
        """The starts that were typed."""
        return read_plan(answer)

    def seen(self, value, plausible):
        """Which starts were read, and which are not there yet."""
        plan = placed(value, plausible or value.starts)
        missing = [name for name in plausible or () if name not in plan.starts]
        read = look_words.READ_AS.format(value=plan) if plan.starts else look_words.NO_START
        lines = [read, *plan.odd]
        lines += [] if plan.morning_said else said_of_the_evening(plan.starts)
        if missing:
            lines.append(look_words.MISSING_START.format(tasks=", ".join(missing)))
        elif plausible:
            lines.append(look_words.ALL_STARTS)
        return bool(missing), " ".join(lines)

    def untouched(self, answer, plausible):
        """Whether the tasks stand there without a time, as they were handed out."""
        return only_names(answer, plausible or ())


add_kind("plan", PlanKind())


def _line(line, place):
    """Task, start and complaint of one typed line; without a time, the line and the complaint."""
    line = _UNTIL.sub(r"\1", line)
    clocks = list(_CLOCK.finditer(line))
    shown = f"line {place}, “{line.strip()[:60]}”,"
    if len(clocks) != 1:
        what = look_words.SEVERAL_CLOCKS if clocks else look_words.NO_CLOCK
        untimed = "" if clocks else line.strip()
        said = look_words.TYPE_IT_AS.format(shown=shown, what=what, example=EXAMPLE)
        return untimed, "", said
    clock = clocks[0]
    rest = f"{line[: clock.start()].strip(_AROUND)} {line[clock.end() :].strip(_AROUND)}"
    name = re.sub(r"^\d{1,2}[.)]\s+|\s+(at|from)$", "", rest.strip(_AROUND)).strip(_AROUND)
    if not name:
        what = look_words.NO_TASK
        return "", "", look_words.TYPE_IT_AS.format(shown=shown, what=what, example=EXAMPLE)
    return _timed(name, clock, shown)


def _entry(name, time):
    """Task, start and complaint of one entry of a dict."""
    shown = f"the start of {as_came(name)},"
    if isinstance(time, datetime.time):
        time = f"{time:%H:%M}"
    clock = _CLOCK.fullmatch(time.strip()) if isinstance(time, str) else None
    if clock is None or not str(name).strip():
        return "", "", look_words.IS_NO_CLOCK.format(shown=shown, time=as_came(time))
    return _timed(" ".join(str(name).split()), clock, shown)


def _timed(name, clock, shown):
    hour, minute = clock["hour"] or clock["whole"], clock["minute"] or "00"
    if clock["four"]:
        hour, minute = clock["four"][:2], clock["four"][2:]
    half = f" {clock['half']}m" if clock["half"] else ""
    try:
        moment_s = read_clock(f"{hour}:{minute}{half}{clock['day'] or ''}", shown.rstrip(","))
    except KitchenError as error:
        return "", "", str(error)
    return " ".join(name.split()), say_clock(moment_s), ""


def _twice(name, first, last):
    return look_words.TWICE.format(name=name, first=first, last=last)


def _meant(typed, tasks):
    """The tasks that a typed name may mean."""
    words = _words(typed)
    exact = [name for name in tasks if _words(name) == words]
    return exact or [
        name for name in tasks if words and all(_among(word, _words(name)) for word in words)
    ]


@lru_cache(maxsize=256)
def _words(text):
    return frozenset(bare_words(text)) - SMALL_WORDS


def _among(word, words):
    return word in words or (
        len(word) > 3 and bool(difflib.get_close_matches(word, words, n=1, cutoff=NEAR))
    )
