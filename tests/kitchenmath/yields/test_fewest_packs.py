"""Whole packs against every mix there is."""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitchenmath.yields.fewest_packs import _Search, fewest_packs

SIZES = st.lists(st.sampled_from([0.5, 1, 2, 2.5, 3, 5, 7, 10]), min_size=1, max_size=3)


def worth(need, sizes, prices, numbers):
    """Cost, what is left over, and how many packs: the less the better, in this order."""
    held = sum(n * size for n, size in zip(numbers, sizes, strict=True))
    paid = sum(n * price for n, price in zip(numbers, prices, strict=True))
    return round(paid, 6), round(held - need, 6), sum(numbers)


@settings(deadline=None, max_examples=150)
@given(st.floats(0.1, 20).map(lambda need: round(need, 1)), SIZES, st.data())
def test_no_mix_is_better(need, sizes, data):
    """Referee: every mix of up to twice the need, where each pack may fill it by itself."""
    prices = [data.draw(st.sampled_from([0, 1.5, 2, 3.1])) for _ in sizes]
    prices = [0] * len(sizes) if 0 in prices else prices
    found = worth(need, sizes, prices, fewest_packs(need, sizes, prices))
    tries = itertools.product(*(range(int(need / size) + 2) for size in sizes))
    mixes = [worth(need, sizes, prices, numbers) for numbers in tries]
    best = min(mix for mix in mixes if mix[1] >= 0)
    cheapest = min(range(len(sizes)), key=lambda i: (prices[i] / sizes[i], -sizes[i]))
    small_enough = all(need <= 2 * sizes[cheapest] for _ in sizes)

    assert found[1] >= 0
    assert best <= found
    assert best == found or not small_enough


@pytest.mark.parametrize(
    ("need", "sizes", "numbers"),
    [
        (1e6, [1, 100, 5000, 25000], (0, 0, 0, 40)),
        (1_000_003, [1, 100, 5000, 25000], (3, 0, 0, 40)),
        (987_654, [2, 500, 5000, 25000], (77, 5, 2, 39)),
    ],
)
def test_a_ton_in_packs_from_a_gram_to_a_sack_ends(need, sizes, numbers):
    """By hand: 39 sacks are 975 kg, 2 x 5 kg 985, 5 x 500 g 987.5, and 77 x 2 g the last 154 g."""
    assert numbers == fewest_packs(need, sizes)


def test_the_cheapest_mix_may_leave_more_over():
    """By hand: 9 kg. A sack of 10 kg at 8 is cheaper than nine bags of 1 kg at 1."""
    assert (1, 0) == fewest_packs(9, [10, 1], [8, 1])
    assert (0, 7) == fewest_packs(7, [10, 1], [8, 1])


def fewest_left_and_packs(need_g, sizes_g):
    """Referee: gram by gram, the fewest packs that hold just so much; the first that covers."""
    fewest = [0] + [10**9] * (need_g + max(sizes_g))
    for held in range(1, len(fewest)):
        fewest[held] = 1 + min((fewest[held - size] for size in sizes_g if size <= held), default=0)
    held = next(held for held in range(need_g, len(fewest)) if fewest[held] < 10**9)
    return held - need_g, fewest[held]


def test_five_nearly_equal_sizes_are_shared_out_exactly():
    """Bags of 4.3 to 4.9 kg: millions of mixes as good as each other, and none is tried in vain."""
    sizes = [0.549, 0.523, 0.600, 0.547, 0.588]
    found = worth(21.026, sizes, [0] * 5, fewest_packs(21.026, sizes))
    left_g, count = fewest_left_and_packs(21_026, [549, 523, 600, 547, 588])

    assert (round(1000 * found[1]), found[2]) == (left_g, count)


def test_a_search_without_end_is_ended_and_covers_the_need(monkeypatch):
    """Sizes with no common measure: at most 3000 branches, and enough is bought."""
    sizes = [14.402 * 2**0.5, 0.001 * 3**0.5, 0.04 * 5**0.5, 0.003 * 7**0.5, 0.001 * 11**0.5]
    branches = []
    tried = _Search.branch
    monkeypatch.setattr(_Search, "branch", lambda *given: (branches.append(1), tried(*given))[1])
    numbers = fewest_packs(226.6, sizes)

    assert len(branches) <= 3001
    assert sum(n * size for n, size in zip(numbers, sizes, strict=True)) >= 226.6
