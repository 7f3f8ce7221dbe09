"""Named cuts: the kit's teaching convention, and what each source prints beside it.

No trade standard was found that fixes millimetres for these cuts, and the sources disagree by
a factor of two and more. The convention picks one value inside what is printed, so that a class
can talk about the same cube. A kitchen that cuts otherwise makes a `Cut` of its own.
"""

import unicodedata
from collections import defaultdict
from dataclasses import dataclass, field
from fractions import Fraction
from types import MappingProxyType

from kitchenmath.data.tables import table
from kitchenmath.errors import OutOfRange
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import say

# Which dimensions each shape has, the one that a class measures first.
SHAPES = {
    "cube": ("edge",),
    "stick": ("side", "length"),
    "flat": ("width", "thickness"),
    "slice": ("thickness",),
    "shred": ("width",),
    "turned": ("length", "faces"),
}


@dataclass(frozen=True)
class Cut:
    """One cut: its shape, the sizes that this kit teaches, and what the sources print.

    Parameters
    ----------
    name : str
    shape : str
        "cube", "stick" (square in section), "flat" (a square tile), "slice", "shred" or "turned".
    dimensions : dict of str to Quantity [length]
        "edge" of a cube; "side" and "length" of a stick; "width" and "thickness" of a flat;
        "thickness" of a slice; "width" of a shred; "length" and "faces" [count] of a turned cut.
        A size that no source fixes is left out, as the length of a pont-neuf.
    printed : dict of str to dict, optional
        For each source the lowest and highest size of each dimension, as (low, high).
    as_printed : dict of str to str, optional
        For each source its own way of putting it.
    inches : dict of str to dict, optional
        For each source the inch sizes that it prints.

    Raises
    ------
    WrongKind
    OutOfRange
    UnknownName
        For a shape or a dimension that is not in the list above.

    Examples
    --------
    A house whose brunoise is 2 mm:

    >>> house = Cut("house brunoise", "cube", {"edge": Q_(2, "mm")})
    >>> print(house)
    house brunoise: edge 2 mm
    """

    name: str
    shape: str
    dimensions: dict
    printed: dict = field(default_factory=dict, repr=False)
    as_printed: dict = field(default_factory=dict, repr=False)
    inches: dict = field(default_factory=dict, repr=False)

    def __post_init__(self):
        one_of(self.shape, SHAPES, "shape")
        for dimension, size in self.dimensions.items():
            one_of(dimension, SHAPES[self.shape], f"dimensions of a {self.shape}")
            unit = "count" if dimension == "faces" else "mm"
            amount(size, unit, f"{self.name}, {dimension}", above=0)

    def __str__(self):
        sizes = ", ".join(f"{key} {say(size)}" for key, size in self.dimensions.items())
        return f"{self.name}: {sizes}"

    @property
    def edges(self):
        """The three edges of one piece [mm], longest last.

        Raises
        ------
        OutOfRange
            For a shape without three fixed edges.
        """
        of = self.dimensions
        edges = {
            "cube": ("edge", "edge", "edge"),
            "stick": ("side", "side", "length"),
            "flat": ("thickness", "width", "width"),
        }.get(self.shape, ())
        if not edges or any(edge not in of for edge in edges):
            raise OutOfRange(
                f"cut: {self.name} has no three fixed edges; "
                f'give your own, as in Cut("{self.name}", "stick", '
                '{"side": Q_(10, "mm"), "length": Q_(70, "mm")}).'
            )
        return tuple(of[edge].to("mm") for edge in edges)

    @property
    def thinnest(self):
        """The smallest size [mm]: heat and salt enter through it.

        Raises
        ------
        OutOfRange
            Where the cut does not fix it: a shred is as thin as the leaf.
        """
        edges = {"cube": "edge", "stick": "side", "flat": "thickness", "slice": "thickness"}
        if edges.get(self.shape) not in self.dimensions:
            raise OutOfRange(
                f"cut: {self.name} has no fixed thickness; measure it and give it in mm."
            )
        return self.dimensions[edges[self.shape]].to("mm")


def _read_cuts():
    """The cuts of cuts.csv, in its order."""
    rows_of = defaultdict(list)
    for row in table("cuts.csv"):
        rows_of[row["cut"]].append(row)
    return {name: _cut(name, rows) for name, rows in rows_of.items()}


