"""Which packs to buy: a search in whole numbers that leaves out what cannot win."""

import math

from kitchenmath.yields.packs_by_remainder import packs_by_remainder

_MOST_BRANCHES = 3000  # about 30 ms


def fewest_packs(need, sizes, prices=None):
    """Numbers of each pack: least cost (or least left over), then least left over, then fewest.

    The best pack (the cheapest by content, or the largest) covers what the others leave. Of each
    other at most as many are tried as two of the best one hold.

    Parameters
    ----------
    need : float
    sizes : list of float
        In the unit of the need.
    prices : list of float, optional

    Returns
    -------
    tuple of int
        In the order of `sizes`.

    Notes
    -----
    Sizes that are multiples of one measure, as a supplier's are, and a need of some packs go by
    their remainders: exact, in milliseconds. Else branch and bound: a branch is left where even
    its cheapest end, as if the best pack could be cut, is worth less than what is found already.
    Of the smallest pack and the best one it is the best one's number that is tried, for there are
    few; the smallest then fills up. It is exact where it ends by itself; after 3000 branches the
    best mix so far is taken, which covers the need as well.

    Examples
    --------
    5.5 kg in bags of 5 kg and 1 kg: one of each leaves half a kilo.

    >>> fewest_packs(5.5, [5, 1])
    (1, 1)
    """
    prices = prices or [0.0] * len(sizes)
    best = min(range(len(sizes)), key=lambda i: (round(prices[i] / sizes[i], 9), -sizes[i]))
    at_once = packs_by_remainder(need, sizes, prices, best)
    return _Search(need, sizes, prices, best).found if at_once is None else at_once


class _Search:
    """Packs in the order in which they are tried: large before small, the best one last."""

    def __init__(self, need, sizes, prices, best):
        others = sorted((i for i in range(len(sizes)) if i != best), key=lambda i: -sizes[i])
        self.order = [*others, best]
        self.sizes, self.prices = [sizes[i] for i in self.order], [prices[i] for i in self.order]
        self.best_size, self.best_price = sizes[best], prices[best]
        self.most = [
            min(_whole(2 * self.best_size / size), _whole(need / size)) for size in self.sizes
        ]
        self.least_left = _least_left(need, sizes)
        self.tried, self.worth, self.numbers = [0] * len(others), (math.inf,), None
        self.branches_left = _MOST_BRANCHES
        self.keep(0, need, 0.0, self.tried)
        self.branch(0, need, 0.0)

    @property
    def found(self):
        """The numbers in the order in which the packs came."""
        by_pack = dict(zip(self.order, self.numbers, strict=True))
        return tuple(by_pack[i] for i in range(len(by_pack)))

    def keep(self, count, short, paid, others):
        """Cover the rest with the best pack, and remember it if it is worth more."""
        more = max(0, _whole(short / self.best_size))
        left = more * self.best_size - short
        worth = (round(paid + more * self.best_price, 9), round(left, 9), count + more)
        if worth < self.worth:
            self.numbers, self.worth = (*others, more), worth

    def branch(self, depth, short, paid):
        """Try each number of one pack, the others after it, unless it cannot be worth more."""
        self.branches_left -= 1
        count, covered = sum(self.tried[:depth]), max(0.0, short)
        cheapest = round(paid + covered * self.best_price / self.best_size, 9)
        fewest = count + _whole(covered / max(self.sizes[depth:]))
        if (cheapest, self.least_left, fewest) >= self.worth:
            return
        others = len(self.tried)
        if depth == others:
            self.keep(count, short, paid, self.tried)
            return
        size, price = self.sizes[depth], self.prices[depth]
        fills_up = depth == others - 1 and size < self.best_size
        for number in self._fills(short, size, depth) if fills_up else self._all(depth):
            if self.branches_left < 0:
                break
            self.tried[depth] = number
            self.branch(depth + 1, short - number * size, paid + number * price)
        self.tried[depth] = 0

    def _all(self, depth):
        return range(self.most[depth], -1, -1)

    def _fills(self, short, size, depth):
        """What the smallest fills up beside each number of the best pack that leaves it some."""
        whole = max(0, _whole(short / self.best_size))
        fills = (
            max(0, _whole((short - number * self.best_size) / size))
            for number in range(max(0, whole - 3), whole + 1)
        )
        return [fill for fill in fills if fill <= self.most[depth]]


def _least_left(need, sizes):
    """What must be left over at least: all that packs can hold is a multiple of one measure."""
    grains = [round(1e6 * size) for size in sizes]
    if any(abs(grain - 1e6 * size) > 1e-3 for grain, size in zip(grains, sizes, strict=True)):
        return 0.0
    measure = math.gcd(*grains) / 1e6
    return round(max(0.0, _whole(need / measure) * measure - need), 9)


def _whole(number):
    """Rounded up, but 12.000000001 packs from floating point are 12."""
    return math.ceil(number - 1e-9)
