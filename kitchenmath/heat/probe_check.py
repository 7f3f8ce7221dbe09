"""A probe held into melting ice and into boiling water: how far off it is, and what to add."""

from dataclasses import dataclass

from kitchenmath.errors import OutOfRange
from kitchenmath.heat.boiling import boiling_point
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say

FARTHEST_C = 10  # a probe that is farther off is broken, or was in no ice


@dataclass(frozen=True)
class ProbeCheck:
    """How far a probe shows too much, in melting ice and in boiling water.

    Attributes
    ----------
    ice_off, boiling_off : Quantity [delta_degC]
        Below 0 where it shows too little.
    boils_at : Quantity [degC]
        Where plain water boils at this height.
    """

    ice_off: Quantity
    boiling_off: Quantity
    boils_at: Quantity

    def off_at(self, temperature):
        """How far it shows too much at a true temperature: straight from one check to the other.

        Parameters
        ----------
        temperature : Quantity [temperature]

        Returns
        -------
        Quantity [delta_degC]

        Raises
        ------
        WrongKind
        """
        share = amount(temperature, "degC", "temperature") / self.boils_at.magnitude
        low, high = self.ice_off.magnitude, self.boiling_off.magnitude
        return Q_(low + share * (high - low), "delta_degC")

    def must_show(self, limit):
        """What this probe must show before a core is truly at a limit.

        Parameters
        ----------
        limit : Quantity [temperature]

        Returns
        -------
        Quantity [degC]

        Raises
        ------
        WrongKind
        """
        off_C = self.off_at(limit).magnitude
        return Q_(amount(limit, "degC", "limit") + off_C, "degC")


def check_probe(ice, boiling, altitude=None):
    """How far off a probe is, from what it shows in melting ice and in boiling water.

    Likely confusion: water boils at 100 °C near the sea only. In the mountains a sound probe shows
    less, and is not to blame.

    Parameters
    ----------
    ice, boiling : Quantity [temperature]
        What the probe shows in crushed ice with water, and in water at a rolling boil.
    altitude : Quantity [length], optional
        Height above the sea, where left out 0 m.

    Returns
    -------
    ProbeCheck

    Raises
    ------
    WrongKind
    OutOfRange
        Where it is farther off than 10 °C: then it is broken, or something else was measured.

    Notes
    -----
    Melting ice has 0 °C at every height. The weather moves the boil by up to about 1 °C, so ice is
    the sharper of the two checks.

    Examples
    --------
    At 900 m water boils at 97 °C. A probe that shows 0.5 °C in ice and 98 °C there shows 0.5 and
    1 °C too much; near 74 °C it is 0.88, so it must show 74.9 °C.

    >>> mine = check_probe(Q_(0.5, "degC"), Q_(98, "degC"), altitude=Q_(900, "m"))
    >>> print(say(mine.boils_at, 3), say(mine.must_show(Q_(74, "degC")), 3))
    97 °C 74.9 °C

    References
    ----------
    IAPWS-IF97 and *US Standard Atmosphere* (1976), as in `boiling_point`.
    """
    ice_C, boiling_C = amount(ice, "degC", "ice"), amount(boiling, "degC", "boiling")
    boils_at = boiling_point(altitude=altitude)
    off_C = {"ice": ice_C, "boiling": boiling_C - boils_at.magnitude}
    for name, number in off_C.items():
        if abs(number) > FARTHEST_C:
            raise OutOfRange(
                f"{name}: {say(Q_(round(abs(number), 1), 'delta_degC'))} off came, and a probe so "
                f"far off is broken, or was not in {'ice' if name == 'ice' else 'boiling water'}."
            )
    return ProbeCheck(*(Q_(each, "delta_degC") for each in off_C.values()), boils_at)