def _cut(name, rows):
    own, printed, as_printed, inches = {}, defaultdict(dict), {}, defaultdict(dict)
    for row in rows:
        low, high = Q_(float(row["low"]), row["unit"]), Q_(float(row["high"]), row["unit"])
        if row["status"] == "convention":
            own[row["dimension"]] = low
            continue
        printed[row["source"]][row["dimension"]] = (low, high)
        as_printed[row["source"]] = row["as_printed"]
        if row["inches"]:
            inches[row["source"]][row["dimension"]] = _inches(row["inches"])
    return Cut(name, rows[0]["shape"], own, dict(printed), as_printed, dict(inches))


def _inches(text):
    """Inches as a table prints them: 1 1/4."""
    return Q_(float(sum(Fraction(part) for part in text.split())), "inch")


CUTS = MappingProxyType(_read_cuts())


def cut_named(cut, name="cut"):
    """A cut by its name, accents and capitals as you like; a `Cut` of your own stays as it is.

    Parameters
    ----------
    cut : str or Cut
        Such as "batonnet".
    name : str, optional
        What the parameter is called, for the error.

    Returns
    -------
    Cut

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> print(cut_named("Batonnet"))
    bâtonnet: side 6 mm, length 50 mm
    """
    if isinstance(cut, Cut):
        return cut
    plain = {_plain(name): name for name in CUTS}
    return CUTS[plain[_plain(one_of(_plain(str(cut)), plain, name))]]


def _plain(name):
    """Lower case without accents."""
    letters = unicodedata.normalize("NFKD", name.casefold().strip())
    return "".join(letter for letter in letters if not unicodedata.combining(letter))


def sizes_printed(cut):
    """What each source prints for a cut, in its own way. They disagree, and that is the point.

    Parameters
    ----------
    cut : str or Cut

    Returns
    -------
    dict of str to str
        One entry a source.

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> for source, size in sizes_printed("brunoise").items():
    ...     print(f"{source}: {size}")
    Wikipedia, list of culinary knife cuts: 3 mm
    NZ teaching slides (unit standard 13280): 2 mm
    NZ industry site (vegetables.co.nz): 1–3 mm
    UK teaching notes: 1 or 2 mm; 2 mm in other notes
    French sources: 1–2 mm; 2 mm in another
    """
    return dict(cut_named(cut).as_printed)


@dataclass(frozen=True)
class Band:
    """One published limit on sizes, from a purchase description or a grade standard.

    `low` and `high` bound the size (or the spread); `share` is how much may lie outside;
    `counted_by` says whether that share is by weight or by count.
    """

    name: str
    low: Quantity | None
    high: Quantity | None
    share: Quantity | None
    counted_by: str
    source: str
    as_printed: str

    @property
    def target(self):
        """The middle of the band [mm]."""
        return ((self.low + self.high) / 2).to("mm")

    @property
    def tolerance(self):
        """Half the width of the band [mm]."""
        return ((self.high - self.low) / 2).to("mm")


def published_bands():
    """Size limits that industry and grade standards print; no kitchen competition prints one.

    Returns
    -------
    dict of str to Band

    Examples
    --------
    Diced onion is bought as 1/4 in ± 1/8 in, which is 6.35 ± 3.175 mm.

    >>> band = published_bands()["ready-to-use onion, diced"]
    >>> print(say(band.target), "±", say(band.tolerance))
    6.35 mm ± 3.175 mm

    References
    ----------
    USDA Commercial Item Descriptions A-A-20190A and A-A-20193A; 7 CFR 51 and 52, as in
    data/cut_bands.csv. The inch values are taken: one metric conversion printed in the onion
    description is wrong by nearly ten.
    """
    return {row["name"]: _band(row) for row in table("cut_bands.csv")}


def _band(row):
    low, high = (_inches(row[key]) if row[key] else None for key in ("low", "high"))
    allowed = Q_(float(row["share_percent"]), "percent") if row["share_percent"] else None
    return Band(
        row["name"], low, high, allowed, row["counted_by"], row["source"], row["as_printed"]
    )
