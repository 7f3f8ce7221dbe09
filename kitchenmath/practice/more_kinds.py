"""Kinds of answer that are more than one amount: ten readings, a probe log, a plan.

Each is a class with the methods of `AnswerKind`. A question of such a kind is a class of its own
with the methods of `Question`: `id`, `points`, `slips`, `skill`, `lesson`, `right`, `look`, `judge`
and `collisions`. So that its diagnosis can be measured it has one more, `played(known)`, which
yields `Played` answers; for a `Question` the measuring script plays them itself.
"""

from typing import Any, NamedTuple, Protocol

MORE_KINDS = {}


class Played(NamedTuple):
    """An answer as a student might give it, and what is to be found about it.

    way: "right" (in any form that is right), "slip", "two slips" or "noise".
    slips: the slip that is to be named; of two slips both names; () for the other ways.
    """

    answer: Any
    way: str
    slips: tuple = ()


class AnswerKind(Protocol):
    """How an answer of one kind is read and said; nothing here knows what is right."""

    asked: str  # with its article, for a sentence: "a list of ten lengths"
    example: str  # as it is typed

    def read(self, answer: Any) -> Any:
        """What was typed or computed; a KitchenError carries the sentence that the student sees."""

    def seen(self, value: Any, plausible: tuple | None) -> str:
        """What can be said about a value before it is marked."""

    def untouched(self, answer: Any, plausible: tuple | None) -> bool:
        """Whether a form stands there as it was handed out, with nothing filled in."""
        return False


def add_kind(name, kind):
    """Make a kind known to check cells under a name.

    Parameters
    ----------
    name : str
        What a check cell says: "readings".
    kind : AnswerKind
    """
    MORE_KINDS[name] = kind
