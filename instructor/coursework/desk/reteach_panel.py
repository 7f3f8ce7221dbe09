"""The desk's panel for teaching again: what was not got over all sets, and the sheets for it."""

import ipywidgets as widgets

from coursework.desk.showing import PAGE, page_in_a_frame
from coursework.errors import CourseError
from coursework.reports.skills_page import skills_report
from coursework.skills.reteach import for_everybody, gaps_of, reteach
from coursework.skills.skill_table import skill_table
from kitchenmath.panels.frame import Panel, said

CLASS = ("The class, one sheet for all", "")


def reteach_panel(desk):
    """Look what was not got, choose for whom, make the sheets.

    Parameters
    ----------
    desk : Desk
        Its chosen class is meant.

    Returns
    -------
    ipywidgets VBox
        With attributes `whom`, `gaps` and `shown`.
    """
    return ReteachPanel(desk)


class ReteachPanel(Panel):
    """See `reteach_panel`."""

    def __init__(self, desk):
        self._desk, self._course, self._table = desk, None, None
        self.whom = widgets.SelectMultiple(
            description="For whom",
            rows=8,
            style={"description_width": "initial"},
            layout={"width": "auto", "max_width": PAGE},
        )
        self.gaps, self.shown = widgets.HTML(), widgets.HTML()
        self.whom.observe(self._tell, "value")
        look = desk.step("Show what is not got", self._look, of_set=False)
        self._sheets = desk.step("Make the re-teach sheets", self._make, of_set=False)
        super().__init__([look, self.shown, self.whom, self.gaps, self._sheets], PAGE)

    def _look(self, progress):
        course = self._desk.course
        self._sheets.clear()  # what was made before rests on an older look
        table = skill_table(course)
        page, *sheets = skills_report(course, progress, table)
        self._course, self._table = course, table
        self.whom.options = [CLASS, *((_line(table, one), one) for one in for_everybody(table))]
        self.whom.value = ("",)
        self.shown.value = page_in_a_frame(page, "What to teach again", 560)
        return "\n".join([f"The page: {page}", *(f"A sheet: {sheet}" for sheet in sheets)])

    def _tell(self, _):
        sentences = [gaps_of(self._table, student or None) for student in self.whom.value]
        self.gaps.value = said("\n".join(sentences))

    def _make(self, progress):
        course = self._desk.course
        if self._course != course:
            raise CourseError("Press “Show what is not got” first: the list is not of this class.")
        if not self.whom.value:
            raise CourseError("Choose the class or students in the list; Ctrl adds one to others.")
        students = [student or None for student in self.whom.value]
        made = reteach(course, students, progress, self._table)
        return "\n".join(str(each) for each in made)


def _line(table, student):
    """A student in the list, with how much is not got."""
    count = len(table.not_got(student))
    named = table.students[student]
    number = "" if named == student else f" ({student})"
    return f"{named}{number}: {count} not got"
