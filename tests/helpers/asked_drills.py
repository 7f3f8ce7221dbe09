"""Which drill a page asks, found by its words: so that a test can work out the answer itself."""

import importlib
import pkgutil

import kitchenmath.drills
from kitchenmath.drills import Round

# Each once, though a lesson's module may hand on those of another.
DRILLS = {
    id(drill): drill
    for module in pkgutil.iter_modules(kitchenmath.drills.__path__)
    for drill in importlib.import_module(f"kitchenmath.drills.{module.name}").DRILLS.values()
}.values()


def asked_by(text):
    """The one drill that asks this in its first round."""
    [drill] = [drill for drill in DRILLS if unspaced(Round(drill).text) == unspaced(text)]
    return drill


def unspaced(text):
    """A text without blanks and line ends, which a page has in places of its own."""
    return "".join(text.split())
