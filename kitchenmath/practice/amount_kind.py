"""An amount as a kind of answer: how it is read, looked at and said."""

from kitchenmath.conventions.college import OURS
from kitchenmath.errors import KitchenError
from kitchenmath.practice import look_words
from kitchenmath.practice.kinds import a_kind, as_cooks_say, as_kind, example_of, with_example
from kitchenmath.practice.meant import point_slipped
from kitchenmath.practice.typed_amount import read_as
from kitchenmath.units.currency import in_currency
from kitchenmath.units.door import one_of
from kitchenmath.units.reading import read
from kitchenmath.units.registry import KINDS
from kitchenmath.units.saying import say


class AmountKind:
    """How one amount is read and said: an `AnswerKind` (see `question_kinds`).

    Parameters
    ----------
    kind : str
        A key of `KINDS`.
    college : Conventions
        Whose money and whose cups are meant.

    Raises
    ------
    UnknownName
    """

    def __init__(self, kind, college=OURS):
        self.kind, self.college = one_of(kind, KINDS, "kind"), college
        self.asked, self.example = a_kind(kind), example_of(kind, college.currency)

    def read(self, answer):
        """The amount that was typed or computed.

        Raises
        ------
        KitchenError
            With what to type.
        """
        try:
            typed = read_as(answer, self.kind, self.college)
            return as_kind(typed, self.kind, currency=self.college.currency)
        except KitchenError as error:
            raise type(error)(with_example(str(error), self.kind, self.example)) from None

    def seen(self, value, plausible):
        """Whether an amount is hard to believe, and what can be said about it."""
        sentence = look_words.AS_IT_SHOULD_BE.format(value=as_cooks_say(value), asked=self.asked)
        if plausible:
            low, high = (self._bound(bound) for bound in plausible)
            if not low <= value <= high:
                again = look_words.LOOK_AGAIN.format(value=say(value), where="in a kitchen")
                again += look_words.BELIEVABLE.format(low=say(low), high=say(high))
                return True, f"{sentence} {again}{point_slipped(value, low, high)}"
        return False, sentence

    def _bound(self, bound):
        return in_currency(as_kind(read(bound), self.kind), self.college.currency)

    def untouched(self, answer, plausible):
        """No amount is handed out with a form in its cell."""
        return False
