"""The kitchen that a plan is judged against, and wrong kitchens in which slips would be right."""

from dataclasses import dataclass, replace
from functools import cached_property

from kitchenmath.service.clock import read_clock, say_clock
from kitchenmath.service.plan import plan_back
from kitchenmath.service.plan_check import found_by
from kitchenmath.service.plan_rules import PlanRules
from kitchenmath.units.door import amount

AT_OPENING_S = 600


@dataclass(frozen=True)
class Kitchen:
    """What a plan is judged against.

    Parameters
    ----------
    serve_at : str
    tasks : tuple of Task
    cooks : int or tuple of str, optional
    equipment : dict of str to int, optional
    opens : str, optional
    """

    serve_at: str
    tasks: tuple
    cooks: int | tuple | None = None
    equipment: dict | None = None
    opens: str | None = None

    @cached_property
    def plan(self):
        """One plan that works, as `plan_back` makes it: searched for once."""
        return plan_back(self.serve_at, self.tasks, self.cooks, self.equipment, self.opens)

    @cached_property
    def rules(self):
        """What its plans must keep to: made ready once."""
        return PlanRules(self.tasks, self.serve_at, self.cooks, self.equipment, self.opens)

    def findings(self, starts):
        """What is wrong with these starts, as `check_plan` says it."""
        return found_by(self.rules, starts)

    def with_task(self, name, **changes):
        """The same kitchen with one task changed."""
        tasks = (replace(task, **changes) if task.name == name else task for task in self.tasks)
        return replace(self, tasks=tuple(tasks))

    def without_rests(self):
        """The same kitchen, where nothing has to rest."""
        return replace(self, tasks=tuple(replace(task, rest=None) for task in self.tasks))

    def with_more(self, item):
        """The same kitchen with one more of a piece of equipment."""
        return replace(self, equipment=self.equipment | {item: self.equipment[item] + 1})


def later(clock, span):
    """The clock time a span after another.

    Parameters
    ----------
    clock : str
    span : Quantity [time], at least 0

    Returns
    -------
    str

    Examples
    --------
    >>> later("19:00", Q_(45, "min"))
    '19:45'
    """
    return say_clock(read_clock(clock, "clock") + round(amount(span, "s", "span", least=0)))


def one_by_one(kitchen):
    """The starts of a cook who begins at the opening and always takes what can be done next.

    Parameters
    ----------
    kitchen : Kitchen
        With an opening.

    Returns
    -------
    dict of str to str
    """
    opens_s = read_clock(kitchen.opens, "opens")
    free_s, done_s, out_s, starts_s = opens_s, {}, {}, {}
    left = {task.name: task for task in kitchen.tasks}
    while left:
        able = [task for task in left.values() if not any(each in left for each in task.after)]
        moments = {
            task.name: max(
                free_s,
                *(done_s[each] for each in task.after),
                *(out_s.get(item, opens_s) for item in task.equipment),
                opens_s,
            )
            for task in able
        }
        name = min(moments, key=moments.get)
        task, start_s = left.pop(name), moments[name]
        starts_s[name] = start_s
        # A roast leaves the cook free for the next task on the list, and the oven taken.
        free_s = start_s + task.work_s if task.hands else free_s
        out_s |= dict.fromkeys(task.equipment, start_s + task.work_s)
        done_s[name] = start_s + task.work_s + task.rest_s
    return {name: say_clock(start_s) for name, start_s in starts_s.items()}


def begins_at_opening(kitchen, starts):
    """Whether a plan begins when the kitchen opens, give or take ten minutes.

    Parameters
    ----------
    kitchen : Kitchen
    starts : dict of str to str

    Returns
    -------
    bool
    """
    first_s = min(read_clock(start, name) for name, start in starts.items())
    return abs(first_s - read_clock(kitchen.opens, "opens")) <= AT_OPENING_S
