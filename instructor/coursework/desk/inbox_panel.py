"""The desk's inbox: what waits for a word, and files without a place; settled many at once."""

import ipywidgets as widgets

from coursework.arriving.doubts import doubts
from coursework.arriving.inbox import (
    Placing,
    in_words,
    inbox,
    place_many,
    replaced_by,
    set_aside_many,
)
from coursework.desk.doubt_rows import DoubtRow, let_count
from coursework.desk.file_view import Look
from coursework.desk.parts import BESIDE
from coursework.desk.showing import NOBODY, PAGE, WIDE, people
from coursework.errors import CourseError
from coursework.sets.key_text import set_labels
from coursework.words import plural
from kitchenmath.panels.frame import below_each_other, said

AT_ONCE = 12  # files on the page; the others come when these are settled


class FileRow(widgets.VBox):
    """One file: a tick, what speaks for whom, student and set to choose, and a look into it.

    Parameters
    ----------
    course : Course
    waiting : Waiting
    chosen : str
        The set that the desk is at work on.
    labels : dict of str to str
        What each set is called; read once for all rows, for each key is opened for it.
    """

    def __init__(self, course, waiting, chosen, labels):
        self.waiting = waiting
        arrival = waiting.arrival
        self.tick = widgets.Checkbox(description=arrival.name, indent=False, layout=WIDE)
        self.student = widgets.Dropdown(
            description="It is from",
            options=[NOBODY, *people(course.roster, [one.student for one in waiting.proposals])],
            style=BESIDE, layout=WIDE,
        )  # fmt: skip
        self.set = widgets.Dropdown(
            description="Set", style=BESIDE, layout=WIDE,
            options=[NOBODY, *((labels.get(one, one), one) for one in course.sets_handed_out())],
        )  # fmt: skip
        self.student.value = waiting.sure.student if waiting.sure else ""
        self.set.value = waiting.set_proposal.set_id if waiting.set_proposal else ""
        self.look = Look(course, arrival)
        told = said("\n".join(in_words(waiting, course.roster, chosen, labels)))
        parts = [self.tick, widgets.HTML(told), self.student, self.set, self.look]
        super().__init__(parts, layout={"margin": "0 0 14px", "max_width": PAGE})

    @property
    def placing(self):
        """Where it goes as it is chosen.

        Raises
        ------
        CourseError
            When student or set is not chosen.
        """
        name = self.waiting.arrival.name
        for chosen, what in ((self.student.value, "whose it is"), (self.set.value, "its set")):
            if not chosen:
                raise CourseError(f"“{name}”: choose {what}, or take the tick away.")
        return Placing(self.waiting.arrival.sha256, self.student.value, self.set.value)


def inbox_panel(desk):
    """Look at what has no place, tick, choose, and place or set aside all that is ticked.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `rows`, a VBox of `FileRow`, `waiting`, one of `DoubtRow`, and `why`.
    """
    rows, waiting = widgets.VBox(), widgets.VBox()
    why = widgets.Text(description="Why set aside", style=BESIDE, layout=WIDE)
    asked = {}

    def show(progress=None):
        course, chosen, labels = desk.course, desk.sets.value, set_labels()
        found = inbox(course, chosen)
        rows.children = [FileRow(course, one, chosen, labels) for one in found[:AT_ONCE]]
        asked.clear()
        return " ".join(filter(None, (show_waiting(course, labels), _found(found))))

    def show_waiting(course, labels):
        found = doubts(course)
        waiting.children = [
            DoubtRow(course, one, labels.get(one.set_id, one.set_id)) for one in found[:AT_ONCE]
        ]
        wait = plural(len(found), "hand-in waits", "hand-ins wait")
        return f"{wait} for your word: which file counts?" if found else ""

    def count(_):
        return f"{let_count(desk.course, waiting.children)} {show()}"

    def tick(_):
        ready = [row for row in rows.children if row.waiting.sure and row.set.value]
        for row in ready:
            row.tick.value = True
        return f"{plural(len(ready), 'file is', 'files are')} ticked. Look at them, then place."

    def ticked():
        found = [row for row in rows.children if row.tick.value]
        if not found:
            raise CourseError("Tick a file first.")
        return found

    def place(_):
        placings = tuple(row.placing for row in ticked())
        met = replaced_by(desk.course, placings)
        if met and asked.pop("placings", None) != placings:
            asked["placings"] = placings
            return _replacing(desk.course, met, set_labels())
        place_many(desk.course, placings)
        return f"{plural(len(placings), 'file is', 'files are')} placed. Mark again. {show()}"

    def aside(_):
        files = [row.waiting.arrival.sha256 for row in ticked()]
        set_aside_many(desk.course, files, why.value.strip())
        why.value = ""
        return f"{plural(len(files), 'file is', 'files are')} set aside for good. {show()}"

    def forget(_):
        rows.children = waiting.children = ()
        why.value = ""
        asked.clear()

    for chooser in (desk.classes, desk.sets):
        chooser.observe(forget, "value")
    panel = below_each_other(
        [
            desk.step("Show the inbox", show),
            waiting,
            desk.step("Let those chosen count", count),
            rows,
            desk.step("Tick all that are sure", tick),
            desk.step("Place those ticked", place),
            why,
            desk.step("Set those ticked aside", aside),
        ],
        PAGE,
    )
    panel.rows, panel.waiting, panel.why = rows, waiting, why
    return panel


def _found(files):
    """How many files have no place, and how many of them are not shown yet."""
    if not files:
        return "Every file has its place."
    hidden = len(files) - AT_ONCE
    more = f" The first {AT_ONCE} are shown; {hidden} more come after." if hidden > 0 else ""
    return f"{plural(len(files), 'file has', 'files have')} no place.{more}"


def _replacing(course, met, labels):
    lines = [
        f"  {course.roster[one.student]} ({one.student}) has handed in "
        f"“{labels.get(one.set_id, one.set_id)}” already; the later one of both counts."
        for one in met
    ]
    return "\n".join([
        "Nothing is placed yet.", *lines, "Press “Place those ticked” again to place them all."
    ])  # fmt: skip
