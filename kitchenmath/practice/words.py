"""What a student reads about an answer, made from the fields of a verdict or of a look.

All sentences on verdicts stand here: another language is a translation of this file, and nothing
that decides has to be touched.
"""

BY_OUTCOME = {
    "right": "Right.",
    "follow-through": "The method is right; the number carries on from an earlier slip.",
    "wrong": "This number is not right, and none of the usual slips gives it.",
    "missing": "There is no answer here.",
}
EITHER = " Or: "  # between slips of which a number cannot tell which it was


def sentences(verdict):
    """What a student is told about an answer, a sentence or two for each thing found.

    Parameters
    ----------
    verdict : Verdict

    Returns
    -------
    list of str

    Examples
    --------
    >>> from kitchenmath.practice import Verdict
    >>> sentences(Verdict("q1", "missing", 0, 3))
    ['There is no answer here.']
    """
    told = [*(each.sentence for each in verdict.found), *verdict.notes]
    alone = verdict.outcome in ("wrong", "unreadable") and told
    outcome = BY_OUTCOME.get(verdict.outcome)
    return [outcome, *told] if outcome and not alone else told


def in_words(verdict):
    """The same as one text, as a check cell or a drill shows it.

    Parameters
    ----------
    verdict : Verdict

    Returns
    -------
    str

    Examples
    --------
    A number that two slips give is either's; a plan that shows two shows both.

    >>> from kitchenmath.practice.verdicts import Found, Verdict
    >>> found = (Found("late", "Too late."), Found("hot", "Too hot."))
    >>> in_words(Verdict("q1", "slip", 0, 3, found))
    '(1) Too late. (2) Too hot.'
    >>> in_words(Verdict("q1", "slip", 0, 3, found, alternatives=True))
    'Too late. Or: Too hot.'
    """
    told = sentences(verdict)
    if verdict.alternatives:
        return EITHER.join(told)
    if len(told) < 2 or verdict.outcome not in ("slip", "wrong"):
        return " ".join(told)
    return " ".join(f"({place}) {words}" for place, words in enumerate(told, 1))
