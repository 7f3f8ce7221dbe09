"""What a probe in the core tells about the oven: the surface coefficient behind a log."""

import math
from dataclasses import dataclass

import numpy as np

from kitchenmath.errors import OutOfRange
from kitchenmath.heat.pieces import celsius, check_piece
from kitchenmath.heat.timing import share_left
from kitchenmath.numeric.distributions import student_t_quantile
from kitchenmath.numeric.roots import bisect
from kitchenmath.safety.logs import read_log
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import figures, say

__all__ = ["FittedCoefficient", "fit_surface_coefficient", "surface_coefficient_from_reading"]

_LOWEST, _HIGHEST = 0.5, 1e5  # W/m2/K: from a good wrapping to condensing steam
_FEWEST = 6  # readings: one for the coefficient, five to tell how sure it is
_GONE = 0.1  # the share of the way to the surroundings that the core must have gone
_WIDEST = 4.0  # an interval wider than this factor says nothing useful


@dataclass(frozen=True)
class FittedCoefficient:
    """The surface coefficient that comes nearest to a probe's log, and how sure it is.

    Parameters
    ----------
    coefficient : Quantity [W/m**2/K]
    standard_error : Quantity [W/m**2/K]
    low, high : Quantity [W/m**2/K]
        The 95 % interval, if each reading missed by chance and on its own. A probe that sits off
        the centre or a wrong thickness misses all readings alike, and that is not in it.
    typical_miss : Quantity [delta_degC]
        Root mean square of the readings less the model.
    explained : Quantity [percent]
        The share of the readings' spread that the model follows (R squared).
    expected : Quantity [degC], array
        The model's core at the readings' times, to draw beside them.
    """

    coefficient: Quantity
    standard_error: Quantity
    low: Quantity
    high: Quantity
    typical_miss: Quantity
    explained: Quantity
    expected: Quantity


def fit_surface_coefficient(piece, log, surroundings, start=None):
    """The surface coefficient of an oven, a bath or a fridge from a log of the core.

    Parameters
    ----------
    piece : Piece
    log : path, (times, temperatures), or list of (time, temperature)
        At least six readings; a CSV file has the heading `time_min,temperature_C` or its like.
    surroundings : Quantity [temperature]
    start : Quantity [temperature], optional
        Throughout the piece, at the first reading; that reading when left out.

    Returns
    -------
    FittedCoefficient

    Raises
    ------
    WrongKind
    Unreadable
    OutOfRange
        For a log that cannot tell: too few readings, a core that stands still or turns back.

    Notes
    -----
    Least squares in ln h on `temperature_after`; standard error h s / sqrt(sum (dT/d ln h)^2). In
    hot air over a moist surface it is an effective value, far below the air's own.

    Examples
    --------
    A log made from 25 W/m2/K, rounded to a tenth of a degree, gives them back.

    >>> from kitchenmath.foods import food
    >>> from kitchenmath.heat import Piece, temperature_after
    >>> ball = Piece("sphere", diameter=Q_(60, "mm"), food=food("beetroot"))
    >>> minutes = Q_(list(range(0, 60, 5)), "min")
    >>> core = temperature_after(ball, Q_(8, "degC"), Q_(80, "degC"), Q_(25, "W/m**2/K"), minutes)
    >>> fit = fit_surface_coefficient(ball, (minutes, core.round(1)), surroundings=Q_(80, "degC"))
    >>> round(fit.coefficient.magnitude, 1)
    25.0

    References
    ----------
    Bates and Watts, *Nonlinear Regression Analysis and Its Applications* (1988).
    """
    check_piece(piece)
    times, cores = read_log(log)
    seconds = amount(times, "s", "log", many=True)
    core_C = amount(cores, "degC", "log", many=True)
    seconds = seconds - seconds[0]
    surroundings_C = celsius(surroundings, "surroundings")
    start_C = float(core_C[0]) if start is None else celsius(start, "start")
    _can_tell(core_C, start_C, surroundings_C)

    def model_C(ln_coefficient):
        left = share_left(piece, math.exp(ln_coefficient), seconds, "centre")
        return surroundings_C + left * (start_C - surroundings_C)

    ln_best = _nearest(model_C, core_C)
    expected_C, tilt_C = model_C(ln_best), _tilt_C(model_C, ln_best)
    squares = float(((core_C - expected_C) ** 2).sum())
    spread_C = math.sqrt(squares / (len(core_C) - 1))
    ln_error = spread_C / max(math.sqrt(tilt_C @ tilt_C), 1e-9)
    reach = ln_error * student_t_quantile(0.975, len(core_C) - 1)
    _must_be_sure(piece, ln_best, tilt_C, reach)
    explained = 100 * (1 - squares / float(((core_C - core_C.mean()) ** 2).sum()))
    best, error, low, high = (
        Q_(math.exp(ln_best) * each, "W/m**2/K")
        for each in (1.0, ln_error, math.exp(-reach), math.exp(reach))
    )
    miss = Q_(math.sqrt(squares / len(core_C)), "delta_degC")
    return FittedCoefficient(
        best, error, low, high, miss, Q_(explained, "percent"), Q_(expected_C, "degC")
    )


