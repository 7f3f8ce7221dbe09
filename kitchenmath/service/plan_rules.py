"""The rules of a service, made ready once: whoever tries many starts asks them in plain numbers."""

import itertools
import math
from typing import NamedTuple

from kitchenmath.service.clock import read_clock, say_clock, say_span
from kitchenmath.service.tasks import crew_of, followers, in_order, kit_of


class Finding(NamedTuple):
    """One thing that is wrong with a plan.

    rule: "missing", "unreadable", "unknown", "late", "order", "rest" (in order but for the rest),
    "hold", "opening", "cook" (one in two places), "hands" or "equipment".
    tasks: the names that clash.
    over_s: by how much, in seconds; infinite where it has no measure.
    span_s: from when to when it is so, in seconds from midnight; () where it has no place.
    """

    rule: str
    tasks: tuple
    sentence: str
    over_s: float = math.inf
    span_s: tuple = ()


class PlanRules:
    """What the starts of a service must keep to.

    Parameters
    ----------
    tasks : list of Task
    serve_at : str or datetime.time
    cooks : int or list of str, optional
    equipment : dict of str to int, optional
    opens : str or datetime.time, optional

    Raises
    ------
    KitchenError
        For tasks that cannot be planned at all, and for a time that is no clock time.
    """

    def __init__(self, tasks, serve_at, cooks=None, equipment=None, opens=None):
        self.tasks = in_order(tasks)
        self.crew, self.kit = crew_of(cooks, self.tasks), kit_of(equipment, self.tasks)
        self.serve_s = read_clock(serve_at, "serve_at")
        self.opens_s = None if opens is None else read_clock(opens, "opens")
        self._waits_for = followers(self.tasks)

    def broken(self, starts_s):
        """All that is wrong with these starts.

        Parameters
        ----------
        starts_s : dict of str to int
            Seconds from midnight; of the tasks that have a start.

        Returns
        -------
        list of Finding
            Timing first, then what begins too early, then hands and equipment.
        """
        timing = [
            each for name in self.tasks if name in starts_s for each in self.timing(name, starts_s)
        ]
        return timing + self.too_early(starts_s) + self.short(starts_s)

    def timing(self, name, starts_s):
        """Where one task with a start is late, in the wrong order, or waits too long."""
        task = self.tasks[name]
        used_by = [each for each in self._waits_for[name] if each.name in starts_s]
        findings = [] if self._waits_for[name] else _late(task, starts_s, self.serve_s)
        findings += _out_of_order(task, used_by, starts_s)
        if used_by or not self._waits_for[name]:
            findings += _too_long(task, used_by, starts_s, self.serve_s)
        return findings

    def too_early(self, starts_s):
        """What begins before the kitchen opens."""
        return _too_early(starts_s, self.opens_s)

    def short(self, starts_s):
        """Where hands or equipment are short."""
        return _short_of_hands(self.tasks, starts_s, self.crew) + _short_of_kit(
            self.tasks, starts_s, self.kit
        )


def _late(task, starts_s, serve_s):
    ready_s = starts_s[task.name] + task.work_s + task.rest_s
    if ready_s <= serve_s:
        return []
    late = f"{say_span(ready_s - serve_s)} after the service at {say_clock(serve_s)}"
    sentence = f"{task.name!r} is {_done(task)} at {say_clock(ready_s)}, {late}."
    rule = "rest" if ready_s - task.rest_s <= serve_s else "late"
    return [Finding(rule, (task.name,), sentence, ready_s - serve_s, (serve_s, ready_s))]


def _out_of_order(task, used_by, starts_s):
    ready_s = starts_s[task.name] + task.work_s + task.rest_s
    return [
        Finding(
            "rest" if starts_s[each.name] >= ready_s - task.rest_s else "order",
            (task.name, each.name),
            f"{each.name!r} starts at {say_clock(starts_s[each.name])}, but {task.name!r} is "
            f"{_done(task)} only at {say_clock(ready_s)}.",
            ready_s - starts_s[each.name],
            (starts_s[each.name], ready_s),
        )
        for each in used_by
        if starts_s[each.name] < ready_s
    ]


