"""The desk's panel for answers that a person marks: question by question over the class."""

from dataclasses import replace

import ipywidgets as widgets

from coursework.desk.parts import BESIDE
from coursework.desk.showing import PAGE, WIDE
from coursework.errors import CourseError
from coursework.gradebook.points import enter_human
from coursework.gradebook.waiting import answers_to_read, by_question, remarks_on, still_open
from coursework.sets.class_keys import class_key
from coursework.sets.keys import scheme_in
from coursework.words import number, plural
from kitchenmath.errors import Unreadable
from kitchenmath.panels.frame import below_each_other, said
from kitchenmath.typed.numbers import typed_number

FRESH = ("– a remark used before –", "")


class Reading:
    """Which answer is being read: one question over the whole class, with a way back.

    Parameters
    ----------
    answers : list of Answer
        Of one question, students in order.
    """

    def __init__(self, answers):
        self.answers, self.place, self._way = list(answers), None, []
        self.place = self._next_waiting(0)

    @property
    def now(self):
        """The answer that is read, or None when none waits."""
        return None if self.place is None else self.answers[self.place]

    @property
    def waiting(self):
        """How many of the question wait."""
        return still_open(self.answers)

    def enter(self, points, remark):
        """Note what was given for the answer that is read, and go on."""
        self.answers[self.place] = replace(self.now, points=points, remark=remark)
        self.skip()

    def skip(self):
        """Go on to the next one that waits; after the last one to the first."""
        if self.place is not None:
            self._way.append(self.place)
            self.place = self._next_waiting(self.place + 1)

    def back(self):
        """Go back to the one that was read before, marked or not.

        Returns
        -------
        bool
            Whether there was one.
        """
        if self._way:
            self.place = self._way.pop()
            return True
        return False

    def _next_waiting(self, start):
        order = [*range(start, len(self.answers)), *range(min(start, len(self.answers)))]
        return next((one for one in order if self.answers[one].points is None), None)


class WrittenPanel:
    """What `written_panel` shows, and what its buttons do.

    Parameters
    ----------
    desk : Desk
    """

    def __init__(self, desk):
        self.desk, self.reading, self._questions = desk, Reading([]), {}
        self.question = widgets.Dropdown(description="Question", style=BESIDE, layout=WIDE)
        self.asked, self.scheme = widgets.HTML(), widgets.HTML()
        self.whose, self.answer, self.last = widgets.HTML(), widgets.HTML(), widgets.HTML()
        self.points = widgets.Text(description="Points", style=BESIDE)
        self.used = widgets.Dropdown(description="Use again", options=[FRESH], style=BESIDE,
                                     layout=WIDE)  # fmt: skip
        self.comment = widgets.Textarea(
            description="A word to the student", style=BESIDE, layout=WIDE
        )
        self.question.observe(self._choose, "value")
        self.used.observe(self._use, "value")
        for chooser in (desk.classes, desk.sets):
            chooser.observe(self._forget, "value")

    def find(self, _=None):
        """Read afresh what waits."""
        answers = answers_to_read(self.desk.course, self.desk.sets.value)
        self._questions = by_question(answers)
        chosen = self.question.value
        self.question.options = [
            (f"{one[0].title}: {still_open(one)} of {len(one)} wait", question)
            for question, one in self._questions.items()
        ]
        first = next((one for one in self._questions if still_open(self._questions[one])), None)
        still = chosen in self._questions and still_open(self._questions[chosen])
        self.question.value = chosen if still else first
        self._choose()
        return self._count()

    def enter(self, _):
        """Enter the points for the answer that is shown, and show the next one."""
        one = self.reading.now
        if one is None:
            return self.find()
        given, remark = _points(self.points.value, one.out_of), self.comment.value.strip()
        course, set_id = self.desk.course, self.desk.sets.value
        enter_human(course, set_id, one.student, one.question, given, remark)
        self.reading.enter(given, remark)
        self._questions[one.question] = self.reading.answers
        self.last.value = said(f"Last remark: {remark}" if remark else "")
        self._show()
        name = course.roster.get(one.student, one.student)
        return f"{name}: {number(given)} of {number(one.out_of)}. {self._count()}"

    def skip(self, _):
        """Leave this answer for later."""
        self.reading.skip()
        self._show()
        return self._count()

    def back(self, _):
        """Show the answer before, to look again or to change its points."""
        if not self.reading.back():
            return "This is the first one that you looked at."
        self._show()
        return "Its points can be changed."

    def _count(self):
        waits = sum(still_open(one) for one in self._questions.values())
        if not waits:
            return "Every answer of this set that a person reads is marked."
        return plural(waits, "answer waits.", "answers wait.")

    def _choose(self, _=None):
        """Another question: its text, its scheme, and the first answer that waits."""
        self.reading = Reading(self._questions.get(self.question.value, []))
        answers = self.reading.answers
        self.asked.value = said(_plain(answers[0].asked)) if answers else ""
        self.scheme.value = said(self._scheme(answers[0])) if answers else ""
        self.last.value = ""
        self._show()

    def _scheme(self, one):
        """The mark scheme; of a question that the machine marks, the right answer and working."""
        if one.right:
            return "\n".join([f"Right: {one.right}", *one.working])
        raw = class_key(self.desk.course, self.desk.sets.value)
        return _plain(scheme_in(raw, one.question))

    def _show(self):
        """The answer that is read now, and what was given for it."""
        one = self.reading.now
        remarks = remarks_on(self.reading.answers)
        self.used.options = [FRESH, *((_short(each), each) for each in remarks)]
        self.used.value = ""
        if one is None:
            self.whose.value, self.answer.value = said("No answer of this question waits."), ""
            self.points.value = self.comment.value = ""
            return
        place = f"answer {self.reading.place + 1} of {len(self.reading.answers)}"
        name = self.desk.course.roster.get(one.student, one.student)
        self.whose.value = said(f"{name} ({one.student}), {place}")
        self.answer.value = f"<blockquote>{said(one.answer or '(nothing to show)')}</blockquote>"
        self.points.description = f"Points, 0 to {number(one.out_of)}"
        self.points.value = "" if one.points is None else number(one.points)
        self.comment.value = one.remark

    def _use(self, change):
        if change["new"]:
            self.comment.value = change["new"]

    def _forget(self, _):
        """Another class or set: nothing of the old one stays in view."""
        self._questions = {}
        self.question.options = ()
        self._choose()


def written_panel(desk):
    """Answers that a person marks, with question, scheme, answer and last remark in view.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With an attribute `shows`, the `WrittenPanel` behind it.
    """
    shows = WrittenPanel(desk)
    panel = below_each_other(
        [
            desk.step("Show what waits", shows.find),
            shows.question, shows.asked, shows.scheme, shows.whose, shows.answer,
            shows.points, shows.comment, shows.used, shows.last,
            desk.step("Enter the points, next", shows.enter),
            desk.step("Skip this answer", shows.skip),
            desk.step("Back to the one before", shows.back),
        ],
        PAGE,
    )  # fmt: skip
    panel.shows = shows
    return panel


def _points(typed, out_of):
    try:
        return typed_number(typed)
    except Unreadable as error:
        came = f"{error}" if typed.strip() else "nothing came"
        raise CourseError(f"Points: type a number from 0 to {number(out_of)}; {came}.") from None


def _plain(markdown):
    return markdown.replace("**", "")


def _short(remark):
    return remark if len(remark) <= 70 else f"{remark[:69]}…"
