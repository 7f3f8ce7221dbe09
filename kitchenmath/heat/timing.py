"""One bath, one oven, one fridge: how hot is the piece after a time, and when is it done.

The exact series for a piece that starts at one temperature throughout and stays in one place.
Where it moves from pan to oven to board, take `cook`.
"""

import numpy as np

from kitchenmath.errors import OutOfRange
from kitchenmath.heat.conduction import PLACES, difference_left
from kitchenmath.heat.pieces import celsius, check_piece, surface_at
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

__all__ = ["heat_taken_up", "temperature_after", "time_to_core"]

_SHORTEST = 1e-6  # Fourier number of the thinnest way through: a fraction of a second


def temperature_after(piece, start, surroundings, surface_coefficient, duration, position="centre"):
    """How hot a piece is after a time in one place: an estimate.

    Parameters
    ----------
    piece : Piece
    start, surroundings : Quantity [temperature]
    surface_coefficient : Quantity [W/m**2/K]
    duration : Quantity [time]
        One or a list.
    position : str or Quantity [length]
        "centre", "surface" (middle of the nearest face), "mean", or a distance from the centre.

    Returns
    -------
    Quantity [degC]

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Notes
    -----
    T = Ts + theta (T0 - Ts), theta the product of one-way series, for a dry surface or one under
    water or fat. In hot air a moist one stays far colder: take `cook` with a `WetSurface`.

    Examples
    --------
    An apple from 20 °C in a freezer of -15 °C. After an hour theta is 0.746, so -15 + 26.1 = 11.1.

    >>> from kitchenmath.heat import Piece
    >>> apple = Piece("sphere", diameter=Q_(90, "mm"), conductivity=Q_(0.418, "W/m/K"),
    ...               diffusivity=Q_(0.13, "mm**2/s"))
    >>> print(say(temperature_after(apple, start=Q_(20, "degC"), surroundings=Q_(-15, "degC"),
    ...     surface_coefficient=Q_(8, "W/m**2/K"), duration=Q_(1, "h")), 3))
    11.1 °C

    References
    ----------
    Carslaw and Jaeger, *Conduction of Heat in Solids* (1959).
    """
    check_piece(piece)
    start_C, surroundings_C = celsius(start, "start"), celsius(surroundings, "surroundings")
    coefficient_W_m2K = surface_at(surface_coefficient)
    time_s = amount(duration, "s", "duration", least=0, many=True)
    _long_enough(piece, time_s)
    left = share_left(piece, coefficient_W_m2K, time_s, _place(piece, position))
    reached_C = surroundings_C + left * (start_C - surroundings_C)
    return Q_(reached_C if np.ndim(reached_C) else float(reached_C), "degC")


def time_to_core(piece, start, surroundings, surface_coefficient, core, position="centre"):
    """How long until the core has this temperature: an estimate, and a probe decides.

    Parameters
    ----------
    piece : Piece
    start, surroundings : Quantity [temperature]
    surface_coefficient : Quantity [W/m**2/K], above 0
    core : Quantity [temperature]
        Between start and surroundings.
    position : str or Quantity [length]
        As in `temperature_after`.

    Returns
    -------
    Quantity [min]

    Raises
    ------
    WrongKind
    UnknownName
    OutOfRange
        When the core never has it there.

    Notes
    -----
    Real pieces are out by a fifth and more. For safety no model counts but the food code's
    temperature, measured in the thickest part.

    Examples
    --------
    An egg to 70 °C: Fo = ln(1.9958 / 0.2778) / 3.0754^2 = 0.209, 865 s; the whole series 861.5 s.

    >>> from kitchenmath.heat import Piece
    >>> egg = Piece("sphere", diameter=Q_(50, "mm"), conductivity=Q_(0.627, "W/m/K"),
    ...             diffusivity=Q_(0.151, "mm**2/s"))
    >>> print(say(time_to_core(egg, start=Q_(5, "degC"), surroundings=Q_(95, "degC"),
    ...     surface_coefficient=Q_(1200, "W/m**2/K"), core=Q_(70, "degC"))))
    14.36 min

    References
    ----------
    Çengel and Ghajar, *Heat and Mass Transfer* (5th ed.), Example 4-3.
    """
    check_piece(piece)
    start_C, surroundings_C = celsius(start, "start"), celsius(surroundings, "surroundings")
    coefficient_W_m2K = amount(surface_coefficient, "W/m**2/K", "surface_coefficient", above=0)
    core_C = celsius(core, "core")
    place = _place(piece, position)
    if not min(start_C, surroundings_C) < core_C < max(start_C, surroundings_C):
        raise OutOfRange(
            f"core: {say(core)} does not lie between the start ({say(start)}) and the "
            f"surroundings ({say(surroundings)}), so this place never brings it there."
        )
    target = (core_C - surroundings_C) / (start_C - surroundings_C)
    return Q_(_time_s(piece, coefficient_W_m2K, place, target) / 60, "min")


