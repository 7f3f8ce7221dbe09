"""The college's conventions in a class's file: its country's, and what the file says otherwise."""

from dataclasses import dataclass, fields

from coursework.classes.course_file import AboveZero, Choice, Percent
from coursework.errors import CourseError
from kitchenmath.conventions import as_text, conventions_of, countries
from kitchenmath.conventions.college import CURRENCIES, FOOD_CODES, OVENS, TAXES, UNITS
from kitchenmath.errors import KitchenError

__all__ = ["COLLEGE_LINES", "CollegeLines", "college_of", "college_text"]

# ISO 3166 two-letter codes, as in the class's line country.
OF_CODE = {"US": "US", "GB": "UK", "NZ": "NZ"}
MEMBERS = """
AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK
"""


class CollegeCountry(Choice):
    """Whose conventions."""

    WORDS = countries()


class Currency(Choice):
    """In which money a set counts."""

    WORDS = CURRENCIES


class FoodCode(Choice):
    """Whose limits are quoted."""

    WORDS = FOOD_CODES


class UnitsFirst(Choice):
    """Which measures stand first."""

    WORDS = UNITS


class Oven(Choice):
    """What the ovens' dials show."""

    WORDS = OVENS


class Tax(Choice):
    """Whether the card shows a price with tax."""

    WORDS = TAXES


@dataclass(frozen=True)
class CollegeLines:
    """The lines below [college]; one that is left out is the country's own."""

    country: CollegeCountry = ""
    currency: Currency = ""
    brunoise_mm: AboveZero | None = None
    food_code: FoodCode = ""
    units_first: UnitsFirst = ""
    oven: Oven = ""
    tax: Tax = ""
    tax_percent: Percent | None = None


COLLEGE_LINES = """
# The college's conventions: sets, drills and guides draw and quote by them. The country is the
# line above, or one of "ours", "US", "UK", "EU", "NZ"; each other line is the country's own until
# it is written here. Change nothing once a set is handed out: other numbers are drawn.
# [college]
# country = "UK"
# currency = "sterling"
# A brunoise of 2 to 3 mm, as the sources print it.
# brunoise_mm = 2
# Whose limits are quoted: "FDA Food Code", "UK FSA and ACMSF", or "none": then sets say that it is
# not covered, and to ask the local food code.
# food_code = "UK FSA and ACMSF"
# "metric" or "us": what stands first.
# units_first = "metric"
# "plain", "fan" or "gas".
# oven = "gas"
# Tax on the card's price: "in" it (VAT), "out" of it (sales tax at the till) or "none".
# tax = "in"
# tax_percent = 20
"""


def college_of(lines, code):
    """The conventions of a class.

    Parameters
    ----------
    lines : CollegeLines
    code : str
        The class's country in two letters, or "".

    Returns
    -------
    Conventions

    Raises
    ------
    CourseError
        For lines that do not go together.
    """
    country = lines.country or OF_CODE.get(code, "EU" if code in MEMBERS.split() else "ours")
    own = {each.name: getattr(lines, each.name) for each in fields(lines)}
    said = [f"{name} = {value}" for name, value in own.items()
            if name != "country" and value not in ("", None)]  # fmt: skip
    if lines.tax == "none" and lines.tax_percent is None:
        said.append("tax_percent = 0")
    try:
        return conventions_of("; ".join([country, *said]))
    except KitchenError as error:
        raise CourseError(f"course.toml, [college], {error}") from None


def college_text(college):
    """The line that a set's first cell carries; "" for the kit's own conventions."""
    text = as_text(college)
    return "" if text == "ours" else text
