"""Newton's law: something small, thin or stirred comes to the room's temperature step by step."""

import math
from dataclasses import dataclass

import numpy as np

from kitchenmath.errors import OutOfRange
from kitchenmath.heat.pieces import celsius
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

__all__ = ["NewtonCooling", "newton_cooling"]


@dataclass(frozen=True)
class NewtonCooling:
    """How something nears its surroundings at one rate: made by `newton_cooling`."""

    start_C: float
    surroundings_C: float
    rate_per_min: float

    @property
    def rate(self):
        """The share of the difference that goes in a minute, at any moment [1/min]."""
        return Q_(self.rate_per_min, "1/min")

    def temperature_after(self, duration):
        """The temperature after a time: an estimate.

        Parameters
        ----------
        duration : Quantity [time]
            One or a list.

        Returns
        -------
        Quantity [degC]

        Raises
        ------
        WrongKind
        OutOfRange
        """
        minutes = amount(duration, "min", "duration", least=0, many=True)
        left_C = (self.start_C - self.surroundings_C) * np.exp(-self.rate_per_min * minutes)
        return Q_(self.surroundings_C + left_C, "degC")

    def time_to(self, temperature):
        """How long until it has this temperature: an estimate.

        Parameters
        ----------
        temperature : Quantity [temperature]
            Between start and surroundings.

        Returns
        -------
        Quantity [min]

        Raises
        ------
        WrongKind
        OutOfRange
            When it never has it.
        """
        there_C = celsius(temperature, "temperature") - self.surroundings_C
        begun_C = self.start_C - self.surroundings_C
        if not 0 < there_C / begun_C <= 1:
            raise OutOfRange(
                f"temperature: {say(temperature)} does not lie between the start "
                f"({say(Q_(self.start_C, 'degC'))}) and the surroundings "
                f"({say(Q_(self.surroundings_C, 'degC'))}), which it only nears."
            )
        return Q_(math.log(begun_C / there_C) / self.rate_per_min, "min")


def newton_cooling(start, surroundings, reading, after):
    """The rate at which something cools or warms, from its start and one later reading.

    Easily confused: not so many degrees a minute, but the same share of the difference to the room.

    Parameters
    ----------
    start : Quantity [temperature]
    surroundings : Quantity [temperature]
    reading : Quantity [temperature]
        Between the two.
    after : Quantity [time]

    Returns
    -------
    NewtonCooling
        With `rate`, `temperature_after(duration)` and `time_to(temperature)`.

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    T = Ts + (T0 - Ts) exp(-r t). True where the inside is even: thin, small or stirred (Biot number
    with volume over area below 0.1). A deep pot that stands still cools far more slowly in its
    middle; for cooling safely the food code's times and a probe decide.

    Examples
    --------
    A cake: r = ln(240 / 140) / 10 = 0.0539 a minute, 75 °F after ln(240 / 15) / r = 51.4 minutes.

    >>> cake = newton_cooling(start=Q_(300, "degF"), surroundings=Q_(60, "degF"),
    ...                       reading=Q_(200, "degF"), after=Q_(10, "min"))
    >>> print(say(cake.time_to(Q_(75, "degF"))))
    51.44 min

    References
    ----------
    OpenStax *Precalculus*.
    """
    start_C, surroundings_C = celsius(start, "start"), celsius(surroundings, "surroundings")
    reading_C, minutes = celsius(reading, "reading"), amount(after, "min", "after", above=0)
    if not min(start_C, surroundings_C) < reading_C < max(start_C, surroundings_C):
        raise OutOfRange(
            f"reading: {say(reading)} does not lie between the start ({say(start)}) and the "
            f"surroundings ({say(surroundings)})."
        )
    share_left = (reading_C - surroundings_C) / (start_C - surroundings_C)
    return NewtonCooling(start_C, surroundings_C, -math.log(share_left) / minutes)
