"""Drills of lesson 4 on tax: a card's price with it or without, and the gross profit in it."""

from dataclasses import dataclass

from kitchenmath.conventions.in_words import words_of
from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.choices import Choices, Drawn, steps
from kitchenmath.units.registry import Q_


@dataclass(frozen=True)
class CardTax(Drawn):
    """What a card's price has to do with tax.

    Attributes
    ----------
    side : str
        "in" where the price on the card holds it, "out" where the till puts it on top.
    percent : float
    name : str
        What it is called: VAT, GST, sales tax.
    """

    side: str
    percent: float
    name: str

    def in_college(self, college):
        """That of a class, where its country has one; else it stays as it was drawn."""
        if college.tax == "none":
            return self
        return CardTax(college.tax, college.tax_percent, words_of(college).tax_name())

    @property
    def times(self):
        """How many times the price without tax the guest pays."""
        return 1 + self.percent / 100

    @property
    def on_card(self):
        """How many times the price without tax stands on the card."""
        return self.times if self.side == "in" else 1.0

    def __str__(self):
        if self.side == "in":
            return f"The card shows prices with {self.percent:g} % of {self.name} in them"
        return f"The card shows prices without {self.name}, and the till adds {self.percent:g} %"


# With a class that has none, both kinds are drawn: its students will work in other countries.
TAXES = Choices(
    (
        CardTax("in", 20, "VAT"),
        CardTax("out", 8, "sales tax"),
        CardTax("in", 15, "GST"),
        CardTax("out", 6, "sales tax"),
    ),
    "tax",
)


def _part(percent):
    return percent.to("").magnitude


def _percent(part):
    return Q_(100 * part.to("").magnitude, "percent")


ON_THE_CARD = Drill(
    Question(
        "price on the card",
        "money",
        1,
        Within(Q_(0.05, "dollar"), "{{ coins: 5 }} more or less is rounding"),
        lambda cost, food_cost, tax: cost / food_cost * tax.on_card,
        (
            Slip(
                "tax left out",
                lambda cost, food_cost, tax: cost / food_cost if tax.side == "in" else None,
                "That is the price without tax. Here the card shows it with the tax in it: put it "
                "on last.",
            ),
            Slip(
                "the till's tax on the card",
                lambda cost, food_cost, tax: (
                    cost / food_cost * tax.times if tax.side == "out" else None
                ),
                "You put the tax on. Here the till does that: the card shows the price without.",
            ),
            Slip(
                "tax taken off",
                lambda cost, food_cost, tax: cost / food_cost / tax.times,
                "You took tax off a price that had none in it yet. Cost over food cost is the "
                "price without tax.",
            ),
            Slip(
                "mark-up",
                lambda cost, food_cost, tax: cost * (1 + _part(food_cost)) * tax.on_card,
                "You added the percent to the cost. Food cost is a share of the price: divide.",
            ),
            Slip(
                "margin",
                lambda cost, food_cost, tax: cost / (1 - _part(food_cost)) * tax.on_card,
                "You divided by the gross profit's share. Divide by the food's.",
            ),
        ),
        working=(
            "the price without tax: {cost} ÷ {food_cost} = {before}",
            "on the card: {before} × {times} = {answer}",
        ),
        on_the_way={
            "before": lambda cost, food_cost: cost / _part(food_cost),
            "times": lambda tax: Q_(tax.on_card, "count"),
        },
    ),
    "The food of a plate costs {cost}. It is to be {food_cost} of the price without tax. {tax}. "
    "What price stands on the card?",
    "First the price without tax. Then: is the tax in the card's price, or does the till add it?",
    {
        "cost": steps(3.2, 8, 0.2, "dollar", "cost"),
        "food_cost": steps(25, 36, 1, "percent", "food cost"),
        "tax": TAXES,
    },
)


def _before(price, tax):
    """The price without tax."""
    return price / tax.on_card


def _profit(price, cost, tax):
    """Gross profit, of the price without tax."""
    return _percent((_before(price, tax) - cost) / _before(price, tax))


def _unlike(price, cost, tax, share):
    """A slip's share, or None where it is hardly another one."""
    far = abs((share - _profit(price, cost, tax)).to("percent").magnitude) > 1
    return share if far else None


def _over(whole, cost):
    return _percent((whole - cost) / whole)


GROSS_PROFIT = Drill(
    Question(
        "gross profit of a plate",
        "percent",
        1,
        Within(Q_(0.5, "percent"), "prices are whole coins"),
        _profit,
        (
            Slip(
                "with the tax in it",
                lambda price, cost, tax: _over(price, cost) if tax.side == "in" else None,
                "You worked with the card's price. The tax in it is not yours: take it off first.",
            ),
            Slip(
                "took off a tax that is not in it",
                lambda price, cost, tax: (
                    _unlike(price, cost, tax, _over(price / tax.times, cost))
                    if tax.side == "out"
                    else None
                ),
                "You took tax off the card's price. Here the till adds it: there is none in it.",
            ),
            Slip(
                "the percent taken off",
                lambda price, cost, tax: (
                    _unlike(price, cost, tax, _over(price * (2 - tax.times), cost))
                    if tax.side == "in"
                    else None
                ),
                "You took the percent off the card's price. It was put on the price without tax: "
                "divide by one and the tax.",
            ),
            Slip(
                "food cost",
                lambda price, cost, tax: _percent(cost / _before(price, tax)),
                "That is the food cost. Gross profit is what is left beside it: the two are 100 %.",
            ),
            Slip(
                "over the cost",
                lambda price, cost, tax: _percent((_before(price, tax) - cost) / cost),
                "You divided by the cost, as a shop's mark-up. Gross profit is a share of the "
                "price without tax.",
            ),
        ),
        working=(
            "the price without tax: {price} ÷ {times} = {before}",
            "the gross profit: {before} − {cost} = {profit}",
            "{profit} ÷ {before} = {answer}",
        ),
        on_the_way={
            "times": lambda tax: Q_(tax.on_card, "count"),
            "before": _before,
            "profit": lambda price, cost, tax: _before(price, tax) - cost,
        },
    ),
    "A plate stands on the card at {price}. {tax}. Its food costs {cost}. What percentage of the "
    "price without tax is gross profit?",
    "What does the house keep of the card's price? Then take the food off.",
    {
        "price": steps(16, 28, 0.5, "dollar", "on the card"),
        "cost": steps(4, 6, 0.2, "dollar", "food"),
        "tax": TAXES,
    },
)

DRILLS = {drill.question.id: drill for drill in (ON_THE_CARD, GROSS_PROFIT)}
