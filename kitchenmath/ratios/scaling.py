"""A recipe for more or fewer: the factor, what it multiplies, and what it must not.

And a total shared out in parts, by weight or by volume.
"""

import math
from dataclasses import dataclass

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.units.door import alike, amount, instance, one_of, plain_number, positive
from kitchenmath.units.measures import density_of
from kitchenmath.units.registry import Q_, Quantity, kind_of
from kitchenmath.units.saying import figures, say

# What grows with the recipe; the rest (time, temperature, length, percent) does not.
GROWS = ("weight", "volume", "number", "area", "money", "energy")

# Words that mark an ingredient as seasoned to taste.
TO_TASTE = (
    "salt", "pepper", "chilli", "spice", "spices", "herbs", "vinegar", "lemon", "mustard", "soy",
)  # fmt: skip

STAY = {
    "time": "not multiplied: time goes with the thickness of the pieces and the depth in the pan, "
    "not with their number; a full pan also takes longer to come back to the boil",
    "temperature": "not multiplied: the oven stays as it was",
    "length": "not multiplied: keep the depth, and let the pan's area grow (`pan_factor`)",
    "percent": "not multiplied: a percent stays true at any size",
}
REMINDER = (
    "No factor says how much boils away or how long that takes: a wide pan loses more than a deep "
    "one."
)


@dataclass(frozen=True)
class Scaled:
    """A scaled recipe: the amounts, and what to look at again.

    Attributes
    ----------
    amounts : dict of str to Quantity
        In the units that came.
    look_again : dict of str to str
        For each line that does not scale simply, one sentence.
    factor : float
    """

    amounts: dict
    look_again: dict
    factor: float

    def __str__(self):
        lines = [f"x {figures(self.factor)}"]
        for name, quantity in self.amounts.items():
            remark = f" ({self.look_again[name]})" if name in self.look_again else ""
            lines.append(f"{name}: {say(quantity)}{remark}")
        return "\n".join([*lines, REMINDER])


def conversion_factor(old, new):
    """What to multiply a recipe by: what is wanted over what it makes.

    More portions and larger portions both count: 50 of 230 g from a recipe for 35 of 185 g is
    not 50/35.

    Parameters
    ----------
    old, new : Quantity, or pair of (portions, Quantity)
        What the recipe makes and what is wanted: a whole amount such as `Q_(4, "kg")`, a number
        of portions such as `Q_(24, "count")`, or portions with their size, `(24, Q_(60, "g"))`.

    Returns
    -------
    float

    Raises
    ------
    WrongKind
        When the two are not of one kind.
    OutOfRange

    Examples
    --------
    (50 · 230 g) / (35 · 185 g) = 1.776.

    >>> round(conversion_factor(old=(35, Q_(185, "g")), new=(50, Q_(230, "g"))), 3)
    1.776

    References
    ----------
    A culinary instructor's page (host withheld): the figures of the example.
    """
    old_u, new_u = alike(_made(old, "old"), "old", _made(new, "new"), "new")
    return float(new_u / old_u)


def _made(amount_made, name):
    """An amount, or portions times their size."""
    if not isinstance(amount_made, tuple | list):
        return amount_made
    if len(amount_made) != 2:
        raise WrongKind(f'{name}: needs portions and size, as in (24, Q_(60, "g")).')
    portions, size = amount_made
    number = portions if isinstance(portions, Quantity) else Q_(portions, "count")
    positive(size, f"{name}, size")
    return amount(number, "count", f"{name}, portions", above=0) * size


