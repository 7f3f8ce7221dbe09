"""Cooling judged from a log against the quoted rules, stage by stage."""

import math
from dataclasses import dataclass

from kitchenmath.data.tables import table
from kitchenmath.safety.logs import read_log
from kitchenmath.safety.quoted import ROUNDING
from kitchenmath.safety.verdicts import Verdict
from kitchenmath.service.clock import say_span
from kitchenmath.units.door import one_of
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say

# A crossing between two readings further apart than this is no measurement: our choice.
WIDEST_GAP_MIN = 30


@dataclass(frozen=True)
class CoolingStage:
    """One stage of a cooling rule, as this log shows it.

    `took` [min] is interpolated between readings, and None where the log lacks the beginning or
    the end of the stage. `meets` is None where the log does not show enough to tell.
    """

    start: Quantity  # None: the clock starts with the log
    end: Quantity
    allowed: Quantity
    took: Quantity
    meets: bool
    words: str


@dataclass(frozen=True)
class CoolingVerdict(Verdict):
    """A verdict with its stages."""

    stages: tuple


def cooling_rules(rule=None):
    """The cooling rules that are quoted here, or the rows of one, as dicts of text.

    Parameters
    ----------
    rule : str, optional

    Returns
    -------
    tuple of dict
        With from and to in both scales, hours, source, section, edition and status.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> [(row["from_C"], row["to_C"], row["hours"]) for row in cooling_rules("two-stage")]
    [('57', '21', '2'), ('57', '5', '6')]
    """
    rows = table("cooling.csv")
    if rule is None:
        return rows
    one_of(rule, list(dict.fromkeys(row["rule"] for row in rows)), "rule")
    return tuple(row for row in rows if row["rule"] == rule)


def cooling_verdict(log, rule="two-stage"):
    """Whether a log of a cooling pot keeps the quoted rule; which stage fails, and by how much.

    Likely confusion: the six hours are the total from 57 °C, not six more after the first two.

    Parameters
    ----------
    log : path, or times and temperatures
        As `read_log` takes it, from the warmest point of the food.
    rule : str
        "two-stage": 57 to 21 °C (135 to 70 °F) within 2 h and 57 to 5 °C (135 to 41 °F) within
        6 h in all. "from ambient": to 5 °C within 4 h, for food made of ingredients at room
        temperature; the log begins when it is made. "FSIS option 2" is for inspected
        plants.

    Returns
    -------
    CoolingVerdict
        `meets` None where the log does not show enough to tell.

    Raises
    ------
    UnknownName
    Unreadable
    WrongKind
    OutOfRange

    Notes
    -----
    The clock starts when the food first falls through the upper temperature, and stops when it
    passes the lower one for good: a dip and a rise is no arrival. Crossing times are interpolated.
    Where readings over 30 min apart leave the answer open, it stays open.
    A log in °F is judged by the printed °F, any other by the printed °C.

    Examples
    --------
    From 57 °C through 30 °C after 2 h to 21 °C after 3 h: the first stage is an hour too long.

    >>> pot = (Q_([0, 1, 2, 3, 4, 5, 6], "h"), Q_([57, 42, 30, 21, 13, 8, 5], "degC"))
    >>> verdict = cooling_verdict(pot)
    >>> for stage in verdict.stages:
    ...     print(stage.words)
    57 °C to 21 °C: took 3 h, 2 h are allowed: 1 h too long.
    57 °C to 5 °C: took 6 h, 6 h are allowed: kept.

    References
    ----------
    FDA Food Code 3-501.14 (2013, 2017, 2022); USDA FSIS Appendix B (1999).
    """
    times, temperatures = read_log(log)
    rows = cooling_rules(rule)
    unit = "degF" if str(temperatures.units) == "degree_Fahrenheit" else "degC"
    minutes, degrees = times.to("min").magnitude, temperatures.to(unit).magnitude
    stages = tuple(_stage(row, minutes, degrees, unit) for row in rows)
    results = [stage.meets for stage in stages]
    meets = False if False in results else None if None in results else True
    ending = {True: "keeps", False: "breaks", None: "does not show enough to tell whether it keeps"}
    quoted = f"{rows[0]['source']} {rows[0]['section']}; edition {rows[0]['edition']}"
    words = " ".join(stage.words for stage in stages)
    return CoolingVerdict(
        meets, f"{words} The log {ending[meets]} the {rule} rule ({quoted}).", stages
    )


