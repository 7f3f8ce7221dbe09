"""The panel of lesson 3 on a photo: choose one, see the outlines, the sizes and the verdict."""

import sys

import ipywidgets as widgets

from kitchenmath.cuts import CUTS
from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.figures.board_mat import board_mat
from kitchenmath.figures.frame import Picture
from kitchenmath.figures.sizes import draw_sizes
from kitchenmath.panels.frame import ROW, below_each_other, choice, said, together
from kitchenmath.photo import board_evidence, sizes_seen
from kitchenmath.photo.opening import LARGEST_BYTES
from kitchenmath.photo.vision import IN_THE_BROWSER
from kitchenmath.photo.words import CAUTIONS, RENDERED
from kitchenmath.typed.lists import amounts_in

MEASURABLE = tuple(name for name in CUTS if sizes_seen(name))
PAPERS = ("A4", "Letter")
WORDY = {"description_width": "initial"}


def tray_photo(photo, cut, lines):
    """What a photo says about a tray, in words and numbers.

    Parameters
    ----------
    photo : bytes or str
        The file, or where it lies.
    cut : str
    lines : str
        The mat's two lines as a ruler shows them, such as "100, 99.5 mm"; empty when nobody
        measured them.

    Returns
    -------
    dict
        `picture` (PNG), `sentence`, `table`, and `sizes` (arguments of `draw_sizes`) or None.

    Raises
    ------
    Unreadable
    OutOfRange
    NotHere
    """
    found = board_evidence(photo, cut, ruler_mm=ruled(lines))
    sentence = "\n".join(found.sentences).replace(". ", ".\n")
    sizes = None
    if found.verdict:
        judged = found.verdict.judgement
        sizes = {
            "sizes_mm": list(found.verdict.sizes_mm),
            "target_mm": judged.target.magnitude,
            "tolerance_mm": judged.tolerance.magnitude,
            "what": found.verdict.dimension,
        }
        sentence += f"\nAs readings, to copy: {found.verdict.readings}"
    table = "\n".join(found.table)
    return {"picture": found.picture_png, "sentence": sentence, "table": table, "sizes": sizes}


def ruled(lines):
    """The two lines in mm as typed, or None where nothing was.

    Parameters
    ----------
    lines : str

    Returns
    -------
    tuple of float or None

    Raises
    ------
    Unreadable
        Unless there are two lengths in mm.

    Examples
    --------
    >>> ruled("100, 99.5 mm"), ruled("")
    ((100.0, 99.5), None)
    """
    if not lines.strip():
        return None
    typed = amounts_in(lines)
    if len(typed) != 2 or any(unit not in ("", "mm") for _, unit in typed):
        raise Unreadable(f"the two lines: “{lines}” came; type both in millimetres: 100, 99.5 mm.")
    return tuple(float(number) for number, _ in typed)


def tray_photo_panel():
    """Choose a photo of a tray on the mat; it is measured where the kit runs, and sent nowhere.

    Returns
    -------
    ipywidgets VBox
        With attributes `controls`, `words`, `picture`, `sizes`, `table` and `measure`.
    """
    if sys.platform == "emscripten":
        return below_each_other([widgets.HTML(said(IN_THE_BROWSER))])
    return _Panel().widget


class _Panel:
    """The panel's parts, and what its two buttons do."""

    def __init__(self):
        self.upload = widgets.FileUpload(
            accept=".jpg,.jpeg,.png", multiple=False, description="Choose a photo"
        )
        self.path = widgets.Text(
            description="or its place", placeholder="Pictures/tray.jpg", style=WORDY, layout=ROW
        )
        self.cut = choice("Named cut", MEASURABLE, "brunoise")
        self.lines = widgets.Text(
            description="The mat's two lines (mm)", placeholder="100, 100", style=WORDY, layout=ROW
        )
        self.paper = choice("Paper", PAPERS)
        self.words = widgets.HTML()
        self.picture, self.sizes = (
            widgets.Image(
                format="png",
                layout={"width": "100%", "max_width": wide, "height": "auto", "display": "none"},
            )
            for wide in ("640px", "420px")
        )
        self.table = widgets.HTML()
        self.drawing = Picture(height=2.6)
        self.axes = self.drawing.axes(left=0.13, bottom=0.22, top=0.96)
        measure = self._button("Measure the photo", self.measured)
        print_mat = self._button("Make the mat to print", self.printed)
        parts = [self.paper, print_mat, self.upload, self.path, self.cut, self.lines, measure]
        self.say(f"One photo, under 9 MB. It stays on this computer.\n{CAUTIONS}\n{RENDERED}")
        # The tray and its sizes side by side; on a phone one below the other, and then the words.
        tray = widgets.HBox(
            [self.picture, self.sizes],
            layout={"flex_flow": "row wrap", "align_items": "flex-start"},
        )
        told = below_each_other([self.words, self.table])
        self.widget = below_each_other([below_each_other(parts), tray, told], "1080px")
        self.widget.controls = {
            "upload": self.upload, "path": self.path, "cut": self.cut, "lines": self.lines,
            "paper": self.paper,
        }  # fmt: skip
        for name in ("words", "picture", "sizes", "table"):
            setattr(self.widget, name, getattr(self, name))
        self.widget.measure, self.widget.print_mat = measure, print_mat

    def _button(self, label, do):
        button = widgets.Button(description=label, layout={"width": "auto", "max_width": "320px"})

        def pressed(_):
            button.disabled = True
            try:
                do()
            except KitchenError as error:
                self.clear()
                self.say(str(error))
            finally:
                button.disabled = False

        button.on_click(pressed)
        return button

    def say(self, sentence):
        self.words.value = said(together(sentence))

    def clear(self):
        self.table.value = ""
        for image in (self.picture, self.sizes):
            image.layout.display = "none"

    def printed(self):
        file = board_mat(self.paper.value, "board-mat.pdf")
        self.say(
            f"Written: {file.name}, beside this lesson. Print it in colour at 100 %, and lay a "
            "ruler on both lines."
        )

    def measured(self):
        photo = self._photo()
        self.clear()
        self.say("Measuring: this takes a few seconds.")
        found = tray_photo(photo, self.cut.value, self.lines.value)
        self.picture.value, self.picture.layout.display = found["picture"], None
        if found["sizes"]:
            draw_sizes(self.axes, **found["sizes"])
            self.sizes.value, self.sizes.layout.display = self.drawing.png(), None
        self.table.value = f"<pre>{found['table']}</pre>"
        self.say(found["sentence"])

    def _photo(self):
        """The bytes that were chosen, or else the path that was typed."""
        if self.path.value.strip():
            return self.path.value.strip()
        if not self.upload.value:
            raise Unreadable("photo: choose one, or type its place on this computer.")
        data = bytes(self.upload.value[0]["content"])
        if len(data) > LARGEST_BYTES:
            raise Unreadable("photo: over 9 MB. Save it smaller, or type its place instead.")
        return data
