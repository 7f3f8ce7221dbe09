"""Whole packs for every need, and whole portions out of every batch."""

import math
from dataclasses import dataclass

from kitchenmath.errors import WrongKind
from kitchenmath.units.door import alike, instance, positive
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say
from kitchenmath.yields.fewest_packs import fewest_packs


@dataclass(frozen=True)
class Pack:
    """One pack as the supplier sells it.

    Parameters
    ----------
    size : Quantity [weight, volume or count]
    price : Quantity [money], optional
    """

    size: Quantity
    price: Quantity = None


@dataclass(frozen=True)
class OrderLine:
    """One line of an order list: the packs to buy and what will be left over."""

    item: str
    need: Quantity
    packs: tuple  # of (number, Pack)
    left_over: Quantity
    cost: Quantity = None

    def __str__(self):
        packs = " + ".join(f"{number} x {say(pack.size)}" for number, pack in self.packs)
        return (
            f"{self.item}: {packs} (need {say(self.need, 3)}, {say(self.left_over, 3)} left over)"
        )


def order(needs, packs):
    """Whole packs for every need: a pack is never cut, so the number is rounded up.

    Parameters
    ----------
    needs : dict of str to Quantity
        What must be bought, as purchased.
    packs : dict of str to Pack, Quantity, or a list of them
        How each is sold. Of several sizes the cheapest mix is taken where all have a price,
        else the mix with least left over; then the one with fewest packs. Small packs fill up
        at most what two of the best one hold: a cook does not buy sixty sachets for a sack.

    Returns
    -------
    list of OrderLine

    Raises
    ------
    WrongKind
        When a pack is of another kind than the need, or an item has no pack.
    OutOfRange

    Examples
    --------
    27.6 cans of maize means 28 cans.

    >>> print(order({"maize": Q_(27.6, "count")}, {"maize": Q_(1, "count")})[0])
    maize: 28 x 1 (need 27.6, 0.4 left over)

    References
    ----------
    USDA *Food Buying Guide*: 27.6 cans are ordered as 28.
    """
    instance(needs, dict, "needs", 'a table such as {"maize": Q_(27.6, "count")}')
    instance(packs, dict, "packs", 'a table such as {"maize": Q_(1, "count")}')
    return [_order_line(item, need, packs) for item, need in needs.items()]


def _order_line(item, need, packs):
    if item not in packs:
        raise WrongKind(f"packs: there is no pack for {item!r}, which the needs list.")
    sold = packs[item] if isinstance(packs[item], list | tuple) else [packs[item]]
    sold = [pack if isinstance(pack, Pack) else Pack(pack) for pack in sold]
    positive(need, f"needs, {item}")
    sizes = [alike(need, f"needs, {item}", pack.size, f"packs, {item}")[1] for pack in sold]
    priced = all(pack.price is not None for pack in sold)
    prices = [pack.price.magnitude for pack in sold] if priced else None
    numbers = fewest_packs(need.magnitude, sizes, prices)
    bought = sum(number * size for number, size in zip(numbers, sizes, strict=True))
    chosen = tuple((number, pack) for number, pack in zip(numbers, sold, strict=True) if number)
    cost = (
        sum((number * pack.price for number, pack in chosen), start=0 * sold[0].price)
        if priced
        else None
    )
    left_over = Q_(max(0.0, bought - need.magnitude), str(need.units))
    return OrderLine(item, need, chosen, left_over, cost)


def portions(edible, portion):
    """How many whole portions an amount gives: the rest is no portion, so it is rounded down.

    Parameters
    ----------
    edible, portion : Quantity [the same kind]

    Returns
    -------
    int

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    4 kg in portions of 170 g: 23.5, so 23.

    >>> portions(edible=Q_(4, "kg"), portion=Q_(170, "g"))
    23
    """
    edible_u, portion_u = alike(edible, "edible", portion, "portion")
    return math.floor(edible_u / portion_u + 1e-9)
