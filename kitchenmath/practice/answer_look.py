"""What can be said about an answer before it is marked; never whether it is right."""

from kitchenmath.conventions.college import OURS
from kitchenmath.errors import KitchenError
from kitchenmath.practice import look_words
from kitchenmath.practice.kinds import as_cooks_say
from kitchenmath.practice.question_kinds import Look, answer_kind
from kitchenmath.practice.words import below_nothing
from kitchenmath.units.registry import Quantity
from kitchenmath.units.saying import as_came

MAY_BE_BELOW_NOUGHT = ("temperature", "temperature difference")


def look_over(answer, kind, plausible=None, college=OURS):
    """What can be said about an answer before it is marked.

    Parameters
    ----------
    answer : str or Quantity
        Whatever else a student's cell made gets a sentence too.
    kind : str
        A key of `KINDS`, or a kind that was added.
    plausible : tuple of str, optional
        Lowest and highest that make sense in any kitchen: ("100 g", "50 kg").
    college : Conventions
        Whose money and whose cups it is typed in.

    Returns
    -------
    Look
        Never an error for an answer, however odd.

    Raises
    ------
    UnknownName
        For a kind that nobody knows.
    """
    asked = answer_kind(kind, college)
    blank = answer is None or (isinstance(answer, str) and not answer.strip())
    as_typed = look_words.IS_ASKED_FOR.format(asked=asked.asked, example=asked.example)
    if blank or asked.untouched(answer, plausible):
        return Look("empty", look_words.NOTHING_YET.format(asked=as_typed))
    try:
        value = asked.read(answer)
        if cannot_be(value, kind):
            return Look("doubtful", below_nothing(as_cooks_say(value)))
        doubtful, sentence = asked.seen(value, plausible)
    except KitchenError as error:
        return Look("unreadable", str(error))
    except Exception:  # whatever a cell can make, a student gets a sentence and no traceback
        return Look("unreadable", f"{as_came(answer)} cannot be read: {as_typed}")
    return Look("doubtful" if doubtful else "there", sentence)


def cannot_be(value, kind):
    """Whether an amount is one that nothing has: a weight, a time, a price below nought.

    Parameters
    ----------
    value : object
    kind : str

    Returns
    -------
    bool

    Examples
    --------
    >>> from kitchenmath import Q_
    >>> cannot_be(Q_(-5, "g"), "weight"), cannot_be(Q_(-5, "degC"), "temperature")
    (True, False)
    """
    if kind in MAY_BE_BELOW_NOUGHT or not isinstance(value, Quantity):
        return False
    return bool(value.magnitude < 0)


def seen(answer, kind, plausible=None, college=OURS):
    """The sentence of `look_over`, as a check cell prints it.

    Parameters
    ----------
    answer : str or Quantity
    kind : str
    plausible : tuple of str, optional
    college : Conventions

    Returns
    -------
    str

    Raises
    ------
    UnknownName
    """
    return look_over(answer, kind, plausible, college).sentence
