"""Invented records to draw from: a day's readings, and what is found on a round.

What is out of limits, and what can still be put right, is worked out where it is asked:
`kitchenmath.drills.records`.
"""

from dataclasses import dataclass
from functools import cached_property

from kitchenmath.conventions.class_limits import ClassLimit, class_limit
from kitchenmath.conventions.college import OURS
from kitchenmath.data.tables import table
from kitchenmath.practice.choices import Choices
from kitchenmath.practice.drawn_logs import nights, tubs
from kitchenmath.practice.record_dice import WAYS, Dice, Lines, as_read, reads_fahrenheit
from kitchenmath.safety import cooling_rules, what_is_read
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say

# `nights` and `tubs` are named here too: copies of set 9 that are out ask for them here.
__all__ = ["COLD", "HOT", "Case", "Day", "KitchenRound", "RecordLine", "cases", "days", "nights",
           "tubs"]  # fmt: skip

COLD, HOT = "ABCDJ", "EFGHI"


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
    def on_its_limit(self):
        """Whether the reading is the limit itself, as it is printed in either scale."""
        return self.reading in (self.limit.temperature, self.limit.fahrenheit)

    @property
    def keeps(self):
        """Whether the reading keeps the limit; on it is in order."""
        return bool(self.limit.reached_by(self.reading))

    def __str__(self):
        return f"{self.letter} {self.line}: {say(self.reading)}; {self.kept}"


class Day(Lines):
    """A day's record; a class's own limits draw other readings."""

    @property
    def scale(self):
        """That of all its readings but one."""
        return "degF" if reads_fahrenheit(self.college) else "degC"

    @cached_property
    def lines(self):
        """Ten lines."""
        return _day(self.way, self.college)


class KitchenRound(Lines):
    """What was found on a round."""

    @cached_property
    def lines(self):
        """Eight cases."""
        return _cases(self.way, self.college)


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
    """Days with ten readings: three out of limits, one on its limit, one in the other scale.

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
    return Choices(tuple(map(Day, range(WAYS))), label)


def cases(label):
    """Eight things that were found: what can still be put right, and what is gone.

    Parameters
    ----------
    label : str

    Returns
    -------
    Choices
    """
    return Choices(tuple(map(KitchenRound, range(WAYS))), label)


def _day(way, college):
    dice = Dice(f"day|{way}")
    cold, hot = dice.shuffled(COLD), dice.shuffled(HOT)
    third = dice.one([cold, hot])
    out = {cold.pop(), hot.pop(), third.pop()}
    # What is read in the wrong scale looks like a fault: a cold room at 38 °F, a roast at 78 °C.
    among = hot if reads_fahrenheit(college) else cold
    odd = next(letter for letter in among if letter != "D")
    among.remove(odd)
    # The freezer's limit is printed in figures that no display shows.
    edge = dice.one([letter for letter in (*cold, *hot) if letter != "D"])
    rows = table("record_lines.csv")
    return tuple(_line(row, dice, college, out, edge, odd) for row in rows)


def _line(row, dice, college, out, edge, odd):
    letter = row["letter"]
    kept = class_limit(what_is_read(row["point"]), college)
    first, last = (float(end) for end in row["out" if letter in out else "usual"].split(" to "))
    drawn = dice.between(first, last, 0.5) + _moved(row["point"], kept)
    reading = as_read(drawn, college)
    if letter == edge:
        reading = kept.printed
    if letter == odd and reads_fahrenheit(college):
        reading = Q_(drawn, "degC")
    elif letter == odd:
        reading = Q_(dice.between(36.0, 40.0, 1.0), "degF")
    return RecordLine(letter, row["line"], row["point"], reading, kept)


def _moved(point, kept):
    """By how many °C a class's limit lies apart from the one that the table is written for."""
    usual = class_limit(what_is_read(point), OURS).row
    return (kept.row.temperature - usual.temperature).magnitude


def _cases(way, college):
    dice = Dice(f"cases|{way}")
    poultry = class_limit("poultry", college)
    drawn = {
        "core": dice.between(66, 71, 1) + _moved("core of poultry", poultry),
        "pork": dice.between(57, 61, 1),
        "warm": dice.between(28, 36, 1),
        "short": dice.between(60, 69, 1),
        "lukewarm": dice.between(44, 52, 1),
        "mild": dice.between(9, 12, 1),
        "through": float(cooling_rules("two-stage")[0]["from_C"]),
    }
    said = {name: say(as_read(each, college)) for name, each in drawn.items()} | {
        "early": f"{dice.one((40, 50, 60, 70))} min",
        "late": dice.one(("2 h 30 min", "3 h", "3 h 30 min")),
    }
    rows = table("record_cases.csv")
    letters = dict.fromkeys(row["letter"] for row in rows)
    chosen = [dice.one([row for row in rows if row["letter"] == letter]) for letter in letters]
    return tuple(
        Case(row["letter"], row["state"], row["why"], row["case"].format(**said)) for row in chosen
    )
