"""Cut cards to print at true size and lay beside the board.

The one module of the cuts that needs matplotlib. Lengths here are plain millimetres on paper,
counted from the top left corner.
"""

from dataclasses import dataclass
from pathlib import Path

from kitchenmath.cuts.named import CUTS, Cut, cut_named
from kitchenmath.errors import OutOfRange
from kitchenmath.figures.card_shapes import MM_PER_INCH, views_of, words_of
from kitchenmath.units.door import one_of
from kitchenmath.units.saying import figures

try:
    import matplotlib
    from matplotlib import style
    from matplotlib.figure import Figure
    from matplotlib.font_manager import FontProperties
    from matplotlib.patches import Polygon
    from matplotlib.textpath import TextPath
except ModuleNotFoundError as missing:
    raise ModuleNotFoundError(
        "Cut cards need matplotlib: start the lessons with `python3 lessons`, which sets it up."
    ) from missing

__all__ = ["PAPERS_MM", "card_figure", "cut_card"]

PAPERS_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1
MARGIN_MM = 14  # printers leave up to 6 mm white; common practice
FOOT_MM = 34  # from the lower edge of the page to the first line of its foot
VIEW_MM, BETWEEN_VIEWS_MM = 8, 2.5  # the narrowest view has room for its caption
BETWEEN_CELLS_MM, BETWEEN_ROWS_MM = 5, 7
MM_PER_POINT = MM_PER_INCH / 72
CAPITALS, LINE_STEP = 0.73, 1.35  # a capital of DejaVu Sans, and line to line, in font sizes
PIECE, SOFT, LINE = "0.35", "0.35", "0.75"  # greys, which every printer has

HEADINGS = {
    "Cubes": ("cube",),
    "Sticks": ("stick",),
    "Slices, leaves and turned": ("flat", "slice", "shred", "turned"),
}
HOW_TO_PRINT = "Print at 100 %, measure the bar: if it is not 100 mm long, no cut here is true."
CONVENTION = (
    "These millimetres are a teaching convention. No trade standard fixes them, and sources "
    "disagree:\nwhat your kitchen asks for comes first."
)
CAUTION = (
    "Knives: a sharp blade, a board that cannot slip, fingertips curled behind the knuckles, the "
    "flat side down.\nLook, then cut; never measure while the blade moves. Keep the card beside "
    "the board, off the food.\nThe rules of the kitchen you stand in come before this card."
)
RC = {"pdf.compression": 0, "pdf.fonttype": 42, "font.family": "DejaVu Sans"}


def cut_card(paper="A4", path="cut-card.pdf", cuts=None):
    """Write a page with every cut drawn at true size, from above and from the side.

    True only when the printer does not fit the page to the paper: the card carries a bar of
    100 mm and one of 4 in to measure.

    Parameters
    ----------
    paper : str
        "A4" or "Letter".
    path : str or Path
        Where the PDF goes; what is there is replaced.
    cuts : sequence of str or Cut, optional
        Which cuts, also some of your own; else all of `CUTS`.

    Returns
    -------
    Path

    Raises
    ------
    UnknownName
        For another paper, or a cut that is not known.
    OutOfRange
        When the cuts do not fit on one page, or one lacks a size that it needs.

    Notes
    -----
    The same cuts give the same bytes on every run, so the file can lie in git. It is not
    compressed, so that a test can read the lengths back out of it.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     card = cut_card(paper="A4", path=f"{folder}/card.pdf", cuts=["brunoise", "julienne"])
    ...     card.name
    'card.pdf'
    """
    # No date and no version inside: the same card is the same file.
    nameless = {"CreationDate": None, "Creator": None, "Producer": None}
    figure = card_figure(paper, cuts)
    with style.context("default"), matplotlib.rc_context(RC):
        figure.savefig(
            path,
            format="pdf",
            facecolor="none",
            metadata={"Title": "Cut card, true size", **nameless},
        )
    return Path(path)


def card_figure(paper="A4", cuts=None):
    """The cut card as a figure, to look at; only the PDF of `cut_card` is true to size.

    Parameters
    ----------
    paper : str
        "A4" or "Letter".
    cuts : sequence of str or Cut, optional

    Returns
    -------
    matplotlib.figure.Figure

    Raises
    ------
    UnknownName
    OutOfRange
        When the cuts do not fit on one page, or one lacks a size that it needs.
    """
    width_mm, height_mm = PAPERS_MM[one_of(paper, PAPERS_MM, "paper")]
    cuts = [cuts] if isinstance(cuts, str | Cut) else CUTS if cuts is None else cuts
    chosen = [cut_named(cut) for cut in cuts]
    with style.context("default"), matplotlib.rc_context(RC):
        figure = Figure(figsize=(width_mm / MM_PER_INCH, height_mm / MM_PER_INCH))
        page = figure.add_axes((0, 0, 1, 1), xlim=(0, width_mm), ylim=(height_mm, 0))
        page.set_axis_off()
        _draw_head(page)
        bottom_mm = _draw_cuts(page, chosen, width_mm - 2 * MARGIN_MM)
        foot_mm = height_mm - FOOT_MM
        if bottom_mm > foot_mm:
            raise OutOfRange(
                f"cuts: {len(chosen)} cuts need {figures(bottom_mm - foot_mm, 2)} mm more than "
                f"a page of {paper} has; make two cards."
            )
        _write(page, MARGIN_MM, foot_mm, CONVENTION, 8)
        _write(page, MARGIN_MM, foot_mm + 9, CAUTION, 8)
    return figure


