"""Tables of temperature and time for one food: a look-up in steps, never between two rows.

Between two rows the lower temperature counts, so the time is never shorter than printed.
"""

from kitchenmath.errors import OutOfRange
from kitchenmath.safety.quoted import Limit, in_its_scale, limits
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.saying import say

ROAST_TABLES = {
    "FDA Food Code": "whole roast",
    "FSIS 6.5-log": "whole roast, 6.5-log",
    "FSIS 7-log": "whole roast, 7-log",
}


def roast_hold_time(temperature, table="FDA Food Code"):
    """How long a whole roast must be held at a core temperature, as the roast table prints it.

    Parameters
    ----------
    temperature : Quantity [temperature]
        At the centre, the lowest during the hold.
    table : str
        "FDA Food Code", or "FSIS 6.5-log" or "FSIS 7-log" for inspected plants.

    Returns
    -------
    Limit
        The row that counts: `time` [min or s], and `temperature` at which the row stands.

    Raises
    ------
    WrongKind
    OutOfRange
        Below the first row: no time is printed there, however long.
    UnknownName
        For a table that is not in force; the one from before 2001 is not.

    Notes
    -----
    Only for whole roasts of beef, pork, lamb and cured pork, in an oven as hot as the code asks
    (`roast_oven_limit`). Two tables circulate: before 2001 the Food Code held 130 °F for 121 min
    and 145 °F for 3 min. `roast_tables_with` tells them apart.

    Examples
    --------
    57 °C lies between the rows at 56.1 and 57.2 °C, so the lower one counts: 56 min and not 36.

    >>> print(roast_hold_time(Q_(57, "degC")))  # doctest: +NORMALIZE_WHITESPACE
    whole roast: at least 56.1 °C (133 °F) for 56 min [the time may include the rest after cooking]
    (FDA Food Code 3-401.11(B)(2); edition 2001, 2013, 2017, 2022)

    References
    ----------
    FDA Food Code 3-401.11(B)(2); USDA FSIS Appendix A, carried into FSIS-GD-2021-14, Table 2.
    """
    return _step(limits(ROAST_TABLES[one_of(table, ROAST_TABLES, "table")]), temperature)


def roast_tables_with(temperature, time):
    """Every printed roast table, in force or not, in which a temperature stands with this time.

    Parameters
    ----------
    temperature : Quantity [temperature]
        As printed, 54.4 °C or 130 °F.
    time : Quantity [time]

    Returns
    -------
    tuple of Limit
        Empty where no table has that pair. Look at `standing`.

    Raises
    ------
    WrongKind

    Examples
    --------
    >>> for row in roast_tables_with(Q_(145, "degF"), Q_(3, "min")):
    ...     print(row)  # doctest: +NORMALIZE_WHITESPACE
    SUPERSEDED - whole roast: at least 62.8 °C (145 °F) for 3 min
    [do not use: replaced in 2001, still in circulation]
    (FDA Food Code 3-401.11(B)(2); edition before 2001)
    """
    time_s = amount(time, "s", "time")
    rows = limits("whole roast", edition="before 2001")
    rows += tuple(row for name in ROAST_TABLES.values() for row in limits(name))
    return tuple(row for row in rows if _stands_in(row, temperature, time_s))


def roast_oven_limit(weight, oven):
    """The oven temperature that the Food Code asks for where the roast table is used.

    Parameters
    ----------
    weight : Quantity [weight]
    oven : str
        "dry still", "convection" or "humid".

    Returns
    -------
    Limit

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    3 kg is 6.6 lb, under 10 lb: a dry still oven stands at 350 °F at least.

    >>> print(say(roast_oven_limit(Q_(3, "kg"), "dry still").fahrenheit))
    350 °F

    References
    ----------
    FDA Food Code 3-401.11(B)(1).
    """
    weight_lb = amount(weight, "lb", "weight", above=0)
    one_of(oven, ("dry still", "convection", "humid"), "oven")
    size = (
        "any weight" if oven == "humid" else "under 10 lb" if weight_lb < 10 else "10 lb and over"
    )
    return limits(f"roast in a {oven} oven, {size}")[0]


def uk_equivalent(temperature):
    """The core treatment that UK advice counts as equal to 70 °C for 2 minutes.

    Parameters
    ----------
    temperature : Quantity [temperature]

    Returns
    -------
    Limit
        The highest printed row that the temperature reaches.

    Raises
    ------
    WrongKind
    OutOfRange
        Below 60 °C: no treatment is printed there.

    Examples
    --------
    72 °C reaches the row at 70 °C, so 2 minutes.

    >>> print(say(uk_equivalent(Q_(72, "degC")).time))
    2 min

    References
    ----------
    UK FSA cooking advice after ACMSF, read on pages that quote it.
    """
    return _step(limits("core of the food"), temperature)


def _step(rows, temperature) -> Limit:
    """The highest row that the temperature reaches."""
    reached = [row for row in rows if row.reached_by(temperature)]
    if not reached:
        lowest = min(rows, key=lambda row: row.temperature.magnitude)
        raise OutOfRange(
            f"temperature: {say(temperature)} is below the first row listed here for "
            f"{lowest.what}, {say(lowest.temperature)} ({say(lowest.fahrenheit)}): "
            "no time is printed for it."
        )
    return max(reached, key=lambda row: row.temperature.magnitude)


def _stands_in(row, temperature, time_s):
    here, printed = in_its_scale(temperature, row.temperature, row.fahrenheit)
    return abs(here - printed) < 0.05 and abs(row.time.to("s").magnitude - time_s) < 0.5
