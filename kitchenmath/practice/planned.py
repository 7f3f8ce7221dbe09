"""A question whose answer is a whole service plan, judged by what it must keep to.

Many plans are right. A plan earns the points of each rule that it keeps; each rule that it breaks
is named like a slip, with what clashes and why people do it. A few minutes over cost half a point.
A slip is told by a plan that is right for another kitchen: one without rests, with a second oven,
with a cook more.
"""

import inspect
import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache

from kitchenmath.errors import KitchenError, OutOfRange
from kitchenmath.practice.plan_evening import in_the_evening
from kitchenmath.practice.plan_lines import only_names, placed, read_plan
from kitchenmath.practice.plan_moves import chart_of
from kitchenmath.practice.plan_played import played, starts_of
from kitchenmath.practice.question_kinds import AskedQuestion
from kitchenmath.practice.verdicts import Found, Verdict
from kitchenmath.practice.words import (
    ALL_KEPT,
    ONE_PLAN,
    and_more,
    begins_at,
    no_plan,
    not_given,
    parts_of_worth,
)
from kitchenmath.service.clock import say_clock

# What points are given for, and the findings that lose them.
PARTS = {
    "order": ("late", "order", "rest"),
    "holding": ("hold",),
    "hands": ("hands", "cook"),
    "equipment": ("equipment",),
    "opening": ("opening",),
}
SMALL_S = 300  # broken by no more than this, a rule costs little
SMALL_COSTS = 0.5
MOST_SENTENCES = 3  # on one slip; a plan with all at one time would fill a page


@dataclass(frozen=True)
class PlanSlip:
    """One usual slip of planning.

    Parameters
    ----------
    name : str
        For the report: "forgot the rest".
    rules : tuple of str
        The rules of a `Finding` by which it shows: "rest", "hold", "cook", …
    sentence : str
        To the student: what happened, and why people do it.
    formula : callable
        Of the kitchen: the one for which this plan would be right, or the starts to which the
        slip leads. None where it makes no difference.
    tasks : tuple of str
        Where it shows at these tasks only.
    looks : callable, optional
        Of the kitchen and the starts: whether the whole plan looks like it. Where it does, the
        slip explains all findings of its rules, as long as one of `tasks` is among them.
    """

    name: str
    rules: tuple
    sentence: str
    formula: Callable
    tasks: tuple = ()
    looks: Callable | None = None

    def shows_in(self, kitchen, starts, findings):
        """The findings that this slip leads to; none where the plan does not look like it."""
        ruled = [finding for finding in findings if finding.rule in self.rules]
        tasks = set(self.tasks)
        shown = [each for each in ruled if not tasks or tasks & set(each.tasks)]
        if self.looks is None or not shown:
            return shown
        return ruled if self.looks(kitchen, starts) else []


