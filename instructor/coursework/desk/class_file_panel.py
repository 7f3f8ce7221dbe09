"""The desk's forms for the class's file: due times, weights, rules, copies, the roster."""

from datetime import date

import ipywidgets as widgets

from coursework.arriving.arrivals import on_the_clock
from coursework.classes.course_edit import (
    add_student,
    change_lines,
    remove_student,
    rename_student,
    typed_grades,
    typed_value,
)
from coursework.classes.policy import NothingHandedIn, SecondAttempt
from coursework.desk.college_form import CollegeForm
from coursework.desk.parts import BESIDE
from coursework.desk.showing import NOBODY, PAGE, WIDE, people, refill
from coursework.errors import CourseError
from coursework.words import number
from kitchenmath.panels.frame import below_each_other, said

MINUTE = 16  # characters of a time without its seconds
OF_SET = {
    "weight": "Weight of the set chosen above",
    "due": "Due, as in 2026-10-05 09:00",
    "second_due": "Second attempt due",
}
OF_BOOK = {
    "late_percent": "Percent off for each day late",
    "late_percent_most": "Percent off at most",
    "late_days": "Does not count after so many days",
    "second_attempt": "Of several attempts counts",
    "second_attempt_up_to": "A later one lifts up to percent",
    "nothing_handed_in": "Nothing handed in is",
    "wait_for_open_marks": "No total as long as a mark is open",
    "pass_line": "A total passes from so many percent",
}
OF_COPIES = {
    "months": "Months that copies are kept",
    "until": "Or until this day, as in 2027-08-31",
}
CHOICES = {
    "second_attempt": SecondAttempt.WORDS,
    "nothing_handed_in": NothingHandedIn.WORDS,
    "wait_for_open_marks": ("no", "yes"),
}


class ClassFile:
    """The forms, filled from the class, and what their buttons do.

    Parameters
    ----------
    desk : Desk
    """

    def __init__(self, desk):
        self.desk = desk
        self.of_set, self.of_book, self.of_copies = map(_boxes, (OF_SET, OF_BOOK, OF_COPIES))
        self.grades = widgets.Text(description="Grades, as in A = 80; B = 65; C = 40",
                                   style=BESIDE, layout=WIDE)  # fmt: skip
        self.country = widgets.Text(description="Country, two letters", style=BESIDE)
        self.mark = widgets.Text(description="Practical mark", style=BESIDE, layout=WIDE)
        self.out_of = widgets.Text(description="Its points", style=BESIDE)
        self.weight = widgets.Text(description="Its weight", style=BESIDE)
        self.student = widgets.Dropdown(description="On the roster", options=[NOBODY],
                                        style=BESIDE, layout=WIDE)  # fmt: skip
        self.number = widgets.Text(description="New student's number", style=BESIDE)
        self.name = widgets.Text(description="Name", style=BESIDE, layout=WIDE)
        for chooser in (desk.classes, desk.sets):
            chooser.observe(self.fill, "value")
        self.fill()
        desk.keep_filled(lambda course: refill(self.student, [NOBODY, *people(course.roster)]))

    def fill(self, _=None):
        """Show what holds in the class now."""
        if not self.desk.classes.value:
            return
        try:
            course = self.desk.course
        except CourseError:  # the file cannot be read: the desk says why, above
            return
        rule, policy = course.policy.rule(self.desk.sets.value), course.policy
        for name, box in self.of_set.items():
            box.value = _shown(getattr(rule, name), time="due" in name)
        for name, box in self.of_book.items():
            box.value = _shown(getattr(policy, name))
        for name, box in self.of_copies.items():
            box.value = _shown(getattr(course.copies, name))
        self.country.value = course.country
        self.grades.value = "; ".join(f"{name} = {number(at)}" for name, at in
                                      policy.grades.items())  # fmt: skip

    def save_set(self, _):
        """Write the due times and the weight of the chosen set."""
        set_id = self.desk.sets.value
        change_lines(self.desk.course, {("sets", set_id): _typed(self.of_set)})
        return f"The course file has them. {self._after()}"

    def save_book(self, _):
        """Write the mark book's rules, the grades, and the country."""
        course = self.desk.course
        country = self.country.value.strip().upper() or None
        grades = dict.fromkeys(course.policy.grades) | typed_grades(self.grades.value)
        change_lines(course, {
            ("mark_book",): _typed(self.of_book), ("grades",): grades, (): {"country": country},
            ("copies",): _typed(self.of_copies),
        })  # fmt: skip
        return f"The course file has them. {self._after()}"

    def save_practical(self, _):
        """Write one practical mark with its points and weight."""
        name = " ".join(self.mark.value.split())
        if not name:
            raise CourseError("Practical mark: type its name, as in knife skills.")
        values = {
            "out_of": typed_value(self.out_of.value),
            "weight": typed_value(self.weight.value),
        }
        change_lines(self.desk.course, {("practical", name): values})
        self.mark.value = self.out_of.value = self.weight.value = ""
        return f"“{name}” is a practical mark of this class."

    def drop_practical(self, _):
        """Take one practical mark out of the class's file."""
        name = " ".join(self.mark.value.split())
        if name not in self.desk.course.policy.practical:
            known = ", ".join(self.desk.course.policy.practical) or "none"
            raise CourseError(f"Practical mark: there is no “{name}”. There are: {known}.")
        change_lines(self.desk.course, {("practical",): {name: None}})
        self.mark.value = ""
        return f"“{name}” is taken out. What was given for it is kept in practical.csv."

    def add(self, _):
        """Add a student."""
        add_student(self.desk.course, self.number.value, self.name.value)
        name, self.number.value, self.name.value = self.name.value, "", ""
        return f"{name} is on the roster. What came without a place is looked at when you take in."

    def rename(self, _):
        """Give the chosen student the name in the box."""
        rename_student(self.desk.course, self._chosen(), self.name.value)
        self.name.value = self.student.value = ""
        return "The roster has the new name."

    def remove(self, _):
        """Take the chosen student off the roster."""
        chosen = self._chosen()
        remove_student(self.desk.course, chosen)
        return f"{chosen} is off the roster. The earlier roster is kept."

    def _chosen(self):
        if not self.student.value:
            raise CourseError("Choose the student on the roster.")
        return self.student.value

    def _after(self):
        self.fill()
        return "Make the mark book again to see what follows."


