"""Boiling down and thinning out: what is dissolved stays, the water comes and goes."""

import numpy as np

from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import amount
from kitchenmath.units.saying import say

__all__ = ["dilute_to", "reduce_to"]


def reduce_to(weight, start, target):
    """What the pan must weigh once a liquid is reduced to a stated strength: m x start / target.

    Not a share of the volume: put the pan on the scale, empty and full.

    Parameters
    ----------
    weight : Quantity [weight]
        Of the liquid at the start.
    start, target : Quantity [percent]
        By weight, of anything that does not boil away: sugar (°Brix), salt, dry matter.

    Returns
    -------
    Quantity [weight]
        What is left, in the unit of `weight`; the rest is steam.

    Raises
    ------
    WrongKind
    OutOfRange
        When the target is the weaker one.

    Examples
    --------
    1 kg of apple juice from 12 to 65 °Brix: 1000 x 12 / 65 = 184.6 g.

    >>> print(say(reduce_to(Q_(1000, "g"), start=Q_(12, "percent"), target=Q_(65, "percent"))))
    184.6 g
    """
    amount(weight, "g", "weight", above=0)
    start_percent, target_percent = _strengths(start, target)
    if np.any(target_percent < start_percent):
        raise OutOfRange(
            f"target: {say(target)} is weaker than {say(start)}, and boiling makes a liquid "
            "stronger; see dilute_to."
        )
    return weight * (start_percent / target_percent)


def dilute_to(weight, start, target):
    """What the pan must weigh once a liquid is thinned to a stated strength: m x start / target.

    The whole, not the water to add: put the pan on the scale and top it up to this.

    Parameters
    ----------
    weight : Quantity [weight]
        Of the strong liquid.
    start, target : Quantity [percent]
        By weight.

    Returns
    -------
    Quantity [weight]
        Of the finished liquid, in the unit of `weight`.

    Raises
    ------
    WrongKind
    OutOfRange
        When the target is the stronger one.

    Examples
    --------
    300 g of syrup from 60 to 25 °Brix: 300 x 60 / 25 = 720 g, so 420 g of water go in.

    >>> print(say(dilute_to(Q_(300, "g"), start=Q_(60, "percent"), target=Q_(25, "percent"))))
    720 g
    """
    amount(weight, "g", "weight", above=0)
    start_percent, target_percent = _strengths(start, target)
    if np.any(target_percent > start_percent):
        raise OutOfRange(
            f"target: {say(target)} is stronger than {say(start)}, and water makes a liquid "
            "weaker; see reduce_to."
        )
    return weight * (start_percent / target_percent)


def _strengths(start, target):
    """Both as plain percents."""
    return tuple(
        amount(strength, "percent", name, above=0, most=100)
        for strength, name in ((start, "start"), (target, "target"))
    )
