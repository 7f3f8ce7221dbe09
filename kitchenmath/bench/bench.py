"""A bench: what a cook types into its boxes, and what is made of it."""

from collections.abc import Callable
from dataclasses import dataclass

from kitchenmath.errors import OutOfRange, Unreadable, WrongKind
from kitchenmath.practice.probe_log import ProbeLogKind
from kitchenmath.typed.lists import amounts_in, quantity_of, with_units
from kitchenmath.units import Q_, kind_of, read, say
from kitchenmath.units.reading import without_example
from kitchenmath.units.registry import same_kind

__all__ = ["Bench", "Box", "Worked"]


@dataclass(frozen=True)
class Worked:
    """What came out: a sentence for the cook, and the number that later lessons take."""

    sentence: str
    number: object


@dataclass(frozen=True)
class Box:
    """One thing to type.

    Attributes
    ----------
    label, example : str
    unit : str
        For a bare number, and the kind that is asked for; not of a choice or a log.
    kind : str
        "amount", "amounts" (several in a row), "choice" or "log" (lines of a probe).
    options : tuple of str
        For a choice.
    wanted : bool
        Whether nothing can be worked out without it.
    """

    label: str
    example: str
    unit: str = "count"
    kind: str = "amount"
    options: tuple = ()
    wanted: bool = True

    def read(self, text):
        """What stands in the box.

        Parameters
        ----------
        text : str

        Returns
        -------
        Quantity, list of Quantity, ProbeLog, or str

        Raises
        ------
        Unreadable
            With the box's label, and what to type.
        """
        if self.kind == "choice":
            return text
        try:
            if self.kind == "log":
                return ProbeLogKind().read(text)
            if self.kind == "amounts":
                counted = [
                    quantity_of(number, unit, f"number {place}")
                    for place, (number, unit) in enumerate(amounts_in(text), 1)
                ]
                return [self._checked(each) for each in with_units(counted, self.unit)[0]]
            return self._checked(self._with_unit(read(text)))
        except (Unreadable, WrongKind, OutOfRange) as error:
            raise Unreadable(
                f"{self.label}: {without_example(str(error))} Type it such as {self.example}."
            ) from None

    def _with_unit(self, found):
        return Q_(found.magnitude, self.unit) if kind_of(found) == "number" else found

    def _checked(self, found):
        if not same_kind(found, self.unit):
            raise WrongKind(f"{say(found)} is a {kind_of(found)}.")
        if kind_of(found) != "temperature" and found.magnitude <= 0:
            raise OutOfRange(f"{say(found)} came; it must be above 0.")
        return found


@dataclass(frozen=True)
class Bench:
    """A measurement that a lesson sends its reader to make.

    Attributes
    ----------
    title : str
        "my yield": as it is called in later lessons.
    boxes : dict of str to Box
    work : callable
        Takes what was read by the names of the boxes, what is not `wanted` and was left empty as
        None; gives `Worked`.
    minutes : int
        What it takes, from the first weighing to the last (our estimate).
    """

    title: str
    boxes: dict
    work: Callable
    minutes: int

    def worked(self, typed):
        """What comes out of what was typed.

        Parameters
        ----------
        typed : dict of str to str

        Returns
        -------
        Worked or None
            None as long as a box is empty that is wanted.

        Raises
        ------
        KitchenError
            With what to type.
        """
        texts = {name: typed.get(name, "").strip() for name in self.boxes}
        if any(box.wanted and not texts[name] for name, box in self.boxes.items()):
            return None
        found = {
            name: box.read(texts[name]) if texts[name] else None for name, box in self.boxes.items()
        }
        return self.work(**found)
