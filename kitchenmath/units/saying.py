"""Quantities written as a cook would write them."""

import math
import re

import numpy as np

from kitchenmath.units.registry import Quantity, unit_name

# How a unit is written for a cook; countries and label measures are put in front of the measure.
SPOKEN = {
    "gram": "g", "kilogram": "kg", "milligram": "mg", "pound": "lb", "ounce": "oz",
    "milliliter": "mL", "liter": "L", "millimeter": "mm", "centimeter": "cm", "meter": "m",
    "inch": "in", "foot": "ft", "second": "s", "minute": "min", "hour": "h", "day": "days",
    "degree_Celsius": "°C", "degree_Fahrenheit": "°F", "kelvin": "K",
    "delta_degree_Celsius": "°C", "delta_degree_Fahrenheit": "°F",
    "percent": "%", "count": "", "dimensionless": "", "kilojoule": "kJ", "joule": "J", "watt": "W",
    "pascal": "Pa", "kilopascal": "kPa", "gram / milliliter": "g/mL", "kilogram / liter": "kg/L",
    "kilogram / meter ** 3": "kg/m³", "watt / kelvin / meter ** 2": "W/m²K",
    "watt / kelvin / meter": "W/mK", "kilojoule / kelvin / kilogram": "kJ/kgK",
    "meter ** 2 / second": "m²/s",
    "fluid_ounce": "fl oz", "tablespoon": "tbsp", "teaspoon": "tsp", "quart": "qt", "pint": "pt",
    "gallon": "gal",
}  # fmt: skip
# Whose cups and spoons: the first part of a measure's name, such as "us_cup". "label" are the
# round ones of US nutrition labels.
COUNTRIES = ("us", "uk", "au", "metric", "jp")
SYSTEMS = (*COUNTRIES, "label")
POWERED = re.compile(r"(\w+) \*\* ([23])")  # as pint writes it: "centimeter ** 2"
MONEY = {"dollar": "$", "sterling": "£", "euro": "€"}


def spoken(unit):
    """A unit's name as a cook writes it: "us_tablespoon" is "US tbsp", "degree_Celsius" is "°C"."""
    country, _, measure = unit.partition("_")
    if unit not in SPOKEN and country in SYSTEMS:
        country = country.upper() if len(country) == 2 else country
        return f"{country} {SPOKEN.get(measure, measure.replace('_', ' '))}"
    if unit in SPOKEN:
        return SPOKEN[unit]
    top, _, per = unit.partition(" / ")
    if per:
        return f"{spoken(top)} per {spoken(per)}"
    return POWERED.sub(_with_power, unit).replace("_", " ")


def _with_power(found):
    return SPOKEN.get(found[1], found[1]) + {"2": "²", "3": "³"}[found[2]]


def figures(number, digits=4):
    """At most `digits` figures that count, no exponent, no trailing noughts: 4.2, 1250, 0.035."""
    if np.ndim(number):
        return "[" + ", ".join(figures(each, digits) for each in np.ravel(number)[:4]) + ", …]"
    number = float(number)
    if number == 0 or not math.isfinite(number):
        return f"{number:g}"
    places = max(0, digits - 1 - math.floor(math.log10(abs(number))))
    text = f"{number:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def say(quantity, digits=4):
    """A quantity as a cook would write it: 4.2 kg, 63 °C, 35 %, $3.48, $6.65 per kg.

    Parameters
    ----------
    quantity : Quantity
    digits : int
        Figures shown at most. Money always shows cents.

    Returns
    -------
    str
    """
    top, _, per = unit_name(quantity.units).partition(" / ")
    if top in MONEY:
        sign = "-" if quantity.magnitude < 0 else ""
        text = f"{sign}{MONEY[top]}{abs(float(quantity.magnitude)):.2f}"
        return f"{text} per {spoken(per)}" if per else text
    whole = unit_name(quantity.units)
    unit = spoken(whole) if not per or whole in SPOKEN else f"{quantity.units:~P}"
    return f"{figures(quantity.magnitude, digits)} {unit}".strip()


def as_came(value):
    """An answer as it can be shown in a sentence: at most 60 characters, and never an error.

    Parameters
    ----------
    value : object
        Whatever a student's cell made.

    Returns
    -------
    str
    """
    try:
        text = say(value) if isinstance(value, Quantity) else repr(value)
    except Exception:  # a number of five thousand figures has no repr, and others fail on purpose
        text = f"a “{type(value).__name__}”"
    return text if len(text) <= 60 else f"{text[:57]}…"


def plural(count, one, many=None):
    """A count with its word: 1 day, 2 days.

    Parameters
    ----------
    count : int
    one : str
        The word for one.
    many : str, optional
        For any other count; `one` with an s by default.

    Returns
    -------
    str

    Examples
    --------
    >>> plural(1, "day"), plural(3, "answer"), plural(0, "student has", "students have")
    ('1 day', '3 answers', '0 students have')
    """
    return f"{count} {one if count == 1 else many or one + 's'}"
