"""The stated policy of a class: what the term's mark book counts, and how.

It stands in the course file, in plain words. A line that is left out means what `Policy` says;
without any line every set weighs the same and nothing is taken off.
"""

import difflib
import math
import re
from dataclasses import dataclass, field, fields
from datetime import datetime

from coursework.errors import CourseError

__all__ = ["POLICY_LINES", "SECOND", "Policy", "Practical", "SetRule", "read_policy"]

SECTIONS = ("bounds", "mark_book", "sets", "practical")
SECOND = ("latest", "best", "mean", "first")
NOTHING = ("open", "zero")
TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}[ T][0-9]{2}:[0-9]{2}(:[0-9]{2})?"
                  r"(Z|[+-][0-9]{2}:[0-9]{2})?")  # fmt: skip


@dataclass(frozen=True)
class SetRule:
    """What the course file says of one set.

    Attributes
    ----------
    weight : float
        Against the weights of all other sets and practical marks; 0 is shown and does not count.
    due, second_due : float or None
        Seconds since 1970. Until `second_due` an attempt after the first is not late; without
        it, `due` holds for every attempt.
    """

    weight: float = 1.0
    due: float | None = None
    second_due: float | None = None


@dataclass(frozen=True)
class Practical:
    """A practical mark: a column of the instructor's CSV.

    Attributes
    ----------
    name : str
        The head of its column.
    out_of, weight : float
    """

    name: str
    out_of: float
    weight: float = 1.0


@dataclass(frozen=True)
class Policy:
    """How the mark book counts.

    Attributes
    ----------
    sets : dict of str to SetRule
    practical : dict of str to Practical
    late_percent : float
        Percent of a set's points that each day started costs.
    late_percent_most : float
        What being late costs at most.
    late_days : float
        After so many days an attempt does not count at all.
    second_attempt : str
        "latest", "best", "mean", or "first".
    second_attempt_up_to : float
        With "first": a later attempt lifts the mark up to so many percent. 0: it lifts nothing.
    nothing_handed_in : str
        "open" leaves the mark open; "zero" makes it 0 once the set was due.
    wait_for_open_marks : bool
        Whether a student with an open mark has no total yet.
    """

    sets: dict = field(default_factory=dict)
    practical: dict = field(default_factory=dict)
    late_percent: float = 0.0
    late_percent_most: float = 100.0
    late_days: float = math.inf
    second_attempt: str = "latest"
    second_attempt_up_to: float = 0.0
    nothing_handed_in: str = "open"
    wait_for_open_marks: bool = False

    def rule(self, set_id):
        """What holds for a set."""
        return self.sets.get(set_id, SetRule())


POLICY_LINES = """
# How the term's mark book counts. Take the # off a line to use it. A line that is left out
# means what stands here; without any line every set weighs the same and nothing is taken off.
# [mark_book]
# Percent of a set's points that each day started after the due time costs, and the most it costs.
# late_percent = 0
# late_percent_most = 100
# After so many days a hand-in does not count. Without this line it always counts.
# late_days = 7
# Which of several attempts counts: "latest", "best", "mean" (of all), or "first".
# Of the files that come by the due time only the last one is an attempt.
# second_attempt = "latest"
# With "first": a later attempt may lift the mark, up to so many percent of the set's points.
# second_attempt_up_to = 0
# Nothing handed in: "open" leaves the mark open, "zero" makes it 0 once the set was due.
# nothing_handed_in = "open"
# true: no total for a student as long as one of the marks is open. false: a total so far.
# wait_for_open_marks = false

# A section for each set that needs a line. A set without one weighs 1 and has no due time.
# Weight 0: shown, and counts for nothing. The time is on this machine's clock; or write the
# zone behind it: "2026-10-05 09:00+02:00". Until second_due a later attempt is not late.
# [sets.04-buy-enough]
# weight = 1
# due = "2026-10-05 09:00"
# second_due = "2026-10-19 09:00"

# A section for each practical mark: the head of its column in your CSV, its points, its weight.
# [practical."knife skills"]
# out_of = 20
# weight = 1
"""


