"""Limits quoted from food codes, each with its source, section, edition and status.

Nothing here is computed. The numbers stand in data/limits.csv and data/hold_times.csv.
"""

from dataclasses import dataclass
from functools import cache

from kitchenmath.data.tables import table
from kitchenmath.errors import NotCovered, UnknownName
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, Quantity, registry
from kitchenmath.units.saying import say

_AS_TEXT = ("what", "use", "sense", "time_sense",
            "source", "section", "edition", "status", "standing", "note")  # fmt: skip
ROUNDING = 1e-9  # floats: 336.15 K is 62.99999999999994 °C


@dataclass(frozen=True)
class Limit:
    """One limit as it is printed.

    `temperature` [°C] and `fahrenheit` [°F] are both as printed and rounded by the source, so a
    temperature is judged in the scale it was read in: 145 °F meets "63 °C (145 °F)".
    `status` tells how well the number was checked: "seen", "quoted" (read in a text that quotes
    it) or "handed on" (told by a reviewer; its printed line says so). `standing` tells whether it
    is in force ("current") or "superseded".
    """

    what: str
    use: str  # "cook", "store", "oven" or "rule"
    sense: str  # "at least", "at most", "above", or "" where no temperature is named
    temperature: Quantity
    fahrenheit: Quantity
    time_sense: str  # "for", "within", or "" where no time is named
    time: Quantity
    source: str
    section: str
    edition: str
    status: str
    standing: str
    note: str

    def reached_by(self, temperature):
        """Whether a temperature is on the right side of this limit, in the scale it came in."""
        here, printed = in_its_scale(temperature, self.temperature, self.fahrenheit)
        return here <= printed + ROUNDING if self.sense == "at most" else here >= printed - ROUNDING

    def __str__(self):
        words = [f"{self.what}:"]
        if self.standing != "current":
            words.insert(0, f"{self.standing.upper()} -")
        if self.sense:
            words.append(f"{self.sense} {say(self.temperature)} ({say(self.fahrenheit)})")
        if self.time_sense:
            words.append(_spoken_time(self.time_sense, self.time))
        if self.note:
            words.append(f"[{self.note}]")
        read = "; handed on, not read in its source" if self.status == "handed on" else ""
        return f"{' '.join(words)} ({self.source} {self.section}; edition {self.edition}{read})"


def limits(what, source=None, edition=None):
    """All rows that one source prints for a food or a way of holding it: any one of them will do.

    Parameters
    ----------
    what : str
        Such as "fish", "ground meat", "hot holding"; a wrong name lists them all.
    source : str, optional
        Such as "USDA FSIS home chart" or "UK FSA and ACMSF". By default the first that
        lists it; the FDA Food Code comes first.
    edition : str, optional
        Such as "2013". By default what is in force; an edition that is asked for is given even
        where it is superseded, and then says so.

    Returns
    -------
    tuple of Limit

    Raises
    ------
    NotCovered
        For what was looked for and is not in the kit: it says why, and never gives a number.
    UnknownName

    Examples
    --------
    >>> for row in limits("ground meat"):
    ...     print(say(row.temperature), "for", say(row.time))
    68 °C for 17 s
    66 °C for 1 min
    63 °C for 3 min
    70 °C for 0 s
    """
    _refuse_what_is_not_covered(what, source)
    one_of(what, list(dict.fromkeys(row.what for row in _printed())), "what")
    rows = [row for row in _printed() if row.what == what]
    source = rows[0].source if source is None else source
    one_of(source, list(dict.fromkeys(row.source for row in rows)), "source")
    rows = [row for row in rows if row.source == source]
    if edition is None:
        chosen = [row for row in rows if row.standing == "current"]
    else:
        chosen = [row for row in rows if str(edition) in row.edition.split(", ")]
    if not chosen:
        editions = sorted({each for row in rows for each in row.edition.split(", ")})
        wanted = "in force" if edition is None else f"of {edition!r}"
        raise UnknownName(
            f"edition: {source} has nothing {wanted} for {what}; "
            f"editions listed here: {', '.join(editions)}."
        )
    return tuple(chosen)


def limit(what, source=None, edition=None):
    """The limit for a food or a way of holding it, as quoted; of several rows the first.

    Parameters
    ----------
    what : str
        Such as "fish", "poultry", "intact meat", "ground meat", "eggs", "hot holding",
        "cold holding", "microwaved food", "left out"; a wrong name lists them all.
    source, edition : str, optional
        As for `limits`: by default the source listed first and what is in force.

    Returns
    -------
    Limit

    Raises
    ------
    NotCovered
    UnknownName

    Notes
    -----
    The Food Code was read in state codes that adopt it ("quoted") and not in the federal text.
    155 °F is held 15 s up to the edition of 2013 and 17 s from that of 2017: both circulate.

    Examples
    --------
    >>> print(limit("fish"))
    fish: at least 63 °C (145 °F) for 15 s (FDA Food Code 3-401.11(A)(1); edition 2013, 2017, 2022)
    >>> say(limit("ground meat").time), say(limit("ground meat", edition="2013").time)
    ('17 s', '15 s')

    References
    ----------
    FDA Food Code, chapter 3; USDA FSIS charts; each row of data/limits.csv names its own.
    """
    return limits(what, source, edition)[0]


def not_covered():
    """What this kit has no limit for, and why it matters: the list to take to your food code.

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> print(not_covered()[4])  # doctest: +NORMALIZE_WHITESPACE
    garlic in oil: not covered here: ask your food code
    (raw garlic under oil lies without air and without acid: botulism).
    """
    return tuple(_not_covered_words(row) for row in table("not_covered.csv"))


def _refuse_what_is_not_covered(what, source):
    country = "" if source is None else str(source).partition(" ")[0]
    for row in table("not_covered.csv"):
        of_source = row["source"] == country or not row["source"]
        if row["what"] == what and of_source and source not in _sources_of(what):
            raise NotCovered(_not_covered_words(row))


def _sources_of(what):
    return {row.source for row in _printed() if row.what == what}


def _not_covered_words(row):
    where = f" in the {row['source']}" if row["source"] else ""
    return f"{row['what']}{where}: not covered here: ask your food code ({row['why']})."


def in_its_scale(temperature, celsius, fahrenheit):
    """The temperature and the printed value as plain numbers, in the scale that came.

    Raises
    ------
    WrongKind
    """
    unit = "degF" if getattr(temperature, "units", None) == registry.degF else "degC"
    printed = fahrenheit if unit == "degF" else celsius
    return amount(temperature, unit, "temperature"), printed.magnitude


def _spoken_time(sense, time):
    return "at once" if time.magnitude == 0 else f"{sense} {say(time)}"


@cache
def _printed():
    """Every row of the two tables, the Food Code's first."""
    rows = table("limits.csv") + table("hold_times.csv")
    return tuple(_limit(row) for row in rows)


def _limit(row):
    def quantity(column, unit):
        return Q_(float(row[column]), unit) if row[column] else None

    return Limit(
        temperature=quantity("temperature_C", "degC"),
        fahrenheit=quantity("temperature_F", "degF"),
        time=quantity("time", row["time_unit"]),
        **{column: row[column] for column in _AS_TEXT},
    )