@dataclass(frozen=True)
class PlanQuestion(AskedQuestion):
    """A question that asks for the start of every task of a service.

    Parameters
    ----------
    id : str
    kitchen : callable
        The `Kitchen` from given numbers and earlier answers, taken by name.
    worth : dict of str to float
        Points for each of `PARTS` that a plan keeps to. A task that is not on the plan costs its
        share of them.
    slips : tuple of PlanSlip
        The narrower ones first: a finding is told by the first that it shows.
    working : tuple of str
        How one gets there; the starts of one plan that works follow.
    skill, lesson : str
    """

    id: str
    kitchen: Callable
    worth: dict
    slips: tuple = ()
    working: tuple = ()
    skill: str = ""
    lesson: str = ""
    kind: str = "plan"

    def __post_init__(self):
        if self.worth.keys() != PARTS.keys():
            raise KitchenError(parts_of_worth(PARTS))

    @property
    def points(self):
        """What a plan earns that keeps every rule."""
        return float(sum(self.worth.values()))

    def kitchen_of(self, known):
        """The kitchen with these numbers."""
        names = tuple(inspect.signature(self.kitchen).parameters)
        missing = [name for name in names if name not in known]
        if missing:
            raise KitchenError(not_given(missing, self.id))
        return _built(self.kitchen, names, tuple(known[name] for name in names))

    def right(self, known):
        """One plan that works with these numbers, as a `Plan`.

        Raises
        ------
        OutOfRange
            When there is none: then the key's steps are to be changed.
        """
        plan = self.kitchen_of(known).plan
        if not plan.feasible:
            raise OutOfRange(no_plan(self.id, plan.conflicts[0]))
        return plan

    def look(self, answer):
        """The starts as typed.

        Raises
        ------
        KitchenError
            With the sentence that the student sees.
        """
        return read_plan(answer)

    def judge(self, answer, known, own=None, sound=()):
        """The verdict on a plan; `own` and `sound` as for a `Question`, and not needed here.

        Parameters
        ----------
        answer : str or dict or None
        known : dict of str to Quantity
        own : dict, optional
        sound : collection of str

        Returns
        -------
        Verdict
        """
        right = self.right(known)
        kitchen = self.kitchen_of(known)
        tasks = [task.name for task in kitchen.tasks]
        typed, verdict = self.looked(None if only_names(answer, tasks) else answer, right)
        if verdict:
            return verdict
        plan = placed(typed, tasks)
        starts, evening = in_the_evening(plan, kitchen)
        plan = replace(plan, starts=starts)
        findings = kitchen.findings(plan.starts)
        chart = chart_of(kitchen, plan.starts, findings)
        if not findings:
            verdict = self._verdict(
                "right", self.points, str(plan), right, notes=(ALL_KEPT, *evening)
            )
            return replace(verdict, chart=chart)
        told, untold = self._told(kitchen, plan.starts, findings)
        found = tuple(
            Found(slip.name, f"{slip.sentence} {_briefly(shown)}", self._lost(shown))
            for slip, shown in told
        )
        notes = (*(each.sentence for each in untold), *plan.odd, *evening)
        points = self._earned(findings, len(plan.starts) / len(kitchen.tasks))
        outcome = "slip" if told else "wrong"
        return replace(self._verdict(outcome, points, str(plan), right, found, notes), chart=chart)

    def slip_value(self, slip, known):
        """The starts that a slip leads to, or None where it makes no difference."""
        kitchen = self.kitchen_of(known)
        starts = starts_of(slip.formula(kitchen))
        shown = starts and slip.shows_in(kitchen, starts, kitchen.findings(starts))
        return starts if shown else None

    def collisions(self, known):
        """Names of the slips that hide behind others: their plan shows them, nobody is told."""
        kitchen, hidden = self.kitchen_of(known), []
        for slip in self.slips:
            starts = starts_of(slip.formula(kitchen))
            findings = kitchen.findings(starts) if starts else []
            told, _ = self._told(kitchen, starts, findings)
            if slip.shows_in(kitchen, starts, findings) and slip not in [each for each, _ in told]:
                hidden.append(slip.name)
        return hidden

    def played(self, known):
        """Answers as students give them, and what is to be found about each."""
        return played(self, known)

    def _told(self, kitchen, starts, findings):
        """Slips with the findings by which they show, and the findings that no slip explains."""
        told, left = [], list(findings)
        for slip in self.slips:
            shown = slip.shows_in(kitchen, starts, left)
            if shown:
                told.append((slip, shown))
                left = [finding for finding in left if finding not in shown]
        return told, left

    def _lost(self, findings):
        """Points of the parts that these findings break; two slips may lose the same ones."""
        return float(sum(self._costs(part, findings) for part in PARTS))

    def _costs(self, part, findings):
        """What one part loses: little where its worst finding is a matter of minutes."""
        over_s = [each.over_s for each in findings if each.rule in PARTS[part]]
        if not over_s:
            return 0
        return min(self.worth[part], SMALL_COSTS if max(over_s) <= SMALL_S else math.inf)

    def _earned(self, findings, share):
        """Points of the parts that are kept, less the share of the tasks left out, in halves."""
        return math.floor(2 * (self.points - self._lost(findings)) * share + 1e-9) / 2

    def _verdict(self, outcome, points, answer, right, found=(), notes=()):
        lines = [_row(right, name) for name in right.sequence]
        first = right.sequence[0]
        return Verdict(
            question=self.id,
            outcome=outcome,
            points=float(points),
            out_of=self.points,
            found=found,
            notes=notes,
            answer=answer,
            right=begins_at(right.starts[first], first),
            working=(*self.working, ONE_PLAN, *lines),
        )


@lru_cache(maxsize=64)
def _built(kitchen, names, values):
    """A kitchen is built once for a student: all answers are judged beside the same plan."""
    return kitchen(**dict(zip(names, values, strict=True)))


def _briefly(findings):
    """What clashes, in three sentences at most."""
    said_ = [finding.sentence for finding in findings[:MOST_SENTENCES]]
    more = len(findings) - MOST_SENTENCES
    return " ".join(said_ + ([and_more(more)] if more > 0 else []))


def _row(plan, name):
    """One line of a plan: times, task, and what it takes."""
    task, done_s = plan.tasks[name], plan.ends_s(name)[0]
    takes = [*([task.cook] if task.cook else []), *task.equipment]
    takes += [f"rests until {say_clock(plan.ends_s(name)[1])}"] if task.rest_s else []
    return f"{plan.starts[name]}–{say_clock(done_s)} {name}" + (
        f" ({', '.join(takes)})" * bool(takes)
    )
