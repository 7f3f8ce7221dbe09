"""Panels of lesson 1: whose cup, one factor for a card, and what a large pan does."""

import ipywidgets as widgets

from kitchenmath.figures.frame import Picture
from kitchenmath.figures.measuring import draw_bars, draw_pans, move_bars, move_pans
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
        `words` and `lengths` for the bars, `marked` (which is the chosen one), `sentence`.
    """
    amounts = {name: _read(typed, system) for name, system in COUNTRIES.items()}
    plain = {name: each for name, each in amounts.items() if not isinstance(each, str)}
    words = [
        f"{name}: {say(_metric(plain[name])) if name in plain else 'cannot be read'}"
        for name in amounts
    ]
    lengths = [
        abs(float(_metric(plain[name]).magnitude)) if name in plain else 0.0 for name in amounts
    ]
    first = amounts[country]
    if isinstance(first, str):
        sentence = f"By {country} measures: {first}"
    else:
        sentence = (
            f"By {country} measures “{typed.strip()}” is read as {say(first)}"
            f"{_in_metric(first)}.\n{_compared(plain)}"
        )
    marked = list(amounts).index(country)
    return {"words": words, "lengths": lengths, "marked": marked, "sentence": sentence}


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
    picture = Picture(height=3.2)
    start = whose_cup("1 cup", "American")
    artists = draw_bars(
        picture.axes(bottom=0.02, top=0.98), start["words"], start["lengths"], start["marked"]
    )

    def update(typed, country):
        found = whose_cup(typed, country)
        move_bars(artists, found["words"], found["lengths"], found["marked"])
        return found["sentence"]

    typed = widgets.Text(
        value="1 cup",
        description="Amount, then Enter",
        continuous_update=False,
        style={"description_width": "initial"},
        layout=ROW,
    )
    country = choice("Whose cups and spoons", COUNTRIES)
    panel = wire({"typed": typed, "country": country}, picture, update)
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
        `words` and `lengths` for the bars, `sentence`.
    """
    old = (CARD_COVERS, Q_(CARD_PORTION_G, "g"))
    factor = conversion_factor(old=old, new=(covers, Q_(portion_g, "g")))
    card, result = CARD[line], scale(CARD, factor)
    right = result.amounts[line]
    by_covers = card * conversion_factor(Q_(CARD_COVERS, "count"), Q_(covers, "count"))
    added = card + Q_(covers - CARD_COVERS, str(card.units))
    words = [
        f"on the card: {say(card)}",
        f"times the factor: {practical(right, 'metric')}",
        f"size of the portion forgotten: {practical(by_covers, 'metric')}",
        f"{covers - CARD_COVERS:+d} covers added as a number: {practical(added, 'metric')}",
    ]
    lengths = [float(each.magnitude) for each in (card, right, by_covers, added)]
    sentence = (
        f"Wanted: {covers} covers of {portion_g} g. The card makes {CARD_COVERS} of "
        f"{CARD_PORTION_G} g.\n"
        f"Factor: ({covers} × {portion_g}) ÷ ({CARD_COVERS} × {CARD_PORTION_G}) = {factor:.4g}.\n"
        f"{line.capitalize()}: {say(card)} on the card, {practical(right, 'metric')} to take"
        f"{_remark(result, line)}.\n{_forgotten(covers, portion_g)}"
    )
    return {"words": words, "lengths": lengths, "sentence": sentence}


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
    picture = Picture(height=2.8)
    start = scaled(40, 75, "stock")
    artists = draw_bars(picture.axes(bottom=0.02, top=0.98), start["words"], start["lengths"], 1)

    def update(**values):
        found = scaled(**values)
        move_bars(artists, found["words"], found["lengths"], 1)
        return found["sentence"]

    return wire(
        {
            "covers": slider("Covers", 4, 60, 4, 40),
            "portion_g": slider("On each plate (g)", 40, 100, 5, 75),
            "line": choice("Line of the card", CARD),
        },
        picture,
        update,
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
        `depths_cm` and `captions` (the card's, this one's) and `sentence`.
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
    captions = (
        f"the card's, {CARD_PAN_CM} cm:\na quarter gone\nin {card_time:.0f} min",
        f"yours, {pan_cm} cm:\na quarter gone\nin {time:.0f} min",
    )
    return {"depths_cm": (card_depth, depth), "captions": captions, "sentence": sentence}


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
    picture = Picture(height=2.2)
    first = large_pan(40, 28, 1.5)
    artists = draw_pans(
        picture.axes(left=0.02, bottom=0.02, right=0.98, top=0.98),
        first["captions"], (CARD_PAN_CM, 28), first["depths_cm"], most_cm=(63, 20),
    )  # fmt: skip

    def update(covers, pan_cm, heat_kw):
        found = large_pan(covers, pan_cm, heat_kw)
        move_pans(artists, found["captions"], (CARD_PAN_CM, pan_cm), found["depths_cm"])
        return found["sentence"]

    return wire(
        {
            "covers": slider("Covers", 4, 48, 4, 40),
            "pan_cm": slider("Your pan (cm across)", 16, 40, 2, 28),
            "heat_kw": slider("Heat that gets in (kW)", 0.5, 4.0, 0.5, 1.5),
        },
        picture,
        update,
    )
