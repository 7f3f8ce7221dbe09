"""The search for starting times: every task as late as possible, and later is better.

Everything here is whole seconds before the service, which stands at 0, so starts are negative.
A set of rules "a starts at least so long before b" has one latest solution, found by moving
starts earlier until no rule is broken. Where more hands or equipment would be needed than there
are, two of the tasks cannot run side by side: each way of putting one before the other is one
more rule, and is tried. That is complete: a plan that keeps every limit is found if there is
one and the tries suffice.
"""

import itertools
from dataclasses import dataclass

TRIES = 4000  # about half a second; a service of 20 tasks takes a few dozen


@dataclass(frozen=True)
class Resource:
    """How many there are of something, and what each task takes of it, by index."""

    capacity: int
    needs: dict


@dataclass(frozen=True)
class Problem:
    """Lengths of work, the earliest start allowed for each, and rules between pairs.

    `rules` are (a, b, gap): a starts at least `gap` before b. A negative gap says how much later
    a may start, which is how a hold limit reads from the other end. `latest` is the latest start
    that the service itself allows.
    """

    work: tuple
    latest: tuple
    earliest: tuple
    rules: tuple
    resources: tuple


@dataclass(frozen=True)
class Found:
    """Starts, or None where no way was found; and whether every way was tried."""

    starts: tuple
    tried_all: bool


def latest_starts(problem):
    """The latest starts that keep every rule, with no look at hands and equipment; None if none."""
    return _lowered(problem, list(problem.latest), (), range(len(problem.work)))


def search(problem, most_tries=TRIES):
    """The latest plan that was found: branch on the latest clash, the cheapest way first."""
    first = latest_starts(problem)
    best, tries, waiting = None, 0, [] if first is None else [(first, ())]
    while waiting and tries < most_tries:
        starts, orders = waiting.pop()
        if best is not None and sum(starts) <= sum(best):
            continue
        clash = _clash(problem, starts, ())
        if clash is None:
            best = starts
            continue
        ways = _ways(problem, starts, orders, clash)
        tries += len(clash) * (len(clash) - 1)
        # The cheapest way goes on top of the pile.
        waiting.extend(sorted(ways, key=lambda way: sum(way[0])))
    return Found(None if best is None else tuple(best), not waiting)


def settle(problem):
    """A plan that keeps every rule between tasks, and clears as many clashes as it can.

    For services that no plan fits: a clash that no order clears is left, and is named later.
    """
    starts, orders, left = latest_starts(problem), (), set()
    while clash := _clash(problem, starts, left):
        ways = _ways(problem, starts, orders, clash)
        if ways:
            starts, orders = max(ways, key=lambda way: sum(way[0]))
        else:
            left.add(clash)
    return tuple(starts)


def _ways(problem, starts, orders, clash):
    """Every way to put one of the clashing tasks before another, with the starts it leads to."""
    ways = []
    for before, after in itertools.permutations(sorted(clash), 2):
        more = (*orders, (before, after, problem.work[before]))
        lowered = _lowered(problem, list(starts), more, (after,))
        if lowered is not None:
            ways.append((lowered, more))
    return ways


def _lowered(problem, starts, orders, moved):
    """Starts moved earlier until no rule is broken; None when one would be too early."""
    rules = problem.rules + orders
    moved = list(moved)
    if any(start < low for start, low in zip(starts, problem.earliest, strict=True)):
        return None
    while moved:
        changed = set(moved)
        moved = []
        for before, after, gap in rules:
            if after in changed and starts[before] > starts[after] - gap:
                starts[before] = starts[after] - gap
                moved.append(before)
                if starts[before] < problem.earliest[before]:
                    return None
    return starts


def _clash(problem, starts, left):
    """The tasks at the latest moment when something is short, or None; `left` is passed over."""
    latest_moment, found = None, None
    for resource in problem.resources:
        for moment in {starts[i] for i in resource.needs}:
            if latest_moment is not None and moment <= latest_moment:
                continue
            busy = frozenset(
                i for i in resource.needs if starts[i] <= moment < starts[i] + problem.work[i]
            )
            short = sum(resource.needs[i] for i in busy) > resource.capacity
            if short and busy not in left:
                latest_moment, found = moment, busy
    return found
