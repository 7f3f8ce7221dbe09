"""Which conventions a class has: its country's, and what its own file says otherwise."""

from dataclasses import dataclass, fields, replace
from functools import cache
from pathlib import Path

from kitchenmath.cuts.named import CUTS, Cut
from kitchenmath.data import tables
from kitchenmath.errors import OutOfRange, UnknownName
from kitchenmath.units.door import one_of, plain_number
from kitchenmath.units.registry import Q_

__all__ = ["OURS", "Conventions", "as_text", "college_here", "conventions_of", "countries"]

CURRENCIES = ("dollar", "sterling", "euro")
FOOD_CODES = ("FDA Food Code", "UK FSA and ACMSF", "none")
UNITS = ("metric", "us")
OVENS = ("plain", "fan", "gas")
TAXES = ("none", "in", "out")
BRUNOISE_MM = (2, 3)  # between what the sources of cuts.csv print for a class to measure
HERE = "college.txt"  # beside the tables, in an edition that was built for a class


@dataclass(frozen=True)
class Conventions:
    """What one college takes for granted.

    Parameters
    ----------
    country : str
        "ours" (Brackwater House), "US", "UK", "EU" or "NZ"; the other lines are its own where
        they are taken from `conventions_of`.
    currency : str
        "dollar", "sterling" or "euro".
    brunoise_mm : float
        2 to 3 mm, as the sources print it for a class; other named cuts are the kit's.
    food_code : str
        The source of its limits: "FDA Food Code", "UK FSA and ACMSF", or "none" where the kit has
        read none and says so.
    units_first : str
        "metric" or "us": what stands first, and in which a weight is drawn.
    oven : str
        "plain", "fan" (a fan oven's dial stands beside the temperature) or "gas" (its mark does).
    tax : str
        On the card's price: "in" (VAT), "out" (sales tax at the till) or "none".
    tax_percent : float

    Raises
    ------
    UnknownName
        For a line that has none of the words above.
    OutOfRange
        For a brunoise that no source prints, or a tax that is none.
    """

    country: str = "ours"
    currency: str = "dollar"
    brunoise_mm: float = 3.0
    food_code: str = "FDA Food Code"
    units_first: str = "metric"
    oven: str = "plain"
    tax: str = "none"
    tax_percent: float = 0.0

    def __post_init__(self):
        one_of(self.country, countries(), "country")
        for name, known in (("currency", CURRENCIES), ("food_code", FOOD_CODES), ("tax", TAXES),
                            ("units_first", UNITS), ("oven", OVENS)):  # fmt: skip
            one_of(getattr(self, name), known, name)
        least, most = BRUNOISE_MM
        plain_number(self.brunoise_mm, "brunoise_mm", least=least, most=most)
        plain_number(self.tax_percent, "tax_percent", least=0, most=100)
        if (self.tax == "none") != (self.tax_percent == 0):
            raise OutOfRange(
                'tax_percent: needs to be 0 with tax = "none", and more with "in" or "out".'
            )

    @property
    def brunoise(self):
        """The edge of this class's brunoise [mm]."""
        return Q_(self.brunoise_mm, "mm")

    @property
    def price_unit(self):
        """In which a price by weight is written: "sterling/kg", "dollar/lb"."""
        return f"{self.currency}/{'lb' if self.units_first == 'us' else 'kg'}"

    @property
    def on_the_card(self):
        """How many times the price without tax stands on the card: 1.2 with 20 % of VAT in it."""
        return 1 + self.tax_percent / 100 if self.tax == "in" else 1.0

    @property
    def hold_table(self):
        """What `kitchenmath.safety.limits` takes for a table of holding times at the core.

        Where no food code was read it is the FDA's, to learn how such a table is read.
        """
        if self.food_code.startswith("UK"):
            return {"what": "core of the food", "source": self.food_code}
        return {"what": "whole roast"}

    @property
    def allergens(self):
        """The kind of answer that a class gives for a plate: by the list of the US, or the EU's."""
        return "US allergens" if self.country == "US" else "allergens"

    @property
    def cups(self):
        """Whose cup is meant where none is named, as for `kitchenmath.read`."""
        return {"UK": "uk", "NZ": "metric", "EU": "metric"}.get(self.country, "us")

    def cut(self, name):
        """A named cut with the sizes of this class.

        Parameters
        ----------
        name : str
            As in `kitchenmath.cuts.CUTS`.

        Returns
        -------
        Cut

        Raises
        ------
        UnknownName
        """
        named = CUTS[one_of(name, CUTS, "cut")]
        if name != "brunoise":
            return named
        return Cut(name, named.shape, {"edge": self.brunoise}, named.printed, named.as_printed)


def countries():
    """The countries whose conventions the kit knows, "ours" first."""
    return tuple(dict.fromkeys(row["country"] for row in tables.table("conventions.csv")))


def conventions_of(text=""):
    """The conventions that a line of text says: a country, and what is otherwise there.

    Parameters
    ----------
    text : str
        Such as "UK" or "UK; brunoise_mm = 3"; "" is "ours".

    Returns
    -------
    Conventions

    Raises
    ------
    UnknownName
    OutOfRange

    Examples
    --------
    >>> conventions_of("UK; brunoise_mm = 3").brunoise_mm, conventions_of("UK").currency
    (3.0, 'sterling')
    """
    country, *lines = [part.strip() for part in text.split(";")]
    found = _of_country(one_of(country or "ours", countries(), "country"))
    said = {}
    for line in lines:
        name, _, value = (part.strip() for part in line.partition("="))
        one_of(name, [each.name for each in fields(Conventions)][1:], "conventions")
        said[name] = _typed(name, value)
    return replace(found, **said)


def as_text(conventions):
    """The line that says these conventions, for a set's first cell.

    Parameters
    ----------
    conventions : Conventions

    Returns
    -------
    str

    Examples
    --------
    >>> as_text(conventions_of("UK; brunoise_mm=3"))
    'UK; brunoise_mm = 3'
    """
    usual = _of_country(conventions.country)
    lines = [
        f"{each.name} = {_plain(getattr(conventions, each.name))}"
        for each in fields(Conventions)
        if getattr(conventions, each.name) != getattr(usual, each.name)
    ]
    return "; ".join([conventions.country, *lines])


@cache
def college_here():
    """The conventions of the class for which this copy of the kit was built; else "ours".

    Read once: a copy stays that of its class for as long as it runs, and each round of a drill
    asks.

    Returns
    -------
    Conventions
    """
    file = Path(tables.__file__).with_name(HERE)
    return conventions_of(file.read_text(encoding="utf-8").strip()) if file.is_file() else OURS


@cache
def _of_country(country):
    rows = [row for row in tables.table("conventions.csv") if row["country"] == country]
    return Conventions(country, **{row["line"]: _typed(row["line"], row["value"]) for row in rows})


def _typed(name, text):
    """A line's value: the two that are numbers as numbers."""
    if name not in ("brunoise_mm", "tax_percent"):
        return text
    try:
        return float(text)
    except ValueError:
        raise UnknownName(f"{name}: needs a number, and {text!r} came.") from None


def _plain(value):
    return f"{value:g}" if isinstance(value, float) else value


OURS = conventions_of("ours")
