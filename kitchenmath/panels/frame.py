"""What all panels share: controls that wrap on a phone, one refresh, a sentence and a picture."""

import base64
import html
import re

try:
    import ipywidgets as widgets
except ImportError as missing:
    raise ImportError(
        "Panels need ipywidgets: start the lessons with `python3 lessons`, which sets it up."
    ) from missing

from kitchenmath.figures.frame import Picture

WIDE = "640px"
# A row takes the panel's width less its own margins; of "100%" the margins would stick out.
ROW = {"width": "auto", "max_width": WIDE}
# Words of a panel are as large as the words around it, also where a page names no size.
TEXT = "font-size:var(--jp-content-font-size1, 14px);line-height:1.5"
# Sliders begin below each other, and go below their words where a phone has no room beside them.
# Where a reader's own colours are forced, grounds go: lines must show what can be moved or pressed.
LOOKS = """<style>
.kitchen .widget-hslider { flex-flow: row wrap; height: auto; }
.kitchen .widget-hslider .widget-label {
  flex: 0 0 230px; height: auto; line-height: 1.4; text-align: left; white-space: normal;
}
.kitchen .widget-hslider .slider-container { flex: 1 1 190px; }
.kitchen .widget-upload { width: auto; }
/* What a cell prints wraps at words too: a page that breaks it anywhere cuts them in two. */
.jp-OutputArea .jp-RenderedText pre { word-break: normal; overflow-wrap: break-word; }
@media (forced-colors: active) {
  .kitchen .noUi-target, .kitchen button, .kitchen .progress, .kitchen textarea {
    border: 1px solid ButtonBorder;
  }
}
</style>"""


def slider(label, low, high, step, value):
    """A slider with its unit in the label; whole steps stay whole numbers, cents stay cents.

    Parameters
    ----------
    label : str
    low, high, step, value : int or float

    Returns
    -------
    ipywidgets slider
    """
    whole = isinstance(step, int)
    kind = widgets.IntSlider if whole else widgets.FloatSlider
    tenths = "$" not in label and round(10.0 * step, 6).is_integer()
    return kind(
        value=value,
        min=low,
        max=high,
        step=step,
        readout_format="d" if whole else ".1f" if tenths else ".2f",
        description=label,
        style={"description_width": "initial"},
        layout=ROW,
    )


def choice(label, options, value=None):
    """A list to choose from.

    Parameters
    ----------
    label : str
    options : list of str
    value : str, optional

    Returns
    -------
    ipywidgets Dropdown
    """
    return widgets.Dropdown(
        options=list(options),
        value=value or next(iter(options)),
        description=label,
        style={"description_width": "initial"},
        layout=ROW,
    )


def wire(controls, compute, drawing, height=2.6):
    """A panel: whenever a control moves, compute anew, say it, and move what is drawn.

    Parameters
    ----------
    controls : dict of str to widget
        By the name under which `compute` takes the value.
    compute : callable
        Gives a dict: "sentence" is what the panel says, the rest is what the drawing shows.
    drawing : callable
        Takes a Picture; gives an object whose `show` moves its artists to new numbers.
    height : float [inch]
        Of the picture, which is 4.3 wide.

    Returns
    -------
    ipywidgets VBox
        With attributes `controls`, `words` and `picture` for whoever wants to operate it, and
        `drawing`, the Picture behind the bytes.
    """
    words, shown = widgets.HTML(), widgets.HTML(layout={"width": "auto", "max_width": WIDE})
    picture = Picture(height=height)
    drawn = drawing(picture)

    def refresh(_=None):
        found = dict(compute(**{name: control.value for name, control in controls.items()}))
        words.value = said(together(found.pop("sentence")))
        drawn.show(**found)
        shown.value = as_image(picture)

    for control in controls.values():
        control.observe(refresh, "value")
    refresh()
    # The picture stays where it is when the words grow by a line, and the slider is close to it.
    # A tall one would push the words off the screen.
    parts = [words, shown] if picture.tall else [shown, words]
    panel = below_each_other([*controls.values(), *parts])
    panel.controls, panel.words, panel.picture, panel.drawing = controls, words, shown, picture
    return panel


def as_image(picture):
    """A picture as HTML, as wide as there is room; who cannot see it hears the words in it.

    Parameters
    ----------
    picture : Picture

    Returns
    -------
    str
    """
    width, height = picture.figure.get_size_inches() * 100
    data = base64.b64encode(picture.png()).decode("ascii")
    # Its own measures keep the page from jumping while a new one is read.
    return (
        f'<img alt="{html.escape("Picture: " + picture.in_words())}" width="{width:.0f}" '
        f'height="{height:.0f}" style="width:100%;height:auto" src="data:image/png;base64,{data}">'
    )


def below_each_other(parts, wide=WIDE):
    """The parts of a panel from top to bottom, with the looks that all panels share.

    Parameters
    ----------
    parts : list of widget
    wide : str
        How wide it may become.

    Returns
    -------
    ipywidgets VBox
    """
    return Panel(parts, wide)


class Panel(widgets.VBox):
    """The same as a class: what a panel remembers are its attributes, what it does its methods.

    Parameters
    ----------
    parts : list of widget
    wide : str
        How wide it may become.
    """

    def __init__(self, parts, wide=WIDE):
        looks = widgets.HTML(LOOKS, layout={"display": "none"})
        super().__init__([looks, *parts], layout={"max_width": wide})
        self.add_class("kitchen")


def together(sentence):
    """A sentence whose numbers stay on one line with their units, however narrow the page.

    Parameters
    ----------
    sentence : str

    Returns
    -------
    str
        With no-break spaces between a number and the word or sign after it, and after "±".
    """
    return re.sub(r"(?<=\d) (?=[^\W\d_]|[°%])|(?<=±) (?=\d)", "\u00a0", sentence)


def said(sentence):
    """A sentence as HTML: escaped, wrapped, read out when it changes.

    Parameters
    ----------
    sentence : str
        Line ends are kept.

    Returns
    -------
    str
    """
    lines = "<br>".join(html.escape(sentence).splitlines())
    return f'<div role="status" style="{TEXT}">{lines}</div>'
