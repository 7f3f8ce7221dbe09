"""Panels of lesson 3 on cost and time: squaring a carrot off, and cooking another size."""

from kitchenmath.cuts import cooking_time_factor, squared_yield
from kitchenmath.figures.frame import Picture
from kitchenmath.figures.squaring import draw_squared, draw_times, move_squared, move_times
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
    sentence = (
        f"From {say(thick)} at the thick end to {say(thin, 3)} at the thin one: "
        f"a square of {say(block.side, 3)} fits all the way.\n"
        f"{say(block.yield_, 3)} is left: {say(kept, 3)} of {say(weight)}. "
        f"{say(weight - kept, 3)} is trim for stock or purée.\n"
        f"A straight carrot would keep {say(straight.yield_, 3)}, however thick it is."
    )
    words = [f"thick end {say(thick)}", f"thin end {say(thin, 3)} (dashes)"]
    return {
        "sizes_mm": tuple(size.to("mm").magnitude for size in (thick, thin, block.side)),
        "words": [*words, f"square {say(block.side, 3)}: {say(kept, 3)}"],
        "sentence": sentence,
    }


def squaring_panel():
    """Thick end, taper and weight; the rounds and the square, seen from the end.

    Returns
    -------
    ipywidgets VBox
    """
    picture = Picture(height=2.5)
    start = squaring(40, 75, 500)
    axes = picture.axes(bottom=0.02, top=0.98)
    artists = draw_squared(axes, *start["sizes_mm"], start["words"])

    def update(**values):
        found = squaring(**values)
        move_squared(artists, *found["sizes_mm"], found["words"])
        return found["sentence"]

    return wire(
        {
            "thick_mm": slider("Thick end (mm)", 20, 60, 2, 40),
            "thin_percent": slider("Thin end, of the thick end (%)", 40, 100, 5, 75),
            "weight_g": slider("Carrots, peeled and topped (g)", 200, 2000, 100, 500),
        },
        picture,
        update,
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
        `minutes` (now, by the square, straight) and `sentence`.
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
    return {"minutes": found, "sentence": sentence}


def times_panel():
    """Old size, new size and the old time; three bars.

    Returns
    -------
    ipywidgets VBox
    """
    picture = Picture(height=2.6)
    artists = draw_times(picture.axes(bottom=0.22, top=0.98), times(20, 10, 16)["minutes"], 40)

    def update(**values):
        found = times(**values)
        move_times(artists, found["minutes"])
        return found["sentence"]

    return wire(
        {
            "old_mm": slider("Size now (mm)", 8, 24, 1, 20),
            "new_mm": slider("New size (mm)", 4, 24, 1, 10),
            "minutes": slider("Time now (minutes)", 4, 40, 1, 16),
        },
        picture,
        update,
    )
