"""A recipe's card as a PDF of A5 pages: plain, in one column, to hang beside the bench.

Lengths are plain millimetres on paper, counted from the top left corner.
"""

from functools import lru_cache
from pathlib import Path

from kitchenmath.figures.card_shapes import MM_PER_INCH
from kitchenmath.recipes.card import ALLERGENS, Card

try:
    import matplotlib
    from matplotlib import style
    from matplotlib.backends.backend_pdf import PdfPages
    from matplotlib.figure import Figure
    from matplotlib.font_manager import FontProperties
    from matplotlib.textpath import TextPath
except ModuleNotFoundError as missing:
    raise ModuleNotFoundError(
        "Recipe cards need matplotlib: start the lessons with `python3 lessons`, which sets it up."
    ) from missing

__all__ = ["recipe_card"]

A5_MM = (148.0, 210.0)  # ISO 216
MARGIN_MM = 12
MM_PER_POINT = MM_PER_INCH / 72
LINE_STEP = 1.4  # line to line, in font sizes
AMOUNT_MM, PERCENT_MM = 26, 14  # columns of an ingredient's line
RC = {"pdf.compression": 0, "pdf.fonttype": 42, "font.family": "DejaVu Sans"}


def recipe_card(card: Card, path="recipe-card.pdf"):
    """Write a card as PDF, as many A5 pages as it takes.

    Parameters
    ----------
    card : Card
        From `kitchenmath.recipes.card_of`.
    path : str or Path
        What is there is replaced.

    Returns
    -------
    Path

    Notes
    -----
    The same card gives the same bytes on every run.
    """
    nameless = {"CreationDate": None, "Creator": None, "Producer": None, "Title": card.title}
    plain = style.context("default"), matplotlib.rc_context(RC)
    with plain[0], plain[1], PdfPages(path, metadata=nameless) as pages:
        for figure in _Pages(card).figures:
            pages.savefig(figure, facecolor="none")
    return Path(path)


class _Pages:
    """Pages that are filled from the top; a line that has no room begins the next one."""

    def __init__(self, card):
        self.figures, self.left_mm, self.room_mm = [], MARGIN_MM, A5_MM[0] - 2 * MARGIN_MM
        self._begin()
        self._text(card.title, 15, weight="bold")
        self._text(card.makes, 9)
        for heading, rows in card.groups:
            self._heading(heading or "Ingredients")
            for row in rows:
                self._row(row)
        if card.steps:
            self._heading("Method")
            for place, step in enumerate(card.steps, start=1):
                self._text(f"{place}.  {step}", 9)
        self._heading("Allergens")
        self._text(card.allergens, 9)
        self._text(ALLERGENS, 7)
        if card.costs:
            self._heading("Cost")
            for what, cost in card.costs:
                self._pair(what, cost)
        if card.orders:
            self._heading("To order")
            for line in card.orders:
                self._text(line, 9)

    def _begin(self):
        width_mm, height_mm = A5_MM
        figure = Figure(figsize=(width_mm / MM_PER_INCH, height_mm / MM_PER_INCH))
        self.page = figure.add_axes((0, 0, 1, 1), xlim=(0, width_mm), ylim=(height_mm, 0))
        self.page.set_axis_off()
        self.figures.append(figure)
        self.down_mm = float(MARGIN_MM)

    def _take(self, height_mm):
        """Where a block of this height goes; on a new page where this one is full."""
        if self.down_mm + height_mm > A5_MM[1] - MARGIN_MM:
            self._begin()
        top_mm, self.down_mm = self.down_mm, self.down_mm + height_mm
        return top_mm

    def _heading(self, words):
        self._take(2)
        self._text(words, 10.5, weight="bold", keep_mm=8)

    def _text(self, words, size, weight="normal", keep_mm=0.0):
        for line in _wrapped(words, size, weight, self.room_mm):
            top_mm = self._take(_height_mm(size) + keep_mm)
            self.down_mm -= keep_mm  # room that the line below a heading will take
            self._write(self.left_mm, top_mm, line, size, weight)

    def _row(self, row):
        name_mm = self.room_mm - AMOUNT_MM - 3 - (PERCENT_MM if row.percent else 0)
        names = [(line, 9) for line in _wrapped(row.name, 9, "normal", name_mm)]
        names += [(line, 7) for line in _wrapped(row.remark, 7, "normal", name_mm)]
        amounts = [(line, 9) for line in _wrapped(row.amount, 9, "normal", AMOUNT_MM)]
        amounts += [(line, 7) for line in _wrapped(row.other, 7, "normal", AMOUNT_MM)]
        tall_mm = max(sum(_height_mm(size) for _, size in lines) for lines in (names, amounts))
        top_mm = self._take(tall_mm + 0.6)
        self._column(self.left_mm + AMOUNT_MM, top_mm, amounts, ha="right")
        self._column(self.left_mm + AMOUNT_MM + 3, top_mm, names)
        self._write(self.left_mm + self.room_mm, top_mm, row.percent, 9, ha="right")

    def _column(self, at_mm, top_mm, lines, **how):
        for line, size in lines:
            self._write(at_mm, top_mm, line, size, **how)
            top_mm += _height_mm(size)

    def _pair(self, what, cost):
        lines = [(line, 9) for line in _wrapped(cost, 9, "normal", 0.5 * self.room_mm)]
        top_mm = self._take(max(1, len(lines)) * _height_mm(9))
        self._write(self.left_mm, top_mm, what, 9)
        self._column(self.left_mm + self.room_mm, top_mm, lines, ha="right")

    def _write(self, at_mm, top_mm, words, size, weight="normal", **how):
        base_mm = top_mm + size * MM_PER_POINT
        self.page.text(
            at_mm, base_mm, words, fontsize=size, weight=weight, va="baseline", parse_math=False,
            **how,
        )  # fmt: skip


def _height_mm(size):
    return LINE_STEP * size * MM_PER_POINT


def _wrapped(words, size, weight, room_mm):
    """Lines that are no wider than the room; a word that alone is wider is broken."""
    lines = []
    for word in words.split():
        while len(word) > 1 and _wide_mm(word, size, weight) > room_mm:
            fits = max(1, int(len(word) * room_mm / _wide_mm(word, size, weight)))
            lines.append(word[:fits])
            word = word[fits:]
        if lines and _wide_mm(f"{lines[-1]} {word}", size, weight) <= room_mm:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


@lru_cache(maxsize=4096)
def _wide_mm(words, size, weight):
    if not words:
        return 0.0
    outline = TextPath((0, 0), words, size=size, prop=FontProperties(weight=weight))
    return outline.get_extents().x1 * MM_PER_POINT
