"""Every public docstring of the library runs, and says what its signature says."""

import ast
import doctest
import importlib
import inspect
import pkgutil

import pytest

import kitchenmath
from kitchenmath.units import Q_, read, say

# start.py is loaded by path, before there is anything to import.
MODULES = sorted(
    module.name
    for module in pkgutil.walk_packages(kitchenmath.__path__, "kitchenmath.")
    if module.name != "kitchenmath.start"
)


@pytest.mark.parametrize("name", MODULES)
def test_examples_run(name):
    """Each example is worked by hand in the sentence above it, then run."""
    module = importlib.import_module(name)
    failed, _ = doctest.testmod(module, extraglobs={"Q_": Q_, "read": read, "say": say})

    assert failed == 0


def functions():
    """Public functions with a numpydoc page (a Parameters or Returns section)."""
    for name in MODULES:
        module = importlib.import_module(name)
        for key, thing in vars(module).items():
            own = getattr(thing, "__module__", None) == name
            if own and inspect.isfunction(thing) and not key.startswith("_"):
                yield pytest.param(thing, id=f"{name}.{key}")


def section(page, title):
    """The lines below a numpydoc heading."""
    lines = inspect.cleandoc(page).splitlines()
    heads = [i for i, line in enumerate(lines) if line == title and lines[i + 1].startswith("---")]
    if not heads:
        return []
    rest = lines[heads[0] + 2 :]
    ends = [i - 1 for i, line in enumerate(rest) if line.startswith("---")]
    return rest[: ends[0]] if ends else rest


@pytest.mark.parametrize("function", list(functions()))
def test_docstring_says_what_the_signature_says(function):
    """A Parameters section names each parameter; Raises names each error the body raises."""
    page = function.__doc__ or ""
    assert page, "a public function has a docstring"
    named = [
        part.strip().lstrip("*")
        for line in section(page, "Parameters")
        if line and not line.startswith(" ")
        for part in line.split(" : ")[0].split(",")
    ]
    raised = {
        node.exc.func.id
        for node in ast.walk(ast.parse(inspect.getsource(function)))
        if isinstance(node, ast.Raise)
        and isinstance(node.exc, ast.Call)
        and isinstance(node.exc.func, ast.Name)
    }
    documented = {line.strip() for line in section(page, "Raises") if not line.startswith(" ")}

    if named:
        assert list(inspect.signature(function).parameters) == named
    assert raised <= documented
