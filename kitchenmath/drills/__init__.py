"""Drills: a question with fresh numbers as often as wanted, and at once what went wrong.

A drill is not graded and keeps nothing: how many were right in a row is the student's own.
"""

import math
from dataclasses import dataclass, field, replace

from kitchenmath.conventions import college_here
from kitchenmath.conventions.in_words import filled
from kitchenmath.practice.answer_look import cannot_be
from kitchenmath.practice.own_numbers import beside, practice_numbers
from kitchenmath.practice.questions import Question
from kitchenmath.practice.words import below_nothing
from kitchenmath.units import say

# Powers of ten by which a point or a unit slips: 4.2 kg typed as 4.2 g, 0.75 as 7.5.
SLIPPED = {
    3: "The figures are right, and this is a thousand times too much.",
    2: "The figures are right, and this is a hundred times too much.",
    1: "The figures are right, and this is ten times too much.",
    -1: "The figures are right, and this is a tenth of it.",
    -2: "The figures are right, and this is a hundredth of it.",
    -3: "The figures are right, and this is a thousandth of it.",
}
NO_USUAL_SLIP = (
    "This number is not right, and none of the usual slips gives it. "
    "Read the hint and try again; the working shows the way."
)


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
    """One student at one drill: the numbers now asked for, and how many were right in a row.

    Parameters
    ----------
    drill : Drill
    college : Conventions, optional
        Whose money, cuts and limits it asks with; those of this copy of the kit when left out.
    """

    def __init__(self, drill, college=None):
        self.drill, self.number, self.in_a_row, self.counted = drill, 1, 0, False
        self.college = college or college_here()
        self.question = drill.question.in_college(self.college)
        self.choices = {
            name: choice.in_college(self.college) for name, choice in drill.choices.items()
        }

    @property
    def is_to_repeat(self):
        """Whether it was begun, and the last first try was not right."""
        return self.in_a_row == 0 and (self.counted or self.number > 1)

    @property
    def numbers(self):
        """The numbers of this round, by name."""
        return practice_numbers(self.question.id, self.number, self.choices)

    @property
    def text(self):
        """The question with the numbers of this round."""
        shown = {
            name: say(number)
            if name in self.drill.alone
            else beside(number, self.college.units_first)
            for name, number in self.numbers.items()
        }
        return filled(self.drill.text, self.college).format(**shown)

    @property
    def hint(self):
        """What helps without saying it."""
        return filled(self.drill.hint, self.college)

    def answer(self, typed):
        """The verdict on an answer; the first try of a round counts in the row.

        A number that cannot be is asked back, and costs no place in the row.

        Parameters
        ----------
        typed : str

        Returns
        -------
        Verdict
        """
        question = self.question
        verdict = question.judge(typed, self.numbers)
        if verdict.outcome in ("slip", "wrong") and cannot_be(question.look(typed), question.kind):
            asked_back = below_nothing(verdict.answer)
            return replace(verdict, outcome="unreadable", found=(), notes=(asked_back,))
        if verdict.outcome == "wrong" and not verdict.notes:
            verdict = replace(verdict, notes=(self._where_to_look(typed),))
        if not self.counted and verdict.outcome not in ("missing", "unreadable"):
            self.in_a_row = self.in_a_row + 1 if verdict.outcome == "right" else 0
            self.counted = True
        return verdict

    def _where_to_look(self, typed):
        """What to try after a number that no usual slip gives."""
        question = self.question
        if not question.told_in_numbers:
            return NO_USUAL_SLIP
        right = question.right(self.numbers)
        number = question.look(typed).to(right.units).magnitude
        # Ten times as many °C is not ten times as warm: of a point on a scale this is not said.
        if question.kind != "temperature":
            for power, words in SLIPPED.items():
                if math.isclose(number, right.magnitude * 10.0**power, rel_tol=0.005):
                    return f"{words} Look at the unit and at the decimal point."
        return NO_USUAL_SLIP

    @property
    def working(self):
        """The working of this round, line by line."""
        return self.question.judge(None, self.numbers).working

    def next(self):
        """Fresh numbers."""
        self.number, self.counted = self.number + 1, False
