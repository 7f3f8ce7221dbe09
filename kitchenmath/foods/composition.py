"""How well a food carries and holds heat, reckoned from what it is made of.

Composition goes in (from a label or the table of common foods), conductivity, density, specific
heat and diffusivity come out. Water decides nearly everything: it holds most heat and carries it
best, so lean and watery foods of all kinds come close to each other.
"""

import difflib
from functools import cache

from kitchenmath.data.tables import table
from kitchenmath.errors import UnknownName
from kitchenmath.foods.mixture import COMPONENTS, Food
from kitchenmath.units.registry import Q_

__all__ = ["food", "food_names", "food_source"]


def food(name):
    """A common food from the table, its composition as published for the raw, edible part.

    Parameters
    ----------
    name : str
        Such as "carrot", "cod" or "chicken breast"; `food_names` lists all.

    Returns
    -------
    Food

    Raises
    ------
    UnknownName
        With the names that come near.

    Examples
    --------
    Carrot is 88 % water, so a kilo takes nearly as much heat as a litre of water.

    >>> print(round(food("carrot").specific_heat(Q_(20, "degC")).magnitude, 2))
    3.87

    References
    ----------
    The source of each row: `food_source`.
    """
    row = _row(name)
    parts = {part: Q_(float(row[f"{part}_percent"]), "percent") for part in COMPONENTS[:-1]}
    return Food(**parts)


def food_names():
    """The names of all foods in the table.

    Returns
    -------
    tuple of str
    """
    return tuple(_rows())


def food_source(name):
    """Where a food's composition was published, and how it came here.

    Parameters
    ----------
    name : str

    Returns
    -------
    str
        "seen": the figures were read there; "from memory": check them against your label.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> food_source("carrot")
    'ASHRAE Handbook Refrigeration, Table 3 (seen)'
    """
    row = _row(name)
    return f"{row['source']} ({row['status']})"


@cache
def _rows():
    return {row["food"]: row for row in table("foods.csv")}


def _row(name):
    """A row of the table, or an error that names the nearest foods."""
    rows = _rows()
    if isinstance(name, str) and name in rows:
        return rows[name]
    words = str(name).lower()
    near = [each for each in rows if words in each or each.split(",")[0] in words]
    near = near or difflib.get_close_matches(words, rows, n=3, cutoff=0.5)
    hint = (
        "did you mean " + " or ".join(repr(each) for each in near) if near else "try food_names()"
    )
    raise UnknownName(f"name: there is no food {name!r} in the table; {hint}.")