def surface_coefficient_from_reading(piece, start, surroundings, reading, after):
    """The surface coefficient that brings the core to one reading after a time.

    One reading gives a value but no word on how sure it is; for that log several and take
    `fit_surface_coefficient`.

    Parameters
    ----------
    piece : Piece
    start, surroundings : Quantity [temperature]
    reading : Quantity [temperature]
        Of the core.
    after : Quantity [time]

    Returns
    -------
    Quantity [W/m**2/K]

    Raises
    ------
    WrongKind
    OutOfRange
        When no coefficient does it: the inside itself would be too slow.

    Examples
    --------
    A rib roast as a ball of 172 mm from 4.5 °C at 163 °C had 60 °C after 165 minutes. By the
    first term alone a book found 157 W/m2/K; the whole series says 93.

    >>> from kitchenmath.heat import Piece
    >>> rib = Piece("sphere", diameter=Q_(172.05, "mm"), conductivity=Q_(0.45, "W/m/K"),
    ...             diffusivity=Q_(0.091, "mm**2/s"))
    >>> found = surface_coefficient_from_reading(rib, start=Q_(4.5, "degC"),
    ...     surroundings=Q_(163, "degC"), reading=Q_(60, "degC"), after=Q_(165, "min"))
    >>> round(found.magnitude)
    93

    References
    ----------
    Çengel and Ghajar, *Heat and Mass Transfer* (5th ed.), problem 4-77.
    """
    check_piece(piece)
    start_C, surroundings_C = celsius(start, "start"), celsius(surroundings, "surroundings")
    reading_C, after_s = celsius(reading, "reading"), amount(after, "s", "after", above=0)
    target = (reading_C - surroundings_C) / (start_C - surroundings_C or math.nan)
    low, high = math.log(_LOWEST), math.log(_HIGHEST)
    slowest, fastest = (
        float(share_left(piece, math.exp(end), after_s, "centre")) for end in (low, high)
    )
    if not fastest < target < slowest:
        ends = sorted(
            surroundings_C + left * (start_C - surroundings_C) for left in (slowest, fastest)
        )
        raise OutOfRange(
            f"reading: after {say(after)} the core of this piece lies between "
            f"{figures(ends[0], 3)} and {figures(ends[1], 3)} °C whatever the coefficient, and "
            f"{say(reading)} came."
        )
    best = bisect(
        lambda each: share_left(piece, math.exp(each), after_s, "centre") <= target, low, high
    )
    return Q_(math.exp(best), "W/m**2/K")


def _can_tell(core_C, start_C, surroundings_C):
    """Refuse a log from which no coefficient can be read.

    Raises
    ------
    OutOfRange
    """
    if len(core_C) < _FEWEST:
        raise OutOfRange(f"log: needs at least {_FEWEST} readings, and {len(core_C)} came.")
    way_C = surroundings_C - start_C
    gone = (core_C - start_C) / (way_C or math.nan)  # towards the surroundings, as a share
    turned_back = np.maximum.accumulate(gone) - gone
    if abs(way_C) < 1 or np.ptp(core_C) == 0:
        raise OutOfRange("log: the core stands still, so it tells nothing; log a piece that warms.")
    if gone[-1] <= 0 or gone.min() < -0.1:
        raise OutOfRange(
            f"log: the core goes from {figures(core_C[0], 3)} to {figures(core_C[-1], 3)} °C, away "
            f"from surroundings of {figures(surroundings_C)} °C; are they right?"
        )
    if turned_back.max() > 0.05:
        raise OutOfRange(
            f"log: the core turns back at reading {int(turned_back.argmax()) + 1}; end the log "
            "where the piece leaves this place."
        )
    if gone.max() >= 1.02:
        raise OutOfRange(
            f"surroundings: the core goes past {figures(surroundings_C)} °C, so they were not that."
        )
    if gone.max() < _GONE:
        raise OutOfRange(
            f"log: the core has gone {figures(100 * gone.max(), 2)} % of its way; log on until it "
            f"has gone at least {100 * _GONE:.0f} %."
        )


def _nearest(model_C, core_C):
    """ln h of least squares: the best of a coarse row, then Gauss and Newton's steps from there."""
    row = np.linspace(math.log(_LOWEST), math.log(_HIGHEST), 40)
    misses = [float(((model_C(each) - core_C) ** 2).sum()) for each in row]
    best = row[int(np.argmin(misses))]
    for _ in range(20):
        tilt_C, misses_C = _tilt_C(model_C, best), core_C - model_C(best)
        step = float(tilt_C @ misses_C) / max(float(tilt_C @ tilt_C), 1e-12)
        best = min(max(best + min(max(step, -0.5), 0.5), row[0]), row[-1])
        if abs(step) < 1e-9:
            break
    return best


def _tilt_C(model_C, ln_coefficient):
    """How the model's readings change with ln h."""
    return (model_C(ln_coefficient + 1e-4) - model_C(ln_coefficient - 1e-4)) / 2e-4


def _must_be_sure(piece, ln_best, tilt_C, reach):
    """Refuse a fit that any other coefficient would serve as well.

    Raises
    ------
    OutOfRange
    """
    half_m = piece.halves[0][1]
    biot = math.exp(ln_best) * half_m / piece.conductivity_W_mK
    # A doubled coefficient must move some reading by what a probe can show.
    felt_C = math.log(2) * np.abs(tilt_C).max()
    if felt_C < 0.5 or 2 * reach > math.log(_WIDEST):
        raise OutOfRange(
            f"log: it cannot tell the coefficient (Biot number about {figures(biot, 2)}); either "
            "the readings scatter, or the inside alone sets the pace. Take a thinner piece or "
            "surroundings that pass less heat."
        )
