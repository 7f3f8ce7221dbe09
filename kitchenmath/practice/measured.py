"""A question whose answer is the student's own measurement: ten readings, or a probe's log.

No number is right here, so the readings are judged by what sound ones keep to. Each slip costs
stated points. Later questions build on the student's own readings where these are sound, and else
on a sample that is drawn for the student, so that a missing measurement costs its own points only.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from kitchenmath.errors import KitchenError
from kitchenmath.practice.question_kinds import (
    ANSWER_KINDS,
    AskedQuestion,
    Played,
    answer_kind,
)
from kitchenmath.practice.questions import value_of
from kitchenmath.practice.verdicts import Found, Verdict, refuse_doubled
from kitchenmath.practice.words import (
    DRAWN,
    DRAWN_SAYS,
    FROM_SAMPLE,
    UNFIT,
    marked_from_sample,
    own_measurement,
)
from kitchenmath.units.door import one_of

NOISE = ("about the same", "see my photograph", "more or less right")


@dataclass(frozen=True)
class MeasuredSlip:
    """One usual slip of measuring, and what it costs.

    Parameters
    ----------
    name : str
        For the report: "invented digits".
    shows_in : callable
        Of the readings or the log: whether this slip shows in it.
    sentence : str
        To the student: what is to be seen, and why people do it.
    costs : float
        Points.
    asks : str
        The words of the question's text that ask for what this slip misses.
    formula : callable
        Of the `sample`: the same as somebody types it who makes this slip and no other.
    """

    name: str
    shows_in: Callable
    sentence: str
    costs: float
    asks: str
    formula: Callable


@dataclass(frozen=True)
class Measured(AskedQuestion):
    """A question that asks for a measurement of one's own.

    Parameters
    ----------
    id : str
    kind : str
        "readings" or "probe log".
    points : float
    slips : tuple of MeasuredSlip
    working : tuple of str
        How it is measured, a line each.
    skill, lesson : str

    Notes
    -----
    The set gives one choice named `sample`: the measurement drawn for whoever has none.
    """

    id: str
    kind: str
    points: float
    slips: tuple = ()
    working: tuple = ()
    skill: str = ""
    lesson: str = ""

    def __post_init__(self):
        one_of(self.kind, ANSWER_KINDS, "kind")
        refuse_doubled(self)

    def right(self, known):
        """The sample drawn for the student: what later questions start from without their own."""
        return value_of(lambda sample: sample, known)

    def look(self, answer):
        """What the student typed or computed, as readings or as a log.

        Raises
        ------
        KitchenError
            With the sentence that the student sees.
        """
        return answer_kind(self.kind).read(answer)

    def judge(self, answer, known, own=None, sound=()):
        """The verdict on a measurement; `own` and `sound` as for a `Question`, not needed here.

        Parameters
        ----------
        answer : str or sequence or None
        known : dict
        own : dict, optional
        sound : collection of str

        Returns
        -------
        Verdict
        """
        value, verdict = self.looked(answer, known, notes=(FROM_SAMPLE,))
        if verdict:
            return verdict
        if self.right(known).same_as(value):
            return self._verdict("slip", 0, str(value), known, (self._drawn(),))
        found = tuple(
            Found(slip.name, slip.sentence, float(slip.costs))
            for slip in self.slips
            if slip.shows_in(value)
        )
        if not found and value.sound:
            return self._verdict("right", self.points, str(value), known)
        notes = () if value.sound else (marked_from_sample(value.unfit),)
        if not found:
            return self._verdict("wrong", 0, str(value), known, notes=notes)
        points = max(0.0, self.points - sum(each.costs for each in found))
        return self._verdict("slip", points, str(value), known, found, notes)

    def carried(self, answer, known):
        """The student's own measurement where it is sound, else the sample."""
        own = built_on(answer, self.kind)
        return self.right(known) if own is None else own

    def slip_value(self, slip, known):
        """A measurement like the sample, as somebody types it who makes this slip."""
        return value_of(slip.formula, {**known, "sample": self.right(known).another})

    def collisions(self, known):
        """Names of the slips that the sample itself shows, or that do not show where made."""
        sample = self.right(known)
        return [
            slip.name
            for slip in self.slips
            if slip.shows_in(sample) or not slip.shows_in(self.look(self.slip_value(slip, known)))
        ]

    def played(self, known):
        """Answers as students give them, and what is to be found about each."""
        sample = self.right(known)
        yield from (Played(typed, "right") for typed in sample.another.ways)
        yield from (Played(typed, "slip", (DRAWN,)) for typed in sample.ways)
        for slip in self.slips:
            yield Played(self.slip_value(slip, known), "slip", (slip.name,))
        yield from (Played(words, "noise") for words in NOISE)

    def _drawn(self):
        """The sample handed in as a measurement, which costs all points."""
        return Found(DRAWN, DRAWN_SAYS, float(self.points))

    def _verdict(self, outcome, points, answer, known, found=(), notes=()):
        return Verdict(
            question=self.id,
            outcome=outcome,
            points=float(points),
            out_of=float(self.points),
            found=found,
            notes=notes,
            answer=answer,
            right="" if outcome == "right" else own_measurement(self.right(known)),
            working=self.working,
        )


def built_on(answer, kind):
    """A student's measurement, where later questions can be built on it.

    Parameters
    ----------
    answer : str or sequence or None
    kind : str
        "readings" or "probe log".

    Returns
    -------
    Readings or ProbeLog or None
        None where the sample drawn for the student counts.
    """
    try:
        value: Any = answer_kind(kind).read(answer)
    except KitchenError:
        return None
    return value if value.sound else None


def why_not(answer, kind):
    """Why a measurement that was typed is not built on, to follow a sentence; "" for none typed.

    Parameters
    ----------
    answer : str or sequence or None
    kind : str

    Returns
    -------
    str
    """
    if answer is None or (isinstance(answer, str) and not answer.strip()):
        return ""
    try:
        value: Any = answer_kind(kind).read(answer)
    except KitchenError as error:
        return f" Yours cannot be read: {error}"
    return f" The reason: {UNFIT[value.unfit]}." if value.unfit else ""
