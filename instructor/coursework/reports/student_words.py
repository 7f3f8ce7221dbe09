"""A student's view in words: as text, and who gave a mark."""

from coursework.decisions.journal import in_words as journal_in_words
from coursework.terms.mark_words import graded_in_words, in_words
from coursework.words import number

__all__ = [
    "A_PERSON", "MACHINE", "NOBODY", "accepted", "full_marks", "in_lines", "mark_in_words",
]  # fmt: skip

MACHINE, A_PERSON, NOBODY = "the machine", "a person", "nobody yet"


def full_marks(who):
    """Who gave everybody all points."""
    return f"{who}, full marks for all"


def accepted(who):
    """Who took another answer too."""
    return f"{who}, accepted too"


def in_lines(view, roster):
    """A student's view as text.

    Parameters
    ----------
    view : StudentView
    roster : dict of str to str

    Returns
    -------
    str
    """
    percent = (
        "no total yet"
        if view.total.percent is None
        else f"{number(round(view.total.percent, 1))} %"
    )
    grade = f" That is {words}." if (words := graded_in_words(view.graded)) else ""
    lines = [f"{view.name} ({view.number}): {percent} of what is marked.{grade}"]
    for one in view.sets:
        lines += ["", f"{one.set_id}, {one.title}: {mark_in_words(one.counted)}"]
        lines += [f"  {file.handed_in or 'no time'} {file.name}: {file.became}." for file in
                  one.attempts]  # fmt: skip
        lines += [f"  {_mark_line(mark)}" for mark in one.marks]
    lines += [f"{name}: {mark_in_words(mark)}" for name, mark in view.practical]
    lines += ["", f"Knows: {', '.join(view.got) or 'nothing asked yet'}.",
              f"Still to learn: {', '.join(view.not_got) or 'nothing'}."]  # fmt: skip
    return "\n".join([*lines, "", "Decided:", journal_in_words(view.decided, roster)])


def mark_in_words(counted):
    """What the mark book counts, in words.

    Parameters
    ----------
    counted : Counted

    Returns
    -------
    str
    """
    points = [] if counted.points is None else [
        f"{number(counted.points)} of {number(counted.out_of)} points."
    ]  # fmt: skip
    waits = [f"Open: {', '.join(counted.open)}."] if counted.open else []
    return " ".join([*points, *waits, *in_words(counted)]) or "Open."


def _mark_line(mark):
    points = "open" if mark.points is None else number(mark.points)
    why = f" “{mark.why}”" if mark.why else ""
    return f"{mark.question} {points} of {number(mark.out_of)}, {mark.who}.{why}"
