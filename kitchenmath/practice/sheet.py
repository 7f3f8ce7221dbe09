"""A set's sheet: it gives each student their numbers, looks at answers and awards points."""

from kitchenmath.errors import KitchenError
from kitchenmath.practice.more_kinds import MORE_KINDS
from kitchenmath.practice.own_numbers import Given, given, student_number
from kitchenmath.practice.questions import a_kind, as_kind
from kitchenmath.units.door import one_of
from kitchenmath.units.reading import read
from kitchenmath.units.registry import KINDS
from kitchenmath.units.saying import say

__all__ = ["Sheet", "open_set"]


def open_set(set_id, term, student):
    """The sheet of one set for one student.

    Parameters
    ----------
    set_id : str
        Such as "04-buy-enough".
    term : str
    student : str
        The student number as typed; without one the sheet says so and shows no numbers.

    Returns
    -------
    Sheet
    """
    return Sheet(set_id, term, student)


class Sheet:
    """What a set's notebook talks to: it gives numbers, looks at answers and awards points.

    Attributes
    ----------
    choices : dict of str to dict
        For each question what its numbers may be.
    questions : dict of str to Question
        Filled by `award`, which only a key calls.
    """

    def __init__(self, set_id, term, student):
        self.set_id, self.term = set_id, term
        self.choices, self.questions, self.answers = {}, {}, {}
        try:
            self.student = student_number(student)
        except KitchenError as error:
            self.student, self._trouble = "", str(error)

    def __repr__(self):
        if not self.student:
            return f"Stop here: {self._trouble} Then run this cell again."
        return f"Set {self.set_id}, term {self.term}, student {self.student}."

    def given(self, question, **choices):
        """The student's numbers for a question; shown in words at the end of a cell.

        Parameters
        ----------
        question : str
        **choices : Choices

        Returns
        -------
        Given
        """
        self.choices[question] = choices
        labels = {name: choice.label for name, choice in choices.items()}
        if not self.student:
            return Given("Your numbers show here once your student number is in.", {}, labels)
        numbers = given(self.term, self.student, f"{self.set_id}/{question}", **choices)
        return Given(f"Your numbers for {question}:", numbers, labels)

    def look(self, question, answer, kind, plausible=None):
        """Say whether an answer is there, readable, of the right kind and plausible.

        It does not say whether the answer is right: that is the marking's business.

        Parameters
        ----------
        question : str
        answer : str or Quantity
        kind : str
            A key of `KINDS` or of `MORE_KINDS`.
        plausible : tuple of str, optional
            Lowest and highest that make sense in any kitchen: ("100 g", "50 kg").
        """
        print(f"{question}: {seen(answer, kind, plausible)}")

    def award(self, question, answer):
        """The points for an answer, as a plain float. Only keys call this.

        Parameters
        ----------
        question : Question
        answer : str or Quantity

        Returns
        -------
        float
        """
        self.questions[question.id] = question
        self.answers[question.id] = answer
        return self.mark(self.student, self.answers)[question.id].points

    def mark(self, student, answers):
        """The verdict on every answer of one student.

        Parameters
        ----------
        student : str
        answers : dict of str to (str or Quantity)
            By question id; a missing one is marked as missing.

        Returns
        -------
        dict of str to Verdict
        """
        verdicts, own, sound = {}, {}, set()
        for question, known in self.known(student):
            answer = answers.get(question.id)
            verdict = verdicts[question.id] = question.judge(answer, known, own, sound)
            if verdict.outcome == "right":
                sound.add(question.id)
            if verdict.outcome not in ("missing", "unreadable"):
                own[question.id] = question.look(answer)
        return verdicts

    def known(self, student):
        """Each question with what its formulas may use: numbers given so far, right answers so far.

        Parameters
        ----------
        student : str

        Yields
        ------
        Question, dict of str to Quantity
        """
        known = {}
        for question in self.questions.values():
            choices = self.choices.get(question.id, {})
            known |= given(self.term, student, f"{self.set_id}/{question.id}", **choices)
            yield question, dict(known)
            known[question.id] = question.right(known)

    def collisions(self, students):
        """Slips that pass for the right answer with some student's numbers.

        Parameters
        ----------
        students : iterable of str

        Returns
        -------
        list of (str, str, str)
            Student, question, slip.
        """
        return [
            (student, question.id, slip)
            for student in students
            for question, known in self.known(student)
            for slip in question.collisions(known)
        ]


def seen(answer, kind, plausible=None):
    """What can be said about an answer before it is marked.

    Parameters
    ----------
    answer : str or Quantity
    kind : str
    plausible : tuple of str, optional

    Returns
    -------
    str
        A sentence; never an error.
    """
    one_of(kind, [*KINDS, *MORE_KINDS], "kind")
    more = MORE_KINDS.get(kind)
    if isinstance(answer, str) and not answer.strip():
        asked, example = (more.asked, more.example) if more else (a_kind(kind), KINDS[kind][1])
        return f'nothing is typed yet: {asked} is asked for, such as "{example}".'
    try:
        if more:
            return more.seen(more.read(answer), plausible)
        value = as_kind(read(answer) if isinstance(answer, str) else answer, kind)
    except KitchenError as error:
        return str(error)
    sentence = f"read as {say(value)}. It is {a_kind(kind)}, as it should be."
    if plausible:
        low, high = (as_kind(read(bound), kind) for bound in plausible)
        if not low <= value <= high:
            sentence += f" Look again: {say(value)} is hard to believe in a kitchen."
    return sentence
