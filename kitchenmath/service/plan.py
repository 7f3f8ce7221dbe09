"""The plan of a service, made backward from the moment on the plate."""

from dataclasses import dataclass, replace

from kitchenmath.service.clock import read_clock, say_clock
from kitchenmath.service.crew import hand_out
from kitchenmath.service.plan_check import check_plan
from kitchenmath.service.plan_room import chain, limited, moved_early, slack_s, used_at
from kitchenmath.service.plan_search import Problem, Resource, latest_starts, search, settle
from kitchenmath.service.plan_words import cook_lists, running_sheet
from kitchenmath.service.tasks import crew_of, followers, in_order, kit_of
from kitchenmath.units.registry import Q_


@dataclass(frozen=True)
class Plan:
    """A plan of work for one service; printed, it is the running sheet.

    `conflicts` say in sentences what no order of the work could mend. `tried_all` says whether
    every order was looked at: if not, there may be a later plan, or one without conflict.
    """

    tasks: dict  # Task by name
    starts_s: dict  # seconds from the midnight before the service, by name
    serve_s: int
    crew: tuple
    equipment: dict
    opens: str
    conflicts: tuple
    tried_all: bool

    @property
    def feasible(self):
        """Whether every limit is kept."""
        return not self.conflicts

    @property
    def sequence(self):
        """The names in the order of starting."""
        return tuple(sorted(self.starts_s, key=self.starts_s.get))

    @property
    def starts(self):
        """The clock time at which each task starts."""
        return {name: say_clock(self.starts_s[name]) for name in self.sequence}

    @property
    def opens_s(self):
        """The opening in seconds, or None."""
        return None if self.opens is None else read_clock(self.opens, "opens")

    @property
    def serve_at(self):
        """The serving time as a clock time."""
        return say_clock(self.serve_s)

    def ends_s(self, name):
        """When a task is finished, when its item has rested, and when it is used."""
        task = self.tasks[name]
        done_s = self.starts_s[name] + task.work_s
        return done_s, done_s + task.rest_s, used_at(self, name)

    @property
    def waits(self):
        """How long each finished and rested item waits for its use [time]."""
        return {
            name: Q_((used_s - ready_s) / 60, "min")
            for name, (_, ready_s, used_s) in ((n, self.ends_s(n)) for n in self.sequence)
        }

    @property
    def slack(self):
        """How much earlier each task could start, all others as planned [time].

        Bounded by the opening (without one, the start of the plan), by what the task waits for,
        its hold limit, and free hands and equipment: the room of a cook who is ahead. No task
        could start later, as each stands as late as possible, but for preparation.
        """
        return {name: Q_(slack_s(self, name) / 60, "min") for name in self.sequence}

    @property
    def critical_chain(self):
        """The tasks that fix when work begins, in order: a longer one moves the beginning."""
        return chain(self)

    @property
    def by_cook(self):
        """What each cook does, in order: lists of (begin, end, task) in seconds, by cook."""
        pieces = [
            (begin_s, end_s, name, cook)
            for name, handed in hand_out(self.tasks, self.starts_s, self.crew).items()
            for cook, begin_s, end_s in handed
        ]
        return {
            cook: [piece[:3] for piece in sorted(pieces) if piece[3] == cook] for cook in self.crew
        }

    def cook_lists(self):
        """The list of the service to hang at each cook's place, as text.

        What must be washed, weighed, cut and set out before it, the mise en place, is another.
        """
        return cook_lists(self)

    def __str__(self):
        return running_sheet(self)


