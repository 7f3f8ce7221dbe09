"""What a cook means beyond the letters: water by its litres, and a point that slipped."""

import re

from kitchenmath.errors import Unreadable
from kitchenmath.units.measures import weight_of
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_, same_kind
from kitchenmath.units.saying import say

OF_WATER = re.compile(r"(.*\d.*?) ?(?:of )?(?:cold |warm |tap )?water", re.IGNORECASE)
KILO_G = 1000
LITRE_A_KILO = Q_(1, "g/mL")


def weight_of_water(line, system="us"):
    """A weight of water as it is typed: "6.27 L of water" is 6.27 kg of it.

    Parameters
    ----------
    line : str
    system : str
        Whose cups and spoons, as for `read`.

    Returns
    -------
    Quantity or None
        None where no water is named, or no amount of it can be read.

    Notes
    -----
    A litre of water is taken for a kilo, as kitchens do (common practice); at 20 °C it is 0.2 %
    less.

    Examples
    --------
    >>> print(say(weight_of_water("500 mL of water")), weight_of_water("500 mL of cream"))
    500 g None
    """
    named = OF_WATER.fullmatch(line)
    if not named:
        return None
    try:
        amount = read(named[1], system)
    except Unreadable:
        return None  # `read` has the sentence for the whole of it
    if not same_kind(amount, "mL"):
        return amount
    weight = weight_of(amount, LITRE_A_KILO)
    return weight.to("kg") if weight.magnitude >= KILO_G else weight


def point_slipped(value, low, high):
    """A question back, where a tenth or ten times an amount would be one to believe.

    Parameters
    ----------
    value, low, high : Quantity
        The amount, and between what it can be believed.

    Returns
    -------
    str
        With a blank before it; "" where the point is not to blame.

    Examples
    --------
    >>> point_slipped(Q_(1030, "degF"), Q_(-40, "degC"), Q_(400, "degC"))
    ' Is it 103 °F?'
    """
    for meant in (Q_(value.magnitude / 10, value.units), Q_(value.magnitude * 10, value.units)):
        if low <= meant <= high:
            return f" Is it {say(meant)}?"
    return ""