def _draw_head(page):
    """Title, how to print, and the two bars that prove the scale."""
    _write(page, MARGIN_MM, 13, "Cut card, true size", 15, weight="bold")
    _write(page, MARGIN_MM, 21.5, HOW_TO_PRINT, 9)
    _draw_bar(page, 30, 100, [f"{i}" for i in range(0, 91, 10)] + ["100 mm"])
    _draw_bar(page, 39, 4 * MM_PER_INCH, ["0", "1", "2", "3", "4 in"])


def _draw_bar(page, top_mm, length_mm, labels):
    """A bar of true length with a tick and a label at every step."""
    _fill(page, MARGIN_MM, top_mm, _corners(length_mm, 1.2), "black")
    for i, label in enumerate(labels):
        at_mm = MARGIN_MM + length_mm * i / (len(labels) - 1)
        _fill(page, at_mm - 0.1, top_mm - 1.5, _corners(0.2, 1.5), "black")
        _write(page, at_mm, top_mm + 1.9, label, 7, ha="center")


def _corners(width_mm, height_mm):
    return [(0, 0), (width_mm, 0), (width_mm, height_mm), (0, height_mm)]


def _draw_cuts(page, cuts, room_mm):
    """All cuts in rows below their headings; gives the lower edge of the last row."""
    top_mm = 49.0
    for heading, shapes in HEADINGS.items():
        cells = [_Cell.of(cut) for cut in cuts if cut.shape in shapes]
        if not cells:
            continue
        widest = max(cells, key=lambda cell: cell.width_mm)
        if widest.width_mm > room_mm:
            raise OutOfRange(
                f"cuts: {widest.name} needs {figures(widest.width_mm)} mm, and the page has "
                f"{figures(room_mm)} mm across; leave it out."
            )
        _fill(page, MARGIN_MM, top_mm, _corners(room_mm, 0.2), LINE)
        _write(page, MARGIN_MM, top_mm + 1.5, heading, 9, color=SOFT)
        top_mm += 8
        for row in _rows(cells, room_mm):
            left_mm = MARGIN_MM
            for cell in row:
                cell.draw(page, left_mm, top_mm)
                left_mm += cell.width_mm + BETWEEN_CELLS_MM
            top_mm += max(cell.height_mm for cell in row) + BETWEEN_ROWS_MM
    return top_mm


def _rows(cells, room_mm):
    """Cells in rows, as many to a row as fit."""
    rows, used_mm = [[]], 0.0
    for cell in cells:
        if rows[-1] and used_mm + cell.width_mm > room_mm:
            rows.append([])
            used_mm = 0.0
        rows[-1].append(cell)
        used_mm += cell.width_mm + BETWEEN_CELLS_MM
    return rows


@dataclass(frozen=True)
class _Cell:
    """One cut on the card: its name, its sizes, and below them its views side by side."""

    name: str
    words: list
    views: tuple

    @classmethod
    def of(cls, cut):
        return cls(cut.name, words_of(cut), views_of(cut))

    @property
    def width_mm(self):
        views_mm = sum(max(VIEW_MM, view.width_mm) for view in self.views)
        views_mm += BETWEEN_VIEWS_MM * (len(self.views) - 1)
        lines_mm = [_text_width_mm(line, 7, "normal") for line in self.words]
        return max(views_mm, _text_width_mm(self.name, 8.5, "bold"), *lines_mm)

    @property
    def text_mm(self):
        """How high the name and the sizes are."""
        return 4.4 + LINE_STEP * 7 * MM_PER_POINT * len(self.words)

    @property
    def height_mm(self):
        return self.text_mm + max(view.height_mm for view in self.views)

    def draw(self, page, left_mm, top_mm):
        _write(page, left_mm, top_mm, self.name, 8.5, weight="bold")
        _write(page, left_mm, top_mm + 4, "\n".join(self.words), 7)
        for view in self.views:
            for outline in view.outlines:
                _fill(page, left_mm, top_mm + self.text_mm, outline, PIECE)
            below_mm = top_mm + self.text_mm + view.height_mm + 0.8
            _write(page, left_mm, below_mm, view.caption, 5.5, color=SOFT)
            left_mm += max(VIEW_MM, view.width_mm) + BETWEEN_VIEWS_MM


def _fill(page, left_mm, top_mm, outline, color):
    """A filled shape without a line around it, which would add its width to every side."""
    corners = [(left_mm + x, top_mm + y) for x, y in outline]
    page.add_patch(Polygon(corners, closed=True, facecolor=color, linewidth=0))


def _write(page, left_mm, top_mm, text, size, **how):
    """Lines of text below `top_mm`, each on its base line: accents and tails move nothing."""
    for number, line in enumerate(text.split("\n")):
        base_mm = top_mm + (CAPITALS + LINE_STEP * number) * size * MM_PER_POINT
        page.text(left_mm, base_mm, line, fontsize=size, va="baseline", **how)


def _text_width_mm(text, size, weight):
    outline = TextPath((0, 0), text, size=size, prop=FontProperties(weight=weight))
    return outline.get_extents().x1 * MM_PER_POINT
