"""What a student reads about an answer, made from the fields of a verdict or of a look.

All sentences on verdicts stand here: another language is a translation of this file, and nothing
that decides has to be touched.
"""

BY_OUTCOME = {
    "right": "Right.",
    "close": "The way is right, and the number is rounded too far.",
    "follow-through": "The method is right; the number carries on from an earlier slip.",
    "wrong": "This number is not right, and none of the usual slips gives it.",
    "missing": "There is no answer here.",
}
EITHER = " Or: "  # between slips of which a number cannot tell which it was

FROM_SAMPLE = "The next questions are marked from the sample drawn for you."
# Why a measurement cannot be built on, by its `unfit`.
UNFIT = {
    "few": "fewer than five readings are too few to start from",
    "alike": "your readings are all alike",
    "doubled": "two readings of your log share a time",
    "flat": "your log rises by less than 5 °C; log on, with the same piece",
    "falling": "your log does not rise at its end; leave off what you read after it was taken out",
}
DRAWN = "took the sample that was drawn"
DRAWN_SAYS = (
    "This is the sample that was drawn for you, and no measurement of your own. Leave the answer "
    "empty where you cannot measure: the next questions start from the sample all the same."
)
WRONG_SIDE = "rounded to the wrong side"
ALL_KEPT = "Every limit is kept."
ONE_PLAN = "One plan that works:"


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


def step_asked(tolerance):
    """How near an answer is wanted, where it was rounded too far."""
    return f"Answer {tolerance}."


def wrong_side_says(safe):
    """Why a number was rounded to the side where it does harm."""
    other = {"up": "down, and so it falls short", "down": "up, and so it is too much or too late"}
    return f"You rounded {other[safe]}. The safe side here is {safe}."


def below_nothing(amount):
    """Where an amount was typed that nothing can have."""
    return f"Look again: {amount} cannot be, because it is less than nothing. Type it once more."


def not_built_on(unfit):
    """Why the sample is taken in place of a student's own, before anything is marked."""
    return f"The next questions start from the sample drawn for you: {UNFIT[unfit]}."


def marked_from_sample(unfit):
    """The same, when it was marked."""
    return f"{FROM_SAMPLE.rstrip('.')}: {UNFIT[unfit]}."


def by_the_clock(began, last):
    """How times were read that came off a clock."""
    return f"Read off the clock: the first at {began}, the last {last} later."


def too_few(came, fewest):
    """Where fewer readings came than are asked for."""
    return f"Look again: {came} readings are there, and {fewest} are asked for."


def too_flat(rise, least):
    """Where a log rises by less than is asked for."""
    return f"Look again: the core went up by {rise}, and {least} at least is asked for."


def own_measurement(sample):
    """What is asked for where no number is right."""
    return f"a measurement of your own. The sample drawn for you was {sample}"


def begins_at(start, task):
    """What is shown of the plan that works, where plans are many."""
    return f"one plan that works begins at {start} with “{task}”, as shown"


def read_as_evening(typed, start, opens, count):
    """Where a time was typed without its half of the day."""
    more = f", and {count - 1} more times likewise" if count > 1 else ""
    return f"{typed} was read as {start}{more}: the kitchen opens at {opens}."


def read_as_clock(moment, plausible=None):
    """How a clock time was read, and where it is hard to believe."""
    half = "" if moment.half_said else ", in the morning or in the evening"
    words = f"read as {moment}{half}. It is a clock time, as it should be."
    if plausible:
        words += f" Look again: something from {plausible[0]} to {plausible[1]} makes sense here."
    return words


def names_off(left_out, too_many):
    """What of a list is missing in an answer, and what does not belong there."""
    parts = [f"Left out: {left_out}."] if left_out else []
    return " ".join([*parts, *([f"Too many: {too_many}."] if too_many else [])])


def and_more(count):
    """Where more findings of a kind are there than are told."""
    return f"And {count} more of this kind."


# For whoever writes a key.


def same_name(question, names):
    """Where two slips cannot be told apart in a report."""
    return f"{question}: two slips share the name {names}."


def not_given(names, question=""):
    """Where a formula asks for what the set does not draw."""
    whose = f"{question}: the kitchen" if question else "a formula"
    return f"{whose} asks for {', '.join(names)}, which is not given."


def no_plan(question, conflict):
    """Where the drawn numbers leave no plan that works."""
    return f"{question}: no plan works here: {conflict}"


def parts_of_worth(parts):
    """Where a key gives points for other parts of a plan than there are."""
    return f"worth: points are given for {', '.join(parts)}, each of them."
