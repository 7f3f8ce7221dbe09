"""Drills: a question with fresh numbers as often as wanted, and at once what went wrong.

A drill is not graded and keeps nothing: the streak is the student's own.
"""

from dataclasses import dataclass, field

from kitchenmath.practice.own_numbers import beside, practice_numbers
from kitchenmath.practice.questions import Question
from kitchenmath.units import say


@dataclass(frozen=True)
class Drill:
    """What a drill asks.

    Parameters
    ----------
    question : Question
        With its slips and its working.
    text : str
        The question; {name} is one of the numbers.
    hint : str
    choices : dict of str to Choices
        What each number may be.
    alone : tuple of str
        Numbers without the other system beside them, because turning them over is the question.
    """

    question: Question
    text: str
    hint: str
    choices: dict = field(repr=False)
    alone: tuple = ()


class Round:
    """One student at one drill: the numbers now asked for, and the streak.

    Parameters
    ----------
    drill : Drill
    """

    def __init__(self, drill):
        self.drill, self.number, self.streak, self.counted = drill, 1, 0, False

    @property
    def numbers(self):
        """The numbers of this round, by name."""
        return practice_numbers(self.drill.question.id, self.number, self.drill.choices)

    @property
    def text(self):
        """The question with the numbers of this round."""
        shown = {
            name: say(number) if name in self.drill.alone else beside(number)
            for name, number in self.numbers.items()
        }
        return self.drill.text.format(**shown)

    def answer(self, typed):
        """The verdict on an answer; the first try of a round counts for the streak.

        Parameters
        ----------
        typed : str

        Returns
        -------
        Verdict
        """
        verdict = self.drill.question.judge(typed, self.numbers)
        if not self.counted and verdict.outcome not in ("missing", "unreadable"):
            self.streak = self.streak + 1 if verdict.outcome == "right" else 0
            self.counted = True
        return verdict

    @property
    def working(self):
        """The working of this round, line by line."""
        return self.drill.question.judge(None, self.numbers).working

    def next(self):
        """Fresh numbers."""
        self.number, self.counted = self.number + 1, False
