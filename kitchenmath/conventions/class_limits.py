"""Which limit a class works with: its own food code's, or the house's where none was read.

A limit whose source was not read is never given as the class's own. So that its students can
learn how a record is kept, the house keeps the limit of the FDA Food Code there, and says so.
"""

from dataclasses import dataclass

from kitchenmath.conventions.college import college_here
from kitchenmath.errors import KitchenError, NotCovered
from kitchenmath.safety.cooling import cooling_rules
from kitchenmath.safety.day_record import control_points, what_is_read
from kitchenmath.safety.quoted import Limit, limit, limits
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say

# What the UK's advice on cooking to the core speaks of; it has one table for all of it.
UK_CORE = ("poultry", "ground meat", "injected meat", "stuffed food")
FDA = "FDA Food Code"
TAUGHT = ("cold holding", "freezer", "poultry", "fish", "hot holding", "reheating")


@dataclass(frozen=True)
class ClassLimit:
    """A limit for a class.

    Attributes
    ----------
    row : Limit
        As its source prints it.
    own : bool
        Whether it is that of the class's own food code; else it is the house's, to learn by.
    units_first : str
        As in `Conventions`: which of the two printed degrees is told first.
    """

    row: Limit
    own: bool
    units_first: str = "metric"

    @property
    def printed(self):
        """The limit as its source prints it in the scale that the class reads."""
        return self.row.fahrenheit if self.units_first == "us" else self.row.temperature

    def __str__(self):
        row = self.row
        other = row.temperature if self.units_first == "us" else row.fahrenheit
        told = f"{say(self.printed)} ({say(other)})"
        minutes = row.time_sense == "for" and row.time.to("min").magnitude >= 1
        if row.time_sense == "within" or minutes:
            told += f" {row.time_sense} {say(row.time)}"
        return f"{'limit' if self.own else 'house limit'} {row.sense} {told}"


def own_limit(what, college):
    """The limit of a class's own food code.

    Parameters
    ----------
    what : str
        As for `kitchenmath.safety.limit`.
    college : Conventions

    Returns
    -------
    Limit

    Raises
    ------
    NotCovered
        Where that code was not read for this kit.
    UnknownName

    Examples
    --------
    >>> from kitchenmath.conventions import conventions_of
    >>> own_limit("poultry", conventions_of("UK")).source
    'UK FSA and ACMSF'
    """
    source = college.food_code
    if source == "none":
        raise NotCovered(f"{what}: not covered here: ask your food code.")
    if source.startswith("UK") and what in UK_CORE:
        return uk_core()
    if source == FDA and what == "freezer":
        return limit(what)  # the Food Code names none: that of the home chart is the country's too
    return limit(what, source)


def uk_core():
    """The row for 70 °C, which the UK's advice names first.

    Returns
    -------
    Limit
    """
    rows = limits("core of the food", "UK FSA and ACMSF")
    return next(row for row in rows if row.temperature == Q_(70, "degC"))


def class_limit(what, college):
    """The limit that a class's exercises work with.

    Parameters
    ----------
    what : str
        As for `kitchenmath.safety.limit`.
    college : Conventions

    Returns
    -------
    ClassLimit

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> from kitchenmath.conventions import conventions_of
    >>> print(class_limit("poultry", conventions_of("UK")))
    limit at least 70 °C (158 °F) for 2 min
    >>> print(class_limit("cold holding", conventions_of("NZ")))
    house limit at most 5 °C (41 °F)
    """
    try:
        return ClassLimit(own_limit(what, college), True, college.units_first)
    except KitchenError:
        return ClassLimit(limit(what), False, college.units_first)


def limits_of_class(college=None):
    """The limits that a class works with, from the cold room to reheating, in words.

    Parameters
    ----------
    college : Conventions, optional
        The class for which this copy of the kit was built, when left out.

    Returns
    -------
    list of str
        A line each; "house limit" where the class's own food code was not read for this kit.

    Examples
    --------
    >>> from kitchenmath.conventions import conventions_of
    >>> for line in limits_of_class(conventions_of("UK"))[:3]:
    ...     print(line)
    cold holding: house limit at most 5 °C (41 °F)
    freezer: house limit at most -17.8 °C (0 °F)
    poultry: limit at least 70 °C (158 °F) for 2 min
    """
    college = college or college_here()
    return [f"{what}: {class_limit(what, college)}" for what in TAUGHT]


def sources_of_record(college):
    """The sources of a day's record that are a class's own, each with its sections.

    Parameters
    ----------
    college : Conventions

    Returns
    -------
    dict of str to tuple of str
        What each own source limits, by its name and sections; empty where none was read.
    """
    found = {}
    for point in control_points():
        kept = class_limit(what_is_read(point), college)
        if kept.own:
            found.setdefault(kept.row.source, []).append(point)
    return {source: tuple(points) for source, points in found.items()}


def cooling_is_own(college):
    """Whether the two stages of cooling are those of the class's own food code.

    Parameters
    ----------
    college : Conventions

    Returns
    -------
    bool
    """
    return college.food_code == cooling_rules("two-stage")[0]["source"]
