"""The desk's panel for the term's mark book."""

import ipywidgets as widgets

from coursework.desk.parts import chosen_file
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
    practical = _one_file("Practical marks (CSV)", ".csv,.xlsx")
    results = _one_file("Results (OneRoster zip)", ".zip")
    shown = widgets.HTML()

    def make(progress):
        with chosen_file(practical) as file:
            written = term_marks(desk.course, file, progress)
        shown.value = page_in_a_frame(written[1], "The term's mark book")
        return said(*written)

    def take(_):
        with chosen_file(results) as file:
            if file is None:
                raise CourseError("Choose the zip with the results first.")
            taken = take_results(desk.course, file)
        results.value = ()
        return in_words(taken)

    def exchange(_):
        return f"Roster and results: {export_exchange(desk.course)}"

    book = desk.step("Make the mark book", make, of_set=False)
    taking = desk.step("Take the results in", take, of_set=False)
    writing = desk.step("Write the OneRoster files", exchange, of_set=False)
    panel = below_each_other([practical, book, shown, results, taking, writing], PAGE)
    panel.practical, panel.results, panel.shown = practical, results, shown
    return panel


def _one_file(description, accept):
    return widgets.FileUpload(
        description=description, accept=accept, multiple=False, layout={"width": "260px"}
    )
