"""The tasks of a service: how long, how many hands, after what, how long the result may wait."""

import math
from dataclasses import dataclass
from functools import cached_property

from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.units.door import amount, instance, plain_number
from kitchenmath.units.registry import Quantity

_MOST_COOKS = 1000


@dataclass(frozen=True)
class Task:
    """One thing to be done for a service.

    Parameters
    ----------
    name : str
    duration : Quantity [time], above 0
        From start to end; `hands` and `equipment` are busy for all of it.
    hands : int, at least 0
        How many cooks it takes; 0 for a roast that only stands in the oven.
    after : str or tuple of str
        Tasks that must be finished, and rested, before this one starts.
    hold : Quantity [time], optional
        How long the finished and rested item may wait for its use: a foam minutes, ice water
        hours. Without it, as long as it takes. It is used when the tasks after it start, else
        at the service. This is quality; `safety` has the limits for holding food hot or cold.
    rest : Quantity [time], optional
        A rest after `duration` that must be over before the item is used. Nobody is busy with it.
    equipment : str or tuple of str
        One of each is taken: "oven", or ("burner", "large pan").
    cook : str, optional
        Who does it; without a name whoever has a hand free.
    early : bool
        Preparation that can be done ahead, such as cutting: planned as early in the working time
        as hands and its hold limit allow, and not as late.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    >>> foam = Task("cider foam", Q_(5, "min"), after="cider base", hold=Q_(8, "min"))
    >>> foam.hands, foam.after
    (1, ('cider base',))
    """

    name: str
    duration: Quantity
    hands: int = 1
    after: tuple = ()
    hold: Quantity = None
    rest: Quantity = None
    equipment: tuple = ()
    cook: str = None
    early: bool = False

    def __post_init__(self):
        if not isinstance(self.name, str) or not self.name.strip():
            raise WrongKind(f"name: needs a name such as 'cider foam', and {self.name!r} came.")
        if not isinstance(self.hands, int) or not 0 <= self.hands:
            raise OutOfRange(
                f"hands, {self.name}: needs a whole number from 0, and {self.hands!r} came."
            )
        amount(self.duration, "min", f"duration, {self.name}", above=0)
        for kind in ("rest", "hold"):
            if getattr(self, kind) is not None:
                amount(getattr(self, kind), "min", f"{kind}, {self.name}", least=0)
        # One name or several: inside it is always a tuple.
        object.__setattr__(self, "after", _names(self.after))
        object.__setattr__(self, "equipment", _names(self.equipment))

    # Whole seconds inside, so that times compare exactly; rounded to the safe side, and worked out
    # once: a search asks for them some thousand times.
    @cached_property
    def work_s(self):
        """`duration` in whole seconds, rounded up."""
        return _whole(self.duration, math.ceil)

    @cached_property
    def rest_s(self):
        """`rest` in whole seconds, rounded up."""
        return 0 if self.rest is None else _whole(self.rest, math.ceil)

    @cached_property
    def hold_s(self):
        """`hold` in whole seconds, rounded down; infinite where none is given."""
        return math.inf if self.hold is None else _whole(self.hold, math.floor)


def in_order(tasks):
    """The tasks by name, each after those it waits for.

    Raises
    ------
    WrongKind
        For something that is no `Task`.
    UnknownName
        When a task waits for one that is not in the list.
    OutOfRange
        For no task at all, two of one name, or tasks that wait for each other in a ring.
    """
    by_name = {}
    for task in instance(tasks, list | tuple, "tasks", "a list of Task"):
        if not isinstance(task, Task):
            raise WrongKind(f"tasks: needs Task(...) entries, and {task!r} came.")
        if task.name in by_name:
            raise OutOfRange(f"tasks: {task.name!r} is in the list twice; give each its own name.")
        by_name[task.name] = task
    if not by_name:
        raise OutOfRange("tasks: needs at least one task, and none came.")
    for task in by_name.values():
        for earlier in task.after:
            if earlier not in by_name:
                raise UnknownName(f"after, {task.name}: {earlier!r} is not in the list of tasks.")
    placed = {}
    while len(placed) < len(by_name):
        ready = [
            task
            for name, task in by_name.items()
            if name not in placed and all(earlier in placed for earlier in task.after)
        ]
        if not ready:
            ring = ", ".join(repr(name) for name in by_name if name not in placed)
            raise OutOfRange(f"after: {ring} wait for each other, so none can start.")
        placed.update((task.name, task) for task in ready)
    return placed


def followers(tasks):
    """For each name the tasks that wait for it; none where the item goes out at the service."""
    return {name: [task for task in tasks.values() if name in task.after] for name in tasks}


def crew_of(cooks, tasks):
    """The cooks by name: those named in the tasks, filled up with "cook 1" and so on.

    `cooks` is a number, a list of names, or None for the cooks that the tasks name (else one).

    Raises
    ------
    UnknownName
        When a task names a cook who is not there.
    OutOfRange
    """
    named = list(dict.fromkeys(task.cook for task in tasks.values() if task.cook))
    if cooks is None:
        return tuple(named) or ("cook 1",)
    if isinstance(cooks, int) and not isinstance(cooks, bool):
        plain_number(cooks, "cooks", most=_MOST_COOKS)
        if cooks < max(1, len(named)):
            raise OutOfRange(
                f"cooks: needs at least {max(1, len(named))}, as the tasks name "
                f"{', '.join(named) or 'nobody'}, and {cooks} came."
            )
        return (*named, *(f"cook {number}" for number in range(1, 1 + cooks - len(named))))
    crew = _names(instance(cooks, str | list | tuple, "cooks", "a number of cooks or their names"))
    for name in named:
        if name not in crew:
            raise UnknownName(f"cook: {name!r} is not one of the cooks {', '.join(crew)}.")
    if not crew:
        raise OutOfRange("cooks: needs at least one, and none came.")
    return crew


def kit_of(equipment, tasks):
    """How many there are of each piece of equipment that the tasks use; one each by default.

    Raises
    ------
    UnknownName
        When a task needs what the list does not have: a misspelling would be an endless supply.
    OutOfRange
    """
    used = list(dict.fromkeys(each for task in tasks.values() for each in task.equipment))
    if equipment is None:
        return dict.fromkeys(used, 1)
    instance(equipment, dict, "equipment", 'a table such as {"burner": 3}')
    for name in used:
        if name not in equipment:
            raise UnknownName(
                f"equipment: {name!r} is used by a task, and the list has only "
                f"{', '.join(equipment) or 'nothing'}."
            )
    for name, number in equipment.items():
        if not isinstance(number, int) or number < 1:
            raise OutOfRange(
                f"equipment, {name}: needs a whole number from 1, and {number!r} came."
            )
    return dict(equipment)


def _names(names):
    return () if names is None else (names,) if isinstance(names, str) else tuple(names)


def _whole(quantity, rounding):
    # A thousandth of a second is noise from floating point.
    return rounding(round(quantity.to("s").magnitude, 3))
