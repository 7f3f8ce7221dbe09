"""Practical marks as they count: those of the table, and over them those of the journal."""

from coursework.records.trays import TRAYS
from coursework.terms.counting import Counted
from coursework.terms.mark_words import SOME_AT_THE_DESK, not_the_table
from coursework.terms.practical import Practicals
from coursework.terms.practical_words import NONE_CAME

__all__ = ["practical_given"]


def practical_given(practicals, decided, policy):
    """The practical marks that count.

    Parameters
    ----------
    practicals : Practicals
        What the table says.
    decided : dict of (str, str) to Decision
        By student and name of the mark: what was given one by one, which goes before the table.
    policy : Policy

    Returns
    -------
    Practicals
        `marks` holds a `Counted` for each.
    """
    out_of = {each.name: each.out_of for each in policy.practical.values()}
    marks = {
        (student, name): Counted(mark / out_of[name], mark, out_of[name])
        for (student, name), mark in practicals.marks.items()
    }
    odd = [SOME_AT_THE_DESK if decided and each == NONE_CAME else each for each in practicals.odd]
    for (student, name), one in decided.items():
        share = round(one.points / one.out_of, 9)
        earlier = marks.get((student, name))
        if earlier and abs(earlier.share - share) > 1e-9:
            odd.append(not_the_table(name, student, earlier.points, one))
        marks[student, name] = Counted(
            share,
            one.points,
            one.out_of,
            state="with a tray" if one.file else "at the desk",
            evidence=f"{TRAYS}/{student}" if one.file else "",
        )
    return Practicals(marks, tuple(odd))
