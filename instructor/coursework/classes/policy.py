"""The stated policy of a class: what the term's mark book counts, and how.

It stands in the course file, in plain words. A line that is left out means what `Policy` says;
without any line every set weighs the same and nothing is taken off.
"""

from dataclasses import asdict, dataclass, field
from itertools import pairwise
from math import inf

from coursework.classes.course_file import AboveZero, Choice, Days, FromZero, Moment, Percent, YesNo
from coursework.errors import CourseError

__all__ = ["POLICY_LINES", "SECOND", "MarkBook", "Policy", "Practical", "SetRule", "policy_of"]


class SecondAttempt(Choice):
    """Which of several attempts counts."""

    WORDS = ("latest", "best", "mean", "first")


class NothingHandedIn(Choice):
    """What a set is worth that nobody handed in."""

    WORDS = ("open", "zero")


SECOND = SecondAttempt.WORDS


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

    weight: FromZero = 1.0
    due: Moment | None = None
    second_due: Moment | None = None


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
class PracticalLines:
    """The lines below [practical.NAME]."""

    out_of: AboveZero
    weight: FromZero = 1.0


@dataclass(frozen=True)
class MarkBook:
    """The lines below [mark_book].

    Attributes
    ----------
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
    pass_line : float or None
        Percent of the total from which on it passes; None where the class states none.
    """

    late_percent: Percent = 0.0
    late_percent_most: Percent = 100.0
    late_days: Days = inf
    second_attempt: SecondAttempt = "latest"
    second_attempt_up_to: Percent = 0.0
    nothing_handed_in: NothingHandedIn = "open"
    wait_for_open_marks: YesNo = False
    pass_line: Percent | None = None


@dataclass(frozen=True)
class Policy(MarkBook):
    """How the mark book counts.

    Attributes
    ----------
    sets : dict of str to SetRule
    practical : dict of str to Practical
    grades : dict of str to float
        Each grade with the percent of the total from which on it is given, the highest first.
    """

    sets: dict = field(default_factory=dict)
    practical: dict = field(default_factory=dict)
    grades: dict = field(default_factory=dict)

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
# Percent of the total from which on it passes. Without this line nothing is said about passing.
# pass_line = 40

# Grades, each with the percent of the total from which on it is given. A name with a comma, a
# point or a + in it goes between quotes, as in "A+" = 90. Without lines there are no grades.
# [grades]
# A = 80
# B = 65
# C = 40

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


def policy_of(mark_book, sets, practical, grades):
    """The policy of a course file, from its lines.

    Parameters
    ----------
    mark_book : MarkBook
    sets : dict of str to SetRule
    practical : dict of str to PracticalLines
    grades : dict of str to float

    Returns
    -------
    Policy

    Raises
    ------
    CourseError
        For lines that are sound each for itself and do not go together.
    """
    if mark_book.second_attempt_up_to > 0 and mark_book.second_attempt != "first":
        raise CourseError(
            "course.toml, [mark_book], second_attempt_up_to: it goes with "
            'second_attempt = "first". Write that too, or leave this line out.'
        )
    for set_id, rule in sets.items():
        if rule.second_due is not None and not rule.second_due > (
            inf if rule.due is None else rule.due
        ):
            raise CourseError(
                f"course.toml, [sets.{set_id}], second_due: needs a line due with an earlier time."
            )
    return Policy(**asdict(mark_book), sets=sets, practical=_practicals(practical),
                  grades=_grades(grades))  # fmt: skip


def _practicals(sections):
    """The practical marks, by name."""
    found = {}
    for written, lines in sections.items():
        name, section = " ".join(written.split()), f'practical."{written}"'
        if name.lower() in ("", "student_number", "name"):
            raise CourseError(f"course.toml, [{section}]: that is no name of a practical mark.")
        if name.lower() in map(str.lower, found):
            raise CourseError(f"course.toml, [{section}]: the name “{name}” stands twice.")
        found[name] = Practical(name, lines.out_of, lines.weight)
    return found


def _grades(lines):
    """The grades, the highest first."""
    order = sorted(lines.items(), key=lambda one: -one[1])
    for (name, percent), (lower, same) in pairwise(order):
        if percent == same:
            raise CourseError(
                f"course.toml, [grades]: {name} and {lower} begin at the same percent. Give each "
                "its own, or take one out."
            )
    if not all(name.strip() and name.isprintable() for name in lines):
        raise CourseError("course.toml, [grades]: a grade needs a name, as in A = 80.")
    return dict(order)
