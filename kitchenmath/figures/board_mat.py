"""The mat for photos of cut pieces, to print at true size: one layout for A4 and Letter."""

from pathlib import Path

import numpy as np

from kitchenmath.figures.cut_cards import PAPERS_MM
from kitchenmath.photo.layout import (
    FIELD_MM,
    FIELD_SRGB,
    FRAME_MM,
    LINE_MM,
    MARKER_MM,
    corner_offsets_mm,
    marker_cells,
    marker_centres_mm,
)
from kitchenmath.units.door import one_of

try:
    import matplotlib
    from matplotlib import style
    from matplotlib.figure import Figure
    from matplotlib.patches import Rectangle
except ModuleNotFoundError as missing:
    raise ModuleNotFoundError(
        "The mat needs matplotlib: start the lessons with `python3 lessons`, which sets it up."
    ) from missing

__all__ = ["board_mat", "mat_figure"]

MM_PER_INCH = 25.4
RC = {"pdf.compression": 0, "pdf.fonttype": 42, "font.family": "DejaVu Sans"}
PRINT = "Print at 100 %. Measure both lines: each is 100 mm. Type in what your ruler says."
LAY = "Lay pieces on the blue, 4 mm apart and half their height. Nothing on the white. One photo."
CAUTION = (
    "Knife away first, then the phone. Wash your hands. No faces. Food from bare paper: stockpot "
    "or bin."
)


def board_mat(paper="A4", path="board-mat.pdf"):
    """Write the mat as a page to print at 100 %, in colour, on white paper.

    Parameters
    ----------
    paper : str
        "A4" or "Letter".
    path : str or Path
        Where the PDF goes; what is there is replaced.

    Returns
    -------
    Path

    Raises
    ------
    UnknownName
        For another paper.

    Notes
    -----
    The same paper gives the same bytes on every run. It is not compressed, so that a test can
    read the lengths back out of it.
    """
    figure = mat_figure(paper)
    nameless = {"CreationDate": None, "Creator": None, "Producer": None}
    with style.context("default"), matplotlib.rc_context(RC):
        figure.savefig(
            path, format="pdf", facecolor="none", metadata={"Title": "Mat for photos", **nameless}
        )
    return Path(path)


def mat_figure(paper="A4"):
    """The mat as a figure, to look at; only the PDF of `board_mat` is true to size.

    Parameters
    ----------
    paper : str
        "A4" or "Letter".

    Returns
    -------
    matplotlib.figure.Figure

    Raises
    ------
    UnknownName
        For another paper.
    """
    high_mm, wide_mm = PAPERS_MM[one_of(paper, PAPERS_MM, "paper")]
    with style.context("default"), matplotlib.rc_context(RC):
        figure = Figure(figsize=(wide_mm / MM_PER_INCH, high_mm / MM_PER_INCH))
        corner = np.array([(wide_mm - FRAME_MM[0]) / 2, (high_mm - FRAME_MM[1]) / 2])
        page = figure.add_axes((0, 0, 1, 1))
        page.set(xlim=(-corner[0], wide_mm - corner[0]), ylim=(high_mm - corner[1], -corner[1]))
        page.set_axis_off()
        left, top, right, bottom = FIELD_MM
        _fill(page, left, top, right - left, bottom - top, [part / 255 for part in FIELD_SRGB])
        for number, middle in enumerate(marker_centres_mm()):
            _draw_marker(page, number, middle + corner_offsets_mm()[0])
        _draw_lines(page)
        _write(page, 0, -4.0, PRINT)
        _write(page, 0, FRAME_MM[1] + 5.4, LAY + "  " + CAUTION, size=5.6)
    return figure


def _draw_marker(page, number, corner):
    """Black, with the white cells laid on: no hair of paper shows between two black cells."""
    _fill(page, *corner, MARKER_MM, MARKER_MM, "black")
    cells = marker_cells(number)
    cell_mm = MARKER_MM / len(cells)
    for row, column in np.argwhere(cells):
        _fill(page, corner[0] + column * cell_mm, corner[1] + row * cell_mm, cell_mm, cell_mm, "w")


def _draw_lines(page):
    """Two lines at right angles, with a tick at each end: in the rim, between the markers' row
    and the field, where no marker and no food lies."""
    across, down = FRAME_MM[0] / 2 - LINE_MM / 2, FRAME_MM[1] / 2 - LINE_MM / 2
    beside = FIELD_MM[0] - 3.2
    _fill(page, across, beside, LINE_MM, 0.4, "black")
    _fill(page, beside, down, 0.4, LINE_MM, "black")
    for end in (0, LINE_MM - 0.3):
        _fill(page, across + end, beside - 1.2, 0.3, 2.8, "black")
        _fill(page, beside - 1.2, down + end, 2.8, 0.3, "black")


def _fill(page, left, top, width, height, colour):
    """A filled shape without a line around it, which would add its width to every side."""
    page.add_patch(Rectangle((left, top), width, height, facecolor=colour, linewidth=0))


def _write(page, left, base, text, size=7.5):
    page.text(left, base, text, fontsize=size, va="baseline", color="0.2")
