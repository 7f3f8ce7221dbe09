"""Panel of lesson 6: what sugar, lecithin and warmth do to how long a foam stands."""

from kitchenmath.figures.vessels import FOAM, Vessels
from kitchenmath.panels.foaming import CIDER_BRIX, base_strength, drained_percent
from kitchenmath.panels.frame import slider, wire
from kitchenmath.ratios import split
from kitchenmath.sauces import dose, syrup_density, syrup_viscosity, usual_dose
from kitchenmath.units import Q_, say

# The invented log of lesson 6: the house's base, eight to one, foamed at hand-warm.
HOUSE_HALF_MIN, HOUSE_PARTS, HOUSE_C = 6.25, 8.0, 35
HOUSE_DOSE_PERCENT = 0.5
EATEN_MIN = 5
OVERRUN = 2.0


def half_life_min(cider_parts, warm_C):
    """How long the house's foam would stand from another base: as its viscosity, so its time.

    Of bubbles of one size the same liquid runs down half as fast where it is twice as thick.

    Parameters
    ----------
    cider_parts : float
        By volume, to one part of sugar; 0 parts of sugar is `float("inf")`.
    warm_C : float
        Of the base when it is foamed.

    Returns
    -------
    float
        Until half of the liquid is out. An estimate.
    """
    thick, house = (
        syrup_viscosity(_brix(parts), Q_(warmth, "degC"))
        for parts, warmth in ((cider_parts, warm_C), (HOUSE_PARTS, HOUSE_C))
    )
    return HOUSE_HALF_MIN * (thick / house).to("").magnitude


def foam_stands(sugar_ml, powder_percent, warm_C):
    """Friday's foam and yours on the plate after five minutes.

    Parameters
    ----------
    sugar_ml : int
        To 800 mL of cider.
    powder_percent : float
        Of lecithin, of the base.
    warm_C : int
        Of the base when it is foamed.

    Returns
    -------
    dict
        `amounts` (liquid and foam in a jug: Friday's, yours), `words` and `sentence`.
    """
    parts = 800 / sugar_ml if sugar_ml else float("inf")
    half = half_life_min(parts, warm_C)
    outs = [drained_percent(EATEN_MIN, minutes) / 100 for minutes in (HOUSE_HALF_MIN, half)]
    sentence = (
        f"{_brix(parts).magnitude:.0f} °Brix at {warm_C} °C ({1.8 * warm_C + 32:.0f} °F): half is "
        f"out after about {say(Q_(half, 'min'), 3)}. "
        f"After {EATEN_MIN} min {100 * outs[1]:.0f} % is a puddle; "
        f"of Friday's foam {100 * outs[0]:.0f} %.\n"
        f"{_of_the_dose(powder_percent)}\n"
        "An estimate, for bubbles as large as Friday's: your own log decides."
    )
    jugs = [(out, (1 - out) * (1 + OVERRUN)) for out in outs]
    doses = (HOUSE_DOSE_PERCENT, powder_percent)
    words = [f"{name}\n{100 * out:.0f} % run out\n{percent:g} % lecithin" for name, out, percent in
             zip(("Friday's foam", "yours"), outs, doses, strict=True)]  # fmt: skip
    amounts = [tuple(part / (1 + OVERRUN) for part in jug) for jug in jugs]
    return {"amounts": amounts, "words": words, "sentence": sentence}


def _of_the_dose(powder_percent):
    """What a dose means; no number is known for how it changes the time."""
    percent, usual = Q_(powder_percent, "percent"), usual_dose("lecithin")
    grams = dose(Q_(900, "g"), percent) if powder_percent else Q_(0, "g")
    what = f"{powder_percent:g} % of lecithin is {say(grams, 2)} in 900 g"
    if percent < usual.least:
        return f"{what}: less than usual. Too few bubbles get a skin, and the time does not hold."
    if percent > usual.most:
        return f"{what}: more than usual. You taste it, and it stands no longer."
    return f"{what}: a usual dose. More of it does not replace sugar or cooling."


def _brix(cider_parts):
    """The degrees Brix of a base by cups; without sugar, those of the cider."""
    if cider_parts == float("inf"):
        return CIDER_BRIX
    densities = {"cider": syrup_density(CIDER_BRIX)}
    mixed = {"cider": cider_parts, "granulated sugar": 1}
    return base_strength(split(Q_(900, "g"), mixed, by="volume", densities=densities))


def standing_panel():
    """Sugar, lecithin and warmth; Friday's foam and yours after five minutes.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "sugar_ml": slider("Sugar to 800 mL of cider (mL)", 0, 400, 25, 100),
            "powder_percent": slider("Lecithin (% of the base)", 0.0, 1.5, 0.1, HOUSE_DOSE_PERCENT),
            "warm_C": slider("Base when it is foamed (°C)", 5, 80, 5, HOUSE_C),
        },
        foam_stands,
        lambda picture: Vessels(picture, 2, most=1.04, layers=FOAM, lines=3),
        height=2.7,
    )
