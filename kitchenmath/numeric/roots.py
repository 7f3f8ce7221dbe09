"""Roots by bisection: slower than a clever method, and easy to check."""


def bisect(reached, low, high):
    """Where a condition turns from false to true, to the last bit.

    Parameters
    ----------
    reached : callable
        Of a number; false at `low`, true at `high`, and turning once between them.
    low, high : float

    Returns
    -------
    float

    Examples
    --------
    >>> bisect(lambda side: side * side >= 2, 0.0, 2.0)
    1.414213562373095
    """
    while low < (middle := (low + high) / 2) < high:
        if reached(middle):
            high = middle
        else:
            low = middle
    return middle
