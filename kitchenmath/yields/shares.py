"""What is left after trimming and cooking, and what to buy so that enough is left.

"As purchased" is what comes through the door, "edible portion" what reaches the plate;
the yield is the second over the first.
"""

from kitchenmath.data.tables import table
from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import alike, one_of, plain_number, positive, share
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

__all__ = [
    "as_purchased",
    "cooking_loss",
    "edible_portion",
    "published_yields",
    "yield_from_factor",
    "yield_of",
]


def yield_of(purchased, edible):
    """The share of what was bought that is left to serve.

    Parameters
    ----------
    purchased : Quantity [weight, volume or count]
        As it came.
    edible : Quantity [the same kind]
        What is left after trimming, cooking or both.

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
        When the two are of different kinds.
    OutOfRange
        When something is not above nought, or more is left than was bought.

    Examples
    --------
    A kilo of carrots that gives 800 g: 800 / 1000 = 80 %.

    >>> print(say(yield_of(purchased=Q_(1, "kg"), edible=Q_(800, "g"))))
    80 %

    References
    ----------
    *Basic Kitchen and Food Service Management* (BCcampus), yield testing: carrots 80 %.
    """
    purchased_u, edible_u = alike(purchased, "purchased", edible, "edible")
    if edible_u > purchased_u:
        raise OutOfRange(
            f"edible: {say(edible)} is more than the {say(purchased)} bought; "
            "are the two weights the wrong way round?"
        )
    return Q_(100 * edible_u / purchased_u, "percent")


def edible_portion(purchased, yield_):
    """What is left to serve of a weight as purchased: purchased x yield.

    Parameters
    ----------
    purchased : Quantity [weight, volume or count]
    yield_ : Quantity [percent], above 0, at most 100

    Returns
    -------
    Quantity
        In the unit of `purchased`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    3 lb of courgettes at 95 %: 3 x 0.95 = 2.85 lb.

    >>> print(say(edible_portion(purchased=Q_(3, "lb"), yield_=Q_(95, "percent"))))
    2.85 lb

    References
    ----------
    *Bakery and Business Math* (open text), yield percents.
    """
    positive(purchased, "purchased")
    return purchased * share(yield_, "yield_")


def as_purchased(edible, yield_):
    """What to buy so that `edible` is left: edible / yield. Dividing makes it more, as it must.

    Parameters
    ----------
    edible : Quantity [weight, volume or count]
    yield_ : Quantity [percent], above 0, at most 100

    Returns
    -------
    Quantity
        In the unit of `edible`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    32 oz of pears to serve at 78 %: 32 / 0.78 = 41.03 oz.

    >>> print(say(as_purchased(edible=Q_(32, "oz"), yield_=Q_(78, "percent"))))
    41.03 oz

    References
    ----------
    *Bakery and Business Math* (open text), yield percents.
    """
    positive(edible, "edible")
    return edible / share(yield_, "yield_")


def yield_from_factor(factor):
    """The yield behind a purchase factor (buy = edible x factor), so 1 / factor.

    Parameters
    ----------
    factor : float, at least 1

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    OutOfRange

    Examples
    --------
    Celery has the factor 1.37: 1 / 1.37 = 72.99 %.

    >>> print(say(yield_from_factor(1.37)))
    72.99 %

    References
    ----------
    US Armed Forces Recipe Service (TM 10-412), General Information No. 6.
    """
    return Q_(100 / plain_number(factor, "factor", least=1), "percent")


def cooking_loss(raw, cooked):
    """The share of weight that went into the pan and the air: (raw - cooked) / raw.

    Parameters
    ----------
    raw, cooked : Quantity [weight or volume]

    Returns
    -------
    Quantity [percent]
        Below 0 where food took up water, as rice does.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    A roast of 2 kg that weighs 1.5 kg when done lost a quarter.

    >>> print(say(cooking_loss(raw=Q_(2, "kg"), cooked=Q_(1.5, "kg"))))
    25 %
    """
    raw_u, cooked_u = alike(raw, "raw", cooked, "cooked")
    return Q_(100 * (1 - cooked_u / raw_u), "percent")


def published_yields(item):
    """What different sources print as the yield of one food. They disagree, and that is the point.

    Parameters
    ----------
    item : str
        Such as "carrots" or "celery".

    Returns
    -------
    dict of str to Quantity [percent]
        One entry a source. Where the sources differ, weigh a kilo of your own.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> {source: say(share) for source, share in published_yields("celery").items()}
    {'USDA SR28': '89 %', 'AFRS TM 10-412': '72.99 %', 'math25.net lessons': '69 %'}
    """
    rows = table("yields.csv")
    one_of(item, sorted({row["item"] for row in rows}), "item")
    return {
        row["source"]: Q_(float(row["yield_percent"]), "percent")
        for row in rows
        if row["item"] == item
    }
