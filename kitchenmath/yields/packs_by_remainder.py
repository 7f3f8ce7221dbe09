"""Which packs to buy, exactly and at once, where all sizes are multiples of one small measure.

All but the best pack (the cheapest by content, or the largest) only set the remainder that the
total leaves over whole best packs. For each remainder the dearest part, what is paid above the best
pack's rate, is made as small as it can be; then the totals from the need up are compared, one for
each remainder.
"""

import math

import numpy as np

_MOST_REMAINDERS = 200_000
_NEVER = 1 << 62


def packs_by_remainder(need, sizes, prices, best):
    """Numbers of each pack, or None where sizes or prices are no whole multiples.

    Parameters
    ----------
    need : float
    sizes, prices : list of float
        Prices of nought where there are none.
    best : int
        Which pack covers what the others leave.

    Returns
    -------
    tuple of int or None
    """
    units, cents = _whole(sizes, 1e6), _whole(prices, 100)
    if units is None or cents is None or units[best] > _MOST_REMAINDERS:
        return None
    measure = sizes[best] / units[best]
    wanted = math.ceil(need / measure - 1e-6)
    base, rate = units[best], cents[best]
    above = [cents[i] * base - units[i] * rate for i in range(len(units))]
    others = [i for i in range(len(units)) if i != best]
    # A key is what is paid above the best rate and, after it, how many more packs that makes: a
    # pack of half the best one's size is half a pack more. In whole numbers it is times the base.
    after = base * base + 1
    if (max(above) + 1) * after >= _NEVER // (4 * base):
        return None
    keys, taken = np.full(base, _NEVER), []
    keys[0] = 0
    for i in others:
        more = base - units[i]
        keys, number = _with_pack(keys, units[i] % base, above[i] * after + more)
        taken.append(number)
    totals = wanted + (np.arange(base) - wanted) % base
    paid = np.where(keys < _NEVER, totals * rate + keys // after, _NEVER)
    order = np.lexsort((keys % after + totals, totals, paid))
    return _numbers(int(order[0]), int(totals[order[0]]), units, best, others, taken)


def _whole(numbers, per_one):
    """The numbers in whole multiples of their largest common measure, or None."""
    grains = [round(per_one * number) for number in numbers]
    if any(abs(g - per_one * n) > 1e-6 * max(1, g) for g, n in zip(grains, numbers, strict=True)):
        return None
    measure = math.gcd(*grains) or 1
    return [grain // measure for grain in grains]


def _with_pack(keys, step, price):
    """The smallest keys when any number of one more pack may be taken, and that number.

    Along the ring of remainders that its size steps through, taking n costs n times the price: a
    running least of (key - place x price), twice round, as the ring has no beginning.
    """
    base = len(keys)
    rings = math.gcd(step, base) if step else base
    length = base // rings
    places = np.arange(2 * length)
    ring = (np.arange(rings)[:, None] + places * step) % base
    level = np.where(keys[ring] < _NEVER, keys[ring] - places * price, _NEVER)
    least = np.minimum.accumulate(level, axis=1)
    since = np.maximum.accumulate(np.where(level == least, places, 0), axis=1)
    second = slice(length, None)
    found = np.where(least < _NEVER // 2, least + places * price, _NEVER)[:, second]
    after, number = np.empty_like(keys), np.empty_like(keys)
    after[ring[:, second]] = found
    number[ring[:, second]] = (places - since)[:, second]
    return after, number


def _numbers(remainder, total, units, best, others, taken):
    """Back from a remainder to the packs that make it; None where they hold more than the total."""
    numbers = [0] * len(units)
    for i, number in zip(reversed(others), reversed(taken), strict=True):
        numbers[i] = int(number[remainder])
        remainder = (remainder - numbers[i] * units[i]) % units[best]
    held = sum(number * unit for number, unit in zip(numbers, units, strict=True))
    if held > total:
        return None
    numbers[best] = (total - held) // units[best]
    return tuple(numbers)
