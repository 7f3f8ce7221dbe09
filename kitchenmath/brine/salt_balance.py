"""Where the salt goes: evened out between food and brine, left behind by steam, in a food's water.

Percents are of the whole, by weight, as a brine's strength is; where a trade counts another way
the function says so and lets you choose.
"""

import numpy as np

from kitchenmath.brine.points import unsaturated
from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import alike, amount, one_of
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

__all__ = [
    "equilibrium_strength",
    "salt_for_equilibrium",
    "salt_to_strengthen",
    "strength_after_reduction",
    "water_phase_salt",
]

_AT_20_C = Q_(20, "degC")
COUNTINGS = ("everything", "food and water")


def salt_for_equilibrium(food, water, target, counting="everything"):
    """The salt for a brine that is left until food and water are equally salty.

    Parameters
    ----------
    food, water : Quantity [weight]
    target : Quantity [percent], above 0, at most 20
        How salty everything is in the end.
    counting : "everything" or "food and water"
        What the percent is of: with the salt itself (as a strength is), or without it. Both are
        in print; at 2 % they differ by a fiftieth.

    Returns
    -------
    Quantity [weight]
        In the unit of `food`.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Notes
    -----
    The food is taken as unsalted, and as taking up salt like its weight of water. Bones, skin
    and fat hold little, so meat on the bone ends up a little saltier. Brine raw meat in the
    refrigerator, as the local food code says.

    Examples
    --------
    1 kg guinea fowl in 1 kg water to 1.5 %: 2000 x 1.5 / 98.5 = 30.46 g.

    >>> print(say(salt_for_equilibrium(Q_(1000, "g"), Q_(1000, "g"), Q_(1.5, "percent"))))
    30.46 g
    """
    one_of(counting, COUNTINGS, "counting")
    food_u, water_u = alike(food, "food", water, "water")
    amount(food, "g", "food")
    share = amount(target, "percent", "target", above=0, most=20) / 100
    salted = share / (1 - share) if counting == "everything" else share
    return Q_((food_u + water_u) * salted, str(food.units))


def equilibrium_strength(food, water, salt, counting="everything"):
    """How salty food and water both are when the salt has evened out.

    Parameters
    ----------
    food, water, salt : Quantity [weight]
    counting : "everything" or "food and water"
        As in `salt_for_equilibrium`.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    40 g salt with 1 kg meat and 1 kg water: 40 / 2040 = 1.961 %.

    >>> print(say(equilibrium_strength(Q_(1, "kg"), Q_(1, "kg"), Q_(40, "g"))))
    1.961 %
    """
    one_of(counting, COUNTINGS, "counting")
    weights = ((food, "food"), (water, "water"), (salt, "salt"))
    food_g, water_g, salt_g = (amount(weight, "g", name, above=0) for weight, name in weights)
    whole_g = food_g + water_g + (salt_g if counting == "everything" else 0)
    return Q_(100 * salt_g / whole_g, "percent")


def salt_to_strengthen(brine, start, target, temperature=_AT_20_C):
    """The salt that takes a weak brine up to strength: brine x (target - start) / (100 - target).

    Parameters
    ----------
    brine : Quantity [weight]
    start, target : Quantity [percent]
        What it is now, and what it should be.
    temperature : Quantity [temperature], 0 °C to 100 °C

    Returns
    -------
    Quantity [weight]
        In the unit of `brine`.

    Raises
    ------
    WrongKind
    OutOfRange
        When it is strong enough already; `dilute_to` in `sauces` goes the other way.

    Examples
    --------
    10 kg at 4 % up to 6 %: 10 000 x 2 / 94 = 212.8 g.

    >>> more = salt_to_strengthen(Q_(10, "kg"), start=Q_(4, "percent"), target=Q_(6, "percent"))
    >>> print(say(more.to("g")))
    212.8 g
    """
    now = unsaturated(start, temperature, "start")
    then = unsaturated(target, temperature, "target")
    amount(brine, "g", "brine", above=0)
    if np.any(then < now):
        raise OutOfRange(
            f"target: {say(target)} is weaker than the {say(start)} it has; add water."
        )
    return brine * ((then - now) / (100 - then))


def strength_after_reduction(strength, start, end):
    """How salty a broth is once it is reduced: the water leaves, the salt stays.

    A broth salted right and then reduced is salted wrong. Salt at the end.

    Parameters
    ----------
    strength : Quantity [percent]
        Before.
    start, end : Quantity [weight or volume, the same kind]
        Before and after. By weight it is exact; by volume it is right within a fiftieth of
        itself up to 3 % of salt.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange
        When more is left than there was, or salt would settle out at the boil.

    Examples
    --------
    0.8 % from 4 kg down to 1 kg: 0.8 x 4 = 3.2 %, as salty as the sea.

    >>> print(say(strength_after_reduction(Q_(0.8, "percent"), Q_(4, "kg"), Q_(1, "kg"))))
    3.2 %
    """
    percent = amount(strength, "percent", "strength", least=0, below=100)
    start_u, end_u = alike(start, "start", end, "end")
    if np.any(end_u > start_u):
        raise OutOfRange(f"end: {say(end)} is more than the {say(start)} before reducing.")
    left = Q_(percent * start_u / end_u, "percent")
    unsaturated(left, Q_(100, "degC"), "strength, reduced")
    return left


def water_phase_salt(salt, moisture):
    """Salt in the water of a food: 100 x salt / (salt + moisture). What microbes meet.

    Parameters
    ----------
    salt, moisture : Quantity [percent]
        Of the whole food, from a laboratory.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    The FDA's guidance on fish hazards (chapter 13) asks for at least 3.5 % in vacuum-packed
    smoked fish, as one of several hurdles. Packing fish airless is licensed work: the local food
    code decides.

    Examples
    --------
    2.5 % salt and 68.9 % moisture: 250 / 71.4 = 3.501 %.

    >>> print(say(water_phase_salt(salt=Q_(2.5, "percent"), moisture=Q_(68.9, "percent"))))
    3.501 %

    References
    ----------
    Ontario fish inspection sheet FB.14.14 and Maine rules, chapter 359 (formula).
    """
    salt_percent = amount(salt, "percent", "salt", least=0)
    moisture_percent = amount(moisture, "percent", "moisture", above=0)
    if np.any(salt_percent + moisture_percent > 100 + 1e-9):
        raise OutOfRange(f"moisture: {say(moisture)} and {say(salt)} salt are more than 100 %.")
    return Q_(100 * salt_percent / (salt_percent + moisture_percent), "percent")
