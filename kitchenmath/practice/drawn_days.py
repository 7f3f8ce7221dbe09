"""Invented records to draw from: a day's readings, a cold room's night, tubs, and cases.

By SHA-256 onto kitchen steps, so that they are the same everywhere. What is out of limits, and
what can still be put right, is worked out where it is asked: `kitchenmath.drills.records`.
"""

import hashlib
from dataclasses import dataclass

from kitchenmath.conventions.class_limits import ClassLimit, class_limit
from kitchenmath.conventions.college import OURS
from kitchenmath.data.tables import table
from kitchenmath.practice import look_words
from kitchenmath.practice.choices import Choices, Drawn
from kitchenmath.practice.clock_question import clock_time
from kitchenmath.safety import what_is_read
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import figures, say

WAYS = 60  # of each kind of record
FAULTS = 3
COLD, HOT = "ABCDJ", "EFGHI"
EVERY_MIN = 30  # the cold room's log
TEN_AT_NIGHT_MIN = 22 * 60


@dataclass(frozen=True)
class RecordLine:
    """One line of a day's record; `kept` is the limit that a class works with."""

    letter: str
    line: str
    point: str
    reading: Quantity
    kept: ClassLimit

    @property
    def limit(self):
        """The limit as its source prints it."""
        return self.kept.row

    @property
    def keeps(self):
        """Whether the reading keeps the limit; on it is in order."""
        return bool(self.limit.reached_by(self.reading))

    def __str__(self):
        return f"{self.letter} {self.line}: {say(self.reading)}; {self.kept}"


@dataclass(frozen=True, repr=False)
class Lines:
    """Several lines under one label, each on a line of its own."""

    lines: tuple

    def __repr__(self):
        return "".join(f"\n    {line}" for line in self.lines)


@dataclass(frozen=True, repr=False)
class Day(Lines, Drawn):
    """A day's record, drawn by its number; a class's own limits draw other readings."""

    way: int

    def in_college(self, college):
        """The same day by a class's limits."""
        return _day(self.way, college)


@dataclass(frozen=True, repr=False)
class KitchenRound(Lines, Drawn):
    """What was found on a round, drawn by its number."""

    way: int

    def in_college(self, college):
        """The same round by a class's limits."""
        return _cases(self.way, college)


@dataclass(frozen=True, repr=False)
class Night(Lines):
    """A cold room's log: the moments in minutes from midnight, and the readings in °C."""

    minutes: tuple
    readings_C: tuple


@dataclass(frozen=True)
class Tub:
    """A tub that cooled from 57 °C: after two hours, after six, and what it weighs."""

    letter: str
    after_two: Quantity
    after_six: Quantity
    weight: Quantity

    def __str__(self):
        two, six, weight = say(self.after_two), say(self.after_six), say(self.weight)
        return look_words.COOLING.format(letter=self.letter, two=two, six=six, weight=weight)


@dataclass(frozen=True)
class Case:
    """One thing that was found; `why` says what it turns on."""

    letter: str
    state: str  # "right": it can be put right, or "gone"
    why: str
    words: str

    def __str__(self):
        return f"{self.letter} {self.words}"


def days(label):
    """Days with ten readings: three out of limits, one on its limit, one in °F and in order.

    Parameters
    ----------
    label : str

    Returns
    -------
    Choices

    Examples
    --------
    >>> print(days("a day").values[0].lines[2])
    C cold room, 07:00: 2 °C; limit at most 5 °C (41 °F)
    """
    return Choices(tuple(_day(way, OURS) for way in range(WAYS)), label)


def nights(label):
    """A cold room read every half hour from 22:00 to 04:00, that warms from some time on.

    Parameters
    ----------
    label : str

    Returns
    -------
    Choices
    """
    return Choices(tuple(_night(_Dice(f"night|{way}")) for way in range(WAYS)), label)


def tubs(label):
    """Five tubs of one sauce: two in order, one of them on both limits, and three that are not.

    Parameters
    ----------
    label : str

    Returns
    -------
    Choices
    """
    return Choices(tuple(_tubs(_Dice(f"tubs|{way}")) for way in range(WAYS)), label)


def cases(label):
    """Eight things that were found: what can still be put right, and what is gone.

    Parameters
    ----------
    label : str

    Returns
    -------
    Choices
    """
    return Choices(tuple(_cases(way, OURS) for way in range(WAYS)), label)


