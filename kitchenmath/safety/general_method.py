"""What a core's whole history is worth, as time at one temperature: the general method.

These are estimates for learning and for comparing processes. They never set a limit and never
declare food safe: strains and foods differ by a factor of ten and more in how fast they die.
"""

import numpy as np

from kitchenmath.errors import OutOfRange
from kitchenmath.safety.logs import read_log
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

_MOST_STEPS = 100  # times z: beyond it nothing is meant by the number any more


def lethal_rate(temperature, reference, z):
    """How many minutes at the reference temperature one minute at this temperature is worth.

    Parameters
    ----------
    temperature : Quantity [temperature]
    reference : Quantity [temperature]
    z : Quantity [temperature difference], above 0
        Rise that makes killing ten times as fast: `Q_(5.56, "delta_degC")`.

    Returns
    -------
    float or numpy.ndarray

    Raises
    ------
    WrongKind
        When z came as a temperature: it is a difference.
    OutOfRange

    Notes
    -----
    10^((T - Tref) / z). Holds near the temperatures at which z was measured, not far from them.

    Examples
    --------
    Ten degrees under the reference with a z of 10: a tenth.

    >>> round(lethal_rate(Q_(111.1, "degC"), Q_(121.1, "degC"), Q_(10, "delta_degC")), 6)
    0.1
    """
    temperature_C = amount(temperature, "degC", "temperature", least=-273.15, many=True)
    reference_C = amount(reference, "degC", "reference", least=-273.15)
    steps = (temperature_C - reference_C) / amount(z, "delta_degC", "z", above=0)
    if np.max(steps) > _MOST_STEPS:
        raise OutOfRange(
            f"temperature: needs to lie {_MOST_STEPS} times z above the reference at most, and "
            f"{say(temperature)} came for a z of {say(z)}."
        )
    return 10.0**steps


def lethality(times, temperatures, reference, z):
    """The time at the reference temperature that a log is worth.

    Parameters
    ----------
    times : Quantity [time], array or list
    temperatures : Quantity [temperature], array or list
        At the slowest-heating point. For a file: `lethality(*read_log("roast.csv"), ...)`.
    reference : Quantity [temperature]
    z : Quantity [temperature difference], above 0

    Returns
    -------
    Quantity [time]
        In the unit of `times`. An estimate: it sets no limit.

    Raises
    ------
    WrongKind
    OutOfRange
    Unreadable

    Notes
    -----
    Trapezoids on the lethal rate. They flatter where readings lie far apart: over a rise of
    one z between two readings they give 5.5 for a true 3.9. Read every quarter of z or closer.

    Examples
    --------
    5 min at 60 °C count in full, 5 min at 54.44 °C (one z lower) for half a minute, and the
    minute between them for (0.1 + 1) / 2: 5 + 0.5 + 0.55 = 6.05 min.

    >>> worth = lethality(Q_([0, 5, 6, 11], "min"), Q_([54.44, 54.44, 60, 60], "degC"),
    ...                   reference=Q_(60, "degC"), z=Q_(5.56, "delta_degC"))
    >>> print(say(worth))
    6.05 min

    References
    ----------
    Bigelow's general method, as in thermal-processing texts.
    """
    amount(times, "min", "times", many=True)
    times, temperatures = read_log((times, temperatures))
    rates = lethal_rate(temperatures, reference, z)
    worth = np.sum((rates[1:] + rates[:-1]) / 2 * np.diff(times.magnitude))
    return Q_(float(worth), str(times.units))


def log_reduction(lethality_or_time, d_value):
    """How many powers of ten fewer: time at one temperature over the D-value there.

    Parameters
    ----------
    lethality_or_time : Quantity [time], at least 0
        From `lethality`, or a plain holding time.
    d_value : Quantity [time], above 0
        Time for one power of ten, at the same (reference) temperature.

    Returns
    -------
    float
        An estimate for this organism in this food; no verdict on safety.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    12 min where one power of ten takes 2 min: 12 / 2 = 6.

    >>> log_reduction(Q_(12, "min"), d_value=Q_(2, "min"))
    6.0
    """
    time_min = amount(lethality_or_time, "min", "lethality_or_time", least=0)
    return time_min / amount(d_value, "min", "d_value", above=0)


def d_value_at(temperature, d_value, reference, z):
    """The D-value at another temperature: D x 10^((reference - T) / z).

    Parameters
    ----------
    temperature : Quantity [temperature]
    d_value : Quantity [time], above 0
        At `reference`.
    reference : Quantity [temperature]
    z : Quantity [temperature difference], above 0

    Returns
    -------
    Quantity [time]
        In the unit of `d_value`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    1.85 min at 60 °C; one z of 5.56 °C lower it takes ten times as long.

    >>> print(say(d_value_at(Q_(54.44, "degC"), d_value=Q_(1.85, "min"),
    ...                      reference=Q_(60, "degC"), z=Q_(5.56, "delta_degC"))))
    18.5 min
    """
    amount(d_value, "min", "d_value", above=0)
    return d_value / lethal_rate(temperature, reference, z)


def equivalent_time(time, temperature, at, z):
    """How long at another temperature does the same: time x 10^((temperature - at) / z).

    Likely confusion: this compares two processes. It does not stretch a quoted limit to a
    temperature where none is printed; `uk_equivalent` and `roast_hold_time` look those up.

    Parameters
    ----------
    time : Quantity [time], above 0
    temperature : Quantity [temperature]
        Where `time` was spent.
    at : Quantity [temperature]
    z : Quantity [temperature difference], above 0

    Returns
    -------
    Quantity [time]
        In the unit of `time`. An estimate.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    15 min at 85 °C, z 8.7 °C: 15 x 10^((85 - 102) / 8.7) = 0.167 min at 102 °C, 10 s.

    >>> print(say(equivalent_time(Q_(15, "min"), Q_(85, "degC"), at=Q_(102, "degC"),
    ...                           z=Q_(8.7, "delta_degC")).to("s"), digits=2))
    10 s

    References
    ----------
    Mullan, dairyscience.info, after Stumbo (1973).
    """
    amount(time, "min", "time", above=0, many=True)
    amount(at, "degC", "at", least=-273.15)
    return time * lethal_rate(temperature, at, z)
