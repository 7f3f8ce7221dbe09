"""Half-worked: a drill's own steps by hand with a line left out, then two, before the bare drill.

A drill whose working ends each line in its result can be half worked, and nothing else has to be
written for it: “what is left: 100 % − 28 % = {left}”, with the formula of `left` in `on_the_way`.
"""

import re
from dataclasses import dataclass

from kitchenmath.drills import Round
from kitchenmath.practice.formulas import value_of
from kitchenmath.practice.questions import Question
from kitchenmath.practice.verdicts import Within
from kitchenmath.units.registry import Q_, kind_of

ENDS_IN = re.compile(r"^(?:(?P<label>[^:{]+): )?(?P<sum>.+) = \{(?P<name>\w+)\}$")
ANSWER = "answer"
FIRST_ROUND = 501  # the drill's own rounds count from 1, so that no number comes twice
NEAR = Within(Q_(0.5, "percent"))  # a line in between may be typed with three figures


@dataclass(frozen=True)
class Line:
    """One line of the working, to be shown or left out.

    Attributes
    ----------
    label : str
        What the line gives: "what is left"; "the answer" for the last.
    sum : str
        What is worked out: "100 % − 28 %".
    whole : str
        The line as the working has it.
    question : Question
        Judges what is typed for the line.
    numbers : dict of str to Quantity
    """

    label: str
    sum: str
    whole: str
    question: Question
    numbers: dict

    def judge(self, typed):
        """The verdict on what was typed for this line.

        Parameters
        ----------
        typed : str

        Returns
        -------
        Verdict
        """
        return self.question.judge(typed, self.numbers)


def can_be_half_worked(drill):
    """Whether each line of a drill's working, two at least, ends in its own result.

    Parameters
    ----------
    drill : Drill

    Returns
    -------
    bool
    """
    question = drill.question
    found = [ENDS_IN.match(line) for line in question.working]
    names = [line["name"] for line in found if line]
    return (
        len(names) == len(found) >= 2
        and names[-1] == ANSWER
        and set(names[:-1]) <= question.on_the_way.keys()
    )


def half_worked(drill, left_out):
    """A drill's question with numbers of its own, and the lines of its working.

    Parameters
    ----------
    drill : Drill
        One that `can_be_half_worked`.
    left_out : int
        How many lines are left out; each has other numbers.

    Returns
    -------
    str
        The question.
    tuple of Line
        All of them; the last `left_out` are the student's.
    """
    turn = _another_round(drill, left_out)
    question, numbers = turn.question, turn.numbers
    lines = []
    for template, whole in zip(question.working, turn.working, strict=True):
        found = ENDS_IN.match(template)
        last = found["name"] == ANSWER
        label = found["label"] or "the answer"
        shown = whole.removeprefix(f"{label}: ").rpartition(" = ")[0]
        own = question if last else _in_between(question, found["name"], numbers)
        lines.append(Line(label, shown, whole, own, numbers))
    return turn.text, tuple(lines)


def _another_round(drill, left_out):
    """A round with other numbers than the drill's first, and than the examples before."""
    turn = Round(drill)
    asked = {turn.text}
    turn.number = FIRST_ROUND
    for _ in range(left_out):
        while turn.text in asked:
            turn.number += 1
        asked.add(turn.text)
    return turn


def _in_between(question, name, numbers):
    """The question that a line in between answers."""
    formula = question.on_the_way[name]
    kind = kind_of(value_of(formula, numbers)).replace("number", "count")
    return Question(f"{question.id}, {name}", kind, 1, NEAR, formula, college=question.college)
