"""From volume to weight and back, and into the measures that a kitchen owns."""

import difflib
import math

from kitchenmath.data.tables import table
from kitchenmath.errors import UnknownName, WrongKind
from kitchenmath.units.door import amount, instance, one_of
from kitchenmath.units.registry import Q_, Quantity, kind_of
from kitchenmath.units.saying import COUNTRIES, say, spoken

# From the largest measure down; the last one is cut in quarters.
LADDERS = {
    ("volume", "us"): (
        "us_gallon",
        "us_quart",
        "us_pint",
        "us_cup",
        "us_tablespoon",
        "us_teaspoon",
    ),
    ("volume", "uk"): ("uk_gallon", "uk_quart", "uk_pint", "uk_fluid_ounce"),
    ("volume", "au"): ("au_cup", "au_tablespoon", "au_teaspoon"),
    ("volume", "metric"): ("liter", "milliliter"),
    ("volume", "jp"): ("jp_cup", "jp_tablespoon", "jp_teaspoon"),
    ("weight", "us"): ("pound", "ounce"),
    ("weight", "uk"): ("pound", "ounce"),
}
QUARTERS = {0: "", 1: "1/4", 2: "1/2", 3: "3/4"}


def household_names():
    """The ingredients that `weight_of` knows, in alphabetical order."""
    return sorted({row["ingredient"] for row in table("household_weights.csv")})


def density_of(ingredient):
    """Weight of a volume of an ingredient, from the USDA's weight of its US cup.

    Parameters
    ----------
    ingredient : str
        A name of `household_names()`, such as "bread flour".

    Returns
    -------
    Quantity [g/mL]
        Loose or packed as the name says. A scoop of flour or powdered sugar differs by 10 %
        from hand to hand; that is why bakers weigh.

    Raises
    ------
    UnknownName

    Examples
    --------
    A US cup of honey weighs 339 g and holds 236.6 mL: 1.433 g/mL.

    >>> print(say(density_of("honey")))
    1.433 g/mL

    References
    ----------
    USDA National Nutrient Database for Standard Reference, Release 28 (2015), file WEIGHT.
    """
    for row in table("household_weights.csv"):
        if row["ingredient"] == ingredient and row["measure"] in ("us_cup", "us_teaspoon"):
            return Q_(float(row["grams"]), "g") / Q_(1, row["measure"]).to("mL")
    near = difflib.get_close_matches(str(ingredient), household_names(), n=2, cutoff=0.5)
    guess = f"did you mean {' or '.join(near)}?" if near else "weigh a cup of your own."
    raise UnknownName(f"ingredient: no weight is known for {ingredient!r}; {guess}")


def weight_of(volume, ingredient):
    """What a volume of an ingredient weighs.

    Parameters
    ----------
    volume : Quantity [volume]
        With its country: a US cup is 237 mL, an Australian one 250 mL.
    ingredient : str or Quantity [g/mL]
        A name of `household_names()`, or a density of your own.

    Returns
    -------
    Quantity [g]

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    Two US cups of bread flour at 137 g.

    >>> print(say(weight_of(Q_(2, "us_cup"), "bread flour")))
    274 g

    References
    ----------
    As `density_of`.
    """
    volume_ml = amount(volume, "mL", "volume", least=0)
    return Q_(volume_ml * _density_g_per_ml(ingredient), "g")


def volume_of(weight, ingredient):
    """What a weight of an ingredient measures.

    Parameters
    ----------
    weight : Quantity [weight]
    ingredient : str or Quantity [g/mL]

    Returns
    -------
    Quantity [mL]

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    200 g of granulated sugar is a US cup, 236.6 mL.

    >>> print(say(volume_of(Q_(200, "g"), "granulated sugar")))
    236.6 mL

    References
    ----------
    As `density_of`.
    """
    weight_g = amount(weight, "g", "weight", least=0)
    return Q_(weight_g / _density_g_per_ml(ingredient), "mL")


def _density_g_per_ml(ingredient):
    density = ingredient if isinstance(ingredient, Quantity) else density_of(ingredient)
    return amount(density, "g/mL", "ingredient", above=0)


# A country's cups and spoons are not among them: what they hold is a question of its own.
OTHER = {"g": "oz", "kg": "lb", "lb": "kg", "oz": "g", "L": "us_quart", "mL": "us_fluid_ounce",
         "degC": "degF", "degF": "degC", "mm": "inch", "cm": "inch"}  # fmt: skip
