"""Looking over a plan: are the starting times on it possible? Any plan, whoever made it.

Nothing here knows how a plan is made; `plan_back` is checked by it like a student's sheet.
"""

from kitchenmath.errors import KitchenError, OutOfRange, WrongKind
from kitchenmath.service.clock import read_clock
from kitchenmath.service.plan_rules import Finding, PlanRules

__all__ = ["Finding", "check_plan", "found_by", "look_over"]


def check_plan(plan_or_starts, tasks, serve_at=None, cooks=None, equipment=None, opens=None):
    """What is wrong with a plan, in sentences; an empty list where nothing is.

    Parameters
    ----------
    plan_or_starts : Plan, or dict of str to clock time
        The start of each task: `{"cider foam": "19:20", …}`.
    tasks : list of Task
    serve_at : str or datetime.time
        Needed with a dict; a Plan brings its own, and its cooks, equipment and opening.
    cooks : int or list of str, optional
        By default the cooks that the tasks name, else one.
    equipment : dict of str to int, optional
        How many there are of each; by default one.
    opens : str or datetime.time, optional
        Before this the kitchen is shut.

    Returns
    -------
    list of str
        Missing and unknown tasks first, then what is late or in the wrong order, waits too long,
        begins too early, and where hands or equipment are short.

    Raises
    ------
    WrongKind
    OutOfRange
        Without a serving time, or for tasks that cannot be planned at all.
    Unreadable
        For a serving or opening time that is no clock time; a start like that is a finding.
    UnknownName

    Examples
    --------
    A foam that holds 6 min is done at 19:20 for 19:30: it waits 10, 4 too long.

    >>> from kitchenmath.service import Task
    >>> foam = Task("foam", duration=Q_(5, "min"), hold=Q_(6, "min"))
    >>> check_plan({"foam": "19:15"}, [foam], serve_at="19:30")
    ["'foam' waits 10 min until the service and holds 6 min: 4 min too long."]
    >>> check_plan({"foam": "19:20"}, [foam], serve_at="19:30")
    []
    """
    found = look_over(plan_or_starts, tasks, serve_at, cooks, equipment, opens)
    return [finding.sentence for finding in found]


def look_over(plan_or_starts, tasks, serve_at=None, cooks=None, equipment=None, opens=None):
    """What is wrong with a plan, as `check_plan` says it, each with its rule and its tasks.

    Parameters
    ----------
    plan_or_starts : Plan, or dict of str to clock time
    tasks : list of Task
    serve_at : str or datetime.time
    cooks : int or list of str, optional
    equipment : dict of str to int, optional
    opens : str or datetime.time, optional

    Returns
    -------
    list of Finding

    Raises
    ------
    WrongKind
    OutOfRange
    Unreadable
    UnknownName
    """
    if not isinstance(plan_or_starts, dict):
        plan = plan_or_starts
        if not hasattr(plan, "starts_s"):
            raise WrongKind(
                'plan_or_starts: needs a Plan, or starts such as {"foam": "19:15"}, and '
                f"{plan!r:.60} came."
            )
        plan_or_starts = plan.starts
        serve_at = plan.serve_at if serve_at is None else serve_at
        cooks = plan.crew if cooks is None else cooks
        equipment = plan.equipment if equipment is None else equipment
        opens = plan.opens if opens is None else opens
    if serve_at is None:
        raise OutOfRange('serve_at: a list of starts needs the serving time, such as "19:30".')
    return found_by(PlanRules(tasks, serve_at, cooks, equipment, opens), plan_or_starts)


def found_by(rules, starts):
    """What is wrong with these starts, by rules that are made ready once for many plans.

    Parameters
    ----------
    rules : PlanRules
    starts : dict of str to clock time

    Returns
    -------
    list of Finding
    """
    starts_s, findings = _read_starts(starts, rules.tasks)
    return findings + rules.broken(starts_s)


def _read_starts(starts, tasks):
    """Starts as moments, and a sentence for each that is missing, unknown or unreadable."""
    starts_s, findings = {}, []
    for name in tasks:
        if name not in starts:
            findings.append(Finding("missing", (name,), f"No start is given for {name!r}."))
            continue
        try:
            starts_s[name] = read_clock(starts[name], f"The start of {name!r}")
        except KitchenError as problem:
            findings.append(Finding("unreadable", (name,), str(problem)))
    unknown = [name for name in starts if name not in tasks]
    return starts_s, findings + [
        Finding("unknown", (name,), f"{name!r} is no task of this service.") for name in unknown
    ]