@dataclass(frozen=True)
class _Crossing:
    """When a level was passed: by interpolation at `at`, for sure between `least` and `most`.

    `at` is None where the log does not show it; `why` then says what it shows instead.
    """

    at: float
    least: float
    most: float
    why: str = ""


def _stage(row, minutes, degrees, unit):
    """One row of the rule against the log, all in one scale."""
    start, end = (
        Q_(float(row[column]), unit) if row[column] else None
        for column in (f"from_{unit[-1]}", f"to_{unit[-1]}")
    )
    begun = _begun(minutes, degrees, start, unit)
    done = _done(minutes, degrees, end, unit)
    allowed_min = 60 * float(row["hours"])
    meets, sure = _judged(begun, done, allowed_min)
    name = "The start" if start is None else say(start)
    words = f"{name} to {say(end)}: {_words(begun, done, allowed_min, meets, sure)}"
    took = None if None in (begun.at, done.at) else Q_(done.at - begun.at, "min")
    return CoolingStage(start, end, Q_(allowed_min / 60, "h"), took, meets, words)


def _begun(minutes, degrees, start, unit):
    """When the clock starts: the first fall from the start or above to below it."""
    first, last = float(minutes[0]), float(minutes[-1])
    if start is None:
        return _Crossing(first, first, first)
    for i in range(len(degrees) - 1):
        if degrees[i] >= start.magnitude > degrees[i + 1]:
            return _crossing(minutes, degrees, i, start.magnitude)
    if degrees[0] < start.magnitude:
        why = f"the log begins at {say(Q_(degrees[0], unit))}, later than this stage"
        return _Crossing(None, -math.inf, first, why)
    return _Crossing(None, last, math.inf, f"the log never falls below {say(start)}")


def _done(minutes, degrees, end, unit):
    """When the clock stops: the last fall to the end or below, with no rise above it after."""
    above = [i for i, degree in enumerate(degrees) if degree > end.magnitude]
    first, last = float(minutes[0]), float(minutes[-1])
    if not above:
        return _Crossing(first, first, first)
    if above[-1] == len(degrees) - 1:
        return _Crossing(None, last, math.inf, f"still at {say(Q_(degrees[-1], unit))}")
    return _crossing(minutes, degrees, above[-1], end.magnitude)


def _crossing(minutes, degrees, i, level):
    """A fall through a level between readings i and i + 1; a reading on the level is exact."""
    before, after = degrees[i] - level, level - degrees[i + 1]
    at = float(minutes[i] + (minutes[i + 1] - minutes[i]) * before / (before + after))
    if before == 0 or after == 0:
        return _Crossing(at, at, at)
    return _Crossing(at, float(minutes[i]), float(minutes[i + 1]))


def _judged(begun, done, allowed_min):
    """(kept or not or None, whether the readings alone decide it without interpolation)."""
    if done.most - begun.least <= allowed_min + ROUNDING:
        return True, True
    # At `done.least` the food was still above the end, so it took longer than this.
    if done.least - begun.most >= allowed_min:
        return False, True
    widest = max(begun.most - begun.least, done.most - done.least)
    if None in (begun.at, done.at) or widest > WIDEST_GAP_MIN:
        return None, False
    return done.at - begun.at <= allowed_min + ROUNDING, False


def _words(begun, done, allowed_min, meets, sure):
    """What the stage took, what is allowed, and the difference."""
    allowed = f"{say_span(60 * allowed_min)} are allowed"
    if meets is None:
        gap = f"readings more than {WIDEST_GAP_MIN} min apart leave the moment open"
        why = begun.why or done.why or gap
        return f"cannot tell, {why}; {allowed}."
    if None in (begun.at, done.at):
        least_min = done.least - begun.most
        took = f"{done.why} after" if done.why else "took at least"
        over_s = 60 * (least_min - allowed_min)
        over = f"at least {say_span(over_s)} too long" if over_s >= 1 else "too long"
        return f"{took} {say_span(60 * least_min)}, {allowed}: {over}."
    took_min = done.at - begun.at
    result = "kept" if meets else f"{say_span(60 * (took_min - allowed_min))} too long"
    said = "" if sure else " (interpolated between two readings)"
    return f"took {say_span(60 * took_min)}{said}, {allowed}: {result}."