def heat_taken_up(piece, start, surroundings, surface_coefficient, duration):
    """The heat that a piece has taken up after a time; below nought where it was cooled.

    Parameters
    ----------
    piece : Piece
        A sphere, a brick or a cylinder with a length: it needs a volume.
    start, surroundings : Quantity [temperature]
    surface_coefficient : Quantity [W/m**2/K]
    duration : Quantity [time]

    Returns
    -------
    Quantity [kJ]

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName
        For a piece without end.

    Notes
    -----
    Volume x (conductivity / diffusivity) x (mean - start). Freezing and evaporation are not in it.

    Examples
    --------
    The apple above gives off 17.3 kJ in its hour: 0.3817 L x 3.215 kJ/L/K x 14.1 K.

    >>> from kitchenmath.heat import Piece
    >>> apple = Piece("sphere", diameter=Q_(90, "mm"), conductivity=Q_(0.418, "W/m/K"),
    ...               diffusivity=Q_(0.13, "mm**2/s"))
    >>> print(say(heat_taken_up(apple, start=Q_(20, "degC"), surroundings=Q_(-15, "degC"),
    ...     surface_coefficient=Q_(8, "W/m**2/K"), duration=Q_(1, "h")), 3))
    -17.3 kJ
    """
    mean = temperature_after(
        piece, start, surroundings, surface_coefficient, duration, position="mean"
    )
    held_J_m3K = piece.conductivity_W_mK / piece.diffusivity_m2_s
    volume_m3 = amount(piece.volume, "m**3", "volume")
    return Q_(held_J_m3K * volume_m3 * (mean.magnitude - celsius(start, "start")) / 1000, "kJ")


def share_left(piece, coefficient_W_m2K, time_s, place):
    """Theta of the whole piece: the product of its ways through.

    A place other than the mean lies on the line from the centre to the nearest face, so the other
    ways are taken at their centre.
    """
    left = 1.0
    for way, (power, half_m) in enumerate(piece.halves):
        biot = coefficient_W_m2K * half_m / piece.conductivity_W_mK
        elapsed = piece.diffusivity_m2_s * np.asarray(time_s, float) / half_m**2
        here = place if way == 0 or place == "mean" else "centre"
        left = left * difference_left(power, biot, elapsed, here)
    return left


def _time_s(piece, coefficient_W_m2K, place, target):
    """When theta falls to the target: bracketed by doubling, then narrowed on ever finer grids."""
    scale_s = piece.halves[0][1] ** 2 / piece.diffusivity_m2_s
    low_s, high_s = 0.0, scale_s
    while share_left(piece, coefficient_W_m2K, high_s, place) > target:
        low_s, high_s = high_s, 2 * high_s
    while low_s == 0 and high_s > _SHORTEST * scale_s:
        half_s = high_s / 2
        if share_left(piece, coefficient_W_m2K, half_s, place) > target:
            low_s = half_s
        else:
            high_s = half_s
    if low_s == 0:
        return high_s  # at once, as far as a kitchen clock tells
    for _ in range(5):
        grid_s = np.linspace(low_s, high_s, 41)
        left = share_left(piece, coefficient_W_m2K, grid_s, place)
        after = int(np.clip(np.searchsorted(-left, -target), 1, 40))
        low_s, high_s = grid_s[after - 1], grid_s[after]
    return (low_s + high_s) / 2


def _place(piece, position):
    """A position as the series takes it: a word, or r / R along the shortest way out."""
    if isinstance(position, str):
        return one_of(position, PLACES, "position")
    half_m = piece.halves[0][1]
    return amount(position, "m", "position", least=0, most=half_m) / half_m


def _long_enough(piece, time_s):
    """Refuse times so short that the series would need thousands of terms."""
    shortest_s = _SHORTEST * piece.halves[0][1] ** 2 / piece.diffusivity_m2_s
    too_short = (np.asarray(time_s) > 0) & (np.asarray(time_s) < shortest_s)
    if too_short.any():
        raise OutOfRange(
            f"duration: needs 0 or at least {say(Q_(shortest_s, 's'))} for a piece this thick, "
            "because nothing can be said of a shorter dip."
        )
