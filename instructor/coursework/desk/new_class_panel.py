"""The desk's panel for a new class, from a roster or as a demonstration."""

import ipywidgets as widgets

from coursework import demo
from coursework.arriving.take_in import take_in
from coursework.classes.course import CLASSES, new_course
from coursework.classes.names import name_for_files, typed_name
from coursework.classes.oneroster import read_any_roster
from coursework.desk.parts import BESIDE, chosen_file
from coursework.desk.showing import PAGE
from coursework.errors import CourseError
from coursework.words import plural
from kitchenmath.panels.frame import below_each_other


def new_class_panel(desk):
    """Name, term and roster of a new class; or the invented class, to try everything with.

    Parameters
    ----------
    desk : Desk
        It chooses the class that was made.

    Returns
    -------
    ipywidgets VBox
    """
    name = widgets.Text(description="Name", placeholder="autumn", style=BESIDE)
    term = widgets.Text(description="Term", placeholder="autumn-26", style=BESIDE)
    roster = widgets.FileUpload(
        description="Roster (table, zip)", accept=".csv,.xlsx,.zip", multiple=False
    )

    def make(progress):
        students = _chosen_roster(roster)
        called = typed_name(name.value, "Name")
        course = new_course(CLASSES / name_for_files(called), called, term.value, students)
        desk.list_classes(course.folder)
        return f"The class has {plural(len(students), 'student')}."

    panel = below_each_other(
        [
            widgets.HBox([name, term, roster], layout={"flex_flow": "row wrap"}),
            desk.step("Make the class", make, of_set=False),
            desk.step(
                "Play the demonstration class",
                lambda progress: _play(desk, progress),
                of_set=False,
            ),
        ],
        PAGE,
    )
    panel.name, panel.term, panel.roster = name, term, roster
    return panel


def _chosen_roster(chosen):
    with chosen_file(chosen) as file:
        if file is None:
            raise CourseError(
                "Choose the roster first: a CSV with student_number and name, or OneRoster."
            )
        return read_any_roster(file)


def _play(desk, progress):
    course, places = demo.play(progress=progress)
    desk.list_classes(course.folder)
    desk.sets.value = demo.SET
    take_in(course, places, progress)
    return f"An invented class of 24 has handed in set {demo.SET}. Mark it above."
