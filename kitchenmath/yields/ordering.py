"""Whole packs for every need, and whole portions out of every batch."""

import itertools
import math
from dataclasses import dataclass

from kitchenmath.errors import WrongKind
from kitchenmath.units.door import alike, positive
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say


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
    return [_order_line(item, need, packs) for item, need in needs.items()]


def _order_line(item, need, packs):
    if item not in packs:
        raise WrongKind(f"packs: there is no pack for {item!r}, which the needs list.")
    sold = packs[item] if isinstance(packs[item], list | tuple) else [packs[item]]
    sold = [pack if isinstance(pack, Pack) else Pack(pack) for pack in sold]
    positive(need, f"needs, {item}")
    sizes = [alike(need, f"needs, {item}", pack.size, f"packs, {item}")[1] for pack in sold]
    numbers = _fewest(need.magnitude, sizes, [pack.price for pack in sold])
    bought = sum(number * size for number, size in zip(numbers, sizes, strict=True))
    chosen = tuple((number, pack) for number, pack in zip(numbers, sold, strict=True) if number)
    priced = all(pack.price is not None for pack in sold)
    cost = (
        sum((number * pack.price for number, pack in chosen), start=0 * sold[0].price)
        if priced
        else None
    )
    left_over = Q_(max(0.0, bought - need.magnitude), str(need.units))
    return OrderLine(item, need, chosen, left_over, cost)


def _fewest(need, sizes, prices):
    """Numbers of each pack: least cost (or least left over), then fewest packs.

    The best pack (the cheapest by content, or the largest) is topped up to cover the need, so
    only the others are tried out, each up to what two of the best one hold.
    """
    priced = all(price is not None for price in prices)
    prices = [price.magnitude for price in prices] if priced else [0] * len(sizes)
    best = min(range(len(sizes)), key=lambda i: (prices[i] / sizes[i], -sizes[i]))

    def topped_up(numbers):
        short = need - sum(number * size for number, size in zip(numbers, sizes, strict=True))
        more = max(0, _whole(short / sizes[best]))
        return tuple(more if i == best else number for i, number in enumerate(numbers))

    def worth(numbers):
        bought = sum(number * size for number, size in zip(numbers, sizes, strict=True))
        paid = sum(number * price for number, price in zip(numbers, prices, strict=True))
        return (paid, round(bought - need, 9), sum(numbers))

    most = [0 if i == best else _whole(2 * sizes[best] / size) for i, size in enumerate(sizes)]
    most = [min(number, _whole(need / size)) for number, size in zip(most, sizes, strict=True)]
    tries = itertools.product(*(range(number + 1) for number in most))
    return min(map(topped_up, tries), key=worth)


def _whole(number):
    """Rounded up, but 12.000000001 packs from floating point are 12."""
    return math.ceil(number - 1e-9)


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
