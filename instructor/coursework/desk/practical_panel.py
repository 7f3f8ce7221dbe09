"""The desk's grid for practical marks: one mark at a time, a box for each student."""

import ipywidgets as widgets

from coursework.desk.parts import BESIDE
from coursework.desk.showing import PAGE, WIDE
from coursework.errors import CourseError
from coursework.terms.practical import give_practical, practical_marks
from coursework.words import number, plural
from kitchenmath.panels.frame import below_each_other

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
    name = widgets.Dropdown(description="Practical mark", style=BESIDE, layout=WIDE)
    boxes = widgets.Box(layout={"flex_flow": "row wrap", "max_width": PAGE})
    numbers = []

    def show(_=None):
        course = desk.course
        if not course.policy.practical:
            raise CourseError("The course file states no practical marks yet.")
        chosen = name.value
        name.options = [(f"{one.name}, 0 to {number(one.out_of)}", one.name) for one in
                        course.policy.practical.values()]  # fmt: skip
        first = next(iter(course.policy.practical))
        name.value = chosen if chosen in course.policy.practical else first
        fill()
        return f"{plural(len(course.roster), 'student')}."

    def fill(_=None):
        if not name.value or not desk.classes.value:
            boxes.children, numbers[:] = (), []
            return
        course = desk.course
        marks = practical_marks(course).marks
        numbers[:] = list(course.roster)
        boxes.children = [
            widgets.Text(
                description=f"{named} ({student})", style=SIDE, layout=BOX,
                value="" if (student, name.value) not in marks
                else number(marks[student, name.value]),
            )
            for student, named in course.roster.items()
        ]  # fmt: skip

    def enter(_):
        if not boxes.children:
            raise CourseError("Show the grid first.")
        typed = dict(zip(numbers, (one.value for one in boxes.children), strict=True))
        count = give_practical(desk.course, name.value, typed)
        return f"{name.value}: {plural(count, 'mark is', 'marks are')} in. The others are open."

    def forget(_):
        name.options, boxes.children, numbers[:] = (), (), []

    name.observe(fill, "value")
    desk.classes.observe(forget, "value")
    panel = below_each_other(
        [
            desk.step("Show the grid", show, of_set=False),
            name, boxes,
            desk.step("Enter the practical marks", enter, of_set=False),
        ],
        PAGE,
    )  # fmt: skip
    panel.name, panel.boxes = name, boxes
    return panel
