"""Invented logs to draw from: a cold room's night, and tubs that cool.

What is out of limits is worked out where it is asked: `kitchenmath.drills.records` and `keeping`.
"""

from dataclasses import dataclass
from functools import cached_property

from kitchenmath.conventions.class_limits import class_limit
from kitchenmath.practice import look_words
from kitchenmath.practice.choices import Choices
from kitchenmath.practice.clock_question import clock_time
from kitchenmath.practice.own_numbers import beside
from kitchenmath.practice.record_dice import WAYS, Dice, Lines, as_read, reads_fahrenheit
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say

__all__ = ["Night", "Tub", "Tubs", "nights", "tubs"]

EVERY_MIN = 30  # the cold room's log
TEN_AT_NIGHT_MIN = 22 * 60


class Night(Lines):
    """A cold room's log: minutes from midnight, and readings and limit as a class's scale has them.

    The limit is that for cold holding.
    """

    @cached_property
    def minutes(self):
        """A reading every half hour."""
        return tuple(TEN_AT_NIGHT_MIN + EVERY_MIN * place for place in range(len(self.degrees)))

    @cached_property
    def degrees(self):
        """What was read."""
        return tuple(as_read(each, self.college).magnitude for each in _night_C(self.way))

    @cached_property
    def limit(self):
        """As it is printed in that scale."""
        return class_limit("cold holding", self.college).printed.magnitude

    @cached_property
    def lines(self):
        """A moment and a reading each."""
        scale = "degF" if reads_fahrenheit(self.college) else "degC"
        return tuple(
            f"{clock_time(minute)}  {say(Q_(degrees, scale))}"
            for minute, degrees in zip(self.minutes, self.degrees, strict=True)
        )


class Tubs(Lines):
    """Tubs of one sauce, as a class's probe shows them."""

    @cached_property
    def lines(self):
        """Five tubs."""
        return _tubs(self.way, self.college)


@dataclass(frozen=True)
class Tub:
    """A tub that cooled from 57 °C: after two hours, after six, and what it weighs.

    `shown` are the two readings and the weight as a class reads them.
    """

    letter: str
    after_two: Quantity
    after_six: Quantity
    weight: Quantity
    shown: tuple

    def __str__(self):
        two, six, weight = self.shown
        return look_words.COOLING.format(letter=self.letter, two=two, six=six, weight=weight)


def nights(label):
    """A cold room read every half hour from 22:00 to 04:00, that warms from some time on.

    Parameters
    ----------
    label : str

    Returns
    -------
    Choices
    """
    return Choices(tuple(map(Night, range(WAYS))), label)


def tubs(label):
    """Five tubs of one sauce: two in order, one of them on both limits, and three that are not.

    Parameters
    ----------
    label : str

    Returns
    -------
    Choices
    """
    return Choices(tuple(map(Tubs, range(WAYS))), label)


def _night_C(way):
    """Thirteen readings of one night in °C."""
    dice = Dice(f"night|{way}")
    number, good = 13, dice.between(4, 8, 1)
    readings = [dice.between(3.0, 4.5, 0.5) for _ in range(good)]
    readings.append(dice.one([4.0, 4.5, 5.0, 5.0]))  # the last that is in order
    warm = readings[-1] + dice.between(1.5, 2.5, 0.5)
    for _ in range(number - good - 1):
        readings.append(warm)
        warm += dice.between(0.5, 1.5, 0.5)
    return [float(each) for each in readings]


def _tubs(way, college):
    dice = Dice(f"tubs|{way}")
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
    return tuple(_tub(letter, read, weight, college) for letter, read, weight in drawn)


def _tub(letter, read_C, weight_kg, college):
    two, six = (float(each) for each in read_C)
    weight = Q_(weight_kg, "kg")
    told = beside(weight, "us") if reads_fahrenheit(college) else say(weight)
    shown = (*(say(as_read(each, college)) for each in (two, six)), told)
    return Tub(letter, Q_(two, "degC"), Q_(six, "degC"), weight, shown)
