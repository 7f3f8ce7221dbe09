"""A set's sheet: it gives each student their numbers, looks at answers and awards points."""

from kitchenmath.conventions import OURS, conventions_of
from kitchenmath.errors import KitchenError
from kitchenmath.practice import look_words
from kitchenmath.practice.answer_look import seen
from kitchenmath.practice.following import follow, tell
from kitchenmath.practice.measured import built_on, why_not
from kitchenmath.practice.own_numbers import Given, beside, given, student_number, unlike
from kitchenmath.practice.stumbles import speak_plainly
from kitchenmath.practice.typed_cells import read_as_typed
from kitchenmath.units.door import one_of

__all__ = ["Sheet", "open_set"]

# Where a set keeps the numbers of a question: `one = sheet.given("q1", …)`.
WORDS = (
    *("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven"),
    *("twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen"),
    *("nineteen", "twenty"),
)
VARIABLES = {f"q{number}": word for number, word in enumerate(WORDS, start=1)}


def open_set(set_id, term, student, like="", college=""):
    """The sheet of one set for one student.

    Parameters
    ----------
    set_id : str
        Such as "04-buy-enough".
    term : str
    student : str
        The student number as typed; without one the sheet says so and shows no numbers.
    like : str
        One of the class's numbers; a student number that is written otherwise is told so.
    college : str
        The class's conventions, as `kitchenmath.conventions.as_text` writes them; "" is the kit's.

    Returns
    -------
    Sheet
    """
    speak_plainly()
    read_as_typed()
    sheet = Sheet(set_id, term, student, like, conventions_of(college))
    follow(sheet)
    return sheet


class Sheet:
    """What a set's notebook talks to: it gives numbers, looks at answers and awards points.

    Attributes
    ----------
    choices : dict of str to dict
        For each question what its numbers may be.
    questions : dict of str to Question
        Filled by `award`, which only a key calls.
    looked : dict of str to (str, tuple or None)
        For each question that `look` saw, its kind and what is plausible.
    unlike : str
        What to say of a student number that is not written like the class's.
    college : Conventions
        By which numbers are drawn and answers read.
    """

    def __init__(self, set_id, term, student, like="", college=OURS):
        self.set_id, self.term, self.college = set_id, term, college
        self.choices, self.questions, self.answers, self.looked = {}, {}, {}, {}
        self.unlike = ""
        try:
            self.student = student_number(student)
            self.unlike = unlike(self.student, like)
        except KitchenError as error:
            self.student, self._trouble = "", str(error)

    def __repr__(self):
        if not self.student:
            return look_words.STOP_HERE.format(trouble=self._trouble)
        again = f"\nLook again: {self.unlike}" if self.unlike else ""
        return look_words.WHOSE_SET.format(
            set_id=self.set_id, term=self.term, student=self.student, again=again
        )

    def given(self, question, **choices):
        """The student's numbers for a question; shown in words at the end of a cell.

        Parameters
        ----------
        question : str
        **choices : Choices

        Returns
        -------
        Given

        Raises
        ------
        UnknownName
            For a question beyond q20: a set asks no more.
        """
        one_of(question, VARIABLES, "question")
        choices = {name: choice.in_college(self.college) for name, choice in choices.items()}
        self.choices[question] = choices
        labels = {name: choice.label for name, choice in choices.items()}
        if not self.student:
            return Given(look_words.NUMBERS_LATER, {}, labels)
        numbers = self.numbers_of(question, self.student)
        return Given(
            f"Your numbers for {question}:",
            numbers,
            labels,
            VARIABLES[question],
            self.college.units_first,
        )

    def look(self, question, answer, kind, plausible=None):
        """Say whether an answer is there, readable, of the right kind and plausible.

        It does not say whether the answer is right: that is the marking's business.

        Parameters
        ----------
        question : str
        answer : str or Quantity
        kind : str
            A key of `KINDS`, or a kind that was added.
        plausible : tuple of str, optional
            Lowest and highest that make sense in any kitchen: ("100 g", "50 kg").
        """
        self.looked[question] = kind, plausible
        tell(question, seen(answer, kind, plausible, self.college))

    def build_on(self, question, answer):
        """The measurement that the next questions start from, and a sentence that says whose it is.

        Parameters
        ----------
        question : str
            One whose answer is a measurement, and that `look` has seen.
        answer : str or sequence

        Returns
        -------
        Readings or ProbeLog or None
            The student's own where it is sound, else the sample drawn for them; None without a
            student number.
        """
        if not self.student:
            print(look_words.NUMBERS_LATER)
            return None
        own = built_on(answer, kind := self.looked[question][0])
        if own is not None:
            print(look_words.FROM_YOUR_OWN.format(own=own))
            return own
        sample = self.numbers_of(question, self.student)["sample"]
        why = why_not(answer, kind)
        print(look_words.FROM_A_SAMPLE.format(sample=sample, why=why))
        return sample

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
        question = question.in_college(self.college)
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
        for question, known in self.known(student, answers):
            answer = answers.get(question.id)
            verdict = verdicts[question.id] = question.judge(answer, known, own, sound)
            if verdict.outcome == "right":
                sound.add(question.id)
            if verdict.outcome not in ("missing", "unreadable"):
                value = question.own_value(answer)
                own |= {} if value is None else {question.id: value}
        return verdicts

    def numbers_of(self, question, student):
        """The numbers drawn for a student, of one question.

        Parameters
        ----------
        question, student : str

        Returns
        -------
        dict of str to Quantity
        """
        choices = self.choices.get(question, {})
        return given(self.term, student, f"{self.set_id}/{question}", **choices)

    def numbers_in_words(self, question, student):
        """The same with their labels, in the class's first system: what each page shows.

        Parameters
        ----------
        question, student : str

        Returns
        -------
        list of (str, str)
        """
        return [
            (self.choices[question][name].label, beside(value, self.college.units_first))
            for name, value in self.numbers_of(question, student).items()
        ]

    def known(self, student, answers=None):
        """Each question with what its formulas may use: numbers given so far, right answers so far.

        Parameters
        ----------
        student : str
        answers : dict, optional
            By question id. A measurement among them takes the place of the sample drawn for the
            student, where it is sound; nothing else in them matters here.

        Yields
        ------
        Question, dict of str to Quantity
        """
        known = {}
        for question in self.questions.values():
            known |= self.numbers_of(question.id, student)
            yield question, dict(known)
            known[question.id] = question.carried((answers or {}).get(question.id), known)

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
