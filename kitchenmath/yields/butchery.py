"""The butcher's test and the cooking test: one purchase taken apart, weighed and costed."""

from dataclasses import dataclass, field

from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import alike, amount, money, positive
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say


@dataclass(frozen=True)
class TrimTest:
    """A butcher's test: one purchase taken apart, with the credit for what can be used elsewhere.

    Parameters
    ----------
    purchased : Quantity [weight]
    price : Quantity [money per weight]
        As purchased.
    usable : Quantity [weight]
        What is left for the dish.
    by_products : dict of str to (weight, money per weight)
        Parts with a use of their own, valued at what they would cost to buy.

    Raises
    ------
    WrongKind
        When a weight or a price is of another kind.
    OutOfRange
        When the parts weigh more than the purchase, or are worth more.

    Examples
    --------
    12 lb of lamb loin at $6.65, 1 lb kidney at $6.10 and 1.5 lb flank at $4.60 off, 6 lb usable:
    79.80 - 6.10 - 6.90 = $66.80 net, / 6 lb = $11.13 a pound, / 6.65 = a cost factor of 1.67.

    >>> lamb = TrimTest(
    ...     purchased=Q_(12, "lb"), price=Q_(6.65, "dollar/lb"), usable=Q_(6, "lb"),
    ...     by_products={"kidney": (Q_(1, "lb"), Q_(6.10, "dollar/lb")),
    ...                  "flank": (Q_(1.5, "lb"), Q_(4.60, "dollar/lb"))})
    >>> print(say(lamb.net_cost), say(lamb.usable_price), round(lamb.cost_factor, 2))
    $66.80 $11.13 per lb 1.67

    References
    ----------
    A costing textbook's lamb loin test (the figures of the example).
    """

    purchased: Quantity
    price: Quantity
    usable: Quantity
    by_products: dict = field(default_factory=dict)

    def __post_init__(self):
        purchased_g = amount(self.purchased, "g", "purchased", above=0)
        positive(self.price, "price")
        parts_g = amount(self.usable, "g", "usable", above=0)
        for part, (weight, price) in self.by_products.items():
            parts_g += amount(weight, "g", f"by_products, weight of {part}", least=0)
            money(price * weight, f"by_products, price of {part}")
        # Scales round: a part in a thousand too much is the scale, more is a slip of the pen.
        if parts_g > 1.001 * purchased_g:
            raise OutOfRange(
                f"usable: the parts weigh {say(Q_(parts_g, 'g'))}, more than the "
                f"{say(self.purchased)} bought."
            )
        if self.net_cost.magnitude <= 0:
            raise OutOfRange("by_products: they are valued at more than the whole purchase cost.")

    @property
    def cost(self):
        """What the purchase cost [money]."""
        return money(self.price * self.purchased, "price")

    @property
    def credit(self):
        """What the by-products are worth [money]."""
        worths = [money(price * weight, "price") for weight, price in self.by_products.values()]
        return sum(worths, start=0 * self.cost)

    @property
    def net_cost(self):
        """Cost less credit [money]: what the usable part must carry."""
        return self.cost - self.credit

    @property
    def yield_(self):
        """Usable over purchased [percent]."""
        return _share_left(self.purchased, self.usable)

    @property
    def usable_price(self):
        """Net cost over usable weight [money per weight], per the unit of `price`."""
        return (self.net_cost / self.usable).to(self.price.units)

    @property
    def cost_factor(self):
        """Usable price over price as purchased; a new price x this is the new usable price."""
        return float((self.usable_price / self.price).to("").magnitude)

    @property
    def lost(self):
        """What went into the bin or onto the board [weight]."""
        kept = sum((weight for weight, _ in self.by_products.values()), start=self.usable)
        return (self.purchased - kept).to(self.purchased.units)


@dataclass(frozen=True)
class CookingTest:
    """What a trimmed piece gives once it is cooked and carved, and what that costs.

    Parameters
    ----------
    cost : Quantity [money]
        What goes into the oven cost. Take `TrimTest.net_cost`, so that the by-products' credit
        is not lost between the two cards.
    trimmed : Quantity [weight]
        Into the oven.
    saleable : Quantity [weight]
        Cooked, carved, on the plate.
    price : Quantity [money per weight]
        As purchased, for the cost factor.

    Raises
    ------
    WrongKind
    OutOfRange
        When more is saleable than went into the oven.

    Examples
    --------
    The lamb above with its credit: 66.80 / 5 lb = $13.36 a pound. Without it: $15.96.

    >>> CookingTest(cost=Q_(66.80, "dollar"), trimmed=Q_(6, "lb"), saleable=Q_(5, "lb"),
    ...             price=Q_(6.65, "dollar/lb")).saleable_price.round(2)
    <Quantity(13.36, 'dollar / pound')>
    """

    cost: Quantity
    trimmed: Quantity
    saleable: Quantity
    price: Quantity

    def __post_init__(self):
        money(self.cost, "cost")
        trimmed, saleable = alike(self.trimmed, "trimmed", self.saleable, "saleable")
        if saleable > trimmed:
            raise OutOfRange(
                f"saleable: {say(self.saleable)} is more than the {say(self.trimmed)} that "
                "went into the oven."
            )
        positive(self.price, "price")

    @property
    def yield_(self):
        """Saleable over trimmed [percent]."""
        return _share_left(self.trimmed, self.saleable)

    @property
    def saleable_price(self):
        """Cost over saleable weight [money per weight]."""
        return (self.cost / self.saleable).to(self.price.units)

    @property
    def cost_factor(self):
        """Saleable price over price as purchased."""
        return float((self.saleable_price / self.price).to("").magnitude)


def _share_left(before, after):
    """What is left of a weight, in percent."""
    return Q_(100 * (after / before).to("").magnitude, "percent")