def scale(recipe, factor, to_taste=TO_TASTE):
    """A recipe times a factor, with a remark at each line that does not scale simply.

    Weights, volumes and counts are multiplied. Times, temperatures, lengths and percents stay as
    they are and say so: twice the soup is not twice as hot, and twice the rolls take as long.

    Parameters
    ----------
    recipe : dict of str to Quantity
    factor : float, above 0
        From `conversion_factor` or `pan_factor`.
    to_taste : sequence of str, optional
        Words in an ingredient's name that mark it as seasoned to taste.

    Returns
    -------
    Scaled
        `amounts`, `look_again` and `factor`.

    Raises
    ------
    WrongKind
        For a line without a unit.
    OutOfRange

    Examples
    --------
    1.25 lb for 100, cooked for 348: x 3.48 is 4.35 lb; the two hours stay two hours.

    >>> stew = scale({"beef": Q_(1.25, "lb"), "braising": Q_(2, "h")}, factor=3.48)
    >>> print(say(stew.amounts["beef"]), "and", say(stew.amounts["braising"]))
    4.35 lb and 2 h

    Notes
    -----
    Seasoning is multiplied and marked: what it must season is not only the weight, since less
    boils away from a deep pot and a tongue is the judge. Where salt is weighed on purpose (a
    dough, a brine, a sausage) the multiplied weight is right. Seasoning with restraint first is
    common practice.

    References
    ----------
    US Armed Forces Recipe Service (TM 10-412), recipe conversion: 348/100 = 3.48, 4.35 lb.
    """
    instance(recipe, dict, "recipe", 'a table such as {"beef": Q_(1.25, "lb")}')
    instance(to_taste, list | tuple | set, "to_taste", 'a list of words such as ("salt",)')
    factor = plain_number(factor, "factor", above=0)
    amounts, look_again = {}, {}
    for name, quantity in recipe.items():
        amount(quantity, str(getattr(quantity, "units", "g")), str(name))
        kind = kind_of(quantity)
        amounts[name] = quantity * factor if kind in GROWS else quantity
        if remark := _remark(name, kind, amounts[name], to_taste):
            look_again[name] = remark
    return Scaled(amounts, look_again, float(factor))


def _remark(name, kind, quantity, to_taste):
    """What to look at again in one line of a recipe, or None."""
    if kind not in GROWS:
        return STAY.get(kind, "not multiplied: this is no amount")
    if any(word in str(name).casefold().split() for word in to_taste):
        return "multiplied; hold a quarter back, taste, then the rest"
    number = quantity.magnitude
    if kind == "number" and abs(number - round(number)) > 1e-6:
        return "no whole number: weigh it, or round it and mind the difference"
    return None


def split(total, parts, by="weight", densities=None):
    """A total shared out in parts, such as 3 parts of oil to 1 of vinegar.

    Two to one by weight is not two to one by volume: a cup of sugar weighs 200 g, and a cup of
    water 237 g.

    Parameters
    ----------
    total : Quantity [weight or volume]
    parts : dict of str to float
        Above 0, in any scale: 3 to 1 is 75 to 25.
    by : str
        What a part is: "weight" or "volume". A total of that kind needs no density.
    densities : dict of str to (Quantity [g/mL] or str), optional
        Where total and parts are of different kinds. An ingredient that is not here is looked up
        by its own name in `household_names()`; a str is another name to look up.

    Returns
    -------
    dict of str to Quantity
        In the unit of `total`, as is the sum.

    Raises
    ------
    WrongKind
        When the total is neither weight nor volume.
    OutOfRange
    UnknownName
        When a density is needed and not known.

    Examples
    --------
    A kilo of sugar and water, 2 : 1 by weight, and 2 : 1 by cups: 2 · 200 to 237 g.

    >>> print(say(split(Q_(1, "kg"), {"sugar": 2, "water": 1})["sugar"].to("g"), 3))
    667 g
    >>> cups = split(Q_(1, "kg"), {"granulated sugar": 2, "water": 1}, by="volume")
    >>> print(say(cups["granulated sugar"].to("g"), 3))
    628 g

    Notes
    -----
    A total volume is the sum of the volumes before mixing: sugar sinks into water, so a mixed
    syrup fills less.
    """
    one_of(by, ("weight", "volume"), "by")
    if not instance(parts, dict, "parts", 'a table such as {"sugar": 2, "water": 1}'):
        raise OutOfRange("parts: needs one part at least.")
    whole_u, kind = positive(total, "total"), kind_of(total)
    if kind not in ("weight", "volume"):
        raise WrongKind(f"total: needs a weight or a volume, and {say(total)} is a {kind}.")
    shares = {name: _part(part, name) for name, part in parts.items()}
    if kind != by:
        # Volumes times density are weights; weights over density are volumes.
        power = 1 if by == "volume" else -1
        shares = {name: part * _g_per_ml(name, densities) ** power for name, part in shares.items()}
    unit, whole = str(total.units), math.fsum(shares.values())
    return {name: Q_(whole_u * part / whole, unit) for name, part in shares.items()}


def _part(part, name):
    return float(plain_number(part, f"parts, {name}", above=0))


def _g_per_ml(name, densities):
    density = (densities or {}).get(name, name)
    density = density if isinstance(density, Quantity) else density_of(density)
    return amount(density, "g/mL", f"densities, {name}", above=0)
