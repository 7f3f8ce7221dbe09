"""A day's record: each reading beside its quoted limit, and what is usually done about it."""

from dataclasses import dataclass

from kitchenmath.data.tables import table
from kitchenmath.errors import NotCovered
from kitchenmath.safety.quoted import Limit, limit
from kitchenmath.safety.verdicts import Verdict
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.measures import in_other_system
from kitchenmath.units.saying import say


@dataclass(frozen=True)
class ReadingVerdict(Verdict):
    """One line of a record.

    `limit` is the quoted one, None where the kit has none. `if_out` is what is usually done about
    a reading on the wrong side (common practice).
    """

    limit: Limit | None
    if_out: str


def control_points():
    """Where a kitchen takes a reading, from the delivery to the pass.

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> control_points()[:2]
    ('delivery', 'cold room')
    """
    return tuple(row["point"] for row in table("control_points.csv"))


def what_is_read(point):
    """What is read at a control point, as `limit` calls it.

    Parameters
    ----------
    point : str
        One of `control_points`.

    Returns
    -------
    str

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> what_is_read("cold at the pass")
    'cold holding'
    """
    return _row(point)["what"]


def point_limit(point, source=None):
    """The quoted limit of a control point.

    Parameters
    ----------
    point : str
        One of `control_points`.
    source : str, optional
        As for `limit`: by default the FDA Food Code, where it lists the point.

    Returns
    -------
    Limit

    Raises
    ------
    NotCovered
        Where the kit has no limit of that source: ask your food code.
    UnknownName

    Examples
    --------
    >>> print(point_limit("hot holding"))
    hot holding: at least 57 °C (135 °F) (FDA Food Code 3-501.16; edition 2013, 2017, 2022)
    """
    return limit(_row(point)["what"], source)


def reading_verdict(point, reading, source=None):
    """What the quoted limit says of one reading: a line of the day's record.

    Likely confusion: a reading on the limit is in order; and a core that is too low is no fault
    yet, because it can be heated on. Time that is gone cannot.

    Parameters
    ----------
    point : str
        One of `control_points`.
    reading : Quantity [temperature]
    source : str, optional
        As for `limit`.

    Returns
    -------
    ReadingVerdict
        `meets` None where the kit has no limit of that source.

    Raises
    ------
    UnknownName
    WrongKind

    Notes
    -----
    A delivery is held against the limit for cold holding. Where a limit asks a time too, the
    reading alone meets half of it, and the words say the time.

    Examples
    --------
    >>> cream = reading_verdict("delivery", Q_(8, "degC"))
    >>> cream.meets, cream.if_out
    (False, 'send it back, and write down who was told')
    >>> print(cream.words)  # doctest: +NORMALIZE_WHITESPACE
    8 °C (46.4 °F) is on the wrong side of the limit for cold holding: at most 5 °C (41 °F)
    (FDA Food Code 3-501.16; edition 2013, 2017, 2022).
    >>> reading_verdict("hot holding", Q_(60, "degC"), source="UK").words
    ... # doctest: +NORMALIZE_WHITESPACE
    'hot holding in the UK: not covered here: ask your food code (the regulations of the UK could
    not be read for this kit).'

    References
    ----------
    Each row of data/limits.csv names its own.
    """
    row = _row(point)
    amount(reading, "degC", "reading")
    try:
        quoted = limit(row["what"], source)
    except NotCovered as error:
        return ReadingVerdict(None, str(error), None, row["if_out"])
    meets = bool(quoted.reached_by(reading))
    other = in_other_system(reading)
    side = "keeps" if meets else "is on the wrong side of"
    words = f"{say(reading)}{f' ({other})' if other else ''} {side} the limit for {quoted}."
    return ReadingVerdict(meets, words, quoted, row["if_out"])


def _row(point):
    one_of(point, control_points(), "point")
    return next(row for row in table("control_points.csv") if row["point"] == point)
