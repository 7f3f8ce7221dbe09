"""How long a foam stands, from a log taken with a watch and a measuring jug.

Two different things are called a foam's half-life: the time in which half the *liquid* drains
out, and the time in which half the *volume* falls in. They are kept apart here by name.
"""

import numpy as np

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.units.door import alike, amount, instance
from kitchenmath.units.registry import Q_, Quantity, kind_of
from kitchenmath.units.saying import say

__all__ = ["drainage_half_life", "volume_half_life"]

_ENOUGH = 0.1  # what must have gone before a log is carried on; our choice, to keep guesses short


def drainage_half_life(times, drained, liquid=None, extrapolate=False):
    """The time in which half of the liquid has drained out of a foam.

    Not the time in which the foam falls in: it may stand dry long after its liquid is out.

    Parameters
    ----------
    times : Quantity [time], a list that rises, from when the foam was made
    drained : Quantity [percent of the liquid, volume or weight], a list as long
        All that has drained by then.
    liquid : Quantity [volume or weight], not needed with percents
        What was whipped into the foam.
    extrapolate : bool
        Whether to go beyond a log that ends between a tenth and half.

    Returns
    -------
    Quantity [time]
        In the unit of `times`.

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    Inside the log the time is read off the straight line between two readings. Beyond it the
    answer is an estimate: v = V tⁿ / (c + tⁿ), V being all the liquid, is fitted by a straight
    line of ln(v / (V - v)) in ln t, and the half-life is c^(1/n).

    Examples
    --------
    Of 60 mL, 24 are out at 4 min and 36 at 6 min: half, 30, lies half-way, at 5 min.

    >>> print(say(drainage_half_life(Q_([4, 6], "min"), Q_([24, 36], "mL"), Q_(60, "mL"))))
    5 min

    References
    ----------
    The curve: egg-white drainage, quoted in the protein foam literature.
    """
    clock_min, out = _log(times, drained, "drained")
    share = out / _whole(drained, liquid)
    if np.any(np.diff(share) < 0) or share[-1] > 1:
        raise OutOfRange(
            f"drained: needs all that has drained so far, never falling and at most the liquid "
            f"there was, and {say(drained)} came."
        )
    if share[-1] < 0.5:
        half_min = _from_curve(clock_min, share) if extrapolate else _never(drained, "drained")
    else:
        # Nothing has drained at the start, whether or not it was written down.
        half_min = _first_crossing(np.append(0.0, clock_min), np.append(0.0, share), 0.5)
    return Q_(half_min, "min").to(times.units)


def volume_half_life(times, volumes, extrapolate=False):
    """The time in which a foam falls to half of its first volume.

    Not the time in which half of its liquid drains: read the height of the foam alone, above the
    liquid that has gathered below it.

    Parameters
    ----------
    times : Quantity [time], a list that rises
        The half-life is counted from the first of them.
    volumes : Quantity [volume, or length in a straight-sided glass], a list as long
        Of the foam alone.
    extrapolate : bool
        Whether to go beyond a log that ends between a tenth and half gone.

    Returns
    -------
    Quantity [time]
        In the unit of `times`.

    Raises
    ------
    WrongKind
    OutOfRange
        When the log never comes down to half.

    Notes
    -----
    Inside the log the time is read off the straight line between its two neighbours. Beyond it
    the foam is taken to lose the same share every minute, as ln(volume) falls in a straight line
    through the log. An estimate.

    Examples
    --------
    400 mL, after 10 min 250 and after 15 min 150: 200 lies half-way, at 12.5 min.

    >>> print(say(volume_half_life(Q_([0, 10, 15], "min"), Q_([400, 250, 150], "mL"))))
    12.5 min
    """
    clock_min, left = _log(times, volumes, "volumes")
    instance(extrapolate, bool, "extrapolate", "True or False")
    if left[0] == 0 or (extrapolate and np.any(left == 0)):
        raise OutOfRange(f"volumes: needs more than 0, and {say(volumes)} came.")
    clock_min = clock_min - clock_min[0]
    if np.min(left) > left[0] / 2:
        half_min = _from_decay(clock_min, left) if extrapolate else _never(volumes, "volumes")
    else:
        half_min = _first_crossing(clock_min, -left, -left[0] / 2)
    return Q_(half_min, "min").to(times.units)


def _log(times, readings, name):
    """Two plain arrays of a log, the times in minutes, refused unless they belong together."""
    for quantity, what, example in ((times, "times", "min"), (readings, name, "mL")):
        if not isinstance(quantity, Quantity) or np.ndim(quantity.magnitude) != 1:
            raise WrongKind(
                f'{what}: needs a list with a unit, such as Q_([2, 4, 6], "{example}"), '
                f"and {quantity!r} came."
            )
    clock_min = amount(times, "min", "times", least=0, many=True)
    seen = amount(readings, str(readings.units), name, least=0, many=True)
    if len(clock_min) != len(seen) or len(seen) < 2 or np.any(np.diff(clock_min) <= 0):
        raise OutOfRange(
            f"times: needs two or more, rising, and one for each reading; "
            f"{len(clock_min)} times ({say(times)}) and {len(seen)} readings came."
        )
    return clock_min, seen


def _whole(drained, liquid):
    """All the liquid there was, in the unit of what drained."""
    if liquid is None and kind_of(drained) != "percent":
        raise WrongKind(
            f"liquid: {say(drained)} have drained, but of how much? Type liquid=Q_(60, "
            f'"{drained.units:~}"), or give percents.'
        )
    return 100 if liquid is None else alike(drained[-1], "drained", liquid, "liquid")[1]


def _never(readings, name):
    """The refusal of a log that stops too early."""
    raise OutOfRange(
        f"{name}: the log ends at {say(readings[-1])}, before half is reached; watch longer, or "
        "ask for an estimate with extrapolate=True."
    )


def _first_crossing(clock, rising, level):
    """The moment a log first reaches a level, on the straight line between two readings."""
    after = int(np.argmax(rising >= level))
    before = max(after - 1, 0)
    return float(np.interp(level, rising[[before, after]], clock[[before, after]]))


def _from_curve(clock_min, share):
    """The half-life of v = V tⁿ / (c + tⁿ) through the readings, V being 1."""
    usable = (clock_min > 0) & (share > 0)
    clock_min, share = clock_min[usable], share[usable]
    if len(share) < 2 or share[-1] < _ENOUGH or share[-1] == share[0]:
        raise OutOfRange(
            "drained: to go beyond the log two different readings are needed, and a tenth drained."
        )
    power, start = np.polyfit(np.log(clock_min), np.log(share / (1 - share)), 1)
    return float(np.exp(-start / power))


def _from_decay(clock_min, left):
    """The half-life of an even decay through the readings."""
    slope, start = np.polyfit(clock_min, np.log(left), 1)
    # A log that dips and grows again may slope upwards, and has no half-life.
    if left[-1] > (1 - _ENOUGH) * left[0] or slope >= 0:
        raise OutOfRange("volumes: to go beyond the log, a tenth of the foam must have gone.")
    return float((np.log(left[0] / 2) - start) / slope)
