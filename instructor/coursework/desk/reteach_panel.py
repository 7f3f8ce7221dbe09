"""The desk's panel for teaching again: what was not got over all sets, and the sheets for it."""

import ipywidgets as widgets

from coursework.desk.showing import PAGE, page_in_a_frame
from coursework.errors import CourseError
from coursework.reports.skills_page import skills_report
from coursework.skills.reteach import for_everybody, gaps_of, reteach
from coursework.skills.skill_table import skill_table
from kitchenmath.panels.frame import below_each_other, said

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
    whom = widgets.SelectMultiple(
        description="For whom",
        rows=8,
        style={"description_width": "initial"},
        layout={"width": "auto", "max_width": PAGE},
    )
    gaps, shown = widgets.HTML(), widgets.HTML()
    seen = {}

    def look(progress):
        course = desk.course
        table = skill_table(course)
        page, *sheets = skills_report(course, progress, table)
        seen.update(course=course, table=table)
        whom.options = [CLASS, *((_line(table, one), one) for one in for_everybody(table))]
        whom.value = ("",)
        shown.value = page_in_a_frame(page, "What to teach again", 560)
        return "\n".join([f"The page: {page}", *(f"A sheet: {sheet}" for sheet in sheets)])

    def tell(_=None):
        sentences = [gaps_of(seen["table"], student or None) for student in whom.value]
        gaps.value = said("\n".join(sentences))

    def make(progress):
        course = desk.course
        if seen.get("course") != course:
            raise CourseError("Press “Show what is not got” first: the list is not of this class.")
        if not whom.value:
            raise CourseError("Choose the class or students in the list; Ctrl adds one to others.")
        students = [student or None for student in whom.value]
        made = reteach(course, students, progress, seen["table"])
        return "\n".join(str(each) for each in made)

    whom.observe(tell, "value")
    panel = below_each_other(
        [
            desk.step("Show what is not got", look, of_set=False),
            shown,
            whom,
            gaps,
            desk.step("Make the re-teach sheets", make, of_set=False),
        ],
        PAGE,
    )
    panel.whom, panel.gaps, panel.shown = whom, gaps, shown
    return panel


def _line(table, student):
    """A student in the list, with how much is not got."""
    count = len(table.not_got(student))
    named = table.students[student]
    number = "" if named == student else f" ({student})"
    return f"{named}{number}: {count} not got"
