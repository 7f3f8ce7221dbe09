"""The inbox's part for hand-ins that wait for a word: both files in view, and which one counts."""

import ipywidgets as widgets

from coursework.arriving.doubts import in_words
from coursework.deciding import decide
from coursework.desk.file_view import Look
from coursework.desk.parts import BESIDE
from coursework.desk.showing import NOBODY, PAGE, WIDE
from coursework.errors import CourseError
from coursework.words import plural
from kitchenmath.panels.frame import said

__all__ = ["DoubtRow", "let_count"]

WHY = "Only the file itself says whose the later one is. Look at both, and ask the student."


class DoubtRow(widgets.VBox):
    """One student's hand-ins of a set: each with its time and sender, and which one counts.

    Parameters
    ----------
    course : Course
    doubt : Doubt
    title : str
        Of the set.
    """

    def __init__(self, course, doubt, title):
        self.doubt = doubt
        name = course.roster.get(doubt.student, doubt.student)
        self.counts = widgets.Dropdown(
            description="This one counts",
            options=[NOBODY, *((_line(one), one.sha256) for one in doubt.files)],
            style=BESIDE,
            layout=WIDE,
        )
        parts = [widgets.HTML(said(f"{name} ({doubt.student}), {title}: which one counts?\n{WHY}"))]
        for one in doubt.files:
            parts += [widgets.HTML(said(in_words(one, doubt, course.roster))), Look(course, one)]
        super().__init__([*parts, self.counts], layout={"margin": "0 0 14px", "max_width": PAGE})


def let_count(course, rows):
    """Decide what was chosen in these rows: those without a choice go on waiting.

    Parameters
    ----------
    course : Course
    rows : sequence of DoubtRow

    Returns
    -------
    str
        What was decided.

    Raises
    ------
    CourseError
        When nothing is chosen.
    """
    chosen = [row for row in rows if row.counts.value]
    if not chosen:
        raise CourseError("Choose at “This one counts” first. Nothing waits where there is none.")
    for row in chosen:
        about = {"student": row.doubt.student, "set_id": row.doubt.set_id}
        decide(course, "this one counts", file=row.counts.value, **about)
    return f"{plural(len(chosen), 'decision is', 'decisions are')} in the journal. Mark again."


def _line(arrival):
    return f"{arrival.name}, {arrival.handed_in}".rstrip(", ")
