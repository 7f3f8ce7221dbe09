"""A practice sheet that says at once what happened: right, which slip, a hint, then the working.

An instructor makes it from what a student or a class has not got yet. It holds plain numbers and
sentences of its own draw and no formula, so nothing of a graded set can be read from it.
"""

from kitchenmath.conventions import conventions_of
from kitchenmath.errors import KitchenError
from kitchenmath.practice import look_words
from kitchenmath.practice.answer_look import seen
from kitchenmath.practice.questions import Question
from kitchenmath.practice.stumbles import speak_plainly
from kitchenmath.practice.verdicts import Slip, Within
from kitchenmath.practice.words import in_words
from kitchenmath.units.registry import Q_

__all__ = ["PracticeSheet", "open_practice"]


def open_practice(questions):
    """The practice sheet of a notebook.

    Parameters
    ----------
    questions : list of dict
        One for each question, in order: `kind` (a key of `KINDS`), `right` and `within` (each a
        number and its unit), where one side only is safe `safe` and `to` (see `Within`),
        `slips` (each with `name`, `at`, `near` and `sentence`), `hint` and
        `working` (lines). `college` says whose money and cups are typed.

    Returns
    -------
    PracticeSheet
    """
    speak_plainly()
    return PracticeSheet(questions)


class PracticeSheet:
    """What a practice notebook talks to. It grades nothing and keeps nothing.

    Parameters
    ----------
    questions : list of dict
        As for `open_practice`.
    """

    def __init__(self, questions):
        self.questions = [_question(place, asked) for place, asked in enumerate(questions, start=1)]
        self._help = [(asked["hint"], asked["working"]) for asked in questions]
        self._missed = [set() for _ in questions]

    def __repr__(self):
        return f"{len(self.questions)} questions to practise."

    def check(self, number, answer):
        """Print what happened with an answer.

        Parameters
        ----------
        number : int
            Of the question, from 1.
        answer : str or Quantity
            Typed or computed; "hint" and "working" ask for those.
        """
        print(f"{number}: {self.found(number, answer)}")

    def found(self, number, answer):
        """What happened with an answer, in words.

        A first number that is not right brings the hint, a second one the working.

        Parameters
        ----------
        number : int
        answer : str or Quantity

        Returns
        -------
        str
            A sentence or a few lines; never an error for something odd that was typed.

        Raises
        ------
        KitchenError
            When the sheet has no question of that number.
        """
        if number not in range(1, len(self.questions) + 1):
            raise KitchenError(f"number: this sheet has the questions 1 to {len(self.questions)}.")
        question, (hint, working) = self.questions[number - 1], self._help[number - 1]
        word = answer.strip().strip(".!?").lower() if isinstance(answer, str) else None
        if word == "":
            return seen("", question.kind, college=question.college)
        if word == "hint":
            return hint
        verdict = question.judge(answer, {})
        lines = [*working, f"The answer: {verdict.right}"]
        how = "\n  ".join(["How it goes:", *lines])
        if word == "working":
            return how
        if verdict.outcome == "right":
            return f"✓ Right: {verdict.answer}."
        if verdict.outcome == "close":
            read = look_words.READ_BESIDE.format(value=verdict.answer, right=verdict.right)
            return f"≈ {in_words(verdict)} ({read})"
        if verdict.outcome not in ("slip", "wrong"):
            return in_words(verdict)
        missed = self._missed[number - 1]
        missed.add(f"{question.look(answer).to_base_units().magnitude:.9g}")
        sign = "↺" if verdict.outcome == "slip" else "✗"
        more = f"Hint: {hint}" if len(missed) == 1 else how
        return f"{sign} {in_words(verdict)} (Read as {verdict.answer}.)\n{more}"


def _question(place, asked):
    """A question that knows its answers as plain numbers."""
    slips = [
        Slip(slip["name"], _always(slip["at"]), slip["sentence"], near=slip["near"])
        for slip in asked["slips"]
    ]
    to = asked.get("to")  # a sheet of an earlier kit has neither
    within = Within(Q_(*asked["within"]), safe=asked.get("safe", ""), to=to and Q_(*to))
    question = Question(str(place), asked["kind"], 0, within, _always(asked["right"]), tuple(slips))
    return question.in_college(conventions_of(asked.get("college", "")))


def _always(number_and_unit):
    """A formula of nothing: the number that was worked out when the sheet was made."""
    return lambda: Q_(*number_and_unit)
