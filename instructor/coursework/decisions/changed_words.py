"""Whose points a decision changes, as the instructor reads it."""

from coursework.words import number, plural

__all__ = ["in_words"]


def in_words(changes, roster, done=False):
    """Whose points change, by name, a line each.

    Parameters
    ----------
    changes : list of Change
    roster : dict of str to str
    done : bool
        Whether it counts already.

    Returns
    -------
    str
    """
    if not changes:
        return "Nobody's points are changed." if done else "Nobody's points change."
    words = ("mark is changed", "marks are changed") if done else ("mark changes", "marks change")
    lines = [f"{plural(len(changes), *words)}:"]
    for one in changes:
        before, after = _points(one.before, one.counted), _points(one.after, one.counts)
        name = f"{roster.get(one.student, 'Not on the roster')} ({one.student})"
        lines.append(f"  {name}, {one.question}: {before} → {after}")
    return "\n".join(lines)


def _points(points, counts):
    if not counts:
        return "counts nowhere"
    return "open" if points is None else number(points)
