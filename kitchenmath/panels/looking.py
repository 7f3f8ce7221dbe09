"""Panels for the eye: a picture, a guess, then the measure, and how good the eye is."""

from dataclasses import dataclass, field
from statistics import mean

import ipywidgets as widgets

from kitchenmath.cuts import CUTS
from kitchenmath.figures.cutting import Cubes, Tray
from kitchenmath.figures.frame import Picture
from kitchenmath.figures.measuring import Spoon
from kitchenmath.panels.frame import WIDE, as_image, below_each_other, said, slider, together
from kitchenmath.units.door import one_of

# All invented. The edge of each piece, in percent of the named cut:
PIECES_PERCENT = (115, 100, 85, 130, 95, 110, 75, 100, 120, 90, 105, 140)
# How full each spoon is, in percent of its volume:
SPOONS_PERCENT = (50, 25, 80, 35, 65, 15, 90, 45, 70, 30)
# The edges on each tray [mm]; on size is the lesson's own 3 mm within 0.5 mm.
TRAYS_MM = (
    (2.9, 3.2, 3.0, 3.7, 2.8, 3.1, 3.0, 2.4, 3.3, 3.0),
    (3.1, 3.0, 2.8, 3.2, 3.3, 2.9, 3.0, 3.2, 2.7, 3.1),
    (3.6, 2.3, 3.1, 3.8, 3.0, 2.6, 3.7, 3.2, 2.2, 3.0),
    (3.0, 3.6, 2.9, 3.1, 2.7, 3.2, 3.0, 3.4, 2.9, 3.1),
    (2.4, 2.9, 3.7, 3.0, 3.8, 2.3, 3.1, 2.6, 3.6, 3.2),
)
TARGET_MM, TOLERANCE_MM, ALLOWED = 3.0, 0.5, 1


@dataclass
class Eye:
    """What was guessed and what was measured, look by look."""

    looks: list = field(default_factory=list)

    def say(self, guess, truth):
        """Keep one look."""
        self.looks.append((guess, truth))

    @property
    def lean(self):
        """By how much the guesses are too large on average; below 0 they are too small."""
        return mean(guess - truth for guess, truth in self.looks)

    @property
    def off(self):
        """How far a guess is off on average, to either side."""
        return mean(abs(guess - truth) for guess, truth in self.looks)

    def in_words(self, counted_in, whole=None):
        """How good the eye is, and to which side it errs.

        `counted_in` names what the amounts are counted in; with a `whole` they are said in
        percent of it.
        """
        scale, counted_in = (100 / whole, "%") if whole else (1, counted_in)
        number, lean, off = len(self.looks), scale * self.lean, scale * self.off
        side = f"{abs(lean):.1f} {counted_in} {_too(lean)}" if abs(lean) >= 0.05 else "neither way"
        looks = "look" if number == 1 else "looks"
        return f"After {number} {looks} you are {off:.1f} {counted_in} off; on average {side}."


@dataclass(frozen=True)
class Subject:
    """What an eye is asked: the question, the slider, what is drawn, and what is measured."""

    ask: str
    guess: tuple  # label, low, high, step, start
    unit: str
    counted_in: str
    drawing: callable
    height: float
    shown: tuple  # what `show` of the drawing takes, one dict a look
    truths: tuple
    note: callable
    whole: float = None  # what a guess is off, in percent of this
    opened: dict = field(default_factory=dict)  # what the drawing shows besides, once it is said


def _cube_subject():
    edge_mm = CUTS["brunoise"].thinnest.to("mm").magnitude
    words = (f"brunoise, {edge_mm:g} mm", "how wide is this one?")
    return Subject(
        ask=f"On the left is a brunoise of {edge_mm:g} mm. How wide is the piece on the right?",
        guess=("I say (mm)", 2.0, 4.5, 0.1, 3.0),
        unit=" mm",
        counted_in="mm",
        whole=edge_mm,
        drawing=Cubes,
        height=2.2,
        shown=tuple({"shares": (1, percent / 100), "words": words} for percent in PIECES_PERCENT),
        truths=tuple(edge_mm * percent / 100 for percent in PIECES_PERCENT),
        note=lambda truth: (
            f"It weighs {(truth / edge_mm) ** 3:.2f} times as much as the named cut, and takes up "
            f"to {(truth / edge_mm) ** 2:.2f} times as long (an estimate)."
        ),
    )