class _Dice:
    """Draws that follow from a name."""

    def __init__(self, name):
        self.name, self.thrown = name, 0

    def below(self, number):
        self.thrown += 1
        digest = hashlib.sha256(f"{self.name}|{self.thrown}".encode()).digest()
        return int.from_bytes(digest[:8], "big") % number

    def one(self, things):
        return things[self.below(len(things))]

    def shuffled(self, things):
        left, drawn = list(things), []
        while left:
            drawn.append(left.pop(self.below(len(left))))
        return drawn

    def between(self, first, last, step):
        """One of the steps from first to last."""
        return first + step * self.below(round((last - first) / step) + 1)


def _day(way, college):
    dice = _Dice(f"day|{way}")
    cold, hot = dice.shuffled(COLD), dice.shuffled(HOT)
    third = dice.one([cold, hot])
    out = {cold.pop(), hot.pop(), third.pop()}
    fahrenheit = next(letter for letter in cold if letter != "D")
    cold.remove(fahrenheit)
    # The freezer's limit is printed in figures that no display shows.
    edge = dice.one([letter for letter in (*cold, *hot) if letter != "D"])
    rows = table("record_lines.csv")
    return Day(tuple(_line(row, dice, college, out, edge, fahrenheit) for row in rows), way)


def _line(row, dice, college, out, edge, fahrenheit):
    letter = row["letter"]
    kept = class_limit(what_is_read(row["point"]), college)
    first, last = (float(end) for end in row["out" if letter in out else "usual"].split(" to "))
    reading = Q_(dice.between(first, last, 0.5) + _moved(row["point"], kept), row["readings"])
    if letter == edge:
        reading = kept.row.temperature
    if letter == fahrenheit:
        reading = Q_(dice.between(36.0, 40.0, 1.0), "degF")
    return RecordLine(letter, row["line"], row["point"], reading, kept)


def _moved(point, kept):
    """By how many °C a class's limit lies apart from the one that the table is written for."""
    usual = class_limit(what_is_read(point), OURS).row
    return (kept.row.temperature - usual.temperature).magnitude


def _night(dice):
    number, good = 13, dice.between(4, 8, 1)
    readings = [dice.between(3.0, 4.5, 0.5) for _ in range(good)]
    readings.append(dice.one([4.0, 4.5, 5.0, 5.0]))  # the last that is in order
    warm = readings[-1] + dice.between(1.5, 2.5, 0.5)
    for _ in range(number - good - 1):
        readings.append(warm)
        warm += dice.between(0.5, 1.5, 0.5)
    minutes = tuple(TEN_AT_NIGHT_MIN + EVERY_MIN * place for place in range(number))
    lines = tuple(
        f"{clock_time(minute)}  {figures(reading)} °C"
        for minute, reading in zip(minutes, readings, strict=True)
    )
    return Night(lines, minutes, tuple(readings))


def _tubs(dice):
    warm, late = dice.between(24, 30, 1), dice.between(7, 10, 1)
    cooled = [
        (dice.between(15, 20, 1), dice.between(3, 4, 1)),
        (21, 5),
        (warm, dice.between(3, 4, 1)),
        (dice.between(17, 20, 1), late),
        (warm + dice.between(1, 4, 1), late + dice.between(1, 3, 1)),
    ]
    # No two different choices of these weigh the same.
    weights = dice.shuffled([1.1, 1.3, 1.7, 2.5, 4.1])
    drawn = zip("ABCDE", dice.shuffled(cooled), weights, strict=True)
    return Lines(
        tuple(
            Tub(letter, Q_(float(two), "degC"), Q_(float(six), "degC"), Q_(weight, "kg"))
            for letter, (two, six), weight in drawn
        )
    )


def _cases(way, college):
    dice = _Dice(f"cases|{way}")
    poultry = class_limit("poultry", college)
    said = {
        "core": figures(dice.between(66, 71, 1) + _moved("core of poultry", poultry)),
        "pork": figures(dice.between(57, 61, 1)),
        "warm": figures(dice.between(28, 36, 1)),
        "short": figures(dice.between(60, 69, 1)),
        "lukewarm": figures(dice.between(44, 52, 1)),
        "mild": figures(dice.between(9, 12, 1)),
        "early": f"{dice.one((40, 50, 60, 70))} min",
        "late": dice.one(("2 h 30 min", "3 h", "3 h 30 min")),
    }
    rows = table("record_cases.csv")
    letters = dict.fromkeys(row["letter"] for row in rows)
    chosen = [dice.one([row for row in rows if row["letter"] == letter]) for letter in letters]
    found = (
        Case(row["letter"], row["state"], row["why"], row["case"].format(**said)) for row in chosen
    )
    return KitchenRound(tuple(found), way)
