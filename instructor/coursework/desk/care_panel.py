"""The desk's panel for a class's data: back up, restore, archive, take along, erase, discard."""

from pathlib import Path

import ipywidgets as widgets

from coursework.care.archive import back_up, export_student, restore
from coursework.care.commands import archived_in_words, in_words
from coursework.care.discarded_words import counted
from coursework.care.discarded_words import in_words as kept_in_words
from coursework.care.discarding import discard, kept_until, past_their_time
from coursework.care.erasing import erase_student
from coursework.care.putting_away import archive
from coursework.classes.course import CLASSES
from coursework.desk.parts import BESIDE, chosen_file
from coursework.desk.showing import NOBODY, PAGE, WIDE, people, refill
from coursework.errors import CourseError
from kitchenmath.panels.frame import Panel


def care_panel(desk):
    """Back up and restore a class; give a student their data, or erase them.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `student`, `typed`, `backup`, `lies` and `named`.
    """
    return CarePanel(desk)


class CarePanel(Panel):
    """See `care_panel`."""

    def __init__(self, desk):
        self._desk, self._seen = desk, (None, None)
        self.student = widgets.Dropdown(description="Student", style=BESIDE, layout=WIDE)
        self.typed = widgets.Text(
            description="To erase, type the student number again", style=BESIDE, layout=WIDE
        )
        self.backup = widgets.FileUpload(
            description="Choose a backup", accept=".zip", multiple=False
        )
        self.lies = widgets.Text(
            description="Or where it lies", placeholder="such as Downloads/autumn.zip",
            style=BESIDE, layout=WIDE,
        )  # fmt: skip
        self.named = widgets.Text(
            description="To archive, type the class's name", style=BESIDE, layout=WIDE
        )
        desk.keep_filled(lambda course: refill(self.student, [NOBODY, *people(course.roster)]))
        parts = [
            ("Back up the class", self._back_up),
            self.backup,
            self.lies,
            ("Restore a class", self._restore),
            self.student,
            ("Pack a student's data", self._pack),
            self.typed,
            ("Erase the student", self._erase),
            ("Look how long copies are kept", self._show_kept),
            ("Discard those past their time", self._discard_kept),
            self.named,
            ("Archive the class", self._archive),
        ]
        made = [desk.step(*one, of_set=False) if isinstance(one, tuple) else one for one in parts]
        super().__init__(made, PAGE)

    def _back_up(self, progress):
        file = back_up(self._desk.course, CLASSES, progress)
        return f"Keep this file as private as the class: {file}"

    def _restore(self, progress):
        # A file of some 10 MB is more than a browser hands over: its place can be typed as well.
        lies = self.lies.value.strip()
        with chosen_file(self.backup) as chosen:
            file = Path.home() / Path(lies).expanduser() if lies else chosen
            if file is None:
                raise CourseError("Choose the backup first, or type where it lies.")
            course = restore(file, classes=CLASSES, progress=progress)
        self.lies.value, self.backup.value = "", ()
        self._desk.list_classes(course.folder)
        return f"“{course.name}” with {len(course.roster)} students is back."

    def _archive(self, progress):
        course, sure = self._desk.course, self.named.value.strip()
        self.named.value = ""  # nothing stays armed after a click
        if sure not in (course.name, course.folder.name):
            raise CourseError(f"Type “{course.name}” in the box: the class leaves the list.")
        file = archive(course, CLASSES, progress)
        self._desk.list_classes()
        return archived_in_words(course.name, file)

    def _pack(self, _):
        return f"All of it: {export_student(self._desk.course, self.student.value or '')}"

    def _erase(self, _):
        sure, self.typed.value = self.typed.value.strip(), ""  # nothing stays armed after a click
        if not self.student.value or sure != self.student.value:
            raise CourseError("Choose the student, and type the same student number in the box.")
        return in_words(erase_student(self._desk.course, self.student.value))

    def _show_kept(self, _):
        course = self._desk.course
        past = past_their_time(course)
        self._seen = course.folder, past
        return kept_in_words(kept_until(course), past)

    def _discard_kept(self, _):
        course, (folder, past) = self._desk.course, self._seen
        self._seen = None, None  # nothing stays armed after a click
        if folder != course.folder or past is None:
            raise CourseError("Look first which copies are past their time.")
        made = discard(course, past, counted(past))
        return f"They are gone: {counted(past)}. Decision {made.number} in the journal says so."
