"""The drawing of lesson 2: pieces laid end to end, each with the longest word that fits."""

from kitchenmath.figures.frame import Picture
from kitchenmath.figures.mixing import draw_pieces, move_pieces
from kitchenmath.panels.mixing import dough_water


def test_pieces_lie_end_to_end_and_thin_ones_carry_no_word():
    """5 + 90 + 5 of a scale of 100: the middle one begins at 5 and is named, the first is not.

    The third has a shorter word to fall back on, and that one fits: 0.018 + 0.015 < 0.05.
    """
    names = [["rest", "flour", ("salt", "5")]]
    artists = draw_pieces(Picture().axes(), [[5, 90, 5]], names, "g", 100)
    move_pieces(artists, [[5, 90, 5]], names, ["100 g"])

    assert [0, 5, 95] == [piece.get_x() for piece in artists["pieces"][0]]
    assert ["", "flour", "5"] == [word.get_text() for word in artists["words"][0]]
    assert "100 g" == artists["labels"][0].get_text()


def test_the_friction_is_written_on_its_piece():
    """9 of an axis of 95 has room for a figure, not for the word."""
    assert dough_water(25.0, 21, 9)["names"][1][2] == ("friction", "9")
