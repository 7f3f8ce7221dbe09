"""What a student's number may be: sensible kitchen steps, and parts of another number."""

from dataclasses import dataclass, replace

from kitchenmath.conventions.system_order import first_system_first
from kitchenmath.errors import KitchenError
from kitchenmath.units.currency import in_currency
from kitchenmath.units.registry import Q_, Quantity


class Drawn:
    """Something to draw that is no amount, and that a class's conventions may change."""

    def in_college(self, college):
        """The same by a class's conventions."""
        return self


def _in_college(value, college):
    return (
        value.in_college(college)
        if isinstance(value, Drawn)
        else in_currency(value, college.currency)
    )


@dataclass(frozen=True)
class Choices:
    """What one number may be, and what it is called in the question.

    Where it is a part of another number, `values` are shares of it, and `whole` names it.
    `us` and `us_to` are for a class that counts in pounds and ounces.
    """

    values: tuple
    label: str
    whole: str = ""
    to: Quantity | None = None
    us: tuple = ()
    us_to: Quantity | None = None

    def in_college(self, college):
        """What the number may be in a class: in its money, and in pounds where it has them first.

        Parameters
        ----------
        college : Conventions

        Returns
        -------
        Choices
        """
        pounds = college.units_first == "us"
        values = self.us if pounds and self.us else self.values
        to = self.us_to if pounds and self.us_to is not None else self.to
        values = tuple(_in_college(value, college) for value in values)
        return replace(self, values=values, to=to, label=first_system_first(self.label, college))


def steps(first, last, step, unit, label, us=()):
    """Sensible kitchen steps to draw a number from: 1.2 kg to 3 kg in steps of 0.2 kg.

    Parameters
    ----------
    first, last, step : float
        In `unit`; a step lands on `last`.
    unit : str
    label : str
        What the number is, for the student: "trimmed celeriac needed".
    us : tuple, optional
        First, last, step and unit for a class that counts in pounds and ounces.

    Returns
    -------
    Choices

    Raises
    ------
    KitchenError
        When no step lands on `last`: the range would end where nobody says.
    """
    return Choices(_row(first, last, step, unit), label, us=_row(*us) if us else ())


def _row(first, last, step, unit):
    if not step > 0 or last < first:
        raise KitchenError(f"steps: {first} to {last} by {step} gives nothing to choose from.")
    count = round((last - first) / step)
    if abs(first + count * step - last) > 1e-6 * step:
        raise KitchenError(f"steps: from {first} by {step} no step lands on {last}.")
    # Rounded, so that 1.2 + 3 x 0.2 is 1.8 on the page and not 1.7999999999999998.
    return tuple(Q_(round(first + i * step, 9), unit) for i in range(count + 1))


def part_of(whole, first, last, step, to, label, us_to=None):
    """A weight that is a share of another one: legs, 26 to 30 % of the birds.

    Parts that are drawn each for itself may weigh more than the whole together; these cannot,
    where their `last` shares stay below 100 %.

    Parameters
    ----------
    whole : str
        Name of the number that it is a part of; it stands before this one.
    first, last, step : float
        In percent of the whole.
    to : Quantity
        What the scale shows: the part is rounded to it.
    label : str
    us_to : Quantity, optional
        What the scale of a class shows that counts in pounds.

    Returns
    -------
    Choices

    Raises
    ------
    KitchenError
        When a share is not between 0 and 100 %, or no step lands on `last`.
    """
    shares = steps(first, last, step, "percent", label)
    if not 0 < first <= last < 100:
        raise KitchenError(f"part_of: {first} to {last} % is no part; a part is more than 0 % and "
                           "less than 100 %.")  # fmt: skip
    return Choices(shares.values, label, whole, to, us_to=us_to)
