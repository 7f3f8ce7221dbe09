"""The line through measured death times, and D-values and targets as others printed them."""

from dataclasses import dataclass

import numpy as np

from kitchenmath.data.tables import table
from kitchenmath.errors import OutOfRange
from kitchenmath.safety.general_method import equivalent_time
from kitchenmath.safety.logs import column
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, Quantity, registry


@dataclass(frozen=True)
class DeathTimeLine:
    """A straight line through logarithms of times: `time` at `reference`, ten times less a z up.

    `lowest` and `highest` are the temperatures that were measured: nothing is known outside.
    """

    reference: Quantity
    time: Quantity
    z: Quantity
    lowest: Quantity
    highest: Quantity

    def time_at(self, temperature):
        """The line's time at a temperature: an estimate, and only between its points.

        Raises
        ------
        WrongKind
        OutOfRange
            Below the coldest or above the hottest temperature that was measured.
        """
        unit = str(self.lowest.units)
        amount(temperature, unit, "temperature",
               least=self.lowest.magnitude, most=self.highest.magnitude)  # fmt: skip
        return equivalent_time(self.time, self.reference, at=temperature, z=self.z)


def death_time_line(temperatures, times):
    """The line through measured times (D-values or holding times): z is the answer asked for.

    Parameters
    ----------
    temperatures : Quantity [temperature], array or list
    times : Quantity [time], array or list, above 0

    Returns
    -------
    DeathTimeLine
        `z` is a difference, in °F where the temperatures were.

    Raises
    ------
    WrongKind
    OutOfRange
        With fewer than two temperatures, or times that do not fall as it gets hotter.

    Notes
    -----
    Least squares of log10(time) on temperature; z = -1 / slope.

    Examples
    --------
    Milk: 63 °C for 30 min or 72 °C for 15 s; 9 / log10(1800 / 15) = 4.33 °C.

    >>> milk = death_time_line(Q_([63, 72], "degC"), Q_([1800, 15], "s"))
    >>> print(say(milk.z, digits=3))
    4.33 °C
    """
    temperatures, times = column(temperatures, "degC", "temperatures"), column(times, "s", "times")
    amount(times, str(times.units), "times", above=0, many=True)
    if len(times) != len(temperatures):
        raise OutOfRange(f"times: {len(times)} came for {len(temperatures)} temperatures.")
    scale = "delta_degF" if temperatures.units == registry.degF else "delta_degC"
    points = temperatures.magnitude
    if np.ptp(points) == 0:
        raise OutOfRange("temperatures: needs at least two different temperatures.")
    middle = points.mean()
    slope, height = np.polyfit(points - middle, np.log10(times.magnitude), 1)
    if slope >= 0:
        raise OutOfRange("times: do not get shorter as it gets hotter, so there is no z.")
    return DeathTimeLine(
        Q_(float(middle), str(temperatures.units)),
        Q_(float(10**height), str(times.units)),
        Q_(float(-1 / slope), scale),
        Q_(float(points.min()), str(temperatures.units)),
        Q_(float(points.max()), str(temperatures.units)),
    )


def published_d_values(organism):
    """D-values as printed, for one organism. They differ by ten times and more, and that matters.

    Parameters
    ----------
    organism : str
        Such as "Salmonella" or "Listeria monocytogenes".

    Returns
    -------
    dict of str to (temperatures, times)
        By food and source; arrays that `death_time_line` takes.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> sorted(published_d_values("Salmonella"))[0]
    'chicken broth (Juneja, Eblen & Ransom, J. Food Sci. 66:146)'
    """
    rows = table("d_values.csv")
    one_of(organism, sorted({row["organism"] for row in rows}), "organism")
    found = {}
    for row in rows:
        if row["organism"] == organism:
            pairs = found.setdefault(f"{row['food']} ({row['source']})", [])
            pairs.append((float(row["temperature_C"]), float(row["d_value_min"])))
    return {
        name: (Q_(list(hot), "degC"), Q_(list(times), "min"))
        for name, (hot, times) in (
            (name, zip(*pairs, strict=True)) for name, pairs in found.items()
        )
    }


def log_target(food):
    """How many powers of ten of *Salmonella* a US plant's process must remove, as FSIS prints it.

    Parameters
    ----------
    food : str
        "roast beef", "meat patties" or "poultry".

    Returns
    -------
    float

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> log_target("poultry")
    7.0

    References
    ----------
    9 CFR 318.17, 318.23 and 381.150, in FSIS-GD-2021-14.
    """
    targets = {row["food"]: float(row["log_reduction"]) for row in table("log_targets.csv")}
    return targets[one_of(food, targets, "food")]
