"""Panels of lesson 6 on foams: the parts of a base, overrun, and draining."""

from kitchenmath.figures.outlines import wall
from kitchenmath.figures.vessels import FOAM, Vessels
from kitchenmath.panels.frame import slider, wire
from kitchenmath.ratios import split
from kitchenmath.sauces import (
    brix,
    foam_volume,
    gas_fraction,
    liquid_for_foam,
    overrun,
    syrup_density,
)
from kitchenmath.units import Q_, say

CIDER_BRIX = Q_(12, "percent")  # pressed apple juice; the lesson's figure, invented
DRAIN_POWER = 1.6  # how steeply the curve rises; the invented log of lesson 6 follows it


def two_readings(base_g, cider_parts):
    """A base of cider and one part of sugar, with the parts read as volumes and as weights.

    Parameters
    ----------
    base_g : int
    cider_parts : float
        To one part of sugar.

    Returns
    -------
    dict
        `amounts` (grams of cider and sugar, by volume and by weight), `words` and `sentence`.
    """
    base, parts = Q_(base_g, "g"), {"cider": cider_parts, "granulated sugar": 1}
    cups = split(base, parts, by="volume", densities={"cider": syrup_density(CIDER_BRIX)})
    scale = split(base, parts)
    sentence = (
        f"{cider_parts:g} to 1 by volume: {_grams(cups)}. With the fruit's own sugar that is "
        f"{base_strength(cups).magnitude:.1f} °Brix.\n"
        f"{cider_parts:g} to 1 by weight: {_grams(scale)}, "
        f"{base_strength(scale).magnitude:.1f} °Brix.\n"
        f"The scale, used for a recipe in cups, puts in "
        f"{say(scale['granulated sugar'] - cups['granulated sugar'], 3)} of sugar too much."
    )
    amounts = [_pair(cups), _pair(scale)]
    words = [
        f"by {way}\ncider {cider:.0f} g\nsugar {sugar:.0f} g"
        for way, (cider, sugar) in zip(("volume", "weight"), amounts, strict=True)
    ]
    return {"amounts": amounts, "words": words, "sentence": sentence}


def _pair(amounts):
    return tuple(amounts[name].to("g").magnitude for name in ("cider", "granulated sugar"))


def _grams(amounts):
    cider, sugar = _pair(amounts)
    return f"{cider:.0f} g of cider and {sugar:.0f} g of sugar"


def base_strength(amounts):
    """The base's degrees Brix: the sugar added, and the sugar of the cider itself.

    Parameters
    ----------
    amounts : dict of str to Quantity [weight]
        Of "cider" and "granulated sugar".

    Returns
    -------
    Quantity [percent]
    """
    cider = amounts["cider"]
    own = cider * CIDER_BRIX.to("").magnitude
    return brix(sugar=amounts["granulated sugar"] + own, water=cider - own)


