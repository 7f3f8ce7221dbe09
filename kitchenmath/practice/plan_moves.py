"""From a typed plan and what is wrong with it to its chart: which one move mends it, what waits.

Candidates for a move are the moments at which something else begins, ends or runs out; between two
of these nothing changes, so a start that works is among them if one task alone can mend the plan.
"""

import math

from kitchenmath.practice.plan_chart import Broken, Move, PlanBar, PlanChart, Waits
from kitchenmath.service.clock import read_clock
from kitchenmath.service.tasks import followers

LONG_MIN, LONG_SHARE = 15, 0.5  # a wait is worth a word from here on, and half of what it may be


def chart_of(kitchen, starts, findings):
    """The chart of a plan.

    Parameters
    ----------
    kitchen : Kitchen
    starts : dict of str to str
        Clock times by task.
    findings : list of Finding
        What is wrong with them.

    Returns
    -------
    PlanChart
    """
    plan = _Typed(kitchen, starts, findings)
    return PlanChart(
        bars=tuple(_bar(plan, name) for name in sorted(plan.starts_s, key=plan.starts_s.get)),
        serve_min=plan.serve_s / 60,
        opens_min=None if plan.opens_s is None else plan.opens_s / 60,
        broken=tuple(
            Broken(each.rule, each.tasks, *(moment_s / 60 for moment_s in each.span_s))
            for each in findings
            if each.span_s
        ),
        move=_move(plan),
        quality=_long_wait(plan) or _least_spare(plan),
    )


class _Typed:
    """A typed plan beside its kitchen, in seconds."""

    def __init__(self, kitchen, starts, findings):
        self.kitchen, self.findings = kitchen, findings
        self.tasks = {task.name: task for task in kitchen.tasks}
        self.starts_s = {
            name: read_clock(start, name) for name, start in starts.items() if name in self.tasks
        }
        self.serve_s, self.opens_s = kitchen.rules.serve_s, kitchen.rules.opens_s
        self.users = {
            name: [task.name for task in tasks] for name, tasks in followers(self.tasks).items()
        }
        self.wrong = {(each.rule, each.tasks) for each in findings}
        self.caught = {name for each in findings for name in each.tasks}

    def ready_s(self, name):
        """When a task is done and rested."""
        return self.starts_s[name] + self.tasks[name].work_s + self.tasks[name].rest_s

    def use(self, name):
        """The moment at which it is used and by what; (None, "") where that has no start yet."""
        there = [user for user in self.users[name] if user in self.starts_s]
        if there:
            last = max(there, key=self.starts_s.get)
            return self.starts_s[last], last
        return (None, "") if self.users[name] else (self.serve_s, "")

    def wait_s(self, name):
        """How long it waits; None where it is used by nothing that has a start."""
        used_s, _ = self.use(name)
        return None if used_s is None else max(0, used_s - self.ready_s(name))

    def works_at(self, name, start_s, mended=None):
        """Whether a task moved there breaks nothing new, and no more what was to be mended.

        Only its own timing and that of what it uses can change, so these are asked first: most
        moves end there.
        """
        rules, starts_s = self.kitchen.rules, self.starts_s | {name: start_s}
        near = [each for each in (name, *self.tasks[name].after) if each in starts_s]
        return (
            all(self._may_be(rules.timing(each, starts_s), mended) for each in near)
            and self._may_be(rules.too_early(starts_s), mended)
            and self._may_be(rules.short(starts_s), mended)
        )

    def _may_be(self, found, mended):
        """Whether nothing was found but what is wrong already, less what is to be mended."""
        return all(
            (each.rule, each.tasks) in self.wrong
            and (mended is None or (each.rule, each.tasks) != (mended.rule, mended.tasks))
            for each in found
        )

    def moments_s(self, name):
        """The starts of a task at which something changes."""
        task, moments = self.tasks[name], {self.serve_s, self.opens_s}
        spans = {0, task.work_s, task.work_s + task.rest_s}
        spans |= {max(spans) + task.hold_s} if task.hold_s < math.inf else set()
        for other, start_s in self.starts_s.items():
            if other == name:
                continue
            hold_s = self.tasks[other].hold_s
            ends = [start_s, start_s + self.tasks[other].work_s, self.ready_s(other)]
            moments |= {*ends, *([ends[-1] + hold_s] if hold_s < math.inf else [])}
        return {moment - span for moment in moments - {None} for span in spans}


def _bar(plan, name):
    task = plan.tasks[name]
    spans_s = (task.work_s, task.rest_s, plan.wait_s(name) or 0)
    return PlanBar(name, plan.starts_s[name] / 60, *(span_s / 60 for span_s in spans_s))


def _move(plan):
    """One start that works: of one task alone where that mends it, else of the plan that works."""
    if not plan.findings:
        return None
    for finding in plan.findings:
        for name in (each for each in finding.tasks if each in plan.starts_s):
            now_s = plan.starts_s[name]
            for start_s in sorted(plan.moments_s(name), key=lambda at_s: (abs(at_s - now_s), at_s)):
                if plan.works_at(name, start_s, finding):
                    return Move(name, start_s / 60, alone=True)
    name = next((name for each in plan.findings for name in each.tasks if name in plan.tasks), None)
    return name and Move(name, plan.kitchen.plan.starts_s[name] / 60, alone=False)


def _waits(plan):
    """(task, wait, limit) in seconds of all that wait and are part of nothing broken."""
    return [
        (name, plan.wait_s(name), plan.tasks[name].hold_s)
        for name in plan.starts_s
        if name not in plan.caught and plan.wait_s(name) is not None
    ]


def _long_wait(plan):
    """The wait that takes the largest share of what it may, or None where none is long."""
    long = [
        (wait_s / hold_s, name, wait_s, hold_s)
        for name, wait_s, hold_s in _waits(plan)
        if 60 * LONG_MIN <= wait_s and LONG_SHARE * hold_s <= wait_s
    ]
    if not long:
        return None
    _, name, wait_s, hold_s = max(long)
    now_s = plan.starts_s[name]
    later = (at_s for at_s in sorted(plan.moments_s(name), reverse=True) if at_s > now_s)
    found_s = next((at_s for at_s in later if plan.works_at(name, at_s)), None)
    return Waits(name, plan.use(name)[1], wait_s / 60, hold_s / 60, True, found_s and found_s / 60)


def _least_spare(plan):
    """Where somebody's work is followed soonest by what needs it."""
    tight = [
        (wait_s, name, hold_s)
        for name, wait_s, hold_s in _waits(plan)
        if plan.tasks[name].hands and plan.use(name)[1]
    ]
    if not tight:
        return None
    wait_s, name, hold_s = min(tight)
    may_min = hold_s / 60 if hold_s < math.inf else None
    return Waits(name, plan.use(name)[1], wait_s / 60, may_min, False)
