"""A baker's formula: every ingredient in percent of the flour."""

import math
from dataclasses import dataclass
from types import MappingProxyType

from kitchenmath.errors import OutOfRange, UnknownName, WrongKind
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import figures


@dataclass(frozen=True)
class Formula:
    """A baker's formula: the flour is 100 %, and every ingredient is given in percent of it.

    Percent of flour is not percent of the dough: 60 % water in a plain dough is 37 % of what
    lies in the bowl. Both can be had, each by its full name.

    Parameters
    ----------
    percents_of_flour : dict of str to Quantity [percent]
    flours : sequence of str
        The ingredients that count as flour; together they are 100 %.

    Raises
    ------
    WrongKind
    OutOfRange
        When the flours do not add to 100 %, or a percent is below 0.
    UnknownName
        When a flour is not among the ingredients.

    Examples
    --------
    1000 g flour, 600 g water, 2 g yeast, 10 g salt is 100 / 60 / 0.2 / 1 %.

    >>> dough = Formula.from_weights(flour=Q_(1000, "g"), water=Q_(600, "g"), yeast=Q_(2, "g"),
    ...                              salt=Q_(10, "g"))
    >>> print(dough)
                    % of flour  % of total
    flour                  100       62.03
    water                   60       37.22
    yeast                  0.2      0.1241
    salt                     1      0.6203
    total                161.2         100
    >>> print(say(dough.weigh(total=Q_(3.224, "kg"))["flour"]))
    2 kg

    References
    ----------
    A sourdough teaching page (host withheld): the figures of the example.
    """

    percents_of_flour: dict
    flours: tuple

    def __post_init__(self):
        numbers = {
            name: amount(percent, "percent", str(name), least=0)
            for name, percent in self.percents_of_flour.items()
        }
        flours = _named_flours(self.flours, numbers)
        flour_percent = math.fsum(numbers[name] for name in flours)
        if not math.isclose(flour_percent, 100, rel_tol=1e-9):
            raise OutOfRange(
                f"flour: {' and '.join(flours)} must be 100 % together, and "
                f"{figures(flour_percent)} % came; for weights use Formula.from_weights."
            )
        percents = {name: Q_(float(number), "percent") for name, number in numbers.items()}
        object.__setattr__(self, "percents_of_flour", MappingProxyType(percents))
        object.__setattr__(self, "flours", flours)

    @classmethod
    def from_percents(cls, ingredients=None, /, *, flour=None, **others):
        """A formula from its percents of flour.

        Parameters
        ----------
        ingredients : dict of str to Quantity [percent], optional
            For names with spaces.
        flour : Quantity [percent], str or list of str, optional
            The flour's percent (100 %), or the names of the ingredients that count as flour.
        others : Quantity [percent]
            One argument an ingredient, as in `water=Q_(65, "percent")`.

        Returns
        -------
        Formula

        Raises
        ------
        WrongKind
        OutOfRange
        UnknownName

        Examples
        --------
        Two flours share the 100 %; the water is then 67.5 % of both together.

        >>> rye_bread = Formula.from_percents({"wheat flour": Q_(70, "percent"),
        ...     "rye flour": Q_(30, "percent"), "water": Q_(67.5, "percent")},
        ...     flour=["wheat flour", "rye flour"])
        >>> print(say(rye_bread.hydration))
        67.5 %
        """
        return cls(*_gathered(ingredients, flour, others))

    @classmethod
    def from_weights(cls, ingredients=None, /, *, flour=None, **others):
        """A formula from the weights of a recipe.

        Parameters
        ----------
        ingredients : dict of str to Quantity [weight], optional
        flour : Quantity [weight], str or list of str, optional
            The flour's weight, or the names of the ingredients that count as flour.
        others : Quantity [weight]
            One argument an ingredient.

        Returns
        -------
        Formula

        Raises
        ------
        WrongKind
            For a volume: weigh it, or ask `weight_of` first.
        OutOfRange
        UnknownName

        Examples
        --------
        23 lb of water on 40 lb of flour is 57.5 %.

        >>> dough = Formula.from_weights(flour=Q_(40, "lb"), water=Q_(23, "lb"))
        >>> print(say(dough.hydration))
        57.5 %
        """
        weights, flours = _gathered(ingredients, flour, others)
        grams = {name: amount(each, "g", str(name), least=0) for name, each in weights.items()}
        flours = _named_flours(flours, grams)
        flour_g = math.fsum(grams[name] for name in flours)
        if flour_g <= 0:
            raise OutOfRange("flour: needs more than 0 g, or nothing can be a percent of it.")
        percents = {name: Q_(100 * each / flour_g, "percent") for name, each in grams.items()}
        return cls(percents, flours)

    @property
    def total_percent(self):
        """The sum of all percents of flour [percent]: 160 % and more, since flour alone is 100."""
        percents = (percent.magnitude for percent in self.percents_of_flour.values())
        return Q_(math.fsum(percents), "percent")

    @property
    def percents_of_total(self):
        """Each ingredient in percent of the whole dough; these add to 100 %."""
        total = self.total_percent.magnitude
        return {
            name: Q_(100 * percent.magnitude / total, "percent")
            for name, percent in self.percents_of_flour.items()
        }

    @property
    def hydration(self):
        """The ingredient "water" in percent of flour.

        Raises
        ------
        UnknownName
            Where there is none; a dough made with milk asks `hydration_with`.
        """
        return self.hydration_with({"water": Q_(100, "percent")})

    def hydration_with(self, water_in):
        """All water in percent of flour, that in milk or eggs counted as far as it is water.

        Parameters
        ----------
        water_in : dict of str to Quantity [percent]
            For each ingredient that brings water, how much of it is water.

        Returns
        -------
        Quantity [percent]

        Raises
        ------
        WrongKind
        OutOfRange
        UnknownName

        Examples
        --------
        60 % milk, of which 88 % is water: 52.8 %.

        >>> rolls = Formula.from_percents(flour=Q_(100, "percent"), milk=Q_(60, "percent"))
        >>> print(say(rolls.hydration_with({"milk": Q_(88, "percent")})))
        52.8 %
        """
        parts = []
        for name, water in water_in.items():
            if name not in self.percents_of_flour:
                raise UnknownName(
                    f"hydration: there is no {name!r} in {', '.join(self.percents_of_flour)}; "
                    'say what brings water, as in hydration_with({"milk": Q_(88, "percent")}).'
                )
            part = amount(water, "percent", name, least=0, most=100) / 100
            parts.append(part * self.percents_of_flour[name].magnitude)
        return Q_(math.fsum(parts), "percent")

    def weigh(self, *, total=None, flour=None):
        """What to weigh, from the whole dough or from the flour at hand.

        Parameters
        ----------
        total : Quantity [weight], optional
            Of the dough. What a bowl, a bench and an oven take is asked of `as_purchased`.
        flour : Quantity [weight], optional
            Of all flours together. One of the two is given.

        Returns
        -------
        dict of str to Quantity
            In the unit that came.

        Raises
        ------
        WrongKind
            For both, for none, or for something that is no weight.
        OutOfRange

        Examples
        --------
        A cake formula of 377.5 % in all, 96 oz of batter: 96 / 3.775 = 25.43 oz flour.

        >>> cake = Formula.from_percents({"rest": Q_(277.5, "percent")}, flour=Q_(100, "percent"))
        >>> print(say(cake.weigh(total=Q_(96, "oz"))["flour"]))
        25.43 oz

        References
        ----------
        Gisslen, *Professional Cooking* (2014).
        """
        if (total is None) == (flour is None):
            raise WrongKind('total, flour: give one of them, as in weigh(total=Q_(3, "kg")).')
        given, name = (flour, "flour") if total is None else (total, "total")
        amount(given, "g", name, above=0)
        per_percent_u = given.magnitude / (100 if total is None else self.total_percent.magnitude)
        return {
            name: Q_(percent.magnitude * per_percent_u, str(given.units))
            for name, percent in self.percents_of_flour.items()
        }

    def __str__(self):
        of_total = self.percents_of_total
        rows = [(name, p, of_total[name]) for name, p in self.percents_of_flour.items()]
        rows.append(("total", self.total_percent, Q_(100, "percent")))
        lines = [f"{'':<14}{'% of flour':>12}{'% of total':>12}"]
        for name, percent, whole in rows:
            lines.append(
                f"{name:<14}{figures(percent.magnitude):>12}{figures(whole.magnitude):>12}"
            )
        return "\n".join(lines)


def _gathered(ingredients, flour, others):
    """All ingredients in one dict, and the names of the flours (None where they are not said)."""
    named = {} if flour is None or isinstance(flour, str | list | tuple) else {"flour": flour}
    gathered = {**named, **(ingredients or {}), **others}
    if len(gathered) < len(named) + len(ingredients or {}) + len(others):
        raise WrongKind("ingredients: one name came twice; add the two, or name them apart.")
    return gathered, ("flour",) if named else flour


def _named_flours(flours, ingredients):
    """The names that count as flour; an ingredient called "flour" is one without being told."""
    if flours is None and "flour" in ingredients:
        return ("flour",)
    flours = (flours,) if isinstance(flours, str) else tuple(flours or ())
    if not flours:
        raise UnknownName(
            f"flour: say which of {', '.join(map(str, ingredients)) or 'no ingredients'} count as "
            'flour, as in flour=["wheat flour", "rye flour"].'
        )
    for name in flours:
        if name not in ingredients:
            raise UnknownName(f"flour: {name!r} is not one of {', '.join(map(str, ingredients))}.")
    return flours
