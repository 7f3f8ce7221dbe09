"""Formulas of a key: they name what they use, and are given just that."""

import functools
import inspect

from kitchenmath.errors import KitchenError
from kitchenmath.practice.words import not_given


@functools.lru_cache(maxsize=1024)
def names_in(formula):
    """What a formula names: given numbers and earlier answers."""
    return tuple(inspect.signature(formula).parameters)


def value_of(formula, known):
    """A formula's value, given what its arguments name.

    Parameters
    ----------
    formula : callable
    known : dict

    Raises
    ------
    KitchenError
        When an argument is not among what is known.
    """
    missing = [name for name in names_in(formula) if name not in known]
    if missing:
        raise KitchenError(not_given(missing))
    return formula(**{name: known[name] for name in names_in(formula)})
