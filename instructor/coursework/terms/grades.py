"""What a total comes to: passed or not, and the grade by the class's own scale. Fields only."""

from dataclasses import dataclass

__all__ = ["LOW", "NO_GRADE", "Graded", "graded", "low_of"]

LOW = 0.40  # share of the points, where a class states no pass line; memory: a usual one
AS_SHOWN = 1  # decimals of a total on every sheet and page; 49.96 is printed as 50 and passes 50


@dataclass(frozen=True)
class Graded:
    """What a total comes to.

    Attributes
    ----------
    grade : str
        The highest grade whose line the total reaches; "" without a scale, without a total, or
        below the lowest line.
    passed : bool or None
        None without a pass line or without a total.
    """

    grade: str = ""
    passed: bool | None = None


NO_GRADE = Graded()


def graded(percent, policy):
    """The grade of a total, and whether it passes; both from the total as it is printed.

    Parameters
    ----------
    percent : float or None
    policy : Policy

    Returns
    -------
    Graded
    """
    if percent is None:
        return NO_GRADE
    shown = round(percent, AS_SHOWN)
    grade = next((name for name, line in policy.grades.items() if shown >= line), "")
    passed = None if policy.pass_line is None else shown >= policy.pass_line
    return Graded(grade, passed)


def low_of(policy):
    """The share of the points below which a mark is low: the class's pass line, or the usual one.

    Parameters
    ----------
    policy : Policy

    Returns
    -------
    float
    """
    return LOW if policy.pass_line is None else policy.pass_line / 100
