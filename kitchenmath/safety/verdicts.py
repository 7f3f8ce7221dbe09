"""What a quoted limit says of a reading or of a log. It compares, and never declares food safe."""

import itertools
from dataclasses import dataclass

import numpy as np

from kitchenmath.data.tables import table
from kitchenmath.errors import UnknownName
from kitchenmath.safety.logs import read_log, share_at_or_above
from kitchenmath.safety.quoted import ROUNDING, limit, limits
from kitchenmath.service.clock import say_span
from kitchenmath.units.door import amount
from kitchenmath.units.saying import figures, say

CAUTION = (
    "This only compares with a quoted limit and does not declare the food safe: "
    "the local food code decides."
)


@dataclass(frozen=True)
class Verdict:
    """What a comparison with a quoted limit says.

    `meets` is True, False, or None where what came does not show enough to tell; `words` say
    why. Printed, it ends with the caution. In a condition only a plain True counts.
    """

    meets: bool
    words: str

    def __bool__(self):
        return self.meets is True

    def __str__(self):
        return f"{self.words} {CAUTION}"


def core_verdict(what, temperature, time=None, source=None):
    """What the quoted limit says of a core temperature, and of how long it was held there.

    Parameters
    ----------
    what : str
        A food as in `limits`; "whole roast" takes the roast table.
    temperature : Quantity [temperature]
        At the coldest point, read with a probe, the lowest during `time`.
    time : Quantity [time], optional
        How long the core stayed at or above it. `time_at_or_above` reads it from a log.
    source : str, optional
        As for `limits`.

    Returns
    -------
    Verdict

    Raises
    ------
    UnknownName
    WrongKind
    OutOfRange

    Examples
    --------
    Lean white fish at 48 °C (118 °F) is moist, and 15 °C under the limit of the code.

    >>> fish = core_verdict("fish", temperature=Q_(48, "degC"), time=Q_(15, "s"))
    >>> fish.meets
    False
    >>> print(fish)  # doctest: +NORMALIZE_WHITESPACE
    48 °C (118.4 °F) is below the quoted limit for fish: at least 63 °C (145 °F) for 15 s
    (FDA Food Code 3-401.11(A)(1); edition 2013, 2017, 2022). Food served so is undercooked:
    raw or undercooked animal food is served only under a consumer advisory on the menu and never
    to guests at high risk (FDA Food Code 3-401.11(D), 3-603.11 and 3-801.11). Fish served raw or
    undercooked must first have been frozen against parasites (3-402.11). This only compares with
    a quoted limit and does not declare the food safe: the local food code decides.

    References
    ----------
    FDA Food Code 3-401.11, 3-402.11, 3-603.11, 3-801.11.
    """
    rows = [row for row in limits(what, source) if row.use == "cook"]
    if not rows:
        raise UnknownName(f"what: {what!r} is no food that is cooked; see holding_verdict.")
    held_s = None if time is None else amount(time, "s", "time", least=0)
    reached = [row for row in rows if row.reached_by(temperature)]
    if not reached:
        lowest = min(rows, key=lambda row: row.temperature.magnitude)
        words = f"{_both(temperature)} is below the quoted limit for {lowest}."
        return Verdict(False, f"{words} {_undercooked(what)}")
    row = min(reached, key=_seconds)
    quoted = f"the quoted limit for {row}"
    if _seconds(row) == 0:
        return Verdict(True, f"{_both(temperature)} reaches {quoted}.")
    if held_s is None:
        return Verdict(None, f"{_both(temperature)} reaches {quoted}; no time came: cannot tell.")
    words = f"{_both(temperature)} held {say_span(held_s)}"
    short_s = _seconds(row) - held_s
    if short_s > ROUNDING:
        words = f"{words} is {say_span(short_s)} too short for {quoted}."
        return Verdict(False, f"{words} {_undercooked(what)}")
    return Verdict(True, f"{words} meets {quoted}.")


