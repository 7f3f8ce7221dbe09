"""The desk: panels over the commands, for an instructor who does not program."""

import time
from contextlib import contextmanager
from pathlib import Path

import ipywidgets as widgets

from coursework.classes.course import CLASSES, open_course
from coursework.classes.listing import classes_in, labelled
from coursework.desk.care_panel import care_panel
from coursework.desk.class_file_panel import class_file_panel
from coursework.desk.deciding_panel import deciding_panel
from coursework.desk.inbox_panel import inbox_panel
from coursework.desk.journal_panel import journal_panel
from coursework.desk.new_class_panel import new_class_panel
from coursework.desk.next_steps import class_state, in_words
from coursework.desk.parts import Step
from coursework.desk.practical_panel import practical_panel
from coursework.desk.reteach_panel import reteach_panel
from coursework.desk.showing import PAGE, WIDE, page_in_a_frame, sets_to_choose
from coursework.desk.steps_panel import steps_panel
from coursework.desk.student_panel import student_panel
from coursework.desk.term_panel import term_panel
from coursework.desk.trays_panel import trays_panel
from coursework.desk.written_panel import written_panel
from coursework.errors import CourseError
from coursework.records.reading import handed_in, marked_students
from coursework.reports.report import report
from coursework.safe_files import write_safely
from coursework.sets.key_text import set_titles
from kitchenmath.errors import KitchenError
from kitchenmath.panels.frame import below_each_other, said

LAST_USED = ".last-used"  # beside the classes: the folder of the one that was open last


class Desk:
    """One class at a time: choose it, then go through the steps.

    Each method returns a panel to show in a cell of its own. They share the chosen class and set.
    """

    def __init__(self):
        alike = {"style": {"description_width": "40px"}, "layout": WIDE}
        self._titles, self._working = set_titles(), None
        self._steps, self._lists = [], []
        self.classes = widgets.Dropdown(description="Class", **alike)
        self.sets = widgets.Dropdown(
            options=sets_to_choose(self._titles), description="Set", **alike
        )
        self.state, self.next = widgets.HTML(), widgets.HTML()
        self.list_classes()
        for chooser in (self.classes, self.sets):
            chooser.observe(self._changed, "value")
        self._changed()

    @property
    def course(self):
        """The chosen class.

        Raises
        ------
        CourseError
            When none is chosen, or its files need mending.
        """
        if not self.classes.value:
            raise CourseError("There is no class yet. Make one below, or play the demonstration.")
        return open_course(Path(self.classes.value))

    def choose(self):
        """Class and set, what is next in the class, and how far the set has come."""
        return below_each_other([self.classes, self.next, self.sets, self.state], PAGE)

    def new(self):
        """A new class from a roster."""
        return new_class_panel(self)

    def steps(self):
        """Hand out, take in, mark, hand back, report."""
        return steps_panel(self)

    def picture(self):
        """The class's page, as the last report made it."""
        shown = widgets.HTML()

        def show(progress):
            _, page = report(self.course, self.sets.value, progress)
            shown.value = page_in_a_frame(page, "The class's page")
            return "This page lies beside the mark sheet too."

        return below_each_other([self.step("Show the class", show), shown], PAGE)

    def practical(self):
        """Practical marks, typed in a grid."""
        return practical_panel(self)

    def term(self):
        """The term's mark book."""
        return term_panel(self)

    def reteach(self):
        """What was not got over all sets, and the sheets to practise it again."""
        return reteach_panel(self)

    def class_file(self):
        """Due times, weights, the mark book's rules, practical marks and the roster, as forms."""
        return class_file_panel(self)

    def care(self):
        """The class's data: back it up, restore it, give a student theirs, erase a student."""
        return care_panel(self)

    def trays(self):
        """Trays in photos: those that came with a set, and one at the station."""
        return trays_panel(self)

    def decide(self):
        """What a person decides, and the journal of it."""
        return deciding_panel(self)

    def journal(self):
        """What was decided, by day, and taking it back."""
        return journal_panel(self)

    def student(self):
        """One student over the term, and every decision about them."""
        return student_panel(self)

    def unplaced(self):
        """Files that could not be placed: look at them, and say whose they are."""
        return inbox_panel(self)

    def written(self):
        """What waits for a person: written answers, and hand-ins that cannot be read."""
        return written_panel(self)

    def step(self, name, do, of_set=True):
        """A button of the desk; while it works all others rest."""
        step = Step(name, do, self._one_at_a_time, of_set)
        self._steps.append(step)
        return step

    def keep_filled(self, fill):
        """Let a panel fill its lists now, with each class, and after each step.

        A step of one panel brings what another lists: a file that came, a student who joined.

        Parameters
        ----------
        fill : callable
            Takes the class; called only where there is one that can be read.
        """
        self._lists.append(fill)
        self._fill([fill])

    def _fill(self, lists):
        try:
            course = self.course
        except KitchenError:  # none yet, or its file is odd: the desk says so above
            return
        for fill in lists:
            fill(course)

    def list_classes(self, choose=None):
        """Fill the list of classes, and choose one: the one named, else the one used last."""
        found = [(name, str(folder)) for name, folder in labelled(classes_in(CLASSES))]
        self.classes.options = found
        if found:  # a list that is filled later chooses nothing by itself
            last, folders = str(CLASSES / _last_used()), [folder for _, folder in found]
            self.classes.value = str(choose or (last if last in folders else folders[0]))

    @contextmanager
    def _one_at_a_time(self, step):
        """All buttons rest while one works; afterwards the desk says what is next."""
        self._working = step
        self._rest(True)
        try:
            yield lambda: self._about(step.of_set)
        finally:
            self._working = None
            try:
                self._fill(self._lists)
                self._tell_state()
            finally:  # a button that answers again means that all of it is shown
                self._rest(False)

    def _rest(self, resting):
        for step in self._steps:
            step.button.disabled = resting

    def _about(self, of_set):
        """What a message is about, for its beginning: it is read long after it was written."""
        if not self.classes.value:
            return ""
        set_ = f", set “{self._titles[self.sets.value]}”" if of_set else ""
        return f"{self.classes.label}{set_}: "

    def _changed(self, _=None):
        """Another class or set: what was said is about the old one."""
        for step in self._steps:
            if step is not self._working:
                step.clear()
        if self.classes.value:
            write_safely(CLASSES / LAST_USED, f"{Path(self.classes.value).name}\n", lasting=False)
        self._fill(self._lists)
        self._tell_state()

    def _tell_state(self, _=None):
        try:
            course, set_id = self.course, self.sets.value
            lines = in_words(class_state(course, self._titles), course.roster, time.time())
        except KitchenError as error:
            self.state.value, self.next.value = said(str(error)), ""
            return
        self.next.value = said("\n".join(["What is next:", *(f"– {line}" for line in lines)]))
        came, marked = len(handed_in(course, set_id)), len(marked_students(course, set_id))
        out = "handed out" if course.release(set_id).is_file() else "not handed out yet"
        self.state.value = said(
            f"{course.name}: {len(course.roster)} students, term {course.term}. "
            f"Set “{self._titles[set_id]}”: {out}, {came} handed in, {marked} marked."
        )


def _last_used():
    """The folder of the class that was open last; "" where nobody said."""
    try:
        return (CLASSES / LAST_USED).read_text(encoding="utf-8").strip()
    except (OSError, UnicodeDecodeError):
        return ""
