"""What a dish costs, what to ask for it, and what to order for it."""

import math
from dataclasses import dataclass

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.recipes.recipe import check_recipe
from kitchenmath.units.door import amount, instance, money, share
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.yields.ordering import order


@dataclass(frozen=True)
class DishCost:
    """What the food of a dish costs, by measure: packs that stay open are not in it.

    Attributes
    ----------
    lines : dict of str to Quantity or None
        By ingredient; None where there is no price, or it goes in to taste.
    total, portion : Quantity or None
        Of what has a price; None where nothing has one.
    unpriced : tuple of str
        What is in the dish and not in the sum.
    """

    lines: dict
    total: Quantity | None
    portion: Quantity | None
    unpriced: tuple


@dataclass(frozen=True)
class CardPrice:
    """The price of a portion, from its cost to the menu card.

    Attributes
    ----------
    cost : Quantity
    before_tax : Quantity
        What the house keeps of the price.
    on_card : Quantity
        What the guest reads: with the tax where the country puts it in.
    food_cost, gross_profit : Quantity [percent]
        Of the price before tax. They add up to 100 %.
    """

    cost: Quantity
    before_tax: Quantity
    on_card: Quantity

    @property
    def food_cost(self):
        """The food's share of the price before tax."""
        return Q_(100 * (self.cost / self.before_tax).to("").magnitude, "percent")

    @property
    def gross_profit(self):
        """What is left of the price before tax when the food is paid, as a share of it."""
        return Q_(100 - self.food_cost.magnitude, "percent")


def dish_cost(recipe):
    """What the food of a recipe costs, in all and for a portion.

    Parameters
    ----------
    recipe : Recipe

    Returns
    -------
    DishCost

    Raises
    ------
    WrongKind
        When prices of two currencies stand in one recipe.

    Examples
    --------
    1.36 kg of brunoise at 68 % is 2 kg of celeriac; at $3.20 that is $6.40, and 40 cents each.

    >>> from kitchenmath.recipes.reading import read_recipe
    >>> dish = read_recipe("Dish\\nserves 16\\n1.36 kg celeriac; yield 68 %; $3.20 per kg")
    >>> print(say(dish_cost(dish).total), say(dish_cost(dish).portion))
    $6.40 $0.40
    """
    check_recipe(recipe)
    lines, total = {}, None
    for each in recipe.ingredients:
        cost = each.cost
        lines[each.name] = _added(lines.get(each.name), cost)
        total = _added(total, cost)
    unpriced = tuple(
        each.name for each in recipe.ingredients if each.cost is None and each.amount is not None
    )
    portion = None if total is None else total / recipe.portions
    return DishCost(lines, total, portion, unpriced)


def card_price(cost, *, food_cost=None, gross_profit=None, tax=None, tax_in_price=True):
    """The price of a portion from its cost and the share that the food may be.

    Food cost and gross profit say the same from two sides: 30 % and 70 %. Both are shares of the
    price *before* tax; a margin worked on the price with the tax in it is too large.

    Parameters
    ----------
    cost : Quantity [money]
        Of one portion.
    food_cost, gross_profit : Quantity [percent], between 0 and 100
        One of the two.
    tax : Quantity [percent], at least 0, optional
    tax_in_price : bool
        Whether the card shows the price with the tax (value added tax), or without (sales tax).

    Returns
    -------
    CardPrice

    Raises
    ------
    WrongKind
        For both shares, or none.
    OutOfRange

    Examples
    --------
    £2.40 at a gross profit of 70 %: 2.40 / 0.30 = £8.00; with 20 % value added tax £9.60.

    >>> plate = card_price(Q_(2.40, "sterling"), gross_profit=Q_(70, "percent"),
    ...                    tax=Q_(20, "percent"))
    >>> print(say(plate.before_tax), say(plate.on_card), say(plate.food_cost))
    £8.00 £9.60 30 %

    Notes
    -----
    Common practice in menu pricing; the rate of the tax is your country's.
    """
    instance(tax_in_price, bool, "tax_in_price", "True or False")
    if (food_cost is None) == (gross_profit is None):
        raise WrongKind('food_cost, gross_profit: give one, as in food_cost=Q_(30, "percent").')
    if food_cost is None:
        left = share(gross_profit, "gross_profit", above=-1e-12, most=100)
        food_share = 1 - left
        if food_share <= 0:
            raise OutOfRange("gross_profit: needs less than 100 %, or the food is free.")
    else:
        food_share = share(food_cost, "food_cost")
    paid = money(cost, "cost")
    if not 0 < paid.magnitude < math.inf:
        raise OutOfRange("cost: needs more than nothing; give the ingredients their prices.")
    before = paid / food_share
    rate = 0.0 if tax is None else amount(tax, "percent", "tax", least=0) / 100
    return CardPrice(paid, before, before * (1 + rate) if tax_in_price else before)


def order_for(recipe):
    """Whole packs for a recipe, an order line for each ingredient with a pack.

    The same ingredient in two groups of a recipe is ordered once.

    Parameters
    ----------
    recipe : Recipe

    Returns
    -------
    list of OrderLine
    list of str
        What is not on it, as no pack is known.

    Examples
    --------
    2 kg of celeriac in nets of 1.5 kg are two nets.

    >>> from kitchenmath.recipes.reading import read_recipe
    >>> lines, rest = order_for(read_recipe("Dish\\n2 kg celeriac; net of 1.5 kg\\n20 g salt"))
    >>> print(lines[0], "|", rest)
    celeriac: 2 x 1.5 kg (need 2 kg, 1 kg left over) | ['salt']
    """
    check_recipe(recipe)
    needs, packs, rest = {}, {}, []
    for each in recipe.ingredients:
        if each.sold_as is None:
            rest += [each.name] if each.name not in rest else []
        elif each.in_packs is not None:
            needs[each.name] = _added(needs.get(each.name), each.in_packs)
            packs[each.name] = each.sold_as
    return order(needs, packs), rest


def _added(one, other):
    """Two amounts, of which either may be missing."""
    if one is None or other is None:
        return other if one is None else one
    if one.dimensionality != other.dimensionality:
        raise WrongKind(f"price: {one.units} and {other.units} in one recipe: use one currency.")
    return one + other