def holding_verdict(log, what="hot holding", source=None):
    """What the quoted holding limit says of a log: how long, if at all, food was on the wrong side.

    Parameters
    ----------
    log : path, or times and temperatures
        As `read_log` takes it.
    what : str
        "hot holding", "roast hot holding", "cold holding", "shell egg storage", "refrigerator".
    source : str, optional
        As for `limits`.

    Returns
    -------
    Verdict

    Raises
    ------
    UnknownName
    WrongKind
    OutOfRange
    Unreadable

    Examples
    --------
    The mustard velouté falls from 60 to 54 °C in half an hour: half of it below 57 °C.

    >>> velouté = holding_verdict((Q_([0, 30], "min"), Q_([60, 54], "degC")))
    >>> print(velouté.words)  # doctest: +NORMALIZE_WHITESPACE
    15 min of 30 min are on the wrong side of the limit for hot holding: at least 57 °C (135 °F)
    (FDA Food Code 3-501.16; edition 2013, 2017, 2022).

    References
    ----------
    FDA Food Code 3-501.16. The holding limits of the UK are not covered here.
    """
    row = limit(what, source)
    if row.use != "store":
        raise UnknownName(f"what: {what!r} is no way of holding food; see core_verdict.")
    times, temperatures = read_log(log)
    unit = str(temperatures.units)
    level = (row.fahrenheit if unit == "degree_Fahrenheit" else row.temperature).to(unit).magnitude
    values, spans_s = temperatures.magnitude, np.diff(times.to("s").magnitude)
    right = np.array([share_at_or_above(*pair, level) for pair in itertools.pairwise(values)])
    right = 1 - right if row.sense == "at most" else right
    wrong_s, total_s = float((1 - right) @ spans_s), float(spans_s.sum())
    span = f"of {say_span(total_s)}"
    if wrong_s > 0:
        return Verdict(
            False, f"{say_span(wrong_s)} {span} are on the wrong side of the limit for {row}."
        )
    return Verdict(True, f"All {span} are on the right side of the limit for {row}.")


def parasite_verdict(store, time, solid=None):
    """What the quoted freezing rule says of fish that is to be served raw or undercooked.

    Likely confusion: this is about worms only. Freezing kills no bacteria worth counting.

    Parameters
    ----------
    store : Quantity [temperature]
        The warmest that the fish was in the freezer during `time`.
    time : Quantity [time]
        With `solid`, counted from when the fish was frozen through.
    solid : Quantity [temperature], optional
        The temperature at which it was first blast frozen until solid.

    Returns
    -------
    Verdict

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    Five days at -20 °C are 120 of the 168 hours.

    >>> parasite_verdict(store=Q_(-20, "degC"), time=Q_(5, "d")).meets
    False
    >>> parasite_verdict(store=Q_(-20, "degC"), time=Q_(7, "d")).meets
    True

    References
    ----------
    FDA Food Code 3-402.11, with the kinds of fish that need no freezing in 3-402.11(B).
    """
    store_C = amount(store, "degC", "store", least=-273.15)
    hours = amount(time, "h", "time", least=0)
    # Without a blast freezer the hours would count while the fish was still soft.
    solid_C = np.inf if solid is None else amount(solid, "degC", "solid", least=-273.15)
    ways = table("parasites.csv")
    met = any(_frozen_by(way, store_C, hours, solid_C) for way in ways)
    listed = "; or ".join(_freezing_words(way) for way in ways)
    exempt = "; ".join(row["food"] for row in table("parasite_exempt.csv"))
    rule = (
        f"the quoted freezing rule: {listed} (FDA Food Code 3-402.11; edition {ways[0]['edition']})"
    )
    return Verdict(
        met,
        f"{figures(hours)} h at {say(store)} {'meet' if met else 'do not meet'} {rule}. "
        f"The code asks no freezing of {exempt}.",
    )


def _frozen_by(way, store_C, hours, solid_C):
    solid_enough = not way["solid_C"] or solid_C <= float(way["solid_C"]) + ROUNDING
    cold_enough = store_C <= float(way["store_C"]) + ROUNDING
    return solid_enough and cold_enough and hours >= float(way["hours"]) - ROUNDING


def _freezing_words(way):
    stored = f"{way['hours']} h at {way['store_C']} °C or below"
    return f"frozen at {way['solid_C']} °C until solid, then {stored}" if way["solid_C"] else stored


def _undercooked(what):
    advisory = limit("consumer advisory")
    words = (
        f"Food served so is undercooked: {advisory.note} ({advisory.source} {advisory.section})."
    )
    frozen = (
        "Fish served raw or undercooked must first have been frozen against parasites (3-402.11)."
    )
    return f"{words} {frozen}" if what == "fish" else words


def _both(temperature):
    celsius, fahrenheit = temperature.to("degC").magnitude, temperature.to("degF").magnitude
    return f"{figures(celsius)} °C ({figures(fahrenheit)} °F)"


def _seconds(row):
    return 0.0 if row.time is None else row.time.to("s").magnitude
