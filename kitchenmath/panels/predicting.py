"""A prediction: typed or picked first, and only then the answer opens, with how far off it was."""

import ipywidgets as widgets

from kitchenmath.errors import KitchenError, Unreadable, WrongKind
from kitchenmath.panels.frame import ROW, below_each_other, said, together
from kitchenmath.practice.kinds import with_example
from kitchenmath.practice.typed_amount import read_as
from kitchenmath.predictions import PREDICTIONS, Pick
from kitchenmath.units import kind_of, say
from kitchenmath.units.door import one_of
from kitchenmath.units.registry import same_kind


def predict_panel(name, then=""):
    """A question, a place for an answer, and what is right behind it.

    Parameters
    ----------
    name : str
        A key of `PREDICTIONS`.
    then : object
        What opens along with the answer, as text: lines, a scaled card, an order.

    Returns
    -------
    ipywidgets VBox
        With attributes `asked`, `words` and `answers`: the place to type with its button, or a
        button for each of the words to pick from.

    Raises
    ------
    UnknownName
    """
    asked = PREDICTIONS[one_of(name, PREDICTIONS, "name")]
    words = widgets.HTML()
    by_picking = isinstance(asked, Pick)

    def tell(answer):
        try:
            found = _of_pick(asked, answer) if by_picking else _of_amount(asked, answer)
        except KitchenError as error:
            words.value = said(str(error))
            return
        for each in answers:
            each.disabled = True  # it was said before it was seen
        words.value = said(together("\n".join([found, asked.why, str(then)]).strip()))

    answers = _options(asked, tell) if by_picking else _field(tell)
    question = widgets.HTML(said(together(f"Say it before you see it. {asked.ask}")))
    row = widgets.HBox(answers, layout={"flex_flow": "row wrap"})
    panel = below_each_other([question, row, words])
    panel.asked, panel.answers, panel.words = asked, answers, words
    return panel


def _field(tell):
    """A place to type an amount, and the button behind it."""
    typed = widgets.Text(
        placeholder="your prediction, then Enter",
        description="I say",
        continuous_update=False,
        style={"description_width": "initial"},
        layout={**ROW, "max_width": "360px"},
    )
    told = widgets.Button(description="That is my answer", layout={"width": "auto"})

    def answer(_):
        if typed.value.strip() and not typed.disabled:
            tell(typed.value)

    typed.observe(answer, "value")
    told.on_click(answer)
    return [typed, told]


def _options(asked, tell):
    """A button for each of the words to pick from."""
    buttons = [widgets.Button(description=each, layout={"width": "auto"}) for each in asked.options]
    for button in buttons:
        button.on_click(lambda pressed: tell(pressed.description))
    return buttons


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
