"""Numbers and counts as a cook writes them, for every page, sheet and terminal."""

from kitchenmath.units.saying import figures

__all__ = ["APART", "number", "plural"]

# What a mark book, a sheet and a page say where a mark does not come from a file.
APART = {"excused": "Excused: it counts nowhere.", "on paper": "On paper."}


def number(value):
    """Points as a cook writes them: 3, 2.5."""
    return figures(round(value, 4), 8)


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
