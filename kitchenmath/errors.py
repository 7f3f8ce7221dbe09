"""What can go wrong at the kitchen's door, each as one sentence for a cook."""


class KitchenError(ValueError):
    """Something came that the kit cannot use; the message says what to type instead."""


class WrongKind(KitchenError):
    """A weight came where a volume was wanted, a bare number where a unit was wanted."""


class OutOfRange(KitchenError):
    """The value is of the right kind but lies where the formula does not hold."""


class Unreadable(KitchenError):
    """Typed text that cannot be read as one amount."""


class UnknownName(KitchenError):
    """An ingredient, a measure or a unit that no table here lists."""


class NotCovered(UnknownName):
    """A food-safety limit that the kit does not have: nothing is given in its place."""
