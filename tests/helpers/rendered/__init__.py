"""Photos of a tray whose truth is known: a small ray caster, for tests and measuring only.

It shares no code with what it judges, and works otherwise on purpose. Its mat is drawn from the
layout written down here anew; its lens is the division model, not Brown's; its tone curve is a
phone's bent S, not sRGB's; its pieces are irregular solids cut by planes, not boxes.
Everything in it is invented; colours of food and mat are rough values by eye.
"""

from tests.helpers.rendered.picture import photo
from tests.helpers.rendered.scene import Piece, Scene, make_piece

__all__ = ["Piece", "Scene", "make_piece", "photo"]
