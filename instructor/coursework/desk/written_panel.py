"""The desk's panel for what waits for a person: written answers, and files that only they read."""

import ipywidgets as widgets

from coursework.desk.next_steps import what_waits
from coursework.desk.parts import BESIDE
from coursework.errors import CourseError
from coursework.gradebook.points import enter_human
from coursework.sets.hand_out import class_key
from coursework.sets.keys import load_key
from kitchenmath.panels.frame import below_each_other, said


def written_panel(desk, page):
    """What waits for a person, one at a time, with the mark scheme beside."""
    wide = {"width": "auto", "max_width": page}
    whose, answer, scheme = widgets.HTML(), widgets.HTML(), widgets.HTML()
    points = widgets.Text(description="Points", style=BESIDE)
    comment = widgets.Textarea(description="A word to the student", style=BESIDE, layout=wide)
    waiting = []

    def show():
        if not waiting:
            whose.value, answer.value, scheme.value = said("Nothing waits."), "", ""
            return f"Everything of {desk.sets.value} is marked."
        student, cell = waiting[0]
        points.placeholder = f"0 to {cell['out_of']:g}"
        points.value = comment.value = ""
        name = desk.course.roster.get(student, student)
        whose.value = said(
            f"{name} ({student}), {cell['question']}, out of {cell['out_of']:g} points"
        )
        answer.value = f"<blockquote>{said(cell['answer'] or '(nothing to show)')}</blockquote>"
        scheme.value = said(_scheme(desk, cell).replace("**", ""))
        return "1 answer waits." if len(waiting) == 1 else f"{len(waiting)} answers wait."

    def find(progress):
        waiting[:] = what_waits(desk.course, desk.sets.value)
        return show()

    def enter(progress):
        if not waiting:
            return find(progress)
        student, cell = waiting[0]
        given = _number(points.value, cell["out_of"])
        enter_human(desk.course, desk.sets.value, student, cell["question"], given, comment.value)
        waiting.pop(0)
        return show()

    panel = below_each_other(
        [
            desk.step("Show what waits", find),
            whose,
            answer,
            scheme,
            points,
            comment,
            desk.step("Enter the points, next", enter),
        ],
        page,
    )
    panel.points, panel.comment, panel.answer, panel.waiting = points, comment, answer, waiting
    return panel


def _number(typed, out_of):
    """Points as typed, with a point or a comma."""
    try:
        return float(typed.strip().replace(",", "."))
    except ValueError:
        came = f"“{typed}” came" if typed.strip() else "nothing came"
        raise CourseError(f"Points: type a number from 0 to {out_of:g}; {came}.") from None


def _scheme(desk, cell):
    """The mark scheme; of a question that the machine marks, the right answer and the working."""
    if "right" in cell:
        return "\n".join([f"Right: {cell['right']}", *cell["working"]])
    return load_key(class_key(desk.course, desk.sets.value)).scheme(cell["question"])