def plan_back(serve_at, tasks, cooks=None, equipment=None, opens=None):
    """A plan of work backward from the serving time: preparation early, all else late.

    Every task stands as late as its limits allow; then those that are `early` go to the first
    moment of the working time at which there are hands for them.

    Likely confusion: `hands` are cooks at work at one time; a roast in the oven takes none.

    Parameters
    ----------
    serve_at : str or datetime.time
        "19:30"; the kitchen's day runs from 03:00 to 03:00.
    tasks : list of Task
    cooks : int or list of str, optional
        By default the cooks that the tasks name, else one.
    equipment : dict of str to int, optional
        How many there are of each, `{"burner": 4, "oven shelf": 2}`; by default one.
    opens : str or datetime.time, optional
        Nothing starts before it if that can be helped.

    Returns
    -------
    Plan
        Also where not every limit can be kept: `conflicts` then names what is broken. A plan that
        begins before the opening comes first, one that is short of hands or equipment after it;
        a hold limit is given up only where the tasks contradict each other.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName
    Unreadable

    Notes
    -----
    The least total of time between starts and service is searched for. Small services are
    searched to the end; of a large one the best of some thousand orders is taken, and
    `tried_all` says so. Hands are counted: where nobody is free for a whole task, one cook hands
    it to another, and the lists show it.

    Examples
    --------
    One cook: the foam holds 6 min, so it comes last; the sauce before it waits its 5 min.

    >>> from kitchenmath.service import Task
    >>> plan = plan_back("19:30", [Task("foam", Q_(5, "min"), hold=Q_(6, "min")),
    ...                            Task("sauce", Q_(20, "min"), hold=Q_(2, "h"))])
    >>> plan.starts
    {'sauce': '19:05', 'foam': '19:25'}
    >>> plan.critical_chain
    ('sauce', 'foam')
    """
    tasks = in_order(tasks)
    crew, kit = crew_of(cooks, tasks), kit_of(equipment, tasks)
    serve_s = read_clock(serve_at, "serve_at")
    opens_s = None if opens is None else read_clock(opens, "opens")
    starts, tried_all = _searched(tasks, crew, kit, None if opens is None else opens_s - serve_s)
    starts_s = {name: serve_s + start for name, start in zip(tasks, starts, strict=True)}
    opens = None if opens is None else say_clock(opens_s)
    plan = Plan(tasks, starts_s, serve_s, crew, kit, opens, (), tried_all)
    plan = replace(plan, starts_s=moved_early(plan))
    serve_at, every = say_clock(serve_s), list(tasks.values())
    return replace(
        plan, conflicts=tuple(check_plan(plan.starts, every, serve_at, crew, kit, opens))
    )


def _searched(tasks, crew, kit, opens):
    """Starts in seconds before the service, and whether every order was tried."""
    # No chain of tasks is longer than all of them together.
    longest = -sum(task.work_s + task.rest_s for task in tasks.values())
    held = _holds_that_agree(tasks, crew, kit, longest)
    floors = [longest] if opens is None else [opens, longest]
    tried_all = True
    for floor in floors:
        found = search(_problem(tasks, crew, kit, held, floor))
        tried_all = tried_all and found.tried_all
        if found.starts is not None:
            return found.starts, tried_all
    return settle(_problem(tasks, crew, kit, held, longest)), tried_all


def _holds_that_agree(tasks, crew, kit, longest):
    """The hold limits that can be kept together, hands and equipment aside."""
    held = []
    for name in tasks:
        if latest_starts(_problem(tasks, crew, kit, [*held, name], longest)) is not None:
            held.append(name)
    return held


def _problem(tasks, crew, kit, held, floor):
    """The tasks as plain numbers, with the hold limits of those named in `held`."""
    place = {name: i for i, name in enumerate(tasks)}
    lead = {name: task.work_s + task.rest_s for name, task in tasks.items()}
    rules, earliest = [], dict.fromkeys(tasks, floor)
    for name, used_by in followers(tasks).items():
        rules += [(place[name], place[each.name], lead[name]) for each in used_by]
        if name in held and tasks[name].hold is not None:
            longest = lead[name] + tasks[name].hold_s
            rules += [(place[each.name], place[name], -longest) for each in used_by]
            if not used_by:
                earliest[name] = max(floor, -longest)
    return Problem(
        work=tuple(task.work_s for task in tasks.values()),
        latest=tuple(-lead[name] for name in tasks),
        earliest=tuple(earliest.values()),
        rules=tuple(rules),
        resources=tuple(
            # One task that alone needs more than there is cannot be helped by any order.
            Resource(max([most, *needs.values()]), {place[n]: need for n, need in needs.items()})
            for most, needs in limited(tasks, crew, kit)
        ),
    )
