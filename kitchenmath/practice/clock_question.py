"""A question whose answer is a moment by the clock: since when, until when."""

import datetime
import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace

from kitchenmath.conventions.system_order import in_its_words
from kitchenmath.errors import Unreadable
from kitchenmath.practice.amount_played import dice
from kitchenmath.practice.question_kinds import AnswerKind, AskedQuestion, Played, add_kind
from kitchenmath.practice.questions import value_of, wrong_side
from kitchenmath.practice.verdicts import Found, Verdict, refuse_doubled, worth
from kitchenmath.practice.words import read_as_clock
from kitchenmath.units.saying import as_came

__all__ = ["ClockKind", "ClockQuestion", "ClockTime"]

HOUR_MIN, HALF_DAY_MIN, DAY_MIN = 60, 12 * 60, 24 * 60
NEAR_A_SLIP_MIN = 2  # a step that was shared out is rounded by whoever writes it down
NOISES = 6
TYPED = re.compile(
    r"(?:at|since|from|until|till|by)?\s*(\d{1,2})(?:\s?[:.h]\s?|)([0-5]\d)?\s*"
    r"(?:([ap])\.?\s?m\.?|h|hrs?|o[’']?clock)?\.?",
    re.IGNORECASE,
)
REMARK = re.compile(r"\s*\([^()\d]*\)\s*$")  # 18:45 (by the log): the words behind change nothing


@dataclass(frozen=True)
class ClockTime:
    """A moment of the day.

    Attributes
    ----------
    minute : int
        From midnight, 0 to 1439.
    half_said : bool
        Whether it is plain which half of the day is meant: "6:45" alone may be the evening's.
    """

    minute: int
    half_said: bool = True

    def __str__(self):
        return f"{self.minute // HOUR_MIN:02d}:{self.minute % HOUR_MIN:02d}"

    def after(self, other):
        """Minutes from another moment to this one, from half a day before to half a day after."""
        gone = (self.minute - other.minute + HALF_DAY_MIN) % DAY_MIN - HALF_DAY_MIN
        if not self.half_said:
            gone = min(gone, (gone + DAY_MIN) % DAY_MIN - HALF_DAY_MIN, key=abs)
        return gone


def clock_time(minutes):
    """The moment so many minutes after a midnight, past further midnights too."""
    return ClockTime(round(minutes) % DAY_MIN)


class ClockKind(AnswerKind):
    """How a clock time is read and said."""

    asked = "a clock time"
    example = "18:45"

    def read(self, answer):
        """The moment that was typed or computed.

        Parameters
        ----------
        answer : str, ClockTime or datetime.time

        Returns
        -------
        ClockTime

        Raises
        ------
        Unreadable

        Examples
        --------
        >>> [str(ClockKind().read(typed)) for typed in ("18:45", "6.45 pm", "1845", "18h45")]
        ['18:45', '18:45', '18:45', '18:45']
        """
        if isinstance(answer, ClockTime):
            return answer
        text = str(answer) if isinstance(answer, str | datetime.time) else as_came(answer)
        typed = TYPED.fullmatch(REMARK.sub("", text).strip()[:40])
        hour, minute, half = typed.groups() if typed else (None, None, None)
        if not typed or (minute is None and half is None):
            raise Unreadable(
                f'{as_came(answer)} is no clock time: type hours and minutes, such as "18:45".'
            )
        hour, minute = int(hour), int(minute or 0)
        if hour > (12 if half else 24) or (half and hour == 0):
            raise Unreadable(f"{as_came(answer)}: there is no such hour on a clock.")
        if half:
            hour = hour % 12 + 12 * (half in "pP")
        # "06:45" is the morning, and so is 0:45.
        plain = bool(half) or typed[1].startswith("0") or hour > 12
        return ClockTime((HOUR_MIN * hour + minute) % DAY_MIN, plain)

    def seen(self, value, plausible):
        """What can be said of a moment; `plausible` has the first and the last that make sense."""
        doubtful = False
        if plausible:
            first, last = (self.read(each) for each in plausible)
            doubtful = not self._between(value, first, last)
        return doubtful, read_as_clock(value, plausible if doubtful else None)

    def _between(self, value, first, last):
        shift = 0 if value.half_said else HALF_DAY_MIN
        span = (last.minute - first.minute) % DAY_MIN
        moments = {value.minute, (value.minute + shift) % DAY_MIN}
        return any((minute - first.minute) % DAY_MIN <= span for minute in moments)


add_kind("clock time", ClockKind())


