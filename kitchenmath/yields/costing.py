"""What a kilo, a portion and a plate cost, and what to ask for it."""

from kitchenmath.errors import WrongKind
from kitchenmath.units.door import amount, money, plain_number, positive, share
from kitchenmath.units.registry import Q_, kind_of
from kitchenmath.units.saying import say


def edible_cost(price, yield_):
    """What a kilo on the plate costs when a kilo bought costs `price`: price / yield.

    Parameters
    ----------
    price : Quantity [money per weight, volume or count]
    yield_ : Quantity [percent], above 0, at most 100

    Returns
    -------
    Quantity
        In the unit of `price`.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    $11.95 a kilo at 88.46 %: 11.95 / 0.8846 = $13.51 a kilo.

    >>> print(say(edible_cost(price=Q_(11.95, "dollar/kg"), yield_=Q_(88.46, "percent"))))
    $13.51 per kg
    """
    positive(price, "price")
    per = {unit: kind_of((price * Q_(1, unit)).to_base_units()) for unit in ("kg", "L", "count")}
    if "money" not in per.values():
        raise WrongKind(
            f'price: needs a price such as Q_(3.48, "dollar/kg"), and {say(price)} came.'
        )
    return price / share(yield_, "yield_")


def portion_cost(cost, portions):
    """What one portion costs.

    Parameters
    ----------
    cost : Quantity [money]
        Of the whole batch.
    portions : int or float, above 0

    Returns
    -------
    Quantity [money]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    >>> portion_cost(cost=Q_(173.89, "dollar"), portions=200).magnitude
    0.86945
    """
    return money(cost, "cost") / plain_number(portions, "portions", above=0)


def menu_price(cost, food_cost):
    """The selling price at which the food is `food_cost` of it: cost / food cost.

    Parameters
    ----------
    cost : Quantity [money]
        Of one portion.
    food_cost : Quantity [percent], above 0, at most 100
        Share of the selling price, not a mark-up on the cost.

    Returns
    -------
    Quantity [money]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    $1.60 at a food cost of 40 %: 1.60 / 0.40 = $4.00.

    >>> print(say(menu_price(cost=Q_(1.60, "dollar"), food_cost=Q_(40, "percent"))))
    $4.00

    References
    ----------
    Gisslen, *Professional Cooking* (2014), menu price from cost.
    """
    return money(cost, "cost") / share(food_cost, "food_cost")


def allowed_cost(price, food_cost):
    """What a portion may cost at this menu price and food cost: price x food cost.

    Parameters
    ----------
    price : Quantity [money]
    food_cost : Quantity [percent], above 0, at most 100

    Returns
    -------
    Quantity [money]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    $6.75 at 35 %: 6.75 x 0.35 = $2.36.

    >>> print(say(allowed_cost(price=Q_(6.75, "dollar"), food_cost=Q_(35, "percent"))))
    $2.36

    References
    ----------
    Gisslen, *Professional Cooking* (2014).
    """
    return money(price, "price") * share(food_cost, "food_cost")


def margin_of(markup):
    """The margin (share of the price) behind a mark-up (share of the cost): m / (1 + m).

    Parameters
    ----------
    markup : Quantity [percent], at least 0

    Returns
    -------
    Quantity [percent]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    A mark-up of 30 % leaves 0.30 / 1.30 = 23.08 %.

    >>> print(say(margin_of(Q_(30, "percent"))))
    23.08 %
    """
    markup_share = amount(markup, "percent", "markup", least=0) / 100
    return Q_(100 * markup_share / (1 + markup_share), "percent")
