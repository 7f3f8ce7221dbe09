"""A class's conventions in the words of its sets and guides: prices, cuts, limits, ovens, tax."""

import re
from dataclasses import dataclass

from kitchenmath.conventions.class_limits import (
    FDA,
    class_limit,
    cooling_is_own,
    own_limit,
    sources_of_record,
)
from kitchenmath.conventions.college import Conventions
from kitchenmath.conventions.system_order import first_system_first
from kitchenmath.errors import KitchenError
from kitchenmath.safety.cooling import cooling_rules
from kitchenmath.safety.quoted import limits
from kitchenmath.units.door import one_of
from kitchenmath.units.ovens import oven_mark
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import MONEY, say

__all__ = ["CollegeWords", "filled", "words_of"]

PLACE = re.compile(r"\{\{ *(\w+)(?:: *([^{}]*?))? *\}\}")
COINS = {"dollar": "cents", "sterling": "pence", "euro": "cents"}
HALVES = {"dollar": "half dollar", "sterling": "50 pence", "euro": "50 cents"}
PLURALS = {"dollar": "dollars", "sterling": "pounds", "euro": "euros"}
TAXES = {"US": "sales tax", "NZ": "GST"}
WHERE = {"ours": "", "US": " in the US", "UK": " in the UK", "EU": " in the EU",
         "NZ": " in New Zealand"}  # fmt: skip
NOT_COVERED = "not covered here{where}: ask your food code"
DIAL_F = 25  # dials are marked so: common practice
KILOS_IN_A_POUND = 0.45359237
FAN_C = 20  # a fan oven's dial stands so much lower: common practice
SIDES = {"at least": " or above", "at most": " or below"}


@dataclass(frozen=True)
class CollegeWords:
    """What a class's texts say, each a method that a text names as {{ name: argument }}."""

    college: Conventions

    def money(self, sum_):
        """A price as this class writes it: "21.40 per kg" is "£21.40 per kg"."""
        return f"{MONEY[self.college.currency]}{sum_}"

    def price(self, a_kilo):
        """A price by weight: "21.40" is "$21.40 per kg", and by the pound "$9.71 per lb"."""
        if self._by_the_kilo():
            return f"{self.money(a_kilo)} per kg"
        return f"{self.money(format(float(a_kilo) * KILOS_IN_A_POUND, '.2f'))} per lb"

    def kilo(self):
        """By what a price by weight counts: "kilo" or "pound"."""
        return "kilo" if self._by_the_kilo() else "pound"

    def coins(self, number):
        """Small change: "10" is "10 pence"."""
        return f"{number} {COINS[self.college.currency]}"

    def half(self):
        """The step of a menu: "half dollar"."""
        return HALVES[self.college.currency]

    def currency(self):
        """The money's own name, of many: "pounds"."""
        return PLURALS[self.college.currency]

    def cut(self, name):
        """The size of a named cut: "brunoise" is "3 mm"."""
        return say(self.college.cut(name).thinnest)

    def oven(self, celsius):
        """An oven's temperature as its dials show it: "220" is "220 °C (425 °F, gas mark 7)"."""
        point = Q_(float(celsius), "degC")
        fahrenheit = f"{DIAL_F * round(point.to('degF').magnitude / DIAL_F)} °F"
        dial = {"plain": "", "fan": f", fan {float(celsius) - FAN_C:g} °C",
                "gas": f", gas mark {oven_mark(point)}"}[self.college.oven]  # fmt: skip
        first, second = self._ordered(say(point), fahrenheit)
        return f"{first} ({second}{dial})"

    def limit(self, what):
        """A quoted limit with its source, or that it is not covered here."""
        try:
            row = own_limit(what, self.college)
        except KitchenError:
            return self._not_covered()
        first, second = self._ordered(say(row.temperature), say(row.fahrenheit))
        held = f" for {say(row.time)}" if row.time_sense == "for" else ""
        soon = f" within {say(row.time)}" if row.time_sense == "within" else ""
        side = "" if held else SIDES.get(row.sense, "")
        only = f" [{row.note}]" if row.use == "oven" else ""  # a humid oven is none without it
        return f"{first} ({second}){held}{side}{soon}{only} ({_source_of(row)})"

    def house(self, what):
        """The temperature that a class's exercises work with: "74 °C (165 °F)"."""
        row = class_limit(what, self.college).row
        return "{} ({})".format(*self._ordered(say(row.temperature), say(row.fahrenheit)))

    def by(self, what):
        """Whose limit that is: a class's own food code's, or the house's where none was read."""
        if what == "cooling":
            own, source = cooling_is_own(self.college), f"{FDA} 3-501.14"
        else:
            kept = class_limit(what, self.college)
            own, source = kept.own, _source_of(kept.row)
        if own:
            return f"By the {source}"
        return f"By the house's rule, after the {source} ({what}{self._elsewhere()})"

    def record_sources(self):
        """Whose limits stand in a day's record."""
        own = sources_of_record(self.college)
        if self.college.food_code == FDA:
            return f"The limits are quoted from the {' and the '.join(own)}."
        told = [f"{', '.join(points).capitalize()}: the limit is that of the {source}."
                for source, points in own.items()]  # fmt: skip
        told.append(
            f"{'All others' if own else 'The limits'}{WHERE[self.college.country]} are "
            f"{NOT_COVERED.format(where='')}. So that you learn how a record is read, the house "
            f"keeps those of the {FDA}; each is called a house limit."
        )
        return " ".join(told)

    def cooling(self):
        """How fast cooked food must cool, or that it is not covered here."""
        if self.college.food_code != "FDA Food Code":
            return self._not_covered()
        told = []
        for row in cooling_rules("two-stage"):
            first, second = self._ordered(f"{row['to_C']} °C", f"{row['to_F']} °F")
            told.append(f"to {first} ({second}) within {row['hours']} h")
        return f"{' and '.join(told)} in all (FDA Food Code 3-501.14)"

    def hold_table(self):
        """A table of holding times at the core, each row quoted; which it is stands before it."""
        rows, head = self._hold_rows()
        lines = [
            f"| {' ('.join(self._ordered(say(row.temperature), say(row.fahrenheit)))}) "
            f"| {say(row.time)} |"
            for row in rows
        ]
        return "\n".join(
            [f"{head} prints:", "", "| core at least | held for |", "|---|---|", *lines]
        )

    def hold_rows(self):
        """The table of holding times in one line, and whose it is where it is nobody's here."""
        rows, head = self._hold_rows()
        told = "; ".join(
            f"{' ('.join(self._ordered(say(row.temperature), say(row.fahrenheit)))}) "
            f"{say(row.time)}"
            for row in rows
        )
        other = ""
        if self.college.food_code == "none":
            other = f" The rule{self._elsewhere()}."
        return f"{head} prints: {told}.{other}"

    def _hold_rows(self):
        table = self.college.hold_table
        if "source" in table:
            return limits(**table), f"For the core of food the advice of {table['source']}"
        rows = [row for row in limits(**table) if 130 <= row.fahrenheit.magnitude <= 140]
        rows = [row for row in rows if row.source.startswith("FDA")]
        head = "For whole roasts the FDA Food Code (3-401.11(B)(2), as quoted in state codes)"
        return rows, head

    def hold_table_for(self):
        """What the table of holding times is for, and whose it is where it is nobody's here."""
        if "source" in self.college.hold_table:
            return "The advice is for the coldest part of the food."
        told = "The table has rules for the oven too. It is for whole roasts only, never for "
        told += "poultry or minced meat."
        if self.college.food_code == "none":
            told += f" The rule{WHERE[self.college.country]} is {NOT_COVERED.format(where='')}."
        return told

    def tax(self):
        """What the card's price has to do with tax; "" where nothing has."""
        name, percent = self.tax_name(), f"{self.college.tax_percent:g} %"
        return {
            "none": "",
            "in": f"The card shows the price with {name} of {percent} in it. "
            "The food cost is a share of the price without it.",
            "out": f"The card shows the price without {name}; the till puts {percent} on top. "
            "The food cost is a share of the card's price.",
        }[self.college.tax]

    def tax_name(self):
        """What the tax is called: VAT, GST or sales tax."""
        return TAXES.get(self.college.country, "VAT")

    def allergens(self):
        """The kind of answer by the class's list of allergens, for a key's code."""
        return self.college.allergens

    def by_its_list(self, both):
        """Of two ways to say a thing that of the class's list: "gluten | wheat" is "gluten"."""
        fourteen, nine = (each.strip() for each in both.split("|"))
        return fourteen if self.college.allergens == "allergens" else nine

    def scale(self):
        """The scale that a class reads: "°C"."""
        return self._ordered("°C", "°F")[0]

    def other_scale(self):
        """The scale that a class does not read: "°F"."""
        return self._ordered("°C", "°F")[1]

    def either(self, both):
        """Of two ways to say a thing the class's: "75 °C | 167 °F" is "75 °C"."""
        metric, other = (each.strip() for each in both.split("|"))
        return self._ordered(metric, other)[0]

    def _by_the_kilo(self):
        return self.college.units_first == "metric"

    def _ordered(self, metric, other):
        return (other, metric) if self.college.units_first == "us" else (metric, other)

    def _elsewhere(self):
        return f"{WHERE[self.college.country]} is {NOT_COVERED.format(where='')}"

    def _not_covered(self):
        return NOT_COVERED.format(where=WHERE[self.college.country])