def class_file_panel(desk):
    """Forms for the class's file.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `forms`, the `ClassFile` behind it, and `college`, the `CollegeForm`.
    """
    forms, college = ClassFile(desk), CollegeForm(desk)
    panel = below_each_other(
        [
            *forms.of_set.values(),
            desk.step("Save for this set", forms.save_set),
            *forms.of_book.values(), forms.grades, forms.country, *forms.of_copies.values(),
            desk.step("Save for the class", forms.save_book, of_set=False),
            *college.rows(),
            forms.mark, forms.out_of, forms.weight,
            desk.step("Save the practical mark", forms.save_practical, of_set=False),
            desk.step("Take the practical mark out", forms.drop_practical, of_set=False),
            widgets.HTML(said("The roster:")),
            forms.number, forms.name,
            desk.step("Add the student", forms.add, of_set=False),
            forms.student,
            desk.step("Give this student the name above", forms.rename, of_set=False),
            desk.step("Take off the roster", forms.remove, of_set=False),
        ],
        PAGE,
    )  # fmt: skip
    panel.forms, panel.college = forms, college
    return panel


def _boxes(names):
    """A box for each line; a list to choose from where only a few words go."""
    return {
        name: widgets.Dropdown(options=CHOICES[name], description=label, style=BESIDE, layout=WIDE)
        if name in CHOICES
        else widgets.Text(description=label, style=BESIDE, layout=WIDE)
        for name, label in names.items()
    }


def _typed(boxes):
    return {name: typed_value(box.value) for name, box in boxes.items()}


def _shown(value, time=False):
    """A line's value as it is typed; "" where there is none or no bound."""
    if value is None or value == float("inf"):
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str | date):
        return str(value)
    return on_the_clock(value)[:MINUTE] if time else number(value)