def parts_panel():
    """Base and parts of cider; the same words by volume and by weight.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "base_g": slider("Base (g)", 300, 1500, 50, 900),
            "cider_parts": slider("Cider (parts to one of sugar)", 2.0, 12.0, 0.5, 2.0),
        },
        two_readings,
        lambda picture: Vessels(picture, 2, most=1600, outline=wall, lines=3),
        height=2.6,
    )


def cup_weighed_twice(base_g, foam_g, plates):
    """What a cup of base and the same cup of foam say, and the base that so many plates take.

    Parameters
    ----------
    base_g, foam_g : int
        The same cup, full.
    plates : int
        Of 40 mL of foam.

    Returns
    -------
    dict
        `amounts` (mL of liquid and gas: base, and the foam that it becomes), `words` and
        `sentence`.
    """
    held = overrun(liquid_weight=Q_(base_g, "g"), foam_weight=Q_(foam_g, "g"))
    foam = foam_volume(Q_(100, "mL"), held)
    spoons = plates * Q_(40, "mL")
    base = liquid_for_foam(spoons, held)
    sentence = (
        f"The cup holds {base_g} g of base or {foam_g} g of foam: an overrun of {say(held, 3)}.\n"
        f"100 mL of base become {say(foam, 3)} of foam, and {say(gas_fraction(held), 3)} of that "
        f"foam is gas.\n"
        f"{plates} plates of 40 mL are {say(spoons)} of foam: whip at least "
        f"{say(base, 3)} of base."
    )
    base_ml, foam_ml = base.magnitude, spoons.magnitude
    words = [f"base to whip\n{base_ml:.0f} mL", f"foam, with its gas\n{foam_ml:.0f} mL"]
    # In the jug of foam no liquid lies below: it is in the walls of the bubbles.
    return {"amounts": [(base_ml, 0), (0, foam_ml)], "words": words, "sentence": sentence}


def overrun_panel():
    """A cup of base, the same cup of foam, and plates; the foam and the gas in it.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "base_g": slider("Cup full of base (g)", 230, 290, 5, 270),
            "foam_g": slider("The same cup full of foam (g)", 40, 200, 5, 135),
            "plates": slider("Plates (of 40 mL)", 8, 60, 4, 24),
        },
        cup_weighed_twice,
        lambda picture: Vessels(picture, 2, most=2450, layers=FOAM),
        height=2.6,
    )


def on_the_plate(half_min, eaten_min, overrun_percent):
    """How wet the plate is when the foam is eaten: the drainage curve through one half-life.

    Parameters
    ----------
    half_min : float
        When half of the base has drained out.
    eaten_min : float
        From whipping to the first spoon.
    overrun_percent : int

    Returns
    -------
    dict
        `amounts` (liquid and foam in a jug: fresh, half drained, eaten), `words` and
        `sentence`.
    """
    out = drained_percent(eaten_min, half_min)
    base = liquid_for_foam(Q_(40, "mL"), overrun=Q_(overrun_percent, "percent"))
    pool = base * out / 100
    verdict = "More than half is out" if out > 50 else "Less than half is out"
    verdict = "Half is out" if abs(out - 50) < 0.5 else verdict
    sentence = (
        f"Half of the base drains in {half_min:g} min. After {eaten_min:g} min "
        f"{out:.0f} % is out. {verdict}.\n"
        f"A spoon of 40 mL at {overrun_percent} % overrun holds {say(base, 2)} of base, and "
        f"{say(pool, 2)} of that is a puddle.\n"
        "An estimate: your own log decides."
    )
    swollen = 1 + overrun_percent / 100
    jugs = [(share, (1 - share) * swollen) for share in (0.0, 0.5, out / 100)]
    words = [
        "whipped\n0 min",
        f"half drained\n{half_min:g} min",
        f"eaten: {out:.0f} % out\n{eaten_min:g} min",
    ]
    amounts = [tuple(part / swollen for part in jug) for jug in jugs]
    return {"amounts": amounts, "words": words, "sentence": sentence}


def drained_percent(minute, half_min):
    """The share of the base that has drained by then, in percent: 100 tⁿ / (cⁿ + tⁿ).

    The curve is the one that `drainage_half_life` fits to a log which stops early, with the
    half-life c and the power n of the invented log.

    Parameters
    ----------
    minute, half_min : float

    Returns
    -------
    float
    """
    return 100 * minute**DRAIN_POWER / (half_min**DRAIN_POWER + minute**DRAIN_POWER)


def drainage_panel():
    """Half-life, minutes to the first spoon, and overrun; how much has drained by then.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "half_min": slider("Half drained after (min)", 2.0, 15.0, 0.5, 6.0),
            "eaten_min": slider("Eaten after (min)", 0.5, 16.0, 0.5, 4.0),
            "overrun_percent": slider("Overrun (%)", 50, 500, 50, 200),
        },
        on_the_plate,
        lambda picture: Vessels(picture, 3, most=1.04, layers=FOAM),
        height=2.5,
    )