def _too_long(task, used_by, starts_s, serve_s):
    ready_s = starts_s[task.name] + task.work_s + task.rest_s
    used_s, use = serve_s, "the service"
    if used_by:
        last = max(used_by, key=lambda each: starts_s[each.name])
        used_s, use = starts_s[last.name], repr(last.name)
    wait_s = used_s - ready_s
    if wait_s <= task.hold_s:
        return []
    over = f"holds {say_span(task.hold_s)}: {say_span(wait_s - task.hold_s)} too long"
    over = over if task.hold_s else "must not wait at all"
    sentence = f"{task.name!r} waits {say_span(wait_s)} until {use} and {over}."
    over_s = wait_s - task.hold_s
    return [Finding("hold", (task.name,), sentence, over_s, (used_s - over_s, used_s))]


def _done(task):
    return "rested" if task.rest_s else "ready"


def _too_early(starts_s, opens_s):
    return [
        Finding(
            "opening",
            (name,),
            f"{name!r} starts at {say_clock(start_s)}, {say_span(opens_s - start_s)} before the "
            f"kitchen opens at {say_clock(opens_s)}.",
            opens_s - start_s,
            (start_s, opens_s),
        )
        for name, start_s in starts_s.items()
        if opens_s is not None and start_s < opens_s
    ]


def _short_of_hands(tasks, starts_s, crew):
    """Named cooks in two places first, then all hands together."""
    findings = []
    for cook in crew:
        own = {name: 1 for name, task in tasks.items() if task.cook == cook and task.hands}
        for begin_s, end_s, names, _ in _overloads(own, 1, tasks, starts_s):
            sentence = (
                f"the cook “{cook}” is wanted in two places between {say_clock(begin_s)} and "
                f"{say_clock(end_s)}: {_listed(names)}."
            )
            findings.append(_short("cook", names, sentence, begin_s, end_s))
    hands = {name: task.hands for name, task in tasks.items()}
    there = f"there {'is 1 cook' if len(crew) == 1 else f'are {len(crew)} cooks'}"
    for begin_s, end_s, names, need in _overloads(hands, len(crew), tasks, starts_s):
        sentence = (
            f"Too few hands between {say_clock(begin_s)} and {say_clock(end_s)}: "
            f"{_listed(names)} need{'s' if len(names) == 1 else ''} {need}, and {there}."
        )
        findings.append(_short("hands", names, sentence, begin_s, end_s))
    return findings


def _short_of_kit(tasks, starts_s, kit):
    findings = []
    for item, number in kit.items():
        users = {name: task.equipment.count(item) for name, task in tasks.items()}
        for begin_s, end_s, names, need in _overloads(users, number, tasks, starts_s):
            sentence = (
                f"Not enough of {item!r} between {say_clock(begin_s)} and {say_clock(end_s)}: "
                f"{_listed(names)} need{'s' if len(names) == 1 else ''} {need}, "
                f"and there is {number}."
            )
            findings.append(_short("equipment", names, sentence, begin_s, end_s))
    return findings


def _short(rule, names, sentence, begin_s, end_s):
    return Finding(rule, tuple(names), sentence, end_s - begin_s, (begin_s, end_s))


def _overloads(needs, capacity, tasks, starts_s):
    """Unbroken spans in which more is needed than there is: (begin, end, tasks, most needed)."""
    busy = [
        (starts_s[name], starts_s[name] + tasks[name].work_s, name)
        for name in needs
        if needs[name] and name in starts_s
    ]
    moments = sorted({moment for begin_s, end_s, _ in busy for moment in (begin_s, end_s)})
    spans = []
    for begin_s, end_s in itertools.pairwise(moments):
        names = [name for first, last, name in busy if first <= begin_s < last]
        need = sum(needs[name] for name in names)
        if need <= capacity:
            continue
        if spans and spans[-1][1] == begin_s:
            _, _, before, most = spans[-1]
            names = before + [name for name in names if name not in before]
            spans[-1] = (spans[-1][0], end_s, names, max(most, need))
        else:
            spans.append((begin_s, end_s, names, need))
    return spans


def _listed(names):
    quoted = [repr(name) for name in names]
    return " and ".join([", ".join(quoted[:-1]), quoted[-1]]) if len(quoted) > 1 else quoted[0]
