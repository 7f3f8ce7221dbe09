"""Oven marks and temperatures."""

from fractions import Fraction

from kitchenmath.data.tables import table
from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_


def oven_temperature(mark):
    """The oven temperature behind a gas mark: 250 °F + 25 °F for each mark from 1 on.

    Parameters
    ----------
    mark : float
        1/4, 1/2, or a whole number from 1 to 10.

    Returns
    -------
    Quantity [degF]

    Raises
    ------
    OutOfRange

    Examples
    --------
    Mark 4: 250 + 4 x 25 = 350 °F, 177 °C.

    >>> print(say(oven_temperature(4)))
    350 °F

    References
    ----------
    Encyclopaedia table of gas marks (liquisearch.com); no standards document is known.
    Ovens differ from their dial by 10 °C and more: an oven thermometer decides.
    """
    for row in table("oven_marks.csv"):
        if float(Fraction(row["mark"])) == mark:
            return Q_(float(row["degF"]), "degF")
    raise OutOfRange(f"mark: needs 1/4, 1/2 or 1 to 10, and {mark} came.")


def oven_mark(temperature):
    """The gas mark nearest to an oven temperature.

    Parameters
    ----------
    temperature : Quantity [temperature], 100 to 280 °C

    Returns
    -------
    str
        "1/4", "1/2", "1" to "10".

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    >>> oven_mark(Q_(180, "degC"))
    '4'
    """
    fahrenheit = amount(temperature, "degF", "temperature", least=212, most=536)
    return min(table("oven_marks.csv"), key=lambda row: abs(float(row["degF"]) - fahrenheit))[
        "mark"
    ]
