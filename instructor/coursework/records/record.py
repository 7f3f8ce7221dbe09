"""What marking leaves of one hand-in, as fields: everything that code asks is one of them.

Sentences for the student are made from them where a page is written (`kitchenmath.practice.words`).
"""

from dataclasses import dataclass
from typing import ClassVar, NamedTuple

from kitchenmath.practice.plan_chart import PlanChart
from kitchenmath.practice.verdicts import Found

__all__ = ["Alike", "Answered", "Copied", "HumanMark", "InCommon", "Record", "Written"]


class HumanMark(NamedTuple):
    """What a person gave for one question; nothing at all by default.

    Attributes
    ----------
    points : float or None
        None where the question still waits.
    remark : str
        To the student.
    """

    points: float | None = None
    remark: str = ""


@dataclass(frozen=True)
class _Asked:
    """A question as one student was asked it.

    Attributes
    ----------
    question : str
        Its id: "q3".
    asked : str
        Markdown; its first line is the heading.
    answer : str
        As the student wrote it; "" for none.
    out_of : float
    """

    question: str
    asked: str
    answer: str
    out_of: float


@dataclass(frozen=True)
class Written(_Asked):
    """A written answer: a person reads it, and until then it has no points."""

    read_by_a_person: ClassVar[bool] = True
    points: ClassVar[None] = None
    right: ClassVar[str] = ""
    working: ClassVar[tuple] = ()


@dataclass(frozen=True)
class Answered(_Asked):
    """An answer that the key judged: a verdict, with what was asked and given.

    Attributes
    ----------
    outcome : str
        As a `Verdict` has it, or "marked" where a person gave half of the points or more.
    points : float or None
        None where a person must read the file.
    right : str
    given : tuple of str
        The student's numbers, each with its label.
    found : tuple of Found
    alternatives : bool
        Whether the answer cannot tell which of `found` it was.
    notes, working : tuple of str
    skill, lesson : str
    chart : PlanChart or None
        Of a plan, what was typed as a chart.
    decided : str
        The kind of decision that made the outcome; "" where it is marking's own.
    """

    outcome: str
    points: float | None
    right: str
    given: tuple[str, ...] = ()
    found: tuple[Found, ...] = ()
    alternatives: bool = False
    notes: tuple[str, ...] = ()
    working: tuple[str, ...] = ()
    skill: str = ""
    lesson: str = ""
    chart: PlanChart | None = None
    decided: str = ""

    read_by_a_person: ClassVar[bool] = False

    @property
    def slips(self):
        """Names of what was found."""
        return tuple(each.name for each in self.found)


@dataclass(frozen=True)
class Alike:
    """What a hand-in's answers have in common with a copy of it: digest, and how many there are."""

    sha256: str
    filled: int


@dataclass(frozen=True)
class InCommon:
    """What two students' answers have in common that is no chance.

    Attributes
    ----------
    kind : str
        "text" (all of `many` answers), "readings" (`many` of `out_of`), "amounts", "words".
    questions : tuple of str
    many, out_of : int
    """

    kind: str
    questions: tuple[str, ...] = ()
    many: int = 0
    out_of: int = 0


@dataclass(frozen=True)
class Copied:
    """A classmate, and what is in common."""

    student: str
    common: tuple[InCommon, ...]


@dataclass(frozen=True)
class Record:
    """What marking leaves of one hand-in.

    Attributes
    ----------
    set_id, title, student : str
    answered : tuple of Answered
    written : tuple of Written
    findings : tuple of str
        About the file, for the student and the instructor.
    to_do : tuple of str
        For the instructor only.
    photos : tuple of str
        Questions with a photo that came along; our marked copy holds it.
    alike : Alike or None
        None where fewer than three answers are filled in.
    handed_in, sha256, task : str
        When it came, which bytes it is, and the digest of all that marking took.
    copied : tuple of Copied
        Worked out when the records of a class are read, and kept in no file.
    """

    set_id: str
    title: str
    student: str
    answered: tuple[Answered, ...] = ()
    written: tuple[Written, ...] = ()
    findings: tuple[str, ...] = ()
    to_do: tuple[str, ...] = ()
    photos: tuple[str, ...] = ()
    alike: Alike | None = None
    handed_in: str = ""
    sha256: str = ""
    task: str = ""
    copied: tuple[Copied, ...] = ()

    @property
    def questions(self):
        """All that was asked: what the key judges, then what a person reads."""
        return (*self.answered, *self.written)

    @property
    def out_of(self):
        """The points that the hand-in could give."""
        return sum(each.out_of for each in self.questions)