def words_of(college):
    """The words of a class.

    Parameters
    ----------
    college : Conventions

    Returns
    -------
    CollegeWords

    Examples
    --------
    >>> from kitchenmath.conventions import conventions_of
    >>> words_of(conventions_of("UK")).limit("poultry")
    '70 °C (158 °F) for 2 min (UK FSA and ACMSF)'
    >>> words_of(conventions_of("NZ")).limit("poultry")
    'not covered here in New Zealand: ask your food code'
    """
    return CollegeWords(college)


def filled(text, college):
    """A text with its places filled in: {{ money: 3.48 }}, {{ cut: brunoise }}, {{ tax }}.

    Parameters
    ----------
    text : str
    college : Conventions

    Returns
    -------
    str

    Raises
    ------
    UnknownName
        For a place that nobody can fill.

    Examples
    --------
    >>> from kitchenmath.conventions import conventions_of
    >>> filled("Cut {{ cut: brunoise }}; it costs {{ money: 3.48 }}.", conventions_of("UK"))
    'Cut 2 mm; it costs £3.48.'
    """
    words = words_of(college)
    known = [name for name in dir(CollegeWords) if not name.startswith("_") and name != "college"]

    def say_it(place):
        name, argument = place.groups()
        asked = getattr(words, one_of(name, known, "place"))
        return asked(argument) if argument else asked()

    lines = text.split("\n")
    said = [PLACE.sub(say_it, line) for line in lines]
    # A line that held nothing but an empty place is no line.
    kept = "\n".join(
        new for old, new in zip(lines, said, strict=True) if new.strip() or not old.strip()
    )
    return first_system_first(kept, college)


def _source_of(row):
    """A limit's source with its section, which the UK's advice has not."""
    return row.source if row.source.startswith("UK") else f"{row.source} {row.section}"
