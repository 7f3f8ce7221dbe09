"""Readings that have no unit: specific gravity, degrees Baumé, degrees of the salometer, Bloom.

They come in as plain numbers, because a hydrometer's degree is a mark on a stem and no amount.
"""

import numpy as np

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Quantity, kind_of
from kitchenmath.units.saying import figures, say

__all__ = ["baume_from_gravity", "gravity_from_baume", "reading"]


def reading(number, name, *, least=-np.inf, most=np.inf):
    """A plain reading of a scale, after a look at its range.

    Parameters
    ----------
    number : float or array of float
        A ratio of two alike quantities, which pint calls dimensionless, will do as well; a
        percent will not, because 60 % of a degree is not 60°.
    name : str
        The parameter's name, for the error.
    least, most : float, optional
        The lowest and the highest reading allowed.

    Returns
    -------
    float or numpy.ndarray

    Raises
    ------
    WrongKind
        For text, or a quantity with a unit or in percent.
    OutOfRange
        Outside the bounds, or not a finite number.
    """
    if isinstance(number, Quantity) and kind_of(number) != "percent":
        number = amount(number, "count", name, many=True)
    if isinstance(number, Quantity) or np.asarray(number).dtype.kind not in "iuf":
        came = say(number) if isinstance(number, Quantity) else repr(number)
        raise WrongKind(f"{name}: needs a plain number such as {max(least, 1):g}, and {came} came.")
    if not (np.all(np.isfinite(number)) and least <= np.min(number) and np.max(number) <= most):
        raise OutOfRange(
            f"{name}: needs a number from {least:g} to {most:g}, and {figures(number)} came."
        )
    return np.asarray(number, dtype=float) if np.ndim(number) else float(number)


def baume_from_gravity(gravity, modulus=145):
    """Degrees Baumé of a liquid heavier than water: modulus x (1 - 1 / gravity).

    Two moduli are in use, and 0.1° apart in a strong brine: say which one your hydrometer has.

    Parameters
    ----------
    gravity : float, 1 to 2
        Specific gravity: the liquid's density over that of water, both at the temperature
        named on the hydrometer.
    modulus : float, 140 to 150
        145 (60/60 °F, the usual one in the kitchen trades) or 144.32 (15 °C).

    Returns
    -------
    float

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    A syrup of gravity 1.2: 145 x (1 - 1 / 1.2) = 24.17°.

    >>> round(baume_from_gravity(1.2), 2)
    24.17

    References
    ----------
    Gravity = 145 / (145 - °Bé): glossary of the American Institute for Conservation.
    """
    gravity = reading(gravity, "gravity", least=1, most=2)
    return reading(modulus, "modulus", least=140, most=150) * (1 - 1 / gravity)


def gravity_from_baume(degrees, modulus=145):
    """The specific gravity behind degrees Baumé: modulus / (modulus - degrees).

    Parameters
    ----------
    degrees : float, 0 to 75
    modulus : float, 140 to 150
        As in `baume_from_gravity`.

    Returns
    -------
    float

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    A sorbet syrup of 18°: 145 / 127 = 1.142.

    >>> round(gravity_from_baume(18), 3)
    1.142
    """
    degrees = reading(degrees, "degrees", least=0, most=75)
    modulus = reading(modulus, "modulus", least=140, most=150)
    return modulus / (modulus - degrees)
