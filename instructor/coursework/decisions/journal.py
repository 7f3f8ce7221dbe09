"""The journal: what was decided, by day on this machine's clock, in words. Nothing is read here."""

from datetime import datetime
from itertools import groupby

from coursework.decisions.holding import live
from coursework.decisions.kinds import OF_KEYS
from coursework.decisions.stamp import moment_of
from coursework.words import UNKNOWN, number

__all__ = ["by_day", "in_words", "line_of"]


def by_day(decisions):
    """The decisions of each day, the latest day first, and within a day as they were made.

    Parameters
    ----------
    decisions : list of Decision

    Returns
    -------
    list of (str, list of Decision)
    """
    days = groupby(decisions, key=lambda one: _clock(one)[:10])
    return [(day, list(those)) for day, those in days][::-1]


def in_words(decisions, roster, files=UNKNOWN, titles=UNKNOWN):
    """The journal as lines: a day, then what was decided on it; what was taken back says so.

    Parameters
    ----------
    decisions : list of Decision
    roster : dict of str to str
    files : dict of str to str, optional
        SHA-256 to the name under which a file came.
    titles : dict of str to str, optional
        What the sets are called, by id.

    Returns
    -------
    str
    """
    holds = {one.number for one in live(decisions)}
    lines = []
    for day, those in by_day(decisions):
        lines.append(day)
        for one in those:
            gone = one.number not in holds and one.kind != "take back"
            lines.append(f"  {line_of(one, roster, files, titles)}{' Taken back.' if gone else ''}")
    return "\n".join(lines) or "Nothing was decided in this class yet."


def line_of(one, roster, files=UNKNOWN, titles=UNKNOWN):
    """A decision in one line, with its number, the time of day, who, what and why.

    Parameters
    ----------
    one : Decision
    roster : dict of str to str
    files : dict of str to str, optional
        As for `in_words`; of a file without a name its first figures are said.
    titles : dict of str to str, optional
        As for `in_words`; a set without a title is said by its id.

    Returns
    -------
    str
    """
    file = "" if one.kind in OF_KEYS else files.get(one.file, one.file[:8]).rpartition("/")[2]
    name, title = roster.get(one.student, one.student), titles.get(one.set_id, one.set_id)
    what = [title, name, one.question, file]
    if one.points is not None:
        of = f" of {number(one.out_of)}" if one.out_of is not None else ""
        what.append(f"{number(one.points)}{of} points")
    if one.seconds is not None:
        what.append(datetime.fromtimestamp(one.seconds).strftime("%Y-%m-%d %H:%M"))
    if one.line:
        what.append(f"decision {one.line}")
    about = ", ".join([each for each in [*what, one.accepted, one.step] if each])
    why = f" “{one.why}”" if one.why else ""
    told = f"{one.kind}: {about}" if about else one.kind
    return f"{one.number}. {_clock(one)[11:16]} {one.who}, {told}.{why}"


def _clock(one):
    """When it was decided, on this machine's clock."""
    return moment_of(one.when).astimezone().strftime("%Y-%m-%d %H:%M:%S")
