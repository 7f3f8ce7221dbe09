"""The desk's journal: what was decided in this class, by day, and taking a decision back."""

import ipywidgets as widgets

from coursework.arriving.arrivals import names_of_files
from coursework.deciding import changed_in_words, decide, journal
from coursework.decisions.holding import live
from coursework.decisions.journal import line_of
from coursework.decisions.kinds import FOR_GOOD
from coursework.desk.parts import BESIDE
from coursework.desk.showing import PAGE, WIDE
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.sets.key_text import set_labels
from coursework.words import plural
from kitchenmath.panels.frame import below_each_other, said


def journal_panel(desk):
    """See the journal, choose a decision that holds, take it back.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `list`, `line`, `whole` and `why`.
    """
    listed = widgets.HTML()
    line = widgets.Dropdown(description="Decision", style=BESIDE, layout=WIDE)
    whole = widgets.HTML()  # a list cuts a long line on a narrow page
    why = widgets.Text(description="Why taken back", style=BESIDE, layout=WIDE)

    def show(_=None):
        course = desk.course
        decisions = decisions_of(course)
        titles = set_labels()
        listed.value = said(journal(course, titles))
        back = [one for one in live(decisions) if one.kind not in FOR_GOOD]
        names = course.roster, names_of_files(course), titles
        line.options = [(line_of(one, *names), one.number) for one in back][::-1]
        line.value = None  # nothing is chosen by itself: the next click would take it back
        return f"{plural(len(decisions), 'decision')}."

    def take_back(_):
        if line.value is None:
            raise CourseError("Show the journal, and choose the decision.")
        gone = line.value
        made = decide(desk.course, "take back", line=gone, why=why.value.strip())
        why.value = ""
        words = f"Decision {gone} is taken back. {show()}", changed_in_words(desk.course, made)
        return "\n".join(filter(None, words))

    def show_whole(_):
        whole.value = said(line.label) if line.value is not None else ""

    def forget(_):
        line.options, listed.value = (), ""

    line.observe(show_whole, "value")
    desk.classes.observe(forget, "value")
    panel = below_each_other(
        [
            desk.step("Show the journal", show, of_set=False),
            listed, line, whole, why,
            desk.step("Take it back", take_back, of_set=False),
        ],
        PAGE,
    )  # fmt: skip
    panel.list, panel.line, panel.whole, panel.why = listed, line, whole, why
    return panel
