"""Rubbish at every door of the library: each argument of each public function, one at a time.

The other arguments are those of the function's own example. What comes is an answer, or the kit's
own error that names the parameter; never a raw error, and never an answer that is no number.
"""

import contextlib
import inspect
import io
import math

import numpy as np
import pytest

from kitchenmath.units import Q_, KitchenError
from kitchenmath.units.registry import Quantity
from tests.helpers.examples import first_call, public_functions

FUNCTIONS = {f"{f.__module__.split('.')[1]}.{f.__name__}": f for f in public_functions()}
# The door itself, words for it, and lists of names: nothing of a cook's comes in there.
NO_EXAMPLE = {
    "cuts.measured_mm", "foods.food_names", "heat.surface_situations", "recipes.card_as_html",
    "recipes.card_of", "recipes.recipe_text", "units.alike", "units.amount", "units.figures",
    "units.household_names", "units.kind_of", "units.money", "units.one_of",
    "units.positive", "units.same_kind", "units.say", "units.share",
    "units.spoken",
}  # fmt: skip
# They answer the cook who typed the text, and speak of that.
READS_TEXT = {"units.read", "recipes.read_recipe"}
PLAIN = {
    "a number": 5, "below nought": -1.5, "text": "2", "no text": "", "a list": [1, 2],
    "nothing": None, "a thing": object(), "a truth value": True, "too large": 10**400,
    "no number": math.nan, "endless": math.inf, "a table": {}, "an area": Q_(3, "cm**2"),
    "a count": Q_(3, "count"), "too cold": Q_(-400, "degC"),
}  # fmt: skip
LIKE = {"several": [1.0, 2.0], "no number of it": math.nan, "endless of it": math.inf,
        "less than none": -7.0}  # fmt: skip


def rubbish(argument):
    """All that is tried in place of one argument, by what it is called."""
    tried = dict(PLAIN)
    if isinstance(argument, Quantity):
        tried |= {what: Q_(number, str(argument.units)) for what, number in LIKE.items()}
    return tried


def no_number(answer, depth=0):
    """Whether an answer, or something in it, is no number."""
    answer = answer.magnitude if isinstance(answer, Quantity) else answer
    if isinstance(answer, tuple | list) and depth < 3:
        return any(no_number(each, depth + 1) for each in answer)
    floats = isinstance(answer, float) or getattr(answer, "dtype", np.dtype("O")).kind == "f"
    return floats and bool(np.isnan(answer).any())


def complaints(name, call, parameter, what, came):
    """What is wrong with how one piece of rubbish was met, as one sentence or none."""
    function, arguments = FUNCTIONS[name], dict(call.arguments) | {parameter: came}
    call = inspect.BoundArguments(call.signature, arguments)
    try:
        with contextlib.redirect_stdout(io.StringIO()):
            answer = function(*call.args, **call.kwargs)
    except KitchenError as error:
        named = name in READS_TEXT or any(each in str(error) for each in call.signature.parameters)
        return [] if named else [f"{parameter}, {what}: names no parameter: {error}"]
    except Exception as error:
        return [f"{parameter}, {what}: {type(error).__name__}: {error}"]
    return [f"{parameter}, {what}: answers {answer}"] if no_number(answer) else []


@pytest.mark.parametrize("name", sorted(set(FUNCTIONS) - NO_EXAMPLE))
def test_rubbish_is_met_with_the_kits_own_error(name):
    """15 kinds of thing for each argument, and four more where a quantity belongs."""
    call = first_call(FUNCTIONS[name])
    assert call is not None, "its docstring has no example to take the other arguments from"
    found = [
        complaint
        for parameter in call.signature.parameters
        # A path may be anything that the system opens; Q_ may make what the door refuses later.
        if parameter != "path" and (name, parameter) != ("units.Q_", "number")
        for what, came in rubbish(call.arguments.get(parameter)).items()
        for complaint in complaints(name, call, parameter, what, came)
    ]

    assert found == []


def test_those_without_an_example_are_the_ones_listed():
    """A new function without an example does not slip by."""
    assert {name for name in FUNCTIONS if first_call(FUNCTIONS[name]) is None} == NO_EXAMPLE


@pytest.mark.parametrize("price", [-3.33, math.nan, math.inf])
def test_money_below_nought_or_that_is_no_sum_is_refused(price):
    """A card never shows -$3.33 or $nan."""
    yields = FUNCTIONS["yields.menu_price"]
    with pytest.raises(KitchenError, match="cost: needs"):
        yields(cost=Q_(price, "dollar"), food_cost=Q_(30, "percent"))


def test_a_weight_is_no_price():
    """3 kg over a yield would be a weight and look like a cost."""
    with pytest.raises(KitchenError, match="price: needs a price such as"):
        FUNCTIONS["yields.edible_cost"](price=Q_(3, "kg"), yield_=Q_(68, "percent"))
