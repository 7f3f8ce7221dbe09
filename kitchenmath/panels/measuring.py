"""Panels of lesson 1: whose cup, one factor for a card, and what a large pan does."""

import ipywidgets as widgets

from kitchenmath.figures.measuring import Bowls, Pans
from kitchenmath.figures.vessels import LAYERS, Vessels
from kitchenmath.heat import energy_to_reduce, time_at_power
from kitchenmath.panels.frame import ROW, choice, slider, wire
from kitchenmath.ratios import Pan, conversion_factor, scale
from kitchenmath.units import Q_, KitchenError, kind_of, practical, read, say

COUNTRIES = {
    "American": "us",
    "British": "uk",
    "Australian": "au",
    "metric": "metric",
    "Japanese": "jp",
}

# The card of the lesson (invented): mustard velouté for 4 covers of 60 g.
CARD_COVERS, CARD_PORTION_G = 4, 60
CARD = {
    "stock": Q_(300, "mL"),
    "butter": Q_(12, "g"),
    "flour": Q_(12, "g"),
    "mustard": Q_(10, "g"),
    "salt": Q_(2, "g"),
}

# What is boiled down for one cover, in which pan, on how much heat (invented, for the panel).
BASE_ML, CARD_PAN_CM, CARD_HEAT_KW = 75, 16, 0.5


def whose_cup(typed, country):
    """An amount as five countries would read it, as the panel says it.

    Parameters
    ----------
    typed : str
        As a cook types it.
    country : str
        A key of `COUNTRIES`.

    Returns
    -------
    dict
        `amounts` and `words` for the cups, `marked` (which is the chosen one), `sentence`.
    """
    amounts = {name: _read(typed, system) for name, system in COUNTRIES.items()}
    plain = {name: each for name, each in amounts.items() if not isinstance(each, str)}
    words = [
        f"{name}\n{say(_metric(plain[name]), 3) if name in plain else 'not known'}"
        for name in amounts
    ]
    sizes = [
        abs(float(_metric(plain[name]).magnitude)) if name in plain else 0.0 for name in amounts
    ]
    fullest = max(sizes) or 1.0
    first = amounts[country]
    if isinstance(first, str):
        sentence = f"By {country} measures: {first}"
    else:
        sentence = (
            f"By {country} measures “{typed.strip()}” is read as {say(first)}"
            f"{_in_metric(first)}.\n{_compared(plain)}{_of_old_books(plain)}"
        )
    marked = list(amounts).index(country)
    shares = [[size / fullest] for size in sizes]
    return {"amounts": shares, "words": words, "marked": marked, "sentence": sentence}


def _read(typed, system):
    """The amount, or the sentence that says what to type instead."""
    try:
        return read(typed, system)
    except KitchenError as error:
        return str(error)


def _metric(value):
    """In grams or millilitres where it is a weight or a volume."""
    unit = {"weight": "g", "volume": "mL"}.get(kind_of(value))
    return value.to(unit) if unit else value


def _in_metric(value):
    return "" if say(_metric(value)) == say(value) else f", {say(_metric(value))}"


def _of_old_books(plain):
    """What must be said of a British cup, where one was read."""
    if "British" not in plain or str(plain["British"].units) != "uk_cup":
        return ""
    return (
        "\nThe British cup is half an imperial pint, as in old books. "
        f"A cup sold in Britain today is metric: {say(Q_(1, 'metric_cup').to('mL'))}."
    )


def _compared(plain):
    """Smallest and largest of the countries' readings, in words."""
    by_size = sorted(plain, key=lambda name: _metric(plain[name]).magnitude)
    small, large = by_size[0], by_size[-1]
    least, most = _metric(plain[small]), _metric(plain[large])
    more = 100 * (most.magnitude / least.magnitude - 1) if least.magnitude else 0.0
    if kind_of(least) == "number":
        return "A number alone has no unit: say what of, such as 4 kg."
    if abs(more) < 0.01:
        same = "all five countries" if len(plain) == len(COUNTRIES) else "those that have it"
        return f"It is the same for {same}."
    return (
        f"The {small} one is the smallest ({say(least)}), the {large} one the largest "
        f"({say(most)}): {more:.0f} % more."
    )


def whose_cup_panel():
    """Type any amount, choose a country, and see what five kitchens would measure.

    Returns
    -------
    ipywidgets VBox
        The place to type is its attribute `typed`.
    """
    typed = widgets.Text(
        value="1 tbsp",
        description="Amount, then Enter",
        continuous_update=False,
        style={"description_width": "initial"},
        layout=ROW,
    )
    country = choice("Whose cups and spoons", COUNTRIES)
    panel = wire(
        {"typed": typed, "country": country},
        whose_cup,
        lambda picture: Vessels(picture, len(COUNTRIES), most=1.05, layers=LAYERS[:1]),
        height=2.2,
    )
    # Free text has no ends and no list to be tried from, so it is not among the controls.
    panel.typed, panel.controls = typed, {"country": country}
    return panel


