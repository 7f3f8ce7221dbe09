"""What can be said about an answer before it is marked; never whether it is right."""

from dataclasses import dataclass

from kitchenmath.errors import KitchenError
from kitchenmath.practice.kinds import a_kind, as_kind, said, with_example
from kitchenmath.practice.more_kinds import MORE_KINDS
from kitchenmath.units.door import one_of
from kitchenmath.units.reading import read
from kitchenmath.units.registry import KINDS
from kitchenmath.units.saying import say


@dataclass(frozen=True)
class Look:
    """What a look at one answer found.

    Attributes
    ----------
    state : str
        "empty", "unreadable", "doubtful" (hard to believe), "unknown" (cannot be seen from here)
        or "there".
    sentence : str
        It says what to type wherever something is to be typed.
    """

    state: str
    sentence: str

    @property
    def is_there(self):
        """Whether something was filled in, readable or not."""
        return self.state != "empty"

    @property
    def to_do(self):
        """What is left to do: "empty" (fill it in), "again" (look again) or ""."""
        return {"empty": "empty", "unreadable": "again", "doubtful": "again"}.get(self.state, "")


def look_over(answer, kind, plausible=None):
    """What can be said about an answer before it is marked.

    Parameters
    ----------
    answer : str or Quantity
        Whatever else a student's cell made gets a sentence too.
    kind : str
        A key of `KINDS` or of `MORE_KINDS`.
    plausible : tuple of str, optional
        Lowest and highest that make sense in any kitchen: ("100 g", "50 kg").

    Returns
    -------
    Look
        Never an error for an answer, however odd.
    """
    one_of(kind, [*KINDS, *MORE_KINDS], "kind")
    more = MORE_KINDS.get(kind)
    blank = answer is None or (isinstance(answer, str) and not answer.strip())
    if blank or (more and more.untouched(answer, plausible)):
        asked, example = asked_for(kind)
        return Look("empty", f'nothing is typed yet: {asked} is asked for, such as "{example}".')
    try:
        if more:
            return _look_over_more(more, answer, plausible)
        value = as_kind(read(answer) if isinstance(answer, str) else answer, kind)
        return _believable(value, kind, plausible)
    except KitchenError as error:
        words = str(error) if more else with_example(str(error), kind)
    except Exception:  # whatever a cell can make, a student gets a sentence and no traceback
        asked, example = asked_for(kind)
        words = f'{said(answer)} cannot be read: {asked} is asked for, such as "{example}".'
    return Look("unreadable", words)


def asked_for(kind):
    """A kind with its article, and an example as it is typed.

    Parameters
    ----------
    kind : str
        A key of `KINDS` or of `MORE_KINDS`.

    Returns
    -------
    (str, str)
    """
    more = MORE_KINDS.get(kind)
    return (more.asked, more.example) if more else (a_kind(kind), KINDS[kind][1])


def seen(answer, kind, plausible=None):
    """The sentence of `look_over`, as a check cell prints it.

    Parameters
    ----------
    answer : str or Quantity
    kind : str
    plausible : tuple of str, optional

    Returns
    -------
    str
    """
    return look_over(answer, kind, plausible).sentence


def _look_over_more(more, answer, plausible):
    sentence = more.seen(more.read(answer), plausible)
    return Look("doubtful" if "ook again" in sentence else "there", sentence)


def _believable(value, kind, plausible):
    sentence = f"read as {say(value)}. It is {a_kind(kind)}, as it should be."
    if plausible:
        low, high = (as_kind(read(bound), kind) for bound in plausible)
        if not low <= value <= high:
            return Look(
                "doubtful",
                f"{sentence} Look again: {say(value)} is hard to believe in a kitchen. "
                f"Something from {say(low)} to {say(high)} is.",
            )
    return Look("there", sentence)
