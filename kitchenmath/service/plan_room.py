"""Where a plan has room: slack, preparation moved early, and the chain that fixes the beginning."""

from dataclasses import replace

from kitchenmath.service.tasks import followers


def limited(tasks, crew, kit):
    """All that is in short supply: (how many there are, what each task takes of it)."""
    hands = {name: task.hands for name, task in tasks.items() if task.hands}
    supplies = [(len(crew), hands)]
    for cook in crew:
        supplies.append((1, {name: 1 for name in hands if tasks[name].cook == cook}))
    for item, number in kit.items():
        takes = {name: task.equipment.count(item) for name, task in tasks.items()}
        supplies.append((number, {name: need for name, need in takes.items() if need}))
    return [(number, takes) for number, takes in supplies if takes]


def used_at(plan, name):
    """When the item of a task is used: at the last start of what waits for it, else served."""
    starts_s = [plan.starts_s[task.name] for task in followers(plan.tasks)[name]]
    return max(starts_s, default=plan.serve_s)


def slack_s(plan, name):
    """How much earlier the task could start, all others as planned, in seconds."""
    task, start_s = plan.tasks[name], plan.starts_s[name]
    floors = [min(plan.starts_s.values()) if plan.opens_s is None else plan.opens_s]
    floors += [plan.ends_s(earlier)[1] for earlier in task.after]
    floors += [used_at(plan, name) - task.hold_s - task.rest_s - task.work_s]
    low_s = max(floors)
    # The supply is looked at just before each moment at which another task lets go of something.
    moments = [plan.ends_s(other)[0] for other in plan.tasks] + [start_s]
    taken = [at_s for at_s in moments if low_s < at_s <= start_s and _blocked(plan, name, at_s - 1)]
    return max(0, start_s - max([low_s, *taken]))


def moved_early(plan):
    """The starts in seconds with all preparation as early in the working time as it can be."""
    starts_s = dict(plan.starts_s)
    for name in plan.sequence:
        if plan.tasks[name].early:
            starts_s[name] = _earliest_s(replace(plan, starts_s=dict(starts_s)), name)
    return starts_s


def _earliest_s(plan, name):
    """The earliest start of a task from the plan's beginning on, all others as they are."""
    task, start_s = plan.tasks[name], plan.starts_s[name]
    floors = [min(plan.starts_s.values()), plan.opens_s or 0]
    floors += [used_at(plan, name) - task.hold_s - task.rest_s - task.work_s]
    low_s = max(*floors, *(plan.ends_s(earlier)[1] for earlier in task.after))
    ends_s = {plan.ends_s(other)[0] for other in plan.tasks if other != name}
    for begin_s in sorted({low_s, *(end for end in ends_s if low_s < end < start_s)}):
        # The supply changes only where another task begins.
        begins = [at for at in plan.starts_s.values() if begin_s < at < begin_s + task.work_s]
        if begin_s < start_s and not any(_blocked(plan, name, at) for at in [begin_s, *begins]):
            return begin_s
    return start_s


def chain(plan):
    """The names from the first start to the service, each held in place by the next."""
    fixed = [name for name, task in plan.tasks.items() if not task.early] or list(plan.tasks)
    name = min(fixed, key=plan.starts_s.get)
    links = []
    while name is not None and name not in links:
        links.append(name)
        name = _held_by(plan, name)
    return tuple(links)


def _held_by(plan, name):
    """What keeps a task from being later: what waits for it, what it makes room for, or a hold."""
    done_s, ready_s, used_s = plan.ends_s(name)
    waiting = followers(plan.tasks)[name]
    for task in waiting:
        if plan.starts_s[task.name] == ready_s:
            return task.name
    if not waiting and ready_s == used_s:
        return None
    for other in _blocked(plan, name, done_s):
        if plan.starts_s[other] == done_s:
            return other
    for earlier in plan.tasks[name].after:
        if plan.starts_s[name] == plan.ends_s(earlier)[1] + plan.tasks[earlier].hold_s:
            return earlier
    return None


def _blocked(plan, name, at_s):
    """The other tasks at work at a moment that leave too little for this one; none if it fits."""
    for number, takes in limited(plan.tasks, plan.crew, plan.equipment):
        busy = [
            other
            for other in takes
            if other != name and plan.starts_s[other] <= at_s < plan.ends_s(other)[0]
        ]
        if name in takes and takes[name] + sum(takes[other] for other in busy) > number:
            return busy
    return []
