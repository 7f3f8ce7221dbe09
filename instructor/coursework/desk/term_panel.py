"""The desk's panel for the term's mark book."""

import tempfile
from pathlib import Path

import ipywidgets as widgets

from coursework.desk.showing import PAGE, page_in_a_frame
from coursework.reports.exchange import export_exchange
from coursework.reports.term_marks import said, term_marks
from kitchenmath.panels.frame import below_each_other


def term_panel(desk):
    """Choose the practical marks, make the mark book, see its page.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
    """
    practical = widgets.FileUpload(
        description="Practical marks (CSV)",
        accept=".csv",
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

    def exchange(_):
        return f"Roster and results: {export_exchange(desk.course)}"

    panel = below_each_other(
        [
            practical,
            desk.step("Make the mark book", make, of_set=False),
            shown,
            desk.step("Write the OneRoster files", exchange, of_set=False),
        ],
        PAGE,
    )
    panel.practical, panel.shown = practical, shown
    return panel
