"""Panels of lesson 3 on cost and time: squaring a carrot off, and cooking another size."""

from kitchenmath.cuts import cooking_time_factor, squared_yield
from kitchenmath.figures.clocks import Clocks
from kitchenmath.figures.squaring import Carrot
from kitchenmath.panels.frame import slider, wire
from kitchenmath.units import Q_, say


def squaring(thick_mm, thin_percent, weight_g):
    """What squaring a carrot off leaves, in one piece, and what goes into the stock.

    Parameters
    ----------
    thick_mm : int
        Across the thick end.
    thin_percent : int
        The thin end, of the thick one.
    weight_g : int
        Peeled and topped.

    Returns
    -------
    dict
        `sizes_mm` (thick, thin, side), `words` and `sentence`.
    """
    thick, weight = Q_(thick_mm, "mm"), Q_(weight_g, "g")
    thin = thick * thin_percent / 100
    block = squared_yield("cone", diameter=thick, small_diameter=thin)
    kept = weight * block.yield_.to("").magnitude
    straight = squared_yield("cylinder", diameter=thick)
    trim = weight - kept
    words = [
        f"thick end {say(thick)}, thin end {say(thin, 3)} (dashes)",
        f"square of {say(block.side, 3)}: {say(kept, 3)} is left",
        f"hatched: {say(trim, 3)} falls off",
    ]
    sentence = (
        f"From {say(thick)} at the thick end to {say(thin, 3)} at the thin one: "
        f"a square of {say(block.side, 3)} fits all the way.\n"
        f"{say(block.yield_, 3)} is left: {say(kept, 3)} of {say(weight)}. "
        f"{say(trim, 3)} is trim for stock or purée.\n"
        f"A straight carrot would keep {say(straight.yield_, 3)}, however thick it is."
    )
    return {
        "sizes_mm": tuple(size.to("mm").magnitude for size in (thick, thin, block.side)),
        "words": words,
        "sentence": sentence,
    }


def squaring_panel():
    """Thick end, taper and weight; the rounds and the square, seen from the end.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "thick_mm": slider("Thick end (mm)", 20, 60, 2, 40),
            "thin_percent": slider("Thin end, of the thick end (%)", 40, 100, 5, 75),
            "weight_g": slider("Carrots, peeled and topped (g)", 200, 2000, 100, 500),
        },
        squaring,
        lambda picture: Carrot(picture, most_mm=60),
        height=2.3,
    )


def times(old_mm, new_mm, minutes):
    """How long another size takes: the two estimates between which a real pan lies.

    Parameters
    ----------
    old_mm, new_mm : int
        Thinnest size of the piece.
    minutes : int
        That the old size takes.

    Returns
    -------
    dict
        `minutes` (now, by the square, straight), `words` below them, `edges_mm` and `sentence`.
    """
    old, new, now = Q_(old_mm, "mm"), Q_(new_mm, "mm"), Q_(minutes, "min")
    square, straight = (now * cooking_time_factor(old, new, power) for power in (2, 1))
    shortest, longest = sorted((square, straight))
    between = f"about {say(shortest, 2)}"
    if old_mm != new_mm:
        between = f"between {say(shortest, 2)} and {say(longest, 2)}"
    sentence = (
        f"{say(old)} takes {say(now)}. At {say(new)} expect {between}.\n"
        f"By the square (heat travels to the middle): {cooking_time_factor(old, new):.2f} times "
        f"as long. Straight (heat comes in slowly): {cooking_time_factor(old, new, 1):.2f} times.\n"
        "An estimate: try a piece."
    )
    found = tuple(each.to("min").magnitude for each in (now, square, straight))
    names = (f"{old_mm} mm\nnow", f"{new_mm} mm\nby the square", f"{new_mm} mm\nstraight")
    words = [f"{name}\n{time:.1f} min" for name, time in zip(names, found, strict=True)]
    edges_mm = (old_mm, new_mm, new_mm)
    return {"minutes": found, "words": words, "edges_mm": edges_mm, "sentence": sentence}


def times_panel():
    """Old size, new size and the old time; three bars.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "old_mm": slider("Size now (mm)", 8, 24, 1, 20),
            "new_mm": slider("New size (mm)", 4, 24, 1, 10),
            "minutes": slider("Time now (minutes)", 4, 40, 1, 16),
        },
        times,
        lambda picture: Clocks(picture, 3, cubes_mm=24),
        height=2.9,
    )