@dataclass(frozen=True)
class ClockQuestion(AskedQuestion):
    """A question with one right moment.

    Parameters
    ----------
    id : str
    points : float
    formula : callable
        Minutes from a midnight, from given numbers and earlier answers, taken by name.
    slips : tuple of Slip
        Their formulas give minutes too, or None where the slip makes no difference.
    earlier_min : float
        How much earlier is right as well: a limit may be rounded to the side where it does no harm.
    working : tuple of str
        {name} is a given number, {answer} the moment.
    on_the_way : dict of str to callable
        What lies between, by the name that a line of working has for it.
    skill, lesson : str
    """

    id: str
    points: float
    formula: Callable
    slips: tuple = ()
    earlier_min: float = 0
    working: tuple = ()
    on_the_way: dict = field(default_factory=dict, repr=False, hash=False)
    skill: str = ""
    lesson: str = ""
    kind: str = "clock time"

    def __post_init__(self):
        refuse_doubled(self)

    def right(self, known):
        """The right moment with these numbers."""
        return clock_time(value_of(self.formula, known))

    def look(self, answer):
        """What the student typed, as a moment; a KitchenError carries what they see."""
        return ClockKind().read(answer)

    def in_college(self, college):
        """The same question, its sentences with the class's system first."""
        return replace(self, **in_its_words(self, college))

    def judge(self, answer, known, own=None, sound=()):
        """The verdict on an answer; `own` and `sound` are not needed, as it builds on none."""
        right = self.right(known)
        value, verdict = self.looked(answer, right, known)
        if verdict:
            return verdict
        late_min = value.after(right)
        if -self.earlier_min <= late_min <= 0:
            return self._verdict("right", self.points, value, right, known)
        slips = self._slips_at(value, known)
        if not slips and 0 < late_min <= self.earlier_min:
            slips = [wrong_side("down", worth("wrong side", self.points))]
        if slips:
            least = min(slip.worth for slip in slips)
            return self._verdict("slip", least, value, right, known, slips)
        return self._verdict("wrong", 0, value, right, known)

    def slip_value(self, slip, known):
        """The moment that a slip leads to, or None where it makes no difference."""
        minutes = value_of(slip.formula, known)
        moment = None if minutes is None else clock_time(minutes)
        return None if moment is None or moment == self.right(known) else moment

    def collisions(self, known):
        """Names of the slips whose moment passes for the right one with these numbers."""
        right, found = self.right(known), []
        for slip in self.slips:
            moment = self.slip_value(slip, known)
            if moment is not None and -self.earlier_min <= moment.after(right) <= 0:
                found.append(slip.name)
        return found

    def played(self, known):
        """Answers as students give them, and what is to be found about each."""
        right = self.right(known)
        hour, minute = divmod(right.minute, HOUR_MIN)
        half = f"{(hour - 1) % 12 + 1}:{minute:02d} {'pm' if hour >= 12 else 'am'}"
        ways = (str(right), str(right).replace(":", "."), str(right).replace(":", ""), half)
        yield from (Played(typed, "right") for typed in ways)
        if self.earlier_min:
            yield Played(str(clock_time(right.minute - self.earlier_min)), "right")
        for slip in self.slips:
            if (moment := self.slip_value(slip, known)) is not None:
                yield Played(str(moment), "slip", (slip.name,))
        for place in range(NOISES):
            off = dice("clock", self.id, str(right), place)
            yield Played(str(clock_time(DAY_MIN * off)), "noise")

    def _slips_at(self, value, known):
        led = [(slip, self.slip_value(slip, known)) for slip in self.slips]
        near = [(abs(value.after(moment)), slip) for slip, moment in led if moment is not None]
        near = [(off, slip) for off, slip in near if off <= NEAR_A_SLIP_MIN]
        least = min((off for off, _ in near), default=0)
        return [slip for off, slip in near if off == least]

    def _verdict(self, outcome, points, answer, right, known, slips=(), notes=()):
        between = {name: value_of(each, known) for name, each in self.on_the_way.items()}
        shown = {name: as_came(value) for name, value in (known | between).items()}
        return Verdict(
            question=self.id,
            outcome=outcome,
            points=float(points),
            out_of=float(self.points),
            found=tuple(Found(each.name, each.sentence, self.points - each.worth)
                        for each in slips),
            alternatives=len(slips) > 1,
            notes=notes,
            answer=str(answer) if isinstance(answer, ClockTime | str) else as_came(answer),
            right=str(right),
            working=tuple(line.format(answer=right, **shown) for line in self.working),
        )  # fmt: skip