def read_policy(settings):
    """The policy of a course file.

    Parameters
    ----------
    settings : dict
        The whole course file, as it was read.

    Returns
    -------
    Policy

    Raises
    ------
    CourseError
        For a line that is unknown or odd, with the section, the line, and what it needs.
    """
    for name, value in settings.items():
        near = difflib.get_close_matches(name, SECTIONS, n=1)
        if isinstance(value, dict) and name not in SECTIONS and near:
            raise CourseError(f"course.toml, [{name}]: did you mean [{near[0]}]?")
    lines = _section(settings, "mark_book", "a line [mark_book]")
    _refuse_unknown(lines, "mark_book", [one.name for one in fields(Policy)][2:])
    for name in ("late_percent", "late_percent_most", "second_attempt_up_to"):
        _number(lines, "mark_book", name, most=100, unit=" (percent)")
    if "late_days" in lines and (type(lines["late_days"]) is not int or lines["late_days"] < 0):
        raise CourseError("course.toml, [mark_book], late_days: needs a whole number from 0 up.")
    _one_of(lines, "second_attempt", SECOND)
    _one_of(lines, "nothing_handed_in", NOTHING)
    if type(lines.get("wait_for_open_marks", False)) is not bool:
        raise CourseError("course.toml, [mark_book], wait_for_open_marks: write true or false.")
    if lines.get("second_attempt_up_to", 0) > 0 and lines.get("second_attempt") != "first":
        raise CourseError(
            "course.toml, [mark_book], second_attempt_up_to: it goes with "
            'second_attempt = "first". Write that too, or leave this line out.'
        )
    sets = _section(settings, "sets", "a line such as [sets.04-buy-enough]")
    practical = _section(settings, "practical", 'a line such as [practical."knife skills"]')
    return Policy(
        sets={name: _set_rule(name, each) for name, each in sets.items()},
        practical=_practicals(practical),
        **lines,
    )


def _section(settings, name, head):
    lines = settings.get(name, {})
    if not isinstance(lines, dict):
        raise CourseError(f"course.toml: {name} has lines of its own, below {head}.")
    return lines


def _set_rule(set_id, lines):
    """The lines below [sets.ID], read."""
    section = f"sets.{set_id}"
    if not isinstance(lines, dict):
        raise CourseError(f"course.toml: write “{set_id}” as a section: a line [{section}].")
    _refuse_unknown(lines, section, [one.name for one in fields(SetRule)])
    _number(lines, section, "weight")
    times = {name: _time(lines[name], section, name) for name in lines if name != "weight"}
    if "second_due" in times and not times["second_due"] > times.get("due", math.inf):
        raise CourseError(
            f"course.toml, [{section}], second_due: needs a line due with an earlier time."
        )
    return SetRule(weight=lines.get("weight", 1.0), **times)


def _practicals(sections):
    """The practical marks, by name."""
    found = {}
    for written, lines in sections.items():
        name, section = " ".join(written.split()), f'practical."{written}"'
        if not isinstance(lines, dict):
            raise CourseError(f"course.toml: write “{written}” as a section: a line [{section}].")
        _refuse_unknown(lines, section, ["out_of", "weight"])
        if name.lower() in ("", "student_number", "name"):
            raise CourseError(f"course.toml, [{section}]: that is no name of a practical mark.")
        if name.lower() in map(str.lower, found):
            raise CourseError(f"course.toml, [{section}]: the name “{name}” stands twice.")
        if "out_of" not in lines:
            raise CourseError(f"course.toml, [{section}]: needs a line out_of = … with its points.")
        _number(lines, section, "out_of", above=True)
        _number(lines, section, "weight")
        found[name] = Practical(name, lines["out_of"], lines.get("weight", 1.0))
    return found


def _refuse_unknown(lines, section, known):
    for name in lines:
        if name not in known:
            raise CourseError(f"course.toml, [{section}]: “{name}” is none of {', '.join(known)}.")


def _number(lines, section, name, most=None, above=False, unit=""):
    """Refuse a line that is no number from 0 (or above 0) to the most."""
    value = lines.get(name, 1)
    fits = type(value) in (int, float) and math.isfinite(value)
    if fits and value >= 0 and (value > 0 or not above) and (most is None or value <= most):
        return
    needs = "above 0" if above else f"from 0 {'up' if most is None else f'to {most}'}"
    raise CourseError(f"course.toml, [{section}], {name}: needs a number {needs}{unit}.")


def _one_of(lines, name, known):
    if name in lines and lines[name] not in known:
        words = ", ".join(f'"{one}"' for one in known)
        raise CourseError(f"course.toml, [mark_book], {name}: write one of {words}.")


def _time(value, section, name):
    """A date and a time as seconds since 1970; on this machine's clock where no zone is said."""
    try:
        if isinstance(value, str) and TIME.fullmatch(value.strip()):
            value = datetime.fromisoformat(value.strip())
        if not isinstance(value, datetime):
            raise ValueError
        # The hour that comes twice when clocks go back: the later one, for the students.
        return max(value.replace(fold=fold).timestamp() for fold in (0, 1))
    except (ValueError, OverflowError, OSError):
        raise CourseError(
            f'course.toml, [{section}], {name}: write a date and a time, as in "2026-10-05 09:00".'
        ) from None
