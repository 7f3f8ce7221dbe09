"""A dish as data: what goes in, what it makes, what it costs."""

import math
from dataclasses import dataclass, field, replace

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.ratios.formula import Formula
from kitchenmath.units.door import alike, amount, instance, money, positive, share
from kitchenmath.units.measures import household_names, volume_of, weight_of
from kitchenmath.units.registry import Q_, Quantity, kind_of
from kitchenmath.units.saying import say
from kitchenmath.yields.ordering import Pack

ALL_OF_IT = Q_(100, "percent")


@dataclass(frozen=True)
class Ingredient:
    """One line of a recipe.

    Parameters
    ----------
    name : str
    amount : Quantity [weight, volume or count] or None
        Ready for the pot: peeled, boned, drained. None for what is added to taste.
    yield_ : Quantity [percent]
        What is left of the weight bought; 100 % by default.
    price : Quantity [money] or None
        Of `price_for`, as purchased.
    price_for : Quantity or None
        What the price is for: a kilo, a litre, a piece, or a whole pack.
    pack : Quantity or None
        What one pack holds, as purchased. A pack is never cut.
    allergens : tuple of str or None
        As the cook names them. None: nobody has said anything, which is not "none".
    group : str
        Such as "For the foam".
    """

    name: str
    amount: Quantity | None
    yield_: Quantity = ALL_OF_IT
    price: Quantity | None = None
    price_for: Quantity | None = None
    pack: Quantity | None = None
    allergens: tuple | None = None
    group: str = ""

    def __post_init__(self):
        share(self.yield_, f"{self.name}, yield")
        for part in ("amount", "pack", "price_for"):
            if getattr(self, part) is not None:
                positive(getattr(self, part), f"{self.name}, {part.replace('_', ' ')}")
        if self.price is None:
            return
        amount(money(self.price, f"{self.name}, price"), _currency(self.price),
               f"{self.name}, price", least=0)  # fmt: skip
        if self.price_for is None:
            raise WrongKind(f'{self.name}, price: say what for, as in "{say(self.price)} per kg".')
        if self.amount is not None:
            self._counted_in(self.price_for, "price")
        if self.pack is not None:
            alike(self.pack, f"{self.name}, pack", self.price_for, f"{self.name}, price for")

    @property
    def to_buy(self):
        """The weight, volume or count as purchased: amount / yield. None for what is to taste."""
        return None if self.amount is None else self.amount / share(self.yield_, "yield")

    @property
    def cost(self):
        """What goes into the dish costs, as purchased and by measure; None where unknown."""
        if self.price is None or self.amount is None:
            return None
        return self.price * self._counted_in(self.price_for, "price")

    @property
    def in_packs(self):
        """What must be bought, in the kind in which its packs are sold; None without packs."""
        if self.pack is None or self.amount is None:
            return None
        return self._counted_in(self.pack, "pack") * self.pack

    def _counted_in(self, measure, part):
        """How many times a measure must be bought; cups are weighed where the weight is known."""
        bought, kinds = self.to_buy, (kind_of(self.amount), kind_of(measure))
        if kinds == ("volume", "weight") and self.name in household_names():
            bought = weight_of(bought, self.name)
        elif kinds == ("weight", "volume") and self.name in household_names():
            bought = volume_of(bought, self.name)
        if kind_of(bought) != kinds[1]:
            raise WrongKind(
                f"{self.name}: {say(self.amount)} is a {kinds[0]}, and its {part} is for a "
                f"{kinds[1]} ({say(measure)}): give both by weight, or both by volume."
            )
        return (bought / measure).to("").magnitude

    @property
    def sold_as(self):
        """The pack with its price, for an order list; None where no pack is known."""
        if self.pack is None:
            return None
        if self.price is None:
            return Pack(self.pack)
        return Pack(self.pack, self.price * (self.pack / self.price_for).to("").magnitude)

    def times(self, factor):
        """The same line for so many times the recipe."""
        return self if self.amount is None else replace(self, amount=self.amount * factor)


@dataclass(frozen=True)
class Recipe:
    """A dish.

    Parameters
    ----------
    title : str
    portions : float
        How many it makes.
    portion : Quantity or None
        What one weighs or measures; None where nobody said.
    ingredients : tuple of Ingredient
    steps : tuple of str
    """

    title: str
    portions: float
    portion: Quantity | None = None
    ingredients: tuple = ()
    steps: tuple = field(default=())

    def __post_init__(self):
        if not 0 < self.portions < math.inf:
            raise OutOfRange(f"portions: needs a number above 0, and {self.portions} came.")
        if not self.ingredients:
            raise OutOfRange(
                'ingredients: there is none; type one a line, such as "2 kg celeriac".'
            )

    @property
    def total(self):
        """What it makes in all, by weight or volume; None where the portion is not known."""
        return None if self.portion is None else self.portions * self.portion


def bakers_percents(ingredients):
    """Each weighed ingredient in percent of the flour; empty where there is no flour.

    What has "flour" in its name counts as flour. What is measured or counted is left out, as
    only weights can be a percent of a weight.

    Parameters
    ----------
    ingredients : sequence of Ingredient
        Of one dough: a group of a recipe, such as "For the rolls".

    Returns
    -------
    dict of str to Quantity [percent]

    Examples
    --------
    600 g of water on 1 kg of flour is 60 %.

    >>> roll = [Ingredient("bread flour", Q_(1, "kg")), Ingredient("water", Q_(600, "g"))]
    >>> print(say(bakers_percents(roll)["water"]))
    60 %
    """
    instance(ingredients, list | tuple, "ingredients", "a list of Ingredient")
    weights = {}
    for each in ingredients:
        instance(each, Ingredient, "ingredients", "a list of Ingredient")
        if each.amount is not None and kind_of(each.amount) == "weight":
            weights[each.name] = weights.get(each.name, Q_(0, "g")) + each.amount
    flours = [name for name in weights if "flour" in name.casefold().split()]
    return dict(Formula.from_weights(weights, flour=flours).percents_of_flour) if flours else {}


def _currency(price):
    """The base unit of a price's own currency."""
    return str(price.to_base_units().units)


def check_recipe(recipe):
    """The recipe as it came.

    Raises
    ------
    WrongKind
        For what is none; text is read by `read_recipe`.
    """
    return instance(recipe, Recipe, "recipe", "a Recipe, as read_recipe makes it of text")
