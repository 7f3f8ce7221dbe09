"""A prediction: typed first, and only then the answer opens, with how far off it was."""

from dataclasses import dataclass

import ipywidgets as widgets

from kitchenmath.heat import boiling_point
from kitchenmath.panels.frame import ROW, below_each_other, said, together
from kitchenmath.ratios import conversion_factor, water_temperature
from kitchenmath.sauces import gelatin_for, overrun
from kitchenmath.units import Q_, KitchenError, WrongKind, kind_of, read, say
from kitchenmath.units.door import one_of
from kitchenmath.units.registry import same_kind
from kitchenmath.yields import as_purchased


@dataclass(frozen=True)
class Prediction:
    """What is asked before anything is moved, the amount that comes out, and why."""

    ask: str
    right: object
    why: str


def _gap(strength):
    """Salt for 8 kg of water by percent of the brine, less that by percent of the water."""
    return Q_(8000 * strength / (1 - strength) - 8000 * strength, "g")


PREDICTIONS = {
    "factor": Prediction(
        "The card makes 4 covers of 60 g. You want 40 covers of 75 g. How many times the card?",
        Q_(conversion_factor(old=(4, Q_(60, "g")), new=(40, Q_(75, "g"))), "count"),
        "Ten times the covers, and each plate a quarter larger.",
    ),
    "dough water": Prediction(
        "A dough of 25 °C. Flour and room have 23 °C, friction counts 9 °C. How warm is the water?",
        water_temperature(Q_(25, "degC"), Q_(23, "degC"), Q_(23, "degC"), Q_(9, "delta_degC")),
        "Three times 25 is the sum; flour, room and friction are taken from it.",
    ),
    "dice": Prediction(
        "How many brunoise of 3 mm make one small dice of 6 mm?",
        Q_(8, "count"),
        "Two along each of three edges: 2 × 2 × 2 = 8.",
    ),
    "order": Prediction(
        "2.4 kg must be on the plates. At a yield of 80 % you buy 3 kg. What at 60 %?",
        as_purchased(edible=Q_(2.4, "kg"), yield_=Q_(60, "percent")),
        "The worse the yield, the faster the order grows.",
    ),
    "two percents": Prediction(
        f"8 kg of water, brine of 6 %: the two ways of counting are {say(_gap(0.06), 2)} apart. "
        "How far apart are they at 12 %?",
        _gap(0.12),
        "Twice as strong is about four times the gap.",
    ),
    "overrun": Prediction(
        "A cup of base weighs 270 g, the same cup of foam 45 g. What is the overrun, in percent?",
        overrun(liquid_weight=Q_(270, "g"), foam_weight=Q_(45, "g")),
        "Six cups from one: five came on top.",
    ),
    "another Bloom": Prediction(
        "A jelly takes 20 g of gelatin of 250 Bloom. You have 160 Bloom. How many grams of yours "
        "set it as firm?",
        gelatin_for(Q_(20, "g"), from_bloom=250, to_bloom=160),
        "Twice the gelatin sets four times as firm, so the weight goes with the root.",
    ),
    "thickness": Prediction(
        "A fillet of 20 mm takes 12 minutes. How long does one of 40 mm take?",
        Q_(12, "min") * (40 / 20) ** 2,
        "Twice as far to go, and twice as much to warm on the way.",
    ),
    "six hours": Prediction(
        "A pot passes 57 °C at 20:00 and is at 21 °C at 21:30. How long may it take from there "
        "to 5 °C?",
        Q_(4.5, "h"),
        "Six hours in all, from 57 °C: an hour and a half of them are gone.",
    ),
    "boil": Prediction(
        "A kitchen lies 1500 m above the sea. At how many degrees does water boil there?",
        Q_(round(boiling_point(altitude=Q_(1500, "m")).magnitude, 1), "degC"),
        "About 1 °C less for each 300 m.",
    ),
    "nets": Prediction(
        "24 plates of 60 g at a yield of 68 %. How many nets of 1 kg do you order?",
        Q_(3, "count"),
        "1440 g ÷ 0.68 is 2118 g: two nets are not enough.",
    ),
}


def predict_panel(name):
    """A question, a place to type, and the answer behind a button that waits for yours.

    Parameters
    ----------
    name : str
        A key of `PREDICTIONS`.

    Returns
    -------
    ipywidgets VBox
        With attributes `typed`, `told` and `words`.

    Raises
    ------
    UnknownName
    """
    asked = PREDICTIONS[one_of(name, PREDICTIONS, "name")]
    words = widgets.HTML()
    typed = widgets.Text(
        placeholder="your prediction, then Enter",
        description="I say",
        continuous_update=False,
        style={"description_width": "initial"},
        layout={**ROW, "max_width": "360px"},
    )
    told = widgets.Button(description="That is my answer", layout={"width": "auto"})

    def answer(_=None):
        if not typed.value.strip() or typed.disabled:
            return
        try:
            off = how_far_off(read(typed.value), asked.right)
        except KitchenError as error:
            words.value = said(str(error))
            return
        typed.disabled = told.disabled = True  # it was said before it was seen
        lines = f"You said {typed.value.strip()}; it is {say(asked.right, 3)}: {off}."
        words.value = said(together(f"{lines}\n{asked.why}"))

    typed.observe(answer, "value")
    told.on_click(answer)
    question = widgets.HTML(said(together(f"Say it before you see it. {asked.ask}")))
    panel = below_each_other([question, typed, told, words])
    panel.typed, panel.told, panel.words = typed, told, words
    return panel


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
