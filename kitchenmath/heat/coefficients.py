"""How much heat a surface takes in different places: bands that others measured or used."""

import difflib
from dataclasses import dataclass

from kitchenmath.data.tables import table
from kitchenmath.errors import UnknownName
from kitchenmath.units.registry import Q_, Quantity

__all__ = ["CoefficientBand", "surface_coefficient", "surface_situations"]


@dataclass(frozen=True)
class CoefficientBand:
    """The band in which a surface coefficient lies, and who says so.

    Parameters
    ----------
    situation : str
    low, high : Quantity [W/m**2/K]
        The same where a source uses one value.
    source : str
        With its status: "seen", or what of it is from memory.
    """

    situation: str
    low: Quantity
    high: Quantity
    source: str

    @property
    def middle(self):
        """The geometric mean of the two [W/m**2/K]: a value to begin with."""
        return Q_((self.low.magnitude * self.high.magnitude) ** 0.5, "W/m**2/K")


def surface_coefficient(situation):
    """The band of surface coefficients for a place a cook knows.

    The surface coefficient is the watts that cross a square metre for each degree between the
    surroundings and the surface. It is the least certain number of all: try both ends of the band,
    or log a probe and take `fit_surface_coefficient`.

    Parameters
    ----------
    situation : str
        Such as "fan oven", "still air" or "egg in boiling water"; `surface_situations` lists all.

    Returns
    -------
    CoefficientBand

    Raises
    ------
    UnknownName
        With the places that come near.

    Examples
    --------
    >>> band = surface_coefficient("chilling in cold air")
    >>> print(band.low.magnitude, "to", band.high.magnitude)
    5.0 to 20.0

    References
    ----------
    The source of each band.
    """
    rows = {row["situation"]: row for row in table("surface_coefficients.csv")}
    if not isinstance(situation, str) or situation not in rows:
        words = str(situation).lower()
        near = [each for each in rows if words in each]
        near = near or difflib.get_close_matches(words, rows, n=3, cutoff=0.4)
        hint = f"did you mean {' or '.join(map(repr, near))}?" if near else ""
        raise UnknownName(
            f"situation: there is no {situation!r} in the table; "
            f"{hint or 'surface_situations() lists all.'}"
        )
    row = rows[situation]
    low, high = (Q_(float(row[f"{end}_W_m2K"]), "W/m**2/K") for end in ("low", "high"))
    return CoefficientBand(situation, low, high, f"{row['source']} ({row['status']})")


def surface_situations():
    """The places that `surface_coefficient` knows.

    Returns
    -------
    tuple of str
    """
    return tuple(row["situation"] for row in table("surface_coefficients.csv"))
