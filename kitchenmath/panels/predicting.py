"""A prediction: typed or picked first, and only then the answer opens, with how far off it was.

The panel with which a reader finds the answer opens along with it, so that nobody sees it first.
"""

from contextlib import suppress

import ipywidgets as widgets

from kitchenmath.bench import Kept
from kitchenmath.errors import KitchenError, Unreadable, WrongKind
from kitchenmath.panels.frame import ROW, Panel, said, together
from kitchenmath.practice.kinds import with_example
from kitchenmath.practice.typed_amount import read_as
from kitchenmath.predictions import PREDICTIONS, Pick
from kitchenmath.units import kind_of, say
from kitchenmath.units.door import one_of
from kitchenmath.units.registry import same_kind

# A button is as high as its words, at the foot of the box beside it.
BESIDE = {"flex_flow": "row wrap", "align_items": "flex-end"}
UNGUESSED = "no guess"  # kept like an answer: who looked once need not look again


def predict_panel(name, then="", opens=None, folder=None):
    """A question, a place for an answer, and what is right behind it.

    The prediction is kept like a bench's numbers, so a page that is opened again shows it.

    Parameters
    ----------
    name : str
        A key of `PREDICTIONS`.
    then : object
        What opens along with the answer, as text: lines, a scaled card, an order.
    opens : callable, optional
        Makes the panel that answers the question, or the question after it; not there before.
    folder : path, optional
        Where the prediction is kept; see `Kept`.

    Returns
    -------
    ipywidgets VBox
        With attributes `asked`, `words`, `answers` (the place to type with its button, or a
        button for each of the words to pick from), `unguessed`, `again`, and `opened`, the panel
        behind it, None until it was wanted.

    Raises
    ------
    UnknownName
    """
    return PredictPanel(one_of(name, PREDICTIONS, "name"), then, opens, Kept(folder))


class PredictPanel(Panel):
    """See `predict_panel`."""

    def __init__(self, name, then, opens, kept):
        self.asked, self._then, self._opens = PREDICTIONS[name], str(then), opens
        self._kept, self._kept_as = kept, f"prediction: {name}"
        self.words, self.opened, self._behind = widgets.HTML(), None, widgets.VBox()
        self._picked = isinstance(self.asked, Pick)
        self.answers = _options(self.asked, self._answer) if self._picked else _field(self._answer)
        self.unguessed = _button("Show me without a guess", lambda _: self._answer(UNGUESSED))
        self.again = _button("Ask me again", lambda _: self._ask_again(), alone=True)
        question = widgets.HTML(said(together(f"Say it before you see it. {self.asked.ask}")))
        row = widgets.HBox([*self.answers, self.unguessed], layout=BESIDE)
        super().__init__([question, row, self.words, self._behind, self.again])
        self._set_shut(False)
        self._open_what_was_kept()

    def _answer(self, answer, keep=True):
        """Open what is right, if the answer can be read, and keep the answer."""
        try:
            found = self._found(answer)
        except KitchenError as error:
            self._tell(str(error))
            return
        self._set_shut(True)
        trouble = self._keep(answer) if keep else ""
        self._tell("\n".join(filter(None, [found, self.asked.why, self._then, trouble])))
        if self._opens:
            self.opened = self.opened or self._opens()
            self._behind.children = [self.opened]

    def _found(self, answer):
        """How the answer stands to what is right."""
        if answer == UNGUESSED:
            right = f"“{self.asked.right}”" if self._picked else say(self.asked.right, 3)
            return f"You made no guess; it is {right}."
        return (_of_pick if self._picked else _of_amount)(self.asked, answer)

    def _set_shut(self, shut):
        """Said before it was seen, an answer stays; after “Ask me again” another is taken."""
        for each in self.answers:
            each.disabled = shut
        self.unguessed.layout.display = "none" if shut else ""
        self.again.layout.display = "" if shut else "none"

    def _ask_again(self):
        """Forget the answer, also where it was kept, and close what it opened."""
        self._set_shut(False)
        self._behind.children = []
        if not self._picked:
            self.answers[0].value = ""
        self._tell(self._keep(""))

    def _open_what_was_kept(self):
        """An answer of an earlier visit; one that its question no longer takes is left out."""
        with suppress(KitchenError):  # what is wrong with the file, the benches say
            answer = self._kept.typed(self._kept_as).get("said", "")
            if not answer or (self._picked and answer not in (*self.asked.options, UNGUESSED)):
                return
            self._found(answer)
            if not self._picked and answer != UNGUESSED:
                self.answers[0].disabled, self.answers[0].value = True, answer
            self._answer(answer, keep=False)

    def _keep(self, answer):
        """Keep an answer in place of the one before; a sentence where that cannot be."""
        try:
            self._kept.keep(self._kept_as, {"said": answer})
        except KitchenError as error:
            return str(error)
        return ""

    def _tell(self, sentence):
        self.words.value = said(together(sentence)) if sentence else ""


def _button(description, pressed, alone=False):
    layout = {"width": "auto", "align_self": "flex-start" if alone else None}
    button = widgets.Button(description=description, layout=layout)
    button.on_click(pressed)
    return button


def _field(tell):
    """A place to type an amount, and the button behind it."""
    typed = widgets.Text(
        placeholder="your prediction, then Enter",
        description="I say",
        continuous_update=False,
        style={"description_width": "initial"},
        layout={**ROW, "max_width": "360px"},
    )

    def answer(_):
        if typed.value.strip() and not typed.disabled:
            tell(typed.value)

    typed.observe(answer, "value")
    return [typed, _button("That is my answer", answer)]


def _options(asked, tell):
    """A button for each of the words to pick from."""
    return [_button(each, lambda pressed: tell(pressed.description)) for each in asked.options]


def _of_amount(asked, typed):
    """What was typed, what it is, and how far apart they are."""
    kind = {"number": "count"}.get(kind_of(asked.right), kind_of(asked.right))
    try:
        guess = read_as(typed, kind)
    except Unreadable as error:
        raise Unreadable(with_example(str(error), kind)) from None
    off = how_far_off(guess, asked.right)
    return f"You said {typed.strip()}; it is {say(asked.right, 3)}: {off}."


def _of_pick(asked, picked):
    """What was picked, what it is, and to which side it was off."""
    steps = asked.steps_off(picked)
    if steps == 0:
        return f"You said “{picked}”, and so it is."
    side = f": {asked.sides[steps > 0]}" if asked.sides else ""
    return f"You said “{picked}”; it is “{asked.right}”{side}."


def how_far_off(guess, right):
    """A guess beside the right amount, in words.

    Parameters
    ----------
    guess, right : Quantity

    Returns
    -------
    str

    Raises
    ------
    WrongKind
        When the guess is of another kind.

    Examples
    --------
    >>> from kitchenmath.units import Q_
    >>> how_far_off(Q_(36, "min"), Q_(48, "min"))
    '25 % too little'
    """
    if not same_kind(guess, str(right.units)):
        raise WrongKind(f"{say(guess)} is a {kind_of(guess)}; type a {kind_of(right)}.")
    apart = guess.to(right.units).magnitude - right.magnitude
    if kind_of(right) == "temperature":
        off, too = f"{abs(apart):.3g} °C", "warm" if apart > 0 else "cold"
    else:
        off, too = f"{abs(100 * apart / right.magnitude):.0f} %", "much" if apart > 0 else "little"
    near = abs(apart) < 0.005 * abs(right.magnitude)
    return "just right" if near else f"{off} too {too}"
