"""The desk's panel for a class's data: take it along, back it up, restore it, erase a student."""

import tempfile
from pathlib import Path

import ipywidgets as widgets

from coursework.care.archive import back_up, export_student, restore
from coursework.care.commands import in_words
from coursework.care.discarded_words import counted
from coursework.care.discarded_words import in_words as kept_in_words
from coursework.care.discarding import discard, kept_until, past_their_time
from coursework.care.erasing import erase_student
from coursework.classes.course import CLASSES
from coursework.desk.parts import BESIDE
from coursework.desk.showing import NOBODY, PAGE, WIDE, people, refill
from coursework.errors import CourseError
from kitchenmath.panels.frame import below_each_other


def care_panel(desk):
    """Back up and restore a class; give a student their data, or erase them.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `student`, `typed` and `backup`.
    """
    student = widgets.Dropdown(description="Student", style=BESIDE, layout=WIDE)
    typed = widgets.Text(
        description="To erase, type the student number again", style=BESIDE, layout=WIDE
    )
    backup = widgets.FileUpload(description="Choose a backup", accept=".zip", multiple=False)

    def list_students(course):
        refill(student, [NOBODY, *people(course.roster)])

    def erase(_):
        sure, typed.value = typed.value.strip(), ""  # nothing stays armed after a click
        if not student.value or sure != student.value:
            raise CourseError("Choose the student, and type the same student number in the box.")
        return in_words(erase_student(desk.course, student.value))

    def restored(progress):
        if not backup.value:
            raise CourseError("Choose the backup first: a zip that this panel wrote.")
        with tempfile.TemporaryDirectory() as folder:
            file = Path(folder) / Path(backup.value[0]["name"]).name
            file.write_bytes(bytes(backup.value[0]["content"]))
            course = restore(file, classes=CLASSES, progress=progress)
        desk.list_classes(course.folder)
        return f"“{course.name}” with {len(course.roster)} students is back."

    seen = {}

    def show_kept(_):
        course = desk.course
        seen["last"] = course.folder, past_their_time(course)
        return kept_in_words(kept_until(course), seen["last"][1])

    def discard_kept(_):
        course, (folder, past) = desk.course, seen.pop("last", (None, None))
        if folder != course.folder or past is None:  # nothing stays armed after a click
            raise CourseError("Look first which copies are past their time.")
        made = discard(course, past, counted(past))
        return f"They are gone: {counted(past)}. Decision {made.number} in the journal says so."

    desk.keep_filled(list_students)
    panel = below_each_other(
        [
            desk.step("Back up the class", lambda progress: _saved(desk, progress), of_set=False),
            backup,
            desk.step("Restore a class", restored, of_set=False),
            student,
            desk.step(
                "Pack a student's data",
                lambda _: f"All of it: {export_student(desk.course, student.value or '')}",
                of_set=False,
            ),
            typed,
            desk.step("Erase the student", erase, of_set=False),
            desk.step("Look how long copies are kept", show_kept, of_set=False),
            desk.step("Discard those past their time", discard_kept, of_set=False),
        ],
        PAGE,
    )
    panel.student, panel.typed, panel.backup = student, typed, backup
    return panel


def _saved(desk, progress):
    file = back_up(desk.course, CLASSES, progress)
    return f"Keep this file as private as the class: {file}"
