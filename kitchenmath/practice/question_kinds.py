"""What a kind of question is: how its answers are read, looked at and judged.

An amount, readings, a probe's log and a plan each are an `AnswerKind` (what check cells need, which
know nothing of what is right) and an `AskedQuestion` (what a key holds). Everything else asks
through these two only, so a further kind is one module with both, and its tests.
"""

from abc import ABC, abstractmethod
from dataclasses import dataclass
from typing import Any, NamedTuple

from kitchenmath.conventions.college import OURS
from kitchenmath.errors import KitchenError
from kitchenmath.practice.amount_kind import AmountKind
from kitchenmath.units.saying import as_came

ANSWER_KINDS = {}


@dataclass(frozen=True)
class Look:
    """What a look at one answer found.

    Attributes
    ----------
    state : str
        "empty", "unreadable", "doubtful" (hard to believe), "unknown" (cannot be seen from here)
        or "there".
    sentence : str
        It says what to type wherever something is to be typed.
    """

    state: str
    sentence: str

    @property
    def can_be_used(self):
        """Whether it can be handed in as it is; a computed answer is taken for one."""
        return self.state in ("there", "unknown")

    @property
    def to_do(self):
        """What is left to do: "empty" (fill it in), "again" (look again) or ""."""
        return {"empty": "empty", "unreadable": "again", "doubtful": "again"}.get(self.state, "")


class Played(NamedTuple):
    """An answer as a student might give it, and what is to be found about it.

    way: "right" (in any form that is right), "slip", "two slips" or "noise".
    slips: the slip that is to be named; of two slips both names; () for the other ways.
    """

    answer: Any
    way: str
    slips: tuple = ()


class AnswerKind(ABC):
    """How an answer of one kind is read and said; nothing here knows what is right.

    Attributes
    ----------
    asked : str
        With its article, for a sentence: "a list of ten lengths".
    example : str
        As it is typed.
    """

    asked: str
    example: str

    @abstractmethod
    def read(self, answer):
        """What was typed or computed; a KitchenError carries the sentence that students see."""

    @abstractmethod
    def seen(self, value, plausible):
        """What can be said about a value before it is marked.

        Parameters
        ----------
        value : object
            As `read` gives it.
        plausible : tuple of str or None

        Returns
        -------
        bool
            Whether it is hard to believe, and to be looked at again.
        str
        """

    def untouched(self, answer, plausible):
        """Whether a form stands there as it was handed out, with nothing filled in."""
        return False


AnswerKind.register(AmountKind)  # it stands below, among the amounts


class AskedQuestion(ABC):
    """A question of a key.

    Attributes
    ----------
    id, kind : str
        "q3", and the name of its `AnswerKind`.
    points : float
    slips : tuple
        Each with a `name` and a `sentence`.
    working : tuple of str
    skill, lesson : str
    builds_on : collection of str
        The given numbers and earlier answers that its formulas name.
    told_in_numbers : bool
        Whether a question in words, numbers and `in_numbers` are all of it.
    """

    builds_on = frozenset()
    told_in_numbers = False

    @abstractmethod
    def right(self, known):
        """The right answer with these numbers, or one that is right."""

    @abstractmethod
    def look(self, answer):
        """What was typed or computed, as a value; a KitchenError carries what students see."""

    @abstractmethod
    def judge(self, answer, known, own=None, sound=()):
        """The `Verdict` on an answer.

        Parameters
        ----------
        answer : object
        known : dict
            Given numbers and right earlier answers by name.
        own : dict, optional
            The student's own earlier answers.
        sound : collection of str
            Those of them that were right.

        Returns
        -------
        Verdict
        """

    @abstractmethod
    def slip_value(self, slip, known):
        """The answer that a slip leads to, or None where it makes no difference."""

    @abstractmethod
    def collisions(self, known):
        """Names of the slips that cannot be told with these numbers."""

    @abstractmethod
    def played(self, known):
        """`Played` answers as students give them, by which the diagnosis is measured."""

    def looked(self, answer, *given, notes=()):
        """The value of an answer, or the verdict where there is none, or none can be read.

        Parameters
        ----------
        answer : object
        *given
            What this kind's own verdicts take behind the answer.
        notes : tuple of str, optional
            What such a verdict says besides.

        Returns
        -------
        object
            None where there is a verdict.
        Verdict or None
        """
        if answer is None or (isinstance(answer, str) and not answer.strip()):
            return None, self._verdict("missing", 0, "", *given, notes=notes)
        try:
            return self.look(answer), None
        except KitchenError as error:
            typed = answer if isinstance(answer, str) else as_came(answer)
            notes = (self._what_to_type(error), *notes)
            return None, self._verdict("unreadable", 0, typed, *given, notes=notes)

    def _what_to_type(self, error):
        """What a student sees of an answer that cannot be read."""
        return str(error)

    def carried(self, answer, known):
        """What the formulas of later questions know of this one: mostly the right answer."""
        return self.right(known)

    def own_value(self, answer):
        """A student's answer on which later ones may follow through; None where none can."""
        return None

    def in_college(self, college):
        """The same question by a class's conventions; one that has none of them is itself."""
        return self

    def in_numbers(self, known):
        """What is right and where slips lead as plain numbers, where `told_in_numbers`."""
        return None


def add_kind(name, kind):
    """Make a kind of answer known to check cells under a name.

    Parameters
    ----------
    name : str
        What a check cell says: "readings".
    kind : AnswerKind
    """
    ANSWER_KINDS[name] = kind


def answer_kind(name, college=OURS):
    """How answers of a kind are read: one that was added, else an amount.

    Parameters
    ----------
    name : str
        As given to `add_kind`, or a key of `KINDS`.
    college : Conventions
        Whose money and whose cups an amount is typed in.

    Returns
    -------
    AnswerKind

    Raises
    ------
    UnknownName
    """
    return ANSWER_KINDS.get(name) or AmountKind(name, college)
