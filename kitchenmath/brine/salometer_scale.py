"""The salometer: a hydrometer whose stem runs from 0° in water to 100° in a full brine."""

import numpy as np

from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_
from kitchenmath.units.scales import reading

__all__ = ["SALOMETER_SCALES", "salometer", "strength_from_salometer"]

# Percent of salt at 100°, and where it is printed.
SALOMETER_SCALES = {
    "full brine": 26.395,  # Salt Institute: saturation at 60 °F
    "canning": 25.0,  # an older trade scale, printed in a canning paper
}
_SIXTY_F = Q_(60, "degF")  # the temperature that the stem is made for
_DEGREES_PER_C = 0.18  # 1° in 10 °F: *Preparing a Saltbrine*, Ontario and British Columbia


def salometer(strength, temperature=_SIXTY_F, scale="full brine"):
    """What a salometer shows in a brine of this strength.

    Degrees are not percent: 60° is 15.8 %. And a warm brine is lighter, so it shows too little.

    Parameters
    ----------
    strength : Quantity [percent]
        Salt over the finished brine, up to what 100° means.
    temperature : Quantity [temperature], 10 °C to 30 °C
        Of the brine; the stem is right at 60 °F (15.6 °C).
    scale : "full brine" or "canning"
        100° is 26.395 % (saturation at 60 °F), or 25 % on an older canning scale.

    Returns
    -------
    float

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    15.84 %: 100 x 15.84 / 26.395 = 60°.

    >>> round(salometer(Q_(15.84, "percent")), 1)
    60.0
    """
    full = SALOMETER_SCALES[one_of(scale, SALOMETER_SCALES, "scale")]
    percent = amount(strength, "percent", "strength", least=0, most=full, many=True)
    return 100 * percent / full - _shown_too_little(temperature)


def strength_from_salometer(degrees, temperature=_SIXTY_F, scale="full brine"):
    """The strength of a brine in which a salometer shows `degrees`.

    Parameters
    ----------
    degrees : float, -5 to 105
        As read. After the correction it must lie between 0 and 100.
    temperature : Quantity [temperature], 10 °C to 30 °C
        Of the brine when it was read.
    scale : "full brine" or "canning"
        As in `salometer`. The same 60° is 15.8 % on one and 15 % on the other.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Notes
    -----
    One degree is added for each 10 °F above 60 °F. The guide says it for warm brine; for cold
    brine the same is taken off. Worked out from the density of brine the rule is right within
    0.7° from 10 °C to 30 °C, and no more than that is claimed: let a cold sample warm up.

    Examples
    --------
    58° read at 80 °F is 60° at 60 °F: 0.60 x 26.395 = 15.84 %.

    >>> print(say(strength_from_salometer(58, temperature=Q_(80, "degF"))))
    15.84 %

    References
    ----------
    Salt Institute (26.395 %); *Preparing a Saltbrine*, Ontario and British Columbia (correction).
    """
    full = SALOMETER_SCALES[one_of(scale, SALOMETER_SCALES, "scale")]
    shown = reading(degrees, "degrees", least=-5, most=105)
    # A rounding error may take a brine of exactly 0° or 100° across the end of the stem.
    true = np.round(shown + _shown_too_little(temperature), 9)
    return Q_(reading(true, "degrees, corrected", least=0, most=100) * full / 100, "percent")


def _shown_too_little(temperature):
    """Degrees missing on the stem in a brine warmer than 60 °F; below 0 in a colder one."""
    celsius = amount(temperature, "degC", "temperature", least=10, most=30, many=True)
    return _DEGREES_PER_C * (celsius - _SIXTY_F.to("degC").magnitude)
