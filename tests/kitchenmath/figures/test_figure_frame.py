"""What all drawings share: words drawn from outlines stand where matplotlib's own text would."""

import numpy as np
import pytest
from matplotlib.text import Text

from kitchenmath.figures.frame import Picture, Words


def ink(kind, text, **how):
    """Left, right, top and bottom of what is dark in a picture with one line of text [dots]."""
    picture = Picture(3, 1)
    picture.axes(0, 0, 1, 1).set_axis_off()
    picture.figure.axes[0].add_artist(kind(0.5, 0.5, text, va="center", fontsize=10, **how))
    picture.canvas.draw()
    dark = np.asarray(picture.canvas.buffer_rgba())[..., 0] < 128
    rows, columns = np.nonzero(dark.any(axis=1))[0], np.nonzero(dark.any(axis=0))[0]
    return columns[0], columns[-1], rows[0], rows[-1]


@pytest.mark.parametrize("ha", ["left", "center", "right"])
@pytest.mark.parametrize("text", ["knead the dough ", " sear", "cook 1, velouté"])
@pytest.mark.parametrize("weight", ["normal", "bold"])
def test_words_stand_where_text_stands(ha, text, weight):
    """To two dots at 150 an inch: matplotlib moves its letters to whole dots. Blanks count."""
    how = {"ha": ha, "fontweight": weight}

    assert ink(Text, text, **how) == pytest.approx(ink(Words, text, **how), abs=2)


def test_hidden_words_leave_no_ink():
    with pytest.raises(IndexError):
        ink(Words, "plate", visible=False)


def test_words_clear_the_line_behind_them():
    """A white box, as under a lane's name, covers a dark one behind."""
    picture = Picture(3, 1)
    axes = picture.axes(0, 0, 1, 1)
    axes.axhline(0.5, color="black", linewidth=1)
    box = {"facecolor": "white", "edgecolor": "none", "pad": 3}
    axes.add_artist(Words(0.5, 0.5, "·", color="white", va="center", ha="center", bbox=box))
    picture.canvas.draw()
    middle = np.asarray(picture.canvas.buffer_rgba())[:, 225, 0]

    assert middle[60:90].min() > 200