OF_OTHER = {Q_(1, unit).units: other for unit, other in OTHER.items()}


def in_other_system(quantity):
    """A quantity in the other system of measures, to stand beside it.

    Parameters
    ----------
    quantity : Quantity

    Returns
    -------
    str
        To three figures; "" where there is no other measure, as for a count.

    Examples
    --------
    2.4 kg at 0.4536 kg a pound is 5.29 lb.

    >>> in_other_system(Q_(2.4, "kg"))
    '5.29 lb'
    """
    instance(quantity, Quantity, "quantity", 'an amount such as Q_(2.4, "kg")')
    other = OF_OTHER.get(quantity.units)
    return say(quantity.to(other), digits=3) if other else ""


def practical(quantity, system="us"):
    """An amount in the measures that a kitchen owns, largest first, the last to a quarter.

    Parameters
    ----------
    quantity : Quantity [weight, volume, temperature or time]
    system : str
        "us", "uk", "au", "metric" or "jp".

    Returns
    -------
    str
        A volume in that system's measures; a weight in kg and g, or in lb and oz; a temperature
        in °C with °F (and the oven mark where there is one); a time in hours and minutes.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName

    Examples
    --------
    6 gal x 3.33 = 19.98 gal, which no jug shows.

    >>> practical(Q_(19.98, "us_gallon"))
    '19 gal 3 qt 1 pt 1 cup 10 tbsp 2 3/4 tsp'
    >>> practical(Q_(1250, "g"), "metric")
    '1.25 kg'

    Notes
    -----
    Rounded to the nearest quarter of the smallest measure, a remainder of .13 and more up to
    1/4, as US Navy and Armed Forces recipe cards do.

    References
    ----------
    US Navy 14163 (navyadministration.tpub.com), increasing and decreasing recipes.
    """
    one_of(system, COUNTRIES, "system")
    kind = kind_of(quantity) if isinstance(quantity, Quantity) else "bare number"
    if kind == "temperature":
        return _practical_temperature(quantity)
    if kind == "time":
        return _practical_time(quantity)
    if kind not in ("weight", "volume"):
        raise WrongKind(
            f"quantity: needs a weight, volume, temperature or time, and a {kind} came."
        )
    amount(quantity, str(quantity.units), "quantity", least=0)
    if kind == "weight" and system not in ("us", "uk"):
        return _practical_metric(quantity.to("g").magnitude, "g", "kg")
    if system == "metric":
        return _practical_metric(quantity.to("mL").magnitude, "mL", "L")
    return _down_the_ladder(quantity, LADDERS[kind, system])


def _practical_metric(small_units, small, large):
    """Scales show a gram, small ones a tenth; from a kilo on a cook says kilos."""
    if small_units >= 1000:
        return say(Q_(round(small_units / 5) * 5 / 1000, large))
    return say(Q_(round(small_units, 1 if small_units < 10 else 0), small))


def _down_the_ladder(quantity, ladder):
    smallest = Q_(1, ladder[-1])
    quarters = math.floor((quantity / smallest).to("").magnitude * 4 + 0.5)
    parts = []
    for unit in ladder:
        step = round(4 * (Q_(1, unit) / smallest).to("").magnitude)
        number, quarters = divmod(quarters, step)
        if unit == ladder[-1]:
            words = " ".join(filter(None, (str(number) if number else "", QUARTERS[quarters])))
            if words or not parts:
                parts.append(f"{words or 0} {_short(unit)}")
        elif number:
            parts.append(f"{number} {_short(unit)}")
    return " ".join(parts)


def _short(unit):
    return spoken(unit.split("_", 1)[1]) if "_" in unit else spoken(unit)


def _practical_temperature(temperature):
    celsius, fahrenheit = temperature.to("degC").magnitude, temperature.to("degF").magnitude
    mark = next(
        (row for row in table("oven_marks.csv") if abs(float(row["degF"]) - fahrenheit) <= 12), None
    )
    oven = f", gas mark {mark['mark']}" if mark else ""
    return f"{celsius:.0f} °C ({fahrenheit:.0f} °F{oven})"


def _practical_time(time):
    minutes = amount(time, "min", "quantity", least=0)
    if minutes < 1:
        return f"{minutes * 60:.0f} s"
    hours, minutes = divmod(round(minutes), 60)
    return " ".join(
        filter(
            None, (f"{hours} h" if hours else "", f"{minutes} min" if minutes or not hours else "")
        )
    )
