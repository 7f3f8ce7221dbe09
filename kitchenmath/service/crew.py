"""Who does what: the tasks of a plan given to the cooks."""

import itertools


def hand_out(tasks, starts_s, crew):
    """Give every task to cooks, who keep it to its end where they can.

    Parameters
    ----------
    tasks : dict of str to Task
    starts_s : dict of str to int
    crew : tuple of str

    Returns
    -------
    dict of str to list of (cook, begin, end)
        Several cooks side by side, or one after another where a cook must hand over. Fewer than
        the hands that are needed where nobody is left.
    """
    ends_s = {name: start_s + tasks[name].work_s for name, start_s in starts_s.items()}
    handed = {name: [] for name in tasks}
    own = {
        cook: [(starts_s[n], ends_s[n]) for n in tasks if tasks[n].cook == cook and tasks[n].hands]
        for cook in crew
    }
    worked_s = dict.fromkeys(crew, 0)
    on_it = {}
    moments = sorted({*starts_s.values(), *ends_s.values()})
    for begin_s, end_s in itertools.pairwise(moments):
        active = [n for n in tasks if tasks[n].hands and starts_s[n] <= begin_s < ends_s[n]]
        on_it = _stay({name: on_it.get(name, []) for name in active}, tasks)
        for name in active:
            free = [cook for cook in crew if all(cook not in cooks for cooks in on_it.values())]
            free.sort(key=lambda cook: (_called(own[cook], begin_s, ends_s[name]), worked_s[cook]))
            on_it[name] += free[: tasks[name].hands - len(on_it[name])]
            for cook in on_it[name]:
                worked_s[cook] += end_s - begin_s
                _note(handed[name], cook, begin_s, end_s)
    return handed


def _called(own, begin_s, end_s):
    """Whether one of the cook's own tasks falls between two moments."""
    return any(first_s < end_s and last_s > begin_s for first_s, last_s in own)


def _stay(on_it, tasks):
    """Named cooks go to their own tasks; the others stay where they are."""
    called = {tasks[name].cook for name in on_it if tasks[name].cook}
    stayed = {}
    for name, cooks in on_it.items():
        own = tasks[name].cook
        stayed[name] = ([own] if own else []) + [cook for cook in cooks if cook not in called]
    return stayed


def _note(pieces, cook, begin_s, end_s):
    """Lengthen the cook's piece of work, or begin a new one."""
    for i, (who, first_s, last_s) in enumerate(pieces):
        if who == cook and last_s == begin_s:
            pieces[i] = (cook, first_s, end_s)
            return
    pieces.append((cook, begin_s, end_s))