def scaled(covers, portion_g, line):
    """One line of the card, scaled rightly and by two slips, as the panel says it.

    Parameters
    ----------
    covers : int
    portion_g : float
        On each plate.
    line : str
        A key of `CARD`.

    Returns
    -------
    dict
        `amounts`, `words` and `marked` for the bowls, `sentence`.
    """
    old = (CARD_COVERS, Q_(CARD_PORTION_G, "g"))
    factor = conversion_factor(old=old, new=(covers, Q_(portion_g, "g")))
    card, result = CARD[line], scale(CARD, factor)
    right = result.amounts[line]
    by_covers = card * conversion_factor(Q_(CARD_COVERS, "count"), Q_(covers, "count"))
    added = card + Q_(covers - CARD_COVERS, str(card.units))
    words = [
        f"on the card\n{say(card)}",
        f"times the\nfactor\n{practical(right, 'metric')}",
        f"portion\nforgotten\n{practical(by_covers, 'metric')}",
        f"{covers - CARD_COVERS:+d} added\nas a number\n{practical(added, 'metric')}",
    ]
    amounts = [float(each.magnitude) for each in (card, right, by_covers, added)]
    sentence = (
        f"Wanted: {covers} covers of {portion_g} g. The card makes {CARD_COVERS} of "
        f"{CARD_PORTION_G} g.\n"
        f"Factor: ({covers} × {portion_g}) ÷ ({CARD_COVERS} × {CARD_PORTION_G}) = {factor:.4g}.\n"
        f"{line.capitalize()}: {say(card)} on the card, {practical(right, 'metric')} to take"
        f"{_remark(result, line)}.\n{_forgotten(covers, portion_g)}"
    )
    return {"amounts": amounts, "words": words, "marked": 1, "sentence": sentence}


def _remark(result, line):
    return f" ({result.look_again[line]})" if line in result.look_again else ""


def _forgotten(covers, portion_g):
    """What happens to somebody who scales by covers alone."""
    if portion_g == CARD_PORTION_G:
        return "The portion is the card's, so here the covers alone give the factor."
    if portion_g > CARD_PORTION_G:
        plates = int(covers * CARD_PORTION_G / portion_g + 1e-9)
        return f"Who forgets the size of the portion fills {plates} plates of {covers}."
    too_much = 100 * (CARD_PORTION_G / portion_g - 1)
    return f"Who forgets the size of the portion makes {too_much:.0f} % too much."


def scale_panel():
    """Covers, portion and a line of the card; the right amount beside two slips.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "covers": slider("Covers", 4, 60, 4, 12),
            "portion_g": slider("On each plate (g)", 40, 100, 5, 75),
            "line": choice("Line of the card", CARD),
        },
        scaled,
        lambda picture: Bowls(picture, 4),
        height=1.7,
    )


def large_pan(covers, pan_cm, heat_kw):
    """How a larger batch stands in a pan and how long it boils down, as the panel says it.

    Parameters
    ----------
    covers : int
    pan_cm : float
        Across, inside.
    heat_kw : float
        That gets into the pan, which is less than what the stove gives.

    Returns
    -------
    dict
        `widths_cm`, `depths_cm` and `words` (the card's, this one's) and `sentence`.
    """
    base, depth, surface, time = _boiled(covers, pan_cm, heat_kw)
    card_base, card_depth, card_surface, card_time = _boiled(CARD_COVERS, CARD_PAN_CM, CARD_HEAT_KW)
    sentence = (
        f"{covers} covers are {practical(base, 'metric')}: {depth:.1f} cm deep in a pan "
        f"{pan_cm} cm across. The card's {say(card_base)} stands {card_depth:.1f} cm deep.\n"
        f"Each litre has {surface:.0f} cm² of open surface. On the card it has "
        f"{card_surface:.0f} cm².\n"
        f"To boil a quarter away takes about {time:.0f} min with {heat_kw} kW getting in; "
        f"the card's takes {card_time:.0f} min with {CARD_HEAT_KW} kW. "
        "An estimate: weigh the pan to know."
    )
    if depth > pan_cm / 2:
        sentence += "\nNo saucepan of that width is so deep: take a wider one."
    words = [
        f"{whose}, {across} cm,\n{deep:.1f} cm deep: a\nquarter gone in {minutes:.0f} min"
        for whose, across, deep, minutes in (
            ("the card's", CARD_PAN_CM, card_depth, card_time),
            ("yours", pan_cm, depth, time),
        )
    ]
    widths, depths = (CARD_PAN_CM, pan_cm), (card_depth, depth)
    return {"widths_cm": widths, "depths_cm": depths, "words": words, "sentence": sentence}


def _boiled(covers, pan_cm, heat_kw):
    """The volume, its depth [cm], open surface [cm² a litre] and time to lose a quarter [min]."""
    base = Q_(covers * BASE_ML, "mL")
    pan = Pan.round(Q_(pan_cm, "cm"))
    # Thin stock weighs a gram a millilitre, near enough for an estimate.
    energy = energy_to_reduce(Q_(base.magnitude, "g"), left=Q_(75, "percent"))
    return (
        base,
        (base / pan.area).to("cm").magnitude,
        (pan.area / base).to("cm**2/L").magnitude,
        time_at_power(energy, Q_(heat_kw, "kW")).magnitude,
    )


def pan_panel():
    """Covers, pan and heat: how deep it stands, how much surface it has, how long it boils.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "covers": slider("Covers", 4, 48, 4, 40),
            "pan_cm": slider("Your pan (cm across)", 16, 40, 2, 28),
            "heat_kw": slider("Heat that gets in (kW)", 0.5, 4.0, 0.5, 1.5),
        },
        large_pan,
        lambda picture: Pans(picture, CARD_PAN_CM + 40),
        height=2.0,
    )
