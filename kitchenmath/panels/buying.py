"""Panels of lesson 4: what to buy, and what the butcher's test says about the price."""

from kitchenmath.figures.buying import Bird, Roots
from kitchenmath.panels.frame import slider, wire
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say
from kitchenmath.yields import as_purchased, edible_portion
from kitchenmath.yields.butchery import TrimTest
from kitchenmath.yields.ordering import portions


def purchase(covers, portion_g, yield_percent):
    """What to buy for so many covers, and the slip beside it, as the panel says it.

    Parameters
    ----------
    covers : int
    portion_g : float
        On the plate, trimmed.
    yield_percent : float

    Returns
    -------
    dict
        `orders_kg` (right, by the slip), `left_share`, `fed` (by each), `covers`, `words` and
        `sentence`.
    """
    yield_ = Q_(yield_percent, "percent")
    portion = Q_(portion_g, "g")
    left = (covers * portion).to("kg")
    bought = as_purchased(edible=left, yield_=yield_)
    slip = edible_portion(purchased=left, yield_=yield_)
    fed = portions(edible_portion(slip, yield_), portion)
    sentence = (
        f"{covers} covers of {say(portion)} are {say(left, 3)} on the plates.\n"
        f"At a yield of {say(yield_)} you buy {say(bought, 3)} ({say(bought.to('lb'), 3)}); "
        f"{say(bought - left, 3)} is trim.\n"
        f"Who multiplies by the yield buys {say(slip, 3)}, and feeds {fed} of {covers}."
    )
    return {
        "orders_kg": (bought.magnitude, slip.magnitude),
        "left_share": yield_percent / 100,
        "fed": (covers, fed),
        "covers": covers,
        "words": [
            f"divided: {say(bought, 3)} bought, {say(bought - left, 3)} is peel (hatched)",
            f"multiplied: {say(slip, 3)} bought, {covers - fed} plates empty (crosses)",
        ],
        "sentence": sentence,
    }


def purchase_panel():
    """Covers, portion and yield; the bar shows what is bought, served and peeled off.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "covers": slider("Covers", 8, 60, 4, 40),
            "portion_g": slider("On each plate (g)", 30, 80, 5, 60),
            "yield_percent": slider("Yield (%)", 55, 95, 1, 68),
        },
        purchase,
        Roots,
        height=2.5,
    )


def breast_price(price_per_kg, legs_value, breast_percent):
    """The price of a kilo of breast from whole birds, with and without the by-products' credit.

    Parameters
    ----------
    price_per_kg : float
        Whole birds, dollars a kilo.
    legs_value : float
        What a kilo of legs is worth elsewhere, dollars.
    breast_percent : float
        Breast, of the weight bought. Legs are 25 % of it and carcasses 28 % (invented, for
        this panel); carcasses are worth $1.50 a kilo.

    Returns
    -------
    dict
        `shares` (of the weight: breast, legs, carcass, the rest), `title`, `words`, `foot` and
        `sentence`.
    """
    price = Q_(price_per_kg, "dollar/kg")
    test = TrimTest(
        purchased=Q_(10, "kg"),
        price=price,
        usable=Q_(breast_percent / 10, "kg"),
        by_products={
            "legs": (Q_(2.5, "kg"), Q_(legs_value, "dollar/kg")),
            "carcasses": (Q_(2.8, "kg"), Q_(1.50, "dollar/kg")),
        },
    )
    without = (test.cost / test.usable).to("dollar/kg")
    sentence = (
        f"10 kg of birds cost {say(test.cost)}. Breast is {say(test.usable)} of it.\n"
        f"Legs and carcasses are worth {say(test.credit)}, so the breast carries "
        f"{say(test.net_cost)}: {say(test.usable_price)}.\n"
        f"Without the credit it would look like {say(without)}. "
        f"Cost factor: {test.cost_factor:.2f}."
    )
    breast = breast_percent / 100
    return {
        "shares": [breast, 0.25, 0.28, 0.47 - breast],
        "title": f"10 kg of birds at ${price_per_kg:.2f} a kilo",
        "words": [
            f"breast\n{say(test.usable)}",
            f"legs 2.5 kg\n${legs_value:.2f} a kilo",
            "carcass 2.8 kg\n$1.50 a kilo",
            f"lost\n{4.7 - breast_percent / 10:.1f} kg",
        ],
        "foot": [
            f"breast with the credit: {say(test.usable_price)}",
            f"without: {say(without)}",
        ],
        "sentence": sentence,
    }


def breast_price_panel():
    """Price of the bird, worth of the legs and share of breast; three prices of a kilo.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "price_per_kg": slider("Whole birds ($ a kilo)", 6.0, 12.0, 0.25, 9.0),
            "legs_value": slider("Legs are worth ($ a kilo)", 0.0, 8.0, 0.5, 6.0),
            "breast_percent": slider("Breast, of the weight bought (%)", 22, 40, 1, 30),
        },
        breast_price,
        Bird,
        height=2.4,
    )
