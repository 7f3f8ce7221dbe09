"""The calls that the docstrings' examples make: working arguments for every public function."""

import contextlib
import doctest
import importlib
import inspect
import io
import math
import sys

from kitchenmath.units import Q_, read, say

PACKAGES = ("units", "yields", "ratios", "sauces", "brine", "cuts", "heat", "safety", "service",
            "foods", "recipes")  # fmt: skip


def public_functions():
    """Every function that a trade package of the library names in its `__all__`."""
    for name in PACKAGES:
        package = importlib.import_module(f"kitchenmath.{name}")
        for public in sorted(package.__all__):
            function = getattr(package, public)
            if inspect.isfunction(function):
                yield function


def first_call(function):
    """The first call of a function in its own example as bound arguments; None without one."""
    calls = []

    def recorded(*positional, **named):
        calls.append(inspect.signature(function).bind(*positional, **named))
        return function(*positional, **named)

    names = {**vars(sys.modules[function.__module__]), "Q_": Q_, "say": say, "read": read,
             "math": math, function.__name__: recorded}  # fmt: skip
    parser = doctest.DocTestParser()
    for example in parser.get_examples(inspect.getdoc(function)):
        # An example may show an error: the call before it is what is wanted here.
        with contextlib.suppress(Exception), contextlib.redirect_stdout(io.StringIO()):
            exec(compile(example.source, function.__name__, "single"), names)
        if calls:
            return calls[0]
    return None
