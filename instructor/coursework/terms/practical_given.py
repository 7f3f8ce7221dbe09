"""Practical marks as they count: those of the table, and over them those of the journal."""

from coursework.records.trays import TRAYS
from coursework.terms.counting import Counted
from coursework.terms.practical import NONE_CAME, Practicals
from coursework.words import number

__all__ = ["practical_given"]

AT_THE_DESK = "Given at the desk."
WITH_A_TRAY = f"Given at the desk; it rests on a photo of the tray ({TRAYS}/{{student}})."
SOME_AT_THE_DESK = "No table of practical marks came yet: those that were given at the desk count."


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
        words = WITH_A_TRAY.format(student=student) if one.file else AT_THE_DESK
        share = round(one.points / one.out_of, 9)
        earlier = marks.get((student, name))
        if earlier and abs(earlier.share - share) > 1e-9:
            odd.append(
                f"Practical marks, {name}, {student}: the table says {number(earlier.points)}, "
                f"decision {one.number} of the journal {number(one.points)}. The journal's counts."
            )
        marks[student, name] = Counted(share, one.points, one.out_of, words=(words,))
    return Practicals(marks, tuple(odd))
