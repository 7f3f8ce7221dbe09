"""The desk's panel for the term's mark book."""

import tempfile
from pathlib import Path

import ipywidgets as widgets

from coursework.desk.showing import PAGE, page_in_a_frame
from coursework.errors import CourseError
from coursework.reports.exchange import export_exchange
from coursework.reports.term_marks import said, term_marks
from coursework.terms.results_in import in_words, take_results
from kitchenmath.panels.frame import below_each_other


def term_panel(desk):
    """Choose the practical marks, make the mark book, see its page.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `practical`, `results` and `shown`.
    """
    practical = widgets.FileUpload(
        description="Practical marks (CSV)",
        accept=".csv,.xlsx",
        multiple=False,
        layout={"width": "260px"},
    )
    results = widgets.FileUpload(
        description="Results (OneRoster zip)",
        accept=".zip",
        multiple=False,
        layout={"width": "260px"},
    )
    shown = widgets.HTML()

    def make(progress):
        with tempfile.TemporaryDirectory() as folder:
            file = None
            if practical.value:
                file = Path(folder) / Path(practical.value[0]["name"]).name
                file.write_bytes(bytes(practical.value[0]["content"]))
            written = term_marks(desk.course, file, progress)
        shown.value = page_in_a_frame(written[1], "The term's mark book")
        return said(*written)

    def take(_):
        if not results.value:
            raise CourseError("Choose the zip with the results first.")
        with tempfile.TemporaryDirectory() as folder:
            file = Path(folder) / Path(results.value[0]["name"]).name
            file.write_bytes(bytes(results.value[0]["content"]))
            taken = take_results(desk.course, file)
        results.value = ()
        return in_words(taken)

    def exchange(_):
        return f"Roster and results: {export_exchange(desk.course)}"

    panel = below_each_other(
        [
            practical,
            desk.step("Make the mark book", make, of_set=False),
            shown,
            results,
            desk.step("Take the results in", take, of_set=False),
            desk.step("Write the OneRoster files", exchange, of_set=False),
        ],
        PAGE,
    )
    panel.practical, panel.results, panel.shown = practical, results, shown
    return panel
