"""The desk's grid for practical marks: one mark at a time, a box for each student."""

import ipywidgets as widgets

from coursework.desk.parts import BESIDE
from coursework.desk.showing import PAGE, WIDE
from coursework.errors import CourseError
from coursework.terms.practical import give_practical, practical_marks
from coursework.words import number, plural
from kitchenmath.panels.frame import Panel

BOX = {"width": "340px", "max_width": "100%"}
SIDE = {"description_width": "220px"}


def practical_panel(desk):
    """Choose a practical mark, type it for each student, enter all of them.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `name` and `boxes`, a Box with a Text for each student.
    """
    return PracticalPanel(desk)


class PracticalPanel(Panel):
    """See `practical_panel`."""

    def __init__(self, desk):
        self._desk, self._numbers = desk, []
        self.name = widgets.Dropdown(description="Practical mark", style=BESIDE, layout=WIDE)
        self.boxes = widgets.Box(layout={"flex_flow": "row wrap", "max_width": PAGE})
        self.name.observe(self._fill, "value")
        desk.classes.observe(self._forget, "value")
        show = desk.step("Show the grid", self._show, of_set=False)
        enter = desk.step("Enter the practical marks", self._enter, of_set=False)
        super().__init__([show, self.name, self.boxes, enter], PAGE)

    def _show(self, _=None):
        course, chosen = self._desk.course, self.name.value
        marks = course.policy.practical
        if not marks:
            raise CourseError("The course file states no practical marks yet.")
        self.name.options = [
            (f"{one.name}, 0 to {number(one.out_of)}", one.name) for one in marks.values()
        ]
        self.name.value = chosen if chosen in marks else next(iter(marks))
        self._fill()
        return f"{plural(len(course.roster), 'student')}."

    def _fill(self, _=None):
        if not self.name.value or not self._desk.classes.value:
            self.boxes.children, self._numbers = (), []
            return
        course, mark = self._desk.course, self.name.value
        given = practical_marks(course).marks
        self._numbers = list(course.roster)
        self.boxes.children = [
            widgets.Text(
                description=f"{named} ({student})", style=SIDE, layout=BOX,
                value=number(given[student, mark]) if (student, mark) in given else "",
            )
            for student, named in course.roster.items()
        ]  # fmt: skip

    def _enter(self, _):
        if not self.boxes.children:
            raise CourseError("Show the grid first.")
        values = (one.value for one in self.boxes.children)
        typed = dict(zip(self._numbers, values, strict=True))
        count = give_practical(self._desk.course, self.name.value, typed)
        many = plural(count, "mark is", "marks are")
        return f"{self.name.value}: {many} in. The others are open."

    def _forget(self, _):
        self.name.options, self.boxes.children, self._numbers = (), (), []
