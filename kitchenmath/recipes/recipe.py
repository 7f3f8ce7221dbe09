"""A dish as data: what goes in, what it makes, what it costs; and the dish for more or fewer."""

import math
from dataclasses import dataclass, field, replace

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.ratios.formula import Formula
from kitchenmath.ratios.scaling import conversion_factor, scale
from kitchenmath.units.door import alike, amount, instance, money, plain_number, positive, share
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


def for_portions(recipe, portions, portion=None):
    """The recipe for other covers, and for another size of portion if one is given.

    More portions and larger portions both count.

    Parameters
    ----------
    recipe : Recipe
    portions : float, above 0
    portion : Quantity, optional
        Of the recipe's own portion by default.

    Returns
    -------
    Recipe

    Raises
    ------
    WrongKind
        When a size is given and the recipe does not say its own.
    OutOfRange

    Examples
    --------
    4 kg for 50 covers is 1.92 kg for 24.

    >>> stew = Recipe("Stew", 50, ingredients=(Ingredient("beef", Q_(4, "kg")),))
    >>> print(say(for_portions(stew, 24).ingredients[0].amount))
    1.92 kg
    """
    check_recipe(recipe)
    portions = plain_number(portions, "portions", above=0)
    if portion is None:
        return _times(recipe, portions / recipe.portions)
    if recipe.portion is None:
        raise WrongKind(
            f"portion: “{recipe.title}” does not say what a portion is. Write it in the second "
            'line, as in "makes 10 portions of 120 g".'
        )
    positive(portion, "portion")
    factor = conversion_factor((recipe.portions, recipe.portion), (portions, portion))
    return replace(_times(recipe, factor), portions=portions, portion=portion)


def for_total(recipe, total):
    """The recipe for a total weight or volume: the portion stays, their number follows.

    Parameters
    ----------
    recipe : Recipe
    total : Quantity [of the kind of the recipe's portion]

    Returns
    -------
    Recipe

    Raises
    ------
    WrongKind
        When the recipe does not say what a portion is, or that is of another kind.
    OutOfRange

    Examples
    --------
    10 portions of 120 g are 1.2 kg; 3 kg is 2.5 times that, 25 portions.

    >>> soup = Recipe("Soup", 10, Q_(120, "g"), (Ingredient("celeriac", Q_(800, "g")),))
    >>> larger = for_total(soup, Q_(3, "kg"))
    >>> print(larger.portions, "portions,", say(larger.ingredients[0].amount))
    25.0 portions, 2000 g
    """
    check_recipe(recipe)
    positive(total, "total")
    if recipe.total is None:
        raise WrongKind(
            f"total: “{recipe.title}” does not say what a portion is. Write it in the second "
            'line, as in "makes 10 portions of 120 g".'
        )
    made_u, total_u = alike(recipe.total, "recipe", total, "total")
    return _times(recipe, total_u / made_u)


def look_again(recipe, factor):
    """What a factor alone does not settle, a sentence for each such ingredient.

    Parameters
    ----------
    recipe : Recipe
        As scaled.
    factor : float
        By which it was scaled.

    Returns
    -------
    dict of str to str
    """
    if math.isclose(factor, 1):
        return {}
    amounts = {each.name: each.amount for each in recipe.ingredients if each.amount is not None}
    return scale(amounts, 1).look_again


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


def _times(recipe, factor):
    ingredients = tuple(each.times(factor) for each in recipe.ingredients)
    return replace(recipe, portions=recipe.portions * factor, ingredients=ingredients)
