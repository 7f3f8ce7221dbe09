"""How a mark of the mark book came about, in words: for its page, its sheet and the student's view.

All sentences on marks stand here; `counting` decides by fields and has none.
"""

from coursework.words import APART, number, plural

__all__ = [
    "NO_WEIGHT",
    "SOME_AT_THE_DESK",
    "graded_in_words",
    "in_words",
    "not_the_table",
    "stranger",
    "to_mark",
]

STATES = {
    "latest waits": "The latest hand-in is not marked yet.",
    "named waits": "The hand-in that you named is not marked yet.",
    "waits": "Handed in, not marked yet.",
    "earlier lost": "An earlier attempt cannot be marked.",
    "nothing": "Nothing handed in.",
    "nothing, so 0": "Nothing handed in by the due time, so 0.",
    "not out": "Not handed out yet.",
    "at the desk": "Given at the desk.",
    "with a tray": "Given at the desk; it rests on a photo of the tray ({evidence}).",
    **APART,
}
HOW = {
    "by word": "Attempt {place} counts: a person said so.",
    "latest": "Attempt {place}, the latest, counts.",
    "best": "Attempt {place}, the best, counts.",
    "mean": "The mean of {marked} counts: {share}.",
    "mean, open": "The mean of all attempts counts.",
    "first": "Attempt {place}, the first, counts.",
    "lifted": "Attempt {place}, the first, counts; a later one lifts it to {share}, and {most} is "
    "the most.",
}
UNREAD = (
    "The written answer to {questions} is not the same in every attempt; its points are for the "
    "latest one."
)


SOME_AT_THE_DESK = "No table of practical marks came yet: those that were given at the desk count."
NO_WEIGHT = "Every weight in the course file is 0, so there is no total."


def stranger(student):
    """A student with marks of whom the roster knows nothing."""
    return f"{student} has marks and is not on the roster."


def not_the_table(name, student, points, decision):
    """A practical mark of the table that the journal goes before."""
    return (
        f"Practical marks, {name}, {student}: the table says {number(points)}, "
        f"decision {decision.number} of the journal {number(decision.points)}. "
        "The journal's counts."
    )


def to_mark(set_id):
    """A set with hand-ins that marking has not seen."""
    return f"{set_id}: there are hand-ins that are not marked yet: mark the set."


def graded_in_words(graded):
    """What a total comes to, for a page; "" where the class states no scale.

    Parameters
    ----------
    graded : Graded

    Returns
    -------
    str

    Examples
    --------
    >>> from coursework.terms.grades import Graded
    >>> graded_in_words(Graded("B", True)), graded_in_words(Graded("", False))
    ('grade B, passes', 'does not pass')
    """
    passed = {None: "", True: "passes", False: "does not pass"}[graded.passed]
    grade = f"grade {graded.grade}" if graded.grade else ""
    return ", ".join(filter(None, (grade, passed)))


def in_words(mark):
    """How a mark came about, a sentence each; none where there is nothing to say.

    Parameters
    ----------
    mark : Counted

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> from coursework.terms.counting import Counted
    >>> in_words(Counted(state="nothing"))
    ('Nothing handed in.',)
    """
    if mark.state:
        return (STATES[mark.state].format(evidence=mark.evidence),)
    told = [_attempt(one, mark) for one in mark.attempts]
    if mark.unread:
        told.append(UNREAD.format(questions=", ".join(mark.unread)))
    if mark.how and mark.several > 1:
        told.append(_which_counts(mark))
    return tuple(each for each in told if each)


def _which_counts(mark):
    """Which of several attempts counts, and for how much."""
    how = "mean, open" if mark.how == "mean" and mark.share is None else mark.how
    usable = [one for one in mark.attempts if one.counts(mark.last_day)]
    return HOW[how].format(
        place=mark.place,
        marked=sum(one.share is not None for one in usable),
        share="" if mark.share is None else _percent(mark.share),
        most=_percent(mark.most),
    )


def _attempt(attempt, mark):
    """One attempt: its place where there are several, its points, what being late cost."""
    total, named = attempt.total, f"Attempt {attempt.place}: " if mark.several > 1 else ""
    got = f"{number(total.points)} of {number(total.marked)}"
    days = f"{plural(attempt.late, 'day')} late"
    if not attempt.late:
        return f"{named}{got}." if named else ""
    if attempt.late > mark.last_day:
        return f"{named}{got}, {days}: after {number(mark.last_day)} it does not count."
    if not attempt.off or total.share is None:
        return f"{named}{got}, {days}: nothing is taken off."
    floor = ", as no mark goes below 0" if total.share < attempt.off / 100 else ""
    return (
        f"{named}{got}, {days}: {number(attempt.off)} % is taken off, "
        f"which leaves {number(attempt.points)}{floor}."
    )


def _percent(share):
    return f"{number(round(100 * share, 2))} %"
