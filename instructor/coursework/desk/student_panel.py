"""The desk's panel for one student: all sets, each mark and why, the files, and every decision."""

import ipywidgets as widgets

from coursework.arriving.arrivals import names_of_files
from coursework.arriving.placing import original
from coursework.decisions.journal import line_of
from coursework.desk.deciding_panel import deciding_panel
from coursework.desk.file_view import file_as_html
from coursework.desk.parts import BESIDE
from coursework.desk.showing import NO_FILE, PAGE, WIDE, people, refill, text_in_a_frame
from coursework.errors import CourseError
from coursework.reports.page import page
from coursework.reports.student_view import student_view
from coursework.reports.student_words import mark_in_words
from coursework.sets.key_text import set_labels
from coursework.terms.mark_words import graded_in_words
from kitchenmath.panels.frame import below_each_other, said


class StudentPanel:
    """What `student_panel` shows.

    Parameters
    ----------
    desk : Desk
    """

    def __init__(self, desk):
        self.desk, self._files = desk, {}
        self.student = widgets.Dropdown(description="Student", style=BESIDE, layout=WIDE)
        self.shown = widgets.HTML()
        self.file = widgets.Dropdown(description="Look into", options=[NO_FILE], style=BESIDE,
                                     layout=WIDE)  # fmt: skip
        self.seen = widgets.HTML()
        self.decide = deciding_panel(desk, after=self.show)
        self.look = desk.step("Show the student", self.show, of_set=False)
        self.student.observe(self._chosen, "value")
        self.file.observe(self._look, "value")
        desk.classes.observe(self._chosen, "value")
        desk.keep_filled(self._list)

    def show(self, _=None):
        """Show the student as they stand now."""
        course = self.desk.course
        if not self.student.value:
            raise CourseError("Choose the student.")
        view = student_view(course, self.student.value)
        names = course.roster, names_of_files(course), set_labels()
        decided = [line_of(one, *names) for one in view.decided]
        text = page("view.html", course=course.name, view=view, decided=decided,
                    words=mark_in_words, graded=graded_in_words(view.graded))  # fmt: skip
        self.shown.value = text_in_a_frame(text, f"{view.name}: the term", 560)
        files = [one for each in view.sets for one in each.attempts]
        self._files = {one.sha256: one for one in files}
        self.file.options = [NO_FILE, *((_called(one), sha) for sha, one in self._files.items())]
        return f"{view.name}: all that is known of this term stands below."

    def _list(self, course):
        refill(self.student, people(course.roster))

    def _chosen(self, _=None):
        """Another student: nothing of the one before stays in view."""
        self._files, self.shown.value, self.seen.value = {}, "", ""
        self.look.clear()  # it says that the one before stands below
        self.file.options = [NO_FILE]
        if self.student.value:
            self.decide.student.value = self.student.value

    def _look(self, change):
        one = self._files.get(change["new"])
        if one is None:
            self.seen.value = ""
            return
        try:
            course = self.desk.course
            kept = course.arrived / one.kept
            self.seen.value = file_as_html(original(course, one), one.name, kept)
        except CourseError as error:
            self.seen.value = said(str(error))


def _called(arrival):
    """A file by its name and when it came: a student's files mostly have one name."""
    return ", ".join(filter(None, (arrival.name, arrival.came)))


def student_panel(desk):
    """One student over the term, and decisions about them.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With an attribute `shows`, the `StudentPanel` behind it.
    """
    shows = StudentPanel(desk)
    panel = below_each_other(
        [
            shows.student,
            shows.look,
            shows.shown, shows.file, shows.seen,
            widgets.HTML(said("A decision about this student, in the set chosen above:")),
            shows.decide,
        ],
        PAGE,
    )  # fmt: skip
    panel.shows = shows
    return panel