def _spoon_subject():
    return Subject(
        ask="A round spoon, cut through. How full is it, of what it holds level?",
        guess=("I say (% full)", 5, 100, 5, 50),
        unit=" % full",
        counted_in="points",
        drawing=Spoon,
        height=1.5,
        shown=tuple({"full_percent": percent} for percent in SPOONS_PERCENT),
        truths=SPOONS_PERCENT,
        note=lambda truth: "Half the depth is less than a third of the spoon: the rim holds most.",
    )


def _tray_subject():
    off = tuple(sum(abs(mm - TARGET_MM) > TOLERANCE_MM + 1e-9 for mm in tray) for tray in TRAYS_MM)
    return Subject(
        ask=f"Ten cubes that should be {TARGET_MM:g} mm. How many are off by more than "
        f"{TOLERANCE_MM:g} mm? A tray with {ALLOWED} or none passes.",
        guess=("I say (pieces off size)", 0, 10, 1, 2),
        unit="",
        counted_in="pieces",
        drawing=lambda picture: Tray(picture, most_mm=4.8),
        height=2.5,
        shown=tuple(
            {"sizes_mm": tray, "target_mm": TARGET_MM, "tolerance_mm": None} for tray in TRAYS_MM
        ),
        truths=off,
        opened={"tolerance_mm": TOLERANCE_MM},
        note=lambda truth: "The tray passes." if truth <= ALLOWED else "The tray does not pass.",
    )


SUBJECTS = {"cube": _cube_subject, "spoon": _spoon_subject, "tray": _tray_subject}


def eye_panel(subject):
    """Look, say a number, then see the measure: the answer opens only after yours.

    Parameters
    ----------
    subject : str
        "cube", "spoon" or "tray".

    Returns
    -------
    ipywidgets VBox
        With attributes `guess`, `told`, `fresh`, `words`, `eye` and `drawing`.

    Raises
    ------
    UnknownName
    """
    asked = SUBJECTS[one_of(subject, SUBJECTS, "subject")]()
    picture = Picture(height=asked.height)
    drawn, eye = asked.drawing(picture), Eye()
    image = widgets.HTML(layout={"width": "auto", "max_width": WIDE})
    words, guess = widgets.HTML(), slider(*asked.guess)
    told, fresh = (
        widgets.Button(description=name, layout={"width": "auto"})
        for name in ("That is my answer", "Next one")
    )
    turn = {"number": 0}

    def look(_=None):
        drawn.show(**asked.shown[turn["number"]])
        image.value = as_image(picture)
        words.value = said(together(asked.ask))
        told.disabled, fresh.disabled = False, True

    def answer(_):
        truth = asked.truths[turn["number"]]
        eye.say(guess.value, truth)
        drawn.show(**asked.shown[turn["number"]] | asked.opened)
        image.value = as_image(picture)
        off = guess.value - truth
        apart = (
            f"{abs(off):.3g} {asked.counted_in} {_too(off)}" if abs(off) > 1e-9 else "just right"
        )
        lines = (
            f"You said {guess.value:g}{asked.unit}; "
            f"measured, it is {truth:g}{asked.unit}: {apart}.",
            asked.note(truth),
            eye.in_words(asked.counted_in, asked.whole),
        )
        words.value = said(together("\n".join(lines)))
        told.disabled, fresh.disabled = True, False

    def go_on(_):
        turn["number"] = (turn["number"] + 1) % len(asked.truths)
        look()

    def about_to_say(_):
        if not told.disabled:
            words.value = said(together(f"{asked.ask}\nI say {guess.value:g}{asked.unit}."))

    guess.observe(about_to_say, "value")
    told.on_click(answer)
    fresh.on_click(go_on)
    look()
    buttons = widgets.HBox([told, fresh], layout={"flex_flow": "row wrap"})
    panel = below_each_other([image, guess, buttons, words])
    panel.guess, panel.told, panel.fresh, panel.words = guess, told, fresh, words
    panel.eye, panel.drawing = eye, picture
    return panel


def _too(off):
    return "too much" if off > 0 else "too little"
